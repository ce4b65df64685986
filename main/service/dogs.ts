/** The grown dogs of the house; dams: begun before or after whelping, their dates, their weights. */

import { dateOf } from '../../core/calendar/clock.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { type Dam, type DamFields, damFieldsSchema } from '../../core/dogs/dam.ts';
import { type GrownDog, MOST_GROWN_DOGS } from '../../core/food/rotation.ts';
import {
  allDams,
  allDogs,
  damOfWeight,
  findDam,
  grownDogs,
  insertDam,
  insertDamWeight,
  insertGrownDog,
  removeDam,
  removeGrownDog,
  updateDam,
  withdrawDamWeight,
} from '../store/dogs.ts';
import type { About } from '../store/journal.ts';
import { aboutHouse, checkTime, found, litterOf, wholeOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function dogsHandlers(c: Context): HandlersOf<'dogs'> {
  const { db } = c.store;
  return {
    'dogs.all': () => ({ dogs: allDogs(db) }),

    'dogs.addGrown': ({ dog: fields }) =>
      command(c, 'dogs.addGrown', (recorder) => {
        if (grownDogs(db).length >= MOST_GROWN_DOGS) throw new ContractFailure('conflict', 'there are as many as can be');
        const dog: GrownDog = { ...fields, id: c.newId() };
        insertGrownDog(db, recorder, dog);
        return { value: { dog }, about: aboutHouse({ of: 'dog', name: dog.name }) };
      }),

    'dogs.removeGrown': ({ dogId }) =>
      command(c, 'dogs.removeGrown', (recorder) => {
        const { name } = found(grownDogs(db).find((d) => d.id === dogId) ?? null, 'dog');
        removeGrownDog(db, recorder, dogId);
        return { value: {}, about: aboutHouse({ of: 'dog', name }) };
      }),

    'dogs.dams': () => ({ dams: allDams(db) }),

    'dogs.damBegin': (fields) => {
      checkFields(c, fields, null, '');
      const dam: Dam = { id: c.newId(), fields, weights: [] };
      return command(c, 'dogs.damBegin', (recorder) => {
        insertDam(db, recorder, dam.id, fields);
        return { value: { dam }, about: aboutDam(dam, null) };
      });
    },

    'dogs.damChange': ({ damId, change }) =>
      command(c, 'dogs.damChange', (recorder) => {
        const old = damOf(c, damId);
        const dam: Dam = { ...old, fields: wholeOf(damFieldsSchema.safeParse({ ...old.fields, ...change })) };
        checkFields(c, dam.fields, damId, 'change.');
        updateDam(db, recorder, damId, dam.fields);
        return { value: { dam }, about: aboutDam(dam, null) };
      }),

    'dogs.damRemove': ({ damId }) => {
      const dam = damOf(c, damId);
      return command(c, 'dogs.damRemove', (recorder) => {
        removeDam(db, recorder, damId);
        return { value: {}, about: aboutDam(dam, null) };
      });
    },

    'dogs.damWeigh': ({ damId, weight }) => {
      const dam = damOf(c, damId);
      checkTime(c, weight.at, weight.instant, 'weight.instant');
      const kept = { ...weight, id: c.newId() };
      return command(c, 'dogs.damWeigh', (recorder) => {
        insertDamWeight(recorder, damId, kept);
        return { value: { weightId: kept.id }, about: aboutDam(dam, kept.grams) };
      });
    },

    'dogs.damWithdraw': ({ weightId }) => {
      const { damId, grams } = found(damOfWeight(db, weightId), 'weight');
      const dam = damOf(c, damId);
      return command(c, 'dogs.damWithdraw', (recorder) => {
        withdrawDamWeight(recorder, weightId);
        return { value: {}, about: aboutDam(dam, grams) };
      });
    },
  };
}

function damOf(c: Context, id: string): Dam {
  return found(findDam(c.store.db, id), 'dam');
}

function aboutDam({ fields }: Dam, grams: number | null): About {
  return { what: { of: 'dog', name: fields.name }, grams, litterId: fields.litterId, puppyId: null };
}

/** A litter that is there and has no other dam written; no date in the future or after the whelping. `under` is where the fields stand in the input. */
function checkFields(c: Context, fields: DamFields, damId: string | null, under: '' | 'change.'): void {
  const today = dateOf(c.now().local);
  const litter = fields.litterId === null ? null : litterOf(c, fields.litterId);
  if (litter !== null && allDams(c.store.db).some((d) => d.id !== damId && d.fields.litterId === litter.id)) {
    throw new ContractFailure('conflict', 'the litter has its dam already', `${under}litterId`);
  }
  for (const name of ['lh', 'ovulation', 'dioestrus', 'firstMating', 'lastMating'] as const) {
    const day = fields[name];
    if (day === null) continue;
    if (day > today) throw new ContractFailure('bad-input', 'the day is still to come', under + name);
    if (litter !== null && day > dateOf(litter.whelpedAt))
      throw new ContractFailure('bad-input', 'the day is after the whelping', under + name);
  }
}
