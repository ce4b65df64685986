/**
 * What stands in the way of a start and is no fault of the file: another program has it, the folder can't be written or
 * made, the disk is full, another program's file lies there. Each is a window with a way on, and nothing is touched.
 */
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openProgramOrRescue, type Program, type ProgramOptions } from '../../main/service/program.ts';
import { call, machineClock, makeWorld } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { report } from './numbers.ts';

const FILE = 'whelpside.sqlite';
let folder: string;
let remove: () => void;
const opened: Program[] = [];
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => {
  for (const program of opened.splice(0)) program.close();
  remove();
});

function start(data: string, more: Partial<ProgramOptions> = {}): Program {
  const program = openProgramOrRescue({
    folder: data,
    now: machineClock,
    newId: () => crypto.randomUUID(),
    paper: null,
    version: '0',
    ...more,
  });
  opened.push(program);
  return program;
}

const problemOf = async (program: Program) => (await call(program.dispatch, 'records.rescue', {})).rescue?.problem ?? null;
const again = async (program: Program) => (await call(program.dispatch, 'records.tryAgain', {})).open;

/** A house with one litter; answers its folder. */
async function house(name: string): Promise<string> {
  const data = join(folder, name);
  const program = openOn(data);
  await makeWorld(program.dispatch);
  program.close();
  return data;
}

const litters = async (program: Program) => (await call(program.dispatch, 'litter.all', {})).litters.length;

describe('a folder that is open elsewhere', () => {
  it('is said, nothing else is carried, and it opens when it is tried again afterwards', async () => {
    const data = await house('data');
    const first = openOn(data);
    const second = start(data);
    expect(second.isRescue()).toBe(true);
    expect(await problemOf(second)).toBe('locked');
    expect(await second.dispatch('litter.all', {})).toMatchObject({ ok: false, error: { code: 'busy' } });
    for (const way of ['records.salvage', 'records.beginAnew', 'records.takeAsItIs'])
      expect(await second.dispatch(way, {})).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await again(second)).toBe(false);
    expect(await second.dispatch('records.elsewhere', { folder, takeAlong: true })).toMatchObject({
      ok: false,
      error: { code: 'refused' },
    });
    first.close();
    expect(await again(second)).toBe(true);
    expect(await litters(second)).toBe(2);
    report({ what: 'barred: open elsewhere', rounds: 1, lost: 0, lockedOut: 0, recovered: 1 });
  });
});

// By root a folder's mode stops nobody; a file in the folder's place stops everybody.
describe('a folder that can not be made', () => {
  it('is said; another folder goes on, is remembered, and a try goes on when it can be made', async () => {
    const data = join(folder, 'data');
    writeFileSync(data, 'in the way');
    const moved: string[] = [];
    const program = start(data, {
      onMoved: (to) => {
        moved.push(to);
        return true;
      },
    });
    expect(await problemOf(program)).toBe('no-folder');
    expect(await again(program)).toBe(false);
    const other = await house('other');
    const answer = await call(program.dispatch, 'records.elsewhere', { folder: other, takeAlong: false });
    expect(answer).toEqual({ remembered: true });
    expect(moved).toEqual([other]);
    expect(await litters(program)).toBe(2);
    expect(readFileSync(data, 'utf8')).toBe('in the way');

    const waiting = start(data);
    rmSync(data);
    expect(await again(waiting)).toBe(true);
    expect(existsSync(join(data, FILE))).toBe(true);
    report({ what: 'barred: no folder', rounds: 2, lost: 0, lockedOut: 0, recovered: 2 });
  });

  it('a folder that is none, or is barred itself, is refused, and the first try is still there', async () => {
    const data = join(folder, 'data');
    writeFileSync(data, 'in the way');
    const program = start(data);
    const go = (to: string) => program.dispatch('records.elsewhere', { folder: to, takeAlong: false });
    expect(await go('somewhere')).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    expect(await go(join(folder, 'nowhere'))).toMatchObject({ ok: false, error: { code: 'not-found' } });
    const taken = await house('taken');
    const other = openOn(taken);
    expect(await go(taken)).toMatchObject({ ok: false, error: { code: 'busy' } });
    other.close();
    expect(await problemOf(program)).toBe('no-folder');
  });
});

