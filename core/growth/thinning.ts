/**
 * Readings closer than anybody weighs by hand: a scale that reports each second, a log pasted in. They say hardly more than
 * fewer of them, and the cost of the method grows with their cube; so those too many are passed over before the calculation,
 * never in the record. Weighed by hand, with every second weight that is asked for, nothing is passed over.
 */
import { HOUR_MS } from '../calendar/durations.ts';
import type { GrowthReading } from './input.ts';

/** A reading counts when the last that counted is so far off, or when fewer than this count in the hours before it. */
const APART = 4 * HOUR_MS;
const CROWD = { most: 3, within: 10 * HOUR_MS };
/** Of the weights in a puppy's window: all of the last ones, and of those before every so many. */
const LATEST = 32;
const EARLIER = 32;

/** What counts of the readings, in any order; decided by the ones before each alone, so that a later one changes nothing. */
export function thinned(readings: readonly GrowthReading[]): readonly GrowthReading[] {
  const byPuppy = new Map<string, GrowthReading[]>();
  for (const r of readings) {
    const own = byPuppy.get(r.puppyId);
    if (own === undefined) byPuppy.set(r.puppyId, [r]);
    else own.push(r);
  }
  if ([...byPuppy.values()].every((own) => own.length <= CROWD.most)) return readings;
  return [...byPuppy.values()].flatMap(thinnedOne);
}

function thinnedOne(own: GrowthReading[]): GrowthReading[] {
  own.sort((a, b) => a.instant - b.instant || (a.id < b.id ? -1 : 1));
  const counting: GrowthReading[] = [];
  for (const r of own) {
    const last = counting.at(-1);
    const crowded = counting.at(-CROWD.most);
    if (
      r.kept ||
      last === undefined ||
      r.instant - last.instant >= APART ||
      crowded === undefined ||
      r.instant - crowded.instant > CROWD.within
    )
      counting.push(r);
  }
  return counting;
}

/** Which of so many points of a window, oldest first, go into the covariance. */
export function thinnedRows<T>(rows: readonly T[]): readonly T[] {
  const more = rows.length - LATEST;
  if (more <= EARLIER) return rows;
  const every = Math.ceil(more / EARLIER);
  return rows.filter((_, i) => i >= more || i % every === 0);
}
