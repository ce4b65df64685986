/**
 * One program at a time on a data folder. The lock is SQLite's exclusive file lock on a file of its own: the system
 * lets go of it when the process ends, however it ends, so that a lock can't be left behind.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { StoreError, storeCodeOf } from './fault.ts';
import { makePrivate } from './file.ts';

/** Takes the lock; answers what lets go of it. StoreError `locked` when another program has it. */
export function lockFolder(folder: string, mayRenew = true): () => void {
  const file = join(folder, 'whelpside.lock');
  makePrivate(file);
  const db = new Database(file, { timeout: 0 });
  try {
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    // Something else was written into it: nobody holds a lock on that, and nothing of hers is in it.
    if (storeCodeOf(error) === 'damaged' && mayRenew) return renewed(folder, file);
    if (storeCodeOf(error) === 'locked') {
      throw new StoreError('locked', `${folder} is open in another window of this program`);
    }
    throw error;
  }
  return () => db.close();
}

function renewed(folder: string, file: string): () => void {
  rmSync(file, { force: true });
  return lockFolder(folder, false);
}
