/** Systems of equations with a symmetric positive matrix, by Cholesky. Matrices are row by row. */

/** A pivot under this is lifted to it: a matrix that is all but singular still has a root. */
const LEAST_PIVOT = 1e-12;

/** Lower triangle L with L L' = k, of n rows. */
export function cholesky(k: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = k[i * n + j] ?? 0;
      for (let m = 0; m < j; m += 1) sum -= (l[i * n + m] ?? 0) * (l[j * n + m] ?? 0);
      l[i * n + j] = i === j ? Math.sqrt(Math.max(sum, LEAST_PIVOT)) : sum / (l[j * n + j] ?? 1);
    }
  }
  return l;
}

/** Solves L w = b; `from` is the first row in which b is not 0. */
export function forward(l: Float64Array, n: number, b: Float64Array, from = 0): Float64Array {
  const w = new Float64Array(n);
  for (let i = from; i < n; i += 1) {
    let sum = b[i] ?? 0;
    for (let m = from; m < i; m += 1) sum -= (l[i * n + m] ?? 0) * (w[m] ?? 0);
    w[i] = sum / (l[i * n + i] ?? 1);
  }
  return w;
}

/** Solves L' x = w. */
function backward(l: Float64Array, n: number, w: Float64Array): Float64Array {
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = w[i] ?? 0;
    for (let m = i + 1; m < n; m += 1) sum -= (l[m * n + i] ?? 0) * (x[m] ?? 0);
    x[i] = sum / (l[i * n + i] ?? 1);
  }
  return x;
}

/** x of a x = b and ln |a|; null when the columns of `a` depend on each other. */
export function solve(a: readonly (readonly number[])[], b: readonly number[]): { x: number[]; logDeterminant: number } | null {
  const n = b.length;
  // With ones on the diagonal a pivot says how much of its column the others leave, whatever the units.
  const size = b.map((_, i) => Math.sqrt(a[i]?.[i] ?? 0));
  if (!size.every((s) => s > 0)) return null;
  const at = (i: number) => size[i] ?? 1;
  const root = cholesky(
    Float64Array.from({ length: n * n }, (_, c) => {
      const [i, j] = [Math.floor(c / n), c % n];
      return (a[i]?.[j] ?? 0) / (at(i) * at(j));
    }),
    n,
  );
  const pivots = b.map((_, i) => (root[i * n + i] ?? 0) ** 2);
  // The root of the least pivot, squared again, may lie a digit above it.
  if (!pivots.every((p) => p > LEAST_PIVOT * (1 + 1e-9))) return null;
  const scaled = Float64Array.from(b, (v, i) => v / at(i));
  const x = backward(root, n, forward(root, n, scaled));
  return {
    x: Array.from(x, (v, i) => v / at(i)),
    logDeterminant: pivots.reduce((sum, p, i) => sum + Math.log(p) + 2 * Math.log(at(i)), 0),
  };
}
