/** Readings grouped as they were taken: one round of the litter on the scale is one session. */
import { DAY_MS, HOUR_MS } from '../calendar/durations.ts';
import type { GrowthInput, GrowthPuppy, GrowthReading } from './input.ts';

/** A first weight later than half a day is no birth weight. */
export const AT_BIRTH_DAYS = 0.5;
/** A longer pause between two puppies begins a new session. */
const LONGEST_PAUSE = 90 * 60_000;
/** A round on the scale is over by then, whatever the pauses. */
const LONGEST_SESSION = 4 * HOUR_MS;

export interface SessionRow {
  readonly reading: GrowthReading;
  readonly puppy: GrowthPuppy;
  /** Days since its birth, never below 0. */
  readonly ageDays: number;
}

export interface WeighSession {
  readonly rows: readonly SessionRow[];
  /** Last instant in it: what was known by then. */
  readonly instant: number;
}

/**
 * Sessions, oldest first, no puppy twice in one: a second weight within minutes is a session of its own. Birth weights
 * form one session however long the whelping took. Readings of unknown puppies, or after a series ended, are left out.
 */
export function sessionsOf(input: GrowthInput): WeighSession[] {
  const puppies = new Map(input.puppies.map((p) => [p.id, p]));
  const births: SessionRow[] = [];
  const later: SessionRow[] = [];
  for (const reading of input.readings) {
    const puppy = puppies.get(reading.puppyId);
    if (puppy === undefined || (puppy.endsInstant !== null && reading.instant > puppy.endsInstant)) continue;
    const row = { reading, puppy, ageDays: Math.max(0, (reading.instant - puppy.bornInstant) / DAY_MS) };
    (reading.session === 'birth' ? births : later).push(row);
  }
  return [...split(births, Number.POSITIVE_INFINITY), ...split(later, LONGEST_PAUSE)];
}

function split(rows: SessionRow[], longestPause: number): WeighSession[] {
  rows.sort((a, b) => a.reading.instant - b.reading.instant || (a.reading.id < b.reading.id ? -1 : 1));
  const groups: SessionRow[][] = [];
  let current: SessionRow[] = [];
  for (const row of rows) {
    const first = current[0];
    const last = current.at(-1);
    const fits =
      first !== undefined &&
      last !== undefined &&
      row.reading.instant - last.reading.instant <= longestPause &&
      (longestPause === Number.POSITIVE_INFINITY || row.reading.instant - first.reading.instant <= LONGEST_SESSION) &&
      !current.some((r) => r.puppy.id === row.puppy.id);
    if (fits) current.push(row);
    else {
      current = [row];
      groups.push(current);
    }
  }
  return groups.map((group) => ({ rows: group, instant: group.at(-1)?.reading.instant ?? 0 }));
}
