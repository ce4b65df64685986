/**
 * One figure out of a few seconds of a wriggling puppy. Outliers by the Hampel rule (Pearson 2002, from memory: further from
 * the median than three times 1.4826 times the median absolute deviation), then the median of what is left.
 */
import { median } from '../../statistics/median.ts';

const HAMPEL_LIMIT = 3 * 1.4826;

export interface Sifted {
  readonly median: number;
  /** Further than this from the median is rejected. */
  readonly limit: number;
  readonly accepted: readonly number[];
  readonly rejected: readonly number[];
}

/** `values` holds at least one. */
export function sift(values: readonly number[]): Sifted {
  const m = median(values);
  const limit = HAMPEL_LIMIT * median(values.map((v) => Math.abs(v - m)));
  return {
    median: m,
    limit,
    accepted: values.filter((v) => Math.abs(v - m) <= limit),
    rejected: values.filter((v) => Math.abs(v - m) > limit),
  };
}

/** The value below which a share of the values lies, between two of them by parts. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? Number.NaN;
  return low + (high - low) * (at - Math.floor(at));
}

export interface Figure {
  /** A weight that the scale did show: the accepted one nearest to the median of them. */
  readonly grams: number;
  /** From the 10th to the 90th percentile of the accepted, in grams. */
  readonly spread: number;
}

export function figureOf(values: readonly number[]): Figure {
  const { accepted } = sift(values);
  const m = median(accepted);
  const grams = accepted.reduce((a, b) => (Math.abs(b - m) < Math.abs(a - m) ? b : a));
  return { grams, spread: quantile(accepted, 0.9) - quantile(accepted, 0.1) };
}

/** How far apart a steady scale may be: two steps, or one per cent of the weight where that is more. Our own choice. */
export function steadyBand(grams: number, stepGrams: number): number {
  return Math.max(2 * stepGrams, 0.01 * grams);
}
