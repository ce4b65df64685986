/** What everyone eats, day by day: the litters by weaning plan, rules, rotation and forecast weights, and the dogs that eat from the freezer. */

import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { Dam } from '../../core/dogs/dam.ts';
import { damDay } from '../../core/feeding/dam-day.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { type FoodBook, foodBook, foodOrDefault } from '../../core/food/catalogue.ts';
import { bowlOn, feedingOf, fillBowl } from '../../core/food/rotation.ts';
import { type Demand, dogDemand } from '../../core/freezer/demand.ts';
import type { Dog } from '../../core/freezer/pack.ts';
import { growthInput } from '../../core/growth/input.ts';
import type { Litter, Puppy } from '../../core/litter/litter.ts';
import { DEFAULT_HOUSE, type House } from '../../core/people/house.ts';
import { solidShare, type WeaningDay, type WeaningInput, weaningDays } from '../../core/weaning/weaning.ts';
import { allFromBowl } from '../../core/weaning/weaning-plan.ts';
import { weaningPuppies } from '../../core/weaning/weaning-puppies.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import { allDams } from '../store/dogs.ts';
import { feedings, storedFoods } from '../store/food.ts';
import { freezerDogs } from '../store/freezer.ts';
import { readingsOf } from '../store/growth.ts';
import { allLitters, puppiesOf } from '../store/litter.ts';
import { storedHouse } from '../store/people.ts';
import { weaningEventsOf, weaningPlanOf } from '../store/weaning.ts';
import { rulesOn } from './feeding.ts';
import type { Context } from './handlers.ts';

/** Grown puppies that were kept are dogs of the house by then, and are written down as such. */
const GROWN_DAYS = 400;

interface LitterDays {
  readonly litter: Litter;
  readonly puppies: readonly Puppy[];
  readonly rules: HouseRules;
  /** One for each day asked for. */
  readonly days: readonly WeaningDay[];
  readonly book: FoodBook;
  readonly unit: House['massUnit'];
}

/** Every meal of every eater on these days, both included. */
export function demandOf(c: Context, from: CivilDate, until: CivilDate): Demand[] {
  const { db } = c.store;
  const book = foodBook(storedFoods(db));
  const litters = allLitters(db).flatMap((litter) => litterDays(c, litter, book, from, until) ?? []);
  const rules = rulesOn(c, dateOf(c.now().local), '').rules;
  const dams = allDams(db);
  const dogs = dogDemand(freezerDogs(db), rules, from, until, (dog, day) => damGrams(dog, day, from, dams, litters, book));
  return [...litters.flatMap((l) => litterDemand(c, l)), ...dogs];
}

/** Null for a litter that never eats in these days. */
function litterDays(c: Context, litter: Litter, book: FoodBook, from: CivilDate, until: CivilDate): LitterDays | null {
  const { db } = c.store;
  const today = dateOf(c.now().local);
  const born = dateOf(litter.whelpedAt);
  const puppies = puppiesOf(db, litter.id);
  if (until < born || daysBetween(born, from) > GROWN_DAYS || !puppies.some((p) => isHere(p, from))) return null;
  const { rules } = rulesOn(c, today, litter.id);
  const plan = weaningPlanOf(db, litter.id) ?? allFromBowl(born, rules);
  const house = storedHouse(db) ?? DEFAULT_HOUSE;
  const growth = growthInput(litter, puppies, readingsOf(db, litter.id), house.scaleStepGrams);
  const fed = feedingOf(feedings(db), litter.id);
  const input: WeaningInput = {
    plan,
    events: weaningEventsOf(db, litter.id),
    rules,
    food: foodOrDefault(book, fed.foodId),
    sizeClass: litter.sizeClass,
    puppies: weaningPuppies(litter, puppies, growth),
    today,
    unit: house.massUnit,
  };
  const days = weaningDays(input, from, daysBetween(from, until) + 1);
  return { litter, puppies, rules, days, book, unit: house.massUnit };
}

/** Whether a puppy is in the house on a day. The day it leaves it has its morning meal here, and no other is counted. */
function isHere(puppy: Puppy, day: CivilDate): boolean {
  if (puppy.state === 'litter' || puppy.state === 'kept') return true;
  return puppy.stateOn !== null && day < puppy.stateOn;
}

function litterDemand(c: Context, { litter, puppies, rules, days, book, unit }: LitterDays): Demand[] {
  const fed = feedingOf(feedings(c.store.db), litter.id);
  const usual = foodOrDefault(book, fed.foodId);
  const who = catalogueOf('en').litterName(litter);
  return days.flatMap((day) => {
    const here = new Set(puppies.filter((p) => isHere(p, day.day)).map((p) => p.id));
    const eaters = day.puppies.filter((p) => here.has(p.puppyId) && p.grams !== null);
    return day.meals.flatMap(({ name }): Demand[] => {
      const grams = eaters.reduce((sum, p) => sum + (p.meals[name] ?? 0), 0);
      if (grams <= 0) return [];
      // Until they are weaned the mash is made of one food; then the bowls of the week begin.
      const bowl = day.weaned ? bowlOn(fed.week, day.day, name) : null;
      return fillBowl(bowl, grams, eaters.length, book, usual, unit)
        .filter((part) => part.grams > 0)
        .map((part) => ({
          foodId: part.food.id,
          day: day.day,
          clock: rules.mealTimes[name],
          grams: part.grams,
          who,
          litterId: litter.id,
        }));
    });
  });
}

/** What a dam needs on a day, in grams of the food she has here; null where her fixed amount holds. */
function damGrams(
  dog: Dog,
  day: CivilDate,
  from: CivilDate,
  dams: readonly Dam[],
  litters: readonly LitterDays[],
  book: FoodBook,
): number | null {
  const dam = dog.damId === null ? undefined : dams.find((d) => d.id === dog.damId);
  const weight = dam?.weights.findLast((w) => w.at.slice(0, 10) <= day) ?? dam?.weights[0];
  const food = book.find(dog.foodId);
  if (dam === undefined || weight === undefined || food === null) return null;
  const own = litters.find((l) => l.litter.id === dam.fields.litterId);
  if (dam.fields.litterId !== null && own === undefined) return null;
  const weaning = own?.days[daysBetween(from, day)];
  const need = damDay({
    fields: { ...dam.fields, foodKcalPer100g: food.kcalPer100g },
    kg: weight.grams / 1000,
    day,
    whelped: own === undefined ? null : dateOf(own.litter.whelpedAt),
    nursing: own?.puppies.filter((p) => isHere(p, day)).length ?? 0,
    solids: weaning === undefined ? 0 : solidShare(weaning),
  });
  return need.phase === 'before' || need.phase === 'dry' ? null : need.foodGrams;
}
