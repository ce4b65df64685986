/**
 * Energy a dog needs in a day, by published equations. Weights in kg, energy in kcal of metabolisable energy a day; p is the part of
 * the expected adult weight that is reached. An estimate for a group is not the need of one puppy: its own growth is the judge.
 */

import { KLEIN, NRC } from '../reference/feeding/energy.ts';
import type { Known } from '../reference/feeding/known.ts';

const KCAL_PER_MEGAJOULE = 1000 / 4.184;

/**
 * Resting energy: 70 × kg^0.75, any weight.
 * Source: Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 5-2 (seen).
 */
export function restingEnergy(kg: number): number {
  return 70 * kg ** 0.75;
}

/**
 * Resting energy by the straight line 30 × kg + 70, for 2 to 45 kg only; null outside.
 * Source: Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 5-2 (seen).
 */
export function restingEnergyLinear(kg: number): number | null {
  return kg < 2 || kg > 45 ? null : 30 * kg + 70;
}

/**
 * Growth: 130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1).
 * Source: National Research Council 2006, Nutrient Requirements of Dogs and Cats, chapter 15 (second-hand, as reproduced). Pet puppies ate
 * about four fifths of it: 78 % at 8 to 17 weeks, 83 % at 17 to 26 weeks (Klein et al. 2019, seen).
 */
export function growthEnergyNrc(kg: number, p: number): number {
  return 130 * kg ** 0.75 * 3.2 * (Math.exp(-0.87 * p) - 0.1);
}

/**
 * Growth, the default: (1.063 − 0.565 p) MJ × kg^0.75, which is (254.1 − 135.0 p) kcal × kg^0.75.
 * Source: Klein et al. 2019, J Anim Physiol Anim Nutr; 493 pet puppies, median adult weight 30 kg (seen). The kcal form stands in the
 * FEDIAF guidelines since 2021 (from memory); turning MJ into kcal is computed with 4.184 J a calorie.
 */
export function growthEnergyKlein(kg: number, p: number): number {
  return (1.063 - 0.565 * p) * KCAL_PER_MEGAJOULE * kg ** 0.75;
}

/**
 * Growth, the older steps: 210, 175, 140 kcal × kg^0.75 for p under 0.5, from 0.5, from 0.8.
 * Source: FEDIAF guidelines to 2020, as printed in Veterinary Nursing Journal 37(4), 2022, p. 28, table 2 (second-hand).
 */
export function growthEnergyOldFediaf(kg: number, p: number): number {
  const factor = p < 0.5 ? 210 : p < 0.8 ? 175 : 140;
  return factor * kg ** 0.75;
}

/** Published factors for grown dogs, kcal × kg^0.75: two of the FEDIAF tables, and NRC 2006 for active dogs (seen). */
export const ADULT_FACTORS = { quiet: 95, usual: 110, active: 130 } as const;

/** Maintenance of a grown dog: factor × kg^0.75, see {@link ADULT_FACTORS}. */
export function adultEnergy(kg: number, factor: number): number {
  return factor * kg ** 0.75;
}

/** p: weight over expected adult weight, from 0 to 1. A puppy over its expected weight counts as grown, not as shrinking in need. */
export function partOfAdult(kg: number, adultKg: number): number {
  return Math.min(1, Math.max(0, kg / adultKg));
}

/** Which published equation is the estimate. */
export const GROWTH_METHODS = ['klein', 'nrc'] as const;
export type GrowthMethod = (typeof GROWTH_METHODS)[number];

/** Where each equation stands, and how it is known. */
export const GROWTH_SOURCES: Readonly<Record<GrowthMethod, { readonly source: string; readonly known: Known }>> = {
  klein: KLEIN,
  nrc: NRC,
};

/** Supplied energy under or over this part of the estimate is worth a word. Our own bounds. */
export const ESTIMATE_BOUNDS = { low: 0.8, high: 1.2 } as const;

/** Energy from and to, kcal a day, and where that stands: of grown dogs from quiet to active, or around the estimate of growing ones. */
export interface EnergyBand {
  readonly of: 'grown' | 'growing';
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly known: Known;
}

/** The band around an estimate. */
export function aroundEstimate(kcal: number, method: GrowthMethod): EnergyBand {
  const { low, high } = ESTIMATE_BOUNDS;
  return { of: 'growing', low: low * kcal, high: high * kcal, ...GROWTH_SOURCES[method] };
}

/**
 * The estimate that stands beside every ration, with p from the expected adult weight; kcal a day. Klein's equation, or by choice that of NRC
 * 2006, which runs 20 to 28 % above what pet puppies ate.
 */
export function growthEstimate(kg: number, adultKg: number, method: GrowthMethod = 'klein'): number {
  const p = partOfAdult(kg, adultKg);
  return method === 'nrc' ? growthEnergyNrc(kg, p) : growthEnergyKlein(kg, p);
}

/** Which share of body weight of a food covers so many kcal: 0.098 is 9.8 % of the weight a day. */
export function shareForEnergy(kcal: number, kg: number, kcalPer100g: number): number {
  return kcal / (kcalPer100g * 10 * kg);
}

/** How rich a food has to be, in kcal per 100 g, so that a share of body weight covers so many kcal. */
export function densityForShare(kcal: number, kg: number, share: number): number {
  return kcal / (share * 10 * kg);
}
