/** A weight doubted while the puppy is still in the hand: against its own last weights and what its littermates did today. */

import type { LocalTime } from '../calendar/clock.ts';
import { DAY_MS, HOUR_MS } from '../calendar/durations.ts';
import type { MassUnit } from '../units/mass.ts';
import { fastestGrowth } from './curves.ts';
import type { Littermate } from './findings.ts';
import { bestGuess, type GuessKind, type Slip } from './guesses.ts';
import { historyOf, type Snapshot } from './history.ts';
import type { GrowthInput, GrowthReading } from './input.ts';
import { firstState, type Prediction, predict } from './kalman-filter.ts';
import { READING_SPREAD, weighingVariance } from './noise.ts';
import { pointsOf, type SeriesPoint } from './series.ts';

/** What is odd about a weight. Grams; `lastAt` is when the puppy was weighed before, `at` this weighing. */
export type Oddity =
  | { readonly code: 'tenth' | 'tenfold' | 'last-was'; readonly last: number; readonly lastAt: LocalTime; readonly at: LocalTime }
  | { readonly code: 'more' | 'less'; readonly by: number; readonly lastAt: LocalTime; readonly at: LocalTime }
  /** For a puppy of its age, that was never weighed before. */
  | { readonly code: 'very-light' | 'very-heavy'; readonly grams: number };

/** A slip of the hand that would explain it, else a wish; a scale makes no slips, but it may hold another puppy. */
export type Question = Slip | 'weigh-again' | 'another-puppy' | 'littermate';

export interface Doubt {
  readonly fact: Oddity;
  readonly question: Question;
  readonly guessGrams: number | null;
  readonly kind: GuessKind | 'too-high' | 'too-low' | 'other-puppy';
  /** The littermate not weighed yet that it fits, with `littermate` as the question; else null. */
  readonly littermate: Littermate | null;
}

/** Newborns of any size are within, in grams. Common practice, no source. */
const LIGHTEST_NEWBORN = 50;
const HEAVIEST_NEWBORN = 1200;
/** A first weight at a later age than this is not doubted for being heavy. */
const OPEN_FROM = 40;
const DOUBT_SDS = 4.5;
const DOUBT_FLOOR = 0.06;
/** A puppy in trouble can lose so much: asked about only beyond it. */
const LOSS_PER_DAY = 0.08;
const LOSS_AT_ONCE = 0.04;
/** Three standard deviations are shown as the expected range. */
const RANGE_SDS = 3;
/** A guess is compared with this spread at least, in log units. */
const LEAST_GUESS_SD = 0.02;

/** The weight to expect of a puppy at an instant, in grams, with its range; null before its first weight. */
export function expectedAt(
  input: GrowthInput,
  puppyId: string,
  instant: number,
): { grams: number; low: number; high: number } | null {
  const e = expectation(input, puppyId, instant);
  if (e === null) return null;
  return { grams: Math.exp(e.ln), low: Math.exp(e.ln - RANGE_SDS * e.sd), high: Math.exp(e.ln + RANGE_SDS * e.sd) };
}

/** What is doubtful about a weight that is being typed, or null. `input` is without it; `unit` is the one it is typed in, the house's when it is left out. */
export function doubtAbout(
  input: GrowthInput,
  puppyId: string,
  instant: number,
  at: LocalTime,
  grams: number,
  unit: MassUnit = input.unit,
): Doubt | null {
  const e = expectation(input, puppyId, instant);
  const born = input.puppies.find((p) => p.id === puppyId)?.bornInstant ?? instant;
  if (e === null) return firstWeightDoubt(grams, Math.max(0, (instant - born) / DAY_MS));
  const dev = Math.log(grams) - e.ln;
  const floor = Math.max(DOUBT_FLOOR, DOUBT_SDS * e.sd);
  const loss = LOSS_PER_DAY * e.days + LOSS_AT_ONCE + 2 * Math.sqrt(e.weighing);
  const odd = Math.abs(dev) > floor && (dev > 0 || -dev > loss);
  const likelier = likelierPuppy(input, puppyId, instant, grams);
  const littermate = likelier === null ? null : { puppyId: likelier.puppyId, name: likelier.name };
  if (!odd && littermate === null) return null;
  // The two numbers are the other way round: the exchange is offered, which explains both.
  if (odd && isExchanged(input, puppyId, instant, at, grams)) return null;
  const fact = comparison(grams, e.last, at);
  const guess = odd ? bestGuess(grams, e.ln, Math.max(e.sd, LEAST_GUESS_SD), unit) : null;
  if (littermate !== null && (guess === null || guess.slip === 'one-wrong'))
    return { fact, question: 'littermate', guessGrams: null, kind: 'other-puppy', littermate };
  return {
    fact,
    question: guess?.slip ?? 'weigh-again',
    guessGrams: guess?.grams ?? null,
    kind: guess?.kind ?? (dev > 0 ? 'too-high' : 'too-low'),
    littermate: null,
  };
}

