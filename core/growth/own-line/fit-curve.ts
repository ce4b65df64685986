/**
 * Least-squares fit of a growth curve with three values: the weight that it ends at, its place and its scale in age. By
 * Levenberg and Marquardt (Marquardt 1963, from memory); the results are checked beside R's nls.
 */
import { solve } from '../../statistics/linear.ts';

/** logistic A/(1 + exp(-(t - place)/scale)) · Gompertz A exp(-exp(-(t - place)/scale)), fastest gain at `place`. */
export type CurveShape = 'logistic' | 'gompertz';

export interface FittedCurve {
  readonly shape: CurveShape;
  /** The weight that it ends at, in the unit of the weights. */
  readonly end: number;
  /** In the unit of the ages. */
  readonly place: number;
  readonly scale: number;
  /** Sum of the squared distances of the weights from the curve, or of those as shares of the weights. */
  readonly rss: number;
}

interface Point {
  readonly age: number;
  readonly weight: number;
}

const STEPS = 500;
/** A step under this part of every value is none. */
const SETTLED = 1e-10;

/** Weight on the curve at an age. */
export function onCurve(c: Pick<FittedCurve, 'shape' | 'end' | 'place' | 'scale'>, age: number): number {
  const e = Math.exp(-(age - c.place) / c.scale);
  return c.shape === 'logistic' ? c.end / (1 + e) : c.end * Math.exp(-e);
}

/** What the squares are of: distances in the unit of the weights, or as shares of them, so that the light ages count as much. */
export type Distance = 'plain' | 'share';

/** Null for fewer than four ages, for weights that don't rise, and where no curve of the shape settles. */
export function fitCurve(points: readonly Point[], shape: CurveShape, distance: Distance = 'plain'): FittedCurve | null {
  const ages = new Set(points.map((p) => p.age));
  if (ages.size < 4 || !points.every((p) => p.weight > 0 && Number.isFinite(p.weight) && Number.isFinite(p.age))) return null;
  const found = [1.05, 1.5, 3]
    .map((end) => start(points, shape, end))
    .flatMap((s) => (s === null ? [] : [settle(points, shape, s, distance)]))
    .filter((c) => c !== null);
  return found.reduce<FittedCurve | null>((best, c) => (best === null || c.rss < best.rss ? c : best), null);
}

/** End, place and scale by a straight line, when the curve ends at so many times the heaviest. */
function start(points: readonly Point[], shape: CurveShape, times: number): [number, number, number] | null {
  const end = times * Math.max(...points.map((p) => p.weight));
  const n = points.length;
  const line = points.map(({ age, weight }) => {
    const share = weight / end;
    return { age, v: shape === 'logistic' ? Math.log(share / (1 - share)) : -Math.log(-Math.log(share)) };
  });
  const age = line.reduce((s, p) => s + p.age, 0) / n;
  const v = line.reduce((s, p) => s + p.v, 0) / n;
  const slope = line.reduce((s, p) => s + (p.age - age) * (p.v - v), 0) / line.reduce((s, p) => s + (p.age - age) ** 2, 0);
  return slope > 0 ? [end, age - v / slope, 1 / slope] : null;
}

/** End and scale are over 0: their logarithms are moved. */
function settle(
  points: readonly Point[],
  shape: CurveShape,
  from: [number, number, number],
  distance: Distance,
): FittedCurve | null {
  let [end, place, scale] = from;
  const counts = (p: Point) => (distance === 'plain' ? 1 : 1 / p.weight ** 2);
  const rssOf = (c: { end: number; place: number; scale: number }) =>
    points.reduce((s, p) => s + counts(p) * (p.weight - onCurve({ shape, ...c }, p.age)) ** 2, 0);
  let rss = rssOf({ end, place, scale });
  let damping = 1e-3;
  for (let step = 0; step < STEPS; step += 1) {
    const a = [0, 1, 2].map(() => [0, 0, 0]);
    const b = [0, 0, 0];
    for (const p of points) {
      const y = onCurve({ shape, end, place, scale }, p.age);
      const d = slopes(shape, end, y, (p.age - place) / scale, scale);
      for (let j = 0; j < 3; j += 1) {
        b[j] = (b[j] ?? 0) + counts(p) * (d[j] ?? 0) * (p.weight - y);
        for (let k = 0; k < 3; k += 1) (a[j] ?? [])[k] = (a[j]?.[k] ?? 0) + counts(p) * (d[j] ?? 0) * (d[k] ?? 0);
      }
    }
    let moved = false;
    while (!moved && damping < 1e12) {
      const damped = a.map((row, j) => row.map((x, k) => (j === k ? x * (1 + damping) : x)));
      const move = solve(damped, b)?.x ?? null;
      const [u, v, w] = move ?? [0, 0, 0];
      const next = { end: end * Math.exp(u ?? 0), place: place + (v ?? 0), scale: scale * Math.exp(w ?? 0) };
      const nextRss = move === null ? Number.NaN : rssOf(next);
      if (nextRss <= rss) {
        const size = Math.max(Math.abs(u ?? 0), Math.abs((v ?? 0) / scale), Math.abs(w ?? 0));
        ({ end, place, scale } = next);
        rss = nextRss;
        damping = Math.max(1e-12, damping / 10);
        if (size < SETTLED) return { shape, end, place, scale, rss };
        moved = true;
      } else damping *= 10;
    }
    // No better place is near: this is the bottom, as far as the digits go.
    if (!moved) return { shape, end, place, scale, rss };
  }
  return null;
}

/** By ln(end), place and ln(scale); x is (age - place)/scale. */
function slopes(shape: CurveShape, end: number, y: number, x: number, scale: number): number[] {
  const share = y / end;
  const byX = shape === 'logistic' ? y * (1 - share) : y * Math.exp(-x);
  return [y, -byX / scale, -byX * x];
}
