/** Bowls of a day: their names, and amounts that a person can weigh. */
import { GRAMS_PER_OUNCE, isMetric, type MassUnit } from '../units/mass.ts';

export const MEAL_NAMES = ['morning', 'forenoon', 'midday', 'afternoon', 'evening', 'night'] as const;
export type MealName = (typeof MEAL_NAMES)[number];

/** A figure for each meal that is fed; a meal that is not fed is absent. */
export type Meals = Partial<Record<MealName, number>>;

/** How many meals a day has. */
export function mealCount(meals: Meals): number {
  return MEAL_NAMES.filter((name) => meals[name] !== undefined).length;
}

/** `fine`: to the gram or the twentieth of an ounce, where a usual step would be too much. */
export type Rounding = 'near' | 'down' | 'up' | 'fine';

/**
 * Bowls for a day. The bowl is rounded, not the day: to 1 g under 50 g, 2 g under 100 g, 5 g above; for a scale in ounces or pounds
 * to a quarter of an ounce, and a small bowl finer ({@link bowlStep}). The day is the sum of its bowls, so it always adds up, and equal shares give equal bowls.
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

/** Steps in ounces, the coarsest first: a bowl is at least ten of them, so that rounding never moves it by more than a twentieth. */
const OUNCE_STEPS = [0.25, 0.1, 0.05, 0.02, 0.01] as const;
const STEPS_IN_A_BOWL = 10;

/** The finest difference that is weighed out for a bowl of that size, in grams. */
export function bowlStep(grams: number, unit: MassUnit): number {
  if (!isMetric(unit)) {
    const ounces = grams / GRAMS_PER_OUNCE;
    return GRAMS_PER_OUNCE * (OUNCE_STEPS.find((step) => ounces >= STEPS_IN_A_BOWL * step - 1e-9) ?? 0.01);
  }
  if (grams < 50) return 1;
  return grams < 100 ? 2 : 5;
}

/** The finest that a kitchen scale shows. */
function fineStep(unit: MassUnit): number {
  return isMetric(unit) ? 1 : GRAMS_PER_OUNCE / 20;
}

function roundBowl(grams: number, unit: MassUnit, rounding: Rounding): number {
  const step = rounding === 'fine' ? fineStep(unit) : bowlStep(grams, unit);
  // A bowl that is a whole number of steps but for a floating-point error stays where it is.
  const slack = rounding === 'down' ? 1e-9 : -1e-9;
  const round = rounding === 'near' || rounding === 'fine' ? Math.round : rounding === 'down' ? Math.floor : Math.ceil;
  return Math.max(1, round(grams / step + slack)) * step;
}