/** Standard deviations that a weight is off at least, before it is asked whether it is another's; and what the other must gain on it, squared. */
const NOT_THIS_ONE = 2.8;
const THAT_ONE = 1.5;
const NOT_A_THIRD = 2.5;
const GAINED = 8;
/** Rounds of one weigh-in are nearer together. */
const SAME_ROUND = 2 * HOUR_MS;

/** A littermate that a weight fits much better, with what was expected of it and of the one in hand, in grams. */
export interface LikelierPuppy extends Littermate {
  readonly expectedGrams: number;
  readonly inHandGrams: number;
}

/** The one littermate not weighed yet in this round that a weight fits much better than the puppy in hand; null when none, or more than one does. */
export function likelierPuppy(input: GrowthInput, inHandId: string, instant: number, grams: number): LikelierPuppy | null {
  const off = (e: Expectation) => Math.abs(Math.log(grams) - e.ln) / e.sd;
  const own = expectation(input, inHandId, instant);
  if (own === null || off(own) < NOT_THIS_ONE) return null;
  const weighed = new Set(input.readings.filter((r) => Math.abs(r.instant - instant) < SAME_ROUND).map((r) => r.puppyId));
  const others = input.puppies
    .filter((p) => p.id !== inHandId && !weighed.has(p.id) && (p.endsInstant === null || p.endsInstant > instant))
    .flatMap((p) => {
      const e = expectation(input, p.id, instant);
      return e === null ? [] : [{ puppyId: p.id, name: p.name, off: off(e), expectedGrams: Math.exp(e.ln) }];
    })
    .toSorted((a, b) => a.off - b.off);
  const [best, next] = others;
  if (best === undefined || best.off > THAT_ONE || off(own) ** 2 - best.off ** 2 < GAINED) return null;
  if (next !== undefined && next.off < NOT_A_THIRD) return null;
  const { puppyId, name, expectedGrams } = best;
  return { puppyId, name, expectedGrams, inHandGrams: Math.exp(own.ln) };
}

/** Whether the weights of this round explain it as exchanged with one that was weighed already. */
function isExchanged(input: GrowthInput, puppyId: string, instant: number, at: LocalTime, grams: number): boolean {
  if (!input.readings.some((r) => r.puppyId !== puppyId && Math.abs(r.instant - instant) < SAME_ROUND)) return false;
  const reading: GrowthReading = { id: TRIAL, puppyId, at, instant, grams, session: 'morning', held: false, kept: false };
  const latest = historyOf({ ...input, readings: [...input.readings, reading] }).at(-1);
  return latest?.cleaned.sessions.some((s) => s.rows.some((r) => r.reading.id === TRIAL && r.verdict === 'exchanged')) ?? false;
}

const TRIAL = 'being-typed';

interface Expectation {
  readonly ln: number;
  readonly sd: number;
  readonly weighing: number;
  /** Over the reference's, as a share. */
  readonly pace: number;
  readonly days: number;
  readonly last: SeriesPoint;
}

