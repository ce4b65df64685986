/** A puppy's filtered level and pace, from one reading to the next: what the next weight should be. */
import { median } from '../statistics/median.ts';
import { FIRST_DAY_UNKNOWN, firstDayShare, READING_SPREAD, SHARED_RATE, weaningDays, weighingVariance } from './noise.ts';
import type { ReferenceGain } from './reference-gain.ts';

/** ln grams, and the pace over the reference's as a share (-0.2: a fifth slower), with their covariance. */
export interface FilterState {
  readonly ageDays: number;
  readonly level: number;
  readonly pace: number;
  readonly vLevel: number;
  readonly vBoth: number;
  readonly vPace: number;
}

/** A level moved to a later age. `drift` is the variance that the way added; alone, also what littermates would have shown. */
export interface Prediction extends FilterState {
  readonly drift: number;
  /** Variance of what the litter shares over the way. */
  readonly shared: number;
  readonly days: number;
  /** Reference log gain on the way. */
  readonly gain: number;
}

/** One reading beside what was expected of it. Log units. */
export interface Innovation {
  readonly prediction: Prediction;
  /** ln weight - predicted. */
  readonly off: number;
  readonly weighing: number;
  /** What littermates did at the same session, shrunk; 0 without any. */
  readonly common: number;
  readonly others: number;
  /** Standard deviation of (off - common). */
  readonly sd: number;
}

const PACE_PRIOR = 0.22;
const PACE_DRIFT = 0.03;
const PACE_LIMIT = 0.9;
/** Littermates' common move counts n/(n + this). */
const COMMON_SHRINK = 1.5;
/** Variance of a median over that of a mean. */
const MEDIAN_LOSS = 1.57;

export function firstState(ageDays: number, ln: number, weighing: number): FilterState {
  return { ageDays, level: ln, pace: 0, vLevel: weighing, vBoth: 0, vPace: PACE_PRIOR ** 2 };
}

export function predict(from: FilterState, toAge: number, reference: ReferenceGain, alone: boolean): Prediction {
  const days = Math.max(0, toAge - from.ageDays);
  const gain = reference.since(toAge) - reference.since(from.ageDays);
  const g = reference.pace((from.ageDays + toAge) / 2);
  const shared = (SHARED_RATE * g) ** 2 * days + FIRST_DAY_UNKNOWN ** 2 * firstDayShare(from.ageDays, toAge);
  const drift =
    (READING_SPREAD.rate * g) ** 2 * days +
    (alone ? shared : 0) +
    READING_SPREAD.firstDay ** 2 * firstDayShare(from.ageDays, toAge) +
    READING_SPREAD.weaning ** 2 * weaningDays(from.ageDays, toAge);
  return {
    ageDays: Math.max(toAge, from.ageDays),
    level: from.level + (1 + from.pace) * gain,
    pace: from.pace,
    vLevel: from.vLevel + 2 * gain * from.vBoth + gain * gain * from.vPace + drift,
    vBoth: from.vBoth + gain * from.vPace,
    vPace: from.vPace + PACE_DRIFT ** 2 * days,
    drift,
    shared: (alone ? 0 : shared) + READING_SPREAD.session ** 2,
    days,
    gain,
  };
}

export interface Weighed {
  readonly grams: number;
  readonly prediction: Prediction;
  /** Whether littermates are compared with it. */
  readonly counts: boolean;
}

/** Every reading of a session beside its prediction; readings without one are null. Each is judged by the others' middle. */
export function innovations(readings: readonly (Weighed | null)[], stepGrams: number): (Innovation | null)[] {
  const predicted = readings.map((r) => {
    if (r === null) return null;
    const weighing = weighingVariance(READING_SPREAD, r.prediction.ageDays, r.grams, stepGrams);
    return { ...r, off: Math.log(r.grams) - r.prediction.level, weighing, own: r.prediction.vLevel + weighing };
  });
  return predicted.map((r) => {
    if (r === null) return null;
    const others = predicted.filter((o) => o !== null && o !== r && o.counts);
    const n = others.length;
    const { prediction, off, weighing, own } = r;
    if (n === 0) return { prediction, off, weighing, common: 0, others: 0, sd: Math.sqrt(own + prediction.shared) };
    const share = n / (n + COMMON_SHRINK);
    const common = commonMove(others.map((o) => o?.off ?? 0));
    const theirs = others.reduce((sum, o) => sum + (o?.own ?? 0), 0) / n;
    const compared = (share * share * theirs * (n > 2 ? MEDIAN_LOSS : 1)) / n + (1 - share) ** 2 * prediction.shared;
    return { prediction, off, weighing, common, others: n, sd: Math.sqrt(own + compared) };
  });
}

/** What the litter did together: the middle of what they were off by, shrunk when they are few. */
export function commonMove(offs: readonly number[]): number {
  return offs.length === 0 ? 0 : (offs.length / (offs.length + COMMON_SHRINK)) * median(offs);
}

/** Weight over expected beside the littermates, and the same in standard deviations. */
export function deviation(i: Innovation): { dev: number; z: number } {
  const dev = i.off - i.common;
  return { dev, z: dev / i.sd };
}

/** The level after a reading that counts. */
export function updated(at: Innovation): FilterState {
  const p = at.prediction;
  const s = p.vLevel + at.weighing;
  const kLevel = p.vLevel / s;
  const kPace = p.vBoth / s;
  return {
    ageDays: p.ageDays,
    level: p.level + at.common + kLevel * (at.off - at.common),
    pace: Math.min(PACE_LIMIT, Math.max(-PACE_LIMIT, p.pace + kPace * at.off)),
    vLevel: (1 - kLevel) * p.vLevel,
    vBoth: (1 - kLevel) * p.vBoth,
    vPace: p.vPace - kPace * p.vBoth,
  };
}

/** The level of a puppy whose reading is missing or does not count: moved along with the litter only. */
export function carried(p: Prediction, common: number): FilterState {
  return { ageDays: p.ageDays, level: p.level + common, pace: p.pace, vLevel: p.vLevel, vBoth: p.vBoth, vPace: p.vPace };
}
