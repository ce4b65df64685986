/** The amount for one day before it is split into bowls, by the basis that the house rules name. */
import type { CivilDate } from '../calendar/day.ts';
import type { Food } from '../food/food.ts';
import { growthEstimate } from './energy.ts';
import type { HouseRules } from './rules.ts';
import { shareOfWeight } from './share.ts';

export interface AmountInput {
  readonly rules: HouseRules;
  readonly food: Food;
  readonly born: CivilDate;
  readonly day: CivilDate;
  readonly weightGrams: number;
  /** Expected adult weight in kg; without it there is no energy estimate and the share alone decides. */
  readonly adultKg: number | null;
}

export interface Amount {
  /** Grams of food for the day, not rounded. */
  readonly grams: number;
  /** The house rule's share of body weight, whatever the basis. */
  readonly ruleShare: number;
  /** Published energy estimate in kcal a day, null without an adult weight. */
  readonly estimateKcal: number | null;
  /** What set the amount. */
  readonly by: 'share' | 'energy' | 'floor' | 'most';
}

/** No basis gives more than this share of body weight a day: the most that the house rules allow to be written. */
export const MOST_SHARE = 0.2;

/**
 * The day's amount: `share × weight`; or the energy estimate over the food's energy; or the share, but never under the chosen part
 * of the estimate. Never over {@link MOST_SHARE} of the weight, so that a food with hardly any energy in it can't ask for a bucket.
 */
export function amountOn(input: AmountInput): Amount {
  const { rules, food, born, day, weightGrams, adultKg } = input;
  const ruleShare = shareOfWeight(rules, born, day);
  return amountFor(rules, food, ruleShare, weightGrams, adultKg);
}

/** The same for a share that is already known. */
export function amountFor(rules: HouseRules, food: Food, ruleShare: number, weightGrams: number, adultKg: number | null): Amount {
  const estimateKcal = adultKg === null ? null : growthEstimate(weightGrams / 1000, adultKg, rules.growthMethod);
  const byShare = ruleShare * weightGrams;
  const { grams, by } = byBasis(rules, byShare, estimateKcal === null ? null : (estimateKcal / food.kcalPer100g) * 100);
  const ceiling = MOST_SHARE * weightGrams;
  return grams > ceiling ? { grams: ceiling, ruleShare, estimateKcal, by: 'most' } : { grams, ruleShare, estimateKcal, by };
}

function byBasis(rules: HouseRules, byShare: number, byEnergy: number | null): Pick<Amount, 'grams' | 'by'> {
  if (byEnergy === null || rules.basis === 'share') return { grams: byShare, by: 'share' };
  if (rules.basis === 'energy') return { grams: byEnergy, by: 'energy' };
  const floor = rules.energyFloor * byEnergy;
  return floor > byShare ? { grams: floor, by: 'floor' } : { grams: byShare, by: 'share' };
}
