/** One puppy beside its littermates: its path with theirs taken off, and the score of that. */

import { COMPARISON, PUPPY_SPREAD, SHARED_LASTING, SHARED_RATE, START_SPREAD, weighingVariance } from '../noise.ts';
import type { NoiseFactors } from '../noise-estimate.ts';
import type { ReferenceGain } from '../reference-gain.ts';
import { thinnedRows } from '../thinning.ts';
import { fitPath, type Window } from './littermates-path.ts';
import { covariance, type PathPoint, type Score, scoreAllStarts, type Wander } from './score.ts';

/** Littermates count n/(n + this), and nearly in full while the whole litter is slow. */
const TRUST = 1.5;
const TRUST_SLOW_LITTER = 0.3;
/** Litter scores from which it begins to be slow, and at which it is. */
const SLOW_FROM = 0.45;
const SLOW_TO = 1.1;
/** From about the age at which puppies find the food bowl, a little more proof is asked. */
const LATER_PENALTY = { most: 0.6, from: 20, days: 16 } as const;
const USUAL: NoiseFactors = { weighing: 1, wander: 1 };
const RISE_DAYS = { from: 2.5, usual: 3, to: 3.5 };

export interface PuppyScore extends Score {
  /** Row of the window of the last good weighing. */
  readonly startRow: number;
  /** Log units that the littermates moved from there to now, over the reference, as far as they are trusted. */
  readonly littermatesMoved: number;
  /** Its change over three days in standard deviations; 0 when there is none to compare. */
  readonly rise: number;
}

/** The score of the puppy in that column; null while it has a single weight. `others` are the columns to compare with. */
export function scorePuppy(
  window: Window,
  column: number,
  others: readonly boolean[],
  litterScore: number,
  reference: ReferenceGain,
  stepGrams: number,
  own: NoiseFactors,
): PuppyScore | null {
  const path = fitPath(window, others);
  const seen = [...path.counts].filter((n) => n > 0);
  const n = seen.length === 0 ? 0 : seen.reduce((a, b) => a + b, 0) / seen.length;
  const slow = Math.min(1, Math.max(0, (litterScore - SLOW_FROM) / (SLOW_TO - SLOW_FROM)));
  const trust = n === 0 ? 0 : n / (n + TRUST + slow * (TRUST_SLOW_LITTER - TRUST));
  const shared = (1 - trust) ** 2;
  const weighed: { row: number; point: PathPoint }[] = [];
  let lastCompared: number | null = null;
  for (let s = 0; s < window.sessions; s += 1) {
    const cell = s * window.puppies + column;
    const x = window.x[cell] ?? Number.NaN;
    if ((path.counts[s] ?? 0) > 0) lastCompared = s;
    if (Number.isNaN(x)) continue;
    const age = window.age[cell] ?? 0;
    const weighing = weighingVariance(PUPPY_SPREAD, age, window.grams[cell] ?? 1, stepGrams) * (n === 0 ? 1 : 1 + COMPARISON / n);
    const point = {
      ageDays: age,
      value: x - trust * (path.moves[s] ?? 0),
      weighing: weighing + shared * PUPPY_SPREAD.session ** 2 + apart(window, column, s, lastCompared, reference),
    };
    weighed.push({ row: s, point });
  }
  const counting = thinnedRows(weighed);
  const rows = counting.map((w) => w.row);
  const points = counting.map((w) => w.point);
  if (points.length < 2) return null;
  const wander = {
    rate: PUPPY_SPREAD.rate ** 2 + shared * SHARED_RATE ** 2,
    lasting: PUPPY_SPREAD.lasting ** 2 + shared * SHARED_LASTING ** 2,
    firstDay: PUPPY_SPREAD.firstDay ** 2,
    weaning: PUPPY_SPREAD.weaning ** 2,
    start: { firstDay: shared * START_SPREAD.firstDay ** 2, early: shared * START_SPREAD.early ** 2 },
  };
  const found = scoreAllStarts(points, covariance(points, wander, reference, own), reference);
  const age = points.at(-1)?.ageDays ?? 0;
  const startRow = rows[found.start] ?? 0;
  const lastRow = rows.at(-1) ?? 0;
  return {
    ...found,
    score: Math.max(
      0,
      found.score - LATER_PENALTY.most * Math.min(1, Math.max(0, (age - LATER_PENALTY.from) / LATER_PENALTY.days)),
    ),
    startRow,
    littermatesMoved: trust * ((path.moves[lastRow] ?? 0) - (path.moves[startRow] ?? 0)),
    rise: threeDayChange(points, wander, reference),
  };
}

/** Weighed alone, the littermates' last move stands for today's: what they may have done since is not known. */
function apart(window: Window, column: number, s: number, lastCompared: number | null, reference: ReferenceGain): number {
  if (lastCompared === null || lastCompared === s) return 0;
  const age = window.age[s * window.puppies + column] ?? 0;
  const then = window.age[lastCompared * window.puppies + column] ?? age;
  const days = Number.isNaN(then) ? 1 : Math.max(0, age - then);
  return (SHARED_RATE * reference.pace(age)) ** 2 * days;
}

function threeDayChange(points: readonly PathPoint[], wander: Wander, reference: ReferenceGain): number {
  const last = points.at(-1);
  if (last === undefined) return 0;
  let then: PathPoint | null = null;
  let distance = Number.POSITIVE_INFINITY;
  for (const p of points) {
    const days = last.ageDays - p.ageDays;
    if (days < RISE_DAYS.from || days > RISE_DAYS.to || Math.abs(days - RISE_DAYS.usual) >= distance) continue;
    then = p;
    distance = Math.abs(days - RISE_DAYS.usual);
  }
  if (then === null) return 0;
  const k = covariance([then, last], wander, reference, USUAL);
  return (last.value - then.value) / Math.sqrt(Math.max((k[0] ?? 0) + (k[3] ?? 0) - 2 * (k[1] ?? 0), 1e-9));
}
