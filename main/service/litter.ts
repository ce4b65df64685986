/** Litters and puppies: begun, changed, arranged, removed while nothing hangs on them. */

import { dateOf } from '../../core/calendar/clock.ts';
import { DAY_MS } from '../../core/calendar/durations.ts';
import type { DoneAbout } from '../../core/contract/journal.ts';
import type { NewPuppy, PuppyChange } from '../../core/contract/litter.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import type { Collar } from '../../core/litter/collar.ts';
import { type Litter, type Puppy, type PuppyFields, puppyName, type Reading } from '../../core/litter/litter.ts';
import { firstWeighing, insertReading, replaceReading, standingReadings, wasWeighed } from '../store/growth.ts';
import { hasPlan } from '../store/homing.ts';
import type { Recorder } from '../store/journal.ts';
import {
  allLitters,
  insertLitter,
  insertPuppy,
  puppiesOf,
  removeLitter,
  removePuppy,
  setPlace,
  setState,
  updateLitter,
  updatePuppy,
} from '../store/litter.ts';
import { aboutLitter, aboutPuppy, checkTime, litterOf, puppyOf, refuseTwice } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

type BirthTime = Pick<PuppyFields, 'bornAt' | 'bornInstant'>;

export function litterHandlers(c: Context): HandlersOf<'litter'> {
  const { db } = c.store;
  return {
    'litter.all': () => ({ litters: allLitters(db).map((litter) => ({ litter, puppies: puppiesOf(db, litter.id) })) }),

    'litter.begin': ({ litter: fields, puppies: begun }) => {
      checkTime(c, fields.whelpedAt, fields.whelpedInstant, 'litter.whelpedInstant');
      const litter: Litter = { ...fields, id: c.newId(), demo: false };
      return command(c, 'litter.begin', (recorder) => {
        insertLitter(db, recorder, litter);
        const puppies: Puppy[] = [];
        for (const [i, puppy] of begun.entries())
          puppies.push(addPuppy(c, recorder, litter, puppies, puppy, `puppies.${i}.fields`));
        return { value: { litter, puppies }, about: aboutLitter(litter) };
      });
    },

    'litter.change': ({ litterId, change }) =>
      command(c, 'litter.change', (recorder) => {
        const litter = { ...litterOf(c, litterId), ...change };
        checkWhelping(c, litter);
        updateLitter(db, recorder, litter);
        return { value: { litter }, about: aboutLitter(litter) };
      }),

    'litter.remove': ({ litterId }) => {
      const litter = litterOf(c, litterId);
      for (const puppy of puppiesOf(db, litterId)) refuseWhenUsed(c, puppy);
      return command(c, 'litter.remove', (recorder) => {
        removeLitter(db, recorder, litterId);
        return { value: {}, about: aboutLitter(litter) };
      });
    },

    'litter.addPuppy': ({ litterId, fields, birthWeight }) => {
      const litter = litterOf(c, litterId);
      return command(c, 'litter.addPuppy', (recorder) => {
        const puppy = addPuppy(c, recorder, litter, puppiesOf(db, litterId), { fields, birthWeight }, 'fields');
        return { value: { puppy }, about: aboutPuppy(puppy, birthWeight?.grams ?? null) };
      });
    },

    'litter.changePuppy': ({ puppyId, change }) =>
      command(c, 'litter.changePuppy', (recorder) => {
        const puppy = changePuppy(c, recorder, puppyOf(c, puppyId), change, 'change');
        return { value: { puppy }, about: aboutPuppy(puppy, null) };
      }),

    'litter.moveBirths': ({ litterId, births }) =>
      command(c, 'litter.moveBirths', (recorder) => {
        const litter = litterOf(c, litterId);
        refuseTwice(
          births.map((b) => b.puppyId),
          'births',
        );
        for (const [i, { puppyId, ...birth }] of births.entries()) {
          const puppy = puppyOf(c, puppyId);
          if (puppy.litterId !== litterId)
            throw new ContractFailure('bad-input', 'the puppy is of another litter', `births.${i}.puppyId`);
          changePuppy(c, recorder, puppy, birth, `births.${i}`);
        }
        return { value: {}, about: aboutLitter(litter) };
      }),

    'litter.removePuppy': ({ puppyId }) => {
      const puppy = puppyOf(c, puppyId);
      refuseWhenUsed(c, puppy);
      return command(c, 'litter.removePuppy', (recorder) => {
        removePuppy(recorder, puppyId);
        return { value: {}, about: aboutPuppy(puppy, null) };
      });
    },

    'litter.setState': ({ puppyId, state, on }) => {
      const before = puppyOf(c, puppyId);
      if (on === null && (state === 'home' || state === 'died'))
        throw new ContractFailure('bad-input', 'the day is missing', 'on');
      if (on !== null && on < dateOf(before.bornAt)) throw new ContractFailure('bad-input', 'the day is before the birth', 'on');
      const puppy: Puppy = { ...before, state, stateOn: state === 'litter' ? null : on };
      return command(c, 'litter.setState', (recorder) => {
        setState(recorder, puppyId, puppy.state, puppy.stateOn);
        const what: DoneAbout = { of: 'puppies', names: [puppyName(puppy)], state };
        return { value: { puppy }, about: { ...aboutPuppy(puppy, null), what } };
      });
    },

    'litter.arrange': ({ litterId, puppyIds }) => {
      const litter = litterOf(c, litterId);
      const ids = new Set(puppyIds);
      refuseTwice(puppyIds, 'puppyIds');
      const puppies = puppiesOf(db, litterId);
      if (puppies.length !== ids.size || !puppies.every((p) => ids.has(p.id))) {
        throw new ContractFailure('conflict', 'these are not the puppies of the litter', 'puppyIds');
      }
      return command(c, 'litter.arrange', (recorder) => {
        for (const [place, id] of puppyIds.entries()) setPlace(recorder, id, place);
        return { value: {}, about: aboutLitter(litter) };
      });
    },
  };
}

