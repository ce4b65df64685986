/**
 * Power lost at any moment. The order of writes and syncs is SQLite's own, as its documentation gives it for a
 * write-ahead log with `synchronous=FULL`: a commit appends frames to the log and syncs it before it is acknowledged; a
 * log that begins anew has its header synced first; a checkpoint writes the file only when the log is synced, and syncs
 * it before the log begins anew. The files are kept as they were after every command; a power cut between two commands
 * is then the durable state plus any of the 512-byte sectors that were not synced yet: dropped, cut off, in any order.
 */
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { backUp, listBackups } from '../../main/store/backup.ts';
import { isIntact } from '../../main/store/file.ts';
import { logPageSize, readLog } from '../../main/store/log.ts';
import { openStore } from '../../main/store/open.ts';
import {
  before,
  call,
  type Dispatch,
  dayBefore,
  litterFields,
  machineClock,
  puppyFields,
  readingFields,
} from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { rowsIn, rowsOfFile } from './dump.ts';
import { Chance, report, rounds } from './numbers.ts';

const CASES = rounds(500, 90);
const SECTOR = 512;
const LOG_HEADER = 32;

const chance = new Chance(512);
const clock = machineClock();

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => remove());

interface Disk {
  readonly file: Buffer;
  readonly log: Buffer;
}

/** What a power cut may leave, and which facts must then be there: those before the command, after it, or either. */
interface Cut extends Disk {
  readonly may: 'after' | 'either';
}

function diskOf(data: string): Disk {
  const file = join(data, 'whelpside.sqlite');
  return { file: readFileSync(file), log: existsSync(`${file}-wal`) ? readFileSync(`${file}-wal`) : Buffer.alloc(0) };
}

/** The old bytes with some of the sectors of the new ones. What was appended and dropped is missing, zero, or noise. */
function mixed(old: Buffer, fresh: Buffer): Buffer {
  const size = Math.max(old.length, fresh.length);
  const changed: number[] = [];
  for (let at = 0; at < size; at += SECTOR) {
    if (!old.subarray(at, at + SECTOR).equals(fresh.subarray(at, at + SECTOR))) changed.push(at);
  }
  const kept = someOf(changed);
  const filler = chance.pick([0x00, 0xa7]);
  const end = chance.yes(0.5) ? size : Math.max(old.length, ...[...kept].map((at) => Math.min(at + SECTOR, size)));
  const left = Buffer.alloc(end, filler);
  old.copy(left, 0, 0, Math.min(old.length, end));
  for (const at of kept) fresh.copy(left, at, at, Math.min(at + SECTOR, fresh.length));
  return left;
}

function someOf(sectors: readonly number[]): Set<number> {
  switch (chance.below(4)) {
    case 0: // in order, cut off
      return new Set(sectors.slice(0, chance.below(sectors.length + 1)));
    case 1: // the last ones first
      return new Set(sectors.slice(chance.below(sectors.length + 1)));
    case 2: // all but one
      return new Set(sectors.filter((_, n) => n !== chance.below(sectors.length)));
    default:
      return new Set(sectors.filter(() => chance.yes(0.5)));
  }
}

/** One power cut between two acknowledged commands; null where nothing was written. */
function cutBetween(was: Disk, is: Disk): Cut | null {
  const wroteFile = !was.file.equals(is.file);
  if (is.log.length < was.log.length) return { ...is, may: 'after' };
  if (wroteFile && chance.yes(0.6)) return { file: mixed(was.file, is.file), log: is.log, may: 'after' };
  if (was.log.equals(is.log)) return null;
  const header = is.log.subarray(0, LOG_HEADER);
  const synced = syncedBefore(is.log);
  const durable = Buffer.concat([is.log.subarray(0, synced), was.log.subarray(synced)]);
  if (was.log.length > 0 && !was.log.subarray(0, LOG_HEADER).equals(header)) {
    const begun = Buffer.concat([header, durable.subarray(LOG_HEADER)]);
    return { file: was.file, log: chance.yes(0.2) ? begun : mixed(begun, is.log), may: 'either' };
  }
  return { file: was.file, log: mixed(durable, is.log), may: 'either' };
}