/** By the weights before the instant, and where there are later ones by the next of them too: an old day is judged from both sides. */
function expectation(input: GrowthInput, puppyId: string, instant: number): Expectation | null {
  const later = input.readings.some((r) => r.puppyId === puppyId && r.instant > instant);
  if (!later) return expectationBefore(input, puppyId, instant);
  const puppy = input.puppies.find((p) => p.id === puppyId);
  const latest = historyOf(input).at(-1);
  const next = latest === undefined ? undefined : pointsOf(latest.cleaned.sessions, puppyId).find((p) => p.instant > instant);
  const before = expectationBefore({ ...input, readings: input.readings.filter((r) => r.instant < instant) }, puppyId, instant);
  if (latest === undefined || next === undefined || puppy === undefined) return before;
  const alone = input.puppies.length < 2;
  const age = Math.max(0, (instant - puppy.bornInstant) / DAY_MS);
  const weighing = weighingVariance(READING_SPREAD, next.ageDays, next.grams, latest.stepGrams);
  // The way on to the next weight, as it would be from here: taken off again it leads back.
  const way = predict(firstState(age, 0, weighing), next.ageDays, latest.reference, alone);
  const pace = before === null ? 0 : before.pace;
  const back = { ln: Math.log(next.grams) - (1 + pace) * way.gain, variance: way.vLevel + weighing + way.shared };
  const days = Math.max(0, (next.instant - instant) / DAY_MS);
  if (before === null) return { ln: back.ln, sd: Math.sqrt(back.variance), weighing, pace, days, last: next };
  const own = before.sd ** 2 - before.weighing;
  const other = back.variance - weighing;
  const share = own / (own + other);
  const variance = (own * other) / (own + other) + before.weighing;
  return { ...before, ln: before.ln + share * (back.ln - before.ln), sd: Math.sqrt(variance), days: Math.min(before.days, days) };
}

function expectationBefore(input: GrowthInput, puppyId: string, instant: number): Expectation | null {
  const latest = historyOf(input).at(-1);
  const last = latest === undefined ? undefined : pointsOf(latest.cleaned.sessions, puppyId).at(-1);
  const prediction = latest === undefined ? null : predictionOf(input, latest, puppyId, instant);
  if (latest === undefined || last === undefined || prediction === null) return null;
  const weighing = weighingVariance(READING_SPREAD, prediction.ageDays, last.grams, latest.stepGrams);
  return {
    ln: prediction.level,
    sd: Math.sqrt(prediction.vLevel + weighing + prediction.shared),
    weighing,
    pace: prediction.pace,
    days: Math.max(0, (instant - last.instant) / DAY_MS),
    last,
  };
}

/** The level carried to an instant after the last session known. */
export function predictionOf(input: GrowthInput, snapshot: Snapshot, puppyId: string, instant: number): Prediction | null {
  const index = input.puppies.findIndex((p) => p.id === puppyId);
  const level = snapshot.cleaned.steps.at(-1)?.after[index] ?? null;
  const puppy = input.puppies[index];
  if (level === null || puppy === undefined) return null;
  return predict(
    level,
    Math.max(level.ageDays, (instant - puppy.bornInstant) / DAY_MS),
    snapshot.reference,
    input.puppies.length < 2,
  );
}

function firstWeightDoubt(grams: number, ageDays: number): Doubt | null {
  const heaviest = ageDays > OPEN_FROM ? Number.POSITIVE_INFINITY : HEAVIEST_NEWBORN * fastestGrowth(ageDays);
  if (grams >= LIGHTEST_NEWBORN && grams <= heaviest) return null;
  const light = grams < LIGHTEST_NEWBORN;
  const kilo = light && grams * 1000 >= LIGHTEST_NEWBORN && grams * 1000 <= heaviest;
  return {
    fact: { code: light ? 'very-light' : 'very-heavy', grams },
    question: kilo ? 'kilograms-meant' : 'weigh-again',
    guessGrams: kilo ? Math.round(grams * 10_000) / 10 : null,
    kind: kilo ? 'kilo' : light ? 'too-low' : 'too-high',
    littermate: null,
  };
}

function comparison(grams: number, last: Pick<SeriesPoint, 'grams' | 'at'>, at: LocalTime): Oddity {
  const ratio = grams / last.grams;
  const before = { last: last.grams, lastAt: last.at, at };
  if (ratio > 0.07 && ratio < 0.14) return { code: 'tenth', ...before };
  if (ratio > 7 && ratio < 14) return { code: 'tenfold', ...before };
  if (ratio < 0.01 || ratio > 100) return { code: 'last-was', ...before };
  return { code: grams > last.grams ? 'more' : 'less', by: Math.abs(grams - last.grams), lastAt: last.at, at };
}
