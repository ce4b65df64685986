/** The demo litters, and what the file is. */
import { statSync } from 'node:fs';
import type Database from 'better-sqlite3';
import type { Tag } from '../../core/contract/result.ts';
import { inventedRows } from './belonging.ts';
import { overwriteFreed } from './erase.ts';
import { insertRow, type Recorder } from './journal.ts';
import { type TableName, tagsOf } from './tables.ts';

export function hasDemo(db: Database.Database): boolean {
  return db.prepare('SELECT 1 FROM litters WHERE demo = 1 LIMIT 1').get() !== undefined;
}

/** Writes rows in one transaction without a journal entry: for the demo only. Answers the tags of what was written. */
export function writeUnrecorded(db: Database.Database, work: (writer: Pick<Recorder, 'insert'>) => void): Tag[] {
  const written = new Set<TableName>();
  const insert: Recorder['insert'] = (table, row) => {
    insertRow(db, table, row);
    written.add(table);
  };
  db.transaction(() => work({ insert })).immediate();
  return tagsOf(written);
}

/**
 * Takes out every demo row and what belongs to it, with the journal entries that were about any of it, and overwrites
 * where they were. Answers the tags of what went: none when there was no demo.
 */
export function removeDemo(db: Database.Database): Tag[] {
  if (!hasDemo(db)) return [];
  const gone = new Set<TableName>();
  db.transaction(() => {
    db.pragma('defer_foreign_keys = ON'); // rows name each other both ways
    const going = inventedRows(db);
    for (const [table, ids] of going) {
      if (ids.size > 0) gone.add(table);
      forgetEntriesAbout(db, table, [...ids]);
    }
    for (const [table, ids] of going)
      db.prepare(`DELETE FROM ${table} WHERE id IN (SELECT value FROM json_each(?))`).run(JSON.stringify([...ids]));
  }).immediate();
  overwriteFreed(db);
  return [...tagsOf(gone), 'records'];
}

function forgetEntriesAbout(db: Database.Database, table: TableName, ids: readonly string[]): void {
  const list = JSON.stringify(ids);
  // What it was about names the row: let go of the entry before the row.
  const about = { litters: 'litterId', puppies: 'puppyId' }[table as string];
  if (about !== undefined) db.prepare(`DELETE FROM journal WHERE ${about} IN (SELECT value FROM json_each(?))`).run(list);
  db.prepare(
    `DELETE FROM journal WHERE EXISTS (SELECT 1 FROM json_each(journal.changes) c
       WHERE c.value ->> 'table' = ? AND c.value ->> 'id' IN (SELECT value FROM json_each(?)))`,
  ).run(table, list);
}

/** Bytes of the data file with its write-ahead log. */
export function fileBytes(file: string): number {
  return statSync(file).size + (statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0);
}
