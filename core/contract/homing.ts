/** Go-home plans: handed over and kept. What one says is a paper (`records.paper`). */

import { z } from 'zod';
import { whySchema } from '../homing/document.ts';
import { dateSchema, idSchema, instantSchema } from '../units/fields.ts';
import { op } from './operation.ts';

export const handedPlanSchema = z.strictObject({
  id: idSchema,
  puppyId: idSchema,
  handedOver: dateSchema,
  recordedInstant: instantSchema,
  title: z.string(),
});
export type HandedPlan = z.infer<typeof handedPlanSchema>;

export const HOMING_OPERATIONS = {
  /** Keeps the plan of that day as it is; with `leaves` the puppy is marked gone home that day in the same entry. Refused while a finding that blocks stands and `why` is empty. */
  'homing.handOver': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, on: dateSchema, leaves: z.boolean(), why: whySchema.optional() }),
    output: z.strictObject({ plan: handedPlanSchema }),
  }),
  'homing.handedOver': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ plans: z.array(handedPlanSchema) }),
    tags: ['plans', 'litters'],
  }),
} as const;
