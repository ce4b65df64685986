/** What one operation of the contract is. */
import { z } from 'zod';
import type { Tag } from './result.ts';

export interface Operation<I extends z.ZodType, O extends z.ZodType> {
  readonly kind: 'query' | 'command' | 'act';
  readonly input: I;
  readonly output: O;
  /** What a command or act may change; a query: what it depends on. */
  readonly tags: readonly Tag[];
  /** Bytes of the largest input, where it may be more than a host usually takes. */
  readonly largest?: number;
}

export function op<I extends z.ZodType, O extends z.ZodType>(o: Operation<I, O>): Operation<I, O> {
  return o;
}

/** The input of an operation that needs none, the output of one that answers nothing. */
export const nothing = z.strictObject({});
