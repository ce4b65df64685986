/** Readings that do not fit, with who and what was meant. */
import type { LocalTime } from '../calendar/clock.ts';
import { median } from '../statistics/median.ts';
import { bestGuess, type Guess } from './guesses.ts';
import type { GrowthPuppy } from './input.ts';
import { READING_SPREAD } from './noise.ts';
import type { CleanRow, CleanSession } from './outliers/draft.ts';
import type { Cleaned } from './outliers/reading-outliers.ts';

/** A littermate that was not weighed then, whose weight it would be. */
export interface Littermate {
  readonly puppyId: string;
  readonly name: string;
}

interface AboutReading {
  readonly readingId: string;
  readonly puppyId: string;
  /** The other reading and puppy of an exchange. */
  readonly withReadingId: string | null;
  readonly withPuppyId: string | null;
  /** What was probably meant, in grams. */
  readonly guessGrams: number | null;
  /** The puppy's name, when and what was read, in grams. */
  readonly name: string;
  readonly at: LocalTime;
  readonly grams: number;
  /** The last reading of the litter: what is said is said then. */
  readonly now: LocalTime;
}

export type ReadingFinding =
  /** `withName` was weighed before, `withGrams` is what was read then. */
  | (AboutReading & { readonly kind: 'swap'; readonly withName: string; readonly withGrams: number })
  /** `expected` in grams; null when it only does not fit the weights after it. `fits` when no slip explains it. */
  | (AboutReading & {
      readonly kind: 'mistyped';
      readonly expected: number | null;
      readonly guess: Guess | null;
      readonly fits: Littermate | null;
    })
  /** Everyone is off by `off`, ln of the weight over what was expected. */
  | (AboutReading & { readonly kind: 'scale'; readonly off: number });

/** The readings that a finding is about: two where weights may have been exchanged. */
export function readingIdsOf({ readingId, withReadingId }: Pick<ReadingFinding, 'readingId' | 'withReadingId'>): string[] {
  return withReadingId === null ? [readingId] : [readingId, withReadingId];
}

/** Oldest first; a pair once, at its later row; a scale fault once, at its first row. `now` is the time of the last reading. */
export function findingsIn(cleaned: Cleaned, now: LocalTime, among: readonly GrowthPuppy[]): ReadingFinding[] {
  return cleaned.sessions.flatMap((session, k) => [
    ...scaleFinding(cleaned, session, k, now),
    ...session.rows.flatMap((row, at): ReadingFinding[] => {
      if (row.verdict === 'exchanged') return swapFinding(session, row, at, now);
      return row.verdict === 'mistyped' || row.verdict === 'held' ? [typingFinding(cleaned, k, row, at, now, among)] : [];
    }),
  ]);
}

function swapFinding(session: CleanSession, row: CleanRow, at: number, now: LocalTime): ReadingFinding[] {
  const other = session.rows.findIndex((r) => r.reading.id === row.partner);
  const partner = session.rows[other];
  if (partner === undefined || other > at) return [];
  return [
    {
      ...about(row, now),
      kind: 'swap',
      withReadingId: partner.reading.id,
      withPuppyId: partner.puppy.id,
      guessGrams: row.used,
      withName: partner.puppy.name,
      withGrams: partner.reading.grams,
    },
  ];
}

function typingFinding(
  cleaned: Cleaned,
  k: number,
  row: CleanRow,
  at: number,
  now: LocalTime,
  among: readonly GrowthPuppy[],
): ReadingFinding {
  const innovation = cleaned.steps[k]?.innovations[at] ?? null;
  const base = { ...about(row, now), kind: 'mistyped' } as const;
  if (innovation === null) return { ...base, expected: null, guess: null, fits: null };
  const expected = innovation.prediction.level + innovation.common;
  const guess = bestGuess(
    row.reading.exact ?? row.reading.grams,
    expected,
    Math.max(innovation.sd, 0.02),
    row.reading.unit ?? 'g',
  );
  const fits = guess === null ? fittingLittermate(cleaned, k, row, among) : null;
  return { ...base, guessGrams: guess?.grams ?? null, expected: Math.exp(expected), guess, fits };
}

/** So near, in standard deviations, and every other at least so far. */
const FITS = 1.5;
const FITS_NOT = 2.5;

function fittingLittermate(cleaned: Cleaned, k: number, row: CleanRow, among: readonly GrowthPuppy[]): Littermate | null {
  const weighed = new Set(cleaned.sessions[k]?.rows.map((r) => r.index));
  const near = among
    .flatMap((p, i) => {
      const state = cleaned.steps[k]?.after[i] ?? null;
      const gone = p.endsInstant !== null && p.endsInstant < row.reading.instant;
      if (state === null || weighed.has(i) || gone) return [];
      const sd = Math.max(LEAST_SD, Math.sqrt(state.vLevel + READING_SPREAD.weighing ** 2));
      return [{ p, off: Math.abs(Math.log(row.reading.grams) - state.level) / sd }];
    })
    .toSorted((a, b) => a.off - b.off);
  const [best, next] = near;
  if (best === undefined || best.off > FITS || (next !== undefined && next.off < FITS_NOT)) return null;
  return { puppyId: best.p.id, name: best.p.name };
}

/** A smaller spread is not believed, in log units. */
const LEAST_SD = 0.02;

function scaleFinding(cleaned: Cleaned, session: CleanSession, k: number, now: LocalTime): ReadingFinding[] {
  const first = session.rows.find((r) => r.verdict === 'scale');
  if (first === undefined) return [];
  const offs = (cleaned.steps[k]?.innovations ?? []).flatMap((i) => (i === null ? [] : [i.off]));
  return [{ ...about(first, now), kind: 'scale', off: median(offs) }];
}

function about(row: CleanRow, now: LocalTime): AboutReading {
  const { reading, puppy } = row;
  return {
    readingId: reading.id,
    puppyId: puppy.id,
    withReadingId: null,
    withPuppyId: null,
    guessGrams: null,
    name: puppy.name,
    at: reading.at,
    grams: reading.grams,
    now,
  };
}
