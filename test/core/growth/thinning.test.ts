import { describe, expect, it } from 'vitest';
import { fromLocalMinutes, localMinutes } from '../../../core/calendar/clock.ts';
import { assessLitter } from '../../../core/growth/assess.ts';
import { historyOf } from '../../../core/growth/history.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { thinned, thinnedRows } from '../../../core/growth/thinning.ts';
import { simulate } from '../../growth-sim/simulate.ts';
import { asWished } from '../../growth-sim/wishes.ts';
import { make } from './make.ts';

/** One puppy's weights on its way, so many of them so many seconds apart. */
function dense(count: number, seconds: number): GrowthInput {
  const days = Math.ceil((count * seconds) / 86_400) + 1;
  const input = make([{ name: 'Solo', birth: 400 }], { days });
  const [first] = input.readings;
  if (first === undefined) throw new Error('no reading');
  const grams = (instant: number) => {
    const next = input.readings.findIndex((r) => r.instant >= instant);
    const [a, b] = [input.readings[Math.max(0, next - 1)], input.readings[Math.max(0, next)]];
    if (a === undefined || b === undefined || b === a) return first.grams;
    return Math.round(a.grams + ((instant - a.instant) / (b.instant - a.instant)) * (b.grams - a.grams));
  };
  return {
    ...input,
    readings: Array.from({ length: count }, (_, i) => ({
      ...first,
      id: `r-${String(i).padStart(6, '0')}`,
      instant: first.instant + i * seconds * 1000,
      at: fromLocalMinutes(localMinutes(first.at) + Math.floor((i * seconds) / 60)),
      grams: grams(first.instant + i * seconds * 1000),
      session: i === 0 ? ('birth' as const) : ('morning' as const),
    })),
  };
}

describe('dense readings', () => {
  it('cost so many sessions a day, however many there are', () => {
    for (const seconds of [60, 480, 3600]) {
      const perDay = (days: number) => historyOf(dense((days * 86_400) / seconds, seconds)).length / days;
      expect(perDay(4)).toBeLessThanOrEqual(8);
      expect(perDay(12)).toBeLessThanOrEqual(perDay(4));
    }
    expect(historyOf(dense(10_000, 1)).length).toBeLessThanOrEqual(4);
  });

  it('say the same as the usual ones', () => {
    const growth = assessLitter(dense(1500, 600)).puppies.get('Solo');
    expect(growth?.level).toBe('steady');
    const usual = assessLitter(make([{ name: 'Solo', birth: 400 }], { days: 10 })).puppies.get('Solo');
    expect(Math.abs((growth?.expectedNext ?? 0) / (usual?.expectedNext ?? 1) - 1)).toBeLessThan(0.05);
  });

  it('a later one never changes which of the earlier count', () => {
    const { readings } = dense(400, 900);
    const all = thinned(readings).map((r) => r.id);
    for (const n of [7, 50, 233])
      expect(thinned(readings.slice(0, n)).map((r) => r.id)).toEqual(
        all.filter((_, i) => (all[i] ?? '') < `r-${String(n).padStart(6, '0')}`),
      );
  });

  it('one that was confirmed counts in any crowd', () => {
    const { readings } = dense(200, 60);
    const kept = readings.map((r, i) => (i === 150 ? { ...r, kept: true } : r));
    expect(thinned(kept).some((r) => r.kept)).toBe(true);
    expect(thinned(readings).some((r) => r.id === readings[150]?.id)).toBe(false);
  });

  it('the window of a puppy is thinned only beyond what anybody weighs: its last weights stay, and the first', () => {
    const rows = (n: number) => Array.from({ length: n }, (_, i) => i);
    expect(thinnedRows(rows(64))).toEqual(rows(64));
    const some = thinnedRows(rows(500));
    expect(some.length).toBeLessThanOrEqual(64);
    expect(some.slice(-32)).toEqual(rows(500).slice(-32));
    expect(some[0]).toBe(0);
  });
});

describe('typical weighings', () => {
  it('all count: twice a day, again when asked, again at once after a doubt', () => {
    for (const kind of ['acute', 'slow', 'several'] as const) {
      const { input } = asWished(simulate(kind, 4711, { days: 24 }));
      expect(thinned(input.readings)).toHaveLength(input.readings.length);
    }
    const input = make([{ name: 'Solo', birth: 400 }], { days: 9, perDay: 2 });
    const again = input.readings.map((r) => ({ ...r, id: `${r.id}-again`, instant: r.instant + 120_000 }));
    expect(thinned([...input.readings, ...again.filter((_, i) => i % 3 === 0)])).toHaveLength(
      input.readings.length + Math.ceil(again.length / 3),
    );
  });
});
