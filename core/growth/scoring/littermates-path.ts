/** The way the littermates went: one level for each of them and one common move for each session, robustly fitted. */
import { DAY_MS } from '../../calendar/durations.ts';
import { median } from '../../statistics/median.ts';
import type { CleanSession } from '../outliers/draft.ts';
import type { ReferenceGain } from '../reference-gain.ts';

/** Days that the path looks back, of a puppy and of the whole litter. */
export const PUPPY_WINDOW_DAYS = 16;
export const LITTER_WINDOW_DAYS = 9.2;
const HUBER = 1.345;
/** Below this residuals are ordinary noise whatever their spread. */
const LEAST_SPREAD = 0.02;
const ROUNDS = 5;

/** The last sessions as a table: x = ln weight - reference, one row a session, one column a puppy; NaN where nothing counts. */
export interface Window {
  readonly sessions: number;
  readonly puppies: number;
  /** Place of the first session of the window among all sessions. */
  readonly first: number;
  readonly x: Float64Array;
  readonly age: Float64Array;
  readonly grams: Float64Array;
}

/** The first of the sessions that lie within so many days before session `last`. */
export function firstWithin(sessions: readonly CleanSession[], last: number, days: number): number {
  const end = sessions[last]?.instant ?? 0;
  let first = last;
  while (first > 0 && end - (sessions[first - 1]?.instant ?? 0) <= days * DAY_MS) first -= 1;
  return first;
}

/** The sessions from `first` to `last` as a table. */
export function windowOf(
  sessions: readonly CleanSession[],
  first: number,
  last: number,
  puppies: number,
  reference: ReferenceGain,
): Window {
  const count = last - first + 1;
  const table = (): Float64Array => new Float64Array(count * puppies).fill(Number.NaN);
  const window: Window = { sessions: count, puppies, first, x: table(), age: table(), grams: table() };
  for (let s = 0; s < count; s += 1) {
    for (const row of sessions[first + s]?.rows ?? []) {
      if (row.used === null) continue;
      const cell = s * puppies + row.index;
      window.x[cell] = Math.log(row.used) - reference.since(row.ageDays);
      window.age[cell] = row.ageDays;
      window.grams[cell] = row.used;
    }
  }
  return window;
}

export interface Path {
  /** Common move at each session of the window, around 0; where nobody was weighed, the last one known. */
  readonly moves: Float64Array;
  /** How many it was fitted on, at each session. */
  readonly counts: Int32Array;
}

/** The path of the puppies that are included (a column each). */
export function fitPath(window: Window, included: readonly boolean[]): Path {
  const { sessions, puppies, x } = window;
  const levels = new Float64Array(puppies);
  const moves = new Float64Array(sessions);
  const counts = new Int32Array(sessions);
  for (let i = 0; i < puppies; i += 1) {
    if (included[i]) levels[i] = columnMean(window, i);
  }
  for (let s = 0; s < sessions; s += 1) {
    for (let i = 0; i < puppies; i += 1)
      if (included[i] && !Number.isNaN(x[s * puppies + i] ?? Number.NaN)) counts[s] = (counts[s] ?? 0) + 1;
  }
  let limit = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let s = 0; s < sessions; s += 1) {
      let sum = 0;
      let weight = 0;
      for (let i = 0; i < puppies; i += 1) {
        const value = included[i] ? (x[s * puppies + i] ?? Number.NaN) : Number.NaN;
        if (Number.isNaN(value)) continue;
        const own = value - (levels[i] ?? 0);
        const w = huber(own - (moves[s] ?? 0), limit);
        sum += w * own;
        weight += w;
      }
      if (weight > 0) moves[s] = sum / weight;
    }
    for (let i = 0; i < puppies; i += 1) {
      if (!included[i]) continue;
      let sum = 0;
      let weight = 0;
      for (let s = 0; s < sessions; s += 1) {
        const value = x[s * puppies + i] ?? Number.NaN;
        if (Number.isNaN(value)) continue;
        const own = value - (moves[s] ?? 0);
        const w = huber(own - (levels[i] ?? 0), limit);
        sum += w * own;
        weight += w;
      }
      if (weight > 0) levels[i] = sum / weight;
    }
    if (round < 2) limit = HUBER * Math.max(LEAST_SPREAD, spread(window, included, levels, moves));
  }
  carryOver(moves, counts);
  return { moves, counts };
}

function huber(residual: number, limit: number): number {
  const size = Math.abs(residual);
  return size <= limit ? 1 : limit / size;
}

function columnMean(window: Window, i: number): number {
  let sum = 0;
  let count = 0;
  for (let s = 0; s < window.sessions; s += 1) {
    const value = window.x[s * window.puppies + i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    sum += value;
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}

function spread(window: Window, included: readonly boolean[], levels: Float64Array, moves: Float64Array): number {
  const sizes: number[] = [];
  for (let s = 0; s < window.sessions; s += 1) {
    for (let i = 0; i < window.puppies; i += 1) {
      const value = included[i] ? (window.x[s * window.puppies + i] ?? Number.NaN) : Number.NaN;
      if (!Number.isNaN(value)) sizes.push(Math.abs(value - (levels[i] ?? 0) - (moves[s] ?? 0)));
    }
  }
  return sizes.length === 0 ? LEAST_SPREAD : 1.4826 * median(sizes);
}

function carryOver(moves: Float64Array, counts: Int32Array): void {
  let last = Number.NaN;
  for (let s = 0; s < moves.length; s += 1) {
    if ((counts[s] ?? 0) > 0) last = moves[s] ?? 0;
    else moves[s] = last;
  }
  const first = moves.find((m) => !Number.isNaN(m)) ?? 0;
  for (let s = 0; s < moves.length && Number.isNaN(moves[s] ?? Number.NaN); s += 1) moves[s] = first;
}
