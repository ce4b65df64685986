/**
 * Readings first: before a weight says anything about a puppy, is it this puppy's weight? Session by session: a jump of the
 * whole litter is the scale's, two opposite jumps may be two puppies exchanged, one jump a mistyped figure. Nothing is
 * dropped: what is doubtful is held out and asked about, and may be put back by the next reading.
 */

import type { WeighSession } from '../sessions.ts';
import { type CleanRow, type CleanSession, type Draft, filterFrom, type Ground, type Step } from './draft.ts';
import { markSwaps } from './exchanges.ts';
import { lookBack } from './middle-of-three.ts';
import { markMistyped } from './mistyped.ts';
import { lookBackAtScale, markScaleFault, settleScaleFault } from './scale-faults.ts';

/** What is known of the readings after some sessions. */
export interface Cleaned {
  readonly sessions: readonly CleanSession[];
  readonly steps: readonly Step[];
  /** Of the middle-of-three test: how many, and the sum of z squared, each at most 9. */
  readonly middles: number;
  readonly middleSquares: number;
}

export const NOTHING_CLEANED: Cleaned = { sessions: [], steps: [], middles: 0, middleSquares: 0 };

/** The next session judged, with what it says about the ones before. Pure: the past stays as it was. */
export function cleanNext(past: Cleaned, session: WeighSession, indexOf: ReadonlyMap<string, number>, ground: Ground): Cleaned {
  const rows = session.rows.map((row): CleanRow => {
    const out = row.reading.held && !row.reading.kept;
    return {
      ...row,
      index: indexOf.get(row.puppy.id) ?? 0,
      used: out ? null : row.reading.grams,
      verdict: out ? 'held' : 'counts',
      partner: null,
      anew: false,
      settled: false,
    };
  });
  const draft: Draft = { ground, sessions: [...past.sessions, { rows, instant: session.instant }], steps: [...past.steps] };
  const k = draft.sessions.length - 1;
  filterFrom(draft, k);
  settleScaleFault(draft, k);
  let squares = { count: 0, sum: 0 };
  if (!markScaleFault(draft, k)) {
    markSwaps(draft, k);
    markMistyped(draft, k);
    if (!lookBackAtScale(draft, k)) squares = lookBack(draft, k);
  }
  return {
    sessions: draft.sessions,
    steps: draft.steps,
    middles: past.middles + squares.count,
    middleSquares: past.middleSquares + squares.sum,
  };
}
