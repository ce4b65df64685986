/**
 * A litter's history: what was known after each weighing session, one session after another and never looking ahead. What was
 * said yesterday is not rewritten; later sessions only add to the history.
 */
import type { SizeClass } from '../reference/classes.ts';
import { median } from '../statistics/median.ts';
import { type VeryLow, veryLowBelow } from './birth-class.ts';
import { firstDaysLevel } from './first-days.ts';
import type { GrowthInput, GrowthPuppy } from './input.ts';
import { type Level, LITTER_MARKS, levelAfter, type Marks, puppyMarks, worse } from './levels.ts';
import { inferredStep } from './noise.ts';
import { NO_SUMS, type NoiseFactors, type NoiseSums, noiseFactors, withRise } from './noise-estimate.ts';
import type { CleanRow, CleanSession } from './outliers/draft.ts';
import { type Cleaned, cleanNext, NOTHING_CLEANED } from './outliers/reading-outliers.ts';
import { type LitterStart, type ReferenceGain, referenceGain, USUAL_START } from './reference-gain.ts';
import { fitStart, START_DAYS } from './scoring/litter-start.ts';
import { firstWithin, LITTER_WINDOW_DAYS, PUPPY_WINDOW_DAYS, type Window, windowOf } from './scoring/littermates-path.ts';
import { type PuppyScore, scorePuppy } from './scoring/one-puppy.ts';
import { NO_SCORE, type Score } from './scoring/score.ts';
import { scoreLitter } from './scoring/whole-litter.ts';
import { AT_BIRTH_DAYS, sessionsOf, type WeighSession } from './sessions.ts';
import { thinned } from './thinning.ts';

/** What is known of one puppy after a session. */
export interface PuppyTrack {
  readonly level: Level;
  /** Whether it stood at watch or act already at its weighing before. */
  readonly wasFlagged: boolean;
  /** What the first-days rules say; part of the level. */
  readonly rule: Level;
  readonly found: PuppyScore | null;
  /** The session of its last good weighing before the trouble, and of its last weight that counts; null without one. */
  readonly start: number | null;
  readonly last: number | null;
}

export interface LitterTrack {
  readonly level: Level;
  readonly wasFlagged: boolean;
  readonly found: Score;
  readonly start: number | null;
}

export interface Snapshot {
  readonly cleaned: Cleaned;
  /** How the litter starts, as far as it shows. */
  readonly start: LitterStart;
  readonly reference: ReferenceGain;
  readonly stepGrams: number;
  readonly puppies: readonly PuppyTrack[];
  readonly litter: LitterTrack;
  readonly rises: NoiseSums;
}

/** Mila et al 2015: four in five puppies lost by day two were light at birth (second-hand). */
const BORN_SMALL_DAYS = 2;
/** A littermate in trouble is no measure for the others. */
const NO_MEASURE = 1.8;
const LEAST_LITTER_SHORTFALL = 0.2;
/** Weights that the scale's step is read off: the latest. */
const STEP_READINGS = 60;
const USUAL_BIRTH: Readonly<Record<SizeClass, number>> = { toy: 150, small: 200, medium: 290, large: 430, giant: 560 };

/** What was known after each session, oldest first. */
export function historyOf(input: GrowthInput): readonly Snapshot[] {
  const sessions = sessionsOf({ ...input, readings: thinned(input.readings) });
  const keys = sessions.map(keyOf);
  const ground = JSON.stringify([input.puppies, input.scaleStepGrams, input.sizeClass, input.breed, input.breedBirthGrams]);
  const before = REMEMBERED.find((r) => r.ground === ground && r.keys[0] === keys[0]);
  const history: Snapshot[] = [];
  if (before !== undefined) {
    for (let k = 0; k < keys.length && keys[k] === before.keys[k]; k += 1) {
      const remembered = before.history[k];
      if (remembered !== undefined) history.push(remembered);
    }
  }
  for (let k = history.length; k < sessions.length; k += 1) {
    const session = sessions[k];
    if (session !== undefined) history.push(knownAfter(history[k - 1] ?? null, session, input));
  }
  remember({ ground, keys, history });
  return history;
}

/** The sessions as they count after the last reading; exchanged weights exchanged, held ones null. */
export function cleanedOf(input: GrowthInput): Cleaned {
  return historyOf(input).at(-1)?.cleaned ?? NOTHING_CLEANED;
}

