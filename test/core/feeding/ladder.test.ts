import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, addMonths, ageInDays, date } from '../../../core/calendar/day.ts';
import { MOST_SHARE } from '../../../core/feeding/amount.ts';
import { growthEstimate } from '../../../core/feeding/energy.ts';
import {
  amountByWeight,
  type LadderInput,
  type LadderStep,
  ladderStepSchema,
  mealLadder,
  type Tread,
  treadAmounts,
} from '../../../core/feeding/ladder.ts';
import { rationOn } from '../../../core/feeding/ration.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { shareOfWeight } from '../../../core/feeding/share.ts';
import { bowlStep, type Meals } from '../../../core/food/bowls.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { forecastWeight } from '../../../core/growth/forecast.ts';
import { SIZE_CLASSES } from '../../../core/reference/classes.ts';
import { CLASS_ADULT_KG } from '../../../core/reference/growth/adult-weight.ts';
import { GROWTH_CURVES } from '../../../core/reference/growth/curves.ts';
import { anyPuppy, anyRules } from './arbitrary.ts';

const SHARE_ALONE = { ...DEFAULT_RULES, basis: 'share' as const };
const UNITS = ['g', 'oz'] as const;
const anyLadder: fc.Arbitrary<LadderInput & { unit: (typeof UNITS)[number] }> = fc
  .record({ rules: fc.oneof(fc.constant(DEFAULT_RULES), anyRules), puppy: anyPuppy, unit: fc.constantFrom(...UNITS) })
  .map(({ rules, puppy, unit }) => ({ ...puppy, rules, unit }));

const sum = (meals: Meals) => Object.values(meals).reduce((a, b) => a + b, 0);
/** What rounding can move a day by: a step in each bowl. */
const oneStep = (step: LadderStep, unit: 'g' | 'oz') => Object.values(step.meals).reduce((a, b) => a + bowlStep(b, unit), 0);

/** Which meals, and whether they are equal: treads of one pattern have the same bowls for the same day. */
const patternOf = (s: LadderStep) => `${Object.keys(s.meals).join()} ${s.changing} ${(s.meals.midday ?? 0) > s.dayGrams / 6.5}`;

/** The figure of each day, by age. */
function byDay<T extends Pick<Tread, 'fromDay' | 'untilDay'>>(treads: readonly T[]): T[] {
  return treads.flatMap((t) => Array.from({ length: t.untilDay - t.fromDay }, () => t));
}

function hasOneHump(values: readonly number[]): boolean {
  const firstFall = values.findIndex((v, i) => i > 0 && v < (values[i - 1] as number) - 1e-6);
  return firstFall < 0 || values.slice(firstFall).every((v, i, rest) => i === 0 || v <= (rest[i - 1] as number) + 1e-6);
}

function classPuppy(sizeClass: (typeof SIZE_CLASSES)[number], ratio = 1): LadderInput {
  const adultKg = CLASS_ADULT_KG[sizeClass];
  const { half, ninetyNine } = GROWTH_CURVES[sizeClass];
  const grams = (adultKg * 1000) / (1 + Math.exp((-Math.log(99) * (8 - half)) / (ninetyNine - half)));
  const forecast = forecastWeight({ adultKg, sizeClass, anchorAgeDays: 56, anchorGrams: grams * ratio });
  return {
    rules: DEFAULT_RULES,
    food: DEFAULT_FOOD,
    born: date('2026-09-26'),
    from: date('2026-11-21'),
    adultKg,
    forecast: (d) => forecast.at(d)?.mid ?? null,
  };
}

