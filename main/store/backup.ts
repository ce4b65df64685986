/**
 * Copies of the data file. Each is written under a temporary name, opened and checked, made durable, and only then
 * given its name: a file that has its name is a good copy.
 */
import { closeSync, lstatSync, openSync, readdirSync, readFileSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, dayNumber, parseDate } from '../../core/calendar/day.ts';
import type { Backup } from '../../core/contract/records.ts';
import { StoreError } from './fault.ts';
import { APPLICATION_ID, isIntact, makeFolder, placeDurably, readHeader } from './file.ts';
import type { Timestamp } from './timestamp.ts';

const KEEP_DAILY = 14;
const KEEP_WEEKLY = 8;
const NAME = /^whelpside-(\d{4}-\d{2}-\d{2})(?:-\d{4})?(?:-\d+)?-(daily|before-migration|before-restore|by-hand)\.sqlite$/;

/** Where the copies of a data folder are. */
export function backupsFolder(folder: string): string {
  return join(folder, 'backups');
}

/** Makes a checked copy and answers it. StoreError `damaged` when the copy is not whole; nothing is kept then. */
export function backUp(db: Database.Database, folder: string, now: Timestamp, kind: Backup['kind']): Backup {
  const into = backupsFolder(folder);
  makeFolder(into);
  // What a cut left of a copy. In this folder every such file is the program's own.
  for (const file of namesIn(into).filter((name) => /^whelpside(?:-\d+)?\.part$/.test(name))) {
    if (lstatSync(join(into, file)).isFile()) rmSync(join(into, file), { force: true });
  }
  return backUpInto(db, into, now, kind);
}

/**
 * Makes a checked copy in a folder that is there: a stick, another disk. Whole under its name, or not there at all; what
 * lies there of somebody else is left alone.
 */
export function backUpInto(
  db: Database.Database,
  into: string,
  now: Timestamp,
  kind: Backup['kind'],
  file = freeName(into, now, kind),
): Backup {
  const part = freePart(into);
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

/** A name for a copy that is being made, after clearing away what a cut left of an earlier one. */
function freePart(into: string): string {
  for (let n = 1; ; n += 1) {
    const part = join(into, `whelpside${n === 1 ? '' : `-${n}`}.part`);
    const found = lstatSync(part, { throwIfNoEntry: false });
    if (found?.isFile() === true && isHalfCopy(part, found.size)) rmSync(part, { force: true });
    else if (found !== undefined) continue;
    closeSync(openSync(part, 'wx', 0o600)); // VACUUM INTO takes an empty file, and keeps its mode
    return part;
  }
}

function isHalfCopy(part: string, size: number): boolean {
  return size === 0 || readHeader(part)?.applicationId === APPLICATION_ID || (size < 100 && isMagic(part));
}

function isMagic(part: string): boolean {
  const start = readFileSync(part, 'latin1');
  return 'SQLite format 3\0'.startsWith(start.slice(0, 16));
}

function writeCopy(db: Database.Database, part: string): void {
  db.prepare('VACUUM INTO ?').run(part);
  if (!isIntact(part)) throw new StoreError('damaged', 'the copy of the data file is not whole');
}

/** Makes today's copy if there is none, and lets go of copies past their time. Answers whether it made one. */
export function backUpDaily(db: Database.Database, folder: string, now: Timestamp): boolean {
  const today = dateOf(now.local);
  const isFirst = !dailies(folder).some((d) => d.day === today);
  if (isFirst) backUp(db, folder, now, 'daily');
  // By a clock that was set back, copies are of days to come: they neither go nor make others go.
  const past = dailies(folder).filter((d) => d.day <= today);
  for (const file of outdated(past)) rmSync(join(backupsFolder(folder), file), { force: true });
  return isFirst;
}

/**
 * Makes a copy with the day's own weights, in place of an earlier one of the same day; the first of the day stays, and so
 * do those in `kept`.
 */
export function backUpLater(db: Database.Database, folder: string, now: Timestamp, kept: ReadonlySet<string>): void {
  const into = backupsFolder(folder);
  makeFolder(into);
  const day = dateOf(now.local);
  const earlier = dailies(folder).filter((d) => d.day === day && d.file !== dailyName(day) && !kept.has(d.file));
  backUpInto(db, into, now, 'daily', freeName(into, now, 'daily', true));
  for (const { file } of earlier) rmSync(join(into, file), { force: true });
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
 * Which daily copies go: all but those of the 14 newest days and, before those, the newest of each of the last
 * 8 weeks (Monday to Sunday) that have one.
 */
export function outdated(copies: readonly Daily[]): string[] {
  const newestFirst = [...copies].sort((a, b) => dayNumber(b.day) - dayNumber(a.day) || (a.file < b.file ? -1 : 1)); // with a clock time goes before without: it is the later one
  const days = [...new Set(newestFirst.map((copy) => copy.day))].slice(0, KEEP_DAILY);
  const weeks = new Set<number>();
  return newestFirst
    .filter((copy) => !days.includes(copy.day))
    .flatMap(({ file, day }) => {
      const week = Math.floor((dayNumber(day) + 3) / 7);
      if (weeks.has(week) || weeks.size >= KEEP_WEEKLY) return [file];
      weeks.add(week);
      return [];
    });
}

function dailies(folder: string): Daily[] {
  return named(backupsFolder(folder)).filter((b) => b.kind === 'daily');
}

/** What is not a plain file is none of our copies, whatever it is called. */
function named(from: string): (Daily & { kind: Backup['kind'] })[] {
  return namesIn(from).flatMap((file) => {
    const m = NAME.exec(file);
    const day = parseDate(m?.[1] ?? '');
    if (day === null || lstatSync(join(from, file), { throwIfNoEntry: false })?.isFile() !== true) return [];
    return [{ file, day, kind: m?.[2] as Backup['kind'] }];
  });
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return []; // not there, or no folder
  }
}

const dailyName = (day: CivilDate): string => `whelpside-${day}-daily.sqlite`;

function freeName(into: string, now: Timestamp, kind: Backup['kind'], withClock = kind !== 'daily'): string {
  const day = dateOf(now.local);
  const isFree = (file: string) => lstatSync(join(into, file), { throwIfNoEntry: false }) === undefined;
  if (!withClock && isFree(dailyName(day))) return dailyName(day);
  const stem = `whelpside-${day}-${clockOf(now.local).replace(':', '')}`;
  for (let n = 1; ; n += 1) {
    const file = `${stem}${n === 1 ? '' : `-${n}`}-${kind}.sqlite`;
    if (isFree(file)) return file;
  }
}

/** `checked`: it is still a data file of this program and as long as its header says, so not cut short since. */
function describe(from: string, file: string, kind: Backup['kind']): Backup {
  const path = join(from, file);
  const { size, mtimeMs } = statSync(path);
  return { file, instant: Math.round(mtimeMs), kind, bytes: size, checked: isOurs(path, size) };
}

function isOurs(path: string, size: number): boolean {
  try {
    const header = size < 100 ? null : readHeader(path);
    return header !== null && header.applicationId === APPLICATION_ID && header.bytes === size;
  } catch {
    return false; // may not be read
  }
}
