/** The published upper edge of a newborn's growth from its own birth weight, for the chart. */
import { fastestGrowth } from '../../core/growth/curves.ts';
import { birthIn } from '../../core/growth/milestones.ts';
import type { SeriesPoint } from '../../core/growth/series.ts';
import type { WeightPoint } from '../parts/charts/WeightChart.tsx';

/** Days for which it was published. */
const LAST_DAY = 21;

/** A point a day as far as the puppy has come; none without a birth weight. */
export function fastestPoints(series: readonly SeriesPoint[]): WeightPoint[] {
  const birth = birthIn(series);
  const until = Math.min(LAST_DAY, Math.ceil(series.at(-1)?.ageDays ?? 0));
  if (birth === null) return [];
  return Array.from({ length: until + 1 }, (_, day) => ({ ageDays: day, grams: birth * fastestGrowth(day) }));
}
