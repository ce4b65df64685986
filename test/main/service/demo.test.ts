import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeDemo } from '../../../build/demo/make.ts';
import { dateOf, localTime } from '../../../core/calendar/clock.ts';
import { daysBetween } from '../../../core/calendar/day.ts';
import { damSchema } from '../../../core/dogs/dam.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { assessLitter, type LitterGrowth } from '../../../core/growth/assess.ts';
import { growthInputOf } from '../../../core/growth/input.ts';
import type { Reading } from '../../../core/litter/litter.ts';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { eatenMeals, restsOn, weaningEventSchema } from '../../../core/weaning/eaten.ts';
import { weaningDays } from '../../../core/weaning/weaning.ts';
import { weaningPlanSchema } from '../../../core/weaning/weaning-plan.ts';
import { weaningPuppies } from '../../../core/weaning/weaning-puppies.ts';
import { type DemoFacts, demoLitters } from '../../../main/service/demo.ts';
import type { Program } from '../../../main/service/program.ts';
import { call } from '../../contract/world.ts';
import { rowsOfFile } from '../../faults/dump.ts';
import { openOn, scratchFolder } from '../open.ts';

const UTC = Date.parse('2026-06-10T08:30:00Z');
const make = (now: string) => {
  let n = 0;
  const newId = () => {
    n += 1;
    return `demo-id-${n}`;
  };
  return demoLitters({ now: localTime(now), utcOffsetMinutes: 60, recordedInstant: UTC, newId });
};
const newest = (readings: readonly Reading[]) =>
  readings
    .map((r) => r.at)
    .sort()
    .at(-1);

