/** Where the equations of energy stand that are shown beside the one that is used. */
import type { Known } from './known.ts';

interface Cited {
  readonly source: string;
  readonly known: Known;
}

/** Resting energy, by the power and by the straight line. */
export const RESTING_ENERGY: Cited = {
  source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 5-2',
  known: 'seen',
};
/** The older steps of growth: 210, 175, 140 kcal × kg^0.75. */
export const ENERGY_STEPS: Cited = {
  source: 'FEDIAF guidelines to 2020, in Veterinary Nursing Journal 37(4), 2022, p. 28, table 2',
  known: 'second-hand',
};
/** Grown dogs, quiet, usual and active. */
export const GROWN_ENERGY: Cited = { source: 'FEDIAF guidelines (95, 110); NRC 2006 (130)', known: 'seen' };
/** The same from quiet to active. */
export const GROWN_ENERGY_RANGE: Cited = { source: 'FEDIAF guidelines (95), NRC 2006 (130)', known: 'seen' };
/** Growing dogs: the equation of pet puppies, and the older one. */
export const KLEIN: Cited = { source: 'Klein et al. 2019, J Anim Physiol Anim Nutr; 493 pet puppies', known: 'seen' };
export const NRC: Cited = {
  source: 'National Research Council 2006, Nutrient Requirements of Dogs and Cats, chapter 15',
  known: 'second-hand',
};