describe('meal ladder, for any rules and any puppy', () => {
  const hold = (check: (input: LadderInput & { unit: (typeof UNITS)[number] }) => void) =>
    fc.assert(fc.property(anyLadder, check), { numRuns: 300 });

  it('adds up: the bowls of a day are the day', () => {
    hold((input) => {
      for (const step of mealLadder(input)) expect(sum(step.meals)).toBeCloseTo(step.dayGrams, 9);
    });
  });

  it('has treads without gaps, from the first day to 12 months and one month more', () => {
    hold((input) => {
      const steps = mealLadder(input);
      expect(steps[0]?.fromDay).toBe(ageInDays(input.born, input.from));
      for (const [i, step] of steps.entries()) {
        expect(step.untilDay).toBeGreaterThan(step.fromDay);
        if (i > 0) expect(step.fromDay).toBe(steps[i - 1]?.untilDay);
        expect(ladderStepSchema.safeParse(step).success).toBe(true);
      }
      expect(steps.at(-1)?.untilDay).toBeGreaterThanOrEqual(ageInDays(input.born, addMonths(input.born, 13)));
    });
  });

  it('never falls by more than a tenth within a week, before rounding', () => {
    hold((input) => {
      const days = byDay(treadAmounts(input));
      for (const [i, day] of days.entries()) {
        const weekBefore = days[i - 7];
        if (weekBefore !== undefined) expect(day.grams).toBeGreaterThanOrEqual(0.9 * weekBefore.grams - 1e-9);
      }
    });
  });

  it('after rounding falls by a tenth and a rounding step of each bowl at most, and one more for each time the meals changed', () => {
    hold((input) => {
      const steps = mealLadder(input);
      let changes = 0;
      const days = byDay(
        steps.map((step, i) => {
          const before = steps[i - 1];
          if (before !== undefined && patternOf(before) !== patternOf(step)) changes += 1;
          return { ...step, changes };
        }),
      );
      for (const [i, day] of days.entries()) {
        const weekBefore = days[i - 7];
        if (weekBefore === undefined) continue;
        // Rising, the day is held up to the last one in bowls that are shared out anew: that rounds once more.
        const again = day.changes * Math.max(oneStep(day, input.unit), oneStep(weekBefore, input.unit));
        expect(day.dayGrams).toBeGreaterThanOrEqual(
          0.9 * weekBefore.dayGrams - oneStep(day, input.unit) - oneStep(weekBefore, input.unit) - again - 1e-6,
        );
      }
    });
  });

  it('has one hump, before and after rounding', () => {
    hold((input) => {
      expect(hasOneHump(treadAmounts(input).map((t) => t.grams))).toBe(true);
      expect(hasOneHump(mealLadder(input).map((s) => s.dayGrams))).toBe(true);
    });
  });

  it('is never negative, never under the rule, and never above a fifth of the weight reached', () => {
    hold((input) => {
      let heaviest = 0;
      for (const tread of treadAmounts(input)) {
        const weightGrams = input.forecast(tread.fromDay) ?? 0;
        heaviest = Math.max(heaviest, weightGrams);
        expect(tread.grams).toBeGreaterThan(0);
        expect(tread.grams).toBeLessThanOrEqual(MOST_SHARE * heaviest + 1e-9);
        if (input.rules.basis !== 'energy') {
          const share = Math.min(MOST_SHARE, shareOfWeight(input.rules, input.born, addDays(input.born, tread.fromDay)));
          expect(tread.grams).toBeGreaterThanOrEqual(share * weightGrams - 1e-9);
        }
      }
    });
  });

  it('begins with the ration of its first day', () => {
    hold((input) => {
      const weightGrams = input.forecast(ageInDays(input.born, input.from)) ?? 0;
      const ration = rationOn({ ...input, day: input.from, weightGrams });
      const first = mealLadder(input)[0];
      expect(first?.dayGrams).toBe(ration.dayGrams);
      expect(first?.meals).toEqual(ration.meals);
      expect(first?.changing).toBe(ration.changing);
    });
  });

  it('keeps each rounded day within a rounding step of each bowl, and one more for each time the meals changed', () => {
    hold((input) => {
      const treads = treadAmounts(input);
      let coarsest = 0;
      let patterns = 1;
      let before: LadderStep | null = null;
      for (const [i, step] of mealLadder(input).entries()) {
        coarsest = Math.max(coarsest, oneStep(step, input.unit));
        if (before !== null && patternOf(before) !== patternOf(step)) patterns += 1;
        before = step;
        expect(Math.abs(step.dayGrams - (treads[i] as Tread).grams)).toBeLessThanOrEqual(patterns * coarsest + 1e-6);
      }
    });
  });
});

