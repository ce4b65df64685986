import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { TAGS } from '../../../core/contract/result.ts';
import { MIGRATIONS, runStep } from '../../../main/store/migrations.ts';
import { isReadable, NOT_FACTS, TABLES, type TableName, tableOf } from '../../../main/store/tables.ts';

const db = new Database(':memory:');
for (const step of MIGRATIONS) runStep(db, step);

const NAMES = Object.keys(TABLES) as TableName[];
const columnsOf = (table: string) => db.prepare<[string], string>('SELECT name FROM pragma_table_info(?)').pluck().all(table);

it('every table of the file is declared, or named as no fact', () => {
  const sql = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~'";
  const there = db.prepare<[], string>(sql).pluck().all();
  expect([...NAMES, ...Object.keys(NOT_FACTS)].sort()).toEqual(there.sort());
});

it.each(NAMES)('%s is declared whole', (name) => {
  const { mark, belongs, personal, tag, documents } = tableOf(name);
  const columns = columnsOf(name);
  // A row can be marked as taken back exactly when the table has a column for it.
  expect(mark).toBe(columns.find((column) => column === 'removed' || column === 'withdrawn') ?? null);
  expect(columns).toEqual(expect.arrayContaining([...belongs.map((b) => b.by), ...personal, ...Object.keys(documents ?? {})]));
  expect(TAGS).toContain(tag);
  // What a row names in another table it belongs to; a weight names those it replaces, which are no owners.
  const named = db
    .prepare<[string], { to: string; by: string }>('SELECT "table" AS "to", "from" AS "by" FROM pragma_foreign_key_list(?)')
    .all(name);
  const owners = named.filter(({ to }) => to !== name);
  expect([...belongs].sort(byColumn)).toEqual(owners.sort(byColumn));
});

it.each(NAMES)('%s holds what is personal as text that can be emptied', (name) => {
  const { personal } = tableOf(name);
  const typed = db.prepare<[string], { name: string; type: string }>('SELECT name, type FROM pragma_table_info(?)').all(name);
  for (const column of personal) expect(typed.find((t) => t.name === column)?.type).toBe('TEXT');
});

it.each(NAMES)('%s refuses a row in which nothing stands', (name) => {
  expect(isReadable(name, Object.fromEntries(columnsOf(name).map((column) => [column, null])), MIGRATIONS.length)).toBe(false);
});

function byColumn(a: { by: string }, b: { by: string }): number {
  return a.by < b.by ? -1 : 1;
}
