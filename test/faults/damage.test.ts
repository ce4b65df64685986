/**
 * A data file that was damaged while nobody looked: the start tells, changes nothing, names the newest good copy and
 * what can still be read, and both ways on lead to a program that works. What is not damage is not taken for it.
 */

import { createHash } from 'node:crypto';
import { copyFileSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Rescue } from '../../core/contract/records.ts';
import { openProgramOrRescue, type Program } from '../../main/service/program.ts';
import { StoreError } from '../../main/store/fault.ts';
import { MIGRATIONS } from '../../main/store/migrations.ts';
import { salvage } from '../../main/store/salvage.ts';
import { before, call, type Dispatch, keptPlan, machineClock, makeWorld, readingFields } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { rowsOfFile } from './dump.ts';
import { Chance, report, rounds } from './numbers.ts';

const DAMAGES = rounds(300, 48);
const PAGE = 4096;
const chance = new Chance(300);

let scratch: { folder: string; remove(): void };
/** A house closed in order, with a copy that lacks its last weights. */
let whole: string;
let inCopy: string[];
let all: string[];
/** A log of another house, as somebody might copy it in. */
let strangeLog: Buffer;
let strangeFile: Buffer;

beforeAll(async () => {
  scratch = scratchFolder();
  whole = join(scratch.folder, 'whole');
  const program = openOn(whole);
  const world = await makeWorld(program.dispatch);
  await call(program.dispatch, 'records.addDemo', { now: machineClock().local, utcOffsetMinutes: 0 });
  await call(program.dispatch, 'people.setHouse', {
    change: { ...(await call(program.dispatch, 'people.house', {})).house, breederName: 'A. Breeder' },
  });
  const { backup } = await call(program.dispatch, 'records.backUp', {});
  for (let n = 0; n < 5; n += 1) {
    const reading = readingFields(before(world.clock, 0, 10 - n), 1020 + n);
    await call(program.dispatch, 'growth.record', { puppyId: world.puppies[n % 3]?.id ?? '', reading });
  }
  program.close();
  // The copy that is made at close holds everything: here it is lost, so that a way back lacks something.
  const atClose = readdirSync(join(whole, 'backups')).filter((name) => name !== backup.file);
  expect(atClose).toHaveLength(1);
  for (const name of atClose) rmSync(join(whole, 'backups', name));
  all = rowsOfFile(join(whole, 'whelpside.sqlite'));
  inCopy = rowsOfFile(join(whole, 'backups', backup.file));

  const other = join(scratch.folder, 'other');
  const stranger = openOn(other);
  await makeWorld(stranger.dispatch);
  strangeLog = readFileSync(join(other, 'whelpside.sqlite-wal'));
  stranger.close();
  strangeFile = readFileSync(join(other, 'whelpside.sqlite'));
}, 60_000);
afterAll(() => scratch.remove());

interface Damage {
  readonly kind: string;
  harm(folder: string): void;
}

const change = (folder: string, work: (bytes: Buffer) => Buffer): void => {
  const file = join(folder, 'whelpside.sqlite');
  writeFileSync(file, work(readFileSync(file)));
};
const pagesOf = (bytes: Buffer) => Math.floor(bytes.length / PAGE);

