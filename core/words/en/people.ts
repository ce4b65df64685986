/** Sentences of the people who are written down: shown, taken out alone, erased. */
import type { Person } from '../../people/person.ts';

const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

const ROLES: Record<Person['role'], string> = { breeder: 'you', vet: 'your vet', buyer: 'takes a puppy' };

/** What stays of somebody who was erased: one sentence each, empty where there is none. */
function stays(starters: number, papers: number, cleared: boolean): string[] {
  return [
    starters === 0 ? '' : `${counted(starters, 'starter pack stays', 'starter packs stay')}, for “a buyer”.`,
    papers === 0
      ? ''
      : cleared
        ? `${counted(papers, 'plan that was', 'plans that were')} handed over lost those lines too.`
        : `${counted(papers, 'plan that was', 'plans that were')} handed over still ${papers === 1 ? 'says' : 'say'} it, as printed.`,
  ];
}

export const peopleWords = {
  title: 'Who is written down',
  lead: 'Everybody of whom something stands in the file. Each can be written out alone, or erased: out of the file and out of its list of things done. Backups made before still hold them: those of the day expire after 14 days, one a week after 8 weeks; those made by hand, before an update or before going back stay until you delete them. So do PDFs and exports that were saved.',
  nobody: 'Nobody is written down yet.',
  roles: ROLES,
  gone: 'taken back; stays in the file for undo',
  starters: (n: number) => counted(n, 'starter pack', 'starter packs'),
  papers: (n: number) => `on ${counted(n, 'plan that was handed over', 'plans that were handed over')}`,
  writeOut: 'Write out',
  writeOutOf: (name: string) => `Write out what is kept of ${name}`,
  writtenOut: (file: string, folder: string) => `Written: ${file}, in ${folder}.`,
  eraseAsk: (name: string) => `Erase ${name} …`,
  eraseTitle: (name: string) => `Erase ${name}?`,
  eraseBody: 'Name, address and numbers leave the file. This cannot be undone.',
  papersToo: 'also from plans that were handed over',
  eraseYes: 'Erase',
  eraseNo: 'Keep',
  erased: (starters: number, papers: number, cleared: boolean) =>
    ['Erased.', ...stays(starters, papers, cleared), 'Older backups still hold it until they expire.']
      .filter((sentence) => sentence !== '')
      .join(' '),
} as const;