/**
 * The last trails, so that a weight being typed costs one session and not the whole history. Only equal facts are answered
 * from here, so the answer never depends on what was asked before.
 */
interface Remembered {
  readonly ground: string;
  readonly keys: readonly string[];
  readonly history: readonly Snapshot[];
}
const REMEMBERED: Remembered[] = [];
const MOST_REMEMBERED = 4;

function remember(r: Remembered): void {
  const same = REMEMBERED.findIndex((old) => old.ground === r.ground && old.keys[0] === r.keys[0]);
  if (same >= 0) REMEMBERED.splice(same, 1);
  REMEMBERED.unshift(r);
  REMEMBERED.length = Math.min(REMEMBERED.length, MOST_REMEMBERED);
}

function keyOf(session: WeighSession): string {
  return session.rows
    .map(({ reading: r }) => `${r.id} ${r.puppyId} ${r.instant} ${r.at} ${r.grams} ${r.held ? 1 : 0}${r.kept ? 1 : 0}`)
    .join('|');
}

function knownAfter(past: Snapshot | null, session: WeighSession, input: GrowthInput): Snapshot {
  const earlier = past?.cleaned ?? NOTHING_CLEANED;
  const index = new Map(input.puppies.map((p, i) => [p.id, i]));
  const stepGrams = input.scaleStepGrams ?? stepOf([...earlier.sessions, session]);
  const born = input.puppies.map((p) => p.bornInstant);
  const alone = input.puppies.length < 2;
  const middleBirth = middleBirthOf([...earlier.sessions, { ...session, rows: session.rows.map(asCounting) }], input);
  // A weight is judged by what was known before it, a puppy also by what it shows.
  const expected = referenceGain(middleBirth, past?.start);
  const cleaned = cleanNext(earlier, session, index, { born, reference: expected, stepGrams, alone });
  const start = startAfter(past, cleaned.sessions, middleBirth, input.puppies.length, stepGrams);
  const reference = referenceGain(middleBirth, start);
  const k = cleaned.sessions.length - 1;
  const over = (days: number) =>
    windowOf(cleaned.sessions, firstWithin(cleaned.sessions, k, days), k, input.puppies.length, reference);
  const window = over(PUPPY_WINDOW_DAYS);
  const rises = past?.rises ?? NO_SUMS;
  const own = noiseFactors({ count: cleaned.middles, squares: cleaned.middleSquares }, rises);
  const litter = litterAfter(past?.litter ?? null, over(LITTER_WINDOW_DAYS), reference, stepGrams, own);
  const before =
    past?.puppies ??
    input.puppies.map(
      (): PuppyTrack => ({ level: 'steady', wasFlagged: false, rule: 'steady', found: null, start: null, last: null }),
    );
  const now = cleaned.sessions[k];
  const marks = puppyMarks(input.puppies.length);
  const veryLow = veryLowBelow(input.breed ?? '', input.breedBirthGrams ?? null);
  let risen = rises;
  const puppies = before.map((track, i): PuppyTrack => {
    const row = now?.rows.find((r) => r.index === i);
    if (row?.used === undefined || row.used === null) return track;
    const others = before.map((t, j) => j !== i && (t.found?.score ?? 0) <= NO_MEASURE);
    const compared = others.some(Boolean) ? others : before.map((_, j) => j !== i);
    const found = scorePuppy(window, i, compared, litter.found.score, reference, stepGrams, own);
    if (found !== null) risen = withRise(risen, found.rise);
    return trackAfter(track, found, row, window.first, k, cleaned.sessions, marks, veryLow, stepGrams);
  });
  return { cleaned, start, reference, stepGrams, puppies, litter, rises: risen };
}

function trackAfter(
  before: PuppyTrack,
  found: PuppyScore | null,
  row: CleanRow,
  first: number,
  k: number,
  sessions: readonly CleanSession[],
  marks: Marks,
  veryLow: VeryLow | null,
  stepGrams: number,
): PuppyTrack {
  const birth = birthOf(sessions, row.puppy);
  const rule =
    birth === null
      ? 'steady'
      : worse(
          firstDaysLevel(before.rule, birth, row.used ?? birth, row.ageDays, stepGrams),
          bornSmall(birth, row.ageDays, veryLow),
        );
  const byScore = levelAfter(scoreLevel(before, marks), found?.score ?? 0, marks);
  const level = worse(byScore, rule);
  return {
    level,
    wasFlagged: before.level !== 'steady',
    rule,
    found,
    start: found === null || found.score <= 0 ? null : first + found.startRow,
    last: k,
  };
}

