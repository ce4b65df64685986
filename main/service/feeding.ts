/** House rules and rules of a litter, by the day they come into force; foods; what litters and the house eat. */
import { type CivilDate, date } from '../../core/calendar/day.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { type FoodBook, foodBook } from '../../core/feeding/book.ts';
import type { Food } from '../../core/feeding/food.ts';
import { mealsOn } from '../../core/feeding/meals.ts';
import { type FoodFields, foodChecks, type StoredFood } from '../../core/feeding/own-food.ts';
import { type Feeding, feedingOf, reckonedFood } from '../../core/feeding/rotation.ts';
import { DEFAULT_RULES, type LitterRules, ownRulesOn, type RulesVersion } from '../../core/feeding/rules.ts';
import {
  feedings,
  findFood,
  insertFood,
  insertLitterRules,
  insertRules,
  litterRules,
  litterRulesFrom,
  rulesFrom,
  rulesVersions,
  setFeeding,
  storedFoods,
  updateFood,
  updateLitterRules,
  updateRules,
} from '../store/feeding.ts';
import type { About } from '../store/journal.ts';
import { damHandlers } from './dam.ts';
import { aboutLitter, found, litterOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';
import { weaningHandlers } from './weaning.ts';

/** The rules of a breeder who has not written her own. */
const DEFAULTS: RulesVersion = { id: 'defaults', from: date('2026-01-01'), rules: DEFAULT_RULES };
const NOBODY: About = { who: '', grams: null, litterId: null, puppyId: null };

export function feedingHandlers(c: Context): HandlersOf<'feeding'> {
  return { ...rulesHandlers(c), ...foodHandlers(c), ...rotationHandlers(c), ...weaningHandlers(c), ...damHandlers(c) };
}

type Some<N extends keyof HandlersOf<'feeding'>> = Pick<HandlersOf<'feeding'>, N>;

function rulesHandlers(c: Context): Some<'feeding.rules' | 'feeding.setRules' | 'feeding.setLitterRules'> {
  const { db } = c.store;
  return {
    'feeding.rules': () => ({ versions: [...rulesVersions(db), DEFAULTS], ofLitters: litterRules(db) }),

    'feeding.setRules': ({ from, rules }) => {
      const old = rulesFrom(db, from);
      const version: RulesVersion = { id: old?.id ?? c.newId(), from, rules };
      return command(c, 'feeding.setRules', (recorder) => {
        if (old === null) insertRules(recorder, version);
        else updateRules(recorder, version);
        return { value: { version }, about: NOBODY };
      });
    },

    'feeding.setLitterRules': ({ litterId, from, rules }) => {
      const litter = litterOf(c, litterId);
      const old = litterRulesFrom(db, litterId, from);
      const version: LitterRules = { id: old?.id ?? c.newId(), litterId, from, rules };
      return command(c, 'feeding.setLitterRules', (recorder) => {
        if (old === null) insertLitterRules(recorder, version);
        else updateLitterRules(recorder, version);
        return { value: { version }, about: aboutLitter(litter) };
      });
    },
  };
}

function foodHandlers(c: Context): Some<'feeding.foods' | 'feeding.setFood' | 'feeding.retireFood'> {
  const { db } = c.store;
  return {
    'feeding.foods': () => ({ foods: storedFoods(db) }),

    'feeding.setFood': ({ foodId, fields }) => {
      const old = foodId === null ? null : found(findFood(db, foodId), 'food');
      refuseWhatCannotBe(c, foodId, fields);
      const food: StoredFood = { id: foodId ?? c.newId(), fields, retired: old?.retired ?? false };
      return command(c, 'feeding.setFood', (recorder) => {
        if (old === null) insertFood(recorder, food);
        else updateFood(recorder, food);
        return { value: { food }, about: { ...NOBODY, who: fields.name } };
      });
    },

    'feeding.retireFood': ({ foodId, retired }) => {
      const food: StoredFood = { ...found(findFood(db, foodId), 'food'), retired };
      return command(c, 'feeding.retireFood', (recorder) => {
        updateFood(recorder, food);
        return { value: { food }, about: { ...NOBODY, who: food.fields.name } };
      });
    },
  };
}

function rotationHandlers(
  c: Context,
): Some<'feeding.rotations' | 'feeding.chooseFood' | 'feeding.setRotation' | 'feeding.setGrownDogs'> {
  const { db } = c.store;
  const change = (
    operation: 'feeding.chooseFood' | 'feeding.setRotation' | 'feeding.setGrownDogs',
    litterId: string | null,
    to: Partial<Feeding>,
  ) => {
    const about = litterId === null ? NOBODY : aboutLitter(litterOf(c, litterId));
    const old = feedings(db).find((f) => f.litterId === litterId);
    const feeding: Feeding = { ...(old ?? { litterId, foodId: null, week: null, dogs: [] }), ...to };
    return command(c, operation, (recorder) => {
      setFeeding(db, recorder, feeding);
      return { value: { feeding }, about };
    });
  };
  return {
    'feeding.rotations': () => ({ feedings: feedings(db) }),

    'feeding.chooseFood': ({ litterId, foodId }) => {
      if (foodId !== null) needFoods(c, [foodId], 'foodId');
      return change('feeding.chooseFood', litterId, { foodId });
    },

    'feeding.setRotation': ({ litterId, week }) => {
      const bowls = (week ?? []).flatMap((day) => Object.values(day));
      needFoods(
        c,
        bowls.flatMap((b) => (b.kind === 'bone' ? [b.foodId] : b.parts.map((p) => p.foodId))),
        'week',
      );
      return change('feeding.setRotation', litterId, { week });
    },

    'feeding.setGrownDogs': ({ dogs }) => change('feeding.setGrownDogs', null, { dogs: dogs ?? [] }),
  };
}

function needFoods(c: Context, ids: readonly string[], field: string): void {
  const book = bookOf(c);
  if (ids.some((id) => book.find(id) === null)) throw new ContractFailure('not-found', 'there is no such food', field);
}

function refuseWhatCannotBe(c: Context, foodId: string | null, fields: FoodFields): void {
  const book = bookOf(c);
  const stop = foodChecks(foodId, fields, book.find, book.uses).find((check) => check.severity === 'stop');
  if (stop !== undefined) throw new ContractFailure('bad-input', stop.sentence, `fields.${stop.field}`);
}

function bookOf(c: Context): FoodBook {
  return foodBook(storedFoods(c.store.db));
}

/** The version in force on a day: the litter's own, else the house's latest that has begun, else the defaults. */
export function rulesOn(c: Context, day: CivilDate, litterId: string): RulesVersion {
  const { db } = c.store;
  return ownRulesOn(litterRules(db), litterId, day) ?? rulesVersions(db).find((v) => v.from <= day) ?? DEFAULTS;
}

/** The food that a litter's amounts and energy are reckoned with on a day. */
export function foodOn(c: Context, day: CivilDate, litterId: string, born: CivilDate): Food {
  const { rules } = rulesOn(c, day, litterId);
  return reckonedFood(feedingOf(feedings(c.store.db), litterId), bookOf(c), mealsOn(rules, born, day).shares);
}
