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

/** Until this age in days limits are those of early growth: 14 weeks (FEDIAF 2025, seen). */
export const EARLY_GROWTH_DAYS = 98;
/** Adult weight in kg over which bones suffer first (Hand et al. 2010, Small Animal Clinical Nutrition, chapters 17 and 33; seen). */
export const LARGE_ADULT_KG = 25;
/** Adult weight in kg over which the stricter limits of late growth hold (FEDIAF 2025; the weight second-hand), until about six months (from memory). */
export const STRICT_ADULT_KG = 15;
export const STRICT_UNTIL_DAYS = 183;

const FEDIAF = 'FEDIAF nutritional guidelines 2025';
const AAFCO = 'AAFCO growth and reproduction profile 2014';
const NRC = 'NRC 2006';

/** By age, and in late growth by the weight that is expected. `large` is over 15 kg, until about six months. */
export type ByStage = Readonly<Record<'early' | 'late', Readonly<Record<'usual' | 'large', Limits>>>>;

const EARLY_CALCIUM: Limits = { low: 2.5, high: 4.0, source: `${FEDIAF}, early growth`, known: 'seen' };
/** Calcium in grams per 1000 kcal. */
export const CALCIUM_LIMITS: ByStage = {
  early: { usual: EARLY_CALCIUM, large: EARLY_CALCIUM },
  late: {
    usual: { low: 2.0, high: 4.5, source: `${FEDIAF}, late growth`, known: 'seen' },
    large: { low: 2.5, high: 4.5, source: `${FEDIAF}, late growth over 15 kg grown (the weight second-hand)`, known: 'seen' },
  },
};

/** Phosphorus in grams per 1000 kcal. */
export const PHOSPHORUS_LIMITS: Readonly<Record<'early' | 'late', Limits>> = {
  early: { low: 2.25, high: 4, source: `${FEDIAF} 2.25, early growth; ${AAFCO} 4.0`, known: 'seen' },
  late: { low: 1.75, high: 4, source: `${FEDIAF} 1.75, late growth; ${AAFCO} 4.0`, known: 'seen' },
};

const STRICT_RATIO = { low: 1, high: 1.6, known: 'seen' } as const;
/** Calcium over phosphorus, grams over grams. */
export const RATIO_LIMITS: ByStage = {
  early: {
    usual: { ...STRICT_RATIO, source: `${FEDIAF}, early growth` },
    large: { ...STRICT_RATIO, source: `${FEDIAF}, early growth` },
  },
  late: {
    usual: { low: 1, high: 1.8, source: `${FEDIAF}, late growth`, known: 'seen' },
    large: { ...STRICT_RATIO, source: `${FEDIAF}, late growth over 15 kg grown` },
  },
};

/** Least protein in grams per 1000 kcal: the least of the bodies that were seen, so that all of them object. */
export const PROTEIN_LIMITS: Readonly<Record<'early' | 'late', Pick<Limits, 'low' | 'source' | 'known'>>> = {
  early: { low: 56.3, source: `${AAFCO}, and ${NRC} (second-hand); FEDIAF has 62.5`, known: 'seen' },
  late: { low: 50, source: `${FEDIAF}, late growth`, known: 'seen' },
};

/** Least fat in grams per 1000 kcal. */
export const FAT_LIMIT = { low: 21.3, source: AAFCO, known: 'seen' } as const;

/** Treats, at most this part of the food. */
export const TREATS_LIMIT = {
  share: 0.1,
  source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, p. 315',
  known: 'seen',
} as const;

/**
 * Most vitamin A, IU per 1000 kcal, as retinol: the lowest of three bodies. Puppies fed up to 100 000 showed no harm (Morris et al. 2012, Br J Nutr
 * 108:1800). A grown dog stands more.
 */
export const VITAMIN_A_LIMITS = {
  growing: { high: 12_500, source: `${NRC}, safe upper limit for growth`, known: 'second-hand' },
  grown: { high: 53_333, source: `${NRC}, safe upper limit for grown dogs`, known: 'second-hand' },
} as const;