describe('meal ladder, by the house rules as they come', () => {
  it.each(SIZE_CLASSES)('%s: weekly to 26 weeks, then monthly, two weeks of change in between', (sizeClass) => {
    const steps = mealLadder(classPuppy(sizeClass));
    // Born 26 September: 5 months on 26 February (day 153), 6 on 26 March (day 181), 7 on 26 April (day 212).
    const isSmall = sizeClass === 'toy' || sizeClass === 'small';
    const weeks = [56, 63, 70, 77, 84, 91, 98, 105, 112, 119, 126, 133, 140, 147];
    const months = [212, 242, 273, 303, 334, 365];
    expect(steps.map((s) => s.fromDay)).toEqual(
      isSmall ? [...weeks, 154, 161, 168, 175, 181, 188, 195, ...months] : [...weeks, 153, 160, 167, 175, 182, ...months],
    );
    expect(steps.at(-1)?.untilDay).toBe(395);
    expect(steps.filter((s) => s.changing).map((s) => s.fromDay)).toEqual(isSmall ? [181, 188] : [153, 160]);
    for (const s of steps) {
      const three = s.fromDay < (isSmall ? 195 : 167);
      const four = isSmall && s.fromDay < 84;
      expect(Object.keys(s.meals)).toEqual(
        four ? ['morning', 'midday', 'afternoon', 'evening'] : three ? ['morning', 'midday', 'evening'] : ['morning', 'evening'],
      );
    }
  });

  it.each(SIZE_CLASSES)(
    '%s: by the share alone stays within the 3 to 4 per cent of the trade at six months, and ends at 2',
    (sizeClass) => {
      const input = { ...classPuppy(sizeClass), rules: SHARE_ALONE };
      const share = (day: number) => (byDay(treadAmounts(input))[day - 56]?.grams ?? 0) / (input.forecast(day) ?? 1);
      expect(share(182)).toBeGreaterThan(0.03);
      expect(share(182)).toBeLessThan(0.0405);
      expect(share(365)).toBeCloseTo(0.02, 3);
    },
  );

  it('gives equal bowls outside the two weeks of change, and a half and a quarter of the others inside them', () => {
    for (const s of mealLadder(classPuppy('large'))) {
      const { morning = 0, midday, evening = 0 } = s.meals;
      expect(morning).toBe(evening);
      if (midday === undefined) continue;
      const part = s.changing ? (s.fromDay < 160 ? 1 / 2 : 1 / 4) : 1;
      expect(Math.abs(midday - morning * part)).toBeLessThanOrEqual(s.changing ? 5 : 0);
    }
  });

  it('stops where the forecast stops, and is empty without a weight', () => {
    const input = classPuppy('medium');
    expect(mealLadder({ ...input, forecast: (d) => (d < 71 ? 4000 : null) }).map((s) => s.fromDay)).toEqual([56, 63, 70]);
    expect(mealLadder({ ...input, forecast: () => null })).toEqual([]);
  });

  it('divides a month in which the rule falls steeply, and catches up with it', () => {
    const rules = { ...SHARE_ALONE, youngUntilMonths: 9, middleMonths: 10, adultMonths: 11 };
    const input = { ...classPuppy('small'), rules };
    const treads = treadAmounts(input);
    expect(treads.length).toBeGreaterThan(25);
    const last = treads.at(-1) as Tread;
    expect(last.grams / (input.forecast(last.fromDay) ?? 1)).toBeLessThan(0.025);
  });

  it('lets a first tread of a day or two run on', () => {
    const input = classPuppy('medium');
    expect(mealLadder({ ...input, from: addDays(input.born, 61) })[0]).toMatchObject({ fromDay: 61, untilDay: 70 });
    expect(mealLadder({ ...input, from: addDays(input.born, 60) })[0]).toMatchObject({ fromDay: 60, untilDay: 63 });
  });
});

describe('the ladder as the program comes, for every size', () => {
  const each = SIZE_CLASSES.flatMap((sizeClass) => UNITS.map((unit) => [sizeClass, unit] as const));
  const ladders = (sizeClass: (typeof SIZE_CLASSES)[number], unit: (typeof UNITS)[number]) =>
    [0.75, 0.9, 1, 1.1, 1.25].flatMap((ratio) =>
      [110, 140, 166, 220, 280].map((kcalPer100g) => ({
        ...classPuppy(sizeClass, ratio),
        food: { ...DEFAULT_FOOD, kcalPer100g },
        unit,
      })),
    );

  it.each(each)('%s in %s: after rounding one hump, and never a tenth less within a week', (sizeClass, unit) => {
    for (const input of ladders(sizeClass, unit)) {
      const days = byDay(mealLadder(input)).map((s) => s.dayGrams);
      expect(hasOneHump(days)).toBe(true);
      for (const [i, grams] of days.entries()) {
        const weekBefore = days[i - 7];
        if (weekBefore !== undefined) expect(grams, `day ${i + 56}`).toBeGreaterThanOrEqual(0.9 * weekBefore - 1e-6);
      }
    }
  });

  it.each(each)(
    '%s in %s: equal bowls outside the step, and never under 85 per cent of the estimate but for rounding',
    (sizeClass, unit) => {
      for (const input of ladders(sizeClass, unit)) {
        for (const step of mealLadder(input)) {
          const bowls = Object.values(step.meals);
          if (!step.changing) expect(new Set(bowls).size).toBe(1);
          const kg = (input.forecast(step.fromDay) ?? 0) / 1000;
          const kcal = (step.dayGrams * input.food.kcalPer100g) / 100;
          // A food so thin that it would take a fifth of the weight is not filled up any further.
          const least = Math.min(0.85 * growthEstimate(kg, input.adultKg ?? 0), MOST_SHARE * kg * 10 * input.food.kcalPer100g);
          expect(kcal / least).toBeGreaterThanOrEqual(0.95 - 1e-9);
        }
      }
    },
  );
});

describe('amount by real weight', () => {
  it('is the rule at that age, in the bowls of that age', () => {
    expect([6, 8, 12].map((kg) => amountByWeight(DEFAULT_RULES, 4, kg))).toEqual([330, 435, 660]);
    expect(amountByWeight(DEFAULT_RULES, 6, 20)).toBe(700);
    expect(amountByWeight(DEFAULT_RULES, 12, 24)).toBe(480);
  });

  it('follows the basis when food and adult weight are given', () => {
    const rules = { ...DEFAULT_RULES, basis: 'energy' as const };
    // Klein et al. 2019: 10 kg of 20 is 1049 kcal; at 166 kcal per 100 g that is 632 g, three bowls of 210.
    expect(amountByWeight(rules, 4, 10, { food: DEFAULT_FOOD, adultKg: 20 })).toBe(630);
  });
});