const DAMAGES_OF: readonly Damage[] = [
  {
    kind: 'bits turned over',
    harm: (folder) =>
      change(folder, (bytes) => {
        for (let n = chance.below(40); n >= 0; n -= 1) {
          const at = chance.below(bytes.length);
          bytes.writeUInt8((bytes[at] ?? 0) ^ (1 << chance.below(8)), at);
        }
        return bytes;
      }),
  },
  { kind: 'cut short', harm: (folder) => change(folder, (bytes) => bytes.subarray(0, chance.below(bytes.length))) },
  {
    kind: 'pages zeroed',
    harm: (folder) =>
      change(folder, (bytes) => {
        const page = chance.below(pagesOf(bytes));
        return bytes.fill(0, page * PAGE, (page + 1 + chance.below(3)) * PAGE);
      }),
  },
  {
    kind: 'a sector of noise',
    harm: (folder) =>
      change(folder, (bytes) => {
        const at = 512 * chance.below(Math.floor(bytes.length / 512));
        for (let n = 0; n < 512; n += 1) bytes.writeUInt8(chance.below(256), at + n);
        return bytes;
      }),
  },
  {
    kind: 'two pages exchanged',
    harm: (folder) =>
      change(folder, (bytes) => {
        const one = chance.below(pagesOf(bytes)) * PAGE;
        const two = ((one / PAGE + 1 + chance.below(pagesOf(bytes) - 1)) % pagesOf(bytes)) * PAGE;
        const kept = Buffer.from(bytes.subarray(one, one + PAGE));
        bytes.copy(bytes, one, two, two + PAGE);
        kept.copy(bytes, two);
        return bytes;
      }),
  },
  {
    kind: 'no database',
    harm: (folder) => change(folder, () => Buffer.from('Dear diary, it rained. '.repeat(chance.below(900)))),
  },
  { kind: 'its header gone', harm: (folder) => change(folder, (bytes) => bytes.fill(0, 0, 100)) },
  { kind: 'another house in its place', harm: (folder) => change(folder, () => strangeFile) },
  {
    kind: 'a log of another house beside it',
    harm: (folder) =>
      writeFileSync(join(folder, 'whelpside.sqlite-wal'), strangeLog.subarray(0, 32 + chance.below(strangeLog.length))),
  },
  {
    kind: 'gone, its log left',
    harm: (folder) => {
      rmSync(join(folder, 'whelpside.sqlite'));
      writeFileSync(join(folder, 'whelpside.sqlite-wal'), strangeLog);
    },
  },
  {
    kind: "another program's",
    harm: (folder) =>
      change(folder, (bytes) => {
        bytes.writeUInt32BE(1 + chance.below(1_000_000), 68);
        return bytes;
      }),
  },
  {
    kind: 'from the future',
    harm: (folder) =>
      change(folder, (bytes) => {
        bytes.writeUInt32BE(MIGRATIONS.length + 1 + chance.below(100), 60);
        return bytes;
      }),
  },
];

function digestOf(folder: string): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(folder).filter((n) => /^whelpside\.sqlite(-wal)?$/.test(n))) {
    if (statSync(join(folder, name)).size > 0) hash.update(name).update(readFileSync(join(folder, name)));
  }
  return hash.digest('hex');
}

const options = (folder: string) => ({ folder, now: machineClock, newId: () => crypto.randomUUID(), paper: null, version: '0' });

function opened(folder: string): Program | StoreError {
  try {
    return openProgramOrRescue(options(folder));
  } catch (error) {
    if (error instanceof StoreError) return error;
    throw error;
  }
}

/** Both ways on, each from the same damage. Answers how many rows a salvage brought that were never written. */
async function waysOn(folder: string, rescue: Rescue): Promise<number> {
  const [newest] = rescue.backups;
  expect(newest?.backup.checked).toBe(true);
  expect(newest?.counts).not.toBeNull();
  const twin = join(scratch.folder, 'twin');
  rmSync(twin, { recursive: true, force: true });
  cpSync(folder, twin, { recursive: true });

  const restored = openProgramOrRescue(options(folder));
  const { kept } = await call(restored.dispatch, 'records.restore', { folder: null, file: newest?.backup.file ?? '' });
  expect(existsSync(join(folder, kept)) || existsSync(join(folder, `${kept}-wal`)), 'the damaged one is kept').toBe(true);
  expect((await call(restored.dispatch, 'records.rescue', {})).rescue).toBeNull();
  await call(restored.dispatch, 'litter.all', {});
  restored.close();
  expect(rowsOfFile(join(folder, 'whelpside.sqlite'))).toEqual(inCopy);

  const salvaged = openProgramOrRescue(options(twin));
  const answer = await call(salvaged.dispatch, 'records.salvage', {});
  expect(answer.counts).toEqual(rescue.readable);
  await everythingReads(salvaged.dispatch);
  salvaged.close();
  const rows = rowsOfFile(join(twin, 'whelpside.sqlite'), ['journal']);
  const written = new Set(all);
  return rows.filter((row) => !written.has(row) && !isPart(row)).length;
}

/** Every query over the facts answers by its schema. */
async function everythingReads(dispatch: Dispatch): Promise<void> {
  const { litters } = await call(dispatch, 'litter.all', {});
  for (const { litter } of litters) {
    await call(dispatch, 'growth.readings', { litterId: litter.id });
    const { plans } = await call(dispatch, 'homing.handedOver', { litterId: litter.id });
    for (const { id } of plans) await keptPlan(dispatch, id);
  }
  await call(dispatch, 'feeding.rules', {});
  await call(dispatch, 'people.house', {});
}

