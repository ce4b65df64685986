/** Copies to a stick and back, going back and forward again, another machine, and erasing with what copies still hold. */

import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import type { Program } from '../../main/service/program.ts';
import { isIntact } from '../../main/store/file.ts';
import { allFacts, before, call, machineClock, makeWorld, readingFields, type World } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { report } from './numbers.ts';

let folder: string;
let stick: string;
let remove: () => void;
let program: Program;
let world: World;
beforeEach(async () => {
  const scratch = scratchFolder();
  remove = scratch.remove;
  folder = join(scratch.folder, 'data');
  stick = join(scratch.folder, 'stick');
  mkdirSync(stick);
  program = openOn(folder);
  world = await makeWorld(program.dispatch);
});
afterEach(() => {
  program.close();
  remove();
});

const facts = (of: Program) => allFacts({ dispatch: of.dispatch, clock: world.clock });
const weigh = () =>
  call(program.dispatch, 'growth.record', {
    puppyId: world.puppies[0]?.id ?? '',
    reading: readingFields(before(world.clock, 0, 1), 1033),
  });

describe('a copy on a stick', () => {
  it('is whole, private, and never takes the place of another', async () => {
    const one = await call(program.dispatch, 'records.backUpTo', { folder: stick });
    const bytes = readFileSync(join(stick, one.backup.file));
    await weigh();
    const two = await call(program.dispatch, 'records.backUpTo', { folder: stick });
    expect(two.backup.file).not.toBe(one.backup.file);
    expect(readFileSync(join(stick, one.backup.file))).toEqual(bytes);
    for (const name of readdirSync(stick)) {
      expect(isIntact(join(stick, name)), name).toBe(true);
      if (process.platform !== 'win32') expect(statSync(join(stick, name)).mode & 0o077, name).toBe(0);
    }
    const { backups } = await call(program.dispatch, 'records.backupsIn', { folder: stick });
    expect(new Set(backups.map((b) => b.file))).toEqual(new Set([one.backup.file, two.backup.file]));
    expect(backups.every((b) => b.kind === 'by-hand' && b.checked)).toBe(true);
  });

  it('takes the house to another machine, every fact and every undo with it', async () => {
    const here = await facts(program);
    const { done } = await call(program.dispatch, 'records.done', { limit: 500 });
    const { backup } = await call(program.dispatch, 'records.backUpTo', { folder: stick });
    program.close();
    const other = openOn(join(stick, '..', 'another machine'));
    const { counts } = await call(other.dispatch, 'records.restore', { folder: stick, file: backup.file });
    expect(counts).toMatchObject({ litters: 2, puppies: 4 });
    expect(await facts(other)).toEqual(here);
    expect((await call(other.dispatch, 'records.done', { limit: 500 })).done).toEqual(done);
    expect((await other.dispatch('records.undo', {})).ok).toBe(true);
    other.close();
    program = openOn(join(stick, '..', 'another machine'));
    report({ what: 'moved to another machine', rounds: 1, lost: 0, silent: 0, recovered: 1 });
  });

  it('that was cut short or is no copy is refused, and nothing is touched', async () => {
    const here = await facts(program);
    const { backup } = await call(program.dispatch, 'records.backUpTo', { folder: stick });
    truncateSync(join(stick, backup.file), backup.bytes - 4096);
    writeFileSync(join(stick, 'whelpside-2026-01-01-daily.sqlite'), 'Dear diary');
    for (const file of [backup.file, 'whelpside-2026-01-01-daily.sqlite']) {
      expect(await program.dispatch('records.restore', { folder: stick, file })).toMatchObject({
        ok: false,
        error: { code: 'damaged' },
      });
    }
    expect(await facts(program)).toEqual(here);
    expect((await call(program.dispatch, 'records.backupsIn', { folder: stick })).backups.map((b) => b.checked)).toEqual([
      false,
      false,
    ]);
  });

  it('whose stick was pulled out half way leaves nothing that looks like a copy', async () => {
    const { backup } = await call(program.dispatch, 'records.backUpTo', { folder: stick });
    const bytes = readFileSync(join(stick, backup.file));
    writeFileSync(join(stick, 'whelpside.part'), bytes.subarray(0, 5000));
    expect((await call(program.dispatch, 'records.backupsIn', { folder: stick })).backups).toHaveLength(1);
    await call(program.dispatch, 'records.backUpTo', { folder: stick });
    expect(existsSync(join(stick, 'whelpside.part'))).toBe(false);
    rmSync(stick, { recursive: true });
    expect(await program.dispatch('records.backUpTo', { folder: stick })).toMatchObject({ error: { code: 'not-found' } });
    expect(existsSync(stick), 'a folder that is not there is never made').toBe(false);
  });
});

