/** Dams, their weights, and the grown dogs of the house. */

import { z } from 'zod';
import { damFieldsSchema, damSchema, damWeightFieldsSchema } from '../dogs/dam.ts';
import { houseDogSchema } from '../dogs/dog.ts';
import { grownDogFieldsSchema, grownDogSchema } from '../food/rotation.ts';
import { changeOf, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const DOGS_OPERATIONS = {
  /** Every dog that is written down, by name: dams, sires, and those that are only fed. */
  'dogs.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ dogs: z.array(houseDogSchema) }),
    tags: ['dogs'],
  }),
  /** Refused (`conflict`) where there are as many as can be. */
  'dogs.addGrown': op({
    kind: 'command',
    input: z.strictObject({ dog: grownDogFieldsSchema }),
    output: z.strictObject({ dog: grownDogSchema }),
  }),
  'dogs.removeGrown': op({
    kind: 'command',
    input: z.strictObject({ dogId: idSchema }),
    output: nothing,
  }),
  /** Dams written down, the latest first. */
  'dogs.dams': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({ dams: z.array(damSchema) }),
    tags: ['dogs', 'litters'],
  }),
  /** Refused (`conflict`) for a litter that has its dam. */
  'dogs.damBegin': op({
    kind: 'command',
    input: damFieldsSchema,
    output: z.strictObject({ dam: damSchema }),
  }),
  'dogs.damChange': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema, change: changeOf(damFieldsSchema.shape) }),
    output: z.strictObject({ dam: damSchema }),
  }),
  'dogs.damRemove': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema }),
    output: nothing,
  }),
  'dogs.damWeigh': op({
    kind: 'command',
    input: z.strictObject({ damId: idSchema, weight: damWeightFieldsSchema }),
    output: z.strictObject({ weightId: idSchema }),
  }),
  'dogs.damWithdraw': op({
    kind: 'command',
    input: z.strictObject({ weightId: idSchema }),
    output: nothing,
  }),
} as const;
