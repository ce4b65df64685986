/**
 * What a machine does to a program: a disk that fills up, a folder that may no longer be written, a file that another
 * program holds, a clock that is set back, a second start. Each is a clear answer, loses nothing, and is over as soon as
 * its cause is gone.
 */

import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTime } from '../../core/calendar/clock.ts';
import type { Result } from '../../core/contract/result.ts';
import { failureWords } from '../../core/words/en/app.ts';
import { openProgramOrRescue } from '../../main/service/program.ts';
import { sentenceFor } from '../../main/service/refusals.ts';
import { backUp } from '../../main/store/backup.ts';
import { openStore } from '../../main/store/open.ts';
import { call, type Dispatch, before as earlier, machineClock, makeWorld, readingFields, type World } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { rowsOfFile } from './dump.ts';
import { report } from './numbers.ts';

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => remove());

const isRoot = process.geteuid?.() === 0;
const NOBODY = 65_534;

const record = (dispatch: Dispatch, world: World, grams = 1010) =>
  dispatch('growth.record', { puppyId: world.puppies[0]?.id ?? '', reading: readingFields(earlier(world.clock, 0, 1), grams) });

/** Refused with one of the codes, which has a sentence; what it is called. */
function refused(result: Result<unknown>, ...codes: string[]): string {
  const code = result.ok ? 'ok' : result.error.code;
  expect(codes, JSON.stringify(result)).toContain(code);
  if (!result.ok) expect(failureWords[result.error.code]).toMatch(/[.?]$/);
  return code;
}

const canFill = onlyWhere(isRoot && process.platform === 'linux', 'a small disk can be mounted by root on Linux only');
describe.runIf(canFill)('a disk that is full', () => {
  let disk: string;
  let isMounted = false;
  beforeEach(({ skip }) => {
    disk = join(folder, 'disk');
    mkdirSync(disk);
    const { status, stderr } = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', disk], { encoding: 'utf8' });
    isMounted = status === 0;
    if (isMounted) return;
    const because = `a small disk can't be mounted here: ${stderr.trim()}`;
    console.log(`not run: ${because}`);
    skip(because);
  });
  afterEach(() => {
    if (isMounted) spawnSync('umount', [disk]);
  });

  /** Fills the disk to its last byte. */
  const fill = (): string => {
    const filler = join(disk, 'filler');
    for (const size of [65_536, 4096, 512, 1]) {
      const piece = Buffer.alloc(size, 1);
      try {
        for (;;) writeFileSync(filler, piece, { flag: 'a' });
      } catch {
        // No piece of this size fits any more.
      }
    }
    return filler;
  };

  it('refuses in a sentence, keeps what it had, and goes on when there is room', async () => {
    const data = join(disk, 'data');
    const program = openOn(data);
    const world = await makeWorld(program.dispatch);
    const acknowledged: string[] = [];
    const take = async () => {
      const result = await record(program.dispatch, world);
      if (result.ok) acknowledged.push((result.value as { reading: { id: string } }).reading.id);
      return result;
    };
    const filler = fill();
    let result = await take();
    // The log may have room inside what it has already.
    for (let n = 0; result.ok && n < 2000; n += 1) result = await take();
    refused(result, 'disk-full');
    refused(await take(), 'disk-full');
    refused(await program.dispatch('records.backUp', {}), 'disk-full');
    refused(await program.dispatch('records.undo', {}), 'disk-full');
    const { readings } = await call(program.dispatch, 'growth.readings', { litterId: world.litter.id });
    expect(acknowledged.filter((id) => !readings.some((r) => r.id === id && !r.withdrawn))).toEqual([]);

    rmSync(filler);
    expect(await take()).toMatchObject({ ok: true });
    expect(await program.dispatch('records.backUp', {})).toMatchObject({ ok: true });
    program.close();
    const rows = rowsOfFile(join(data, 'whelpside.sqlite'));
    expect(acknowledged.filter((id) => !rows.some((row) => row.startsWith('readings') && row.includes(id)))).toEqual([]);
    report({ what: 'disk full while it works', rounds: 1, lost: 0, refused: 1, recovered: 1 });
  });

  it('opens a full disk, or says why not; what is there stays as it is', async () => {
    const data = join(disk, 'data');
    const program = openOn(data);
    await makeWorld(program.dispatch);
    program.close();
    const rows = rowsOfFile(join(data, 'whelpside.sqlite'));
    const filler = fill();
    try {
      const again = openOn(data);
      expect((await again.dispatch('litter.all', {})).ok).toBe(true);
      again.close();
    } catch (error) {
      expect(sentenceFor(error, data)).toMatch(/^The disk is full\./);
    }
    rmSync(filler);
    openOn(data).close();
    expect(rowsOfFile(join(data, 'whelpside.sqlite'))).toEqual(rows);
    expect(readdirSync(data).filter((name) => /part|new/.test(name))).toEqual([]);
  });

  it('makes no copy by half on a stick that is full', async () => {
    const program = openOn(join(folder, 'data'));
    await makeWorld(program.dispatch);
    const filler = fill();
    refused(await program.dispatch('records.backUpTo', { folder: disk }), 'disk-full');
    expect(readdirSync(disk)).toEqual(['filler']);
    rmSync(filler);
    expect(await program.dispatch('records.backUpTo', { folder: disk })).toMatchObject({ ok: true });
    program.close();
  });

  it('a new house on a full disk is refused, and begun when there is room', async () => {
    const filler = fill();
    let sentence: string | null = null;
    try {
      openOn(join(disk, 'data')).close();
    } catch (error) {
      sentence = sentenceFor(error, 'x');
    }
    expect(sentence).toMatch(/^The disk is full\./);
    // The host's window stands all the same, and opens the house when there is room.
    const data = join(disk, 'data');
    const program = openProgramOrRescue({ folder: data, now: machineClock, newId: () => 'none', paper: null, version: '0' });
    expect((await call(program.dispatch, 'records.rescue', {})).rescue?.problem).toBe('disk-full');
    expect(await call(program.dispatch, 'records.tryAgain', {})).toEqual({ open: false });
    rmSync(filler);
    expect(await call(program.dispatch, 'records.tryAgain', {})).toEqual({ open: true });
    expect((await call(program.dispatch, 'litter.all', {})).litters).toEqual([]);
    program.close();
    openOn(data).close();
  });
});

