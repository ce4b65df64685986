/** What the weights say about each puppy and about the litter, in a level and in words. */
import { dateOf, type LocalTime } from '../calendar/clock.ts';
import { addDays, type CivilDate } from '../calendar/day.ts';
import { middle } from '../statistics/median.ts';
import { type MassUnit, massText } from '../units/mass.ts';
import { deathsToDay21, type VeryLow, veryLowBelow } from './birth-class.ts';
import { findingsIn, type ReadingFinding } from './findings.ts';
import { firstDaysGrowth, hasLost4 } from './first-days.ts';
import { birthOf, historyOf, type PuppyTrack, type Snapshot } from './history.ts';
import type { GrowthInput, GrowthPuppy } from './input.ts';
import { predict } from './kalman-filter.ts';
import { type Level, puppyMarks } from './levels.ts';
import { tooCoarse } from './noise.ts';
import { gainsBack, pointsOf, type SeriesPoint, type Standing, standingsIn } from './series.ts';
import { DAY } from './sessions.ts';
import {
  coarseScale,
  daysInWords,
  gainText,
  lateStarterNote,
  lessGain,
  litterTodo,
  pronouns,
  puppyTodo,
  sinceWhen,
  standingText,
} from './words.ts';

export type { ReadingFinding } from './findings.ts';
export type { Level } from './levels.ts';

/** Grams, days, local times; ln units for score and standing. */
export interface Assessment {
  readonly puppyId: string;
  readonly level: Level;
  /** The last good weighing before the trouble; null when steady. */
  readonly since: LocalTime | null;
  readonly score: number;
  /** Share of the expected gain that is missing; over 1 it loses weight; null when steady. */
  readonly shortfall: number | null;
  /** Last weight that counts. */
  readonly grams: number | null;
  readonly at: LocalTime | null;
  /** ln(weight / littermates' middle) at that weight. */
  readonly standing: number | null;
  /** The same about two days earlier. */
  readonly standingBefore: number | null;
  readonly beforeAt: LocalTime | null;
  readonly middleGrams: number | null;
  /** Per day, over about the last 24 hours. */
  readonly gain: { readonly grams: number; readonly percent: number; readonly hours: number } | null;
  /** Grams per day: for a steady puppy at its own pace, else what was expected since the trouble began. */
  readonly expectedGain: number | null;
  readonly sentence: string;
  readonly todo: string[];
  readonly weighAgainHours: number | null;
  /** Grams to expect 24 hours after the last weight. */
  readonly expectedNext: number | null;
}

export interface LitterAssessment {
  readonly level: Level;
  readonly since: LocalTime | null;
  readonly score: number;
  readonly sentence: string;
  readonly todo: string[];
}

export interface LitterGrowth {
  readonly puppies: ReadonlyMap<string, Assessment>;
  readonly litter: LitterAssessment;
  readonly findings: readonly ReadingFinding[];
  /** Middle of the last weights of those in the house. */
  readonly middleGrams: number | null;
  /** A sentence when the scale is too coarse for early signs at these weights; else null. */
  readonly scaleNote: string | null;
}

const WATCH_HOURS = 12;
const ACT_HOURS = 6;
/** A smaller change of standing than this is keeping one's place. */
const SAME_PLACE = 0.04;

/** As known after the last reading. Sentences are in `unit`. */
export function assessLitter(input: GrowthInput, unit: MassUnit = 'g'): LitterGrowth {
  const known = historyOf(input).at(-1);
  return known === undefined ? nothingKnown(input) : growthAsKnown(input, known, unit);
}

