/** Readings: recorded, corrected, withdrawn, kept. Several of one puppy in one session are all kept and all count. */
import { ContractFailure } from '../../core/contract/result.ts';
import { earlierLitters, lineReadings } from '../../core/growth/own-line/earlier.ts';
import { type Litter, type Puppy, puppyName, type Reading, type ReadingFields } from '../../core/litter/litter.ts';
import { insertReading, markKept, markStanding, markWithdrawn, readingsOf, replaceReading } from '../store/growth.ts';
import type { About } from '../store/journal.ts';
import { allLitters, puppiesOf } from '../store/litter.ts';
import { aboutLitter, aboutPuppy, checkReading, litterOf, puppyOf, refuseTwice, standingReading } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function growthHandlers(c: Context): HandlersOf<'growth'> {
  return {
    'growth.readings': ({ litterId }) => ({ readings: readingsOf(c.store.db, litterOf(c, litterId).id) }),

    'growth.line': ({ litterId }) => {
      const own = litterOf(c, litterId);
      const litters = earlierLitters(own, allLitters(c.store.db)).map((litter) => ({
        litter,
        puppies: puppiesOf(c.store.db, litter.id),
        readings: lineReadings(litter, readingsOf(c.store.db, litter.id)),
      }));
      return { litters };
    },

    'growth.record': ({ puppyId, reading: fields }) => {
      const puppy = puppyOf(c, puppyId);
      const reading = newReading(c, puppy, fields, null, 'reading');
      return command(c, 'growth.record', (recorder) => {
        insertReading(recorder, reading);
        return { value: { reading }, about: aboutPuppy(puppy, reading.grams) };
      });
    },

    'growth.recordWeighing': ({ litterId, readings: given }) => {
      const litter = litterOf(c, litterId);
      const readings = given.map(({ puppyId, reading }, i) =>
        newReading(c, puppyIn(c, litter, puppyId, `readings.${i}.puppyId`), reading, null, `readings.${i}.reading`),
      );
      return command(c, 'growth.recordWeighing', (recorder) => {
        for (const reading of readings) insertReading(recorder, reading);
        return { value: { readings }, about: aboutLitter(litter) };
      });
    },

    'growth.correctWeighing': ({ litterId, corrections }) =>
      command(c, 'growth.correctWeighing', (recorder) => {
        const litter = litterOf(c, litterId);
        refuseTwice(
          corrections.map((r) => r.readingId),
          'corrections',
        );
        const readings = corrections.map(({ readingId, change }, i) => {
          const old = standingReading(c, readingId);
          const puppy = puppyIn(c, litter, old.puppyId, `corrections.${i}.readingId`);
          const reading = newReading(c, puppy, { ...fieldsOf(old), ...change }, old.id, `corrections.${i}.change`);
          // The same weight at another time is still the one that she said is right.
          return change.grams === undefined ? { ...reading, kept: old.kept } : reading;
        });
        for (const reading of readings) replaceReading(recorder, reading);
        return { value: { readings }, about: aboutLitter(litter) };
      }),

    'growth.correct': ({ readingId, reading: fields }) => {
      const old = standingReading(c, readingId);
      const puppy = puppyOf(c, old.puppyId);
      const reading = newReading(c, puppy, fields, old.id, 'reading');
      return command(c, 'growth.correct', (recorder) => {
        replaceReading(recorder, reading);
        return { value: { reading }, about: aboutPuppy(puppy, reading.grams) };
      });
    },

    'growth.withdraw': ({ readingId }) => {
      const reading = standingReading(c, readingId);
      return command(c, 'growth.withdraw', (recorder) => {
        markWithdrawn(recorder, readingId);
        return { value: { reading: { ...reading, withdrawn: true } }, about: aboutReadings(c, [reading]) };
      });
    },

    'growth.keep': ({ readingIds }) => {
      refuseTwice(readingIds, 'readingIds');
      const readings = readingIds.map((id) => standingReading(c, id));
      return command(c, 'growth.keep', (recorder) => {
        for (const { id } of readings) markKept(recorder, id);
        const kept = readings.map((reading) => ({ ...reading, held: false, kept: true }));
        return { value: { readings: kept }, about: aboutReadings(c, readings) };
      });
    },

    'growth.give': ({ readingId, puppyId }) => {
      const old = standingReading(c, readingId);
      const from = puppyOf(c, old.puppyId);
      const puppy = puppyIn(c, litterOf(c, from.litterId), puppyId, 'puppyId');
      if (puppy.id === from.id) throw new ContractFailure('bad-input', 'the weight is that puppy’s already', 'puppyId');
      const reading = newReading(c, puppy, { ...fieldsOf(old), held: false }, null, 'readingId');
      return command(c, 'growth.give', (recorder) => {
        markWithdrawn(recorder, readingId);
        if (old.held && old.supersedes !== null) markStanding(recorder, old.supersedes);
        insertReading(recorder, reading);
        const about = aboutPuppy(puppy, reading.grams);
        return { value: { reading }, about };
      });
    },

    'growth.exchange': ({ readingId, withReadingId }) => {
      const [one, other] = [standingReading(c, readingId), standingReading(c, withReadingId)];
      const [puppy, otherPuppy] = [puppyOf(c, one.puppyId), puppyOf(c, other.puppyId)];
      if (puppy.id === otherPuppy.id || puppy.litterId !== otherPuppy.litterId) {
        throw new ContractFailure('bad-input', 'two puppies of one litter exchange weights', 'withReadingId');
      }
      const readings = [exchanged(c, puppy, one, other), exchanged(c, otherPuppy, other, one)];
      return command(c, 'growth.exchange', (recorder) => {
        for (const reading of readings) replaceReading(recorder, reading);
        return { value: { readings }, about: aboutPuppies([puppy, otherPuppy], null) };
      });
    },
  };
}

