/**
 * Another file in the place of the data file: a copy that is gone back to, what was salvaged, or an empty one. What stood
 * there is kept beside under a name of its own, with its log, before anything is touched. The folder's lock must be held.
 */

import { copyFileSync, existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { Counts } from '../../core/contract/records.ts';
import { acceptBackups, tellingBackups } from './accepted.ts';
import { countsIn, weightIds } from './counts.ts';
import { StoreError } from './fault.ts';
import { APPLICATION_ID, isIntact, makePrivate, placeDurably, readHeader, sideFiles, syncFile, syncFolder } from './file.ts';
import { removeMark } from './mark.ts';
import { makeFile, migrate, setUp } from './migrate.ts';
import { MIGRATIONS } from './migrations.ts';
import { type Salvaged, salvage } from './salvage.ts';
import { hasSeal, sealAhead, sealState } from './seal.ts';
import type { Timestamp } from './timestamp.ts';

/** Where a data file is, and the moment by which what stood there is named. */
export interface Place {
  readonly folder: string;
  readonly file: string;
  readonly now: Timestamp;
}

/** Keeps the data file, its log and its journal under a new name beside it, whole or damaged, and answers the name. */
function keepBeside(file: string, now: Timestamp): string {
  const folder = dirname(file);
  const name = freeName(folder, now);
  for (const end of ['-journal', '-wal', '']) keepOne(file + end, join(folder, name) + end);
  syncFolder(folder);
  return name;
}

function freeName(folder: string, now: Timestamp): string {
  const stem = `whelpside-set-aside-${dateOf(now.local)}-${clockOf(now.local).replace(':', '')}`;
  for (let n = 1; ; n += 1) {
    const name = `${stem}${n === 1 ? '' : `-${n}`}.sqlite`;
    if (['', '-wal', '-journal'].every((end) => !existsSync(join(folder, name + end)))) return name;
  }
}

/** Moves a log or journal that is not the data file's own out of its way, where there is one. */
export function setAside(file: string, end: '-wal' | '-journal', now: Timestamp): void {
  const stray = file + end;
  if ((statSync(stray, { throwIfNoEntry: false })?.size ?? 0) === 0) return;
  const folder = dirname(file);
  renameSync(stray, join(folder, `${freeName(folder, now)}${end}`));
  rmSync(`${file}-shm`, { force: true });
  syncFolder(folder);
}

function keepOne(file: string, kept: string): void {
  if (statSync(file, { throwIfNoEntry: false })?.isFile() !== true) return;
  const part = `${kept}.part`;
  rmSync(part, { force: true });
  makePrivate(part);
  copyFileSync(file, part);
  syncFile(part);
  renameSync(part, kept);
}

/**
 * Puts a whole, closed file in place of the old one and its log. It is sealed before: a power cut leaves the old one, or
 * what the next start finishes.
 */
function place(fresh: string, folder: string, file: string): void {
  acceptBackups(folder, file);
  syncFile(fresh);
  sealAhead(file, fresh);
  putInPlace(fresh, file);
}

function putInPlace(fresh: string, file: string): void {
  removeMark(file); // it is the old file's
  for (const side of sideFiles(file)) rmSync(side, { force: true });
  placeDurably(fresh, file);
}

const freshOf = (file: string): string => `${file}.new`;

/** Finishes what a power cut or a kill broke off between the sealing of a new file and its being put in place. */
export function finishPlacing(file: string): void {
  const fresh = freshOf(file);
  if (!existsSync(fresh) || !hasSeal(file) || sealState(file, fresh) !== 'closed') return;
  if (existsSync(file) && sealState(file) !== 'changed') return;
  putInPlace(fresh, file);
}

function freshBeside(file: string): string {
  const fresh = freshOf(file);
  for (const path of [fresh, ...sideFiles(fresh)]) rmSync(path, { force: true });
  return fresh;
}

/** Makes a new file beside, by `make`, and puts it in place of the old one. When it can't be made, nothing is touched. */
function replace<T>(
  { folder, file }: Omit<Place, 'now'>,
  now: Timestamp | null,
  make: (fresh: string) => T,
): T & { kept: string } {
  const fresh = freshBeside(file);
  try {
    const made = make(fresh);
    const kept = now === null ? '' : keepBeside(file, now);
    place(fresh, folder, file);
    return { ...made, kept };
  } catch (error) {
    freshBeside(file);
    throw error;
  }
}

/**
 * Goes back to a copy. StoreError `damaged`, `foreign`, `newer` or `update` when the copy can't be used, and nothing is
 * touched. Answers what the copy holds and the name under which the file that stood there is kept: without `now` none is,
 * since a whole copy of it was made.
 */
export function goBackTo(copy: string, at: Omit<Place, 'now'>, now: Timestamp | null): { kept: string; counts: Counts } {
  checkCopy(copy);
  return replace(at, now, (fresh) => {
    makePrivate(fresh);
    copyFileSync(copy, fresh);
    checkCopy(fresh);
    return { counts: proven(fresh) };
  });
}

/** Brings a file to the newest shape, gives it a log, and reads it: what it can't do here it could not do in its place. */
function proven(fresh: string): Counts {
  const db = new Database(fresh, { fileMustExist: true });
  try {
    setUp(db);
    migrate(db, MIGRATIONS, () => undefined);
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0)
      throw new StoreError('damaged', 'rows name rows that are not there');
    return countsIn(db);
  } finally {
    db.close();
  }
}

