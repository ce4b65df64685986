/** The dam's need while she carries and nurses, her milk, and the published ways to reckon a bottle. */
import type { Known } from './known.ts';

interface Sourced {
  readonly source: string;
  readonly known: Known;
}

const SACN = 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition';

/** kcal a day: `factor × kg^0.75`, and in late gestation `+ more × kg`. */
export const GESTATION_NEED: Readonly<Record<'nrc' | 'fediaf', Sourced & { readonly factor: number; readonly more: number }>> = {
  nrc: {
    factor: 130,
    more: 26,
    source: 'National Research Council 2006, Nutrient Requirements of Dogs and Cats (second-hand)',
    known: 'second-hand',
  },
  fediaf: { factor: 132, more: 26, source: 'FEDIAF guidelines: the first four weeks, and the last five', known: 'from memory' },
};

/** Late gestation is the last five weeks of nine (FEDIAF guidelines, from memory; Hand et al. 2010, table 15-10, seen). */
export const LATE_GESTATION_DAYS = 35;

/**
 * Lactation: 145 × kg^0.75 + kg × (24 n + 12 m) × L; n puppies of the first four, m of the next four (a puppy beyond eight adds nothing),
 * L by week 1 to 4.
 */
export const LACTATION_NEED = {
  factor: 145,
  firstFour: 24,
  nextFour: 12,
  byWeek: [0.75, 0.95, 1.1, 1.2],
  source: 'National Research Council 2006, Nutrient Requirements of Dogs and Cats (second-hand, two reproductions)',
  known: 'second-hand',
} as const;

/** Lactation as multiples of resting energy by litter, table 5-2 and 15-10 (seen); the range for more puppies is 4 to 8. */
export const LACTATION_MULTIPLES = {
  one: 3,
  two: 3.5,
  threeOrFour: 4,
  more: { low: 4, high: 8 },
  source: `${SACN}, tables 5-2 and 15-10`,
  known: 'seen',
} as const;

/** The shortcut at the peak: a multiple of resting energy, and a quarter of it for each puppy (case text 1.9, else 2.1; seen). */
export const LACTATION_SHORTCUT = { multiple: 2.1, inCase: 1.9, perPuppy: 0.25, source: SACN, known: 'seen' } as const;

/** Total milk in litres: kg × k + (puppies − 4) × 0.1 × kg; the peak day gives 0.04 of it. Table 15-8, after Grandjean 1986 (seen). */
export const MILK_TOTAL = {
  k: [
    { upToKg: 8, k: 1.6 },
    { upToKg: 25, k: 1.8 },
    { upToKg: Number.POSITIVE_INFINITY, k: 2 },
  ],
  perPuppyOverFour: 0.1,
  peakPart: 0.04,
  source: `${SACN}, table 15-8`,
  known: 'seen',
} as const;

/** Gross energy of bitch's milk, kcal in 100 g: Oftedal 1984, J Nutr 114:803 (seen). */
export const MILK_GROSS_KCAL_PER_100G = 146;

/** What a litter weighs at birth as a part of the dam: Hand et al. 2010, box 16-3 (seen). */
export const LITTER_OF_DAM = { low: 0.12, high: 0.14, source: `${SACN}, box 16-3`, known: 'seen' } as const;

/** Under this energy of her food, kcal in a gram of dry matter, a nursing dam risks weight loss and poor milk; over `good` is wanted (seen). */
export const DAM_FOOD_DENSITY = { least: 3.5, good: 4, source: SACN, known: 'seen' } as const;

/** Need of a newborn, kcal in 100 g of its weight: National Research Council 2006, in the FEDIAF guidelines (second-hand). */
export const NEONATE_KCAL_PER_100G = 25;

/** What a small stomach holds, mL in 100 g of weight: a canine breeding handbook, chapter on orphans, 18 mL in a pound (second-hand). */
export const STOMACH_ML_PER_100G = 4;

/** One handbook's way to feed a puppy without its dam; weeks count from the day of birth, the first is 0. */
export interface HandRearingMethod extends Sourced {
  readonly name: 'A' | 'B';
  /** kcal in a pound of puppy by week of life. */
  readonly kcalPerPound: readonly [number, number, number, number];
  readonly feeds: readonly [number, number, number, number];
}

export const HAND_REARING: Readonly<Record<'A' | 'B', HandRearingMethod>> = {
  A: {
    name: 'A',
    kcalPerPound: [110, 110, 110, 110],
    // 4 to 12 feeds a day in the source; more for the smallest. Eight down to five is our own choice inside that.
    feeds: [8, 6, 6, 5],
    source: 'a canine breeding handbook, chapter on orphans: 110 kcal in a pound, 4 to 12 feeds a day',
    known: 'second-hand',
  },
  B: {
    name: 'B',
    kcalPerPound: [60, 70, 80, 90],
    feeds: [6, 4, 4, 3],
    source: 'Dog Owner’s Home Veterinary Handbook, p. 499: 60, 70, 80, 90 kcal in a pound in weeks 1 to 4',
    known: 'seen',
  },
};

/** Handbook B reckons with a milk of 1 kcal in a mL. The tin says what a milk really holds. */
export const USUAL_MILK_KCAL_PER_ML = 1;
