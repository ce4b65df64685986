/** Readings: recorded, corrected, withdrawn, kept. Several of one puppy in one session are all kept and all count. */
import { ContractFailure } from '../../core/contract/result.ts';
import { earlierLitters, lineReadings } from '../../core/growth/line/earlier.ts';
import type { Litter, Puppy, Reading, ReadingFields } from '../../core/litter/litter.ts';
import { insertReading, markKept, markSuperseded, markWithdrawn, readingsOf } from '../store/growth.ts';
import { allLitters, puppiesOf } from '../store/litter.ts';
import { aboutPuppy, checkTime, DAY_MS, litterOf, puppyOf, standingReading } from './facts.ts';
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
      const reading = newReading(c, puppy, fields, null);
      return command(c, 'growth.record', (recorder) => {
        insertReading(recorder, reading);
        return { value: { reading }, about: aboutPuppy(puppy, reading.grams) };
      });
    },

    'growth.correct': ({ readingId, reading: fields }) => {
      const old = standingReading(c, readingId);
      const puppy = puppyOf(c, old.puppyId);
      const reading = newReading(c, puppy, fields, old.id);
      return command(c, 'growth.correct', (recorder) => {
        insertReading(recorder, reading);
        markSuperseded(recorder, old.id, reading.id);
        return { value: { reading }, about: aboutPuppy(puppy, reading.grams) };
      });
    },

    'growth.withdraw': ({ readingId }) => {
      const reading = standingReading(c, readingId);
      return command(c, 'growth.withdraw', (recorder) => {
        markWithdrawn(recorder, readingId);
        return { value: { reading: { ...reading, withdrawn: true } }, about: aboutReading(c, reading) };
      });
    },

    'growth.keep': ({ readingId }) => {
      const reading = standingReading(c, readingId);
      return command(c, 'growth.keep', (recorder) => {
        markKept(recorder, readingId);
        return { value: { reading: { ...reading, held: false, kept: true } }, about: aboutReading(c, reading) };
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
        for (const reading of readings) {
          insertReading(recorder, reading);
          if (reading.supersedes !== null) markSuperseded(recorder, reading.supersedes, reading.id);
        }
        const about = aboutPuppy(puppy, null);
        return { value: { readings }, about: { ...about, who: `${about.who}, ${aboutPuppy(otherPuppy, null).who}` } };
      });
    },
  };
}

/** The reading in its own place and time, with the weight as it was typed for the other puppy. */
function exchanged(c: Context, puppy: Puppy, own: Reading, other: Reading): Reading {
  const { at, instant, session } = own;
  const { grams, typed, unit, source } = other;
  return newReading(c, puppy, { at, instant, session, grams, typed, unit, source, held: false }, own.id);
}

function newReading(c: Context, puppy: Puppy, fields: ReadingFields, supersedes: string | null): Reading {
  checkReading(c, litterOf(c, puppy.litterId), fields);
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

function checkReading(c: Context, litter: Litter, { at, instant }: ReadingFields): void {
  checkTime(c, at, instant, 'reading.instant');
  if (instant < litter.whelpedInstant - DAY_MS) {
    throw new ContractFailure('bad-input', 'the weighing is before the litter was born', 'reading.instant');
  }
}

function aboutReading(c: Context, reading: Reading) {
  return aboutPuppy(puppyOf(c, reading.puppyId), reading.grams);
}
