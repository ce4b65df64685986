/** The prep sheet as a document: everything the page says, worded and rounded, so that preview, print and PDF are the same. */

import { z } from 'zod';
import { MEAL_NAMES } from '../food/bowls.ts';
import { collarSchema } from '../litter/collar.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { FOOD_UNITS } from '../units/food.ts';
import { languageSchema } from '../units/language.ts';

const text = z.string().max(1000);
const amounts = z.array(text).max(MEAL_NAMES.length);

export const prepDocumentSchema = z.strictObject({
  version: z.literal(1),
  kind: z.literal('prep'),
  language: languageSchema,
  litterId: idSchema,
  day: dateSchema,
  made: dateSchema,
  title: text,
  /** What the file is called. */
  name: text,
  heading: text,
  sub: text,
  /** Lines at the top right. */
  top: z.array(text),
  unit: z.enum(FOOD_UNITS),
  /** Clock time of each meal. */
  times: amounts,
  bowls: z.array(
    z.strictObject({
      name: text,
      rows: z.array(z.strictObject({ collar: collarSchema, name: text, note: text, amounts, day: text })),
      amounts,
    }),
  ),
  totals: z.array(z.strictObject({ label: text, amounts, day: text, strong: z.boolean() })),
  notes: z.array(z.strictObject({ heading: text, text, /** Empty lines to write on. */ lines: z.number().int().min(0).max(6) })),
  foot: text,
});
export type PrepDocument = z.infer<typeof prepDocumentSchema>;
