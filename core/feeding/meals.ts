/** Meals of a day: which are fed at which age, and bowls that a person can weigh. */
import { addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import { GRAMS_PER_OUNCE, isMetric, type MassUnit } from '../units/mass.ts';
import type { HouseRules } from './rules.ts';

export const MEAL_NAMES = ['morning', 'midday', 'afternoon', 'evening'] as const;
export type MealName = (typeof MEAL_NAMES)[number];

/** A figure for each meal that is fed; a meal that is not fed is absent. */
export type Meals = Partial<Record<MealName, number>>;

export interface MealDay {
  /** Part of the day's food in each meal; the parts add up to 1. */
  readonly shares: Meals;
  /** Inside the days in which midday is left off. */
  readonly changing: boolean;
}

const FOUR_MEALS: Meals = { morning: 1 / 4, midday: 1 / 4, afternoon: 1 / 4, evening: 1 / 4 };
export const THREE_MEALS: Meals = { morning: 1 / 3, midday: 1 / 3, evening: 1 / 3 };
/** Midday is half of each of the others, then a quarter of them, then gone. */
const MIDDAY_HALF: Meals = { morning: 2 / 5, midday: 1 / 5, evening: 2 / 5 };
const MIDDAY_QUARTER: Meals = { morning: 4 / 9, midday: 1 / 9, evening: 4 / 9 };
export const TWO_MEALS: Meals = { morning: 1 / 2, evening: 1 / 2 };

/**
 * The days in which three meals become two, as ages in days: midday is half from `start`, a quarter from `half`, gone from
 * `end`. All three are the same day when the rules give the step no days.
 */
export function stepToTwo(rules: HouseRules, born: CivilDate): { start: number; half: number; end: number } {
  const start = ageInDays(born, addMonths(born, rules.twoMealsFromMonths));
  return { start, half: start + Math.ceil(rules.stepDays / 2), end: start + rules.stepDays };
}

/**
 * Which meals are fed on a day, and which part of the day's food each holds. Three from weaning (common practice, no source),
 * two from the age in the rules; four until `fourMealsUntilWeeks`, but not once the step to two has begun.
 */
export function mealsOn(rules: HouseRules, born: CivilDate, day: CivilDate): MealDay {
  const age = ageInDays(born, day);
  const step = stepToTwo(rules, born);
  if (age >= step.end) return { shares: TWO_MEALS, changing: false };
  if (age >= step.half) return { shares: MIDDAY_QUARTER, changing: true };
  if (age >= step.start) return { shares: MIDDAY_HALF, changing: true };
  return { shares: age < rules.fourMealsUntilWeeks * 7 ? FOUR_MEALS : THREE_MEALS, changing: false };
}

/** How many meals a day has. */
export function mealCount(meals: Meals): number {
  return MEAL_NAMES.filter((name) => meals[name] !== undefined).length;
}

export type Rounding = 'near' | 'down' | 'up';

/**
 * Bowls for a day. The bowl is rounded, not the day: to 1 g under 50 g, 2 g under 100 g, 5 g above; to a quarter of an ounce
 * for a scale in ounces or pounds. The day is the sum of its bowls, so it always adds up, and equal shares give equal bowls.
 * A meal that is fed is never rounded to nothing. Grams in, grams out.
 */
export function fillBowls(
  dayGrams: number,
  shares: Meals,
  unit: MassUnit,
  rounding: Rounding = 'near',
): { dayGrams: number; meals: Meals } {
  const meals: Meals = {};
  let sum = 0;
  for (const name of MEAL_NAMES) {
    const part = shares[name];
    if (part === undefined) continue;
    const bowl = roundBowl(dayGrams * part, unit, rounding);
    meals[name] = bowl;
    sum += bowl;
  }
  return { dayGrams: sum, meals };
}

/** The finest difference that is weighed out for a bowl of that size, in grams. */
export function bowlStep(grams: number, unit: MassUnit): number {
  if (!isMetric(unit)) return GRAMS_PER_OUNCE / 4;
  if (grams < 50) return 1;
  return grams < 100 ? 2 : 5;
}

function roundBowl(grams: number, unit: MassUnit, rounding: Rounding): number {
  const step = bowlStep(grams, unit);
  // A bowl that is a whole number of steps but for a floating-point error stays where it is.
  const slack = rounding === 'down' ? 1e-9 : -1e-9;
  const round = rounding === 'near' ? Math.round : rounding === 'down' ? Math.floor : Math.ceil;
  return Math.max(1, round(grams / step + slack)) * step;
}
