/** A dog of the house or of a litter's papers: dam, sire, grown dog that eats. One row each. */
import { z } from 'zod';
import { idSchema, longText } from '../units/fields.ts';

export const houseDogSchema = z.strictObject({
  id: idSchema,
  name: longText.max(120),
  /** A dam is a bitch and a sire a dog; null of one that is only fed. */
  sex: z.enum(['dog', 'bitch']).nullable(),
});
export type HouseDog = z.infer<typeof houseDogSchema>;
