/** What the weights say about each puppy and about the litter: a level and a finding. */

import type { LocalTime } from '../calendar/clock.ts';
import { DAY_MS } from '../calendar/durations.ts';
import { median } from '../statistics/median.ts';
import { veryLowBelow } from './birth-class.ts';
import { findingsIn, type ReadingFinding } from './findings.ts';
import { firstDaysGrowth, hasLost4 } from './first-days.ts';
import { birthOf, historyOf, type PuppyTrack, type Snapshot } from './history.ts';
import type { GrowthInput, GrowthPuppy } from './input.ts';
import { predict } from './kalman-filter.ts';
import { type Level, puppyMarks } from './levels.ts';
import { tooCoarse } from './noise.ts';
import {
  bornSmall,
  type LitterFinding,
  type LitterTodo,
  litterTodo,
  type PuppyFinding,
  type PuppyTodo,
  puppyTodo,
  shortGain,
} from './puppy-findings.ts';
import { gainsBack, pointsOf, type SeriesPoint, type Standing, standingsIn } from './series.ts';

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
  readonly medianGrams: number | null;
  /** Per day, over about the last 24 hours. */
  readonly gain: { readonly grams: number; readonly percent: number; readonly hours: number } | null;
  /** Grams per day: for a steady puppy at its own pace, else what was expected since the trouble began. */
  readonly expectedGain: number | null;
  readonly finding: PuppyFinding;
  readonly todo: readonly PuppyTodo[];
  readonly weighAgainHours: number | null;
  /** Grams to expect 24 hours after the last weight. */
  readonly expectedNext: number | null;
}

export interface LitterAssessment {
  readonly level: Level;
  readonly since: LocalTime | null;
  readonly score: number;
  readonly finding: LitterFinding;
  readonly todo: readonly LitterTodo[];
}

export interface LitterGrowth {
  readonly puppies: ReadonlyMap<string, Assessment>;
  readonly litter: LitterAssessment;
  readonly findings: readonly ReadingFinding[];
  /** Middle of the last weights of those in the house. */
  readonly medianGrams: number | null;
  /** What the scale moves by, in grams, when that is too coarse for early signs at these weights; else null. */
  readonly coarseStepGrams: number | null;
}

const WATCH_HOURS = 12;
const ACT_HOURS = 6;
/** A smaller change of standing than this is keeping one's place. */
const SAME_PLACE = 0.04;
/** A loss over less is told in grams, not by the day. */
const PER_DAY_FROM = 0.75;
/** Grams a day: of less nothing can be missing. */
const LEAST_EXPECTED = 1;
/** A whole litter that lacks less of its gain is not told. */
const LITTER_LACKS = 0.2;
/** Until this age it may be a late starter. */
const LATE_STARTER_DAYS = 4;

/** As known after the last reading. */
export function assessLitter(input: GrowthInput): LitterGrowth {
  const latest = historyOf(input).at(-1);
  return latest === undefined ? nothingWeighed(input) : growthAt(input, latest);
}

/** As known after one session of the history. */
export function growthAt(input: GrowthInput, snapshot: Snapshot): LitterGrowth {
  const now = snapshot.cleaned.sessions.at(-1)?.rows.at(-1)?.reading.at;
  if (now === undefined) return nothingWeighed(input);
  const smallest = smallestOf(input, snapshot);
  const puppies = new Map(input.puppies.map((p, i) => [p.id, assessPuppy(input, snapshot, p, i, smallest)]));
  const weights = input.puppies.flatMap((p) => (p.endsInstant === null ? (puppies.get(p.id)?.grams ?? []) : []));
  return {
    puppies,
    litter: assessTogether(snapshot, now),
    findings: findingsIn(snapshot.cleaned, now, input.puppies),
    medianGrams: weights.length === 0 ? null : median(weights),
    coarseStepGrams: weights.length > 0 && tooCoarse(median(weights), snapshot.stepGrams) ? snapshot.stepGrams : null,
  };
}

function nothingWeighed(input: GrowthInput): LitterGrowth {
  return {
    puppies: new Map(input.puppies.map((p) => [p.id, unweighed(p)])),
    litter: { level: 'steady', since: null, score: 0, finding: { code: 'nobody-weighed' }, todo: [] },
    findings: [],
    medianGrams: null,
    coarseStepGrams: null,
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
    medianGrams: null,
    gain: null,
    expectedGain: null,
    finding: { code: 'not-weighed' },
    todo: [],
    weighAgainHours: null,
    expectedNext: null,
  };
}