/** As known after one session of the history. */
export function growthAsKnown(input: GrowthInput, known: Snapshot, unit: MassUnit): LitterGrowth {
  const now = known.cleaned.sessions.at(-1)?.rows.at(-1)?.reading.at;
  if (now === undefined) return nothingKnown(input);
  const smallest = smallestOf(input, known);
  const puppies = new Map(input.puppies.map((p, i) => [p.id, assessPuppy(input, known, p, i, smallest, unit)]));
  const weights = input.puppies.flatMap((p) => (p.endsInstant === null ? (puppies.get(p.id)?.grams ?? []) : []));
  return {
    puppies,
    litter: assessWhole(known, now, unit),
    findings: findingsIn(known.cleaned, now, unit),
    middleGrams: weights.length === 0 ? null : middle(weights),
    scaleNote: weights.length > 0 && tooCoarse(middle(weights), known.stepGrams) ? coarseScale(known.stepGrams, unit) : null,
  };
}

function nothingKnown(input: GrowthInput): LitterGrowth {
  return {
    puppies: new Map(input.puppies.map((p) => [p.id, unweighed(p)])),
    litter: { level: 'steady', since: null, score: 0, sentence: 'Nobody has been weighed yet.', todo: [] },
    findings: [],
    middleGrams: null,
    scaleNote: null,
  };
}

function unweighed(p: GrowthPuppy): Assessment {
  return {
    puppyId: p.id,
    level: 'steady',
    since: null,
    score: 0,
    shortfall: null,
    grams: null,
    at: null,
    standing: null,
    standingBefore: null,
    beforeAt: null,
    middleGrams: null,
    gain: null,
    expectedGain: null,
    sentence: 'Not weighed yet.',
    todo: [],
    weighAgainHours: null,
    expectedNext: null,
  };
}

function assessPuppy(
  input: GrowthInput,
  known: Snapshot,
  puppy: GrowthPuppy,
  index: number,
  smallest: string | null,
  unit: MassUnit,
): Assessment {
  const track = known.puppies[index];
  const points = pointsOf(known.cleaned.sessions, puppy.id);
  const last = points.at(-1);
  if (track === undefined || last === undefined) return unweighed(puppy);
  const standings = standingsIn(known.cleaned, input.puppies, puppy.id);
  const standing = standings.at(-1)?.instant === last.instant ? (standings.at(-1)?.standing ?? null) : null;
  const earlier = standing === null ? null : twoDaysBefore(standings, last.instant);
  const gone = puppy.state === 'died' || puppy.state === 'home';
  const level = gone ? 'steady' : track.level;
  const trouble = level === 'steady' ? null : troubleSince(known, track, points, last);
  const own = ownPace(input, known, index, last);
  const facts = {
    puppyId: puppy.id,
    level,
    score: track.found?.score ?? 0,
    grams: last.grams,
    at: last.at,
    standing,
    standingBefore: earlier?.standing ?? null,
    beforeAt: earlier?.at ?? null,
    middleGrams: standing === null ? null : last.grams / Math.exp(standing),
    gain: gainsBack(points),
    expectedNext: own === null ? null : last.grams + own,
  };
  if (level === 'steady') {
    const sentence = gone
      ? 'No longer weighed here.'
      : steadySentence(puppy, points, standings, facts.gain?.grams ?? null, smallest, unit);
    return { ...facts, since: null, shortfall: null, expectedGain: own, sentence, todo: [], weighAgainHours: null };
  }
  const p = pronouns(puppy.sex);
  return {
    ...facts,
    since: trouble?.from.at ?? points[0]?.at ?? null,
    shortfall: track.found?.shortfall ?? null,
    expectedGain: trouble?.expected ?? own,
    sentence: troubleSentence(input, known, puppy, track, last, trouble, unit),
    todo: puppyTodo(level, p, last.ageDays),
    weighAgainHours: level === 'act' ? ACT_HOURS : WATCH_HOURS,
  };
}

interface Trouble {
  readonly from: SeriesPoint;
  /** Grams per day since then. */
  readonly actual: number;
  readonly expected: number;
}

