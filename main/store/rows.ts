/** Rows as SQLite gives them, held against the schemas of the facts. */
import type { z } from 'zod';

export type Cell = string | number | null;
export type Row = Record<string, Cell>;

export function reads(schema: z.ZodObject, row: Record<string, unknown>): boolean {
  return schema.safeParse(picked(schema, row)).success;
}

/** What a schema speaks of. A file is rescued at the shape it has: a column that came later is empty in it. */
export function picked(schema: z.ZodObject, row: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(Object.keys(schema.shape).map((name) => [name, row[name] ?? null]));
}

export function json(cell: unknown): unknown {
  return typeof cell === 'string' ? JSON.parse(cell) : null;
}
