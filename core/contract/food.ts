/** Foods, and what litters and the house eat. */

import { z } from 'zod';
import { MEAL_NAMES } from '../food/bowls.ts';
import { foodFieldsSchema, storedFoodSchema } from '../food/own-food.ts';
import { bowlSchema, DAYS_OF_WEEK, feedingSchema, weekSchema } from '../food/rotation.ts';
import { changeOf, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

const placedBowlSchema = z.strictObject({
  /** From Monday, 0. */
  day: z
    .number()
    .int()
    .min(0)
    .max(DAYS_OF_WEEK - 1),
  meal: z.enum(MEAL_NAMES),
  bowl: bowlSchema.nullable(),
});

export const FOOD_OPERATIONS = {
  /** Her own foods, retired ones too. Those shipped with the program are in `core/feeding/catalogue.ts`. */
  'food.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ foods: z.array(storedFoodSchema) }),
    tags: ['foods'],
  }),
  /** What can't be (`foodChecks` with `stop`) is refused. */
  'food.add': op({
    kind: 'command',
    input: z.strictObject({ fields: foodFieldsSchema }),
    output: z.strictObject({ food: storedFoodSchema }),
  }),
  /** As with a new food, what the change makes of the whole must be able to be. */
  'food.change': op({
    kind: 'command',
    input: z.strictObject({ foodId: idSchema, change: changeOf(foodFieldsSchema.shape) }),
    output: z.strictObject({ food: storedFoodSchema }),
  }),
  /** A retired food is no longer offered; where it is used it stays. */
  'food.retire': op({
    kind: 'command',
    input: z.strictObject({ foodId: idSchema, retired: z.boolean() }),
    output: z.strictObject({ food: storedFoodSchema }),
  }),
  /** What the house and the litters eat: only those for which something was written down. */
  'food.feedings': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ feedings: z.array(feedingSchema) }),
    tags: ['foods', 'litters', 'dogs'],
  }),
  /** The food that a litter (or the house, with null) is fed; a null food is the house's, or the generic mix. */
  'food.choose': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema.nullable(), foodId: idSchema.nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
  }),
  /** Some bowls of a week; a null bowl empties the place. A litter that has the house's week gets its own, begun from that. */
  'food.changeWeek': op({
    kind: 'command',
    input: z.strictObject({
      litterId: idSchema.nullable(),
      bowls: z.array(placedBowlSchema).min(1).max(28),
    }),
    output: z.strictObject({ feeding: feedingSchema }),
  }),
  /** The week of bowls of a litter or of the house; null takes it away. */
  'food.setWeek': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema.nullable(), week: weekSchema.nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
  }),
} as const;
