/** House rules, and the rules of a litter. */

import { z } from 'zod';
import { litterRulesSchema, rulesChangeSchema, rulesVersionSchema } from '../feeding/rules.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const FEEDING_OPERATIONS = {
  'feeding.rules': op({
    kind: 'query',
    input: nothing,
    /** Latest `from` first; the defaults of the program are the last. What litters have of their own stands beside. */
    output: z.strictObject({ versions: z.array(rulesVersionSchema).min(1), ofLitters: z.array(litterRulesSchema) }),
    tags: ['rules', 'litters'],
  }),
  /** A new version in force from a day: the rules of that day with the change. A version of the same day is replaced. */
  'feeding.setRules': op({
    kind: 'command',
    input: z.strictObject({ from: dateSchema, change: rulesChangeSchema }),
    output: z.strictObject({ version: rulesVersionSchema }),
  }),
  /** Rules of one litter from a day on: those it goes by on that day with the change; null is the house's again. A version of the same day is replaced. */
  'feeding.setLitterRules': op({
    kind: 'command',
    input: z.strictObject({ litterId: idSchema, from: dateSchema, change: rulesChangeSchema.nullable() }),
    output: z.strictObject({ version: litterRulesSchema }),
  }),
} as const;
