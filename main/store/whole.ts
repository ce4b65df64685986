/**
 * The whole house as tables: what the exports say and what an import puts back. Which tables and columns there are, and
 * what may stand in them, is read off the file itself, so that nothing is left out when a table is added. The list of
 * things done stays behind: it is for undo, and belongs to the file it was made in.
 */

import Database from 'better-sqlite3';
import { z } from 'zod';
import { houseRulesSchema } from '../../core/feeding/rules.ts';
import { planDocumentSchema } from '../../core/homing/document.ts';
import { dateSchema, gramsSchema, idSchema, instantSchema, localTimeSchema } from '../../core/units/fields.ts';
import { type Cell, isJournaled, type Recorder, type Row } from './journal.ts';
import { MIGRATIONS } from './migrations.ts';
import { isReadable } from './salvage.ts';

const NOT_FACTS = ['journal'];

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
    .filter(({ name }) => !NOT_FACTS.includes(name))
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

/** Documents inside a column, as far as their schema is one for everything that was ever written there. */
const DOCUMENTS: Readonly<Record<string, z.ZodType>> = {
  'plans.document': planDocumentSchema,
  'rules.rules': houseRulesSchema,
};

function valueSchema(table: TableShape, { name, kind, words }: ColumnShape): z.ZodType {
  if (words !== null) return z.enum(words);
  if (kind === 'json') return DOCUMENTS[`${table.name}.${name}`] ?? z.json();
  if (kind === 'flag') return z.boolean();
  if (kind === 'whole') return /instant$/i.test(name) ? instantSchema : z.int();
  if (kind === 'number') return name === 'grams' ? gramsSchema : z.number();
  if (/^(?:at|\w+At)$/.test(name)) return localTimeSchema;
  if (/^(?:day|\w+(?:Day|On)|handedOver)$/.test(name)) return dateSchema;
  if (name === 'id' && !table.settings) return idSchema;
  return z.string().refine((t) => t.isWellFormed(), 'holds half a character');
}

