/** The plan of weaning, and what was noted of meals. */

import { z } from 'zod';
import { changeOf, idSchema } from '../units/fields.ts';
import { weaningEventSchema } from '../weaning/eaten.ts';
import { stepsChangeSchema, weaningPlanSchema } from '../weaning/weaning-plan.ts';
import { nothing, op } from './operation.ts';

/** All of a plan but its steps. */
const { steps: _, ...settings } = weaningPlanSchema.shape;

export const WEANING_OPERATIONS = {
  /** The plan of weaning, null before there is one, and what was noted: oldest first. */
  'weaning.plan': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ plan: weaningPlanSchema.nullable(), events: z.array(weaningEventSchema) }),
    tags: ['weaning', 'litters'],
  }),
  /** A plan to begin with. */
  'weaning.setPlan': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, plan: weaningPlanSchema }),
    output: z.strictObject({ plan: weaningPlanSchema }),
  }),
  'weaning.changePlan': op({
    kind: 'command',
    input: z.strictObject({
      litterId: idSchema,
      change: changeOf(settings),
    }),
    output: z.strictObject({ plan: weaningPlanSchema }),
  }),
  /** One step changed, put in or taken out, or the usual steps again. `conflict` when there is no such step any more. */
  'weaning.changeSteps': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, to: stepsChangeSchema }),
    output: z.strictObject({ plan: weaningPlanSchema }),
  }),
  /** Takes the plan away; what was noted stays. */
  'weaning.dropPlan': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema }),
    output: nothing,
  }),
  /** A meal eaten, left or refused; a stool; a pause; an answer to a suggestion. `day` is the day that it is about. */
  'weaning.note': op({
    kind: 'command',
    input: weaningEventSchema.omit({ id: true }),
    output: z.strictObject({ event: weaningEventSchema }),
  }),
  'weaning.takeBack': op({
    kind: 'command',
    input: z.strictObject({ eventId: idSchema }),
    output: nothing,
  }),
} as const;
