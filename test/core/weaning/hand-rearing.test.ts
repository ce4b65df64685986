import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, date, daysBetween } from '../../../core/calendar/day.ts';
import { type DamFields, damFieldsSchema } from '../../../core/dogs/dam.ts';
import { dueWindows } from '../../../core/dogs/gestation.ts';
import { damDay, lactationEnergy } from '../../../core/feeding/dam-day.ts';
import { HAND_REARING } from '../../../core/reference/feeding/nursing.ts';
import { HAND_REARING_UNTIL_DAYS, handbookFeeds, topUp } from '../../../core/weaning/hand-rearing.ts';

const mated = date('2026-03-01');
const FIELDS: DamFields = {
  name: 'Hazel',
  litterId: null,
  lh: null,
  ovulation: null,
  dioestrus: null,
  firstMating: mated,
  lastMating: null,
  foodKcalPer100g: 180,
};

describe('the dam', () => {
  const at = (day: number, more: Partial<Parameters<typeof damDay>[0]> = {}) =>
    damDay({ fields: FIELDS, kg: 20, day: addDays(mated, day), whelped: null, nursing: 0, solids: 0, ...more });

  it('needs no more until the last five weeks', () => {
    expect(at(10)).toMatchObject({ phase: 'early', meals: { low: 2, high: 2 } });
    expect(at(25).phase).toBe('early');
    expect(at(26)).toMatchObject({ phase: 'late', meals: { low: 3, high: 4 } });
    expect(at(30).kcal).toBeGreaterThan(at(10).kcal);
  });

  it('gets grams of her own food, and none when nobody said what it holds', () => {
    expect(at(10).foodGrams).toBe(Math.round(at(10).kcal / 1.8 / 5) * 5);
    expect(at(10, { fields: { ...FIELDS, foodKcalPer100g: null } }).foodGrams).toBeNull();
  });

  it('eats for milk by week and litter, and steps down as her puppies move to bowls', () => {
    const milk = (day: number, solids: number) => at(day, { whelped: mated, nursing: 6, solids });
    expect(milk(16, 0)).toMatchObject({ week: 3, phase: 'milk' });
    expect(milk(16, 0).kcal).toBeCloseTo(lactationEnergy(20, 6, 3), 6);
    const down = [0, 0.25, 0.5, 0.75, 1].map((s) => milk(45, s).kcal);
    expect([...down].sort((a, b) => b - a)).toEqual(down);
    expect(milk(45, 1).kcal).toBeCloseTo(145 * 20 ** 0.75, 6);
    expect(milk(80, 1).phase).toBe('dry');
  });

  it('refuses a last mating before the first', () => {
    expect(damFieldsSchema.safeParse({ ...FIELDS, lastMating: addDays(mated, -1) }).success).toBe(false);
  });
});

describe('the due window', () => {
  it('puts the narrowest first and holds its own middle', () => {
    const all = dueWindows({
      ...FIELDS,
      lh: addDays(mated, -1),
      ovulation: addDays(mated, 1),
      dioestrus: addDays(mated, 8),
      lastMating: addDays(mated, 3),
    });
    expect(all.map((w) => w.from)).toEqual(['lh', 'ovulation', 'dioestrus', 'mating']);
    for (const w of all) expect(w.low <= w.due && w.due <= w.high, w.from).toBe(true);
    expect(dueWindows({ ...FIELDS, firstMating: null })).toEqual([]);
  });

  it('takes a last mating alone for the only one', () => {
    const [w] = dueWindows({ ...FIELDS, firstMating: null, lastMating: mated });
    expect(w === undefined ? 0 : daysBetween(mated, w.due)).toBe(61);
  });
});

describe('a top-up', () => {
  it('never passes the stomach, never turns round, and stops at four weeks', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 3000, noNaN: true }),
        fc.integer({ min: 0, max: 40 }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (grams, ageDays, milk) => {
          const t = topUp(grams, ageDays, milk);
          expect(t === null).toBe(ageDays >= HAND_REARING_UNTIL_DAYS);
          if (t === null) return;
          expect(t.feedMl.low).toBeLessThanOrEqual(t.feedMl.high);
          expect(t.feedMl.high).toBeLessThanOrEqual(grams * 0.04 + 1e-9);
          expect(t.feedMl.high).toBeLessThanOrEqual(t.mostMl);
          expect(t.dayMl.low).toBeLessThanOrEqual(t.dayMl.high);
          expect(t.feeds.low).toBeLessThanOrEqual(t.feeds.high);
        },
      ),
    );
  });

  it('gives the day that the handbook has, in more feeds where the stomach is small, and never less a week later', () => {
    for (const milk of [0.5, 0.75, 1, 1.3]) {
      for (const method of [HAND_REARING.A, HAND_REARING.B]) {
        const days = ([0, 1, 2, 3] as const).map((week) => handbookFeeds(method, 400, week, milk));
        for (const [week, day] of days.entries()) {
          const kcal = (400 / 453.59237) * (method.kcalPerPound[week] ?? 0);
          expect(day.dayMl).toBeCloseTo(kcal / milk, 9);
          expect(day.feedMl).toBeLessThanOrEqual(16 + 1e-9);
          expect(day.dayMl).toBeGreaterThanOrEqual((days[week - 1]?.dayMl ?? 0) - 1e-9);
        }
      }
    }
    // 400 g by handbook A: 97 kcal, 129 mL of a milk of 0.75 kcal, 16 mL a feed at most: nine feeds.
    expect(handbookFeeds(HAND_REARING.A, 400, 0, 0.75)).toMatchObject({ feeds: 9, capped: true });
  });

  it('is none without a weight or a milk', () => {
    expect(topUp(0, 5)).toBeNull();
    expect(topUp(300, 5, 0)).toBeNull();
    expect(topUp(300, -1)).toBeNull();
  });
});
