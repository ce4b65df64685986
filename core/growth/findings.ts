/** Readings that do not fit, with who and what was meant. */
import type { LocalTime } from '../calendar/clock.ts';
import { middle } from '../statistics/median.ts';
import { bestGuess, type Guess } from './guesses.ts';
import type { Cleaned, CleanRow, CleanSession } from './reading-outliers.ts';

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
  /** `expected` in grams; null when it only does not fit the weights after it. */
  | (AboutReading & { readonly kind: 'mistyped'; readonly expected: number | null; readonly guess: Guess | null })
  /** Everyone is off by `off`, ln of the weight over what was expected. */
  | (AboutReading & { readonly kind: 'scale'; readonly off: number });

/** Oldest first; a pair once, at its later row; a scale fault once, at its first row. `now` is the time of the last reading. */
export function findingsIn(cleaned: Cleaned, now: LocalTime): ReadingFinding[] {
  return cleaned.sessions.flatMap((session, k) => [
    ...scaleFinding(cleaned, session, k, now),
    ...session.rows.flatMap((row, at): ReadingFinding[] => {
      if (row.verdict === 'exchanged') return swapFinding(session, row, at, now);
      return row.verdict === 'mistyped' || row.verdict === 'held' ? [typingFinding(cleaned, k, row, at, now)] : [];
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

function typingFinding(cleaned: Cleaned, k: number, row: CleanRow, at: number, now: LocalTime): ReadingFinding {
  const innovation = cleaned.steps[k]?.innovations[at] ?? null;
  const base = { ...about(row, now), kind: 'mistyped' } as const;
  if (innovation === null) return { ...base, expected: null, guess: null };
  const expected = innovation.prediction.level + innovation.common;
  const guess = bestGuess(row.reading.grams, expected, Math.max(innovation.sd, 0.02), row.reading.unit ?? 'g');
  return { ...base, guessGrams: guess?.grams ?? null, expected: Math.exp(expected), guess };
}

function scaleFinding(cleaned: Cleaned, session: CleanSession, k: number, now: LocalTime): ReadingFinding[] {
  const first = session.rows.find((r) => r.verdict === 'scale');
  if (first === undefined) return [];
  const offs = (cleaned.steps[k]?.innovations ?? []).flatMap((i) => (i === null ? [] : [i.off]));
  return [{ ...about(first, now), kind: 'scale', off: middle(offs) }];
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
