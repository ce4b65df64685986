/** What can be printed: every document that a page of paper is drawn from. */
import { z } from 'zod';
import { planDocumentSchema } from '../homing/document.ts';
import { prepDocumentSchema } from '../weaning/prep-document.ts';

export const printDocumentSchema = z.union([planDocumentSchema, prepDocumentSchema]);
export type PrintDocument = z.infer<typeof printDocumentSchema>;