describe('the demo litters', () => {
  it('are what the seeded script makes', () => {
    const stored = readFileSync(new URL('../../../main/service/demo-litters.json', import.meta.url), 'utf8');
    expect(JSON.parse(stored)).toEqual(makeDemo());
  });

  it('were last weighed this morning, or yesterday when it is not yet eight', () => {
    for (const { readings } of make('2026-06-10T09:30')) expect(newest(readings)).toMatch(/^2026-06-10T07:\d\d$/);
    for (const { readings } of make('2026-06-10T08:00')) expect(newest(readings)).toMatch(/^2026-06-10T07:\d\d$/);
    for (const { readings } of make('2026-06-10T07:59')) expect(newest(readings)).toMatch(/^2026-06-09T07:\d\d$/);
  });

  it('are 8 weeks, 9 days and 33 days old, with birth weights, mornings, and evenings for two weeks', () => {
    const all = make('2026-06-10T09:30');
    const [first, second, third] = all;
    expect(all.map((facts) => facts.puppies.length)).toEqual([8, 6, 5]);
    expect(first?.litter).toMatchObject({ whelpedAt: '2026-04-15T02:10', demo: true, sizeClass: 'medium' });
    expect(second?.litter.whelpedAt.slice(0, 10)).toBe('2026-06-01');
    expect(third?.litter.whelpedAt.slice(0, 10)).toBe('2026-05-08');
    expect(third?.readings).toHaveLength(5 * (1 + 33 + 14));
    expect(new Set(all.flatMap(({ puppies, litter }) => [litter.dam, litter.sire, ...puppies.map((p) => p.callName)])).size).toBe(
      8 + 6 + 5 + 2 * 3,
    );
    for (const puppy of first?.puppies ?? []) {
      const own = (first?.readings ?? []).filter((r) => r.puppyId === puppy.id);
      expect(own.filter((r) => r.session === 'birth').map((r) => r.at)).toEqual([puppy.bornAt]);
      expect(own.filter((r) => r.session === 'morning')).toHaveLength(56);
      expect(own.filter((r) => r.session === 'evening')).toHaveLength(14);
      for (const r of own) expect(Date.parse(`${r.at}:00+01:00`)).toBe(r.instant);
    }
  });

  it('stay near published weights: births of 300 to 420 g, about a fifth of the grown weight at 8 weeks', () => {
    for (const { readings } of make('2026-06-10T09:30')) {
      for (const r of readings.filter((b) => b.session === 'birth'))
        expect(r.grams).toSatisfy((g: number) => g >= 300 && g <= 420);
    }
    const [first] = make('2026-06-10T09:30');
    const last = (first?.readings ?? []).filter((r) => r.at.startsWith('2026-06-10'));
    const middle = last.map((r) => r.grams).sort((a, b) => a - b)[4] ?? 0;
    expect(middle / 24_000).toSatisfy((share: number) => share > 0.15 && share < 0.25);
  });

  const levels = (facts: DemoFacts | undefined, until: string): Record<string, string> => {
    if (facts === undefined) return {};
    const growth: LitterGrowth = assessLitter(
      growthInputOf({ ...facts, readings: facts.readings.filter((r) => r.at <= until), house: DEFAULT_HOUSE }),
    );
    expect(growth.litter.level).toBe('steady');
    expect(growth.findings).toEqual([]);
    return Object.fromEntries(facts.puppies.map((p) => [p.callName, growth.puppies.get(p.id)?.level ?? 'none']));
  };

  it('tell their story: one fades now, one slipped and came back, the small one is steady', () => {
    const [first, second] = make('2026-06-10T09:30');
    expect(levels(second, '2026-06-10T09:30')).toEqual({
      Linden: 'steady',
      Sedge: 'steady',
      Bryony: 'steady',
      Fennel: 'act',
      Thyme: 'steady',
      Burnet: 'steady',
    });
    expect(levels(first, '2026-06-10T09:30')).toEqual({
      Rowan: 'steady',
      Campion: 'steady',
      Vetch: 'steady',
      Bracken: 'steady',
      Mallow: 'steady',
      Nettle: 'steady',
      Juniper: 'steady',
      Teasel: 'steady',
    });
    expect(['watch', 'act']).toContain(levels(first, '2026-04-21T09:00')['Vetch']);
    expect(levels(first, '2026-04-21T09:00')['Nettle']).toBe('steady');
  });

  it('one is in weaning: a puppy that gains little is watched and stays on its step, everyone else goes on', () => {
    const third = make('2026-06-10T09:30')[2] as DemoFacts;
    const watched = { Avens: 'steady', Medlar: 'steady', Lovage: 'steady', Willow: 'watch', Spindle: 'steady' };
    expect(levels(third, '2026-06-10T09:30')).toEqual(watched);
    for (let day = 9; day <= 39; day += 1) {
      const until = new Date(Date.UTC(2026, 4, day, 12)).toISOString().slice(0, 16);
      expect(levels(third, until), until).toEqual({ ...watched, Willow: 'steady' });
    }
    const { plan, events } = third.weaning ?? expect.fail('no plan of weaning');
    expect(weaningPlanSchema.safeParse(plan).success).toBe(true);
    expect(daysBetween(dateOf(third.litter.whelpedAt), plan.starts)).toBe(22);
    const growth = growthInputOf({ ...third, house: DEFAULT_HOUSE });
    const input = {
      plan,
      events,
      rules: DEFAULT_RULES,
      food: DEFAULT_FOOD,
      sizeClass: third.litter.sizeClass,
      puppies: weaningPuppies(third.litter, third.puppies, growth),
      today: dateOf(localTime('2026-06-10T09:30')),
      unit: 'g',
    } as const;
    const days = weaningDays(input, plan.starts, 12);
    const holding = days.map((d) => d.puppies.flatMap((p, at) => (p.holds ? (third.puppies[at]?.callName ?? '') : [])));
    expect(holding).toEqual([...Array.from({ length: 10 }, () => []), ['Willow'], ['Willow']]);
    expect(days.map((d) => plan.steps[d.step ?? -1]?.share)).toEqual([
      ...Array(6).fill(0.05),
      ...Array(4).fill(0.15),
      0.25,
      0.25,
    ]);
  });

  it('its diary is of the last two days and this morning, and nothing in it is still to come', () => {
    for (const now of ['2026-06-10T08:00', '2026-06-10T07:59', '2026-06-10T23:50']) {
      const third = make(now)[2] as DemoFacts;
      const events = third.weaning?.events ?? [];
      expect(events).toHaveLength(8);
      for (const e of events) {
        expect(weaningEventSchema.safeParse(e).error).toBeUndefined();
        expect(e.at < now && e.day === dateOf(e.at)).toBe(true);
      }
      expect(eatenMeals(events, null).map((m) => m.ate)).toEqual(['clean', 'clean', 'clean', 'clean', 'left', 'clean', 'clean']);
      const stool = events.find((e) => e.note.kind === 'stool');
      expect(third.puppies.find((p) => p.id === stool?.puppyId)?.callName).toBe('Willow');
      expect(restsOn(events, dateOf(localTime(now)), stool?.puppyId)).toBe(false);
    }
  });

  it('two have their dam written down, weighed from the mating on', () => {
    const dams = make('2026-06-10T09:30').map(({ dam, litter }) => ({ dam, litter }));
    expect(dams.map(({ dam }) => dam?.fields.name ?? null)).toEqual(['Yarrow', null, 'Betony']);
    for (const { dam, litter } of dams) {
      if (dam === null) continue;
      expect(damSchema.safeParse(dam).error).toBeUndefined();
      expect(dam.fields.litterId).toBe(litter.id);
      expect(dam.weights.map((w) => w.instant)).toEqual(dam.weights.map((w) => w.instant).sort((a, b) => a - b));
      expect(dam.weights.at(-1)?.at).toMatch(/^2026-06-09/);
      const before = dam.weights.findLast((w) => w.instant < litter.whelpedInstant);
      const after = dam.weights.find((w) => w.instant > litter.whelpedInstant);
      expect((before?.grams ?? 0) - (after?.grams ?? 0)).toBeGreaterThan(2000);
    }
  });
});

