/**
 * The score: since when, and by how much, has this path gained less than it should? For every weighing as the start of
 * trouble the shortfall that explains the path best, in standard deviations of what wanders anyway. A puppy is scored by
 * all its possible starts together: two starts that are each half likely are as good a reason to look as one that is certain.
 */
import { cholesky, forward } from '../../statistics/linear.ts';
import { firstDayShare, weaningDays } from '../noise.ts';
import type { NoiseFactors } from '../noise-estimate.ts';
import type { LitterStart, ReferenceGain } from '../reference-gain.ts';

/** One weighing on a path. */
export interface PathPoint {
  readonly ageDays: number;
  /** Log units over the reference, with the littermates' move taken off. */
  readonly value: number;
  /** Variance of this weighing alone. */
  readonly weighing: number;
}

/** What wanders between two weighings. */
export interface Wander {
  /** Variance per (g squared x day). */
  readonly rate: number;
  /** Variance per (reference gain squared): a lasting difference of pace. */
  readonly lasting: number;
  /** Variance that the whole first day adds. */
  readonly firstDay: number;
  /** Variance per day of weaning. */
  readonly weaning: number;
  /** Variance of what is not known of how the litter starts: of the whole first day, and of (early gain squared). */
  readonly start: LitterStart;
}

export interface Score {
  readonly score: number;
  /** Share of the expected gain that is missing; over 1 it loses weight. 0 when nothing is. */
  readonly shortfall: number;
  /** Place of the last good weighing on the path. */
  readonly start: number;
}

export const NO_SCORE: Score = { score: 0, shortfall: 0, start: 0 };

/** A level of its own costs nothing: standing is not drift. */
const FREE_LEVEL = 1;
const LEAST_SHORTFALL = 0.12;
/** Fastest loss, of its weight per day. */
const FASTEST_LOSS = 0.068;

/** Covariance of the path without trouble, row by row; `own` is the litter's own noise beside the usual. */
export function covariance(
  points: readonly PathPoint[],
  wander: Wander,
  reference: ReferenceGain,
  own: NoiseFactors,
): Float64Array {
  const n = points.length;
  const walk = new Float64Array(n);
  const gain = new Float64Array(n);
  const first = Float64Array.from(points, (p) => firstDayShare(0, p.ageDays));
  const early = Float64Array.from(points, (p) => reference.early(p.ageDays));
  const from = points[0]?.ageDays ?? 0;
  for (let i = 1; i < n; i += 1) {
    const [a, b] = [points[i - 1]?.ageDays ?? 0, points[i]?.ageDays ?? 0];
    const g = reference.pace((a + b) / 2);
    walk[i] =
      (walk[i - 1] ?? 0) +
      wander.rate * g * g * (b - a) +
      wander.firstDay * firstDayShare(a, b) +
      wander.weaning * weaningDays(a, b);
    gain[i] = reference.since(b) - reference.since(from);
  }
  const k = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      const wandered = own.wander * ((walk[j] ?? 0) + wander.lasting * (gain[i] ?? 0) * (gain[j] ?? 0));
      const started =
        wander.start.firstDay * (first[i] ?? 0) * (first[j] ?? 0) + wander.start.early * (early[i] ?? 0) * (early[j] ?? 0);
      const value = FREE_LEVEL + wandered + started + (i === j ? own.weighing * (points[i]?.weighing ?? 0) : 0);
      k[i * n + j] = value;
      k[j * n + i] = value;
    }
  }
  return k;
}

/** The best start of trouble alone. `penalty` is by the number of weighings since. */
export function scorePath(
  points: readonly PathPoint[],
  k: Float64Array,
  reference: ReferenceGain,
  penalty: readonly number[],
): Score {
  let best = NO_SCORE;
  for (const { start, u, v, shortfall: s } of startsOf(points, k, reference)) {
    const fit = 2 * (s * u - (s * s * v) / 2);
    if (fit <= 0) continue;
    const score = Math.sqrt(fit) - (penalty[points.length - 2 - start] ?? 0);
    if (score > best.score) best = { score, shortfall: s, start };
  }
  return best;
}

/** What a trouble is like before anything is known of it: the missing share of the gain, its spread, and how common. */
const TROUBLES = [
  { missing: 1.3, spread: 0.4, weight: 1 },
  { missing: 0.5, spread: 0.15, weight: 0.5 },
] as const;
/** Trouble begins on any day alike, so a start counts by the days to the next weighing; a gap counts as three at most. */
const LONGEST_GAP_DAYS = 3;
/** Days without trouble for one that brings some, as the score's zero. */
const USUAL_DAYS = 2;

/** All starts of trouble together, each by how well it explains the path and how long it could have been that one. */
export function scoreAllStarts(points: readonly PathPoint[], k: Float64Array, reference: ReferenceGain): Score {
  let best = NO_SCORE;
  let largest = 0;
  let total = 0;
  for (const { start, u, v, shortfall } of startsOf(points, k, reference)) {
    const days = Math.min(LONGEST_GAP_DAYS, (points[start + 1]?.ageDays ?? 0) - (points[start]?.ageDays ?? 0));
    let proof = 0;
    for (const t of TROUBLES) proof += t.weight * Math.exp(Math.min(LARGEST_LOG, logProof(u, v, t.missing, t.spread ** 2)));
    total += days * proof;
    if (days * proof <= largest) continue;
    largest = days * proof;
    best = { score: 0, shortfall, start };
  }
  return { ...best, score: Math.sqrt(2 * Math.log(1 + total / USUAL_DAYS)) };
}

const LARGEST_LOG = 300;

/** Log Bayes factor of a shortfall, normal around `missing`, against none. */
function logProof(u: number, v: number, missing: number, variance: number): number {
  const wide = 1 + v * variance;
  return (u * variance + missing) ** 2 / (2 * variance * wide) - missing ** 2 / (2 * variance) - Math.log(wide) / 2;
}

interface Start {
  readonly start: number;
  /** What the path says of a full shortfall since then, and how sharply it could. */
  readonly u: number;
  readonly v: number;
  /** The likeliest share of the expected gain that is missing. */
  readonly shortfall: number;
}

/** Every weighing but the last as the start of trouble, where less was gained after it. */
function startsOf(points: readonly PathPoint[], k: Float64Array, reference: ReferenceGain): Start[] {
  const n = points.length;
  const last = points[n - 1];
  if (n < 2 || last === undefined) return [];
  const root = cholesky(k, n);
  const r = new Float64Array(n);
  for (let i = 0; i < n; i += 1) r[i] = points[i]?.value ?? 0;
  const whitened = forward(root, n, r);
  const largest = 1 + FASTEST_LOSS / reference.pace(last.ageDays);
  const starts: Start[] = [];
  const expected = new Float64Array(n);
  const fed = Float64Array.from(points, (p) => reference.fed(p.ageDays));
  for (let c = 0; c < n - 1; c += 1) {
    const from = fed[c] ?? 0;
    for (let i = 0; i < n; i += 1) expected[i] = i <= c ? 0 : from - (fed[i] ?? 0);
    const mean = forward(root, n, expected, c + 1);
    let u = 0;
    let v = 0;
    for (let i = c + 1; i < n; i += 1) {
      u += (mean[i] ?? 0) * (whitened[i] ?? 0);
      v += (mean[i] ?? 0) ** 2;
    }
    if (u <= 0 || v <= 0) continue;
    starts.push({ start: c, u, v, shortfall: Math.min(largest, Math.max(LEAST_SHORTFALL, u / v)) });
  }
  return starts;
}
