/**
 * What can be read of a damaged data file, written into a new one. Every page that is a leaf of a table is read by
 * itself; a row is taken only when the new file's own rules and the schemas of the facts let it in. The list of things
 * done is left out: with rows missing, undo would do something else than it says.
 */

import Database from 'better-sqlite3';
import type { Counts } from '../../core/contract/records.ts';
import { isLeaf, leavesUnder, type RawRow, rowsOf, type Value } from './cells.ts';
import { countsIn } from './counts.ts';
import { APPLICATION_ID, makePrivate, readHeader } from './file.ts';
import { MIGRATIONS, runStep } from './migrations.ts';
import { type Pages, readPages } from './pages.ts';
import type { Row } from './rows.ts';
import { isReadable, NOT_FACTS } from './tables.ts';

export interface Salvaged {
  readonly counts: Counts;
  /** Rows and cells that were seen but could not be taken. */
  readonly leftOut: number;
  /** Rows that could not be read and were taken from a backup. */
  readonly fromBackups: number;
}

/**
 * Reads `damaged` and makes `target`, which must not be there. What backups (the newest first) hold and the damaged file
 * lacks is taken from them, parents above all: without its puppy a weight would go. Changes nothing of any of them.
 */
export function salvage(damaged: string, target: string, backups: readonly string[] = []): Salvaged {
  makePrivate(target);
  const db = new Database(target);
  try {
    db.pragma('journal_mode = OFF'); // a half file is thrown away, a whole one made durable when it gets its place
    db.pragma('synchronous = OFF');
    makeTables(db, versionOf(damaged));
    db.pragma('foreign_keys = OFF'); // rows come in the order of their pages
    return db.transaction(() => {
      const unread = takeRows(db, readPages(damaged));
      const fromBackups = backups.reduce((taken, backup) => taken + takeFromBackup(db, backup), 0);
      return { leftOut: unread + dropOrphans(db), fromBackups, counts: countsIn(db) };
    })();
  } finally {
    db.close();
  }
}

function versionOf(file: string): number {
  const newest = MIGRATIONS.length;
  const version = headerVersion(file);
  return version >= 1 && version <= newest ? version : newest;
}

function headerVersion(file: string): number {
  try {
    return readHeader(file)?.userVersion ?? 0;
  } catch {
    return 0; // there is only a log
  }
}

function makeTables(db: Database.Database, version: number): void {
  db.pragma('auto_vacuum = INCREMENTAL');
  db.pragma(`application_id = ${APPLICATION_ID}`);
  for (const step of MIGRATIONS.slice(0, version)) runStep(db, step);
  db.pragma(`user_version = ${version}`);
}

interface Column {
  readonly name: string;
  /** Of a STRICT table: TEXT, INTEGER or REAL. */
  readonly type: string;
  /** Its number is the row's own, and not among the row's values. */
  readonly isRowid: boolean;
}

interface Table {
  readonly name: string;
  readonly reads: (row: Row) => boolean;
  readonly columns: readonly Column[];
}

function tablesOf(db: Database.Database): Table[] {
  const names = db
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~'")
    .pluck()
    .all();
  const shape = Number(db.pragma('user_version', { simple: true }));
  return names.map((name) => ({
    name,
    reads: (row) => isReadable(name, row, shape),
    columns: db
      .prepare<[string], { name: string; type: string; pk: number }>('SELECT name, type, pk FROM pragma_table_info(?)')
      .all(name)
      .map(({ name: of, type, pk }) => ({ name: of, type, isRowid: type === 'INTEGER' && pk === 1 })),
  }));
}

function takeRows(db: Database.Database, pages: Pages): number {
  const tables = tablesOf(db);
  const owners = ownersOf(pages, tables);
  let leftOut = 0;
  for (let number = 1; number <= pages.count; number += 1) {
    if (!isLeaf(pages, number) || (number === 1 && !owners.has(1))) continue;
    const { rows, unread } = rowsOf(pages, number);
    leftOut += unread + takePage(db, rows, inLikelyOrder(tables, owners.get(number), rows[0]?.values.length ?? 0));
  }
  return leftOut;
}

/** Which table a leaf page belongs to, as far as the file itself still says so. */
function ownersOf(pages: Pages, tables: readonly Table[]): Map<number, Table> {
  const owners = new Map<number, Table>();
  for (const leaf of leavesUnder(pages, 1)) {
    for (const { values } of rowsOf(pages, leaf).rows) {
      const [type, name, , root] = values;
      const table = tables.find((t) => type === 'table' && t.name === name);
      if (table === undefined || typeof root !== 'number' || root < 2) continue;
      for (const number of leavesUnder(pages, root)) if (!owners.has(number)) owners.set(number, table);
    }
  }
  return owners;
}

/** The table that the file names as the page's own, then those with just as many columns, then those that may have got more. */
function inLikelyOrder(tables: readonly Table[], owner: Table | undefined, width: number): Table[] {
  const same = tables.filter((table) => table.columns.length === width);
  return [...(owner === undefined ? [] : [owner]), ...same, ...tables.filter((table) => !same.includes(table))];
}