/** A birth is within a day before and three days after the whelping began. `under` is where the fields stand in the input. */
export function checkBirth(c: Context, litter: Litter, { bornAt, bornInstant }: BirthTime, under: string): void {
  checkTime(c, bornAt, bornInstant, `${under}.bornInstant`);
  const after = bornInstant - litter.whelpedInstant;
  if (after < -DAY_MS || after > 3 * DAY_MS) {
    throw new ContractFailure('bad-input', 'the birth does not fit the day of whelping', `${under}.bornInstant`);
  }
}

/** A corrected day of whelping may not leave weighings more than a day before it. */
function checkWhelping(c: Context, { id, whelpedAt, whelpedInstant }: Litter): void {
  checkTime(c, whelpedAt, whelpedInstant, 'change.whelpedInstant');
  const first = firstWeighing(c.store.db, id);
  if (first !== null && first < whelpedInstant - DAY_MS) {
    throw new ContractFailure('bad-input', 'puppies were weighed before that day', 'change.whelpedInstant');
  }
}

export function checkLetter(others: readonly Puppy[], collar: Collar, under: string): void {
  if (others.some((p) => p.collar.letter === collar.letter)) {
    throw new ContractFailure('conflict', `letter ${collar.letter} is taken in this litter`, `${under}.collar.letter`);
  }
}

/** Writes a puppy after the others, with its birth weight if it was weighed. */
function addPuppy(
  c: Context,
  recorder: Recorder,
  litter: Litter,
  others: readonly Puppy[],
  { fields, birthWeight }: NewPuppy,
  under: string,
): Puppy {
  checkBirth(c, litter, fields, under);
  checkLetter(others, fields.collar, under);
  const place = Math.max(-1, ...others.map((p) => p.place)) + 1;
  const puppy: Puppy = { ...fields, id: c.newId(), litterId: litter.id, place, state: 'litter', stateOn: null };
  insertPuppy(recorder, puppy);
  if (birthWeight !== null) insertReading(recorder, birthReading(c, puppy, birthWeight));
  return puppy;
}

function changePuppy(c: Context, recorder: Recorder, old: Puppy, change: PuppyChange, under: string): Puppy {
  const puppy: Puppy = { ...old, ...change, collar: { ...old.collar, ...change.collar } };
  const moved = puppy.bornAt !== old.bornAt || puppy.bornInstant !== old.bornInstant;
  if (moved) checkBirth(c, litterOf(c, puppy.litterId), puppy, under);
  checkLetter(
    puppiesOf(c.store.db, puppy.litterId).filter((p) => p.id !== puppy.id),
    puppy.collar,
    under,
  );
  updatePuppy(recorder, puppy.id, { ...change, collar: puppy.collar });
  if (moved) moveBirthWeight(c, recorder, puppy);
  return puppy;
}

/** The birth weight stays a weight of the birth: one of the new time takes the old one's place. */
function moveBirthWeight(c: Context, recorder: Recorder, { id, bornAt, bornInstant }: Puppy): void {
  for (const old of standingReadings(c.store.db, id).filter((r) => r.session === 'birth')) {
    replaceReading(recorder, {
      ...old,
      id: c.newId(),
      at: bornAt,
      instant: bornInstant,
      supersedes: old.id,
      recordedInstant: c.now().instant,
    });
  }
}

function refuseWhenUsed(c: Context, puppy: Puppy): void {
  if (wasWeighed(c.store.db, puppy.id)) throw new ContractFailure('refused', 'the puppy has been weighed after birth');
  if (hasPlan(c.store.db, puppy.id)) throw new ContractFailure('refused', 'the puppy was handed a plan');
}

function birthReading(c: Context, puppy: Puppy, weight: Pick<Reading, 'grams' | 'typed' | 'unit' | 'source'>): Reading {
  return {
    ...weight,
    id: c.newId(),
    puppyId: puppy.id,
    at: puppy.bornAt,
    instant: puppy.bornInstant,
    session: 'birth',
    held: false,
    kept: false,
    supersedes: null,
    supersededBy: null,
    withdrawn: false,
    recordedInstant: c.now().instant,
  };
}
