import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { MIGRATIONS } from '../../../main/store/migrations.ts';
import { READ_TABLES } from '../../../main/store/salvage.ts';

it('every table of facts has its reader, so that no row which a bad disk changed is taken into a rescued file', () => {
  const db = new Database(':memory:');
  for (const step of MIGRATIONS) db.exec(step.sql);
  const sql = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~'";
  const tables = db.prepare<[], string>(sql).pluck().all();
  db.close();
  // The journal is not taken over; what it says would no longer hold.
  expect([...READ_TABLES, 'journal'].sort()).toEqual(tables.sort());
});
