/** The whole litter heavier or lighter at once: the scale, unless the next session shows that it was growth. */
import { mad, median } from '../../statistics/median.ts';
import { type Innovation, predict } from '../kalman-filter.ts';
import { SHARED_RATE } from '../noise.ts';
import { type Draft, filterFrom } from './draft.ts';

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

interface LitterJump {
  /** Median of what was weighed over what was expected; log units. */
  readonly jump: number;
  /** Median change since the last weights themselves. */
  readonly change: number;
  readonly days: number;
  /** Median age. */
  readonly ageDays: number;
  /** A change lower than this is more than a litter loses for want of milk. */
  readonly lossLimit: number;
  /** Share of the puppies that moved the same way, and their MAD. */
  readonly share: number;
  readonly distance: number;
  readonly limit: number;
}

/** The whole litter's jump at a session, over what the levels before it expect; null when too few were weighed. */
function litterJump(draft: Draft, k: number): LitterJump | null {
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
export function markScaleFault(draft: Draft, k: number): boolean {
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
export function settleScaleFault(draft: Draft, k: number): void {
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
export function lookBackAtScale(draft: Draft, k: number): boolean {
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
