/**
 * Where a value stands by the LMS way: power L, middle M, spread S. Cole 1990 (Eur J Clin Nutr 44:45), from memory; the rule
 * beyond three standard deviations is that of the WHO Child Growth Standards (methods and development, 2006), from memory;
 * it gives the published figures of the R package anthro.
 */

export interface Lms {
  /** Power that takes the skew out; 0 is the logarithm. */
  readonly l: number;
  /** Median, in the unit of the value. */
  readonly m: number;
  /** Spread, about the coefficient of variation. */
  readonly s: number;
}

/** Under this the power is the logarithm: (y^L - 1)/L loses all its digits near 0. */
const LOGARITHM = 1e-7;

/** z of a value over 0, without the rule for the ends. NaN for what is no weight. */
export function plainLmsZ(y: number, { l, m, s }: Lms): number {
  if (!(y > 0 && m > 0 && s > 0)) return Number.NaN;
  return Math.abs(l) < LOGARITHM ? Math.log(y / m) / s : ((y / m) ** l - 1) / (l * s);
}

/** The value at a z, in the unit of M; the inverse of `plainLmsZ`. NaN where the power has no such value. */
function plainValue(z: number, { l, m, s }: Lms): number {
  if (Math.abs(l) < LOGARITHM) return m * Math.exp(s * z);
  const base = 1 + l * s * z;
  return base > 0 ? m * base ** (1 / l) : Number.NaN;
}

/** z of a value over 0. Beyond three either way it goes on in steps as wide as that from two to three. NaN for what is no weight. */
export function lmsZ(y: number, lms: Lms): number {
  const z = plainLmsZ(y, lms);
  if (!(Math.abs(z) > 3)) return z;
  const side = Math.sign(z);
  const third = plainValue(3 * side, lms);
  return side * (3 + (y - third) / (third - plainValue(2 * side, lms)));
}

/** The value at a z, in the unit of M: the inverse of `lmsZ`. */
export function lmsValue(z: number, lms: Lms): number {
  if (!(Math.abs(z) > 3)) return plainValue(z, lms);
  const side = Math.sign(z);
  const third = plainValue(3 * side, lms);
  return third + (Math.abs(z) - 3) * (third - plainValue(2 * side, lms));
}

/** How many of 100 stand under a z: the normal distribution by Abramowitz and Stegun 26.2.17, within 1e-7; from memory. */
export function percentileOf(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const above = (Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI)) * poly;
  return 100 * (z >= 0 ? 1 - above : above);
}

/**
 * The z as far out in a normal distribution as `t` is in Student's with so many degrees of freedom: a spread that was read off a
 * few groups is itself uncertain. Abramowitz and Stegun 26.7.8, from memory; within 4 in 100 at 2 degrees, within 1 from 4 on.
 */
export function asNormal(t: number, degrees: number): number {
  return (t * (1 - 1 / (4 * degrees))) / Math.sqrt(1 + (t * t) / (2 * degrees));
}
