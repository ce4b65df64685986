/** House rules anywhere inside the schema, and puppies of every size class and sex on their forecast weight. */

import fc from 'fast-check';
import { date, fromDayNumber } from '../../../core/calendar/day.ts';
import type { LadderInput } from '../../../core/feeding/ladder.ts';
import { DEFAULT_RULES, type HouseRules, houseRulesSchema } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { forecastWeight } from '../../../core/growth/forecast.ts';
import { SEXES, SIZE_CLASSES } from '../../../core/reference/classes.ts';
import { CLASS_ADULT_KG, DOG_TO_BITCH } from '../../../core/reference/growth/adult-weight.ts';
import { GROWTH_CURVES } from '../../../core/reference/growth/curves.ts';

const falling = fc
  .array(fc.double({ min: 0.005, max: 0.2, noNaN: true }), { minLength: 3, maxLength: 3 })
  .map((shares) => shares.sort((a, b) => b - a) as [number, number, number]);

const rising = fc
  .tuple(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 3, max: 18 }), fc.integer({ min: 6, max: 30 }))
  .filter(([young, middle, adult]) => young < middle && middle < adult);

export const anyRules: fc.Arbitrary<HouseRules> = fc
  .record({
    shares: falling,
    ages: rising,
    twoMealsFromMonths: fc.integer({ min: 3, max: 24 }),
    stepDays: fc.integer({ min: 0, max: 28 }),
    fourMealsUntilWeeks: fc.integer({ min: 0, max: 26 }),
    smallTwoMealsFromMonths: fc.integer({ min: 3, max: 24 }),
    smallFourMealsUntilWeeks: fc.integer({ min: 0, max: 26 }),
    basis: fc.constantFrom('share' as const, 'energy' as const, 'share-with-floor' as const),
    energyFloor: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
  })
  .filter((r) => r.fourMealsUntilWeeks * 7 <= r.twoMealsFromMonths * 31)
  .filter((r) => r.smallFourMealsUntilWeeks * 7 <= r.smallTwoMealsFromMonths * 31)
  .map(({ shares, ages, ...rest }) =>
    houseRulesSchema.parse({
      ...DEFAULT_RULES,
      ...rest,
      shareYoung: shares[0],
      shareMiddle: shares[1],
      shareAdult: shares[2],
      youngUntilMonths: ages[0],
      middleMonths: ages[1],
      adultMonths: ages[2],
    }),
  );

/** A puppy from 8 weeks on: lighter or heavier than its curve, born on any day, weighed at any age to a year. */
export const anyPuppy: fc.Arbitrary<Omit<LadderInput, 'rules'>> = fc
  .record({
    sizeClass: fc.constantFrom(...SIZE_CLASSES),
    sex: fc.constantFrom(...SEXES),
    bornNumber: fc.integer({ min: 19_000, max: 23_000 }),
    age: fc.oneof(fc.constant(56), fc.integer({ min: 56, max: 360 })),
    ratio: fc.double({ min: 0.7, max: 1.3, noNaN: true }),
  })
  .map(({ sizeClass, sex, bornNumber, age, ratio }) => {
    const adultKg = CLASS_ADULT_KG[sizeClass] * (sex === 'dog' ? 1 : 1 / DOG_TO_BITCH);
    const { half, ninetyNine } = GROWTH_CURVES[sizeClass];
    const curve = adultKg * 1000 * (1 / (1 + Math.exp((-Math.log(99) * (age / 7 - half)) / (ninetyNine - half))));
    const forecast = forecastWeight({ adultKg, sizeClass, anchorAgeDays: age, anchorGrams: curve * ratio });
    const born = fromDayNumber(bornNumber);
    return {
      food: DEFAULT_FOOD,
      born,
      from: fromDayNumber(bornNumber + age),
      adultKg,
      forecast: (days) => forecast.at(days)?.mid ?? null,
    };
  });

/** A plain puppy for examples: 4 kg at 8 weeks, 22 kg grown. */
export const EXAMPLE = {
  food: DEFAULT_FOOD,
  born: date('2026-09-26'),
  day: date('2026-11-21'),
  weightGrams: 3980,
  adultKg: 22,
} as const;
