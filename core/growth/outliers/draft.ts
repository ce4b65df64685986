/** Sessions of readings while they are judged, and the filter run over them again after each verdict. */
import { DAY_MS } from '../../calendar/durations.ts';
import {
  carried,
  commonMove,
  type FilterState,
  firstState,
  type Innovation,
  innovations,
  type Prediction,
  predict,
  updated,
  type Weighed,
} from '../kalman-filter.ts';
import { READING_SPREAD, weighingVariance } from '../noise.ts';
import type { ReferenceGain } from '../reference-gain.ts';
import type { SessionRow } from '../sessions.ts';

export type Verdict = 'counts' | 'held' | 'mistyped' | 'scale' | 'exchanged';

export interface CleanRow extends SessionRow {
  /** Place of the puppy in the list. */
  readonly index: number;
  /** The weight that counts, in grams; null while the reading is held out. */
  readonly used: number | null;
  readonly verdict: Verdict;
  /** The other reading of an exchange. */
  readonly partner: string | null;
  /** A jump that was doubted and then confirmed: the level begins anew here. */
  readonly anew: boolean;
  /** Doubted and put back: not doubted again. */
  readonly settled: boolean;
}

export interface CleanSession {
  readonly rows: readonly CleanRow[];
  readonly instant: number;
}

/** One session through the level filter; innovations stand beside the rows. */
export interface Step {
  readonly before: readonly (FilterState | null)[];
  readonly innovations: readonly (Innovation | null)[];
  readonly common: number;
  readonly after: readonly (FilterState | null)[];
}

export interface Ground {
  readonly born: readonly number[];
  readonly reference: ReferenceGain;
  readonly stepGrams: number;
  readonly alone: boolean;
}

export interface Draft {
  readonly ground: Ground;
  readonly sessions: CleanSession[];
  readonly steps: Step[];
}

/** Runs the level filter over the sessions from `start`, after a verdict there has changed. */
export function filterFrom(draft: Draft, start: number): void {
  for (let k = start; k < draft.sessions.length; k += 1) {
    const session = draft.sessions[k];
    if (session === undefined) return;
    const before = draft.steps[k - 1]?.after ?? draft.ground.born.map(() => null);
    draft.steps[k] = filterSession(before, session, draft.ground);
  }
}

function filterSession(before: readonly (FilterState | null)[], session: CleanSession, ground: Ground): Step {
  const { reference, stepGrams, alone, born } = ground;
  const weighed = session.rows.map((row): Weighed | null => {
    const level = before[row.index] ?? null;
    if (level === null) return null;
    return {
      grams: row.used ?? row.reading.grams,
      prediction: predict(level, row.ageDays, reference, alone),
      counts: row.used !== null,
    };
  });
  const found = innovations(weighed, stepGrams);
  const counting = found.filter((i, at): i is Innovation => i !== null && session.rows[at]?.used !== null);
  const n = counting.length;
  const common = n < 3 ? 0 : commonMove(counting.map((i) => i.off));
  const rowOf = new Map(session.rows.map((row, at) => [row.index, at]));
  const after = before.map((level, index): FilterState | null => {
    const at = rowOf.get(index);
    const row = at === undefined ? undefined : session.rows[at];
    if (row === undefined) {
      return level === null
        ? null
        : carried(predict(level, (session.instant - (born[index] ?? 0)) / DAY_MS, reference, alone), common);
    }
    const innovation = at === undefined ? null : (found[at] ?? null);
    if (innovation !== null && !row.anew)
      return row.used === null ? carried(innovation.prediction, innovation.common) : updated(innovation);
    return row.used === null
      ? null
      : firstState(row.ageDays, Math.log(row.used), weighingVariance(READING_SPREAD, row.ageDays, row.used, stepGrams));
  });
  return { before, innovations: found, common, after };
}

export function setRow(
  draft: Draft,
  k: number,
  at: number,
  change: Pick<CleanRow, 'used' | 'verdict'> & { partner?: string; anew?: boolean; settled?: boolean },
): void {
  const session = draft.sessions[k];
  if (session === undefined) return;
  draft.sessions[k] = {
    ...session,
    rows: session.rows.map((row, i) =>
      i === at ? { ...row, ...change, partner: change.partner ?? null, anew: change.anew ?? row.anew } : row,
    ),
  };
}

/** The puppy's reading before session k: where it stands. */
export function readingBefore(draft: Draft, k: number, index: number): { k: number; at: number; row: CleanRow } | null {
  for (let j = k - 1; j >= 0; j -= 1) {
    const at = draft.sessions[j]?.rows.findIndex((r) => r.index === index) ?? -1;
    const row = draft.sessions[j]?.rows[at];
    if (row !== undefined) return { k: j, at, row };
  }
  return null;
}

/** What is expected of the puppy at session k when its reading at session j is not believed. */
export function withoutReading(draft: Draft, j: number, k: number, row: CleanRow): Prediction | null {
  let level = draft.steps[j]?.before[row.index] ?? null;
  if (level === null) return null;
  const { reference, alone, born } = draft.ground;
  for (let s = j; s < k; s += 1) {
    const session = draft.sessions[s];
    const step = draft.steps[s];
    if (session === undefined || step === undefined) return null;
    const at = session.rows.findIndex((r) => r.index === row.index);
    const age = session.rows[at]?.ageDays ?? (session.instant - (born[row.index] ?? 0)) / DAY_MS;
    level = carried(predict(level, age, reference, alone), step.innovations[at]?.common ?? step.common);
  }
  return predict(level, row.ageDays, reference, alone);
}

export function exchange(draft: Draft, k: number, a: number, b: number): void {
  const [one, two] = [draft.sessions[k]?.rows[a], draft.sessions[k]?.rows[b]];
  if (one === undefined || two === undefined) return;
  setRow(draft, k, a, { used: two.reading.grams, verdict: 'exchanged', partner: two.reading.id });
  setRow(draft, k, b, { used: one.reading.grams, verdict: 'exchanged', partner: one.reading.id });
}

export function takeBack(draft: Draft, pair: { k: number; a: number; b: number }): number {
  for (const at of [pair.a, pair.b]) {
    const row = draft.sessions[pair.k]?.rows[at];
    if (row !== undefined) setRow(draft, pair.k, at, { used: row.reading.grams, verdict: 'counts', settled: true });
  }
  return pair.k;
}