/**
 * Bytes of the log that were synced before its last transaction began: with `synchronous=FULL` each commit is durable before the next
 * write, so a command of two transactions (taking the demo away also gives pages back) can only lose the last of them.
 */
function syncedBefore(log: Buffer): number {
  const size = logPageSize(log);
  const commits = (readLog(log, size)?.frames ?? []).flatMap((frame, n) => (frame.commits ? [n] : []));
  const before = commits.at(-2);
  return before === undefined ? 0 : LOG_HEADER + (before + 1) * (24 + size);
}

/** Opens what a power cut left as the next start does. Answers what is wrong with it, or null. */
function wrongAfter(cut: Cut, facts: { readonly was: readonly string[]; readonly is: readonly string[] }): string | null {
  const after = join(folder, 'after');
  rmSync(after, { recursive: true, force: true });
  mkdirSync(after);
  const file = join(after, 'whelpside.sqlite');
  writeFileSync(file, cut.file);
  if (cut.log.length > 0) writeFileSync(`${file}-wal`, cut.log);
  const store = openStore({ folder: after, now: machineClock });
  try {
    if (store.db.pragma('integrity_check', { simple: true }) !== 'ok') return 'corrupt';
    const found = rowsIn(store.db).join('\n');
    if (found === facts.is.join('\n')) return null;
    if (cut.may === 'either' && found === facts.was.join('\n')) return null;
    return facts.was.some((row) => !found.includes(row)) ? 'lost' : 'half a command';
  } finally {
    store.close();
  }
}

/** Commands of every size, one at a time: from one weight to a whole demo, with the log begun anew in between. */
async function* commands(dispatch: Dispatch): AsyncGenerator<void> {
  const { litter } = await call(dispatch, 'litter.begin', { litter: litterFields(clock, 'Yarrow'), puppies: [] });
  yield;
  const puppyIds: string[] = [];
  for (let index = 0; index < 6; index += 1) {
    const birthWeight = { grams: 350, typed: '350', unit: 'g', source: 'keyboard' } as const;
    const fields = puppyFields(clock, index);
    puppyIds.push((await call(dispatch, 'litter.addPuppy', { litterId: litter.id, fields, birthWeight })).puppy.id);
    yield;
  }
  for (let n = 0; ; n += 1) {
    const puppyId = puppyIds[n % puppyIds.length] ?? '';
    const reading = readingFields(before(clock, 0, 1), 400 + n / 10);
    const recorded = await call(dispatch, 'growth.record', { puppyId, reading });
    yield;
    if (n % 4 === 0) {
      await call(dispatch, 'growth.correct', { readingId: recorded.reading.id, reading });
      yield;
    }
    if (n % 6 === 0) {
      await call(dispatch, 'homing.handOver', { puppyId, on: dayBefore(clock, 0), leaves: false });
      yield;
    }
    if (n % 9 === 0) {
      await call(dispatch, 'records.undo', {});
      yield;
    }
    if (n % 40 === 20) {
      await call(dispatch, 'records.addDemo', { now: clock.local, utcOffsetMinutes: 0 });
      yield;
      await call(dispatch, 'records.removeDemo', {});
      yield;
    }
  }
}

