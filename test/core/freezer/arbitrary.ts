/** Random freezers: portions of a few sizes or of any size, meals by day, thaw and keeping times as the house rules allow them. */

import fc from 'fast-check';
import type { SolveInput } from '../../../core/freezer/problem.ts';

const HOUR = 60;
const DAY = 1440;
export const MEALS = [7 * HOUR, 12 * HOUR + 30, 18 * HOUR];

/** Few enough to try every plan there is. */
export const smallFreezer: fc.Arbitrary<SolveInput> = fc
  .record({
    portions: fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 4 }),
    meals: fc.array(fc.record({ gap: fc.integer({ min: 1, max: 4 }), grams: fc.integer({ min: 0, max: 8 }) }), {
      minLength: 1,
      maxLength: 6,
    }),
    thawed: fc.array(fc.record({ grams: fc.integer({ min: 1, max: 6 }), ready: fc.integer({ min: -3, max: 2 }) }), {
      maxLength: 1,
    }),
    keep: fc.constantFrom(24, 48, 12),
    evening: fc.boolean(),
    heavyIsSlow: fc.boolean(),
  })
  .map(({ portions, meals, thawed, keep, evening, heavyIsSlow }) => {
    let third = 0;
    return {
      now: 100 * DAY + 8 * HOUR,
      needs: meals.map((m) => {
        third += m.gap;
        return { at: 100 * DAY + Math.floor(third / 3) * DAY + (MEALS[third % 3] ?? 0), tenths: m.grams * 500 };
      }),
      thawed: thawed.map((t) => ({
        tenths: t.grams * 500,
        ready: 100 * DAY + t.ready * 8 * HOUR,
        useBy: 100 * DAY + t.ready * 8 * HOUR + keep * HOUR,
      })),
      portions: portions.map((p, i) => ({ id: `portion-${i}`, tenths: p * 500, lastDay: null })),
      aheadOf: (tenths: number) => (heavyIsSlow && tenths > 3000 ? 32 : 24) * HOUR,
      keepMinutes: keep * HOUR,
      moveAt: evening ? [18 * HOUR] : MEALS,
      until: 100 * DAY + 8 * DAY,
    };
  });

export interface LargeShape {
  readonly days: number;
  readonly packs: number;
}

/** A kitchen: one to three sizes of pack (or every pack its own weight), three meals a day that grow or stay, 24 or 48 hours of keeping. */
export function largeFreezer({ days, packs }: LargeShape): fc.Arbitrary<SolveInput> {
  return fc
    .record({
      sizes: fc.array(fc.constantFrom(2270, 2500, 4540, 5000, 10_000, 1135, 8000, 3330), { minLength: 1, maxLength: 3 }),
      weighed: fc.boolean(),
      pattern: fc.array(fc.nat({ max: 1000 }), { minLength: packs, maxLength: packs }),
      mealTenths: fc.integer({ min: 200, max: 6000 }),
      growth: fc.integer({ min: 0, max: 3 }),
      keep: fc.constantFrom(24, 24, 48),
      evening: fc.boolean(),
    })
    .map(({ sizes, weighed, pattern, mealTenths, growth, keep, evening }) => ({
      now: 100 * DAY + 8 * HOUR,
      needs: Array.from({ length: days * 3 }, (_, i) => ({
        at: 101 * DAY + Math.floor(i / 3) * DAY + (MEALS[i % 3] ?? 0) + DAY,
        tenths: Math.round(mealTenths * (1 + (growth * i) / (days * 3))),
      })),
      thawed: [],
      portions: pattern.map((p, i) => ({
        id: `portion-${i}`,
        tenths: (sizes[p % sizes.length] ?? 5000) + (weighed ? (p % 41) - 20 : 0),
        lastDay: null,
      })),
      aheadOf: () => 24 * HOUR,
      keepMinutes: keep * HOUR,
      moveAt: evening ? [18 * HOUR] : MEALS,
      until: 101 * DAY + days * DAY + DAY,
    }));
}
