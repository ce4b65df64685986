/** Small amounts of the plan, such as a day's treats. */
import type { FoodUnit } from '../units/food.ts';
import { GRAMS_PER_OUNCE } from '../units/mass.ts';

/** Rounded down to what is easily weighed: 1 g under 20 g, else 5 g; a quarter of an ounce. Grams, 0 when that is nothing. */
export function roundedDown(grams: number, unit: FoodUnit): number {
  const step = unit === 'oz' ? GRAMS_PER_OUNCE / 4 : grams < 20 ? 1 : 5;
  return Math.floor(grams / step + 1e-9) * step;
}
