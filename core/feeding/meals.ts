/** Meals of a day: which are fed at which age. */
import { addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import { MEAL_NAMES, type MealName, type Meals } from '../food/bowls.ts';
import { type HouseRules, SMALL_ADULT_KG } from './rules.ts';

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

/** Equal meals, so many a day. */
const EQUAL_MEALS: readonly Meals[] = [
  {},
  { evening: 1 },
  TWO_MEALS,
  THREE_MEALS,
  FOUR_MEALS,
  { morning: 1 / 5, forenoon: 1 / 5, midday: 1 / 5, afternoon: 1 / 5, evening: 1 / 5 },
  { morning: 1 / 6, forenoon: 1 / 6, midday: 1 / 6, afternoon: 1 / 6, evening: 1 / 6, night: 1 / 6 },
];

/** The part of the day's food in each of so many equal meals, 1 to 6. */
export function equalMeals(count: number): Meals {
  return EQUAL_MEALS[count] ?? THREE_MEALS;
}

/** The meals of so many a day by name, in order. */
export function mealNames(count: number): MealName[] {
  return MEAL_NAMES.filter((name) => equalMeals(count)[name] !== undefined);
}

/** Five and six meals stand evenly between the first and the last, to this many minutes. */
const CLOCK_STEP = 15;

/** Clock time of a meal on a day of so many. */
export function mealClock({ mealTimes }: Pick<HouseRules, 'mealTimes'>, name: MealName, count: number): string {
  if (count > 4) return between(mealTimes.morning, mealTimes.eveningOfFour, mealNames(count).indexOf(name) / (count - 1));
  if (name === 'midday') return count === 4 ? mealTimes.middayOfFour : mealTimes.midday;
  if (name === 'evening' || name === 'night')
    return count === 4 ? mealTimes.eveningOfFour : count === 3 ? mealTimes.evening : mealTimes.eveningOfTwo;
  return name === 'forenoon' ? mealTimes.morning : mealTimes[name];
}

function between(first: string, last: string, part: number): string {
  const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  const [from, until] = [minutes(first), minutes(last)];
  const at = Math.round((from + Math.max(0, part) * Math.max(0, until - from)) / CLOCK_STEP) * CLOCK_STEP;
  const two = (n: number) => String(n).padStart(2, '0');
  return part <= 0 ? first : part >= 1 ? last : `${two(Math.floor(at / 60))}:${two(at % 60)}`;
}

/** Until which age four meals and from which age two, for a dog of that grown weight in kg; null is not known and counts as not small. */
export function mealAges(
  rules: HouseRules,
  adultKg: number | null,
): { readonly fourUntilWeeks: number; readonly twoFromMonths: number } {
  return adultKg !== null && adultKg < SMALL_ADULT_KG
    ? { fourUntilWeeks: rules.smallFourMealsUntilWeeks, twoFromMonths: rules.smallTwoMealsFromMonths }
    : { fourUntilWeeks: rules.fourMealsUntilWeeks, twoFromMonths: rules.twoMealsFromMonths };
}

/**
 * The days in which three meals become two, as ages in days: midday is half from `start`, a quarter from `half`, gone from
 * `end`. All three are the same day when the rules give the step no days.
 */
export function stepToTwo(
  rules: HouseRules,
  born: CivilDate,
  adultKg: number | null,
): { start: number; half: number; end: number } {
  const start = ageInDays(born, addMonths(born, mealAges(rules, adultKg).twoFromMonths));
  return { start, half: start + Math.ceil(rules.stepDays / 2), end: start + rules.stepDays };
}

/**
 * Which meals are fed on a day, and which part of the day's food each holds. Three from weaning (common practice, no source),
 * two from the age in the rules; four until the age in the rules, but not once the step to two has begun. Small dogs have ages of their own.
 */
export function mealsOn(rules: HouseRules, born: CivilDate, day: CivilDate, adultKg: number | null): MealDay {
  const age = ageInDays(born, day);
  const step = stepToTwo(rules, born, adultKg);
  if (age >= step.end) return { shares: TWO_MEALS, changing: false };
  if (age >= step.half) return { shares: MIDDAY_QUARTER, changing: true };
  if (age >= step.start) return { shares: MIDDAY_HALF, changing: true };
  return { shares: age < mealAges(rules, adultKg).fourUntilWeeks * 7 ? FOUR_MEALS : THREE_MEALS, changing: false };
}
