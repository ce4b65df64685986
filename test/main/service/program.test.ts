import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type LocalTime, localTime } from '../../../core/calendar/clock.ts';
import { addDays } from '../../../core/calendar/day.ts';
import type { Tag } from '../../../core/contract/result.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import type { Program, ProgramOptions } from '../../../main/service/program.ts';
import { call, dayBefore, keptPlan, litterFields, makeWorld, planOn, puppyFields, readingFields } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

let folder: string;
let remove: () => void;
let program: Program;
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
  program = openOn(folder);
});
afterEach(() => {
  program.close();
  remove();
});

function reopen(options: Partial<ProgramOptions> = {}): void {
  program.close();
  program = openOn(folder, options);
}

describe('the program', () => {
  it('tells the hosts what changed, but only when something did', async () => {
    const heard: (readonly Tag[])[] = [];
    reopen({ onChanged: (tags) => heard.push(tags) });
    const { clock } = await makeWorld(program.dispatch);
    heard.length = 0;
    await program.dispatch('litter.all', {});
    await program.dispatch('litter.remove', { litterId: '00000000-0000-4000-8000-000000000000' });
    expect(heard).toEqual([]);
    await call(program.dispatch, 'litter.begin', { litter: litterFields(clock, 'Bryony'), puppies: [] });
    await call(program.dispatch, 'records.backUp', {});
    // The dam and the sire are written down with the litter.
    expect(heard).toEqual([['dogs', 'litters', 'records'], ['records']]);
  });

  it('keeps facts over a restart', async () => {
    const { litter, puppies } = await makeWorld(program.dispatch);
    const before = await call(program.dispatch, 'growth.readings', { litterId: litter.id });
    reopen();
    expect(await call(program.dispatch, 'growth.readings', { litterId: litter.id })).toEqual(before);
    expect(before.readings.filter((r) => r.puppyId === puppies[0]?.id).length).toBeGreaterThan(3);
  });
});

describe('the daily copy', () => {
  const at = (local: string): { instant: number; local: LocalTime } => ({
    instant: Date.parse(`${local}:00Z`),
    local: localTime(local),
  });
  const copies = async () => (await call(program.dispatch, 'records.status', {})).backups.map((b) => b.file);

  it('is made at the first start of a day, and at the first command after midnight', async () => {
    let now = at('2026-05-01T21:00');
    reopen({ now: () => now });
    const { litter } = await call(program.dispatch, 'litter.begin', { litter: litterFields(now, 'Yarrow'), puppies: [] });
    expect(await copies()).toEqual(['whelpside-2026-05-01-daily.sqlite']);
    now = at('2026-05-02T06:10');
    await call(program.dispatch, 'litter.all', {});
    expect(await copies()).toHaveLength(1);
    await call(program.dispatch, 'litter.addPuppy', { litterId: litter.id, fields: puppyFields(now, 0), birthWeight: null });
    await call(program.dispatch, 'litter.addPuppy', { litterId: litter.id, fields: puppyFields(now, 1), birthWeight: null });
    expect(await copies()).toEqual(['whelpside-2026-05-02-daily.sqlite', 'whelpside-2026-05-01-daily.sqlite']);
  });

  it('that can not be made stops no weighing', async () => {
    rmSync(join(folder, 'backups'), { recursive: true, force: true });
    writeFileSync(join(folder, 'backups'), 'a file in the way');
    const now = at('2026-05-03T06:10');
    reopen({ now: () => now, onFault: () => undefined });
    const { litter } = await call(program.dispatch, 'litter.begin', { litter: litterFields(now, 'Yarrow'), puppies: [] });
    expect(litter.dam).toBe('Yarrow');
    expect((await program.dispatch('records.backUp', {})).ok).toBe(false);
  });
});

