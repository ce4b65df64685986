/** Weights out of a table, and a whole house out of an export: each in one transaction, all or nothing. */

import type { z } from 'zod';
import type { OPERATIONS } from '../../core/contract/operations.ts';
import { ContractFailure, type ErrorCode } from '../../core/contract/result.ts';
import type { Litter, Puppy, Reading } from '../../core/litter/litter.ts';
import { idSchema } from '../../core/units/fields.ts';
import { countsIn } from '../store/counts.ts';
import type { TableRows } from '../store/full-export.ts';
import { insertReading } from '../store/growth.ts';
import { insertLitter, insertPuppy, puppiesOf } from '../store/litter.ts';
import { readExported, TakeInError, takeIn } from '../store/take-in.ts';
import { aboutHouse, aboutLitter, checkReading, checkTime, litterOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';
import { checkBirth, checkLetter } from './litter.ts';

type Import = z.output<(typeof OPERATIONS)['records.import']['input']>;

export function importHandlers(c: Context): Pick<HandlersOf<'records'>, 'records.import' | 'records.takeIn'> {
  const { db } = c.store;
  return {
    'records.import': (input) => {
      const { litter, isNew } = litterFor(c, input.into);
      const there = isNew ? [] : puppiesOf(db, litter.id);
      const added = newPuppies(c, litter, there, input.puppies);
      const readings = newReadings(c, litter, [...there, ...added.values()], added, input.readings);
      return command(c, 'records.import', (recorder) => {
        if (isNew) insertLitter(db, recorder, litter);
        for (const puppy of added.values()) insertPuppy(recorder, puppy);
        for (const reading of readings) insertReading(recorder, reading);
        return { value: { litter, puppies: [...added.values()], readings: readings.length }, about: aboutLitter(litter) };
      });
    },

    'records.takeIn': ({ text }) => {
      const tables = wholeOf(text);
      return command(c, 'records.takeIn', (recorder) => {
        told(() => takeIn(db, recorder, tables));
        return { value: { counts: countsIn(db) }, about: aboutHouse() };
      });
    },
  };
}

function litterFor(c: Context, into: Import['into']): { litter: Litter; isNew: boolean } {
  if (into.kind === 'litter') return { litter: litterOf(c, into.litterId), isNew: false };
  checkTime(c, into.litter.whelpedAt, into.litter.whelpedInstant, 'into.litter.whelpedInstant');
  return { litter: { ...into.litter, id: c.newId(), demo: false }, isNew: true };
}

/** By the caller's key. */
function newPuppies(c: Context, litter: Litter, there: readonly Puppy[], wanted: Import['puppies']): Map<string, Puppy> {
  const added = new Map<string, Puppy>();
  let place = Math.max(-1, ...there.map((p) => p.place)) + 1;
  for (const [i, { key, fields }] of wanted.entries()) {
    if (added.has(key)) throw new ContractFailure('bad-input', 'a puppy is named twice', `puppies.${i}.key`);
    checkBirth(c, litter, fields, `puppies.${i}.fields`);
    checkLetter([...there, ...added.values()], fields.collar, `puppies.${i}.fields`);
    added.set(key, { ...fields, id: c.newId(), litterId: litter.id, place, state: 'litter', stateOn: null });
    place += 1;
  }
  return added;
}

function newReadings(
  c: Context,
  litter: Litter,
  puppies: readonly Puppy[],
  added: ReadonlyMap<string, Puppy>,
  wanted: Import['readings'],
): Reading[] {
  const ids = new Set(puppies.map((p) => p.id));
  const seen = new Set<string>();
  const recordedInstant = c.now().instant;
  return wanted.map(({ puppy, reading }, i) => {
    const puppyId = added.get(puppy)?.id ?? puppy;
    if (!ids.has(puppyId)) throw unknownPuppy(puppyId, `readings.${i}.puppy`);
    checkReading(c, litter, reading, `readings.${i}.reading.instant`);
    const mark = `${puppyId} ${reading.at} ${reading.grams}`;
    if (seen.has(mark)) throw new ContractFailure('bad-input', 'a weight stands twice', `readings.${i}`);
    seen.add(mark);
    return {
      ...reading,
      id: c.newId(),
      puppyId,
      kept: false,
      supersedes: null,
      supersededBy: null,
      withdrawn: false,
      recordedInstant,
    };
  });
}

function unknownPuppy(puppy: string, field: string): ContractFailure {
  return idSchema.safeParse(puppy).success
    ? new ContractFailure('not-found', 'there is no such puppy in the litter', field)
    : new ContractFailure('bad-input', 'no new puppy has that key', field);
}

function wholeOf(text: string): TableRows[] {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    throw new ContractFailure('bad-input', 'the text is not JSON', 'text');
  }
  return told(() => readExported(value));
}

const CODES: Readonly<Record<TakeInError['code'], ErrorCode>> = {
  foreign: 'bad-input',
  newer: 'refused',
  misfit: 'bad-input',
  'not-empty': 'conflict',
};

function told<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof TakeInError)) throw error;
    throw new ContractFailure(CODES[error.code], error.message, error.field === '' ? undefined : error.field.slice(0, 200));
  }
}
