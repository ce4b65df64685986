/** What stands on the terminal when the data file can't be opened, one sentence for each reason; the window says more. */

import { type StoreCode, StoreError } from '../store/fault.ts';
import type { Timestamp } from '../store/timestamp.ts';
import { faultFile, noteFault } from './fault-log.ts';

const SENTENCES: Readonly<Record<StoreCode, string>> = {
  damaged: 'The data file is damaged. It was left as it is; the backups beside it are whole copies to go back to.',
  changed:
    'The data file is not as the program left it. It was left as it is; the backups beside it are whole copies to go back to.',
  older: 'The data file lacks what was written last. It was left as it is; the backups beside it are whole copies to go back to.',
  newer: 'The data file was written by a newer Whelpside. Install the newer one to open it.',
  foreign: 'The data file in this folder belongs to another program. Choose another folder.',
  locked: 'Whelpside is already open on this folder. Use that window, or close it first.',
  'read-only': 'The data folder cannot be written. Make it writable, or choose another folder.',
  'disk-full': 'The disk is full. Make some room and start again.',
  'no-folder': 'The data folder cannot be made. Choose another folder.',
  update: 'The data file could not be brought to this version. It keeps its old shape, and a backup was made before.',
};

/** What she reads when the program made a mistake while it started; what it was stands in the faults file. */
export function startFault(error: unknown, folder: string, at: { now: Timestamp; version: string }): string {
  noteFault(folder, { ...at, operation: 'start', error });
  return `Whelpside could not start: something went wrong inside it. Nothing was changed; what it was is written in ${faultFile(folder)}.`;
}

/** The sentence and the folder it is about, or null when the error is not one of opening the data. */
export function sentenceFor(error: unknown, folder: string): string | null {
  return error instanceof StoreError ? `${SENTENCES[error.code]} (${folder})` : null;
}
