/** Litters and puppies: begun, changed, arranged, removed while nothing hangs on them. */
import { dateOf } from '../../core/calendar/clock.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import type { Collar } from '../../core/litter/collar.ts';
import type { Litter, LitterFields, Puppy, PuppyFields, PuppyState, Reading } from '../../core/litter/litter.ts';
import { firstWeighing, insertReading, wasWeighed } from '../store/growth.ts';
import { hasPlan } from '../store/homing.ts';
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
import { aboutLitter, aboutPuppy, checkTime, DAY_MS, litterOf, puppyOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

/** How the list of things done says where a puppy is now. */
const STATE_SAID: Record<PuppyState, string> = { litter: 'back in the litter', home: 'gone home', kept: 'kept', died: 'died' };

export function litterHandlers(c: Context): HandlersOf<'litter'> {
  const { db } = c.store;
  return {
    'litter.all': () => ({ litters: allLitters(db).map((litter) => ({ litter, puppies: puppiesOf(db, litter.id) })) }),

    'litter.begin': (fields) => {
      checkTime(c, fields.whelpedAt, fields.whelpedInstant, 'whelpedInstant');
      const litter: Litter = { ...fields, id: c.newId(), demo: false };
      return command(c, 'litter.begin', (recorder) => {
        insertLitter(db, recorder, litter);
        return { value: { litter }, about: aboutLitter(litter) };
      });
    },

    'litter.change': ({ litterId, fields }) => {
      const litter = { ...litterOf(c, litterId), ...fields };
      checkWhelping(c, litterId, fields);
      return command(c, 'litter.change', (recorder) => {
        updateLitter(db, recorder, litterId, fields);
        return { value: { litter }, about: aboutLitter(litter) };
      });
    },

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
      const others = puppiesOf(db, litterId);
      checkBirth(c, litter, fields);
      checkLetter(others, fields.collar);
      const place = Math.max(-1, ...others.map((p) => p.place)) + 1;
      const puppy: Puppy = { ...fields, id: c.newId(), litterId, place, state: 'litter', stateOn: null };
      return command(c, 'litter.addPuppy', (recorder) => {
        insertPuppy(recorder, puppy);
        if (birthWeight !== null) insertReading(recorder, birthReading(c, puppy, birthWeight));
        return { value: { puppy }, about: aboutPuppy(puppy, birthWeight?.grams ?? null) };
      });
    },

    'litter.changePuppy': ({ puppyId, fields }) => {
      const puppy = { ...puppyOf(c, puppyId), ...fields };
      checkBirth(c, litterOf(c, puppy.litterId), fields);
      checkLetter(
        puppiesOf(db, puppy.litterId).filter((p) => p.id !== puppyId),
        fields.collar,
      );
      return command(c, 'litter.changePuppy', (recorder) => {
        updatePuppy(recorder, puppyId, fields);
        return { value: { puppy }, about: aboutPuppy(puppy, null) };
      });
    },

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
        const about = aboutPuppy(puppy, null);
        return { value: { puppy }, about: { ...about, who: `${about.who}: ${STATE_SAID[state]}` } };
      });
    },

    'litter.arrange': ({ litterId, puppyIds }) => {
      const litter = litterOf(c, litterId);
      const ids = new Set(puppyIds);
      if (ids.size !== puppyIds.length) throw new ContractFailure('bad-input', 'a puppy is named twice', 'puppyIds');
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

/** A birth is within a day before and three days after the whelping began. */
export function checkBirth(c: Context, litter: Litter, { bornAt, bornInstant }: PuppyFields): void {
  checkTime(c, bornAt, bornInstant, 'fields.bornInstant');
  const after = bornInstant - litter.whelpedInstant;
  if (after < -DAY_MS || after > 3 * DAY_MS) {
    throw new ContractFailure('bad-input', 'the birth does not fit the day of whelping', 'fields.bornInstant');
  }
}

/** A corrected day of whelping may not leave weighings more than a day before it. */
function checkWhelping(c: Context, litterId: string, fields: LitterFields): void {
  checkTime(c, fields.whelpedAt, fields.whelpedInstant, 'fields.whelpedInstant');
  const first = firstWeighing(c.store.db, litterId);
  if (first !== null && first < fields.whelpedInstant - DAY_MS) {
    throw new ContractFailure('bad-input', 'puppies were weighed before that day', 'fields.whelpedInstant');
  }
}

export function checkLetter(others: readonly Puppy[], collar: Collar): void {
  if (others.some((p) => p.collar.letter === collar.letter)) {
    throw new ContractFailure('conflict', `letter ${collar.letter} is taken in this litter`, 'fields.collar.letter');
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
