/** The freezer: deliveries, stock-taking, what goes out and how, who eats from it. When to take out what is reckoned in the window. */

import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { DoneAbout } from '../../core/contract/journal.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { foodCatalogue } from '../../core/food/catalogue.ts';
import { portionGrams } from '../../core/food/portion.ts';
import {
  DEFAULT_FREEZER,
  type EaterFields,
  gramsLeft,
  oldestFirst,
  type Pack,
  type Thaw,
  type WayOut,
} from '../../core/freezer/pack.ts';
import { findDam } from '../store/dogs.ts';
import { storedFoods } from '../store/food.ts';
import {
  eatersOf,
  endThaw,
  findPack,
  findThaw,
  insertPack,
  insertThaw,
  packsSince,
  removeEater,
  removeStarter,
  setEater,
  setFreezer,
  setStarter,
  starters,
  storedFreezer,
  thawsSince,
  updatePack,
} from '../store/freezer.ts';
import type { About, Recorder } from '../store/journal.ts';
import { aboutHouse, checkTime, found } from './facts.ts';
import { demandBetween } from './freezer-demand.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

/** Clocks of the window and of the program may be a little apart. */
const CLOCKS_APART_MS = 5 * 60_000;
const MOST_DAYS = 400;

export function freezerHandlers(c: Context): HandlersOf<'freezer'> {
  return { ...stockHandlers(c), ...outHandlers(c), ...thawHandlers(c), ...eaterHandlers(c) };
}

type Some<N extends keyof HandlersOf<'freezer'>> = Pick<HandlersOf<'freezer'>, N>;

function stockHandlers(
  c: Context,
): Some<'freezer.stock' | 'freezer.demand' | 'freezer.add' | 'freezer.changePacks' | 'freezer.count'> {
  const { db } = c.store;
  return {
    'freezer.stock': ({ since }) => ({
      packs: packsSince(db, since),
      thaws: thawsSince(db, since),
      eaters: eatersOf(db),
      starters: starters(db),
      settings: storedFreezer(db) ?? DEFAULT_FREEZER,
    }),

    'freezer.demand': ({ from, until }) => {
      if (daysBetween(from, until) > MOST_DAYS) throw new ContractFailure('bad-input', 'that is too many days', 'until');
      return { demand: demandBetween(c, from, until) };
    },

    'freezer.add': ({ count, pack: fields }) => {
      needFood(c, fields.foodId, 'pack.foodId');
      checkDays(c, fields.frozenOn, fields.bestBefore, 'pack.frozenOn');
      const { instant } = c.now();
      const added = Array.from({ length: count }, (): Pack => {
        return { ...fields, id: c.newId(), addedInstant: instant, left: fields.portions, gone: null, goneOn: null };
      });
      return command(c, 'freezer.add', (recorder) => {
        for (const pack of added) insertPack(recorder, pack);
        return { value: { packs: added }, about: aboutPacks(c, added, count * fields.grams) };
      });
    },

    'freezer.changePacks': ({ packIds, change }) =>
      command(c, 'freezer.changePacks', (recorder) => {
        const packs = packsOf(c, packIds);
        for (const pack of packs) {
          const { frozenOn, bestBefore } = { ...pack, ...change };
          checkDays(c, frozenOn, bestBefore, 'change.frozenOn');
          updatePack(recorder, pack.id, change);
        }
        return { value: {}, about: aboutPacks(c, packs, null) };
      }),

    'freezer.count': ({ on, counts }) => {
      const ids = counts.flatMap((g) => g.packIds);
      if (new Set(ids).size !== ids.length) throw new ContractFailure('bad-input', 'a pack is counted twice', 'counts');
      const groups = counts.map((g) => ({ packs: packsOf(c, g.packIds).sort(oldestFirst), there: g.there }));
      return command(c, 'freezer.count', (recorder) => {
        for (const { packs, there } of groups) countGroup(c, recorder, packs, there, on);
        return { value: {}, about: aboutHouse({ of: 'stock', packs: counts.reduce((sum, g) => sum + g.there, 0) }) };
      });
    },
  };
}

