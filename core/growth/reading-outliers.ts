/**
 * Readings first: before a weight says anything about a puppy, is it this puppy's weight? Session by session: a jump of the
 * whole litter is the scale's, two opposite jumps may be two puppies exchanged, one jump a mistyped figure. Nothing is
 * dropped: what is doubtful is held out and asked about, and may be put back by the next reading.
 */

import { mad, median } from '../statistics/median.ts';
import {
  carried,
  commonMove,
  deviation,
  type FilterState,
  firstState,
  type Innovation,
  innovations,
  type Prediction,
  predict,
  updated,
  type Weighed,
} from './kalman-filter.ts';
import { READING_SPREAD, SHARED_RATE, weighingVariance } from './noise.ts';
import type { ReferenceGain } from './reference-gain.ts';
import { DAY, type SessionRow, type WeighSession } from './sessions.ts';
import { gainOfExchange, type Offs, type Suspect, swapsIn } from './swaps.ts';

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

/** What is known of the readings after some sessions. */
export interface Cleaned {
  readonly sessions: readonly CleanSession[];
  readonly steps: readonly Step[];
  /** Of the middle-of-three test: how many, and the sum of z squared, each at most 9. */
  readonly middles: number;
  readonly middleSquares: number;
}

export interface Ground {
  readonly born: readonly number[];
  readonly reference: ReferenceGain;
  readonly stepGrams: number;
  readonly alone: boolean;
}

export const NOTHING_CLEANED: Cleaned = { sessions: [], steps: [], middles: 0, middleSquares: 0 };

interface Draft {
  readonly ground: Ground;
  readonly sessions: CleanSession[];
  readonly steps: Step[];
}

const JUMP_FLOOR = 0.035;
/** Before this age a litter that starts well and a scale that shows too much look the same. */
const FIRST_JUDGED_DAYS = 2;
/** Of the sessions before: so many, each counting so much at most, and so many usual ones with them. */
const JUMPS_KNOWN = 30;
const LARGEST_JUMP = 0.06;
const JUMP_PRIOR = 6;
const USUAL_JUMP = 0.012;
const JUMP_SDS = 3.5;
/** After a longer gap a jump may be growth. */
const JUMP_DAYS = 2.5;
/** A weighing a day after the last and many days before the next is hardly between the two: growth in the gap says nothing about it. */
const LEAST_BETWEEN = 0.3;
const LITTER_LOSS_AT_ONCE = 0.02;
const LITTER_LOSS_PER_DAY = 0.02;
const MISTYPED_FLOOR = 0.05;
const MISTYPED_SDS = 5;
/** What a really fading puppy can lose: never taken for a slip of the finger. */
const LOSS_PER_DAY = 0.13;
const LOSS_AT_ONCE = 0.04;
const BACK_SDS = 4.8;
/** Exchanged weights are taken back when the next reading makes that so much likelier. */
const BACK_AGAIN = 6;
const BACK_FLOOR = 0.045;
const BACK_DAYS = 4;

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

