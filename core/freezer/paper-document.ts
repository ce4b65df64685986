/** The thaw list and the labels as documents: everything they say, worded and rounded. */
import { z } from 'zod';
import { dateSchema } from '../units/fields.ts';
import { languageSchema } from '../units/language.ts';

const text = z.string().max(1000);

export const thawDocumentSchema = z.strictObject({
  version: z.literal(1),
  kind: z.literal('thaw'),
  language: languageSchema,
  made: dateSchema,
  title: text,
  /** What the file is called. */
  name: text,
  lead: text,
  heads: z.strictObject({ box: text, out: text, what: text, ready: text, useBy: text, forWhom: text }),
  days: z.array(
    z.strictObject({
      heading: text,
      rows: z.array(
        z.strictObject({
          out: text,
          what: text,
          ready: text,
          useBy: text,
          /** Empty unless it is the earlier one. */ official: text,
          who: text,
        }),
      ),
    }),
  ),
  foot: text,
  /** When it was made, at the foot. */
  when: text,
});
export type ThawDocument = z.infer<typeof thawDocumentSchema>;

/** Labels of the common small sheets, or to be cut out of plain paper. */
export const labelSheetSchema = z.enum(['small', 'plain']);
export type LabelSheet = z.infer<typeof labelSheetSchema>;
/** Places on a sheet that may have been used before. */
export const usedSchema = z.number().int().min(0).max(40);

export const labelsDocumentSchema = z.strictObject({
  version: z.literal(1),
  kind: z.literal('labels'),
  language: languageSchema,
  made: dateSchema,
  title: text,
  /** What the file is called. */
  name: text,
  sheet: labelSheetSchema,
  used: usedSchema,
  useBy: text,
  labels: z.array(z.strictObject({ food: text, amount: text, by: text, foot: text })),
});
export type LabelsDocument = z.infer<typeof labelsDocumentSchema>;
