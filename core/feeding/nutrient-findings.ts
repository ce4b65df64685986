/** What a growing dog would lack or have too much of, were a food all it ate, by the published limits. */

import { calciumPer1000Kcal, calciumToPhosphorus, type Food, liverLimit, per1000Kcal, type Range } from '../food/food.ts';
import {
  CALCIUM_LIMITS,
  EARLY_GROWTH_DAYS,
  FAT_LIMIT,
  LARGE_ADULT_KG,
  type Limits,
  PHOSPHORUS_LIMITS,
  PROTEIN_LIMITS,
  RATIO_LIMITS,
  STRICT_ADULT_KG,
  STRICT_UNTIL_DAYS,
  VITAMIN_A_LIMITS,
} from '../reference/feeding/limits.ts';
import { ingredient } from '../reference/feeding/usda.ts';
import type { Finding } from './finding.ts';

/** Which limits hold: early or late in growth, and by the weight it will have. A big dog's bones suffer first. */
export interface Growth {
  readonly stage: 'early' | 'late';
  readonly size: 'usual' | 'large';
  readonly severity: 'caution' | 'warning';
}

/** Which published limits fit: by expected adult weight in kg (null counts as usual) and age in whole days. */
export function growthOf(adultKg: number | null, ageDays: number): Growth {
  const kg = adultKg ?? 0;
  return {
    stage: ageDays < EARLY_GROWTH_DAYS ? 'early' : 'late',
    size: kg > STRICT_ADULT_KG && ageDays < STRICT_UNTIL_DAYS ? 'large' : 'usual',
    severity: kg > LARGE_ADULT_KG ? 'warning' : 'caution',
  };
}

/**
 * What a growing dog would lack or have too much of, were this food all it ate. No two mends point to both sides: where calcium asks for less bone
 * and the ratio for more, calcium speaks, and a food short of protein is not asked to be fatter. Vitamin A is on its own: {@link vitaminAFinding}.
 */
export function nutrientFindings(food: Food, { size, stage, severity }: Growth): Finding[] {
  const calcium = calciumFinding(food, CALCIUM_LIMITS[stage][size], severity);
  const ratio = ratioFinding(food, RATIO_LIMITS[stage][size], severity);
  const isAgreed = calcium === null || ratio === null || calcium.code.split('-')[1] === ratio.code.split('-')[1];
  const protein = leastFinding(food, 'protein-low', food.analysis.protein, PROTEIN_LIMITS[stage]);
  return [
    calcium,
    isAgreed ? ratio : null,
    calcium === null && ratio === null ? phosphorusFinding(food, PHOSPHORUS_LIMITS[stage]) : null,
    protein ?? leastFinding(food, 'fat-low', food.analysis.fat, FAT_LIMIT),
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
  if (!Number.isFinite(range.high) && range.low <= limits.high) {
    const { source, known } = limits;
    return {
      code: 'calcium-unknown',
      severity: 'caution',
      numbers: { least: limits.low, most: limits.high },
      food,
      source,
      known,
    };
  }
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

/** What a ratio can't tell: calcium and phosphorus both short. */
function phosphorusFinding(food: Food, { low: least, source, known }: Limits): Finding | null {
  const { high } = food.analysis.phosphorusMg;
  const has = per1000Kcal(high / 1000, food.kcalPer100g);
  if (!Number.isFinite(high) || has >= least) return null;
  return { code: 'phosphorus-low', severity: 'caution', numbers: { has, least }, food, source, known };
}

/** Vitamin A over the published upper limit, of growing or of grown dogs: too much liver. What plants hold does not count. */
export function vitaminAFinding(food: Food, of: keyof typeof VITAMIN_A_LIMITS): Finding | null {
  const limit = VITAMIN_A_LIMITS[of];
  if (food.analysis.vitaminAIu === null) return null;
  const iu = per1000Kcal(food.analysis.vitaminAIu, food.kcalPer100g);
  if (iu <= limit.high) return null;
  const liver = ingredient('13325');
  const shareLimit = liverLimit(limit.high, food.kcalPer100g, liver.vitaminAIu ?? 0);
  return {
    code: 'vitamin-a',
    severity: 'caution',
    numbers: { iuPer1000Kcal: iu, most: limit.high, beefLiverShareAtMost: shareLimit },
    food,
    source: limit.source,
    known: limit.known,
  };
}
