/** Which litters a line is made of, and which of their weights. */
import { DAY_MS } from '../../calendar/durations.ts';
import { sameBreed } from '../../litter/breed.ts';
import { isCurrent, type Litter, type Reading } from '../../litter/litter.ts';
import { LINE_DAYS } from './own-line.ts';

/** As many as a line takes: older ones are another generation of the kennel. */
export const MOST_LITTERS = 24;
/** The line's eight weeks, and what a late-born puppy and the last weighing need. */
const REACH_DAYS = LINE_DAYS + 6;

/** Those of `all`, the youngest first, that came before this one and are of its breed; invented ones only for an invented one. */
export function earlierLitters<L extends Pick<Litter, 'breed' | 'demo' | 'whelpedInstant'>>(own: L, all: readonly L[]): L[] {
  return all
    .filter((l) => l.whelpedInstant < own.whelpedInstant && l.demo === own.demo && sameBreed(l.breed, own.breed))
    .toSorted((a, b) => b.whelpedInstant - a.whelpedInstant)
    .slice(0, MOST_LITTERS);
}

/** The weights that a litter gives to a line: of its first weeks, those that stand and are not in question. */
export function lineReadings(
  litter: Pick<Litter, 'whelpedInstant'>,
  readings: readonly Reading[],
): Pick<Reading, 'puppyId' | 'instant' | 'grams'>[] {
  const until = litter.whelpedInstant + REACH_DAYS * DAY_MS;
  return readings
    .filter((r) => isCurrent(r) && !r.held && r.instant <= until)
    .map(({ puppyId, instant, grams }) => ({ puppyId, instant, grams }));
}