/** Gains since the last good weighing: what they were and what reference and littermates let expect. */
function troubleSince(known: Snapshot, track: PuppyTrack, points: readonly SeriesPoint[], last: SeriesPoint): Trouble | null {
  const session = track.start === null ? undefined : known.cleaned.sessions[track.start];
  const from = session === undefined ? undefined : points.find((p) => session.rows.some((r) => r.reading.id === p.readingId));
  if (from === undefined || track.found === null || last.instant <= from.instant) return null;
  const days = (last.instant - from.instant) / DAY;
  const gain = known.reference.since(last.ageDays) - known.reference.since(from.ageDays) + track.found.littermatesMoved;
  return { from, actual: (last.grams - from.grams) / days, expected: Math.max(0, (from.grams * (Math.exp(gain) - 1)) / days) };
}

function troubleSentence(
  input: GrowthInput,
  known: Snapshot,
  puppy: GrowthPuppy,
  track: PuppyTrack,
  last: SeriesPoint,
  trouble: Trouble | null,
  unit: MassUnit,
): string {
  const byScore = (track.found?.score ?? 0) >= puppyMarks(input.puppies.length).watch;
  const birth = birthOf(known.cleaned.sessions, puppy);
  if (track.rule !== 'steady' && birth !== null && (!byScore || trouble === null)) {
    if (!hasLost4(birth, last.grams, known.stepGrams)) {
      return bornSmallSentence(birth, veryLowBelow(input.breed ?? '', input.breedBirthGrams ?? null), unit);
    }
    const percent = Math.floor(-firstDaysGrowth(birth, last.grams));
    return `${massText(last.grams, unit)} is ${percent}\u00a0% under the birth weight of ${massText(birth, unit)}.${lateNote(last)}`;
  }
  if (trouble === null) return 'Not gaining as expected.';
  const since = sinceWhen(trouble.from.at, last.at);
  if (!byScore || trouble.actual >= trouble.expected) {
    return `Gaining again, but not yet back where ${pronouns(puppy.sex).subject} was: ${gainText(trouble.actual, unit)} a day since ${since}.`;
  }
  return `${lessGain(since, trouble.actual, trouble.expected, unit, `${pronouns(puppy.sex).subject} has been`)}${lateNote(last)}`;
}

/** The published deaths are for the explanation; the level asks only for a closer look. Without published ones none are told. */
function bornSmallSentence(birth: number, veryLow: VeryLow | null, unit: MassUnit): string {
  const told = `${massText(birth, unit)} at birth is very little`;
  if (veryLow === null) return `${told}.`;
  if (veryLow.by !== 'thresholds') {
    return `${told} for the breed (under two thirds of the usual ${massText(veryLow.mean, unit)}).`;
  }
  const percent = Math.round(deathsToDay21('very-low', veryLow.breed));
  return `${told} for the breed (under ${massText(veryLow.below, unit)}). In one study ${percent}\u00a0% of such puppies were lost by day 21.`;
}

function lateNote(last: SeriesPoint): string {
  const on = dateOf(last.at);
  const born: CivilDate = addDays(on, -Math.floor(last.ageDays));
  return lateStarterNote(born, on);
}

function steadySentence(
  puppy: GrowthPuppy,
  points: readonly SeriesPoint[],
  standings: readonly Standing[],
  gain: number | null,
  smallest: string | null,
  unit: MassUnit,
): string {
  if (points.length < 2 || gain === null) return 'Weighed once; gains show from the next weight on.';
  const same = daysInPlace(standings);
  if (puppy.id === smallest && same >= 3) {
    return `${puppy.name} is the smallest and has kept ${pronouns(puppy.sex).possessive} place for ${daysInWords(same)}.`;
  }
  const place = standings.at(-1);
  const where = place === undefined ? '' : `, ${standingText(place.standing)}`;
  if (gain < 0) return `Down ${gainText(gain, unit)} a day${where}; nothing unusual yet.`;
  return `${gainText(gain, unit)} a day${where}.`;
}

