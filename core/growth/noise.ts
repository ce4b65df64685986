/**
 * How much weights wander without anything being wrong. Log units; g is the reference pace at that age; variances add.
 * Tuned on invented litters built from published numbers (`npm run bench:growth`); no single value is published.
 */
import type { LitterStart } from './reference-gain.ts';

export interface Spread {
  /** Standard deviation of one weighing: a feed, a wriggle, a full bladder. */
  readonly weighing: number;
  /** Its variance grows by this factor once they move about. */
  readonly laterFactor: number;
  readonly laterFromDay: number;
  /** Shared by everyone weighed in one session. */
  readonly session: number;
  /** Day-to-day rate, times g, per square root of a day. */
  readonly rate: number;
  /** Lasting rate of one puppy, times g. */
  readonly lasting: number;
  /** What the first day does, once. */
  readonly firstDay: number;
  /** Weaning, per square root of a day. */
  readonly weaning: number;
}

/** One puppy against the expected path. */
export const PUPPY_SPREAD: Spread = {
  weighing: 0.024,
  laterFactor: 1.8,
  laterFromDay: 25,
  session: 0.0054,
  rate: 0.34,
  lasting: 0.08,
  firstDay: 0.02,
  weaning: 0.006,
};

/** One reading against the last ones: narrower, because a wrong figure must stand out. */
export const READING_SPREAD: Spread = {
  ...PUPPY_SPREAD,
  weighing: 0.0155,
  laterFactor: 1.2,
  laterFromDay: 24,
  rate: 0.3,
  lasting: 0.12,
  weaning: 0.0038,
};

/** What all the puppies of a litter share, in full for a singleton. */
export const SHARED_RATE = 0.12;
export const SHARED_LASTING = 0.06;

/** The middle of the whole litter against the reference alone. */
export const LITTER_SPREAD = { session: 0.009, rate: 0.25, lasting: 0.2, weaning: 0.03 } as const;

/** What the first days leave unknown of how a litter starts, once its own weights were read for it: standard deviations. */
export const START_SPREAD: LitterStart = { firstDay: 0.05, early: 0.2 };
/** The same before any of its weights. */
export const FIRST_DAY_UNKNOWN = 0.085;

/** The littermates' own weighing noise, per littermate compared with. */
export const COMPARISON = 0.6;

const WEANING_FROM = 21;
const WEANING_TO = 42;

/** Days of the interval that lie in weaning. */
export function weaningDays(fromAge: number, toAge: number): number {
  return Math.max(0, Math.min(toAge, WEANING_TO) - Math.max(fromAge, WEANING_FROM));
}

/** Share of the first day that lies in the interval. */
export function firstDayShare(fromAge: number, toAge: number): number {
  return Math.max(0, Math.min(toAge, 1) - Math.max(fromAge, 0));
}

/** Variance of one weighing at this age and weight. */
export function weighingVariance(spread: Spread, ageDays: number, grams: number, stepGrams: number): number {
  const base = spread.weighing ** 2 * (ageDays > spread.laterFromDay ? spread.laterFactor : 1);
  return base + roundingVariance(grams, stepGrams);
}

/** A rounded weight lies anywhere within its step: standard deviation step / sqrt(12), as a share of the weight. */
export function roundingVariance(grams: number, stepGrams: number): number {
  return ((0.29 * stepGrams) / grams) ** 2;
}

/** Percent: standard deviation of the difference of two rounded weights. */
export function roundedDifferencePercent(grams: number, stepGrams: number): number {
  return (100 * stepGrams) / Math.sqrt(6) / grams;
}

/** Scale too coarse for early signs: over 1 g under 500 g, over 5 g under 5 kg. */
export function tooCoarse(grams: number, stepGrams: number): boolean {
  return (grams < 500 && stepGrams > 1) || (grams < 5000 && stepGrams > 5);
}

const STEPS = [500, 250, 200, 100, 50, 28.349523125, 25, 20, 14.1747615625, 10, 7.08738078125, 5, 2.834952, 2, 1] as const;

/** The coarsest usual step that every weight is a multiple of (0.1 g is stored), from at least eight weights; 0.1 when none fits. */
export function inferredStep(grams: readonly number[]): number {
  if (grams.length < 8) return 1;
  const fits = (step: number) => grams.every((w) => Math.abs(w - Math.round(w / step) * step) <= 0.051);
  return STEPS.find(fits) ?? 0.1;
}