function outHandlers(c: Context): Some<'freezer.takeOut'> {
  return {
    'freezer.takeOut': ({ packIds, way, on }) => {
      const packs = packsOf(c, packIds);
      const grams = packs.reduce((sum, p) => sum + gramsLeft(p), 0);
      return command(c, 'freezer.takeOut', (recorder) => {
        for (const { id } of packs) updatePack(recorder, id, { gone: way, goneOn: on, left: 0 });
        return { value: {}, about: aboutPacks(c, packs, grams, way) };
      });
    },
  };
}

function countGroup(c: Context, recorder: Recorder, packs: readonly Pack[], there: number, on: CivilDate): void {
  for (const { id } of packs.slice(0, Math.max(0, packs.length - there)))
    updatePack(recorder, id, { gone: 'used', goneOn: on, left: 0 });
  const newest = packs.at(-1);
  if (newest === undefined) return;
  const { instant } = c.now();
  for (let n = packs.length; n < there; n += 1)
    insertPack(recorder, { ...newest, id: c.newId(), addedInstant: instant, left: newest.portions });
}

function thawHandlers(c: Context): Some<'freezer.thaw' | 'freezer.endThaw'> {
  const { db } = c.store;
  return {
    'freezer.thaw': ({ takes, at, instant, way }) => {
      checkTime(c, at, instant, 'instant');
      if (instant > c.now().instant + CLOCKS_APART_MS) {
        if (way === 'counter') throw new ContractFailure('refused', 'nothing is planned to thaw on the counter', 'way');
        throw new ContractFailure('bad-input', 'the time is still to come', 'instant');
      }
      const packs = packsOf(
        c,
        takes.map((t) => t.packId),
      );
      const thaws = takes.map(({ packId, portions }, i): Thaw => {
        const pack = packs[i];
        if (pack === undefined || pack.left < portions) {
          throw new ContractFailure('conflict', 'the pack does not hold so many portions any more', 'takes');
        }
        if (dateOf(at) < pack.frozenOn) throw new ContractFailure('bad-input', 'the pack was not frozen yet', 'at');
        return { id: c.newId(), packId, portions, at, instant, way, ended: null, endedAt: null };
      });
      const grams = takes.reduce((sum, t, i) => sum + t.portions * portionGrams(packs[i] as Pack), 0);
      return command(c, 'freezer.thaw', (recorder) => {
        for (const [i, thaw] of thaws.entries()) {
          insertThaw(recorder, thaw);
          updatePack(recorder, thaw.packId, { left: (packs[i] as Pack).left - thaw.portions });
        }
        return { value: { thaws }, about: aboutPacks(c, packs, grams) };
      });
    },

    'freezer.endThaw': ({ thawIds, ended, at, instant }) => {
      checkTime(c, at, instant, 'instant');
      const thaws = thawIds.map((id) => found(findThaw(db, id), 'thawed pack'));
      if (new Set(thawIds).size !== thawIds.length) throw new ContractFailure('bad-input', 'a pack is named twice', 'thawIds');
      for (const thaw of thaws) {
        if (thaw.ended !== null) throw new ContractFailure('conflict', 'that is gone already', 'thawIds');
        if (at < thaw.at) throw new ContractFailure('bad-input', 'that was not taken out yet', 'at');
      }
      const packs = [...new Set(thaws.map((t) => t.packId))].map((id) => found(findPack(db, id), 'pack'));
      return command(c, 'freezer.endThaw', (recorder) => {
        for (const thaw of thaws) endThaw(recorder, thaw.id, ended, at);
        return { value: {}, about: aboutPacks(c, packs, null, ended) };
      });
    },
  };
}

type Eaters = 'Dog' | 'Starter';

