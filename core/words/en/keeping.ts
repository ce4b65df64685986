/** Sentences of keeping the file: copies to other folders, going back to one, a damaged file. */
import type { Counts } from '../../contract/records.ts';
import type { ErrorCode } from '../../contract/result.ts';

const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** "2 litters, 14 puppies, 233 weights; the last written yesterday 19:10" */
export function countsText(c: Counts, last: string | null): string {
  const all = [
    counted(c.litters, 'litter', 'litters'),
    counted(c.puppies, 'puppy', 'puppies'),
    counted(c.readings, 'weight', 'weights'),
  ].join(', ');
  return last === null ? all : `${all}; the last written ${last}`;
}

const FAILED: Partial<Record<ErrorCode, string>> = {
  'bad-input': 'Write the whole path of the folder, from the top: /media/stick, or E:\\ on Windows.',
  'not-found': 'That is not there. Is the stick in, and is the path right?',
  'disk-full': 'There is not enough room. Nothing was changed, and nothing half was left there.',
  'read-only': 'That folder cannot be written to. Check its permissions, or choose another one.',
  damaged: 'That copy is not whole, so it was left alone. Nothing was changed.',
  busy: 'Another program holds the file just now. Close it there, then try again.',
  unreachable: 'The program does not answer. Is it still running?',
};

export const keepingWords = {
  elsewhere: 'To a stick or another folder',
  elsewhereNote:
    'A computer can be lost with everything on it. Put in a stick now and then and copy the file there; the copy is opened and checked before it gets its name.',
  folder: 'folder',
  choose: 'Choose …',
  copyThere: 'Copy there now',
  copying: 'Copying …',
  copied: (file: string) => `Copied and checked: ${file}`,
  look: 'Look for backups there',
  looking: 'Looking …',
  foundNone: 'No backup of this program lies there.',
  found: (n: number) => `${counted(n, 'backup lies', 'backups lie')} there:`,
  goBack: 'Go back to it',
  goBackAsk: 'What was written after it is set aside, as a backup of its own.',
  goBackNow: 'Go back now',
  leaveIt: 'Leave it',
  goingBack: 'Going back …',
  wentBack: 'You are back.',
  wentBackHow: (kept: string) => `What stood here before is kept as ${kept}.`,
  moving:
    'To go on with another computer: copy the file to a stick here, start Whelpside there, and under Records go back to the copy on the stick.',
  failed: (code: ErrorCode): string => FAILED[code] ?? 'That did not work, and nothing was changed.',
} as const;

export const rescueWords = {
  titles: {
    damaged: 'The data file is damaged.',
    changed: 'The data file is not as it was left.',
    older: 'The data file lacks what was written last.',
    newer: 'The data file is from a newer Whelpside.',
    foreign: 'The data file says that it is another program’s.',
    update: 'The data file could not be brought to this version.',
    lost: 'The data file is missing.',
    locked: 'Whelpside is already open on this folder.',
    'read-only': 'The data folder can’t be written.',
    'disk-full': 'The disk is full.',
    'no-folder': 'The data folder is not there.',
    stranger: 'Another program’s file lies in this folder.',
  },
  leads: {
    damaged: 'Nothing was changed. Whatever you choose, the damaged file is kept beside the new one.',
    changed:
      'It is whole, but something else than this program wrote to it since it was last closed. Nothing was changed by looking.',
    older:
      'It is whole, but weights that were written, or that a backup holds, are not in it: an older file may have been put in its place. Nothing was changed by looking.',
    newer:
      'Install the newer Whelpside to go on with it. Or go back to a backup that this one can read: the newer file is kept beside it.',
    foreign:
      'It lies where your file lay, so its first page may be damaged. Nothing was changed. Whatever you choose, this file is kept beside the new one.',
    update:
      'It keeps its old shape, and nothing in it was lost. Send the line under Mistakes of the program in Records, or go back to a backup.',
    lost: 'What belongs to it is there, the file is not. If you moved it, close this program, put it back and start again.',
    locked: 'Use the window that is open, or close it and try again here. Nothing was changed.',
    'read-only':
      'The program may not write there: a stick with its lock on, or a folder of somebody else. Nothing was changed, and nothing is lost.',
    'disk-full': 'Nothing was changed, and nothing is lost. Make some room and try again, or go on in another folder.',
    'no-folder': 'It can’t be reached or made. If it is on a stick or another disk, put that in and try again.',
    stranger: 'It says that it is not Whelpside’s, and it was left alone. Choose another folder.',
  },
  file: 'data file',
  size: 'size',
  readable: 'can be read',
  readsNothing: 'nothing',
  back: 'Go back to the newest good backup',
  backMade: (when: string, counts: string) => `Made ${when}: ${counts}.`,
  missing: (n: number, last: string | null) =>
    n === 0
      ? 'As far as the damaged file can be read, no weight is missing in it.'
      : `Missing in it: at least ${counted(n, 'weight', 'weights')} that can be read in the damaged file${last === null ? '' : `, the last written ${last}`}. Write them again, or take what can be read.`,
  missingUnknown: 'What was written after it is not in it.',
  noBackup: 'There is no good backup beside the file. There may be one on a stick.',
  backNow: 'Go back to this backup',
  take: 'Take what can be read',
  takeNote: (counts: string) =>
    `A new file from what is whole: ${counts}. Look through it: a figure on a bad spot of the disk can be wrong without a mark. The list of things done begins anew.`,
  takeNothing: 'Nothing of this file can be read.',
  takeNow: 'Take what can be read',
  took: 'Taken.',
  tookHow: (kept: string, leftOut: number, fromBackups: number) =>
    [
      leftOut === 0 ? 'Nothing that was found had to be left out.' : `${counted(leftOut, 'row', 'rows')} could not be read.`,
      fromBackups === 0 ? '' : `${counted(fromBackups, 'row comes', 'rows come')} from a backup instead.`,
      `The damaged file is kept as ${kept}.`,
    ]
      .filter((sentence) => sentence !== '')
      .join(' '),
  asItIs: 'Go on with it as it is',
  asItIsNote:
    'If you put this file here yourself, a backup perhaps, that is right. If you did not, the disk may have changed a figure: going back to a backup is safer.',
  asItIsNow: 'Go on with it as it is',
  anew: 'Begin with an empty house',
  anewNote: 'When nothing else is left. What lies here now is kept beside, and its backups stay.',
  anewNow: 'Begin with an empty house',
  others: 'Other backups',
  fromElsewhere: 'A backup on a stick or in another folder:',
  notWhole: 'not whole',
  working: 'Working …',
  again: 'Try again',
  againNote: 'When what stood in the way is gone.',
  againNow: 'Try again',
  stillSo: 'It is still so.',
  other: 'Go on in another folder',
  otherNote: 'With the data that lies there; in an empty folder with an empty house, into which Records brings a backup back.',
  otherAlongNote: 'Your data file is copied there with everything in it. The one that lies here stays as it is.',
  otherUsual: (folder: string) => `The usual folder on this computer is ${folder}.`,
  along: 'Take my data along',
  otherNow: 'Go on there',
  otherIsThere: 'A data file lies there already. Go on with that one, or choose an empty folder.',
  moved: 'You go on in another folder.',
  movedHow: (folder: string, remembered: boolean) =>
    remembered
      ? `It is ${folder}, at the next start too.`
      : `It is ${folder}. The next start looks in the old one again: start it with --data and this folder.`,
} as const;
