/** What can be printed: every document that a page of paper is drawn from. */
import { z } from 'zod';
import { prepDocumentSchema } from '../feeding/prep-document.ts';
import { planDocumentSchema } from '../homing/document.ts';

export const printDocumentSchema = z.union([planDocumentSchema, prepDocumentSchema]);
export type PrintDocument = z.infer<typeof printDocumentSchema>;
