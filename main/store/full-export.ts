/**
 * Everything in the data file as tables: what the exports say and what is taken in again. Which tables and columns there
 * are, and what may stand in them, is read off the file itself, so that nothing is left out when a table is added. The list
 * of things done stays behind: it is for undo, and belongs to the file it was made in.
 */

import type Database from 'better-sqlite3';
import { z } from 'zod';
import { dateSchema, gramsSchema, idSchema, instantSchema, localTimeSchema } from '../../core/units/fields.ts';
import { inventedRows } from './belonging.ts';
import type { Cell, Row } from './rows.ts';
import { documentSchema, isTable, NOT_FACTS } from './tables.ts';

/** What a column holds. `flag` is a mark, yes or no; `json` is a document. */
type Kind = 'text' | 'whole' | 'number' | 'flag' | 'json';

export interface ColumnShape {
  readonly name: string;
  readonly kind: Kind;
  readonly nullable: boolean;
  /** The words that may stand in it; null when it is free. */
  readonly words: readonly string[] | null;
  /** The table that it names a row of. */
  readonly names: string | null;
}

export interface TableShape {
  readonly name: string;
  readonly columns: readonly ColumnShape[];
  /** There is one row at most, or one under a name of its own: settings, not things. */
  readonly settings: boolean;
}

interface InfoRow {
  readonly name: string;
  readonly type: string;
  readonly notnull: number;
}

/** The tables of facts, by name. */
export function tableShapes(db: Database.Database): TableShape[] {
  return db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~' ORDER BY name",
    )
    .all()
    .filter(({ name }) => !Object.hasOwn(NOT_FACTS, name))
    .map(({ name, sql }) => ({ name, columns: columnsOf(db, name, sql), settings: /CHECK \(.*\bid = '/.test(sql) }));
}

function columnsOf(db: Database.Database, table: string, sql: string): ColumnShape[] {
  const names = db
    .prepare<[string], { from: string; table: string }>('SELECT "from", "table" FROM pragma_foreign_key_list(?)')
    .all(table);
  return db
    .prepare<[string], InfoRow>('SELECT name, type, "notnull" FROM pragma_table_info(?)')
    .all(table)
    .map(({ name, type, notnull }) => {
      const listed = new RegExp(String.raw`\b${name} IN \(([^)]*)\)`).exec(sql)?.[1]?.split(',');
      const values = listed?.map((v) => v.trim().replace(/^'|'$/g, '')) ?? null;
      const isFlag = type === 'INTEGER' && values?.join() === '0,1';
      const isJson = sql.includes(`json_valid(${name})`);
      return {
        name,
        kind: isFlag ? 'flag' : isJson ? 'json' : type === 'TEXT' ? 'text' : type === 'INTEGER' ? 'whole' : 'number',
        nullable: notnull === 0,
        words: isFlag ? null : values,
        names: names.find((n) => n.from === name)?.table ?? null,
      };
    });
}

function valueSchema(table: TableShape, { name, kind, words }: ColumnShape): z.ZodType {
  if (words !== null) return z.enum(words);
  if (kind === 'json') return documentSchema(table.name, name) ?? z.json();
  if (kind === 'flag') return z.boolean();
  if (kind === 'whole') return /instant$/i.test(name) ? instantSchema : z.int();
  if (kind === 'number') return name === 'grams' ? gramsSchema : z.number();
  if (/^(?:at|\w+At)$/.test(name)) return localTimeSchema;
  if (/^(?:day|\w+(?:Day|On)|handedOver)$/.test(name)) return dateSchema;
  if (name === 'id' && !table.settings) return idSchema;
  return z.string().refine((t) => t.isWellFormed(), 'holds half a character');
}

/** The JSON export: everything, with the shape of the file it came from. */
export function exportSchema(tables: readonly TableShape[], shape: number) {
  const rowsOf = (table: TableShape) =>
    z.array(
      z.strictObject(
        Object.fromEntries(
          table.columns.map((column) => {
            const value = valueSchema(table, column);
            return [column.name, column.nullable ? value.nullable() : value];
          }),
        ),
      ),
    );
  return z.strictObject({
    $schema: z.string().optional(),
    format: z.literal('whelpside'),
    version: z.literal(1),
    shape: z.literal(shape),
    exported: localTimeSchema,
    tables: z.strictObject(Object.fromEntries(tables.map((table) => [table.name, rowsOf(table)]))),
  });
}

/** JSON Schema, draft 2020-12, of the export of this file. */
export function exportJsonSchema(db: Database.Database): object {
  const schema = z.toJSONSchema(exportSchema(tableShapes(db), shapeOf(db)), { io: 'input', target: 'draft-2020-12' });
  return { ...schema, title: 'Whelpside export', description: 'Everything that is written in one data file of Whelpside.' };
}

export function shapeOf(db: Database.Database): number {
  return Number(db.pragma('user_version', { simple: true }));
}

export interface TableRows extends TableShape {
  readonly rows: readonly Row[];
}

/** Every row as it stands. */
export function allRows(db: Database.Database): TableRows[] {
  return tableShapes(db).map((table) => ({
    ...table,
    rows: db.prepare<[], Row>(`SELECT * FROM ${table.name} ORDER BY rowid`).all(),
  }));
}

/** Every row but those of invented litters and what hangs on them. */
export function exportedRows(db: Database.Database): TableRows[] {
  const invented = inventedRows(db);
  const isInvented = (table: string, row: Row) => isTable(table) && invented.get(table)?.has(String(row['id'])) === true;
  return allRows(db).map((table) => ({ ...table, rows: table.rows.filter((row) => !isInvented(table.name, row)) }));
}

/** A cell as JSON has it. */
export function asJson(column: ColumnShape, cell: Cell): unknown {
  if (cell === null) return null;
  if (column.kind === 'flag') return cell === 1;
  return column.kind === 'json' ? JSON.parse(String(cell)) : cell;
}

/** A cell of the file out of what JSON has. */
export function asCell(column: ColumnShape, value: unknown): Cell {
  if (value === null) return null;
  if (column.kind === 'json') return JSON.stringify(value);
  if (column.kind === 'flag') return value === true ? 1 : 0;
  return typeof value === 'number' ? value : String(value);
}
