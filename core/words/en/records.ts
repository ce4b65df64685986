/** Sentences of the records: backups, where the data is. */
import type { Backup } from '../../contract/records.ts';

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