/** A birth weight that is very low in the breed: watched through the days in which most of them are lost. */
function bornSmall(birthGrams: number, ageDays: number, veryLow: VeryLow | null): Level {
  return veryLow !== null && ageDays <= BORN_SMALL_DAYS && birthGrams < veryLow.below ? 'watch' : 'steady';
}

/** The level without the first-days rules, which are kept by their own measure. */
function scoreLevel(t: PuppyTrack, marks: Marks): Level {
  return t.rule === 'steady' ? t.level : levelAfter('steady', t.found?.score ?? 0, marks);
}

function litterAfter(
  before: LitterTrack | null,
  window: Window,
  reference: ReferenceGain,
  stepGrams: number,
  own: NoiseFactors,
): LitterTrack {
  const old = before ?? { level: 'steady', wasFlagged: false, found: NO_SCORE, start: null };
  const found = scoreLitter(window, reference, stepGrams, own);
  if (found === null) return old;
  return {
    // Under a fifth less gain is nothing that a whole litter is told for.
    level: found.shortfall < LEAST_LITTER_SHORTFALL ? 'steady' : levelAfter(old.level, found.score, LITTER_MARKS),
    wasFlagged: old.level !== 'steady',
    found,
    start: found.score > 0 ? window.first + found.start : null,
  };
}

/** The birth weight that counts, in grams: a first weight within half a day of birth. */
export function birthOf(sessions: readonly CleanSession[], puppy: GrowthPuppy): number | null {
  for (const session of sessions) {
    const row = session.rows.find((r) => r.puppy.id === puppy.id && r.used !== null);
    if (row !== undefined) return row.reading.session === 'birth' || row.ageDays <= AT_BIRTH_DAYS ? row.used : null;
  }
  return null;
}

function asCounting(row: WeighSession['rows'][number]): CleanRow {
  return {
    ...row,
    index: 0,
    used: row.reading.held && !row.reading.kept ? null : row.reading.grams,
    verdict: 'counts',
    partner: null,
    anew: false,
    settled: false,
  };
}

/** The middle birth weight in grams; a later first weight is reckoned back to birth, and before any the class tells. */
function middleBirthOf(sessions: readonly CleanSession[], input: GrowthInput): number {
  const firsts = new Map<string, { grams: number; ageDays: number }>();
  for (const session of sessions) {
    if (firsts.size === input.puppies.length) break;
    for (const row of session.rows) {
      if (row.used !== null && !firsts.has(row.puppy.id)) firsts.set(row.puppy.id, { grams: row.used, ageDays: row.ageDays });
    }
  }
  let birth = USUAL_BIRTH[input.sizeClass ?? 'medium'];
  if (firsts.size === 0) return birth;
  for (let round = 0; round < 3; round += 1) {
    const reference = referenceGain(birth);
    birth = Math.max(50, median([...firsts.values()].map((f) => f.grams / Math.exp(reference.since(f.ageDays)))));
  }
  return birth;
}

/** The start of this litter as the sessions show it; later weights change nothing in it. */
function startAfter(
  past: Snapshot | null,
  sessions: readonly CleanSession[],
  birthGrams: number,
  puppies: number,
  stepGrams: number,
): LitterStart {
  const early = (s: CleanSession | undefined) => s?.rows.some((r) => r.ageDays <= START_DAYS) ?? true;
  if (past !== null && !early(sessions.at(-2))) return past.start;
  const last = sessions.findLastIndex(early);
  if (last < 1) return USUAL_START;
  const usual = referenceGain(birthGrams);
  return fitStart(windowOf(sessions, 0, last, puppies, usual), usual, stepGrams);
}

function stepOf(sessions: readonly { readonly rows: readonly { readonly reading: { readonly grams: number } }[] }[]): number {
  const grams: number[] = [];
  for (let k = sessions.length - 1; k >= 0 && grams.length < STEP_READINGS; k -= 1) {
    for (const row of sessions[k]?.rows ?? []) grams.push(row.reading.grams);
  }
  return inferredStep(grams);
}
