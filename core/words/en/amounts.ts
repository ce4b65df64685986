/** Weights and amounts of food as they are written, in the unit of her scale. */
import { foodUnit } from '../../units/food.ts';
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND, isMetric, type MassUnit, poundsAndOunces } from '../../units/mass.ts';
import { fixed, grouped } from './figures.ts';

/** Figures only, for a column whose heading holds the unit: `2 395`, `0.41`, `14.5`, `1 lb 3.5 oz`. */
export function massFigure(grams: number, unit: MassUnit): string {
  switch (unit) {
    case 'g':
      return grouped(Math.round(grams));
    case 'kg':
      return fixed(grams / 1000, grams < 10_000 ? 2 : 1);
    case 'oz':
      return fixed(grams / GRAMS_PER_OUNCE, 1);
    case 'lb':
      return fixed(grams / GRAMS_PER_POUND, 1);
    case 'lboz': {
      const { pounds, ounces } = poundsAndOunces(grams);
      return pounds === 0 ? `${fixed(ounces, 1)} oz` : `${pounds} lb ${fixed(ounces, 1)} oz`;
    }
  }
}

/** The figure with its unit, for sentences: `2 395 g`. */
export function massText(grams: number, unit: MassUnit): string {
  const figure = massFigure(grams, unit);
  return unit === 'lboz' ? figure : `${figure}\u00a0${unit}`;
}

/** Figures only, for a column whose heading holds the unit: `205`, `2.75`. */
export function foodFigure(grams: number, unit: MassUnit): string {
  return isMetric(unit) ? grouped(Math.round(grams)) : fixed(grams / GRAMS_PER_OUNCE, 2);
}

/** The figure with its unit: `205 g`, `2.75 oz`. */
export function foodText(grams: number, unit: MassUnit): string {
  return `${foodFigure(grams, unit)}\u00a0${foodUnit(unit)}`;
}

/** Weights on paper: grams under a kilogram, else kilograms; pounds and ounces for a scale that shows them. */
export function weightText(grams: number, unit: MassUnit): string {
  if (isMetric(unit)) return massText(grams, grams < 1000 ? 'g' : 'kg');
  if (unit === 'lb') return massText(grams, 'lb');
  return massText(grams, grams < GRAMS_PER_POUND ? 'oz' : 'lboz');
}
