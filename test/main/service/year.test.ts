/** A year of use through dispatch: six litters, some hundreds of commands, nothing lost, nothing moved. */
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { fromLocalMinutes, localMinutes, localTime } from '../../../core/calendar/clock.ts';
import { addDays } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { allFacts, before, type Clock, call, dayBefore, litterFields, puppyFields, readingFields } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

const START: Clock = { instant: Date.parse('2026-01-05T07:10:00Z'), local: localTime('2026-01-05T07:10') };
const later = (days: number): Clock => ({
  instant: START.instant + days * 86_400_000,
  local: fromLocalMinutes(localMinutes(START.local) + days * 1440),
});

it('a year of use stays whole', async () => {
  const { folder, remove } = scratchFolder();
  let clock = START;
  let program = openOn(folder, { now: () => clock });
  const weighed = new Map<string, number>();
  let commands = 0;

  for (let n = 0; n < 6; n += 1) {
    clock = later(n * 60 + 20);
    const { litter } = await call(program.dispatch, 'litter.begin', { litter: litterFields(clock, `Dam ${n}`), puppies: [] });
    const puppyIds: string[] = [];
    for (let p = 0; p < 5; p += 1) {
      const birthWeight = { grams: 340 + p, typed: String(340 + p), unit: 'g', source: 'scale' } as const;
      const { puppy } = await call(program.dispatch, 'litter.addPuppy', {
        litterId: litter.id,
        fields: puppyFields(clock, p),
        birthWeight,
      });
      puppyIds.push(puppy.id);
    }
    commands += 6;
    for (let week = 0; week < 12; week += 1) {
      clock = later(n * 60 + 21 + week * 3);
      for (const [p, puppyId] of puppyIds.entries()) {
        const grams = 1000 + week * 130 + p * 10.5;
        const { reading } = await call(program.dispatch, 'growth.record', {
          puppyId,
          reading: readingFields(before(clock, 0, p), grams),
        });
        weighed.set(reading.id, grams);
        commands += 1;
      }
      if (week === 5) {
        program.close();
        program = openOn(folder, { now: () => clock });
      }
    }
    const rules = { ...DEFAULT_RULES, stepDays: 7 + n };
    await call(program.dispatch, 'feeding.setRules', { from: addDays(dayBefore(clock, 0), -n), change: rules });
    for (const puppyId of puppyIds.slice(1)) {
      await call(program.dispatch, 'homing.handOver', { puppyId, on: dayBefore(clock, 0), leaves: true });
      commands += 1;
    }
    await call(program.dispatch, 'litter.setState', { puppyId: puppyIds[0] ?? '', state: 'kept', on: dayBefore(clock, 0) });
    commands += 2;
  }
  expect(commands).toBeGreaterThan(400);

  const { litters } = await call(program.dispatch, 'litter.all', {});
  expect(litters.map((l) => [l.litter.dam, l.puppies.map((p) => p.state)])).toEqual(
    [5, 4, 3, 2, 1, 0].map((n) => [`Dam ${n}`, ['kept', 'home', 'home', 'home', 'home']]),
  );
  const stored = new Map<string, number>();
  for (const { litter } of litters) {
    const { readings } = await call(program.dispatch, 'growth.readings', { litterId: litter.id });
    for (const r of readings) if (r.session !== 'birth') stored.set(r.id, r.grams);
  }
  expect(stored).toEqual(weighed);

  const facts = await allFacts({ dispatch: program.dispatch, clock });
  for (let n = 0; n < 40; n += 1) await call(program.dispatch, 'records.undo', {});
  expect(await allFacts({ dispatch: program.dispatch, clock })).not.toEqual(facts);
  program.close();
  program = openOn(folder, { now: () => clock });
  for (let n = 0; n < 40; n += 1) await call(program.dispatch, 'records.redo', {});
  expect(await allFacts({ dispatch: program.dispatch, clock })).toEqual(facts);

  const { backups } = await call(program.dispatch, 'records.status', {});
  // One before the first command of a day; on days on which the program was closed one more, with the day's own weights.
  const days = backups.map((b) => /\d{4}-\d\d-\d\d/.exec(b.file)?.[0] ?? '');
  expect(new Set(days).size).toBe(14 + 8);
  expect(backups.length).toBeLessThanOrEqual(14 + 8 + 2);
  expect(backups.every((b) => b.checked && b.kind === 'daily')).toBe(true);
  program.close();
  const db = new Database(join(folder, 'whelpside.sqlite'));
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(db.pragma('foreign_key_check')).toEqual([]);
  db.close();
  remove();
}, 60_000);
