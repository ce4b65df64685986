/** The few statistics that the method needs. */

/** The median; NaN of nothing. */
export function median(values: readonly number[]): number {
  // A typed array sorts as numbers, and several times faster than with a comparison.
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  const upper = sorted[half];
  if (upper === undefined) return Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2;
}

/** Median distance from the median, unscaled: of a normal spread it is 0.6745 standard deviations. */
export function mad(values: readonly number[]): number {
  const m = median(values);
  return median(values.map((v) => Math.abs(v - m)));
}