/** The reading in its own place and time, with the weight as it was typed for the other puppy. */
function exchanged(c: Context, puppy: Puppy, own: Reading, other: Reading): Reading {
  const { at, instant, session } = own;
  const { grams, typed, unit, source } = other;
  return newReading(c, puppy, { at, instant, session, grams, typed, unit, source, held: false }, own.id, 'readingId');
}

function puppyIn(c: Context, litter: Litter, puppyId: string, field: string): Puppy {
  const puppy = puppyOf(c, puppyId);
  if (puppy.litterId !== litter.id) throw new ContractFailure('bad-input', 'the puppy is of another litter', field);
  return puppy;
}

function fieldsOf({ at, instant, session, grams, typed, unit, source, held }: Reading): ReadingFields {
  return { at, instant, session, grams, typed, unit, source, held };
}

/** `under` is where the fields stand in the input. */
function newReading(c: Context, puppy: Puppy, fields: ReadingFields, supersedes: string | null, under: string): Reading {
  checkReading(c, litterOf(c, puppy.litterId), fields, `${under}.instant`);
  return {
    ...fields,
    id: c.newId(),
    puppyId: puppy.id,
    kept: false,
    supersedes,
    supersededBy: null,
    withdrawn: false,
    recordedInstant: c.now().instant,
  };
}

/** One by its weight, several by their names. */
function aboutReadings(c: Context, readings: readonly Reading[]): About {
  const puppies = readings.map((r) => puppyOf(c, r.puppyId));
  return aboutPuppies(puppies, readings.length === 1 ? (readings[0]?.grams ?? null) : null);
}

/** Found under the first of them. */
function aboutPuppies(puppies: readonly Puppy[], grams: number | null): About {
  const [first] = puppies;
  if (first === undefined) throw new Error('no puppies');
  return { ...aboutPuppy(first, grams), what: { of: 'puppies', names: puppies.map(puppyName) } };
}
