/** One puppy's jump that a litter cannot explain: a mistyped figure, until another reading says that it was right. */
import { deviation, type Innovation } from '../kalman-filter.ts';
import { READING_SPREAD } from '../noise.ts';
import { type CleanRow, type Draft, filterFrom, readingBefore, setRow, withoutReading } from './draft.ts';

const MISTYPED_FLOOR = 0.05;
const MISTYPED_SDS = 5;
/** What a really fading puppy can lose: never taken for a slip of the finger. */
const LOSS_PER_DAY = 0.13;
const LOSS_AT_ONCE = 0.04;

export function jumps(i: Innovation): boolean {
  const { dev } = deviation(i);
  if (Math.abs(dev) <= Math.max(MISTYPED_FLOOR, MISTYPED_SDS * i.sd)) return false;
  return dev > 0 || -dev > LOSS_PER_DAY * i.prediction.days + LOSS_AT_ONCE + 3 * Math.sqrt(i.weighing);
}

export function markMistyped(draft: Draft, k: number): void {
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
