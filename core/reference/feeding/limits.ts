/**
 * Nutrient limits for growth. The bodies disagree; each limit names the ones it is taken from, and the least strict is used as a bound, so that
 * a finding means that all of them object. For dogs that will be over 25 kg the stricter one is used: their bones suffer first.
 */
import type { Known } from './known.ts';

export interface Limits {
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly known: Known;
}

/** Until this age in days limits are those of early growth (14 weeks; FEDIAF, from memory). */
export const EARLY_GROWTH_DAYS = 98;
/** Adult weight in kg over which the stricter limits hold (Hand et al. 2010, Small Animal Clinical Nutrition, chapters 17 and 33; seen). */
export const LARGE_ADULT_KG = 25;

const FEDIAF = 'FEDIAF nutritional guidelines';
const AAFCO = 'AAFCO growth and reproduction profile';
const NRC = 'NRC 2006';

/** Calcium in grams per 1000 kcal. */
export const CALCIUM_LIMITS: Readonly<Record<'early' | 'late', Readonly<Record<'usual' | 'large', Limits>>>> = {
  early: {
    usual: { low: 2.5, high: 4.5, source: `${FEDIAF} 2.5 (early growth); ${AAFCO} 4.5`, known: 'from memory' },
    large: { low: 3.0, high: 4.0, source: `${NRC} and ${AAFCO} 3.0; ${FEDIAF} 4.0 (early growth)`, known: 'from memory' },
  },
  late: {
    usual: { low: 2.0, high: 4.5, source: `${FEDIAF} 2.0 and 4.5 (late growth)`, known: 'from memory' },
    large: {
      low: 2.5,
      high: 4.0,
      source: `${FEDIAF} 2.5 (late growth of large breeds), 4.0 (early growth)`,
      known: 'from memory',
    },
  },
};

/** Calcium over phosphorus, grams over grams. */
export const RATIO_LIMITS: Readonly<Record<'usual' | 'large', Limits>> = {
  usual: { low: 1, high: 1.6, source: `${FEDIAF}, early growth`, known: 'from memory' },
  large: {
    low: 1,
    high: 1.5,
    source: 'Hand et al. 2010, Small Animal Clinical Nutrition, chapter 17 (large breeds)',
    known: 'seen',
  },
};

/** Least protein in grams per 1000 kcal. */
export const PROTEIN_LIMITS: Readonly<Record<'early' | 'late', Pick<Limits, 'low' | 'source' | 'known'>>> = {
  early: { low: 56.3, source: `${NRC} and ${AAFCO} 56.3 (early growth)`, known: 'from memory' },
  late: { low: 43.8, source: `${NRC} 43.8 (late growth)`, known: 'from memory' },
};

/** Least fat in grams per 1000 kcal. */
export const FAT_LIMIT = { low: 21.3, source: AAFCO, known: 'seen' } as const;

/** Treats, at most this part of the food. */
export const TREATS_LIMIT = {
  share: 0.1,
  source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, p. 315',
  known: 'seen',
} as const;

/** Most vitamin A, IU per 1000 kcal: the lowest of three bodies. Puppies fed up to 100 000 showed no harm (Morris et al. 2012, Br J Nutr 108:1800). */
export const VITAMIN_A_LIMIT = { high: 12_500, source: `${NRC}, safe upper limit for growth`, known: 'second-hand' } as const;
