/**
 * Another file in the place of the data file: a copy that is gone back to, or what was salvaged. What stood there is
 * kept beside under a name of its own, with its log, before anything is touched. The folder's lock must be held.
 */

import { copyFileSync, existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { Contents } from '../../core/contract/records.ts';
import { contentsOf, weightIds } from './contents.ts';
import { StoreError } from './fault.ts';
import { APPLICATION_ID, isWhole, makePrivate, placeDurably, readHeader, sideFiles, syncFile, syncFolder } from './file.ts';
import { MIGRATIONS } from './migrations.ts';
import type { Moment } from './moment.ts';
import { type Salvaged, salvage } from './salvage.ts';
import { breakSeal } from './seal.ts';

/** Keeps the data file and its log under a new name beside it, whole or damaged, and answers the name. */
function keepBeside(file: string, now: Moment): string {
  const folder = dirname(file);
  const name = freeName(folder, now);
  for (const end of ['-wal', '']) keepOne(file + end, join(folder, name) + end);
  syncFolder(folder);
  return name;
}

function freeName(folder: string, now: Moment): string {
  const stem = `whelpside-set-aside-${dateOf(now.local)}-${clockOf(now.local).replace(':', '')}`;
  for (let n = 1; ; n += 1) {
    const name = `${stem}${n === 1 ? '' : `-${n}`}.sqlite`;
    if (!existsSync(join(folder, name)) && !existsSync(join(folder, `${name}-wal`))) return name;
  }
}

/** Moves a log that is not the data file's own out of its way, where there is one. */
export function setLogAside(file: string, now: Moment): void {
  const log = `${file}-wal`;
  if ((statSync(log, { throwIfNoEntry: false })?.size ?? 0) === 0) return;
  const folder = dirname(file);
  renameSync(log, join(folder, `${freeName(folder, now)}-wal`));
  rmSync(`${file}-shm`, { force: true });
  syncFolder(folder);
}

function keepOne(file: string, kept: string): void {
  if (!existsSync(file)) return;
  const part = `${kept}.part`;
  rmSync(part, { force: true });
  makePrivate(part);
  copyFileSync(file, part);
  syncFile(part);
  renameSync(part, kept);
}

/** Puts a whole new file in place of the old one and its log. A power cut leaves the old one, kept twice, or the new. */
function place(fresh: string, file: string): void {
  breakSeal(file);
  for (const side of sideFiles(file)) rmSync(side, { force: true });
  placeDurably(fresh, file);
}

function freshBeside(file: string): string {
  const fresh = `${file}.new`;
  for (const path of [fresh, ...sideFiles(fresh)]) rmSync(path, { force: true });
  return fresh;
}

/**
 * Goes back to a copy. StoreError `damaged`, `foreign` or `newer` when the copy can't be used, and nothing is touched.
 * Answers what the copy holds and the name under which the file that stood there is kept: with `now` null none is, since
 * a whole copy of it was made.
 */
export function goBackTo(copy: string, file: string, now: Moment | null): { kept: string; contents: Contents } {
  checkCopy(copy);
  const fresh = freshBeside(file);
  try {
    makePrivate(fresh);
    copyFileSync(copy, fresh);
    checkCopy(fresh);
    const contents = contentsOf(fresh);
    const kept = now === null ? '' : keepBeside(file, now);
    place(fresh, file);
    return { kept, contents };
  } catch (error) {
    freshBeside(file);
    throw error;
  }
}

function checkCopy(copy: string): void {
  const header = statSync(copy).size < 100 ? null : readHeader(copy);
  if (header === null || !isWhole(copy)) throw new StoreError('damaged', 'the copy is not whole');
  if (header.applicationId !== APPLICATION_ID) throw new StoreError('foreign', "the copy is another program's");
  if (header.userVersion > MIGRATIONS.length) throw new StoreError('newer', 'the copy was written by a newer version');
}

/** Puts what can be read of the file in its place. Answers the name under which the damaged one is kept. */
export function replaceBySalvage(file: string, now: Moment): Salvaged & { kept: string } {
  const fresh = freshBeside(file);
  try {
    const salvaged = salvage(file, fresh);
    if (!isWhole(fresh)) throw new StoreError('damaged', 'what was salvaged is not whole');
    const kept = keepBeside(file, now);
    place(fresh, file);
    return { ...salvaged, kept };
  } catch (error) {
    freshBeside(file);
    throw error;
  }
}

export interface Salvageable {
  readonly contents: Contents;
  /** The ids of its weights. */
  readonly weights: ReadonlySet<string>;
}

/** What a salvage would bring, without keeping it; null when it can't be made (no room, for one). */
export function salvageable(file: string): Salvageable | null {
  const trial = `${file}.trial`;
  const clear = () => {
    for (const path of [trial, ...sideFiles(trial)]) rmSync(path, { force: true });
  };
  try {
    clear();
    const { contents } = salvage(file, trial);
    return { contents, weights: weightIds(trial) };
  } catch {
    return null;
  } finally {
    clear();
  }
}