describe('going back', () => {
  it('keeps what stood there, so that one can go forward again', async () => {
    const { backup } = await call(program.dispatch, 'records.backUp', {});
    const then = await facts(program);
    await weigh();
    const now = await facts(program);
    expect(now).not.toEqual(then);
    const { kept } = await call(program.dispatch, 'records.restore', { folder: null, file: backup.file });
    expect(await facts(program)).toEqual(then);
    const { backups } = await call(program.dispatch, 'records.status', {});
    expect(backups.find((b) => b.file === kept)).toMatchObject({ kind: 'before-restore', checked: true });
    await call(program.dispatch, 'records.restore', { folder: null, file: kept });
    expect(await facts(program)).toEqual(now);
    await weigh();
    program.close();
    program = openOn(folder);
    expect((await call(program.dispatch, 'records.rescue', {})).rescue).toBeNull();
    report({ what: 'back to a copy and forward again', rounds: 2, lost: 0, silent: 0, recovered: 2 });
  });

  it('tells every window to look again', async () => {
    program.close();
    const heard: string[] = [];
    program = openOn(folder, { onChanged: (tags) => heard.push(...tags) });
    const { backup } = await call(program.dispatch, 'records.backUp', {});
    await call(program.dispatch, 'records.restore', { folder: null, file: backup.file });
    for (const tag of ['litters', 'readings', 'rules', 'house', 'plans', 'records']) expect(heard).toContain(tag);
  });
});

describe('erasing', () => {
  const HOUSE = {
    ...DEFAULT_HOUSE,
    breederName: 'Ottilie Quarrington',
    phone: '0123 998877',
    vetName: 'Dr. Pemberwick',
    massUnit: 'lboz',
  } as const;

  it('takes names and numbers out of the file, its log and its journal, by bytes; units stay; copies still hold them', async () => {
    await call(program.dispatch, 'people.setHouse', { change: HOUSE });
    await call(program.dispatch, 'people.setHouse', { change: { ...HOUSE, address: 'Nettlecombe Lane 3' } });
    await weigh();
    const { backup } = await call(program.dispatch, 'records.backUp', {});
    for (const personId of ['person-breeder', 'person-vet'])
      await call(program.dispatch, 'people.erase', { personId, papers: false });
    const { house } = await call(program.dispatch, 'people.house', {});
    expect(house).toMatchObject({ breederName: '', phone: '', address: '', vetName: '', massUnit: 'lboz' });
    const bytes = () =>
      readdirSync(folder)
        .filter((name) => /^whelpside\.sqlite(-wal)?$/.test(name))
        .map((name) => readFileSync(join(folder, name), 'latin1'))
        .join();
    for (const word of ['Quarrington', '998877', 'Pemberwick', 'Nettlecombe']) expect(bytes(), word).not.toContain(word);
    expect(readFileSync(join(folder, 'backups', backup.file), 'latin1')).toContain('Quarrington');
    // The journal goes on: the last weight can be taken back, and nothing brings the names again.
    while ((await program.dispatch('records.undo', {})).ok);
    while ((await program.dispatch('records.redo', {})).ok);
    expect((await call(program.dispatch, 'people.house', {})).house.breederName).toBe('');
    program.close();
    for (const word of ['Quarrington', '998877', 'Pemberwick', 'Nettlecombe']) expect(bytes(), word).not.toContain(word);
    program = openOn(folder);
  });

  it('nothing written, nothing erased', async () => {
    expect((await call(program.dispatch, 'people.all', {})).people.filter(({ role }) => role !== 'buyer')).toEqual([]);
    const erased = await program.dispatch('people.erase', { personId: 'person-breeder', papers: true });
    expect(erased).toMatchObject({ ok: false, error: { code: 'not-found' } });
  });
});

const hasModes = onlyWhere(process.platform !== 'win32', 'Windows keeps no owner modes');
describe.runIf(hasModes)('who may read', () => {
  it('every file that the program makes is for its owner only, whatever the machine’s habit', async () => {
    const mask = process.umask(0);
    try {
      program.close();
      rmSync(folder, { recursive: true });
      program = openOn(folder);
      world = await makeWorld(program.dispatch);
      await call(program.dispatch, 'records.backUp', {});
      await call(program.dispatch, 'records.savePaper', { of: { kind: 'handed-over', planId: world.planId }, paper: 'a4' });
      const { backups } = await call(program.dispatch, 'records.status', {});
      await call(program.dispatch, 'records.restore', { folder: null, file: backups[0]?.file ?? '' });
      await weigh();
      for (const as of ['csv', 'json', 'xlsx', 'file']) await program.dispatch('records.export', { as });
      const open = readdirSync(folder, { recursive: true, withFileTypes: true })
        .map((entry) => join(entry.parentPath, entry.name))
        .filter((path) => (statSync(path).mode & 0o077) !== 0);
      expect(open).toEqual([]);
      expect(statSync(folder).mode & 0o077).toBe(0);
      program.close();
      expect(readdirSync(folder).filter((name) => (statSync(join(folder, name)).mode & 0o077) !== 0)).toEqual([]);
    } finally {
      process.umask(mask);
    }
    program = openOn(folder);
  });

  it('a file that was opened to others is closed to them again', () => {
    program.close();
    chmodSync(join(folder, 'whelpside.sqlite'), 0o644);
    program = openOn(folder, { now: machineClock });
    expect(statSync(join(folder, 'whelpside.sqlite')).mode & 0o077).toBe(0);
  });
});
