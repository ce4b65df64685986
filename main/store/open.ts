/**
 * Opening the data file. A file is looked at before SQLite may write to it: what is damaged, newer or another
 * program's is refused and left as it is, byte for byte.
 */
import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { acceptBackups } from './accepted.ts';
import { backUp, backupsFolder } from './backup.ts';
import { StoreError, storeCodeOf } from './fault.ts';
import { makeFolder, makePrivate, placeDurably } from './file.ts';
import { Keeper } from './keeper.ts';
import { lockFolder } from './lock.ts';
import { dataFile, lookAt, requireNeverThere } from './look.ts';
import { removeMark } from './mark.ts';
import { makeFile, migrate, setUp } from './migrate.ts';
import { MIGRATIONS, type Migration } from './migrations.ts';
import { finishPlacing } from './replace.ts';
import { breakSeal, seal } from './seal.ts';
import type { Timestamp } from './timestamp.ts';

export interface Store {
  readonly db: Database.Database;
  readonly folder: string;
  readonly file: string;
  /** The file was made just now. */
  readonly isNew: boolean;
  /** After a command: what it wrote is answered for from now on. */
  settle(): void;
  /** Whether the file and its log are still where they were opened. */
  isThere(): boolean;
  close(): void;
}

export interface StoreOptions {
  /** The data folder; made, for its owner only, if it is not there. */
  readonly folder: string;
  readonly now: () => Timestamp;
  /** Takes a file as it is that is whole but not as the program left it. */
  readonly asItIs?: boolean;
  /** A house was kept there before: StoreError `no-folder` where no file is, and nothing is made. */
  readonly mustExist?: boolean;
  /** The steps to the newest shape; another list only in tests. */
  readonly migrations?: readonly Migration[];
}

/** Opens the data file of a folder, making or migrating it as needed. Throws StoreError; see its codes. */
export function openStore(options: StoreOptions): Store {
  const { folder } = options;
  if (options.mustExist === true && !isHouse(folder))
    throw new StoreError('no-folder', `${folder} or its data file is not there`);
  prepareFolder(folder);
  const unlock = guarded(folder, () => lockFolder(folder));
  try {
    return guarded(folder, () => openLocked(options, unlock));
  } catch (error) {
    unlock();
    throw error;
  }
}

/** Whether a data file, or anything that says that there was one, lies there. */
function isHouse(folder: string): boolean {
  const file = dataFile(folder);
  return [file, `${file}-wal`, `${file}.seal`, `${file}.mark`, backupsFolder(folder)].some((path) => existsSync(path));
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
  finishPlacing(file);
  const isNew = !existsSync(file);
  if (isNew) {
    requireNeverThere(options.folder, file);
    makeNew(file, migrations);
  } else {
    lookAt({ ...options, file, newest: migrations.length });
    if (options.asItIs === true) acceptBackups(options.folder, file);
  }
  breakSeal(file);
  makePrivate(file);
  const db = new Database(file, { fileMustExist: true, timeout: 2000 });
  try {
    setUp(db);
    migrate(db, migrations, () => backUp(db, options.folder, options.now(), 'before-migration'));
    const keeper = new Keeper(db, file);
    return storeOf(options.folder, file, isNew, db, keeper, unlock);
  } catch (error) {
    db.close();
    throw error;
  }
}

function storeOf(folder: string, file: string, isNew: boolean, db: Database.Database, keeper: Keeper, unlock: () => void): Store {
  const close = (): void => {
    if (!db.open) return;
    const isThere = keeper.isThere();
    if (isThere) breakSeal(file);
    keeper.close();
    db.close();
    try {
      // Another file in its place is none that this program closed.
      if (isThere) {
        seal(file, 'closed');
        removeMark(file);
      }
    } catch {
      // Without a seal the next start has nothing to compare with, and opens.
    }
    unlock();
  };
  return { db, folder, file, isNew, settle: () => keeper.settle(), isThere: () => keeper.isThere(), close };
}

/** Builds the new file beside its place, so that an empty file in that place is never ours but a damaged one. */
function makeNew(file: string, migrations: readonly Migration[]): void {
  const fresh = `${file}.new`;
  makeFile(fresh, migrations);
  placeDurably(fresh, file);
}

function text(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
