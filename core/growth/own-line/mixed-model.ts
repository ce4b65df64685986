/**
 * Linear mixed model with one random intercept for each group (a litter): y = X b + u(group) + e. Restricted maximum likelihood
 * (Patterson, Thompson 1971) with the ratio of the two variances profiled out (Lindstrom, Bates 1988); both from memory, the
 * results checked beside R.
 */
import { solve } from '../../statistics/linear.ts';

/** One group: a row of the fixed effects for each value. All rows of all groups are equally long. */
export interface Group {
  readonly x: readonly (readonly number[])[];
  readonly y: readonly number[];
}

export interface MixedModel {
  /** One for each column of X, in the unit of y. */
  readonly fixed: readonly number[];
  /** Of the groups and of the values in one, in the unit of y squared. */
  readonly groupVariance: number;
  readonly residualVariance: number;
}

/** Sums of one group: with V = s²(I + q J) its inverse is I - q/(1 + n q) J, so no matrix of the size of the data is needed. */
interface Sums {
  readonly n: number;
  readonly xx: readonly (readonly number[])[];
  readonly xy: readonly number[];
  readonly yy: number;
  readonly x: readonly number[];
  readonly y: number;
}

/** Shares of the group in the whole variance that the search starts from; the best of them and its neighbours are searched finely. */
const GRID = 40;
const FINEST = 1e-9;

/** Null when there are no more values than fixed effects, or when these can't be told apart. */
export function fitRandomIntercept(groups: readonly Group[]): MixedModel | null {
  const sums = groups.filter((g) => g.y.length > 0).map(sumsOf);
  const n = sums.reduce((k, g) => k + g.n, 0);
  const p = sums[0]?.x.length ?? 0;
  if (n <= p || p === 0) return null;
  const at = (share: number) => profile(sums, n, p, share / (1 - share));
  // The share of the group is searched, not the ratio: it ends at 1.
  const most = 1 - 1e-6;
  let best = 0;
  for (let i = 1; i <= GRID; i += 1) {
    const share = (most * i) / GRID;
    if ((at(share)?.criterion ?? Number.POSITIVE_INFINITY) < (at(best)?.criterion ?? Number.POSITIVE_INFINITY)) best = share;
  }
  const criterion = (share: number) => at(share)?.criterion ?? Number.POSITIVE_INFINITY;
  const share = lowest(criterion, Math.max(0, best - most / GRID), Math.min(most, best + most / GRID));
  // A ratio of nothing is the end of the range, which a narrowing search comes near to but does not reach.
  const found = criterion(0) <= criterion(share) ? 0 : share;
  const end = at(found);
  if (end === null) return null;
  return { fixed: end.fixed, groupVariance: (end.residual * found) / (1 - found), residualVariance: end.residual };
}

function sumsOf({ x, y }: Group): Sums {
  const p = x[0]?.length ?? 0;
  const columns = Array.from({ length: p }, (_, j) => j);
  const sum = (f: (row: readonly number[], value: number) => number) => x.reduce((total, row, i) => total + f(row, y[i] ?? 0), 0);
  return {
    n: y.length,
    xx: columns.map((j) => columns.map((k) => sum((r) => (r[j] ?? 0) * (r[k] ?? 0)))),
    xy: columns.map((j) => sum((r, v) => (r[j] ?? 0) * v)),
    yy: sum((_, v) => v * v),
    x: columns.map((j) => sum((r) => r[j] ?? 0)),
    y: sum((_, v) => v),
  };
}

/** The best fixed effects at one ratio of the variances, and twice the negative restricted log likelihood but for a constant. */
function profile(groups: readonly Sums[], n: number, p: number, ratio: number) {
  const columns = Array.from({ length: p }, (_, j) => j);
  const weight = (g: Sums) => ratio / (1 + g.n * ratio);
  const sum = (f: (g: Sums) => number) => groups.reduce((total, g) => total + f(g), 0);
  const a = columns.map((j) => columns.map((k) => sum((g) => (g.xx[j]?.[k] ?? 0) - weight(g) * (g.x[j] ?? 0) * (g.x[k] ?? 0))));
  const b = columns.map((j) => sum((g) => (g.xy[j] ?? 0) - weight(g) * (g.x[j] ?? 0) * g.y));
  const solved = solve(a, b);
  if (solved === null) return null;
  const yy = sum((g) => g.yy - weight(g) * g.y * g.y);
  const rss = Math.max(Number.MIN_VALUE, yy - solved.x.reduce((total, x, j) => total + x * (b[j] ?? 0), 0));
  const criterion = (n - p) * Math.log(rss) + sum((g) => Math.log(1 + g.n * ratio)) + solved.logDeterminant;
  return { fixed: solved.x, residual: rss / (n - p), criterion };
}

/** Where a function with one dip is lowest: the golden section. */
function lowest(f: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [one, two] = [high - golden * (high - low), low + golden * (high - low)];
  let [at1, at2] = [f(one), f(two)];
  while (high - low > FINEST) {
    if (at1 <= at2) {
      [high, two, at2] = [two, one, at1];
      one = high - golden * (high - low);
      at1 = f(one);
    } else {
      [low, one, at1] = [one, two, at2];
      two = low + golden * (high - low);
      at2 = f(two);
    }
  }
  return (low + high) / 2;
}
