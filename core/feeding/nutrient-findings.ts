/** What a growing dog would lack or have too much of, were a food all it ate, by the published limits. */

import { calciumPer1000Kcal, calciumToPhosphorus, type Food, liverLimit, per1000Kcal, type Range } from '../food/food.ts';
import {
  CALCIUM_LIMITS,
  EARLY_GROWTH_DAYS,
  FAT_LIMIT,
  LARGE_ADULT_KG,
  type Limits,
  PROTEIN_LIMITS,
  RATIO_LIMITS,
  VITAMIN_A_LIMIT,
} from '../reference/feeding/limits.ts';
import { ingredient } from '../reference/feeding/usda.ts';
import type { Finding } from './finding.ts';

/** Which limits hold: by the weight it will have, and early or late in growth. */
export interface Growth {
  readonly size: 'usual' | 'large';
  readonly stage: 'early' | 'late';
}

/** Which published limits fit: by expected adult weight in kg (null counts as usual) and age in whole days. */
export function growthOf(adultKg: number | null, ageDays: number): Growth {
  return { size: (adultKg ?? 0) > LARGE_ADULT_KG ? 'large' : 'usual', stage: ageDays < EARLY_GROWTH_DAYS ? 'early' : 'late' };
}

/** What a growing dog would lack or have too much of, were this food all it ate. Vitamin A is on its own: {@link vitaminAFinding}. */
export function nutrientFindings(food: Food, { size, stage }: Growth): Finding[] {
  const severity = size === 'large' ? 'warning' : 'caution';
  return [
    calciumFinding(food, CALCIUM_LIMITS[stage][size], severity),
    ratioFinding(food, RATIO_LIMITS[size], severity),
    leastFinding(food, 'protein-low', food.analysis.protein, PROTEIN_LIMITS[stage]),
    leastFinding(food, 'fat-low', food.analysis.fat, FAT_LIMIT),
  ].filter((f) => f !== null);
}

function leastFinding(
  food: Food,
  code: 'protein-low' | 'fat-low',
  per100g: number,
  { low: least, source, known }: Pick<Limits, 'low' | 'source' | 'known'>,
): Finding | null {
  const has = per1000Kcal(per100g, food.kcalPer100g);
  // A food written down with its energy alone says nothing of what is in it.
  if (has >= least || food.analysis.protein + food.analysis.fat === 0) return null;
  return { code, severity: 'caution', numbers: { has, least }, food, source, known };
}

/** Which side of the limits a range is on, judged by its nearer end: outside only when all of it is. */
export function sideOf(range: Range, limits: Pick<Limits, 'low' | 'high'>): 'low' | 'inside' | 'high' {
  if (range.high < limits.low) return 'low';
  return range.low > limits.high ? 'high' : 'inside';
}

function calciumFinding(food: Food, limits: Limits, severity: Finding['severity']): Finding | null {
  const range = calciumPer1000Kcal(food);
  const side = sideOf(range, limits);
  if (side === 'inside') return null;
  return {
    code: side === 'low' ? 'calcium-low' : 'calcium-high',
    severity,
    numbers: { low: range.low, high: range.high, least: limits.low, most: limits.high },
    food,
    source: limits.source,
    known: limits.known,
  };
}

function ratioFinding(food: Food, limits: Limits, severity: Finding['severity']): Finding | null {
  const range = calciumToPhosphorus(food);
  const side = sideOf(range, limits);
  if (side === 'inside') return null;
  return {
    code: side === 'low' ? 'ratio-low' : 'ratio-high',
    severity,
    numbers: { low: range.low, high: range.high, least: limits.low, most: limits.high },
    food,
    source: limits.source,
    known: limits.known,
  };
}

/** Vitamin A over the published upper limit: too much liver. */
export function vitaminAFinding(food: Food): Finding | null {
  if (food.analysis.vitaminAIu === null) return null;
  const iu = per1000Kcal(food.analysis.vitaminAIu, food.kcalPer100g);
  if (iu <= VITAMIN_A_LIMIT.high) return null;
  const liver = ingredient('13325');
  const shareLimit = liverLimit(VITAMIN_A_LIMIT.high, food.kcalPer100g, liver.vitaminAIu ?? 0);
  return {
    code: 'vitamin-a',
    severity: 'caution',
    numbers: { iuPer1000Kcal: iu, most: VITAMIN_A_LIMIT.high, beefLiverShareAtMost: shareLimit },
    food,
    source: VITAMIN_A_LIMIT.source,
    known: VITAMIN_A_LIMIT.known,
  };
}
