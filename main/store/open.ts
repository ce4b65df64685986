/**
 * Opening the data file. A file is looked at before SQLite may write to it: what is damaged, newer or another
 * program's is refused and left as it is, byte for byte.
 */
import { existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { backUp } from './backup.ts';
import { StoreError, storeCodeOf } from './fault.ts';
import { APPLICATION_ID, isWhole, makeFolder, makePrivate, placeDurably, readHeader, sideFiles } from './file.ts';
import { lockFolder } from './lock.ts';
import { MIGRATIONS, type Migration } from './migrations.ts';
import type { Moment } from './moment.ts';
import { setLogAside } from './replace.ts';
import { breakSeal, seal, sealState } from './seal.ts';

const FILE_NAME = 'whelpside.sqlite';

/** The data file of a data folder. */
export function dataFile(folder: string): string {
  return join(folder, FILE_NAME);
}

export interface Store {
  readonly db: Database.Database;
  readonly folder: string;
  readonly file: string;
  /** The file was made just now. */
  readonly isNew: boolean;
  close(): void;
}

export interface StoreOptions {
  /** The data folder; made, for its owner only, if it is not there. */
  readonly folder: string;
  readonly now: () => Moment;
  /** Takes a file as it is that is whole but not as the program left it. */
  readonly asItIs?: boolean;
  /** The steps to the newest shape; another list only in tests. */
  readonly migrations?: readonly Migration[];
}

/** Opens the data file of a folder, making or migrating it as needed. Throws StoreError; see its codes. */
export function openStore(options: StoreOptions): Store {
  const { folder } = options;
  prepareFolder(folder);
  const unlock = guarded(folder, () => lockFolder(folder));
  try {
    return guarded(folder, () => openLocked(options, unlock));
  } catch (error) {
    unlock();
    throw error;
  }
}

function prepareFolder(folder: string): void {
  try {
    makeFolder(folder);
  } catch (error) {
    const code = storeCodeOf(error) ?? 'no-folder';
    throw new StoreError(code, `the data folder ${folder} can't be made: ${text(error)}`);
  }
}

function guarded<T>(folder: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof StoreError) throw error;
    const code = storeCodeOf(error);
    if (code === null) throw error;
    throw new StoreError(code, `the data file in ${folder} can't be used: ${text(error)}`);
  }
}

function openLocked(options: StoreOptions, unlock: () => void): Store {
  const migrations = options.migrations ?? MIGRATIONS;
  const file = dataFile(options.folder);
  const isNew = !existsSync(file);
  if (isNew) makeFile(file, migrations);
  else checkFile(file, migrations, options);
  breakSeal(file);
  makePrivate(file);
  const db = new Database(file, { fileMustExist: true, timeout: 2000 });
  try {
    setUp(db);
    migrate(db, migrations, () => backUp(db, options.folder, options.now(), 'before-migration'));
  } catch (error) {
    db.close();
    throw error;
  }
  return {
    db,
    folder: options.folder,
    file,
    isNew,
    close: () => {
      if (!db.open) return;
      db.close();
      try {
        seal(file);
      } catch {
        // Without a seal the next start has nothing to compare with, and opens.
      }
      unlock();
    },
  };
}

/** Builds the new file beside its place, so that an empty file in that place is never ours but a damaged one. */
function makeFile(file: string, migrations: readonly Migration[]): void {
  if (existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0) {
    throw new StoreError(
      'damaged',
      `${file} is missing but its write-ahead log is there: put the file back, or move the log away`,
    );
  }
  const fresh = `${file}.new`;
  for (const path of [fresh, ...sideFiles(fresh)]) rmSync(path, { force: true });
  makePrivate(fresh);
  const db = new Database(fresh);
  try {
    db.pragma('auto_vacuum = INCREMENTAL'); // only before the first table
    db.pragma(`application_id = ${APPLICATION_ID}`);
    migrate(db, migrations, () => undefined);
  } finally {
    db.close();
  }
  placeDurably(fresh, file);
}

function checkFile(file: string, migrations: readonly Migration[], { asItIs, now }: StoreOptions): void {
  const newest = migrations.length;
  const header = readHeader(file);
  if (header === null) throw new StoreError('damaged', `${file} is damaged, or is not a data file of this program`);
  if (header.applicationId !== APPLICATION_ID) throw new StoreError('foreign', `${file} belongs to another program`);
  if (header.userVersion > newest) throw newer(file, header.userVersion, newest);
  const state = sealState(file);
  // A file that was closed in order has no log: one that lies beside it is of another file, and would be read into it.
  if (state === 'kept') setLogAside(file, now());
  if (!isWhole(file)) throw new StoreError('damaged', `${file} is damaged: its contents are not whole`);
  if (state === 'changed' && asItIs !== true) throw new StoreError('changed', `${file} is not as this program left it`);
  // The log may hold a later version than the header in the file itself.
  const version = versionOf(file);
  if (version > newest) throw newer(file, version, newest);
}

function newer(file: string, version: number, newest: number): StoreError {
  return new StoreError(
    'newer',
    `${file} was written by a newer version (its shape is ${version}, this program knows ${newest})`,
  );
}

function versionOf(file: string): number {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return Number(db.pragma('user_version', { simple: true }));
  } finally {
    db.close();
  }
}

function setUp(db: Database.Database): void {
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('fullfsync = ON'); // macOS: through the drive's own cache; no effect elsewhere
  db.pragma('foreign_keys = ON');
  db.pragma('secure_delete = ON');
  db.pragma('trusted_schema = OFF');
}

function migrate(db: Database.Database, migrations: readonly Migration[], before: () => void): void {
  const version = Number(db.pragma('user_version', { simple: true }));
  if (version >= migrations.length) return;
  before();
  for (const step of migrations.slice(version)) {
    try {
      db.transaction(() => {
        db.exec(step.sql);
        db.pragma(`user_version = ${step.version}`);
      }).immediate();
    } catch (error) {
      throw new StoreError(storeCodeOf(error) ?? 'update', `step ${step.version} (${step.name}) failed: ${text(error)}`);
    }
  }
}

function text(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
