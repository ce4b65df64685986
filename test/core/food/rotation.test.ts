/** A week of bowls: what it comes to, what to weigh out, where it parts from the rules. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { date } from '../../../core/calendar/day.ts';
import { THREE_MEALS } from '../../../core/feeding/meals.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { grownEnergy, type WeekFindingsInput, weekFindings } from '../../../core/feeding/week-findings.ts';
import { MEAL_NAMES } from '../../../core/food/bowls.ts';
import { foodCatalogue } from '../../../core/food/catalogue.ts';
import { DEFAULT_FOOD, ingredientFood, PLAIN_FOOD } from '../../../core/food/food.ts';
import {
  type Bowl,
  bowlOn,
  EMPTY_WEEK,
  feedingOf,
  fillBowl,
  reckonedFood,
  type Week,
  weekSchema,
  weekSummary,
} from '../../../core/food/rotation.ts';
import { GRAMS_PER_OUNCE } from '../../../core/units/mass.ts';
import { foodFields } from '../../contract/world.ts';

const freezeDried = {
  id: 'food-freeze',
  retired: false,
  fields: {
    ...foodFields('Freeze-dried', { water: 4, protein: 45, fat: 35, ash: 8, kcalPer100g: 520, calcium: 1.5, phosphorus: 1.2 }),
    form: 'freeze-dried' as const,
    bone: null,
  },
};
const catalogue = foodCatalogue([freezeDried]);
const foods = (...parts: [string, number][]): Bowl => ({
  kind: 'foods',
  parts: parts.map(([foodId, share]) => ({ foodId, share })),
});
const wings: Bowl = { kind: 'bone', foodId: 'usda-05100', pieces: 3, pieceGrams: 90 };
const meals = { morning: 90, midday: 90, evening: 90 };
const every = (bowl: Bowl): Week => EMPTY_WEEK.map(() => ({ morning: bowl, midday: bowl, evening: bowl }));
const sum = (week: Week | null, eaters = 1) => weekSummary(week, { count: eaters, meals }, catalogue, DEFAULT_FOOD);
const found = (week: Week | null, change: Partial<WeekFindingsInput> = {}) => {
  const summary = sum(week);
  if (summary === null) throw new Error('nobody eats');
  return weekFindings({
    summary,
    rules: DEFAULT_RULES,
    energy: null,
    growth: { size: 'usual', stage: 'early', severity: 'caution' },
    ...change,
  });
};

describe('the sum of a week', () => {
  it('of an empty one is the usual food, every day', () => {
    const s = sum(null);
    expect(s?.grams).toBeCloseTo(270, 9);
    expect(s?.kcal).toBeCloseTo(2.7 * DEFAULT_FOOD.kcalPer100g, 6);
    expect(s?.bone.low).toBeCloseTo(DEFAULT_FOOD.bone?.share ?? 0, 9);
    expect(s?.complete).toBeCloseTo(1, 9);
    expect(s?.days).toHaveLength(7);
  });

  it('is worked by hand: plain mornings, wings on Wednesday evening', () => {
    const week = EMPTY_WEEK.map((_, d): Week[number] => ({
      morning: foods([PLAIN_FOOD.id, 1]),
      ...(d === 2 ? { evening: wings } : {}),
    }));
    const s = sum(week, 2);
    const both = { count: 2, meals: { morning: 90, midday: 90, evening: 90 } };
    expect(both.count).toBe(2);
    const grams = 7 * 90 + 7 * 90 + 6 * 90 + 3 * 90 * 2;
    const wing = ingredientFood('05100');
    const kcal = (7 * 90 * PLAIN_FOOD.kcalPer100g + 13 * 90 * DEFAULT_FOOD.kcalPer100g + 540 * wing.kcalPer100g) / 100;
    expect(s?.grams).toBeCloseTo(grams / 7, 6);
    expect(s?.kcal).toBeCloseTo(kcal / 7, 6);
    expect(s?.meals).toEqual({ all: 21, bones: 1, plain: 7, complete: 13 });
    const boneGrams = 7 * 90 * (PLAIN_FOOD.bone?.share ?? 0) + 13 * 90 * (DEFAULT_FOOD.bone?.share ?? 0) + 540 * 0.38;
    expect(s?.bone.low).toBeCloseTo(boneGrams / grams, 9);
    expect(s?.withoutGreens).toBeCloseTo(630, 9);
  });

  it('adds up: parts of the energy to one, days to the week, whatever the bowls', () => {
    const ids = [DEFAULT_FOOD.id, PLAIN_FOOD.id, 'usda-13325', 'usda-11124', 'food-freeze'];
    const bowl = fc.oneof(
      fc.constant(null),
      fc.constantFrom(...ids).map((id) => foods([id, 1])),
      fc
        .tuple(
          fc.constantFrom(...ids.slice(0, 2)),
          fc.constantFrom(...ids.slice(2)),
          fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        )
        .map(([a, b, s]) => foods([a, s], [b, 1 - s])),
      fc.record({
        kind: fc.constant('bone' as const),
        foodId: fc.constant('usda-05100'),
        pieces: fc.integer({ min: 1, max: 4 }),
        pieceGrams: fc.integer({ min: 20, max: 200 }),
      }),
    );
    const week = fc.array(fc.tuple(bowl, bowl, bowl), { minLength: 7, maxLength: 7 }).map(
      (days): Week =>
        days.map(([morning, midday, evening]) => ({
          ...(morning === null ? {} : { morning }),
          ...(midday === null ? {} : { midday }),
          ...(evening === null ? {} : { evening }),
        })),
    );
    fc.assert(
      fc.property(week, fc.integer({ min: 1, max: 14 }), (w, n) => {
        const s = sum(w, n);
        if (s === null) throw new Error('nobody eats');
        expect(s.complete + s.plain + s.bones + s.concentrated + s.other).toBeCloseTo(1, 9);
        expect(s.days.reduce((a, b) => a + b, 0) / 7).toBeCloseTo(s.kcal, 6);
        expect(s.foods.reduce((a, f) => a + f.gramsAWeek, 0) / 7).toBeCloseTo(s.grams, 6);
        expect(s.bone.low).toBeLessThanOrEqual(s.bone.high + 1e-12);
        expect(weekSchema.safeParse(w).success).toBe(true);
      }),
    );
  });

  it('is nothing when nobody eats', () => {
    expect(weekSummary(null, { count: 0, meals: {} }, catalogue, DEFAULT_FOOD)).toBeNull();
  });
});

describe('a bowl', () => {
  it('is weighed out to the gram: its foods add up to the meal', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4000 }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.constantFrom('g', 'oz'),
        (n, share, unit) => {
          const meal = unit === 'g' ? n : n * (GRAMS_PER_OUNCE / 4);
          const parts = fillBowl(
            foods([DEFAULT_FOOD.id, share], ['usda-13325', 1 - share]),
            meal,
            4,
            catalogue,
            DEFAULT_FOOD,
            unit,
          );
          expect(parts.reduce((a, p) => a + p.grams, 0)).toBeCloseTo(meal, 6);
          for (const p of parts) expect(p.grams).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('of bones is counted: so many pieces to each', () => {
    expect(fillBowl(wings, 90, 8, catalogue, DEFAULT_FOOD, 'g')).toEqual([
      { food: ingredientFood('05100'), pieces: 3, grams: 2160 },
    ]);
  });

  it('is found by the day of the week', () => {
    const week = EMPTY_WEEK.map((_, d): Week[number] => (d === 0 ? { morning: wings } : {}));
    expect(bowlOn(week, date('2026-11-23'), 'morning')).toBe(wings);
    expect(bowlOn(week, date('2026-11-24'), 'morning')).toBeNull();
    expect(bowlOn(null, date('2026-11-23'), 'morning')).toBeNull();
  });
});

describe('what is fed', () => {
  const house = { litterId: null, foodId: PLAIN_FOOD.id, week: null, dogs: [] };
  it('is the litter’s own, else the house’s, else the generic mix', () => {
    expect(feedingOf([], 'litter-1')).toEqual({ foodId: null, week: null });
    expect(feedingOf([house], 'litter-1').foodId).toBe(PLAIN_FOOD.id);
    expect(feedingOf([house, { litterId: 'litter-1', foodId: 'food-freeze', week: null, dogs: [] }], 'litter-1').foodId).toBe(
      'food-freeze',
    );
    expect(reckonedFood({ foodId: 'food-gone-1', week: null }, catalogue, THREE_MEALS)).toBe(DEFAULT_FOOD);
  });

  it('is reckoned with the mean of the week when there is one', () => {
    const mean = reckonedFood(
      { foodId: null, week: EMPTY_WEEK.map(() => ({ morning: foods([PLAIN_FOOD.id, 1]) })) },
      catalogue,
      THREE_MEALS,
    );
    expect(mean.kcalPer100g).toBeCloseTo((PLAIN_FOOD.kcalPer100g + 2 * DEFAULT_FOOD.kcalPer100g) / 3, 9);
    expect(reckonedFood({ foodId: PLAIN_FOOD.id, week: EMPTY_WEEK }, catalogue, THREE_MEALS)).toBe(PLAIN_FOOD);
  });
});

describe('findings of a week', () => {
  const codes = (...args: Parameters<typeof found>) => found(...args).map((f) => f.code);
  it('freeze-dried over a tenth of the energy, and water with what is dry', () => {
    const tenth = every(foods([DEFAULT_FOOD.id, 0.97], ['food-freeze', 0.03]));
    expect(codes(tenth)).not.toContain('freeze-dried');
    expect(codes(tenth)).toContain('extra-water');
    expect(codes(every(foods([DEFAULT_FOOD.id, 0.9], ['food-freeze', 0.1])))).toContain('freeze-dried');
    expect(codes(null)).not.toContain('extra-water');
  });

  it('greens with plain bowls only, a tablespoon to half a pound', () => {
    const greens = found(every(foods([PLAIN_FOOD.id, 1]))).find((f) => f.code === 'greens');
    expect(greens?.numbers['spoons']).toBeCloseTo((270 * 7) / 226.8, 0);
    expect(codes(null)).not.toContain('greens');
    expect(
      codes(every(foods([PLAIN_FOOD.id, 1])), { rules: { ...DEFAULT_RULES, vegetableSpoonsPerHalfPound: 0 } }),
    ).not.toContain('greens');
  });

  it('bone against the aim, liver against the limit, boneless meat against the calcium that bones need', () => {
    expect(codes(null, { rules: { ...DEFAULT_RULES, boneShare: 0.25 } })).toContain('bone-under');
    expect(codes(null)).not.toContain('bone-under');
    expect(codes(every(foods(['usda-05179', 1])))).toEqual(expect.arrayContaining(['bone-over', 'calcium-high']));
    expect(codes(every(foods([DEFAULT_FOOD.id, 0.8], ['usda-13325', 0.2])))).toContain('vitamin-a');
    expect(codes(every(foods(['usda-23572', 1])))).toEqual(expect.arrayContaining(['calcium-low', 'ratio-low']));
    expect(codes(every(foods(['usda-23572', 1])), { growth: null })).not.toContain('calcium-low');
  });

  it('complete and plain bowls out of balance, when there are both', () => {
    const one = EMPTY_WEEK.map((_, d): Week[number] => (d === 0 ? { morning: foods([PLAIN_FOOD.id, 1]) } : {}));
    const half = EMPTY_WEEK.map((_, d): Week[number] =>
      d % 2 === 0
        ? { morning: foods([PLAIN_FOOD.id, 1]), midday: foods([PLAIN_FOOD.id, 1]), evening: foods([PLAIN_FOOD.id, 1]) }
        : {},
    );
    expect(codes(one)).toContain('mixes-apart');
    expect(codes(half)).not.toContain('mixes-apart');
    expect(codes(null)).not.toContain('mixes-apart');
  });

  it('energy of a grown dog from quiet to active', () => {
    const published = grownEnergy(25);
    expect(published.low).toBeCloseTo(95 * 25 ** 0.75, 9);
    expect(published.high).toBeCloseTo(130 * 25 ** 0.75, 9);
    expect(codes(null, { growth: null, energy: published })).toContain('week-energy-low');
  });
});

it('knows every meal of a day', () => {
  expect(Object.keys(every(wings)[0] ?? {}).every((m) => MEAL_NAMES.some((n) => n === m))).toBe(true);
});