function assessPuppy(
  input: GrowthInput,
  snapshot: Snapshot,
  puppy: GrowthPuppy,
  index: number,
  smallest: string | null,
): Assessment {
  const track = snapshot.puppies[index];
  const points = pointsOf(snapshot.cleaned.sessions, puppy.id);
  const last = points.at(-1);
  if (track === undefined || last === undefined) return unweighed(puppy);
  const standings = standingsIn(snapshot.cleaned, input.puppies, puppy.id);
  const standing = standings.at(-1)?.instant === last.instant ? (standings.at(-1)?.standing ?? null) : null;
  const earlier = standing === null ? null : twoDaysBefore(standings, last.instant);
  const gone = puppy.state === 'died' || puppy.state === 'home';
  const level = gone ? 'steady' : track.level;
  const trouble = level === 'steady' ? null : troubleSince(snapshot, track, points, last);
  const own = ownPace(input, snapshot, index, last);
  const facts = {
    puppyId: puppy.id,
    level,
    score: track.found?.score ?? 0,
    grams: last.grams,
    at: last.at,
    standing,
    standingBefore: earlier?.standing ?? null,
    beforeAt: earlier?.at ?? null,
    medianGrams: standing === null ? null : last.grams / Math.exp(standing),
    gain: gainsBack(points),
    expectedNext: own === null ? null : last.grams + own,
  };
  if (level === 'steady') {
    const finding: PuppyFinding = gone
      ? { code: 'left' }
      : steadyFinding(puppy, points, standings, facts.gain?.grams ?? null, smallest);
    return { ...facts, since: null, shortfall: null, expectedGain: own, finding, todo: [], weighAgainHours: null };
  }
  return {
    ...facts,
    since: trouble?.from.at ?? points[0]?.at ?? null,
    shortfall: track.found?.shortfall ?? null,
    expectedGain: trouble?.expected ?? own,
    finding: troubleFinding(input, snapshot, puppy, track, last, trouble),
    todo: puppyTodo(level, last.ageDays, Math.floor(last.ageDays) <= LATE_STARTER_DAYS),
    weighAgainHours: level === 'act' ? ACT_HOURS : WATCH_HOURS,
  };
}

interface Trouble {
  readonly from: SeriesPoint;
  /** Grams per day since then. */
  readonly actual: number;
  readonly expected: number;
  readonly days: number;
  /** Grams from the weight before the last to the last. */
  readonly lastStep: number;
}

/** Gains since the last good weighing: what they were and what reference and littermates let expect. */
function troubleSince(snapshot: Snapshot, track: PuppyTrack, points: readonly SeriesPoint[], last: SeriesPoint): Trouble | null {
  const session = track.start === null ? undefined : snapshot.cleaned.sessions[track.start];
  const from = session === undefined ? undefined : points.find((p) => session.rows.some((r) => r.reading.id === p.readingId));
  if (from === undefined || track.found === null || last.instant <= from.instant) return null;
  const days = (last.instant - from.instant) / DAY_MS;
  const gain = snapshot.reference.since(last.ageDays) - snapshot.reference.since(from.ageDays) + track.found.littermatesMoved;
  return {
    from,
    actual: (last.grams - from.grams) / days,
    expected: Math.max(0, (from.grams * (Math.exp(gain) - 1)) / days),
    days,
    lastStep: last.grams - (points.at(-2)?.grams ?? last.grams),
  };
}

function troubleFinding(
  input: GrowthInput,
  snapshot: Snapshot,
  puppy: GrowthPuppy,
  track: PuppyTrack,
  last: SeriesPoint,
  trouble: Trouble | null,
): PuppyFinding {
  const { sex } = puppy;
  const byScore = (track.found?.score ?? 0) >= puppyMarks(input.puppies.length).watch;
  const birth = birthOf(snapshot.cleaned.sessions, puppy);
  if (track.rule !== 'steady' && birth !== null && (!byScore || trouble === null)) {
    if (!hasLost4(birth, last.grams, snapshot.stepGrams)) {
      return bornSmall(birth, veryLowBelow(input.breed ?? '', input.breedBirthGrams ?? null));
    }
    const percent = Math.floor(-firstDaysGrowth(birth, last.grams));
    return { code: 'under-birth-weight', grams: last.grams, birth, percent };
  }
  if (trouble === null) return { code: 'not-as-expected' };
  const { actual, expected, days, lastStep } = trouble;
  const times = { since: trouble.from.at, at: last.at };
  const isShort = actual < expected && expected >= LEAST_EXPECTED;
  // Nothing is made good that was never said, and nothing gains while its last weight is no more than the one before.
  if ((!byScore || !isShort) && track.wasFlagged && lastStep > 0 && actual > 0)
    return { code: 'gaining-again', sex, ...times, actual };
  if (actual < 0 && (days < PER_DAY_FROM || !isShort))
    return { code: 'lost', sex, ...times, grams: last.grams - trouble.from.grams };
  if (!isShort) return { code: 'not-as-expected' };
  return { ...shortGain({ ...times, actual, expected }), sex };
}

