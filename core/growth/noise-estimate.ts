/**
 * This litter's own noise: some litters and scales are noisier than others, and a score in standard deviations must know
 * it. Weighing noise is learned from the middle-of-three test, growth from day to day from three-day rises; falls are left
 * out, so that fading puppies do not make their own trouble look like noise. Both are shrunk toward the usual.
 */

/** Count and sum of squared z, each at most 9. */
export interface NoiseSums {
  readonly count: number;
  readonly squares: number;
}

export const NO_SUMS: NoiseSums = { count: 0, squares: 0 };

/** Factors on the variances of one weighing and of what wanders between weighings. */
export interface NoiseFactors {
  readonly weighing: number;
  readonly wander: number;
}

const MIDDLE_PRIOR = 8;
const MIDDLE_USUAL = 0.78;
const RISE_PRIOR = 5;
const RISE_USUAL = 0.52;
const LEAST = 0.25;
const MOST = 4;
const LARGEST_SQUARE = 9;

export function noiseFactors(middles: NoiseSums, rises: NoiseSums): NoiseFactors {
  const within = (v: number) => Math.min(MOST, Math.max(LEAST, v));
  return {
    weighing: within((MIDDLE_PRIOR + middles.squares / MIDDLE_USUAL) / (MIDDLE_PRIOR + middles.count)),
    wander: within((RISE_PRIOR + rises.squares / RISE_USUAL) / (RISE_PRIOR + rises.count)),
  };
}

/** One more three-day change, in standard deviations; a fall changes nothing. */
export function withRise(sums: NoiseSums, z: number): NoiseSums {
  return z <= 0 ? sums : { count: sums.count + 1, squares: sums.squares + Math.min(LARGEST_SQUARE, z * z) };
}
