/** Foods, and what litters and the house eat. */

import { z } from 'zod';
import { foodFieldsSchema, storedFoodSchema } from '../food/own-food.ts';
import { feedingSchema, weekSchema } from '../food/rotation.ts';
import { idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const FOOD_OPERATIONS = {
  /** Her own foods, retired ones too. Those shipped with the program are in `core/feeding/book.ts`. */
  'food.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ foods: z.array(storedFoodSchema) }),
    tags: ['foods'],
  }),
  /** A new food with a null id, else the food changed. What can't be (`foodChecks` with `stop`) is refused. */
  'food.set': op({
    kind: 'command',
    input: z.strictObject({ foodId: idSchema.nullable(), fields: foodFieldsSchema }),
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
  /** The week of bowls of a litter or of the house; null takes it away. */
  'food.setWeek': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema.nullable(), week: weekSchema.nullable() }),
    output: z.strictObject({ feeding: feedingSchema }),
  }),
} as const;
