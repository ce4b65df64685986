/** Who eats what and when: the meals that the freezer has to be ready for. */

import { z } from 'zod';
import { fromLocalMinutes, type LocalTime } from '../calendar/clock.ts';
import { addDays, type CivilDate, dayNumber } from '../calendar/day.ts';
import type { HouseRules } from '../feeding/rules.ts';
import type { MealName } from '../food/bowls.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import type { Dog } from './pack.ts';

/** One bowl, or the bowls of a whole litter. `who` is what the thaw list calls them; `litterId` is null for a grown dog. */
export const demandSchema = z.strictObject({
  foodId: idSchema,
  day: dateSchema,
  clock: z.string().regex(/^\d\d:\d\d$/),
  grams: z.number().positive(),
  who: z.string(),
  litterId: idSchema.nullable(),
});
export type Demand = z.infer<typeof demandSchema>;

/** The moment of a meal. */
export function mealTime(demand: Pick<Demand, 'day' | 'clock'>): LocalTime {
  return fromLocalMinutes(
    dayNumber(demand.day) * 1440 + Number(demand.clock.slice(0, 2)) * 60 + Number(demand.clock.slice(3, 5)),
  );
}

const BY_COUNT: readonly (readonly MealName[])[] = [
  [],
  ['evening'],
  ['morning', 'evening'],
  ['morning', 'midday', 'evening'],
  ['morning', 'midday', 'afternoon', 'evening'],
];

/**
 * The meals of the dogs of the house; both days are included. `amountOn` answers grams for a day where they follow something (a dam's need); where
 * it answers null the dog's own fixed amount holds.
 */
export function dogDemand(
  dogs: readonly Dog[],
  rules: HouseRules,
  from: CivilDate,
  until: CivilDate,
  amountOn: (dog: Dog, day: CivilDate) => number | null = () => null,
): Demand[] {
  const demand: Demand[] = [];
  for (const dog of dogs) {
    const meals = BY_COUNT[dog.meals] ?? [];
    for (let day = from > dog.fromDay ? from : dog.fromDay; day <= until; day = addDays(day, 1)) {
      if (dog.untilDay !== null && day > dog.untilDay) break;
      const grams = (amountOn(dog, day) ?? dog.gramsADay) / meals.length;
      for (const meal of meals) {
        demand.push({ foodId: dog.foodId, day, clock: rules.mealTimes[meal], grams, who: dog.name, litterId: null });
      }
    }
  }
  return demand;
}