describe('a house that was kept elsewhere', () => {
  it('is never begun anew in silence where its folder or its file is not there', async () => {
    for (const made of [false, true]) {
      const stick = join(folder, `stick-${made}`);
      if (made) mkdirSync(stick);
      const program = start(stick, { mustExist: true, usualFolder: join(folder, 'usual') });
      const { rescue } = await call(program.dispatch, 'records.rescue', {});
      expect(rescue).toMatchObject({ problem: 'no-folder', usualFolder: join(folder, 'usual') });
      expect(existsSync(join(stick, FILE))).toBe(false);
    }
  });
});

const NOBODY = 65_534;
const asRoot = onlyWhere(
  process.geteuid?.() === 0 && process.platform === 'linux',
  'root alone can give up and take back its rights',
);
describe.runIf(asRoot)('a folder that can only be read', () => {
  const withoutRights = async (work: () => Promise<void>) => {
    process.seteuid?.(NOBODY);
    try {
      await work();
    } finally {
      process.seteuid?.(0);
    }
  };

  it('the house goes on in another, with its log, every weight and undo; the old one stays as it is', async () => {
    const data = join(folder, 'data');
    const live = openOn(data);
    await makeWorld(live.dispatch);
    const killed = join(folder, 'killed');
    mkdirSync(killed);
    // As a kill leaves it: the weights are in the log.
    for (const end of ['', '-wal', '.mark', '.seal', '.accepted'])
      if (existsSync(join(data, FILE + end))) writeFileSync(join(killed, FILE + end), readFileSync(join(data, FILE + end)));
    live.close();
    const other = join(folder, 'other');
    mkdirSync(other);
    chmodSync(other, 0o777);
    chmodSync(folder, 0o755);
    chmodSync(killed, 0o555);
    const before = readFileSync(join(killed, `${FILE}-wal`));
    await withoutRights(async () => {
      const program = start(killed);
      const { rescue } = await call(program.dispatch, 'records.rescue', {});
      expect(rescue).toMatchObject({ problem: 'read-only', canTakeAlong: true });
      expect(await again(program)).toBe(false);
      expect(await call(program.dispatch, 'records.elsewhere', { folder: other, takeAlong: true })).toEqual({
        remembered: false,
      });
      expect(await litters(program)).toBe(2);
      expect(await program.dispatch('records.undo', {})).toMatchObject({ ok: true });
      program.close();
      const twice = start(killed);
      expect(await twice.dispatch('records.elsewhere', { folder: other, takeAlong: true }), 'over a house').toMatchObject({
        ok: false,
        error: { code: 'conflict' },
      });
    });
    expect(readFileSync(join(killed, `${FILE}-wal`)).equals(before)).toBe(true);
    report({ what: 'barred: folder only read', rounds: 1, lost: 0, lockedOut: 0, recovered: 1 });
  });
});

describe("another program's file in a folder that never was hers", () => {
  it('is left alone: another folder or a try are the ways on', async () => {
    const data = join(folder, 'data');
    mkdirSync(data);
    const database = Buffer.alloc(4096);
    database.write('SQLite format 3\0', 'latin1');
    writeFileSync(join(data, FILE), database);
    const program = start(data);
    expect(await problemOf(program)).toBe('stranger');
    for (const way of ['records.salvage', 'records.beginAnew'])
      expect(await program.dispatch(way, {})).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await again(program)).toBe(false);
    const other = join(folder, 'other');
    mkdirSync(other);
    await call(program.dispatch, 'records.elsewhere', { folder: other, takeAlong: false });
    expect(await litters(program)).toBe(0);
    expect(readFileSync(join(data, FILE)).equals(database)).toBe(true);
    report({ what: "barred: another program's file", rounds: 1, lost: 0, lockedOut: 0, recovered: 1 });
  });
});
