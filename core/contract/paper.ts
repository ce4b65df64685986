/** Everything that is printed, by kind, and the one way in which it is saved. */
import { z } from 'zod';
import { labelSheetSchema, labelsDocumentSchema, thawDocumentSchema, usedSchema } from '../freezer/paper-document.ts';
import { anyPlanSchema, whySchema } from '../homing/document.ts';
import { dateSchema, idSchema, localTimeSchema } from '../units/fields.ts';
import { prepDocumentSchema } from '../weaning/prep-document.ts';
import { op } from './operation.ts';

export const paperDocumentSchema = z.discriminatedUnion('kind', [
  anyPlanSchema,
  prepDocumentSchema,
  thawDocumentSchema,
  labelsDocumentSchema,
]);
export type PaperDocument = z.infer<typeof paperDocumentSchema>;

/** What a paper is about: the document follows from it and from the facts. `now` is what the clock of the kitchen says. */
export const paperOfSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('puppy'), puppyId: idSchema, on: dateSchema, why: whySchema.optional() }),
  z.strictObject({ kind: z.literal('handed-over'), planId: idSchema }),
  z.strictObject({ kind: z.literal('prep'), litterId: idSchema, day: dateSchema }),
  z.strictObject({ kind: z.literal('thaw'), now: localTimeSchema }),
  z.strictObject({ kind: z.literal('labels'), now: localTimeSchema, sheet: labelSheetSchema, used: usedSchema }),
]);
export type PaperOf = z.infer<typeof paperOfSchema>;

export const PAPER_OPERATIONS = {
  /** Null when there is nothing to print: no bowls that day, nothing that thaws. */
  'records.paper': op({
    kind: 'query',
    input: z.strictObject({ of: paperOfSchema }),
    output: z.strictObject({ document: paperDocumentSchema.nullable() }),
    tags: ['litters', 'readings', 'rules', 'foods', 'house', 'plans', 'weaning', 'dogs', 'freezer'],
  }),
  /** Writes a PDF into the papers folder and answers its name; `refused` when there is nothing to print or a sheet would be cut off. */
  'records.savePaper': op({
    kind: 'act',
    input: z.strictObject({ of: paperOfSchema, paper: z.enum(['a4', 'letter']) }),
    output: z.strictObject({ file: z.string(), folder: z.string() }),
    tags: [],
  }),
  'records.paperFile': op({
    kind: 'query',
    input: z.strictObject({ file: z.string().max(255) }),
    output: z.strictObject({ base64: z.string() }),
    tags: [],
  }),
} as const;
