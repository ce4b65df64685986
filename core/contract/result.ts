/** What an operation answers: a value with the tags of what changed, or an error with a code from a closed list. */
import { z } from 'zod';

/** What may change; the window refreshes the queries that carry a changed tag. */
export const TAGS = [
  'litters',
  'readings',
  'rules',
  'house',
  'plans',
  'foods',
  'weaning',
  'care',
  'dogs',
  'freezer',
  'records',
] as const;
export type Tag = (typeof TAGS)[number];

export const ERROR_CODES = [
  'bad-input', // the input does not fit the schema, or contradicts itself
  'not-found', // it names a thing that is not there
  'conflict', // it fits, but not with what is there (a letter taken, a reading already superseded)
  'refused', // a rule of the house forbids it
  'nothing-to-undo',
  'nothing-to-redo',
  'no-way-back', // it was done by an earlier program, in a way that is no more
  'no-printer', // no engine that can make a PDF was found
  'disk-full',
  'read-only', // the folder or file cannot be written
  'damaged', // the file is not whole
  'busy', // another program holds the data file
  'unknown-operation',
  'forbidden', // the caller may not ask (host checks)
  'too-large',
  'unreachable', // the host does not answer (said by the window, never by a host)
  'internal',
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

export const contractErrorSchema = z.strictObject({
  code: z.enum(ERROR_CODES),
  /** For the log and for developers; people read the sentence that `words` has for the code. */
  message: z.string(),
  /** Path of the field at fault, dotted, when there is one. */
  field: z.string().optional(),
});
export type ContractError = z.infer<typeof contractErrorSchema>;

export type Result<T> = { ok: true; value: T; changed: Tag[] } | { ok: false; error: ContractError };

/** Thrown by services; dispatch turns it into a Result. Anything else thrown is `internal`. */
export class ContractFailure extends Error {
  readonly error: ContractError;
  constructor(code: ErrorCode, message: string, field?: string) {
    super(message);
    this.name = 'ContractFailure';
    this.error = field === undefined ? { code, message } : { code, message, field };
  }
}