/** The JSON export: everything, with the shape of the file it came from. */
export function wholeSchema(tables: readonly TableShape[], shape: number) {
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
export function wholeJsonSchema(db: Database.Database): object {
  const schema = z.toJSONSchema(wholeSchema(tableShapes(db), shapeOf(db)), { io: 'input', target: 'draft-2020-12' });
  return { ...schema, title: 'Whelpside export', description: 'Everything that is written in one data file of Whelpside.' };
}

export function shapeOf(db: Database.Database): number {
  return Number(db.pragma('user_version', { simple: true }));
}

export interface TableRows extends TableShape {
  readonly rows: readonly Row[];
}

/** Every row but those of invented litters and what hangs on them. */
export function wholeRows(db: Database.Database): TableRows[] {
  const tables = tableShapes(db).map((table) => ({
    ...table,
    rows: db.prepare<[], Row>(`SELECT * FROM ${table.name} ORDER BY rowid`).all(),
  }));
  const invented = new Map(tables.map((t) => [t.name, new Set<Cell>()]));
  const isInvented = (table: TableShape, row: Row) =>
    (table.name === 'litters' && row['demo'] === 1) ||
    table.columns.some(
      (c) => c.names !== null && row[c.name] !== null && invented.get(c.names)?.has(row[c.name] ?? null) === true,
    );
  for (let found = true; found; ) {
    found = false;
    for (const table of tables) {
      const ids = invented.get(table.name);
      for (const row of table.rows) {
        const id = row['id'] ?? null;
        if (ids === undefined || ids.has(id) || !isInvented(table, row)) continue;
        ids.add(id);
        found = true;
      }
    }
  }
  return tables.map((table) => ({
    ...table,
    rows: table.rows.filter((r) => invented.get(table.name)?.has(r['id'] ?? null) !== true),
  }));
}

/** A cell as JSON has it. */
export function asJson(column: ColumnShape, cell: Cell): unknown {
  if (cell === null) return null;
  if (column.kind === 'flag') return cell === 1;
  return column.kind === 'json' ? JSON.parse(String(cell)) : cell;
}

function asCell(column: ColumnShape, value: unknown): Cell {
  if (value === null) return null;
  if (column.kind === 'json') return JSON.stringify(value);
  if (column.kind === 'flag') return value === true ? 1 : 0;
  return typeof value === 'number' ? value : String(value);
}

/** Why an export can't be taken in. `field` is where it does not fit. */
export class WholeError extends Error {
  readonly code: 'foreign' | 'newer' | 'misfit' | 'not-empty';
  readonly field: string;
  constructor(code: WholeError['code'], message: string, field = '') {
    super(message);
    this.name = 'WholeError';
    this.code = code;
    this.field = field;
  }
}

const headSchema = z.looseObject({
  format: z.literal('whelpside'),
  version: z.literal(1),
  shape: z.int().min(1),
});

/**
 * Reads an export into tables of the newest shape, by building the file it came from in memory and bringing that up to
 * date: an export of an older program is read by the older rules. Throws WholeError.
 */
export function readWhole(value: unknown): TableRows[] {
  const head = headSchema.safeParse(value);
  if (!head.success) throw new WholeError('foreign', 'not an export of this program');
  const { shape } = head.data;
  if (shape > MIGRATIONS.length) throw new WholeError('newer', 'the export was written by a newer version');
  const db = new Database(':memory:');
  try {
    for (const step of MIGRATIONS.slice(0, shape)) db.exec(step.sql);
    putRows(db, value, shape);
    for (const step of MIGRATIONS.slice(shape)) db.exec(step.sql);
    const tables = tableShapes(db).map((t) => ({
      ...t,
      rows: db.prepare<[], Row>(`SELECT * FROM ${t.name} ORDER BY rowid`).all(),
    }));
    checkReadable(tables);
    return tables;
  } finally {
    db.close();
  }
}

function putRows(db: Database.Database, value: unknown, shape: number): void {
  const shapes = tableShapes(db);
  const read = wholeSchema(shapes, shape).safeParse(value);
  if (!read.success) {
    const issue = read.error.issues[0];
    throw new WholeError('misfit', issue?.message ?? 'does not fit', issue?.path.map(String).join('.'));
  }
  db.pragma('foreign_keys = OFF'); // rows name each other both ways
  for (const table of shapes) {
    const rows = (read.data.tables[table.name] ?? []) as readonly Record<string, unknown>[];
    const names = table.columns.map((c) => c.name);
    const insert = db.prepare(`INSERT INTO ${table.name} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`);
    for (const [i, row] of rows.entries()) {
      try {
        insert.run(...table.columns.map((c) => asCell(c, row[c.name] ?? null)));
      } catch (error) {
        if (!(error instanceof Database.SqliteError)) throw error;
        throw new WholeError('misfit', 'the row breaks a rule of the file', `tables.${table.name}.${i}`);
      }
    }
  }
  const [broken] = db.pragma('foreign_key_check') as { table: string }[];
  if (broken !== undefined) throw new WholeError('misfit', 'a row names another that is not there', `tables.${broken.table}`);
}

function checkReadable(tables: readonly TableRows[]): void {
  for (const table of tables) {
    const at = table.rows.findIndex((row) => !isReadable(table.name, row));
    if (at !== -1) throw new WholeError('misfit', 'the row can not be read', `tables.${table.name}.${at}`);
  }
}

/** Whether nothing is written in the file but settings; what was taken back counts as written. */
export function isEmpty(db: Database.Database): boolean {
  return tableShapes(db)
    .filter((table) => !table.settings)
    .every((table) => db.prepare(`SELECT 1 FROM ${table.name} LIMIT 1`).get() === undefined);
}

/** Puts everything into an empty file, inside the recorder's transaction. WholeError `not-empty` when it is not. */
export function putWhole(db: Database.Database, recorder: Recorder, tables: readonly TableRows[]): void {
  if (!isEmpty(db)) throw new WholeError('not-empty', 'something is written in this file already');
  db.pragma('defer_foreign_keys = ON'); // until the end of the transaction
  for (const { name, rows, settings } of tables) {
    if (rows.length === 0) continue;
    if (!isJournaled(name)) throw new Error(`no command writes ${name}`);
    const isThere = db.prepare<[Cell]>(`SELECT 1 FROM ${name} WHERE id = ?`);
    for (const row of rows) {
      const id = String(row['id']);
      if (settings && isThere.get(id) !== undefined) recorder.update(name, id, row);
      else recorder.insert(name, { ...row, id });
    }
  }
}