function steadyFinding(
  puppy: GrowthPuppy,
  points: readonly SeriesPoint[],
  standings: readonly Standing[],
  gain: number | null,
  smallest: string | null,
): PuppyFinding {
  if (points.length < 2 || gain === null) return { code: 'weighed-once' };
  const days = daysInPlace(standings);
  if (puppy.id === smallest && days >= 3) return { code: 'smallest-in-place', name: puppy.name, sex: puppy.sex, days };
  return { code: 'steady-gain', gain, standing: standings.at(-1)?.standing ?? null };
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
  return Math.floor((last.instant - from) / DAY_MS + 0.1);
}

/** Who is lightest of those in the house, by their last weights; null in litters of one or two. */
function smallestOf(input: GrowthInput, snapshot: Snapshot): string | null {
  const here = input.puppies.flatMap((p) => {
    const last = p.endsInstant === null ? pointsOf(snapshot.cleaned.sessions, p.id).at(-1) : undefined;
    return last === undefined ? [] : [{ id: p.id, grams: last.grams }];
  });
  return here.length < 3 ? null : here.reduce((a, b) => (b.grams < a.grams ? b : a)).id;
}

/** The standing nearest to 48 hours before, from 30 to 75 hours. */
function twoDaysBefore(standings: readonly Standing[], instant: number): Standing | null {
  let best: Standing | null = null;
  const off = (s: Standing) => Math.abs(instant - s.instant - 2 * DAY_MS);
  for (const s of standings) {
    const days = (instant - s.instant) / DAY_MS;
    if (days >= 1.25 && days <= 3.125 && (best === null || off(s) < off(best))) best = s;
  }
  return best;
}

/** Grams that the puppy's own pace gives in the 24 hours after its last weight. */
function ownPace(input: GrowthInput, snapshot: Snapshot, index: number, last: SeriesPoint): number | null {
  const level = snapshot.cleaned.steps.at(-1)?.after[index] ?? null;
  if (level === null) return null;
  const from = { ...level, ageDays: last.ageDays };
  const alone = input.puppies.length < 2;
  return last.grams * (Math.exp(predict(from, last.ageDays + 1, snapshot.reference, alone).level - level.level) - 1);
}

function assessTogether(snapshot: Snapshot, now: LocalTime): LitterAssessment {
  const { level, found, start, wasFlagged } = snapshot.litter;
  const { score } = found;
  const steady: LitterAssessment = { level: 'steady', since: null, score, finding: { code: 'growing' }, todo: [] };
  if (level === 'steady') return steady;
  const from = start === null ? undefined : snapshot.cleaned.sessions[start];
  const gains =
    from === undefined
      ? null
      : medianGains(
          snapshot,
          from.rows.map((r) => r.puppy.id),
          from.instant,
        );
  const since = from?.rows.find((r) => r.used !== null)?.reading.at ?? null;
  const lacks =
    since !== null && gains !== null && gains.expected >= LEAST_EXPECTED && gains.actual < (1 - LITTER_LACKS) * gains.expected;
  if (!lacks && (!wasFlagged || gains === null || gains.actual <= 0)) return steady;
  const finding: LitterFinding = lacks ? shortGain({ since, at: now, ...gains }) : { code: 'gaining-again' };
  return { level, since, score, finding, todo: litterTodo(level) };
}

/** Middle gains of the puppies in grams per day since an instant, and by the reference. */
function medianGains(snapshot: Snapshot, ids: readonly string[], since: number): { actual: number; expected: number } | null {
  const pairs = ids.flatMap((id) => {
    const points = pointsOf(snapshot.cleaned.sessions, id);
    const [from, to] = [points.find((p) => p.instant >= since - DAY_MS / 4), points.at(-1)];
    if (from === undefined || to === undefined || to.instant <= from.instant) return [];
    const days = (to.instant - from.instant) / DAY_MS;
    const gain = snapshot.reference.since(to.ageDays) - snapshot.reference.since(from.ageDays);
    return [{ actual: (to.grams - from.grams) / days, expected: (from.grams * (Math.exp(gain) - 1)) / days }];
  });
  if (pairs.length === 0) return null;
  return { actual: median(pairs.map((p) => p.actual)), expected: median(pairs.map((p) => p.expected)) };
}
