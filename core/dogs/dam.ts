/** What is written about a dam and one pregnancy: her dates and her weights. Facts only. */

import { z } from 'zod';
import { dateSchema, gramsSchema, idSchema, instantSchema, lineSchema, localTimeSchema, shortText } from '../units/fields.ts';
import { MASS_UNITS } from '../units/mass.ts';

const day = dateSchema.nullable();

/** What is written about a dam and one pregnancy. */
export const damFieldsSchema = z
  .strictObject({
    name: shortText.min(1),
    /** The litter it became; null before she has whelped. */
    litterId: idSchema.nullable(),
    lh: day,
    ovulation: day,
    dioestrus: day,
    firstMating: day,
    lastMating: day,
    /** Energy of what she eats. */
    foodKcalPer100g: z.number().min(20).max(700).nullable(),
  })
  .refine((f) => f.firstMating === null || f.lastMating === null || f.firstMating <= f.lastMating, {
    message: 'the last mating is before the first',
    path: ['lastMating'],
  });
export type DamFields = z.infer<typeof damFieldsSchema>;

/** A dam of whom only the name is written. */
export function newDam(name: string, litterId: string | null): DamFields {
  return {
    name,
    litterId,
    lh: null,
    ovulation: null,
    dioestrus: null,
    firstMating: null,
    lastMating: null,
    foodKcalPer100g: null,
  };
}

export const damWeightFieldsSchema = z.strictObject({
  at: localTimeSchema,
  instant: instantSchema,
  grams: gramsSchema,
  typed: lineSchema(40),
  unit: z.enum(MASS_UNITS),
});

export const damSchema = z.strictObject({
  id: idSchema,
  fields: damFieldsSchema,
  /** Oldest first; those taken back are left out. */
  weights: z.array(z.strictObject({ ...damWeightFieldsSchema.shape, id: idSchema })),
});
export type Dam = z.infer<typeof damSchema>;
