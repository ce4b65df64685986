/**
 * A gain, given where the puppy stood before it: light ones gain faster than heavy ones, and a plain difference of two z
 * blames the heavy. Cole 1995 (Arch Dis Child 73:8): the abstract seen, the formula from memory.
 */

/** z of the second place given the first; r is the correlation between the two ages, under 1 either way, else NaN. */
export function conditionalGain(z1: number, z2: number, r: number): number {
  return Math.abs(r) < 1 ? (z2 - r * z1) / Math.sqrt(1 - r * r) : Number.NaN;
}
