/** A weight doubted while the puppy is still in the hand: against its own last weights and what its littermates did today. */
import type { LocalTime } from '../calendar/clock.ts';
import { type MassUnit, massText } from '../units/mass.ts';
import { mostGrowth } from './curves.ts';
import { bestGuess, type GuessKind } from './guesses.ts';
import { historyOf, type Snapshot } from './history.ts';
import type { GrowthInput } from './input.ts';
import { type Prediction, predict } from './kalman-filter.ts';
import { READING_SPREAD, weighingVariance } from './noise.ts';
import { pointsOf, type SeriesPoint } from './series.ts';
import { DAY } from './sessions.ts';
import { whenBefore, whenBeforeOwner } from './words.ts';

export interface Doubt {
  /** "607 g more than yesterday." */
  readonly fact: string;
  /** "Two figures changed places?", or a wish to weigh again when no slip explains it. */
  readonly question: string;
  readonly guessGrams: number | null;
  readonly kind: GuessKind | 'too-high' | 'too-low';
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
const AGAIN = 'Please weigh again.';
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

/** What is doubtful about a weight that is being typed, or null. `input` is without it; sentences are in `unit`. */
export function doubtAbout(
  input: GrowthInput,
  puppyId: string,
  instant: number,
  at: LocalTime,
  grams: number,
  unit: MassUnit = 'g',
): Doubt | null {
  const e = expectation(input, puppyId, instant);
  const born = input.puppies.find((p) => p.id === puppyId)?.bornInstant ?? instant;
  if (e === null) return firstWeightDoubt(grams, Math.max(0, (instant - born) / DAY), unit);
  const dev = Math.log(grams) - e.ln;
  const floor = Math.max(DOUBT_FLOOR, DOUBT_SDS * e.sd);
  const loss = LOSS_PER_DAY * e.days + LOSS_AT_ONCE + 2 * Math.sqrt(e.weighing);
  if (Math.abs(dev) <= floor || (dev < 0 && -dev <= loss)) return null;
  const guess = bestGuess(grams, e.ln, Math.max(e.sd, LEAST_GUESS_SD), unit);
  return {
    fact: comparison(grams, e.last, at, unit),
    question: guess?.question ?? AGAIN,
    guessGrams: guess?.grams ?? null,
    kind: guess?.kind ?? (dev > 0 ? 'too-high' : 'too-low'),
  };
}

interface Expectation {
  readonly ln: number;
  readonly sd: number;
  readonly weighing: number;
  readonly days: number;
  readonly last: SeriesPoint;
}

function expectation(input: GrowthInput, puppyId: string, instant: number): Expectation | null {
  const known = historyOf(input).at(-1);
  const last = known === undefined ? undefined : pointsOf(known.cleaned.sessions, puppyId).at(-1);
  const prediction = known === undefined ? null : predictionOf(input, known, puppyId, instant);
  if (known === undefined || last === undefined || prediction === null) return null;
  const weighing = weighingVariance(READING_SPREAD, prediction.ageDays, last.grams, known.stepGrams);
  return {
    ln: prediction.level,
    sd: Math.sqrt(prediction.vLevel + weighing + prediction.shared),
    weighing,
    days: Math.max(0, (instant - last.instant) / DAY),
    last,
  };
}

/** The level carried to an instant after the last session known. */
export function predictionOf(input: GrowthInput, known: Snapshot, puppyId: string, instant: number): Prediction | null {
  const index = input.puppies.findIndex((p) => p.id === puppyId);
  const level = known.cleaned.steps.at(-1)?.after[index] ?? null;
  const puppy = input.puppies[index];
  if (level === null || puppy === undefined) return null;
  return predict(level, Math.max(level.ageDays, (instant - puppy.bornInstant) / DAY), known.reference, input.puppies.length < 2);
}

function firstWeightDoubt(grams: number, ageDays: number, unit: MassUnit): Doubt | null {
  const most = ageDays > OPEN_FROM ? Number.POSITIVE_INFINITY : HEAVIEST_NEWBORN * mostGrowth(ageDays);
  if (grams >= LIGHTEST_NEWBORN && grams <= most) return null;
  const light = grams < LIGHTEST_NEWBORN;
  const kilo = light && grams * 1000 >= LIGHTEST_NEWBORN && grams * 1000 <= most;
  return {
    fact: `${massText(grams, unit)} is very ${light ? 'light' : 'heavy'} for a puppy of this age.`,
    question: kilo ? 'Kilograms, not grams?' : AGAIN,
    guessGrams: kilo ? Math.round(grams * 10_000) / 10 : null,
    kind: kilo ? 'kilo' : light ? 'too-low' : 'too-high',
  };
}

/** "607 g more than yesterday.", "A tenth of yesterday's 2 240 g." */
export function comparison(grams: number, last: Pick<SeriesPoint, 'grams' | 'at'>, at: LocalTime, unit: MassUnit): string {
  const ratio = grams / last.grams;
  const owner = whenBeforeOwner(last.at, at);
  if (ratio > 0.07 && ratio < 0.14) return `A tenth of ${owner} ${massText(last.grams, unit)}.`;
  if (ratio > 7 && ratio < 14) return `Ten times ${owner} ${massText(last.grams, unit)}.`;
  if (ratio < 0.01 || ratio > 100)
    return `${owner.charAt(0).toUpperCase()}${owner.slice(1)} weight was ${massText(last.grams, unit)}.`;
  return `${massText(Math.abs(grams - last.grams), unit)} ${grams > last.grams ? 'more' : 'less'} than ${whenBefore(last.at, at)}.`;
}
