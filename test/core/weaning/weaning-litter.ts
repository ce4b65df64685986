/** Litters in weaning for tests and the bench: any size, any breed, weighed every morning, some of them stalling. */

import fc from 'fast-check';
import { addDays, type CivilDate, date } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { forecastWeight } from '../../../core/growth/forecast.ts';
import { referenceGain } from '../../../core/growth/reference-gain.ts';
import type { SizeClass } from '../../../core/reference/classes.ts';
import { CLASS_ADULT_KG } from '../../../core/reference/growth/adult-weight.ts';
import type { WeaningInput, WeaningPuppy, Weighing } from '../../../core/weaning/weaning.ts';
import { usualPlan } from '../../../core/weaning/weaning-plan.ts';

export const BORN = date('2026-10-24');
const BIRTH_GRAMS: Record<SizeClass, number> = { toy: 140, small: 220, medium: 350, large: 450, giant: 560 };

export interface LitterShape {
  readonly sizeClass: SizeClass;
  readonly puppies: number;
  /** Age in days until which it is weighed. */
  readonly until: number;
  /** Puppies, by place, that gain next to nothing from an age until another. */
  readonly stalls: readonly { readonly place: number; readonly from: number; readonly until: number }[];
  readonly knowsAdult: boolean;
}

export function weighed(shape: LitterShape, place: number): WeaningPuppy {
  const reference = referenceGain(BIRTH_GRAMS[shape.sizeClass]);
  const weighings: Weighing[] = [];
  let grams = BIRTH_GRAMS[shape.sizeClass] * (1 + (place % 5) * 0.03);
  for (let age = 0; age <= shape.until; age += 1) {
    const stalls = shape.stalls.some((s) => s.place === place && age > s.from && age <= s.until);
    if (age > 0) grams *= Math.exp((reference.since(age) - reference.since(age - 1)) * (stalls ? 0.1 : 1));
    weighings.push({ day: addDays(BORN, age), ageDays: age + 0.2, grams: Math.round(grams) });
  }
  const last = weighings.at(-1) as Weighing;
  const adultKg = shape.knowsAdult ? CLASS_ADULT_KG[shape.sizeClass] : null;
  const forecast = forecastWeight({
    adultKg,
    sizeClass: shape.knowsAdult ? shape.sizeClass : null,
    anchorAgeDays: last.ageDays,
    anchorGrams: last.grams,
  });
  return {
    id: `puppy-${place}`,
    name: `P${place}`,
    born: BORN,
    adultKg,
    weighings,
    pace: reference.pace,
    forecast: (age) => forecast.at(age)?.mid ?? null,
  };
}

export function litterOf(shape: LitterShape, more: Partial<WeaningInput> = {}): WeaningInput {
  return {
    plan: usualPlan(BORN, addDays(BORN, 21)),
    events: [],
    rules: DEFAULT_RULES,
    food: DEFAULT_FOOD,
    sizeClass: shape.sizeClass,
    puppies: Array.from({ length: shape.puppies }, (_, place) => weighed(shape, place)),
    today: addDays(BORN, shape.until),
    unit: 'g',
    ...more,
  };
}

export const anyShape: fc.Arbitrary<LitterShape> = fc.record({
  sizeClass: fc.constantFrom('toy' as const, 'small' as const, 'medium' as const, 'large' as const, 'giant' as const),
  puppies: fc.integer({ min: 1, max: 14 }),
  until: fc.integer({ min: 0, max: 70 }),
  stalls: fc.array(
    fc
      .record({
        place: fc.integer({ min: 0, max: 13 }),
        from: fc.integer({ min: 20, max: 60 }),
        days: fc.integer({ min: 1, max: 12 }),
      })
      .map(({ place, from, days }) => ({ place, from, until: from + days })),
    { maxLength: 4 },
  ),
  knowsAdult: fc.boolean(),
});

export const age = (day: number): CivilDate => addDays(BORN, day);