it(`keeps what was acknowledged over ${CASES} power cuts`, async () => {
  const live = join(folder, 'live');
  const program = openOn(live);
  const file = join(live, 'whelpside.sqlite');
  const found = { lost: 0, corrupt: 0, 'half a command': 0 };
  let done = 0;
  let checkpoints = 0;
  let was = diskOf(live);
  let factsWere = rowsOfFile(file);
  for await (const _ of commands(program.dispatch)) {
    const is = diskOf(live);
    const facts = { was: factsWere, is: rowsOfFile(file) };
    const checkpointed = !was.file.equals(is.file);
    if (checkpointed) checkpoints += 1;
    for (let n = 0; n < (checkpointed ? 12 : 2) && done < CASES; n += 1) {
      const cut = cutBetween(was, is);
      if (cut === null) continue;
      done += 1;
      const wrong = wrongAfter(cut, facts);
      if (wrong !== null) found[wrong as keyof typeof found] += 1;
      expect(wrong, `case ${done}`).toBeNull();
    }
    if (done >= CASES) break;
    was = is;
    factsWere = facts.is;
  }
  program.close();
  expect(checkpoints, 'the file itself was written too').toBeGreaterThan(0);
  const { lost, corrupt, 'half a command': half } = found;
  report({ what: 'power lost', rounds: CASES, lost, silent: corrupt + half, recovered: CASES - lost - corrupt - half });
}, 900_000);

it('power lost while it closes: a log that was to go comes back, a seal is torn, and every fact is there', async () => {
  const program = openOn(folder);
  await call(program.dispatch, 'records.addDemo', { now: clock.local, utcOffsetMinutes: 0 });
  const file = join(folder, 'whelpside.sqlite');
  const { log } = diskOf(folder);
  program.close();
  const facts = rowsOfFile(file);
  const seal = readFileSync(`${file}.seal`);

  writeFileSync(`${file}-wal`, log);
  openOn(folder).close();
  expect(rowsOfFile(file)).toEqual(facts);
  expect(readFileSync(`${file}.seal`).length).toBe(seal.length);

  writeFileSync(`${file}.seal`, seal.subarray(0, 20));
  openOn(folder).close();
  writeFileSync(`${file}.seal`, '');
  openOn(folder).close();
  expect(rowsOfFile(file)).toEqual(facts);
});

it('power lost while a copy is made: a half copy has no name of its own and is gone with the next', () => {
  const store = openStore({ folder, now: machineClock });
  const whole = backUp(store.db, folder, clock, 'by-hand');
  const bytes = readFileSync(join(folder, 'backups', whole.file));
  for (const length of [0, 512, 4096, bytes.length - 512]) {
    writeFileSync(join(folder, 'backups', 'whelpside.part'), bytes.subarray(0, length));
    expect(listBackups(folder).filter((b) => !b.checked)).toEqual([]);
    const { file } = backUp(store.db, folder, clock, 'by-hand');
    expect(isIntact(join(folder, 'backups', file))).toBe(true);
    expect(existsSync(join(folder, 'backups', 'whelpside.part'))).toBe(false);
  }
  store.close();
});

it('a second cut, while the first is mended, changes nothing', async () => {
  const live = join(folder, 'live');
  const program = openOn(live);
  await call(program.dispatch, 'records.addDemo', { now: clock.local, utcOffsetMinutes: 0 });
  const left = diskOf(live);
  const facts = rowsOfFile(join(live, 'whelpside.sqlite'));
  program.close();
  const after = join(folder, 'after');
  mkdirSync(after);
  const file = join(after, 'whelpside.sqlite');
  writeFileSync(file, left.file);
  writeFileSync(`${file}-wal`, left.log);
  // Opened, and cut before it closes: what SQLite mended lies in the log's index only, which a cut takes away.
  const mending = new Database(file);
  mending.prepare('SELECT count(*) FROM litters').get();
  const twice = diskOf(after);
  mending.close();
  for (const end of ['-wal', '-shm']) rmSync(file + end, { force: true });
  writeFileSync(file, twice.file);
  writeFileSync(`${file}-wal`, twice.log);
  expect(statSync(`${file}-wal`).size).toBeGreaterThan(0);
  openOn(after).close();
  expect(rowsOfFile(file)).toEqual(facts);
});
