/** Food is weighed out in grams or in ounces, whatever the dog is weighed in. */
import { isMetric, type MassUnit } from './mass.ts';

/** In which unit amounts of food are shown; they are kept in grams. */
export const FOOD_UNITS = ['g', 'oz'] as const;
export type FoodUnit = (typeof FOOD_UNITS)[number];

/** The unit of the bowl that goes with the unit of the scale. */
export function foodUnit(unit: MassUnit): FoodUnit {
  return isMetric(unit) ? 'g' : 'oz';
}
