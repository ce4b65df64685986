/**
 * How this litter starts: some gain a tenth on their first day and grow fast through their first week, others lose a little
 * first. Birth weight does not tell which. Read off the middle path of the litter's own first days and shrunk toward the
 * usual; only upward, so that a litter that is short of milk never lowers what is expected of it.
 */
import { cholesky, forward, solve } from '../../statistics/linear.ts';
import { median } from '../../statistics/median.ts';
import { firstDayShare, LITTER_SPREAD, PUPPY_SPREAD, weighingVariance } from '../noise.ts';
import { type LitterStart, type ReferenceGain, USUAL_START } from '../reference-gain.ts';
import { thinnedRows } from '../thinning.ts';
import { fitPath, type Window } from './littermates-path.ts';
import { covariance, type PathPoint } from './score.ts';

/** Later weights say nothing about the start. */
export const START_DAYS = 9;
/** Before a litter is known, over the usual start: mean and spread, and how much a strong first day means a strong week. */
const FIRST_DAY = { mean: 0.04, sd: 0.085 };
const EARLY = { mean: 0.15, sd: 0.3 };
const TOGETHER = 0.7;
const MOST: LitterStart = { firstDay: 0.3, early: 1.2 };

/** The start that the window shows; its x are over `reference`, which starts as usual. `stepGrams` of the scale. */
export function fitStart(window: Window, reference: ReferenceGain, stepGrams: number): LitterStart {
  const path = fitPath(
    window,
    Array.from({ length: window.puppies }, () => true),
  );
  const all: PathPoint[] = [];
  const largest = Math.max(...path.counts);
  for (let s = 0; s < window.sessions; s += 1) {
    const n = path.counts[s] ?? 0;
    if (n === 0) continue;
    const age = present(window.age, window, s);
    const weighing = weighingVariance(PUPPY_SPREAD, age, present(window.grams, window, s), stepGrams);
    all.push({ ageDays: age, value: path.moves[s] ?? 0, weighing: LITTER_SPREAD.session ** 2 + weighing / n });
  }
  const points = thinnedRows(all);
  if (points.length < 2) return USUAL_START;
  const n = points.length;
  const wander = {
    rate: LITTER_SPREAD.rate ** 2 + PUPPY_SPREAD.rate ** 2 / largest,
    lasting: LITTER_SPREAD.lasting ** 2 + PUPPY_SPREAD.lasting ** 2 / largest,
    firstDay: PUPPY_SPREAD.firstDay ** 2 / largest,
    weaning: 0,
    start: NO_START_SPREAD,
  };
  const root = cholesky(covariance(points, wander, reference, { weighing: 1, wander: 1 }), n);
  const white = (of: (p: PathPoint) => number) => forward(root, n, Float64Array.from(points, of));
  const value = white((p) => p.value);
  const columns = [white((p) => firstDayShare(0, p.ageDays)), white((p) => reference.early(p.ageDays))];
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0);
  const means = [FIRST_DAY.mean, EARLY.mean];
  const prior = PRIOR_PRECISION;
  const a = columns.map((c, i) => columns.map((d, j) => dot(c, d) + (prior[i]?.[j] ?? 0)));
  const b = columns.map((c, i) => dot(c, value) + means.reduce((sum, m, j) => sum + (prior[i]?.[j] ?? 0) * m, 0));
  const [firstDay = 0, early = 0] = solve(a, b)?.x ?? [];
  return {
    firstDay: USUAL_START.firstDay + Math.min(MOST.firstDay, Math.max(0, firstDay)),
    early: Math.min(MOST.early, Math.max(0, early)),
  };
}

const NO_START_SPREAD: LitterStart = { firstDay: 0, early: 0 };

/** Inverse of the prior covariance. */
const PRIOR_PRECISION = ((): number[][] => {
  const free = 1 - TOGETHER ** 2;
  const both = -TOGETHER / (FIRST_DAY.sd * EARLY.sd * free);
  return [
    [1 / (FIRST_DAY.sd ** 2 * free), both],
    [both, 1 / (EARLY.sd ** 2 * free)],
  ];
})();

function present(table: Float64Array, window: Window, s: number): number {
  const from = s * window.puppies;
  return median([...table.subarray(from, from + window.puppies)].filter((v) => !Number.isNaN(v)));
}
