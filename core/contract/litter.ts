/** Litters and their puppies. */

import { z } from 'zod';
import {
  litterFieldsSchema,
  litterSchema,
  PUPPY_STATES,
  puppyFieldsSchema,
  puppySchema,
  readingFieldsSchema,
} from '../litter/litter.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

/** A litter with all its puppies. */
export const litterWithPuppies = z.strictObject({ litter: litterSchema, puppies: z.array(puppySchema) });

const birthWeight = readingFieldsSchema.pick({ grams: true, typed: true, unit: true, source: true });

export const LITTER_OPERATIONS = {
  'litter.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ litters: z.array(litterWithPuppies) }),
    tags: ['litters'],
  }),
  'litter.begin': op({
    kind: 'command',
    input: litterFieldsSchema,
    output: z.strictObject({ litter: litterSchema }),
  }),
  'litter.change': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, fields: litterFieldsSchema }),
    output: z.strictObject({ litter: litterSchema }),
  }),
  /** Refused once a puppy of the litter has been weighed after birth or handed a plan. */
  'litter.remove': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema }),
    output: nothing,
  }),
  'litter.addPuppy': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, fields: puppyFieldsSchema, birthWeight: birthWeight.nullable() }),
    output: z.strictObject({ puppy: puppySchema }),
  }),
  'litter.changePuppy': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, fields: puppyFieldsSchema }),
    output: z.strictObject({ puppy: puppySchema }),
  }),
  /** Refused once the puppy has been weighed after birth or handed a plan. */
  'litter.removePuppy': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema }),
    output: nothing,
  }),
  'litter.setState': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, state: z.enum(PUPPY_STATES), on: dateSchema.nullable() }),
    output: z.strictObject({ puppy: puppySchema }),
  }),
  /** Order of the weigh-in: every puppy of the litter once. */
  'litter.arrange': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, puppyIds: z.array(idSchema).min(1).max(30) }),
    output: nothing,
  }),
} as const;
