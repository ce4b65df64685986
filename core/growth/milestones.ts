/** When a puppy first weighed twice and three times its birth weight: notes, never alarms. */
import type { LocalTime } from '../calendar/clock.ts';
import type { SeriesPoint } from './series.ts';
import { AT_BIRTH_DAYS } from './sessions.ts';

export interface Milestone {
  readonly times: 2 | 3;
  readonly at: LocalTime;
  /** Whole days of life at the first weighing that shows it. */
  readonly day: number;
}

/** The weight at birth in a series that counts, in grams; null when it was not weighed then. */
export function birthIn(series: readonly Pick<SeriesPoint, 'ageDays' | 'grams'>[]): number | null {
  const first = series[0];
  return first === undefined || first.ageDays > AT_BIRTH_DAYS ? null : first.grams;
}

export function milestonesOf(series: readonly SeriesPoint[]): Milestone[] {
  const birth = birthIn(series);
  if (birth === null) return [];
  return ([2, 3] as const).flatMap((times) => {
    const first = series.find((p) => p.grams >= times * birth);
    return first === undefined ? [] : [{ times, at: first.at, day: Math.floor(first.ageDays) }];
  });
}
