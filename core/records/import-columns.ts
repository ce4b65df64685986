/**
 * What stands where in a table of weights. Two shapes are read: one row a weight, and a grid of days and puppies, either
 * way round. Answers entries, one for each weight that is written, still as text: `import.ts` judges them.
 */

import { type DateOrder, orderOf } from './import-dates.ts';
import { type ColumnsFault, type Entry, entriesOfGrid, entriesOfRows, type LitterWords, littersOf } from './import-entries.ts';
import type { Label } from './import-labels.ts';
import { type Column, columnsOf, findHeads, type Shape, shapeOf } from './import-shape.ts';
import type { Meaning } from './import-words.ts';
import type { Table } from './table.ts';

export interface TableRead {
  readonly shape: Shape;
  readonly columns: readonly Column[];
  /** Line of the headings; null when there are none. */
  readonly headingLine: number | null;
  readonly entries: readonly Entry[];
  readonly labels: readonly Label[];
  /** The litters that the table names, in its order; empty when it names none. */
  readonly litters: readonly LitterWords[];
  /** The order that figures with strokes are in, as the dates themselves tell; null when they don't. */
  readonly order: DateOrder | 'both' | null;
  /** Some dates can be read two ways until the order is known. */
  readonly twoWays: boolean;
  /** Some weights have no unit of their own. */
  readonly bareNumbers: boolean;
}

/** What the person said of the table, where it was not plain. */
export interface TableAnswers {
  readonly shape: Shape | null;
  /** Meanings by column. */
  readonly meanings: Readonly<Record<number, Meaning>>;
  /** Key of the litter to take in, where the table names several. */
  readonly litter: string | null;
}

export type ColumnsResult =
  | { readonly ok: true; readonly read: TableRead }
  | { readonly ok: false; readonly fault: ColumnsFault; readonly columns: readonly Column[]; readonly shape: Shape };

/** Reads a table; `answers` take precedence over what is found out. */
export function readColumns(table: Table, answers: TableAnswers): ColumnsResult {
  const heads = findHeads(table);
  const body = table.rows.slice(heads.row + 1);
  const lines = table.lines.slice(heads.row + 1);
  const shape = answers.shape ?? shapeOf(heads, body);
  const columns = columnsOf(shape, heads, body, answers.meanings);
  const refused = (fault: ColumnsFault): ColumnsResult => ({ ok: false, fault, columns, shape });
  if (body.length === 0) return refused('no-rows');
  const all = shape === 'rows' ? entriesOfRows(columns, body, lines) : entriesOfGrid(shape, columns, body, lines);
  if (typeof all === 'string') return refused(all);
  const litters = littersOf(columns, body);
  const entries = litters.length > 1 ? all.filter((e) => e.litterKey === answers.litter) : all;
  const days = entries.flatMap((e) => (e.entry.day === null ? [] : [e.entry.day]));
  const order = orderOf(days);
  const labels = new Map(entries.map((e) => [e.entry.label.key, e.entry.label]));
  return {
    ok: true,
    read: {
      shape,
      columns,
      headingLine: heads.row === -1 ? null : (table.lines[heads.row] ?? null),
      entries: entries.map((e) => e.entry),
      labels: [...labels.values()],
      litters,
      order,
      twoWays: days.some((d) => d.kind === 'figures' && d.dmy !== null && d.mdy !== null),
      bareNumbers: entries.some((e) => e.entry.unit === null && /\d\s*$/.test(e.entry.weightText)),
    },
  };
}