const canTakeLeave = onlyWhere(process.platform !== 'win32', 'Windows gives no leave to write that could be lost');
describe.runIf(canTakeLeave)('leave to write that is lost while it runs', () => {
  it('copies are refused in a sentence, weights are kept, and copies are made again with the leave', async () => {
    const data = join(folder, 'data');
    const program = openOn(data);
    const world = await makeWorld(program.dispatch);
    await call(program.dispatch, 'records.backUp', {});
    const backups = join(data, 'backups');
    if (isRoot)
      for (const path of [data, backups, ...readdirSync(data).map((n) => join(data, n))]) chownSync(path, NOBODY, NOBODY);
    chmodSync(backups, 0o500);
    chmodSync(data, 0o500);
    if (isRoot) process.seteuid?.(NOBODY);
    let recorded: Result<unknown>;
    let copied: Result<unknown>;
    try {
      recorded = await record(program.dispatch, world);
      copied = await program.dispatch('records.backUp', {});
    } finally {
      if (isRoot) process.seteuid?.(0);
      chmodSync(data, 0o700);
      chmodSync(backups, 0o700);
    }
    refused(copied, 'read-only');
    // The file itself was open before: it may go on, or say that it can't.
    if (!recorded.ok) refused(recorded, 'read-only', 'disk-full');
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    expect(await program.dispatch('records.backUp', {})).toMatchObject({ ok: true });
    program.close();
    report({ what: 'leave to write lost while it works', rounds: 1, lost: 0, refused: 1, recovered: 1 });
  });
});

describe('a file that another program holds', () => {
  it('is said, and over when it lets go', async () => {
    const program = openOn(folder);
    const world = await makeWorld(program.dispatch);
    const other = new Database(join(folder, 'whelpside.sqlite'));
    other.exec('BEGIN IMMEDIATE');
    const facts = rowsOfFile(join(folder, 'whelpside.sqlite'));
    refused(await record(program.dispatch, world), 'busy');
    refused(await program.dispatch('records.undo', {}), 'busy');
    expect((await program.dispatch('litter.all', {})).ok, 'reading goes on').toBe(true);
    expect(rowsOfFile(join(folder, 'whelpside.sqlite'))).toEqual(facts);
    other.exec('ROLLBACK');
    other.close();
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    program.close();
    report({ what: 'file held by another program', rounds: 1, lost: 0, refused: 1, recovered: 1 });
  });
});

