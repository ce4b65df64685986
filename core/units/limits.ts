/** What a schema allows, for the form that asks for it: so that a limit stands once, in the schema. */
import type { z } from 'zod';

export interface NumberLimits {
  readonly low: number;
  readonly high: number;
  /** No part of one. */
  readonly integer: boolean;
}

type NumberSchema = z.ZodNumber | z.ZodNullable<z.ZodNumber>;

/** The bounds of a number, both included. RangeError when the schema has none: a form needs both. */
export function limitsOf(schema: NumberSchema): NumberLimits {
  const number = schema.type === 'nullable' ? schema.unwrap() : schema;
  const { minValue: low, maxValue: high } = number;
  // A whole number alone is bounded by what a number can hold, which is no bound of a form.
  const isBound = (n: number | null): n is number => n !== null && Math.abs(n) < Number.MAX_SAFE_INTEGER;
  if (!isBound(low) || !isBound(high)) throw new RangeError('a number without bounds');
  return { low, high, integer: number.isInt };
}

/** The same in another unit: `times` 100 for a share that is written in per cent. */
export function limitsIn(schema: NumberSchema, times: number): NumberLimits {
  const { low, high } = limitsOf(schema);
  const written = (bound: number) => Number((bound * times).toPrecision(12));
  return { low: written(low), high: written(high), integer: false };
}

/** The most characters of a text. RangeError when the schema has no such bound. */
export function longestOf(schema: z.ZodString): number {
  if (schema.maxLength === null || !Number.isFinite(schema.maxLength)) throw new RangeError('a text without a longest');
  return schema.maxLength;
}
