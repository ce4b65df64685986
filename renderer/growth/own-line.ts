/** The middle of the breeder's own line for one puppy, for the chart and its table. */

import { birthIn } from '../../core/growth/milestones.ts';
import type { OwnLineCurve } from '../../core/growth/own-line/own-line.ts';
import type { SeriesPoint } from '../../core/growth/series.ts';
import type { WeightPoint } from '../parts/charts/WeightChart.tsx';

/** A point a day as far as the puppy has come; none without a birth weight or without a line. */
export function linePoints(line: OwnLineCurve | null, series: readonly SeriesPoint[]): WeightPoint[] {
  const birth = birthIn(series);
  const until = series.at(-1)?.ageDays ?? 0;
  if (birth === null || line === null) return [];
  return line.ages.filter((a) => a.day < until + 1).map((a) => ({ ageDays: a.day, grams: birth * a.m }));
}

/** The same at each weight that counts, in grams by reading. */
export function lineByReading(line: OwnLineCurve | null, series: readonly SeriesPoint[]): ReadonlyMap<string, number> {
  const birth = birthIn(series);
  if (birth === null || line === null) return new Map();
  return new Map(
    series.flatMap((p) => {
      const table = line.at(p.ageDays);
      return table === null ? [] : [[p.readingId, birth * table.m] as const];
    }),
  );
}
