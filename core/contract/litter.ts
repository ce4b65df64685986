/** Litters and their puppies. */

import { z } from 'zod';
import { collarSchema } from '../litter/collar.ts';
import {
  litterFieldsSchema,
  litterSchema,
  PUPPY_STATES,
  puppyFieldsSchema,
  puppySchema,
  readingFieldsSchema,
} from '../litter/litter.ts';
import { changeOf, dateSchema, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

/** A litter with all its puppies. */
export const litterWithPuppies = z.strictObject({ litter: litterSchema, puppies: z.array(puppySchema) });

const birthWeight = readingFieldsSchema.pick({ grams: true, typed: true, unit: true, source: true });
const newPuppySchema = z.strictObject({ fields: puppyFieldsSchema, birthWeight: birthWeight.nullable() });
export type NewPuppy = z.output<typeof newPuppySchema>;

const puppyChangeSchema = changeOf({ ...puppyFieldsSchema.shape, collar: changeOf(collarSchema.shape) });
export type PuppyChange = z.output<typeof puppyChangeSchema>;

const birthTime = puppyFieldsSchema.pick({ bornAt: true, bornInstant: true });

export const LITTER_OPERATIONS = {
  'litter.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ litters: z.array(litterWithPuppies) }),
    tags: ['litters'],
  }),
  /** A litter with the puppies that are there already, in the order of birth: taken back and done again as one. */
  'litter.begin': op({
    kind: 'command',
    input: z.strictObject({ litter: litterFieldsSchema, puppies: z.array(newPuppySchema).max(30) }),
    output: litterWithPuppies,
  }),
  'litter.change': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, change: changeOf(litterFieldsSchema.shape) }),
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
    input: z.strictObject({ litterId: idSchema, ...newPuppySchema.shape }),
    output: z.strictObject({ puppy: puppySchema }),
  }),
  /** A birth that is moved takes its birth weight along. */
  'litter.changePuppy': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, change: puppyChangeSchema }),
    output: z.strictObject({ puppy: puppySchema }),
  }),
  /** Several births of a litter moved at once, each with its birth weight: when the day of the whelping was mended. */
  'litter.moveBirths': op({
    kind: 'command',
    input: z.strictObject({
      litterId: idSchema,
      births: z
        .array(z.strictObject({ puppyId: idSchema, ...birthTime.shape }))
        .min(1)
        .max(30),
    }),
    output: nothing,
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