function checkCopy(copy: string): void {
  const header = statSync(copy).size < 100 ? null : readHeader(copy);
  if (header === null || !isIntact(copy)) throw new StoreError('damaged', 'the copy is not whole');
  if (header.applicationId !== APPLICATION_ID) throw new StoreError('foreign', "the copy is another program's");
  if (header.userVersion > MIGRATIONS.length) throw new StoreError('newer', 'the copy was written by a newer version');
}

/** Puts what can be read of the file in its place, with what the backups hold of the rest. */
export function replaceBySalvage(at: Place): Salvaged & { kept: string } {
  return replace(at, at.now, (fresh) => {
    const salvaged = salvage(at.file, fresh, tellingBackups(at.folder, at.file));
    if (!isIntact(fresh)) throw new StoreError('damaged', 'what was salvaged is not whole');
    return { ...salvaged, counts: proven(fresh) };
  });
}

/** Puts an empty file in its place. */
export function replaceByNew(at: Place): { kept: string } {
  return replace(at, at.now, (fresh) => {
    makeFile(fresh);
    return {};
  });
}

/**
 * Copies a closed data file, whole or not, with all that belongs to it, to where none is: the file itself last, so that a cut
 * leaves none. What it is copied from is only read.
 */
export function takeFileAlong(file: string, to: string): void {
  for (const end of ['-wal', '-journal', '.mark', '.accepted', '.seal', '']) {
    if (!existsSync(file + end)) continue;
    const part = `${to}${end}.part`;
    rmSync(part, { force: true });
    makePrivate(part);
    writeFileSync(part, readFileSync(file + end));
    placeDurably(part, to + end);
  }
}

/** What an open connection holds, as a file beside. */
export function freshCopy(db: Database.Database, file: string): string {
  const fresh = freshBeside(file);
  makePrivate(fresh); // VACUUM INTO takes an empty file, and keeps its mode
  db.prepare('VACUUM INTO ?').run(fresh);
  return fresh;
}

/**
 * Puts back a file that was taken away, or exchanged, under the open connection that still holds it: `fresh` is the copy
 * that the connection wrote.
 */
export function putBack(fresh: string, at: Place): void {
  proven(fresh);
  if (existsSync(at.file)) keepBeside(at.file, at.now);
  place(fresh, at.folder, at.file);
}

export interface Salvageable {
  readonly counts: Counts;
  /** The ids of its weights. */
  readonly weights: ReadonlySet<string>;
}

/** What a salvage would bring, without keeping it; null when it can't be made (no room, for one). */
export function salvageable({ folder, file }: Omit<Place, 'now'>): Salvageable | null {
  const trial = `${file}.trial`;
  const clear = () => {
    for (const path of [trial, ...sideFiles(trial)]) rmSync(path, { force: true });
  };
  try {
    clear();
    const { counts } = salvage(file, trial, tellingBackups(folder, file));
    return { counts, weights: weightIds(trial) };
  } catch {
    return null;
  } finally {
    clear();
  }
}