describe('plans', () => {
  it('are made with the rules in force on their day', async () => {
    const { clock, puppies } = await makeWorld(program.dispatch);
    const today = dayBefore(clock, 0);
    const puppyId = puppies[0]?.id ?? '';
    const rulesFrom = async (on = today) => (await planOn(program.dispatch, puppyId, on)).rulesFrom;
    // She has written none yet: no date is printed.
    expect(await rulesFrom()).toBeNull();
    await call(program.dispatch, 'feeding.setRules', { from: addDays(today, -1), change: DEFAULT_RULES });
    await call(program.dispatch, 'feeding.setRules', { from: addDays(today, 3), change: DEFAULT_RULES });
    expect(await rulesFrom()).toBe(addDays(today, -1));
    expect(await rulesFrom(addDays(today, 2))).toBe(addDays(today, -1));
    expect(await rulesFrom(addDays(today, 3))).toBe(addDays(today, 3));
    const { versions } = await call(program.dispatch, 'feeding.rules', {});
    expect(versions.map((v) => v.from)).toEqual([addDays(today, 3), addDays(today, -1), '2026-01-01']);
  });

  it('stay as they were handed over, whatever changes after', async () => {
    const { clock, puppies, planId } = await makeWorld(program.dispatch);
    const before = await keptPlan(program.dispatch, planId);
    const today = await planOn(program.dispatch, before.puppyId, dayBefore(clock, 0));
    expect(today).toEqual(before);
    await call(program.dispatch, 'growth.record', { puppyId: puppies[0]?.id ?? '', reading: readingFields(clock, 1400) });
    await call(program.dispatch, 'people.setHouse', { change: { ...DEFAULT_HOUSE, breederName: 'New name', vetPhone: '1' } });
    await call(program.dispatch, 'feeding.setRules', {
      from: dayBefore(clock, 9),
      change: { ...DEFAULT_RULES, shareYoung: 0.07 },
    });
    reopen();
    expect(await keptPlan(program.dispatch, planId)).toEqual(before);
    const changed = await planOn(program.dispatch, before.puppyId, dayBefore(clock, 0));
    expect(changed).not.toEqual(before);
  });

  it('are not made for a puppy that died', async () => {
    const { clock, puppies } = await makeWorld(program.dispatch);
    const puppyId = puppies[1]?.id ?? '';
    await call(program.dispatch, 'litter.setState', { puppyId, state: 'died', on: dayBefore(clock, 0) });
    const result = await program.dispatch('homing.handOver', { puppyId, on: dayBefore(clock, 0), leaves: true });
    expect(result).toMatchObject({ ok: false, error: { code: 'refused' } });
  });

  it('mark the puppy gone in the same entry when it leaves', async () => {
    const { clock, puppies } = await makeWorld(program.dispatch);
    const puppyId = puppies[1]?.id ?? '';
    const on = dayBefore(clock, 0);
    const find = async () =>
      (await call(program.dispatch, 'litter.all', {})).litters.flatMap((l) => l.puppies).find((p) => p.id === puppyId);
    await call(program.dispatch, 'homing.handOver', { puppyId, on, leaves: true });
    expect(await find()).toMatchObject({ state: 'home', stateOn: on });
    await call(program.dispatch, 'records.undo', {});
    expect(await find()).toMatchObject({ state: 'litter', stateOn: null });
  });
});

describe('papers', () => {
  it('need an engine', async () => {
    reopen({ paper: null });
    const { planId } = await makeWorld(program.dispatch);
    const result = await program.dispatch('records.savePaper', { of: { kind: 'handed-over', planId }, paper: 'a4' });
    expect(result).toMatchObject({ ok: false, error: { code: 'no-printer' } });
  });

  it('are what the engine made of the document, on the paper asked for', async () => {
    const { planId, puppies, clock } = await makeWorld(program.dispatch);
    const kept = await call(program.dispatch, 'records.savePaper', { of: { kind: 'handed-over', planId }, paper: 'letter' });
    expect(readFileSync(join(kept.folder, kept.file), 'utf8')).toBe('%PDF-1.7 Vetch on letter');
    const of = { kind: 'puppy', puppyId: puppies[1]?.id ?? '', on: dayBefore(clock, -3) } as const;
    const made = await call(program.dispatch, 'records.savePaper', { of, paper: 'a4' });
    expect(made.file).toContain(dayBefore(clock, -3));
    expect(readFileSync(join(made.folder, made.file), 'utf8')).toBe('%PDF-1.7 Puppy B on a4');
  });

  it('leave nothing behind when the engine fails', async () => {
    reopen({ paper: { print: () => Promise.reject(new Error('no ink at /dev/printer')) }, onFault: () => undefined });
    const { planId } = await makeWorld(program.dispatch);
    const result = await program.dispatch('records.savePaper', { of: { kind: 'handed-over', planId }, paper: 'a4' });
    expect(result).toEqual({ ok: false, error: { code: 'internal', message: 'the program made a mistake' } });
    expect(await program.dispatch('records.paperFile', { file: 'Vetch.pdf' })).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    });
  });
});