/** A reading whose partner is lost is kept without naming it. */
function isPart(row: string): boolean {
  const loose = (text: string) => text.replace(/"(supersedes|supersededBy)":("[^"]*"|null),/g, '');
  return row.startsWith('readings') && all.some((written) => loose(written) === loose(row));
}

it(`tells ${DAMAGES} damages apart from a whole file, and leaves each as it is`, async () => {
  const counts = { refused: 0, recovered: 0, silent: 0, lost: 0 };
  const altered = new Map<string, number>();
  for (let n = 0; n < DAMAGES; n += 1) {
    const damage = DAMAGES_OF[n % DAMAGES_OF.length];
    if (damage === undefined) throw new RangeError('no damage');
    const folder = join(scratch.folder, 'damaged');
    rmSync(folder, { recursive: true, force: true });
    cpSync(whole, folder, { recursive: true });
    damage.harm(folder);
    const digest = digestOf(folder);
    const outcome = opened(folder);
    const what = `${n}: ${damage.kind}`;
    if (outcome instanceof StoreError) {
      expect(['foreign', 'newer'], what).toContain(outcome.code);
      expect(digestOf(folder), what).toBe(digest);
      counts.refused += 1;
    } else if (outcome.isRescue()) {
      const { rescue } = await call(outcome.dispatch, 'records.rescue', {});
      expect(await outcome.dispatch('litter.all', {}), what).toMatchObject({ ok: false, error: { code: 'damaged' } });
      expect(digestOf(folder), what).toBe(digest);
      outcome.close();
      if (rescue === null) throw new Error(`${what}: no rescue`);
      const strange = await waysOn(folder, rescue);
      if (damage.kind !== 'another house in its place' && damage.kind !== 'gone, its log left')
        altered.set(damage.kind, (altered.get(damage.kind) ?? 0) + strange);
      counts.refused += 1;
      counts.recovered += 1;
    } else {
      outcome.close();
      const found = rowsOfFile(join(folder, 'whelpside.sqlite'));
      if (found.join('\n') === all.join('\n')) counts.recovered += 1;
      else counts.silent += 1;
      expect(found, what).toEqual(all);
    }
  }
  report({ what: 'file damaged while closed', rounds: DAMAGES, ...counts });
  expect(counts.silent).toBe(0);
  // Only where single bits changed can a figure be another one: nothing in the page says so.
  for (const [kind, count] of altered) {
    if (kind !== 'bits turned over' && kind !== 'a sector of noise') expect(count, kind).toBe(0);
  }
}, 900_000);

describe('salvage', () => {
  const target = () => join(scratch.folder, 'salvaged.sqlite');
  const clear = () => {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(target() + end, { force: true });
  };

  it('of a whole file brings every row but those of the journal', () => {
    clear();
    const { leftOut } = salvage(join(whole, 'whelpside.sqlite'), target());
    expect(leftOut).toBe(0);
    expect(rowsOfFile(target()).sort()).toEqual(rowsOfFile(join(whole, 'whelpside.sqlite'), ['journal']).sort());
  });

  it('reads the log of a house that was killed', async () => {
    const running = openOn(join(scratch.folder, 'running'));
    await makeWorld(running.dispatch);
    const crashed = join(scratch.folder, 'crashed');
    mkdirSync(crashed, { recursive: true });
    for (const end of ['', '-wal'])
      copyFileSync(join(scratch.folder, 'running', `whelpside.sqlite${end}`), join(crashed, `whelpside.sqlite${end}`));
    const rows = rowsOfFile(join(scratch.folder, 'running', 'whelpside.sqlite'), ['journal']);
    running.close();
    clear();
    salvage(join(crashed, 'whelpside.sqlite'), target());
    expect(rowsOfFile(target()).sort()).toEqual(rows.sort());
  });

  it('finds the rows of a file whose first page is gone', () => {
    const headless = join(scratch.folder, 'headless.sqlite');
    writeFileSync(headless, readFileSync(join(whole, 'whelpside.sqlite')).fill(0, 0, PAGE));
    clear();
    const { counts } = salvage(headless, target());
    const readings = rowsOfFile(join(whole, 'whelpside.sqlite')).filter((row) => row.startsWith('readings'));
    expect(counts.readings).toBe(readings.length);
    expect(rowsOfFile(target()).sort()).toEqual(rowsOfFile(join(whole, 'whelpside.sqlite'), ['journal']).sort());
  });

  it('brings nothing out of noise, and says so', () => {
    const noise = join(scratch.folder, 'noise.sqlite');
    writeFileSync(noise, Buffer.from(Array.from({ length: 20_000 }, () => chance.below(256))));
    clear();
    expect(salvage(noise, target()).counts).toEqual({ litters: 0, puppies: 0, readings: 0, lastReading: null });
  });
});

describe('a file that is whole but not as the program left it', () => {
  it('is told, and taken as it is when she says so', async () => {
    const folder = join(scratch.folder, 'edited');
    cpSync(whole, folder, { recursive: true });
    const db = new Database(join(folder, 'whelpside.sqlite'));
    db.exec("UPDATE litters SET dam = 'Somebody' WHERE dam = 'Yarrow' AND demo = 0");
    db.close();
    const digest = digestOf(folder);
    expect(() => openOn(folder)).toThrow(expect.objectContaining({ code: 'changed' }));
    const program = openProgramOrRescue(options(folder));
    const { rescue } = await call(program.dispatch, 'records.rescue', {});
    expect(rescue).toMatchObject({ problem: 'changed', readable: { litters: 5 } });
    expect(digestOf(folder)).toBe(digest);
    await call(program.dispatch, 'records.takeAsItIs', {});
    const { litters } = await call(program.dispatch, 'litter.all', {});
    expect(litters.map((l) => l.litter.dam)).toContain('Somebody');
    program.close();
    openOn(folder).close();
  });

  it('one that is damaged is never taken as it is', async () => {
    const folder = join(scratch.folder, 'headerless');
    cpSync(whole, folder, { recursive: true });
    change(folder, (bytes) => bytes.fill(0, 0, 100));
    const program = openProgramOrRescue(options(folder));
    const answer = await program.dispatch('records.takeAsItIs', {});
    expect(answer).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(program.isRescue()).toBe(true);
    program.close();
  });
});

describe('while it is rescued', () => {
  it('says how many weights a copy lacks', async () => {
    const folder = join(scratch.folder, 'lacking');
    cpSync(whole, folder, { recursive: true });
    change(folder, (bytes) => bytes.fill(0, 0, 100));
    const program = openProgramOrRescue(options(folder));
    const { rescue } = await call(program.dispatch, 'records.rescue', {});
    expect(rescue?.backups.map((b) => b.missing)).toEqual([5]);
    expect(rescue?.readable?.readings).toBe((rescue?.backups[0]?.counts?.readings ?? 0) + 5);
    program.close();
  });

  it('nobody else opens the folder, and a copy that is not whole is not gone back to', async () => {
    const folder = join(scratch.folder, 'alone');
    cpSync(whole, folder, { recursive: true });
    change(folder, (bytes) => bytes.fill(0, 0, 100));
    const [name = ''] = readdirSync(join(folder, 'backups'));
    const copy = readFileSync(join(folder, 'backups', name));
    writeFileSync(join(folder, 'backups', 'whelpside-2026-01-02-daily.sqlite'), Buffer.from(copy).fill(7, 5000, 20_000));
    const program = openProgramOrRescue(options(folder));
    const second = openProgramOrRescue(options(folder));
    expect(second.barredBy()).toMatchObject({ code: 'locked' });
    expect(await second.dispatch('records.restore', { folder: null, file: name })).toMatchObject({ ok: false });
    second.close();
    const { rescue } = await call(program.dispatch, 'records.rescue', {});
    const bad = rescue?.backups.find((b) => b.backup.file.includes('2026-01-02'));
    expect(bad).toMatchObject({ backup: { checked: false }, counts: null });
    const answer = await program.dispatch('records.restore', { folder: null, file: 'whelpside-2026-01-02-daily.sqlite' });
    expect(answer).toMatchObject({ ok: false, error: { code: 'damaged' } });
    expect(program.isRescue()).toBe(true);
    expect(readdirSync(folder).filter((n) => /new|part|trial/.test(n))).toEqual([]);
    program.close();
  });
});
