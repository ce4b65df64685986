/** What was done, as data: the words say it in the reader's language and units. */

import { z } from 'zod';
import { WAYS_OUT } from '../freezer/pack.ts';
import { PUPPY_STATES } from '../litter/litter.ts';
import { idSchema, instantSchema, longText } from '../units/fields.ts';
import { weaningNoteSchema } from '../weaning/eaten.ts';

/** What is shipped is named by its id in the words and has no name here, hers by the name that it had then. */
const foodSchema = z.strictObject({ id: idSchema, name: longText });
const packs = z.number().int().min(0);

/** All but people, who are written by their id: their names go when they are erased. */
const things = [
  /** Nobody of them in particular. */
  z.strictObject({ of: z.literal('house') }),
  z.strictObject({ of: z.literal('litter'), dam: longText, note: weaningNoteSchema.optional() }),
  z.strictObject({
    of: z.literal('puppies'),
    names: z.array(longText).min(1),
    /** Where the puppy is since. */
    state: z.enum(PUPPY_STATES).optional(),
    note: weaningNoteSchema.optional(),
  }),
  z.strictObject({ of: z.literal('dog'), name: longText }),
  z.strictObject({ of: z.literal('food'), food: foodSchema, retired: z.boolean().optional() }),
  /** Packs of these foods, each named once; `out` says how they went. */
  z.strictObject({ of: z.literal('packs'), packs, foods: z.array(foodSchema).min(1), out: z.enum(WAYS_OUT).optional() }),
  z.strictObject({ of: z.literal('stock'), packs }),
] as const;

/** As it stands in the file: names as they were then, codes and figures. */
export const aboutSchema = z.discriminatedUnion('of', [
  ...things,
  z.strictObject({ of: z.literal('person'), personId: idSchema }),
]);
export type DoneAbout = z.infer<typeof aboutSchema>;

export const doneSchema = z.strictObject({
  id: z.number().int(),
  instant: instantSchema,
  operation: z.string(),
  about: z.discriminatedUnion('of', [
    ...things,
    /** As the person is called now; empty when erased. */
    z.strictObject({ of: z.literal('person'), name: longText }),
    /** Of an entry that was written before there was data in it: the words of then. */
    z.strictObject({ of: z.literal('text'), text: z.string() }),
  ]),
  grams: z.number().nullable(),
  litterId: idSchema.nullable(),
  puppyId: idSchema.nullable(),
  undone: z.boolean(),
});
export type Done = z.infer<typeof doneSchema>;
