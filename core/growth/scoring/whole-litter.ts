/** The whole litter against the reference alone: when everyone slows down together, it is the dam's milk or the room, not a puppy. */

import { median } from '../../statistics/median.ts';
import { LITTER_SPREAD, PUPPY_SPREAD, START_SPREAD, weighingVariance } from '../noise.ts';
import type { NoiseFactors } from '../noise-estimate.ts';
import type { ReferenceGain } from '../reference-gain.ts';
import { thinnedRows } from '../thinning.ts';
import { fitPath, type Window } from './littermates-path.ts';
import { covariance, type PathPoint, type Score, scorePath } from './score.ts';

const PENALTY = [0.2, 0.1] as const;

/** The litter's score; `start` is a row of the window. Null for a singleton and when the last session weighed under half of the puppies. */
export function scoreLitter(window: Window, reference: ReferenceGain, stepGrams: number, own: NoiseFactors): Score | null {
  const path = fitPath(
    window,
    Array.from({ length: window.puppies }, () => true),
  );
  const largest = Math.max(...path.counts);
  if (largest < 2) return null;
  const weighed: { row: number; point: PathPoint }[] = [];
  for (let s = 0; s < window.sessions; s += 1) {
    const n = path.counts[s] ?? 0;
    if (n * 2 < largest) continue;
    const { ageDays, grams } = middleOf(window, s);
    const weighing = LITTER_SPREAD.session ** 2 + weighingVariance(PUPPY_SPREAD, ageDays, grams, stepGrams) / n;
    weighed.push({ row: s, point: { ageDays, value: path.moves[s] ?? 0, weighing } });
  }
  const counting = thinnedRows(weighed);
  const rows = counting.map((w) => w.row);
  const points = counting.map((w) => w.point);
  if (rows.at(-1) !== window.sessions - 1) return null;
  const wander = {
    rate: LITTER_SPREAD.rate ** 2 + PUPPY_SPREAD.rate ** 2 / largest,
    lasting: LITTER_SPREAD.lasting ** 2 + PUPPY_SPREAD.lasting ** 2 / largest,
    firstDay: PUPPY_SPREAD.firstDay ** 2 / largest,
    weaning: LITTER_SPREAD.weaning ** 2,
    start: { firstDay: START_SPREAD.firstDay ** 2, early: START_SPREAD.early ** 2 },
  };
  const score = scorePath(points, covariance(points, wander, reference, atLeastUsual(own)), reference, PENALTY);
  return { ...score, start: rows[score.start] ?? 0 };
}

/** Quiet puppies do not make the litter quiet: what all of them share, the dam's milk and the room, is not in their own noise. */
function atLeastUsual(own: NoiseFactors): NoiseFactors {
  return { weighing: Math.max(1, own.weighing), wander: Math.max(1, own.wander) };
}

function middleOf(window: Window, s: number): { ageDays: number; grams: number } {
  const from = s * window.puppies;
  const present = (table: Float64Array) => [...table.subarray(from, from + window.puppies)].filter((v) => !Number.isNaN(v));
  return { ageDays: median(present(window.age)), grams: median(present(window.grams)) };
}
