/** Facts that must be there, and dates that must not contradict each other: otherwise a ContractFailure. */

import type { z } from 'zod';
import { type LocalTime, localMinutes } from '../../core/calendar/clock.ts';
import { DAY_MS } from '../../core/calendar/durations.ts';
import type { DoneAbout } from '../../core/contract/journal.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { isCurrent, type Litter, type Puppy, puppyName, type Reading, type ReadingFields } from '../../core/litter/litter.ts';
import { findReading } from '../store/growth.ts';
import type { About } from '../store/journal.ts';
import { findLitter, findPuppy } from '../store/litter.ts';
import type { Context } from './handlers.ts';

/** No zone is further from UTC (the widest are +14 and -12 hours). */
const WIDEST_OFFSET_MINUTES = 15 * 60;

export function litterOf(c: Context, id: string): Litter {
  return found(findLitter(c.store.db, id), 'litter');
}

export function puppyOf(c: Context, id: string): Puppy {
  return found(findPuppy(c.store.db, id), 'puppy');
}

/** `field` is where the names stand in the input. */
export function refuseTwice(ids: readonly string[], field: string): void {
  if (new Set(ids).size !== ids.length) throw new ContractFailure('bad-input', 'one is named twice', field);
}

/** A reading that counts: one replaced or withdrawn can't be changed any more. */
export function standingReading(c: Context, id: string): Reading {
  const reading = found(findReading(c.store.db, id), 'reading');
  if (!isCurrent(reading)) throw new ContractFailure('conflict', 'the reading was already replaced or withdrawn', 'readingId');
  return reading;
}

/** The whole that a change makes, held against the rules between its fields. Refused with the field under `change`, as the caller wrote it. */
export function wholeOf<T>(checked: z.ZodSafeParseResult<T>): T {
  if (checked.success) return checked.data;
  const issue = checked.error.issues[0];
  throw new ContractFailure(
    'bad-input',
    issue?.message ?? 'the whole does not fit',
    ['change', ...(issue?.path ?? [])].join('.'),
  );
}

export function found<T>(thing: T | null, what: string): T {
  if (thing === null) throw new ContractFailure('not-found', `there is no such ${what}`);
  return thing;
}

export function aboutLitter(litter: Litter): About {
  return { what: { of: 'litter', dam: litter.dam }, grams: null, litterId: litter.id, puppyId: null };
}

export function aboutPuppy(puppy: Puppy, grams: number | null): About {
  return { what: { of: 'puppies', names: [puppyName(puppy)] }, grams, litterId: puppy.litterId, puppyId: puppy.id };
}

/** About nothing that hangs on a litter. */
export function aboutHouse(what: DoneAbout = { of: 'house' }, grams: number | null = null): About {
  return { what, grams, litterId: null, puppyId: null };
}

/** Refuses a local time and an instant that no time zone brings together, and anything more than a day ahead. */
export function checkTime(c: Context, at: LocalTime, instant: number, field: string): void {
  const offset = localMinutes(at) - instant / 60_000;
  if (Math.abs(offset) > WIDEST_OFFSET_MINUTES)
    throw new ContractFailure('bad-input', 'the local time and the instant are not the same time', field);
  if (instant > c.now().instant + DAY_MS) throw new ContractFailure('bad-input', 'the time is in the future', field);
}

/** A weighing is at the earliest a day before the litter was born. */
export function checkReading(c: Context, litter: Litter, { at, instant }: ReadingFields, field: string): void {
  checkTime(c, at, instant, field);
  if (instant < litter.whelpedInstant - DAY_MS) {
    throw new ContractFailure('bad-input', 'the weighing is before the litter was born', field);
  }
}
