/** The demo litters, and what the file is. */
import { statSync } from 'node:fs';
import type Database from 'better-sqlite3';
import { overwriteFreed } from './erase.ts';
import { insertRow, type Recorder } from './journal.ts';

export function hasDemo(db: Database.Database): boolean {
  return db.prepare('SELECT 1 FROM litters WHERE demo = 1 LIMIT 1').get() !== undefined;
}

/** Writes rows in one transaction without a journal entry: for the demo only. */
export function writeUnrecorded(db: Database.Database, work: (writer: Pick<Recorder, 'insert'>) => void): void {
  db.transaction(() => work({ insert: (table, row) => insertRow(db, table, row) })).immediate();
}

/** Takes every demo row out, journal entries included, and overwrites where they were. Answers whether there were any. */
export function removeDemo(db: Database.Database): boolean {
  if (!hasDemo(db)) return false;
  const litters = 'SELECT id FROM litters WHERE demo = 1';
  const puppies = `SELECT id FROM puppies WHERE litterId IN (${litters})`;
  const dams = `SELECT id FROM dams WHERE litterId IN (${litters})`;
  db.transaction(() => {
    db.prepare(`DELETE FROM journal WHERE litterId IN (${litters})`).run();
    // A dam may have been written before there was a litter for her.
    db.prepare(
      `DELETE FROM journal WHERE EXISTS (SELECT 1 FROM json_each(journal.changes) c
         WHERE c.value ->> 'id' IN (${dams} UNION SELECT id FROM damWeights WHERE damId IN (${dams})))`,
    ).run();
    db.prepare(`DELETE FROM damWeights WHERE damId IN (${dams})`).run();
    db.prepare(`DELETE FROM dams WHERE litterId IN (${litters})`).run();
    db.prepare(`DELETE FROM weaningEvents WHERE litterId IN (${litters})`).run();
    db.prepare(`DELETE FROM weaning WHERE id IN (${litters})`).run();
    db.prepare(`DELETE FROM plans WHERE puppyId IN (${puppies})`).run();
    // Readings name each other: let go of the names first.
    db.prepare(`UPDATE readings SET supersedes = NULL, supersededBy = NULL WHERE puppyId IN (${puppies})`).run();
    db.prepare(`DELETE FROM readings WHERE puppyId IN (${puppies})`).run();
    db.prepare(`DELETE FROM puppies WHERE litterId IN (${litters})`).run();
    for (const table of ['feeding', 'litterRules']) db.prepare(`DELETE FROM ${table} WHERE litterId IN (${litters})`).run();
    db.prepare('DELETE FROM litters WHERE demo = 1').run();
  }).immediate();
  overwriteFreed(db);
  return true;
}

/** Bytes of the data file with its write-ahead log. */
export function fileBytes(file: string): number {
  return statSync(file).size + (statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0);
}
