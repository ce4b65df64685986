/** Meals of a day: which are fed at which age. */
import { addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import type { Meals } from '../food/bowls.ts';
import type { HouseRules } from './rules.ts';

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
