/** Food is weighed out in grams or in ounces, whatever the dog is weighed in. */
import { GRAMS_PER_OUNCE, groupThousands, isMetric, type MassUnit } from './mass.ts';

/** In which unit amounts of food are shown; they are kept in grams. */
export const FOOD_UNITS = ['g', 'oz'] as const;
export type FoodUnit = (typeof FOOD_UNITS)[number];

/** The unit of the bowl that goes with the unit of the scale. */
export function foodUnit(unit: MassUnit): FoodUnit {
  return isMetric(unit) ? 'g' : 'oz';
}

/** Figures only, for a column whose heading holds the unit: `205`, `2.75`. */
export function foodFigure(grams: number, unit: MassUnit): string {
  return isMetric(unit) ? groupThousands(String(Math.round(grams))) : (grams / GRAMS_PER_OUNCE).toFixed(2);
}

/** The figure with its unit: `205 g`, `2.75 oz`. */
export function foodText(grams: number, unit: MassUnit): string {
  return `${foodFigure(grams, unit)}\u00a0${foodUnit(unit)}`;
}
