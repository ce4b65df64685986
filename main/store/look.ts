/**
 * A look at a data folder before SQLite may write into it: whether the file there is this program's, whole, and holds
 * all that was answered when the program last ran. What is not in order is left as it is, byte for byte.
 */
import { copyFileSync, existsSync, lstatSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { lackOfNewestBackup } from './accepted.ts';
import { listBackups } from './backup.ts';
import { StoreError } from './fault.ts';
import { APPLICATION_ID, isIntact, readHeader, sideFiles } from './file.ts';
import { isLogBroken, logPageSize, readLog } from './log.ts';
import { lastEntry, readMark } from './mark.ts';
import { setAside } from './replace.ts';
import { hasSeal, type SealState, sealState } from './seal.ts';
import type { Timestamp } from './timestamp.ts';

const FILE_NAME = 'whelpside.sqlite';

/** The data file of a data folder; where a link leads, when it is one. */
export function dataFile(folder: string): string {
  const path = join(folder, FILE_NAME);
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/** StoreError `damaged` when there is no file but something that says that there was one: then it is not a new house. */
export function requireNeverThere(folder: string, file: string): void {
  const traces: [boolean, string][] = [
    [sizeOf(`${file}-wal`) > 0, 'its write-ahead log is there: put the file back, or move the log away'],
    [lstatSync(file, { throwIfNoEntry: false }) !== undefined, 'a link leads to where nothing is'],
    [hasSeal(file), 'its seal is there'],
    [readMark(file) !== null, 'its mark is there'],
    [listBackups(folder).length > 0, 'its backups are there'],
  ];
  const trace = traces.find(([found]) => found);
  if (trace !== undefined) throw new StoreError('damaged', `${file} is missing but ${trace[1]}`);
}

/** Whether a file that says it is another program's, or a newer one's, lies where a file of this program lay. */
export function hadOwnFile(folder: string): boolean {
  const file = dataFile(folder);
  return hasSeal(file) || readMark(file) !== null || listBackups(folder).some((b) => b.checked) || hasOwnTables(file);
}

function hasOwnTables(file: string): boolean {
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    try {
      const own =
        "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name IN ('litters', 'puppies', 'readings', 'journal')";
      return db.prepare<[], number>(own).pluck().get() === 4;
    } finally {
      db.close();
    }
  } catch {
    return false;
  }
}

interface Look {
  readonly folder: string;
  readonly file: string;
  /** The newest shape that is known. */
  readonly newest: number;
  readonly asItIs?: boolean;
  readonly now: () => Timestamp;
}

/**
 * Throws StoreError `damaged`, `foreign`, `newer`, `changed` or `older`. With `asItIs` a file that is whole passes,
 * however it came to be what it is.
 */
export function lookAt({ folder, file, newest, asItIs = false, now }: Look): void {
  const header = readHeader(file);
  if (header === null) throw new StoreError('damaged', `${file} is damaged, or is not a data file of this program`);
  if (header.applicationId !== APPLICATION_ID) throw new StoreError('foreign', `${file} belongs to another program`);
  if (header.userVersion > newest) throw newer(file, header.userVersion, newest);
  const state = sealState(file);
  // A file that was closed in order has no log: one that lies beside it is of another file, and would be read into it.
  if (state === 'closed') for (const end of ['-wal', '-journal'] as const) setAside(file, end, now());
  else {
    lookAtLog(file, state);
    rollBack(file);
  }
  if (!isIntact(file)) throw new StoreError('damaged', `${file} is damaged: its contents are not whole`);
  if (state === 'changed' && !asItIs) throw new StoreError('changed', `${file} is not as this program left it`);
  // The log may hold a later version than the header in the file itself.
  const [version, last] = read(file, (db) => [Number(db.pragma('user_version', { simple: true })), lastEntry(db)]);
  if (version > newest) throw newer(file, version, newest);
  if (asItIs) return;
  const mark = readMark(file);
  if (mark !== null && last < mark.last) throw new StoreError('older', `${file} lacks what was written last`);
  const lack = lackOfNewestBackup(folder, file);
  if (lack > 0) throw new StoreError('older', `${file} lacks ${lack} rows that its newest backup holds`);
}

function newer(file: string, version: number, newest: number): StoreError {
  return new StoreError(
    'newer',
    `${file} was written by a newer version (its shape is ${version}, this program knows ${newest})`,
  );
}

function read<T>(file: string, work: (db: Database.Database) => T): T {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return work(db);
  } finally {
    db.close();
  }
}

function lookAtLog(file: string, state: SealState): void {
  const bytes = existsSync(`${file}-wal`) ? readFileSync(`${file}-wal`) : Buffer.alloc(0);
  const log = readLog(bytes, logPageSize(bytes) || 4096);
  const mark = readMark(file);
  // Ended while it closed or folded its log in, the file has no seal, and the log may be gone in order.
  if (log === null && state === 'none') return;
  if (isLogBroken(log, mark)) throw new StoreError('damaged', `the write-ahead log of ${file} is damaged`);
}

/**
 * Rolls a hot journal back, which a program leaves that ended while it made or changed a file without a log. Tried on a
 * copy first: a journal that is not the file's own would be written into it.
 */
function rollBack(file: string): void {
  const journal = `${file}-journal`;
  if (sizeOf(journal) === 0) return;
  const trial = `${file}.trial`;
  const clear = () => {
    for (const path of [trial, ...sideFiles(trial)]) rmSync(path, { force: true });
  };
  clear();
  try {
    for (const end of ['', '-journal', '-wal']) if (existsSync(file + end)) copyFileSync(file + end, trial + end);
    if (!rolledBack(trial)) throw new StoreError('damaged', `${file} is damaged: its journal does not lead back to a whole file`);
  } finally {
    clear();
  }
  rolledBack(file);
}

function rolledBack(file: string): boolean {
  try {
    const db = new Database(file, { fileMustExist: true });
    try {
      return db.pragma('quick_check', { simple: true }) === 'ok';
    } finally {
      db.close();
    }
  } catch (error) {
    if (error instanceof Database.SqliteError && /^SQLITE_(CORRUPT|NOTADB)/.test(error.code)) return false;
    throw error;
  }
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}