/** Runs the level filter over the sessions from `start`, after a verdict there has changed. */
function filterFrom(draft: Draft, start: number): void {
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
        : carried(predict(level, (session.instant - (born[index] ?? 0)) / DAY, reference, alone), common);
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

function setRow(
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

interface WholeJump {
  /** Middle of what was weighed over what was expected; log units. */
  readonly jump: number;
  /** Middle change since the last weights themselves. */
  readonly change: number;
  readonly days: number;
  /** Middle age. */
  readonly ageDays: number;
  /** A change lower than this is more than a litter loses for want of milk. */
  readonly lossLimit: number;
  /** Share of the puppies that moved the same way, and their middle distance from the jump. */
  readonly share: number;
  readonly distance: number;
  readonly limit: number;
}

/** The whole litter's jump at a session, over what the levels before it expect; null when too few were weighed. */
function litterJump(draft: Draft, k: number): WholeJump | null {
  const step = draft.steps[k];
  const counting = (step?.innovations ?? []).filter(
    (i, at): i is Innovation => i !== null && draft.sessions[k]?.rows[at]?.verdict !== 'held',
  );
  if (counting.length < 3) return null;
  const offs = counting.map((i) => i.off);
  const jump = median(offs);
  const age = median(counting.map((i) => i.prediction.ageDays));
  const days = median(counting.map((i) => i.prediction.days));
  const rate = SHARED_RATE * draft.ground.reference.pace(age) * Math.sqrt(days);
  const gain = median(counting.map((i) => i.prediction.gain * (1 + i.prediction.pace)));
  const rounding = draft.ground.stepGrams / median((draft.sessions[k]?.rows ?? []).map((r) => r.reading.grams));
  const pace = Math.abs(gain) * Math.sqrt(median(counting.map((i) => i.prediction.vPace)));
  return {
    jump,
    change: jump + gain,
    days,
    ageDays: age,
    lossLimit: -(LITTER_LOSS_AT_ONCE + LITTER_LOSS_PER_DAY * days + rounding),
    share: offs.filter((o) => Math.sign(o) === Math.sign(jump)).length / offs.length,
    distance: mad(offs),
    limit: JUMP_FLOOR + 3 * Math.hypot(rate, pace, rounding / Math.sqrt(6)),
  };
}

/** What this litter and its scale jump by anyway from one session to the next, in log units; shrunk toward the usual. */
function usualJump(draft: Draft, k: number): number {
  let squares = JUMP_PRIOR * USUAL_JUMP ** 2;
  let count = JUMP_PRIOR;
  for (const step of draft.steps.slice(Math.max(0, k - JUMPS_KNOWN), k)) {
    const offs = step.innovations.flatMap((i) => (i === null ? [] : [i.off]));
    if (offs.length < 3) continue;
    squares += Math.min(LARGEST_JUMP, Math.abs(median(offs))) ** 2;
    count += 1;
  }
  return Math.sqrt(squares / count);
}

/** Everyone heavier or lighter by much the same: the scale. Taken out for all. */
function markScaleFault(draft: Draft, k: number): boolean {
  const litter = litterJump(draft, k);
  if (
    litter === null ||
    litter.ageDays < FIRST_JUDGED_DAYS ||
    litter.days > JUMP_DAYS ||
    Math.abs(litter.jump) <= litter.limit ||
    litter.share < 0.8 ||
    litter.distance >= Math.abs(litter.jump) / 2 ||
    Math.abs(litter.jump) <= JUMP_SDS * usualJump(draft, k)
  )
    return false;
  // A litter without milk falls behind too: only a real loss of all together is the scale's.
  if (litter.jump < 0 && litter.change > litter.lossLimit) return false;
  const session = draft.sessions[k];
  if (session === undefined || session.rows.some((r) => r.reading.kept || r.settled)) return false;
  draft.sessions[k] = {
    ...session,
    rows: session.rows.map((r) => (r.used === null ? r : { ...r, used: null, verdict: 'scale' })),
  };
  filterFrom(draft, k);
  return true;
}

/** A scale fault that the next session still shows by more than half was none: put back. */
function settleScaleFault(draft: Draft, k: number): void {
  const before = draft.sessions[k - 1];
  const litter = litterJump(draft, k);
  const old = litterJump(draft, k - 1);
  if (before === undefined || litter === null || old === null || !before.rows.some((r) => r.verdict === 'scale')) return;
  if (Math.sign(litter.jump) !== Math.sign(old.jump) || Math.abs(litter.jump) <= Math.abs(old.jump) / 2) return;
  draft.sessions[k - 1] = {
    ...before,
    rows: before.rows.map((r) => (r.verdict === 'scale' ? { ...r, used: r.reading.grams, verdict: 'counts', settled: true } : r)),
  };
  filterFrom(draft, k - 1);
}

/** The last session against the ones on both sides: a scale that was wrong once shows even where a day's gain hides the jump. */
function lookBackAtScale(draft: Draft, k: number): boolean {
  const session = draft.sessions[k - 1];
  const step = draft.steps[k - 1];
  if (
    session === undefined ||
    step === undefined ||
    session.rows.some((r) => r.reading.kept || r.settled || r.verdict === 'scale')
  )
    return false;
  if (median(session.rows.map((r) => r.ageDays)) < FIRST_JUDGED_DAYS) return false;
  const devs: number[] = [];
  const jumps: number[] = [];
  const laterJumps: number[] = [];
  let rate = 0;
  let rounding = 0;
  for (const row of draft.sessions[k]?.rows ?? []) {
    const at = session.rows.findIndex((r) => r.index === row.index);
    const was = step.innovations[at] ?? null;
    const level = step.before[row.index] ?? null;
    if (was === null || level === null || row.used === null || session.rows[at]?.used === null) continue;
    const now = predict(level, row.ageDays, draft.ground.reference, draft.ground.alone);
    const share = was.prediction.days / now.days;
    if (now.days > 2 * JUMP_DAYS || share < LEAST_BETWEEN) continue;
    const later = Math.log(row.used) - now.level;
    devs.push(was.off - share * later);
    jumps.push(was.off);
    laterJumps.push(later);
    rate = SHARED_RATE * draft.ground.reference.pace(row.ageDays) * Math.sqrt(now.days * share * (1 - share));
    rounding = draft.ground.stepGrams / row.reading.grams / Math.sqrt(6);
  }
  const jump = median(devs);
  const litter = litterJump(draft, k - 1);
  if (jump < 0 && (litter === null || litter.change > litter.lossLimit)) return false;
  // What the next session still shows by more than half was growth.
  if (median(laterJumps) * Math.sign(jump) > Math.abs(median(jumps)) / 2) return false;
  const alike = devs.filter((d) => Math.sign(d) === Math.sign(jump)).length / devs.length;
  const limit = JUMP_FLOOR + 3 * Math.hypot(rate, rounding);
  if (devs.length < 3 || Math.abs(jump) <= limit || alike < 0.8 || mad(devs) >= Math.abs(jump) / 2) return false;
  draft.sessions[k - 1] = {
    ...session,
    rows: session.rows.map((r) => (r.used === null ? r : { ...r, used: null, verdict: 'scale' })),
  };
  filterFrom(draft, k - 1);
  return true;
}

function markSwaps(draft: Draft, k: number): void {
  const step = draft.steps[k];
  const rows = draft.sessions[k]?.rows ?? [];
  const suspects = rows.flatMap((row, at): Suspect[] => {
    const i = step?.innovations[at] ?? null;
    if (i === null || row.used === null) return [];
    return [
      { at, ln: Math.log(row.used), off: i.off, sd: i.sd, fixed: row.reading.kept || row.settled || row.verdict === 'exchanged' },
    ];
  });
  const pairs = swapsIn(suspects, suspects, false);
  let from = k;
  for (const [a, b] of pairs) {
    const earlier = exchangedBefore(draft, k, a, b);
    // The same two again: then the exchange before was wrong, and what is typed now is right.
    if (earlier === null) exchange(draft, k, a, b);
    else from = Math.min(from, takeBack(draft, earlier));
  }
  if (pairs.length > 0) filterFrom(draft, from);
}

/** The last readings of the two when they were exchanged with each other. */
function exchangedBefore(draft: Draft, k: number, a: number, b: number): { k: number; a: number; b: number } | null {
  const [one, two] = [draft.sessions[k]?.rows[a], draft.sessions[k]?.rows[b]];
  const before = one === undefined ? null : readingBefore(draft, k, one.index);
  const other = two === undefined ? null : readingBefore(draft, k, two.index);
  if (before === null || other === null || before.k !== other.k || before.row.verdict !== 'exchanged') return null;
  return before.row.partner === other.row.reading.id ? { k: before.k, a: before.at, b: other.at } : null;
}

function takeBack(draft: Draft, pair: { k: number; a: number; b: number }): number {
  for (const at of [pair.a, pair.b]) {
    const row = draft.sessions[pair.k]?.rows[at];
    if (row !== undefined) setRow(draft, pair.k, at, { used: row.reading.grams, verdict: 'counts', settled: true });
  }
  return pair.k;
}

function exchange(draft: Draft, k: number, a: number, b: number): void {
  const [one, two] = [draft.sessions[k]?.rows[a], draft.sessions[k]?.rows[b]];
  if (one === undefined || two === undefined) return;
  setRow(draft, k, a, { used: two.reading.grams, verdict: 'exchanged', partner: two.reading.id });
  setRow(draft, k, b, { used: one.reading.grams, verdict: 'exchanged', partner: one.reading.id });
}

/** The puppy's reading before session k: where it stands. */
function readingBefore(draft: Draft, k: number, index: number): { k: number; at: number; row: CleanRow } | null {
  for (let j = k - 1; j >= 0; j -= 1) {
    const at = draft.sessions[j]?.rows.findIndex((r) => r.index === index) ?? -1;
    const row = draft.sessions[j]?.rows[at];
    if (row !== undefined) return { k: j, at, row };
  }
  return null;
}

function jumps(i: Innovation): boolean {
  const { dev } = deviation(i);
  if (Math.abs(dev) <= Math.max(MISTYPED_FLOOR, MISTYPED_SDS * i.sd)) return false;
  return dev > 0 || -dev > LOSS_PER_DAY * i.prediction.days + LOSS_AT_ONCE + 3 * Math.sqrt(i.weighing);
}

function markMistyped(draft: Draft, k: number): void {
  const count = draft.sessions[k]?.rows.length ?? 0;
  for (let at = 0; at < count; at += 1) {
    const row = draft.sessions[k]?.rows[at];
    const innovation = draft.steps[k]?.innovations[at] ?? null;
    if (row === undefined || innovation === null || row.verdict !== 'counts') continue;
    if (!jumps(innovation)) continue;
    if (settleHeld(draft, k, at, row, innovation)) continue;
    if (row.reading.kept) continue;
    if (blameBefore(draft, k, row, innovation)) continue;
    setRow(draft, k, at, { used: null, verdict: 'mistyped' });
    filterFrom(draft, k);
  }
}

/** A second reading that agrees with the held one: it was right, and counts again. A lone first weight is then the wrong one. */
function settleHeld(draft: Draft, k: number, at: number, row: CleanRow, innovation: Innovation): boolean {
  const held = readingBefore(draft, k, row.index);
  if (held === null || (held.row.verdict !== 'mistyped' && held.row.verdict !== 'held')) return false;
  const was = draft.steps[held.k]?.innovations[held.at] ?? null;
  if (was === null) return false;
  const ground = draft.ground;
  const days = row.ageDays - held.row.ageDays;
  const gain = (1 + was.prediction.pace) * (ground.reference.since(row.ageDays) - ground.reference.since(held.row.ageDays));
  const apart = Math.log(row.reading.grams / held.row.reading.grams) - gain - innovation.common;
  const rate = READING_SPREAD.rate * ground.reference.pace(row.ageDays);
  const agree = Math.max(0.03, 3.5 * Math.sqrt(innovation.weighing + was.weighing + rate * rate * days));
  if (Math.abs(apart) > agree || Math.abs(apart) > Math.abs(deviation(innovation).dev) / 2) return false;
  if (held.row.verdict === 'held') {
    // Still unanswered, so it stays out; but it bears witness that this one is right.
    setRow(draft, k, at, { used: row.reading.grams, verdict: 'counts', anew: true });
    filterFrom(draft, k);
    return true;
  }
  const earlier = readingBefore(draft, held.k, row.index);
  const lone = earlier !== null && readingBefore(draft, earlier.k, row.index) === null && !earlier.row.reading.kept;
  if (lone) setRow(draft, earlier.k, earlier.at, { used: null, verdict: 'mistyped' });
  setRow(draft, held.k, held.at, { used: held.row.reading.grams, verdict: 'counts', anew: true, settled: true });
  filterFrom(draft, lone ? earlier.k : held.k);
  return true;
}

/** Whether the jump is explained better by the reading before: then that one is held out instead. */
function blameBefore(draft: Draft, k: number, row: CleanRow, innovation: Innovation): boolean {
  const before = readingBefore(draft, k, row.index);
  if (before === null || before.row.verdict !== 'counts' || before.row.reading.kept || before.row.settled) return false;
  const was = draft.steps[before.k]?.innovations[before.at] ?? null;
  const without = withoutReading(draft, before.k, k, row);
  if (was === null || without === null) return false;
  const own = deviation(was).z ** 2;
  const now = (Math.log(row.reading.grams) - without.level - innovation.common) ** 2 / (without.vLevel + innovation.weighing);
  if (now > 2.6 ** 2 || own < now + 4) return false;
  setRow(draft, before.k, before.at, { used: null, verdict: 'mistyped' });
  filterFrom(draft, before.k);
  return true;
}

/** What is expected of the puppy at session k when its reading at session j is not believed. */
function withoutReading(draft: Draft, j: number, k: number, row: CleanRow): Prediction | null {
  let level = draft.steps[j]?.before[row.index] ?? null;
  if (level === null) return null;
  const { reference, alone, born } = draft.ground;
  for (let s = j; s < k; s += 1) {
    const session = draft.sessions[s];
    const step = draft.steps[s];
    if (session === undefined || step === undefined) return null;
    const at = session.rows.findIndex((r) => r.index === row.index);
    const age = session.rows[at]?.ageDays ?? (session.instant - (born[row.index] ?? 0)) / DAY;
    level = carried(predict(level, age, reference, alone), step.innovations[at]?.common ?? step.common);
  }
  return predict(level, row.ageDays, reference, alone);
}

interface Middle extends Suspect {
  readonly dev: number;
  readonly z: number;
  readonly k: number;
}

/** The middle of three against its neighbours, for each puppy of the newest session. */
function lookBack(draft: Draft, k: number): { count: number; sum: number } {
  const middles = (draft.sessions[k]?.rows ?? []).flatMap((row, at) => {
    const m = middleOfThree(draft, k, row, draft.steps[k]?.innovations[at] ?? null);
    return m === null ? [] : [m];
  });
  const changed = new Set<number>();
  for (const j of new Set(middles.map((m) => m.k))) {
    const there = middles.filter((m) => m.k === j);
    const offs = offsAt(draft, j);
    for (const [a, b] of swapsIn(there, offs, true)) {
      exchange(draft, j, a, b);
      changed.add(j);
    }
    if (takeBackExchanges(draft, j, there, offs)) changed.add(j);
  }
  let sum = 0;
  for (const m of middles) {
    sum += Math.min(9, m.z * m.z);
    const row = draft.sessions[m.k]?.rows[m.at];
    if (row?.verdict !== 'counts' || m.fixed || Math.abs(m.z) <= BACK_SDS || Math.abs(m.dev) <= BACK_FLOOR) continue;
    setRow(draft, m.k, m.at, { used: null, verdict: 'mistyped' });
    changed.add(m.k);
  }
  if (changed.size > 0) filterFrom(draft, Math.min(...changed));
  return { count: middles.length, sum };
}

/** What the counted rows of a session were off by. */
function offsAt(draft: Draft, k: number): Offs {
  return (draft.sessions[k]?.rows ?? []).flatMap((row, at) => {
    const i = draft.steps[k]?.innovations[at] ?? null;
    return i === null || row.used === null ? [] : [{ at, off: i.off }];
  });
}

/** Exchanged weights that the next reading says were right as typed. */
function takeBackExchanges(draft: Draft, j: number, there: readonly Middle[], offs: Offs): boolean {
  let changed = false;
  const rows = draft.sessions[j]?.rows ?? [];
  for (const one of there) {
    const row = rows[one.at];
    const two = there.find((m) => rows[m.at]?.reading.id === row?.partner && m.at > one.at);
    const other = two === undefined ? undefined : rows[two.at];
    if (row?.verdict !== 'exchanged' || other?.verdict !== 'exchanged' || two === undefined) continue;
    if ((gainOfExchange(one, two, offs) ?? 0) < BACK_AGAIN) continue;
    takeBack(draft, { k: j, a: one.at, b: two.at });
    changed = true;
  }
  return changed;
}

function middleOfThree(draft: Draft, k: number, row: CleanRow, now: Innovation | null): Middle | null {
  // Somebody said that the jump is right: then the weight before it is not to blame for it.
  const settled = now !== null && (row.anew || (row.reading.kept && jumps(now)));
  const before = row.used === null || now === null || settled ? null : readingBefore(draft, k, row.index);
  if (
    before === null ||
    now === null ||
    row.used === null ||
    before.row.used === null ||
    before.row.anew ||
    row.ageDays - before.row.ageDays > BACK_DAYS
  )
    return null;
  const was = draft.steps[before.k]?.innovations[before.at] ?? null;
  const without = withoutReading(draft, before.k, k, row);
  if (was === null || without === null) return null;
  const later = Math.log(row.used) - without.level - now.common;
  const compared = now.sd ** 2 - now.prediction.vLevel - now.weighing;
  const vBefore = was.sd ** 2 - was.weighing;
  const vLater = now.weighing + now.prediction.drift + compared;
  const toward = (later * vBefore) / (vBefore + vLater);
  const sd = Math.sqrt((vBefore * vLater) / (vBefore + vLater) + was.weighing);
  const dev = deviation(was).dev - toward;
  return {
    k: before.k,
    at: before.at,
    ln: Math.log(before.row.used),
    off: was.off - toward,
    sd,
    dev,
    z: dev / sd,
    fixed: before.row.reading.kept || before.row.settled || before.row.verdict === 'exchanged',
  };
}
