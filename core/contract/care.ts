/** Chips, and what else is done for health. */

import { z } from 'zod';
import { chipChangeSchema, chipSchema } from '../care/microchip.ts';
import { idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const CARE_OPERATIONS = {
  /** The chips of a litter's puppies. */
  'care.chips': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ chips: z.array(chipSchema) }),
    tags: ['care', 'litters'],
  }),
  /**
   * The chip of a puppy, or what changes about it. `bad-input` when there is none and no number is given, or for a day before the
   * birth or to come; `conflict` when another puppy has the number; `refused` for a test number outside the demo.
   */
  'care.setChip': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, change: chipChangeSchema }),
    output: z.strictObject({ chip: chipSchema }),
  }),
  'care.removeChip': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema }),
    output: nothing,
  }),
} as const;
