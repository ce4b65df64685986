/** Sentences of the records: what was done, backups, where the data is. */
import type { Backup, Done } from '../../contract/records.ts';
import type { MassUnit } from '../../units/mass.ts';
import { isolated } from '../isolated.ts';
import { massText } from './amounts.ts';

/**
 * What one entry of the journal did: "Elder 2 365 g", "Litter of Hazel begun". Covers every command of the contract; an
 * entry of a newer program still gets its operation's name.
 */
export function doneSentence(done: Pick<Done, 'operation' | 'who' | 'grams'>, unit: MassUnit): string {
  const { grams } = done;
  const who = isolated(done.who);
  const weight = grams === null ? '' : ` ${massText(grams, unit)}`;
  switch (done.operation) {
    case 'litter.begin':
      return `Litter of ${who} begun`;
    case 'litter.change':
      return `Litter of ${who} changed`;
    case 'litter.remove':
      return `Litter of ${who} removed`;
    case 'litter.addPuppy':
      return `${who} added${weight === '' ? '' : `,${weight}`}`;
    case 'litter.changePuppy':
      return `${who} changed`;
    case 'litter.moveBirths':
      return `Births of the litter of ${who} moved`;
    case 'litter.removePuppy':
      return `${who} removed`;
    case 'litter.setState':
      return who;
    case 'litter.arrange':
      return `Order of the weigh-in, litter of ${who}`;
    case 'growth.record':
      return `${who}${weight}`;
    case 'growth.recordWeighing':
      return `Litter of ${who} weighed`;
    case 'growth.correctWeighing':
      return `Weights of the litter of ${who} corrected`;
    case 'growth.correct':
      return `${who} corrected to${weight}`;
    case 'growth.withdraw':
      return `${who}${weight} taken back`;
    case 'growth.keep':
      return `${who}${weight} kept as right`;
    case 'growth.give':
      return `${who}${weight}, written for a littermate before`;
    case 'growth.exchange':
      return `${who}: weights exchanged`;
    case 'feeding.setRules':
      return 'House rules changed';
    case 'feeding.setLitterRules':
      return `Rules of the litter of ${who} changed`;
    case 'food.add':
      return `Food written down: ${who}`;
    case 'food.change':
      return `Food changed: ${who}`;
    case 'food.retire':
      return `Food put away or taken back: ${who}`;
    case 'food.choose':
      return who === '' ? 'Food of the house chosen' : `Food chosen, litter of ${who}`;
    case 'food.setWeek':
    case 'food.changeWeek':
      return who === '' ? 'Week of bowls changed' : `Week of bowls changed, litter of ${who}`;
    case 'dogs.setGrown':
      return 'Grown dogs of the house changed';
    case 'weaning.setPlan':
      return `Weaning of the litter of ${who} set`;
    case 'weaning.changePlan':
    case 'weaning.changeSteps':
      return `Weaning of the litter of ${who} changed`;
    case 'weaning.dropPlan':
      return `Weaning of the litter of ${who} dropped`;
    case 'weaning.note':
      return who;
    case 'weaning.takeBack':
      return `${who}, taken back`;
    case 'dogs.damBegin':
      return `${who} written down as a dam`;
    case 'dogs.damChange':
      return `${who}, the dam, changed`;
    case 'dogs.damRemove':
      return `${who}, the dam, removed`;
    case 'dogs.damWeigh':
      return `${who}, the dam,${weight}`;
    case 'dogs.damWithdraw':
      return `${who}, the dam,${weight} taken back`;
    case 'freezer.add':
      return `${who} put in,${weight}`;
    case 'freezer.changePacks':
      return `Packs changed: ${who}`;
    case 'freezer.count':
      return `Freezer counted: ${who} packs`;
    case 'freezer.takeOut':
      return `${who},${weight}`;
    case 'freezer.thaw':
      return `${who} taken out to thaw,${weight}`;
    case 'freezer.endThaw':
      return who;
    case 'freezer.addDog':
    case 'freezer.changeDog':
      return `${who} eats from the freezer,${weight} a day`;
    case 'freezer.removeDog':
      return `${who} no longer eats from the freezer`;
    case 'freezer.addStarter':
    case 'freezer.changeStarter':
      return `Starter pack for ${who},${weight}`;
    case 'freezer.removeStarter':
      return `No starter pack for ${who}`;
    case 'freezer.setSettings':
      return 'Settings of the freezer changed';
    case 'homing.handOver':
      return `Plan of ${who} handed over`;
    case 'people.eraseHouse':
      return 'House erased';
    case 'people.setHouse':
      return 'Details of the house changed';
    case 'records.import':
      return `Weights of ${who}’s litter taken in from a table`;
    case 'records.takeIn':
      return 'A whole house taken in';
    case 'records.undo':
      return 'Undone';
    case 'records.redo':
      return 'Done again';
    case 'records.addDemo':
      return 'Invented litters added';
    case 'records.removeDemo':
      return 'Invented litters removed';
    default:
      return `${done.operation} ${who}${weight}`.trim();
  }
}

const KINDS: Record<Backup['kind'], string> = {
  daily: 'of the day',
  'before-migration': 'before an update',
  'before-restore': 'before going back',
  'by-hand': 'by hand',
};

export const recordsWords = {
  title: 'Records',
  lead: 'One file on this computer, and it is yours. No network, no account.',
  loading: 'Looking at the file …',
  data: 'Where it is',
  file: 'data file',
  size: 'size',
  version: 'program',
  versionFigure: (version: string) => `Whelpside ${version}`,
  papers: 'printed papers',
  demo: 'invented litters',
  demoThere: 'are in the file, marked; they are removed on the page Litters',
  lastBackup: 'last backup',
  noBackup: 'none yet; the first is made when the first weights are in',
  checked: 'opened and checked',
  notChecked: 'not whole; do not rely on it',
  backups: 'Backups',
  backupsNote:
    'On every day that something is written, one copy is made before the first weight and one with the day’s own weights: at two in the afternoon, after a quarter of an hour’s quiet, and when the program is closed. One more before every update, and when you ask. They lie beside the data file, in the folder “backups”.',
  backUp: 'Back up now',
  backingUp: 'Copying …',
  backedUp: (file: string) => `Copied and checked: ${file}`,
  date: 'made',
  kind: 'kind',
  kinds: KINDS,
  bytes: 'size',
  state: 'state',
  name: 'file name',
  goBack: 'way back',
  done: 'Done, latest first',
  doneNote: 'Nothing is lost by undoing: a weight that was taken back stays in the file, struck through.',
  undo: (what: string) => `Undo: ${what}`,
  redo: (what: string) => `Redo: ${what}`,
  nothingDone: 'Nothing has been done yet.',
  undoneWord: 'undone',
  more: 'Show more',
  faults: 'Mistakes of the program',
  faultsNote: (file: string) =>
    `What went wrong inside the program, latest first, without weights and without names of folders. To have it mended, send these lines, or the file ${file}.`,
  noFaults: 'None was noticed.',
  bytesFigure: (bytes: number) =>
    bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1000))}\u00a0kB` : `${(bytes / 1_000_000).toFixed(1)}\u00a0MB`,
} as const;
