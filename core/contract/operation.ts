/** What one operation of the contract is. */
import { z } from 'zod';
import type { Tag } from './result.ts';

interface Shape {
  readonly input: z.ZodType;
  readonly output: z.ZodType;
  /** Bytes of the largest input, where it may be more than a host usually takes. */
  readonly largest?: number;
}

/** Reads facts. `tags`: what it depends on, each table it reads (`test/main/service/tags.test.ts` reads along). */
interface Query extends Shape {
  readonly kind: 'query';
  readonly tags: readonly Tag[];
}

/** Writes facts. What it changed follows from the tables that were written. */
interface Command extends Shape {
  readonly kind: 'command';
}

/** Works on files. `tags`: what it changes. */
interface Act extends Shape {
  readonly kind: 'act';
  readonly tags: readonly Tag[];
}

export function op<const O extends Query | Command | Act>(operation: O): O & Pick<Shape, 'largest'> {
  return operation;
}

/** The input of an operation that needs none, the output of one that answers nothing. */
export const nothing = z.strictObject({});
