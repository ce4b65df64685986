/**
 * Copies of the data file. Each is written under a temporary name, opened and checked, made durable, and only then
 * given its name: a file that has its name is a good copy.
 */

import { existsSync, lstatSync, readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, dayNumber, parseDate } from '../../core/calendar/day.ts';
import type { Backup } from '../../core/contract/records.ts';
import { StoreError } from './fault.ts';
import { APPLICATION_ID, isWhole, makeFolder, makePrivate, placeDurably, readHeader } from './file.ts';
import type { Moment } from './moment.ts';

const KEEP_DAILY = 14;
const KEEP_WEEKLY = 8;
const NAME = /^whelpside-(\d{4}-\d{2}-\d{2})(?:-\d{4})?(?:-\d+)?-(daily|before-migration|before-restore|by-hand)\.sqlite$/;

/** Where the copies of a data folder are. */
export function backupsFolder(folder: string): string {
  return join(folder, 'backups');
}

/** Makes a checked copy and answers it. StoreError `damaged` when the copy is not whole; nothing is kept then. */
export function backUp(db: Database.Database, folder: string, now: Moment, kind: Backup['kind']): Backup {
  const into = backupsFolder(folder);
  makeFolder(into);
  return backUpInto(db, into, now, kind);
}

/** Makes a checked copy in a folder that is there: a stick, another disk. Whole under its name, or not there at all. */
export function backUpInto(db: Database.Database, into: string, now: Moment, kind: Backup['kind']): Backup {
  const file = freeName(into, now, kind);
  const part = join(into, 'whelpside.part');
  rmSync(part, { force: true });
  try {
    writeCopy(db, part);
    utimesSync(part, now.instant / 1000, now.instant / 1000);
    placeDurably(part, join(into, file));
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
  return describe(into, file, kind);
}

function writeCopy(db: Database.Database, part: string): void {
  makePrivate(part); // VACUUM INTO takes an empty file, and keeps its mode
  db.prepare('VACUUM INTO ?').run(part);
  if (!isWhole(part)) throw new StoreError('damaged', 'the copy of the data file is not whole');
}

/** Makes today's copy if there is none, and lets go of copies past their time. */
export function backUpDaily(db: Database.Database, folder: string, now: Moment): void {
  const today = dateOf(now.local);
  if (!dailies(folder).some((d) => d.day === today)) backUp(db, folder, now, 'daily');
  for (const file of outdated(dailies(folder))) rmSync(join(backupsFolder(folder), file), { force: true });
}

/** All copies of a data folder, newest first. */
export function listBackups(folder: string): Backup[] {
  return backupsIn(backupsFolder(folder));
}

/** The copies that lie in a folder, newest first; none when it is not there. */
export function backupsIn(folder: string): Backup[] {
  return named(folder)
    .map(({ file, kind }) => describe(folder, file, kind))
    .sort((a, b) => b.instant - a.instant || (a.file < b.file ? 1 : -1));
}

/** The path of a copy in a folder (null: the data folder's own), or null when there is none of that name. */
export function findBackup(dataFolder: string, from: string | null, file: string): string | null {
  const path = join(from ?? backupsFolder(dataFolder), file);
  return NAME.test(file) && lstatSync(path, { throwIfNoEntry: false })?.isFile() === true ? path : null;
}

interface Daily {
  readonly file: string;
  readonly day: CivilDate;
}

/**
 * Which daily copies go: all but the 14 newest and, before those, the newest of each of the last
 * 8 weeks (Monday to Sunday) that have one.
 */
export function outdated(copies: readonly Daily[]): string[] {
  const newestFirst = [...copies].sort((a, b) => dayNumber(b.day) - dayNumber(a.day));
  const weeks = new Set<number>();
  return newestFirst.slice(KEEP_DAILY).flatMap(({ file, day }) => {
    const week = Math.floor((dayNumber(day) + 3) / 7);
    if (weeks.has(week) || weeks.size >= KEEP_WEEKLY) return [file];
    weeks.add(week);
    return [];
  });
}

function dailies(folder: string): Daily[] {
  return named(backupsFolder(folder)).filter((b) => b.kind === 'daily');
}

function named(from: string): (Daily & { kind: Backup['kind'] })[] {
  if (!existsSync(from)) return [];
  return readdirSync(from).flatMap((file) => {
    const m = NAME.exec(file);
    const day = parseDate(m?.[1] ?? '');
    return day === null ? [] : [{ file, day, kind: m?.[2] as Backup['kind'] }];
  });
}

function freeName(into: string, now: Moment, kind: Backup['kind']): string {
  const day = dateOf(now.local);
  if (kind === 'daily') return `whelpside-${day}-daily.sqlite`;
  const stem = `whelpside-${day}-${clockOf(now.local).replace(':', '')}`;
  for (let n = 1; ; n += 1) {
    const file = `${stem}${n === 1 ? '' : `-${n}`}-${kind}.sqlite`;
    if (!existsSync(join(into, file))) return file;
  }
}

/** `checked`: it is still a data file of this program and as long as its header says, so not cut short since. */
function describe(from: string, file: string, kind: Backup['kind']): Backup {
  const path = join(from, file);
  const { size, mtimeMs } = statSync(path);
  const header = size < 100 ? null : readHeader(path);
  const checked = header !== null && header.applicationId === APPLICATION_ID && header.bytes === size;
  return { file, instant: Math.round(mtimeMs), kind, bytes: size, checked };
}