describe('a clock that is set back', () => {
  it('a year: nothing is lost, no copy is written over, and the order of what was done stays', async () => {
    let clock = machineClock();
    const program = openOn(folder, { now: () => clock });
    const world = await makeWorld(program.dispatch);
    await call(program.dispatch, 'records.backUp', {});
    const copies = readdirSync(join(folder, 'backups'));
    const bytes = copies.map((name) => readFileSync(join(folder, 'backups', name)));
    const late = await call(program.dispatch, 'growth.record', {
      puppyId: world.puppies[0]?.id ?? '',
      reading: readingFields(earlier(clock, 0, 1), 1010),
    });

    clock = earlier(clock, 365);
    refused(await record(program.dispatch, world), 'bad-input'); // by that clock it is tomorrow's weight, a year ahead
    const rules = await call(program.dispatch, 'feeding.rules', {});
    const own = { from: world.clock.local.slice(0, 10), change: rules.versions[0]?.rules ?? {} };
    expect(await program.dispatch('feeding.setRules', own)).toMatchObject({ ok: true });
    await call(program.dispatch, 'records.backUp', {});
    const { readings } = await call(program.dispatch, 'growth.readings', { litterId: world.litter.id });
    expect(readings.some((r) => r.id === late.reading.id)).toBe(true);
    const { done } = await call(program.dispatch, 'records.done', { limit: 2 });
    expect(done.map((d) => d.operation)).toEqual(['feeding.setRules', 'growth.record']);
    for (const [n, name] of copies.entries()) expect(readFileSync(join(folder, 'backups', name))).toEqual(bytes[n]);

    clock = earlier(clock, -365);
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    program.close();
    report({ what: 'clock set back a year', rounds: 1, lost: 0, refused: 1, recovered: 1 });
  });

  it('an hour, as in autumn: both weights of the same minute are kept', async () => {
    let clock = { instant: Date.parse('2026-10-25T00:30:00Z'), local: localTime('2026-10-25T02:30') };
    const program = openOn(folder, { now: () => clock });
    const world = await makeWorld(program.dispatch).catch(() => null);
    expect(world, 'a world dated by the machine is in the future of that clock').toBeNull();
    const { litter } = await call(program.dispatch, 'litter.begin', {
      litter: {
        name: '',
        dam: 'Sorrel',
        sire: '',
        breed: '',
        sizeClass: null,
        adultDogKg: null,
        adultBitchKg: null,
        breedBirthGrams: null,
        whelpedAt: '2026-10-01T08:00',
        whelpedInstant: Date.parse('2026-10-01T06:00:00Z'),
      },
      puppies: [],
    });
    const { puppy } = await call(program.dispatch, 'litter.addPuppy', {
      litterId: litter.id,
      fields: {
        collar: { letter: 'A', colour: 'red', pattern: 'plain' },
        callName: '',
        sex: 'bitch',
        markings: '',
        birthOrder: 1,
        bornAt: '2026-10-01T08:00',
        bornInstant: Date.parse('2026-10-01T06:00:00Z'),
      },
      birthWeight: null,
    });
    await call(program.dispatch, 'growth.record', { puppyId: puppy.id, reading: readingFields(clock, 900) });
    clock = { instant: clock.instant + 3_600_000, local: clock.local };
    await call(program.dispatch, 'growth.record', { puppyId: puppy.id, reading: readingFields(clock, 905) });
    const { readings } = await call(program.dispatch, 'growth.readings', { litterId: litter.id });
    expect(readings.map((r) => [r.grams, r.at])).toEqual([
      [900, '2026-10-25T02:30'],
      [905, '2026-10-25T02:30'],
    ]);
    program.close();
  });
});

describe('a second start', () => {
  const CHILD = fileURLToPath(new URL('./serving-child.ts', import.meta.url));

  it('is refused while another process has the folder, also after that one was killed and began again', async () => {
    for (let round = 0; round < 2; round += 1) {
      const child = spawn(process.execPath, [CHILD, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
      await new Promise<void>((resolve) => child.stdout.once('data', () => resolve()));
      expect(() => openOn(folder)).toThrow(expect.objectContaining({ code: 'locked' }));
      const gone = new Promise((resolve) => child.once('close', resolve));
      child.kill('SIGKILL');
      await gone;
    }
    openOn(folder).close();
    expect(existsSync(join(folder, 'whelpside.lock'))).toBe(true);
    report({ what: 'two starts at once', rounds: 2, lost: 0, refused: 2, recovered: 2 });
  });
});

describe('a day’s copy that can not be made', () => {
  it('stops no weight, and is tried again ten minutes later', async () => {
    let clock = machineClock();
    const store = openStore({ folder, now: () => clock });
    backUp(store.db, folder, clock, 'by-hand');
    store.close();
    const program = openOn(folder, { now: () => clock });
    const world = await makeWorld(program.dispatch);
    const [backups, away] = [join(folder, 'backups'), join(folder, 'away')];
    const dailies = () => readdirSync(existsSync(away) ? away : backups).filter((name) => name.endsWith('daily.sqlite')).length;
    const count = dailies();
    renameSync(backups, away);
    writeFileSync(backups, 'in the way');
    clock = earlier(clock, -1);
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    expect(dailies()).toBe(count);
    rmSync(backups);
    renameSync(away, backups);
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    expect(dailies(), 'not yet').toBe(count);
    clock = earlier(clock, 0, -11);
    expect(await record(program.dispatch, world)).toMatchObject({ ok: true });
    expect(dailies()).toBe(count + 1);
    expect(statSync(join(folder, 'backups')).mode & 0o077).toBe(0);
    program.close();
  });
});