function eaterHandlers(
  c: Context,
): Some<`freezer.add${Eaters}` | `freezer.change${Eaters}` | `freezer.remove${Eaters}` | 'freezer.setSettings'> {
  const { db } = c.store;
  return {
    'freezer.addDog': ({ fields }) =>
      command(c, 'freezer.addDog', (recorder) => {
        checkDog(c, fields, 'fields');
        const dog = { id: c.newId(), ...fields };
        setEater(db, recorder, dog);
        return { value: { dog }, about: aboutHouse({ of: 'dog', name: dog.name }, dog.gramsADay) };
      }),

    'freezer.changeDog': ({ dogId, change }) =>
      command(c, 'freezer.changeDog', (recorder) => {
        const dog = { ...dogOf(c, dogId), ...change };
        checkDog(c, dog, 'change');
        setEater(db, recorder, dog);
        return { value: { dog }, about: aboutHouse({ of: 'dog', name: dog.name }, dog.gramsADay) };
      }),

    'freezer.removeDog': ({ dogId }) => {
      const dog = dogOf(c, dogId);
      return command(c, 'freezer.removeDog', (recorder) => {
        removeEater(db, recorder, dogId);
        return { value: {}, about: aboutHouse({ of: 'dog', name: dog.name }) };
      });
    },

    'freezer.addStarter': ({ fields }) =>
      command(c, 'freezer.addStarter', (recorder) => {
        needFood(c, fields.foodId, 'fields.foodId');
        const starter = { id: c.newId(), ...fields };
        const personId = setStarter(db, recorder, starter);
        return { value: { starter }, about: aboutHouse({ of: 'person', personId }, starter.grams) };
      }),

    'freezer.changeStarter': ({ starterId, change }) =>
      command(c, 'freezer.changeStarter', (recorder) => {
        const starter = { ...starterOf(c, starterId), ...change };
        needFood(c, starter.foodId, 'change.foodId');
        const personId = setStarter(db, recorder, starter);
        return { value: { starter }, about: aboutHouse({ of: 'person', personId }, starter.grams) };
      }),

    'freezer.removeStarter': ({ starterId }) => {
      starterOf(c, starterId);
      return command(c, 'freezer.removeStarter', (recorder) => {
        const personId = removeStarter(db, recorder, starterId);
        return { value: {}, about: aboutHouse({ of: 'person', personId }) };
      });
    },

    'freezer.setSettings': ({ change }) =>
      command(c, 'freezer.setSettings', (recorder) => {
        setFreezer(db, recorder, { ...(storedFreezer(db) ?? DEFAULT_FREEZER), ...change });
        return { value: {}, about: aboutHouse() };
      }),
  };
}

function checkDog(c: Context, { foodId, damId, fromDay, untilDay }: EaterFields, under: 'fields' | 'change'): void {
  needFood(c, foodId, `${under}.foodId`);
  if (damId !== null) found(findDam(c.store.db, damId), 'dam');
  if (untilDay !== null && untilDay < fromDay)
    throw new ContractFailure('bad-input', 'the last day is before the first', `${under}.untilDay`);
}

function dogOf(c: Context, id: string) {
  return found(eatersOf(c.store.db).find((d) => d.id === id) ?? null, 'dog');
}

function starterOf(c: Context, id: string) {
  return found(starters(c.store.db).find((s) => s.id === id) ?? null, 'starter pack');
}

/** Packs that still have something in the freezer, each named once. */
function packsOf(c: Context, ids: readonly string[]): Pack[] {
  if (new Set(ids).size !== ids.length) throw new ContractFailure('bad-input', 'a pack is named twice', 'packIds');
  return ids.map((id) => {
    const pack = found(findPack(c.store.db, id), 'pack');
    if (pack.gone !== null || pack.left === 0) throw new ContractFailure('conflict', 'the pack is gone already', 'packIds');
    return pack;
  });
}

function needFood(c: Context, foodId: string, field: string): void {
  if (foodCatalogue(storedFoods(c.store.db)).find(foodId) === null)
    throw new ContractFailure('not-found', 'there is no such food', field);
}

/** Frozen at the latest today, and good on that day. */
function checkDays(c: Context, frozenOn: CivilDate, bestBefore: CivilDate | null, field: string): void {
  if (frozenOn > dateOf(c.now().local)) throw new ContractFailure('bad-input', 'the day is still to come', field);
  if (bestBefore !== null && bestBefore < frozenOn)
    throw new ContractFailure(
      'bad-input',
      'best before is before the day it was frozen',
      field.replace('frozenOn', 'bestBefore'),
    );
}

/** Packs by their foods, each named once. */
function aboutPacks(c: Context, packs: readonly Pack[], grams: number | null, out?: WayOut): About {
  const own = new Map(storedFoods(c.store.db).map((food) => [food.id, food.fields.name]));
  const foods = [...new Set(packs.map((p) => p.foodId))].map((id) => ({ id, name: own.get(id) ?? '' }));
  const what: DoneAbout = { of: 'packs', packs: packs.length, foods };
  return aboutHouse(out === undefined ? what : { ...what, out }, grams);
}