describe('demo in the data file', () => {
  let program: Program;
  let folder: string;
  let remove: () => void;
  beforeEach(() => {
    ({ folder, remove } = scratchFolder());
    program = openOn(folder);
  });
  afterEach(() => {
    program.close();
    remove();
  });

  it('is gone from the bytes once removed', async () => {
    const held = () =>
      readFileSync(join(folder, 'whelpside.sqlite')).toString('latin1') +
      readFileSync(join(folder, 'whelpside.sqlite-wal')).toString('latin1');
    const file = join(folder, 'whelpside.sqlite');
    const before = rowsOfFile(file);
    const { litterIds } = await call(program.dispatch, 'records.addDemo', {
      now: localTime('2026-06-10T09:30'),
      utcOffsetMinutes: 60,
    });
    const litterId = litterIds[2] ?? '';
    const { plan, events } = await call(program.dispatch, 'weaning.plan', { litterId });
    expect([plan?.starts, events.length]).toEqual(['2026-05-30', 8]);
    const { dams } = await call(program.dispatch, 'dogs.dams', {});
    expect(dams.map((d) => [d.fields.name, d.weights.length])).toEqual([
      ['Betony', 9],
      ['Yarrow', 12],
    ]);
    const traces = ['Campion', 'Willow', 'Betony', 'gruel', '"stool"', '21.2', ...litterIds, ...dams.map((d) => d.id)];
    for (const trace of traces) expect(held()).toContain(trace);
    await call(program.dispatch, 'records.removeDemo', {});
    for (const trace of [...traces, 'Yarrow', 'Comfrey', 'Fennel']) expect(held()).not.toContain(trace);
    expect(await call(program.dispatch, 'litter.all', {})).toEqual({ litters: [] });
    expect(await call(program.dispatch, 'dogs.dams', {})).toEqual({ dams: [] });
    expect(rowsOfFile(file)).toEqual(before);
  });

  it('removing what is not there is no fault', async () => {
    expect(await program.dispatch('records.removeDemo', {})).toMatchObject({ ok: true });
  });
});
