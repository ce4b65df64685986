/** A person the house has to do with: the breeder, the vet, who takes a puppy. */
import { z } from 'zod';
import { idSchema, longText } from '../units/fields.ts';

const line = longText.max(200);

export const personSchema = z.strictObject({
  id: idSchema,
  role: z.enum(['breeder', 'vet', 'buyer']),
  name: line,
  address: line,
  phone: line,
  email: line,
});
export type Person = z.infer<typeof personSchema>;