/** Whole days for which the standing has stayed where it is now. */
function daysInPlace(standings: readonly Standing[]): number {
  const last = standings.at(-1);
  if (last === undefined) return 0;
  let from = last.instant;
  for (let i = standings.length - 1; i >= 0; i -= 1) {
    const s = standings[i];
    if (s === undefined || Math.abs(s.standing - last.standing) > SAME_PLACE) break;
    from = s.instant;
  }
  return Math.floor((last.instant - from) / DAY + 0.1);
}

/** Who is lightest of those in the house, by their last weights; null in litters of one or two. */
function smallestOf(input: GrowthInput, known: Snapshot): string | null {
  const here = input.puppies.flatMap((p) => {
    const last = p.endsInstant === null ? pointsOf(known.cleaned.sessions, p.id).at(-1) : undefined;
    return last === undefined ? [] : [{ id: p.id, grams: last.grams }];
  });
  return here.length < 3 ? null : here.reduce((a, b) => (b.grams < a.grams ? b : a)).id;
}

/** The standing nearest to 48 hours before, from 30 to 75 hours. */
function twoDaysBefore(standings: readonly Standing[], instant: number): Standing | null {
  let best: Standing | null = null;
  const off = (s: Standing) => Math.abs(instant - s.instant - 2 * DAY);
  for (const s of standings) {
    const days = (instant - s.instant) / DAY;
    if (days >= 1.25 && days <= 3.125 && (best === null || off(s) < off(best))) best = s;
  }
  return best;
}

/** Grams that the puppy's own pace gives in the 24 hours after its last weight. */
function ownPace(input: GrowthInput, known: Snapshot, index: number, last: SeriesPoint): number | null {
  const level = known.cleaned.steps.at(-1)?.after[index] ?? null;
  if (level === null) return null;
  const from = { ...level, ageDays: last.ageDays };
  const alone = input.puppies.length < 2;
  return last.grams * (Math.exp(predict(from, last.ageDays + 1, known.reference, alone).level - level.level) - 1);
}

function assessWhole(known: Snapshot, now: LocalTime, unit: MassUnit): LitterAssessment {
  const { level, found, start } = known.litter;
  if (level === 'steady')
    return { level, since: null, score: found.score, sentence: 'The litter is growing as expected.', todo: [] };
  const from = start === null ? undefined : known.cleaned.sessions[start];
  const gains =
    from === undefined
      ? null
      : middleGains(
          known,
          from.rows.map((r) => r.puppy.id),
          from.instant,
        );
  const since = from?.rows.find((r) => r.used !== null)?.reading.at ?? null;
  const sentence =
    since === null || gains === null || gains.actual >= gains.expected
      ? 'The whole litter is gaining again, but is not yet back where it was.'
      : `The whole litter. ${lessGain(sinceWhen(since, now), gains.actual, gains.expected, unit, 'the puppies have each been')}`;
  return { level, since, score: found.score, sentence, todo: litterTodo(level) };
}

/** Middle gains of the puppies in grams per day since an instant, and by the reference. */
function middleGains(known: Snapshot, ids: readonly string[], since: number): { actual: number; expected: number } | null {
  const pairs = ids.flatMap((id) => {
    const points = pointsOf(known.cleaned.sessions, id);
    const [from, to] = [points.find((p) => p.instant >= since - DAY / 4), points.at(-1)];
    if (from === undefined || to === undefined || to.instant <= from.instant) return [];
    const days = (to.instant - from.instant) / DAY;
    const gain = known.reference.since(to.ageDays) - known.reference.since(from.ageDays);
    return [{ actual: (to.grams - from.grams) / days, expected: (from.grams * (Math.exp(gain) - 1)) / days }];
  });
  if (pairs.length === 0) return null;
  return { actual: middle(pairs.map((p) => p.actual)), expected: middle(pairs.map((p) => p.expected)) };
}
