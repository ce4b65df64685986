/** Readings that do not fit, with who and what was meant. */
import type { LocalTime } from '../calendar/clock.ts';
import { middle } from '../statistics/median.ts';
import { type MassUnit, massText } from '../units/mass.ts';
import { bestGuess } from './guesses.ts';
import type { Cleaned, CleanRow, CleanSession } from './reading-outliers.ts';
import { weighingName } from './words.ts';

export interface ReadingFinding {
  readonly readingId: string;
  readonly puppyId: string;
  readonly kind: 'mistyped' | 'swap' | 'scale';
  /** The other reading and puppy of an exchange. */
  readonly withReadingId: string | null;
  readonly withPuppyId: string | null;
  /** What was probably meant, in grams. */
  readonly guessGrams: number | null;
  readonly sentence: string;
}

/** Oldest first; a pair once, at its later row; a scale fault once, at its first row. `now` is the time of the last reading. */
export function findingsIn(cleaned: Cleaned, now: LocalTime, unit: MassUnit): ReadingFinding[] {
  return cleaned.sessions.flatMap((session, k) => [
    ...scaleFinding(cleaned, session, k, now),
    ...session.rows.flatMap((row, at): ReadingFinding[] => {
      if (row.verdict === 'exchanged') return swapFinding(session, row, at, now, unit);
      return row.verdict === 'mistyped' || row.verdict === 'held' ? [typingFinding(cleaned, k, row, at, now, unit)] : [];
    }),
  ]);
}

function swapFinding(session: CleanSession, row: CleanRow, at: number, now: LocalTime, unit: MassUnit): ReadingFinding[] {
  const other = session.rows.findIndex((r) => r.reading.id === row.partner);
  const partner = session.rows[other];
  if (partner === undefined || other > at) return [];
  return [
    {
      readingId: row.reading.id,
      puppyId: row.puppy.id,
      kind: 'swap',
      withReadingId: partner.reading.id,
      withPuppyId: partner.puppy.id,
      guessGrams: row.used,
      sentence: `${partner.puppy.name} and ${row.puppy.name} may have changed places on ${weighingName(row.reading.at, now)}: ${massText(partner.reading.grams, unit)} and ${massText(row.reading.grams, unit)}.`,
    },
  ];
}

function typingFinding(cleaned: Cleaned, k: number, row: CleanRow, at: number, now: LocalTime, unit: MassUnit): ReadingFinding {
  const innovation = cleaned.steps[k]?.innovations[at] ?? null;
  const base = {
    readingId: row.reading.id,
    puppyId: row.puppy.id,
    kind: 'mistyped',
    withReadingId: null,
    withPuppyId: null,
  } as const;
  const what = `${row.puppy.name}, ${weighingName(row.reading.at, now)}: ${massText(row.reading.grams, unit)}`;
  if (innovation === null) return { ...base, guessGrams: null, sentence: `${what} does not fit the weights after it.` };
  const expected = innovation.prediction.level + innovation.common;
  const guess = bestGuess(row.reading.grams, expected, Math.max(innovation.sd, 0.02), unit);
  return {
    ...base,
    guessGrams: guess?.grams ?? null,
    sentence: `${what}, where about ${massText(Math.exp(expected), unit)} was expected.${guess === null ? '' : ` ${guess.question}`}`,
  };
}

function scaleFinding(cleaned: Cleaned, session: CleanSession, k: number, now: LocalTime): ReadingFinding[] {
  const first = session.rows.find((r) => r.verdict === 'scale');
  if (first === undefined) return [];
  const offs = (cleaned.steps[k]?.innovations ?? []).flatMap((i) => (i === null ? [] : [i.off]));
  const percent = Math.round(100 * (Math.exp(middle(offs)) - 1));
  return [
    {
      readingId: first.reading.id,
      puppyId: first.puppy.id,
      kind: 'scale',
      withReadingId: null,
      withPuppyId: null,
      guessGrams: null,
      sentence: `${weighingName(first.reading.at, now)}: everyone about ${Math.abs(percent)}\u00a0% ${percent > 0 ? 'heavier' : 'lighter'} than expected. Check the scale and weigh all of them again.`,
    },
  ];
}
