/** Takes everything in from an export, of this program or an earlier one, into a file that nothing is written in yet. */

import Database from 'better-sqlite3';
import { z } from 'zod';
import { allRows, asCell, exportSchema, type TableRows, tableShapes } from './full-export.ts';
import type { Recorder } from './journal.ts';
import { MIGRATIONS, runStep } from './migrations.ts';
import type { Cell } from './rows.ts';
import { isReadable, isTable, TABLES, type TableName, tableOf } from './tables.ts';

/** Why an export can't be taken in. `field` is where it does not fit. */
export class TakeInError extends Error {
  readonly code: 'foreign' | 'newer' | 'misfit' | 'not-empty';
  readonly field: string;
  constructor(code: TakeInError['code'], message: string, field = '') {
    super(message);
    this.name = 'TakeInError';
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
 * date: an export of an older program is read by the older rules. Throws TakeInError.
 */
export function readExported(value: unknown): TableRows[] {
  const head = headSchema.safeParse(value);
  if (!head.success) throw new TakeInError('foreign', 'not an export of this program');
  const { shape } = head.data;
  if (shape > MIGRATIONS.length) throw new TakeInError('newer', 'the export was written by a newer version');
  const db = new Database(':memory:');
  try {
    for (const step of MIGRATIONS.slice(0, shape)) runStep(db, step);
    putRows(db, value, shape);
    for (const step of MIGRATIONS.slice(shape)) runStep(db, step);
    const tables = allRows(db);
    checkReadable(tables);
    return tables;
  } finally {
    db.close();
  }
}

function putRows(db: Database.Database, value: unknown, shape: number): void {
  const shapes = tableShapes(db);
  const read = exportSchema(shapes, shape).safeParse(value);
  if (!read.success) {
    const issue = read.error.issues[0];
    throw new TakeInError('misfit', issue?.message ?? 'does not fit', issue?.path.map(String).join('.'));
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
        throw new TakeInError('misfit', 'the row breaks a rule of the file', `tables.${table.name}.${i}`);
      }
    }
  }
  const [broken] = db.pragma('foreign_key_check') as { table: string }[];
  if (broken !== undefined) throw new TakeInError('misfit', 'a row names another that is not there', `tables.${broken.table}`);
}

function checkReadable(tables: readonly TableRows[]): void {
  for (const table of tables) {
    const at = table.rows.findIndex((row) => !isReadable(table.name, row, MIGRATIONS.length));
    if (at !== -1) throw new TakeInError('misfit', 'the row can not be read', `tables.${table.name}.${at}`);
  }
}

/** Whether nothing is written in the file but settings; what was taken back counts as written. */
export function isEmpty(db: Database.Database): boolean {
  return (Object.keys(TABLES) as TableName[])
    .filter((name) => tableOf(name).isSetting !== true)
    .every((name) => db.prepare(`SELECT 1 FROM ${name} LIMIT 1`).get() === undefined);
}

/** Puts everything into an empty file, inside the recorder's transaction. TakeInError `not-empty` when it is not. */
export function takeIn(db: Database.Database, recorder: Recorder, tables: readonly TableRows[]): void {
  if (!isEmpty(db)) throw new TakeInError('not-empty', 'something is written in this file already');
  db.pragma('defer_foreign_keys = ON'); // until the end of the transaction
  for (const { name, rows } of tables) {
    if (rows.length === 0) continue;
    if (!isTable(name)) throw new Error(`no command writes ${name}`);
    const isThere = db.prepare<[Cell]>(`SELECT 1 FROM ${name} WHERE id = ?`);
    for (const row of rows) {
      const id = String(row['id']);
      if (tableOf(name).isSetting === true && isThere.get(id) !== undefined) recorder.update(name, id, row);
      else recorder.insert(name, { ...row, id });
    }
  }
}
