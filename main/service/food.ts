/** Foods; what litters and the house eat. */
import type { CivilDate } from '../../core/calendar/day.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { fedFoodOn } from '../../core/feeding/fed-food.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { type FoodCatalogue, foodCatalogue } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type FoodFields, foodChecks, type StoredFood } from '../../core/food/own-food.ts';
import { type Bowl, EMPTY_WEEK, type Feeding, feedingOf, withBowl } from '../../core/food/rotation.ts';
import { expectedAdultKg } from '../../core/growth/forecast.ts';
import { feedings, findFood, insertFood, setFeeding, storedFoods, updateFood } from '../store/food.ts';
import type { About, Written } from '../store/journal.ts';
import { aboutHouse, aboutLitter, found, litterOf } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function foodHandlers(c: Context): HandlersOf<'food'> {
  return { ...ownFoodHandlers(c), ...feedingsHandlers(c) };
}

type OwnFood = 'food.all' | 'food.add' | 'food.change' | 'food.retire';

function ownFoodHandlers(c: Context): Pick<HandlersOf<'food'>, OwnFood> {
  const { db } = c.store;
  return {
    'food.all': () => ({ foods: storedFoods(db) }),

    'food.add': ({ fields }) => {
      refuseWhatCannotBe(c, null, fields, 'fields');
      const food: StoredFood = { id: c.newId(), fields, retired: false };
      return command(c, 'food.add', (recorder) => {
        insertFood(recorder, food);
        return { value: { food }, about: aboutFood(food) };
      });
    },

    'food.change': ({ foodId, change }) =>
      command(c, 'food.change', (recorder) => {
        const old = found(findFood(db, foodId), 'food');
        const food: StoredFood = { ...old, fields: { ...old.fields, ...change } };
        refuseWhatCannotBe(c, foodId, food.fields, 'change');
        updateFood(recorder, food);
        return { value: { food }, about: aboutFood(food) };
      }),

    'food.retire': ({ foodId, retired }) => {
      const food: StoredFood = { ...found(findFood(db, foodId), 'food'), retired };
      return command(c, 'food.retire', (recorder) => {
        updateFood(recorder, food);
        return { value: { food }, about: aboutFood(food, retired) };
      });
    },
  };
}

function feedingsHandlers(c: Context): Omit<HandlersOf<'food'>, OwnFood> {
  const { db } = c.store;
  return {
    'food.feedings': () => ({ feedings: feedings(db) }),

    'food.choose': ({ litterId, foodId }) => {
      if (foodId !== null) needFoods(c, [foodId], 'foodId');
      return changeFeeding(c, 'food.choose', litterId, () => ({ foodId }));
    },

    'food.setWeek': ({ litterId, week }) => {
      needFoods(c, (week ?? []).flatMap((day) => Object.values(day)).flatMap(foodsIn), 'week');
      return changeFeeding(c, 'food.setWeek', litterId, () => ({ week }));
    },

    'food.changeWeek': ({ litterId, bowls }) => {
      needFoods(
        c,
        bowls.flatMap(({ bowl }) => (bowl === null ? [] : foodsIn(bowl))),
        'bowls',
      );
      return changeFeeding(c, 'food.changeWeek', litterId, () => {
        const week = feedingOf(feedings(db), litterId).week ?? EMPTY_WEEK;
        return { week: bowls.reduce((so, { bowl, ...place }) => withBowl(so, place, bowl), week) };
      });
    },
  };
}

/** Changes what a litter, or the house with null, eats. */
function changeFeeding(
  c: Context,
  operation: 'food.choose' | 'food.setWeek' | 'food.changeWeek',
  litterId: string | null,
  to: () => Partial<Feeding>,
): Written<{ feeding: Feeding }> {
  const about = litterId === null ? aboutHouse() : aboutLitter(litterOf(c, litterId));
  return command(c, operation, (recorder) => {
    const old = feedings(c.store.db).find((f) => f.litterId === litterId);
    const feeding: Feeding = { ...(old ?? { litterId, foodId: null, week: null, dogs: [] }), ...to() };
    setFeeding(c.store.db, recorder, feeding);
    return { value: { feeding }, about };
  });
}

function aboutFood({ id, fields: { name } }: StoredFood, retired?: boolean): About {
  const food = { id, name };
  return aboutHouse(retired === undefined ? { of: 'food', food } : { of: 'food', food, retired });
}

function foodsIn(bowl: Bowl): string[] {
  return bowl.kind === 'bone' ? [bowl.foodId] : bowl.parts.map((p) => p.foodId);
}

function needFoods(c: Context, ids: readonly string[], field: string): void {
  const catalogue = foodCatalogueOf(c);
  if (ids.some((id) => catalogue.find(id) === null)) throw new ContractFailure('not-found', 'there is no such food', field);
}

function refuseWhatCannotBe(c: Context, foodId: string | null, fields: FoodFields, under: 'fields' | 'change'): void {
  const catalogue = foodCatalogueOf(c);
  const stop = foodChecks(foodId, fields, catalogue.find, catalogue.uses).find((check) => check.severity === 'stop');
  if (stop !== undefined) throw new ContractFailure('bad-input', stop.code, `${under}.${stop.field}`);
}

function foodCatalogueOf(c: Context): FoodCatalogue {
  return foodCatalogue(storedFoods(c.store.db));
}

/** The food that a litter's amounts and energy are reckoned with on a day. */
export function foodOn(c: Context, litterId: string, rules: HouseRules, born: CivilDate, day: CivilDate): Food {
  const adultKg = expectedAdultKg(litterOf(c, litterId), 'bitch')?.kg ?? null;
  return fedFoodOn({ catalogue: foodCatalogueOf(c), feedings: feedings(c.store.db) }, litterId, rules, born, day, adultKg);
}
