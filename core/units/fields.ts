/** What may be typed and kept: ids, days, times, weights, lines of text. Every schema of facts is made of these. */
import { z } from 'zod';
import { type LocalTime, parseLocalTime } from '../calendar/clock.ts';
import { type CivilDate, parseDate } from '../calendar/day.ts';
import type { Grams } from './mass.ts';

export const idSchema = z.string().regex(/^[a-z0-9-]{8,40}$/);
/** No dog of hers lives before or after: days are added to dates, and may not run off the calendar. */
const inReach = (t: string) => t >= '1900' && t < '2200';
export const dateSchema = z
  .string()
  .refine((t): t is CivilDate => parseDate(t) !== null && inReach(t), 'not a date YYYY-MM-DD from 1900 to 2199');
export const localTimeSchema = z
  .string()
  .refine((t): t is LocalTime => parseLocalTime(t) !== null && inReach(t), 'not a time YYYY-MM-DDThh:mm from 1900 to 2199');
/** Milliseconds since 1970-01-01T00:00Z: elapsed time is reckoned from instants, so that 23-hour days count 23 hours. */
export const instantSchema = z.number().int().min(-2_208_988_800_000).max(7_258_118_399_999);
/** 0.1 g to 150 kg, at 0.1 g. */
export const gramsSchema = z
  .number()
  .min(0.1)
  .max(150_000)
  .refine((n): n is Grams => Math.abs(n * 10 - Math.round(n * 10)) < 1e-6, 'finer than 0.1 g');
/** Control characters other than tab, line feed and carriage return, as a person's text never holds them. */
const holdsControls = (t: string) => [...t].some((c) => c < ' ' && c !== '\t' && c !== '\n' && c !== '\r');
/** One line of text, up to so many characters. */
export const lineSchema = (max: number) =>
  z
    .string()
    .max(max)
    .refine((t) => !holdsControls(t) && t.isWellFormed(), 'holds control characters');
export const shortText = lineSchema(120);
export const longText = lineSchema(4000);

/**
 * Some fields of a thing, at least one of them: what a command changes, so that two windows never send each other's fields
 * back. Rules between fields are not asked here; they hold for the whole that the service makes of what is there and the change.
 */
export function changeOf<S extends z.core.$ZodLooseShape>(shape: S) {
  return z
    .strictObject(shape)
    .exactPartial()
    .refine((change) => Object.keys(change).length > 0, 'nothing is changed');
}