/** All rows of a page are of one table: the first that takes any of them. Answers how many were left out. */
function takePage(db: Database.Database, rows: readonly RawRow[], tables: readonly Table[]): number {
  for (const table of tables) {
    if (!rows.some((row) => fits(table, row))) continue;
    if (Object.hasOwn(NOT_FACTS, table.name)) return 0;
    const taken = rows.filter((row) => fits(table, row) && takeRow(db, table, row)).length;
    if (taken > 0) return rows.length - taken;
  }
  return isSchemaOrCount(rows) ? 0 : rows.length;
}

/** SQLite's own tables: the schema (five columns) and the highest numbers given (two: a name and a number). */
function isSchemaOrCount(rows: readonly RawRow[]): boolean {
  return rows.every(
    ({ values }) =>
      (values.length === 5 && (values[0] === 'table' || values[0] === 'index')) ||
      (values.length === 2 && typeof values[0] === 'string' && typeof values[1] === 'number'),
  );
}

/** A row of an older shape has fewer values: the columns that came later take their defaults. */
function fits(table: Table, { values }: RawRow): boolean {
  return values.length > 1 && values.length <= table.columns.length && values.every((value, n) => suits(table.columns[n], value));
}

function suits(column: Column | undefined, value: Value): boolean {
  if (column === undefined || column.isRowid) return value === null;
  return value === null || typeof value === (column.type === 'TEXT' ? 'string' : 'number');
}

function takeRow(db: Database.Database, table: Table, row: RawRow): boolean {
  const columns = table.columns.slice(0, row.values.length);
  return insertReadable(
    db,
    table,
    columns,
    columns.map((column, n) => (column.isRowid ? row.rowid : (row.values[n] ?? null))),
  );
}

/** Takes a row when the file's own rules and the schemas of the facts let it in. */
function insertReadable(db: Database.Database, table: Table, columns: readonly Column[], values: readonly Value[]): boolean {
  const names = columns.map((column) => `"${column.name}"`).join(', ');
  try {
    const insert = db.prepare(`INSERT INTO ${table.name} (${names}) VALUES (${columns.map(() => '?').join(', ')})`);
    const { lastInsertRowid } = insert.run(...values);
    const taken = db.prepare<[number | bigint], Row>(`SELECT * FROM ${table.name} WHERE rowid = ?`).get(lastInsertRowid);
    if (taken !== undefined && table.reads(taken)) return true;
    db.prepare(`DELETE FROM ${table.name} WHERE rowid = ?`).run(lastInsertRowid);
    return false;
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_CONSTRAINT')) return false;
    throw error;
  }
}

/** Takes what a backup holds and the file lacks, of the tables whose rows are marked when they are taken back, never deleted. */
function takeFromBackup(db: Database.Database, backup: string): number {
  let taken = 0;
  const from = openBackup(backup);
  if (from === null) return 0;
  try {
    const has = from.prepare<[string]>("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?");
    for (const table of tablesOf(db).filter((t) => t.columns.some((c) => c.name === 'removed' || c.name === 'withdrawn'))) {
      if (!has.get(table.name)) continue; // of another shape
      const isThere = db.prepare<[Value], number>(`SELECT 1 FROM ${table.name} WHERE id = ?`);
      for (const row of from.prepare<[], Row>(`SELECT * FROM ${table.name}`).iterate())
        if (isThere.get(row['id'] ?? null) === undefined && putRow(db, table, row)) taken += 1;
    }
  } catch (error) {
    if (!(error instanceof Database.SqliteError)) throw error; // a backup that is damaged too
  } finally {
    from.close();
  }
  return taken;
}

function openBackup(backup: string): Database.Database | null {
  try {
    return new Database(backup, { readonly: true, fileMustExist: true });
  } catch {
    return null;
  }
}

function putRow(db: Database.Database, table: Table, row: Row): boolean {
  const columns = table.columns.filter((column) => column.name in row);
  return insertReadable(
    db,
    table,
    columns,
    columns.map((column) => row[column.name] ?? null),
  );
}

/** Lets go of names of rows that are lost: a column that may be empty is emptied, else the row goes with them. */
function dropOrphans(db: Database.Database): number {
  let dropped = 0;
  for (;;) {
    const broken = db.pragma('foreign_key_check') as { table: string; rowid: number; fkid: number }[];
    if (broken.length === 0) return dropped;
    for (const { table, rowid, fkid } of broken) {
      const column = namingColumn(db, table, fkid);
      if (column.mayBeEmpty) db.prepare(`UPDATE ${table} SET ${column.name} = NULL WHERE rowid = ?`).run(rowid);
      else dropped += db.prepare(`DELETE FROM ${table} WHERE rowid = ?`).run(rowid).changes;
    }
  }
}

function namingColumn(db: Database.Database, table: string, fkid: number): { name: string; mayBeEmpty: boolean } {
  const keys = db.pragma(`foreign_key_list(${table})`) as { id: number; from: string }[];
  const name = keys.find((key) => key.id === fkid)?.from ?? '';
  const columns = db.pragma(`table_info(${table})`) as { name: string; notnull: number }[];
  return { name, mayBeEmpty: columns.find((column) => column.name === name)?.notnull === 0 };
}
