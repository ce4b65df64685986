/** The house, the demo litters, and what the file is. */
import { statSync } from 'node:fs';
import type Database from 'better-sqlite3';
import { type House, storedHouseSchema } from '../../core/records/house.ts';
import { forgetChanges, overwriteFreed } from './erase.ts';
import { insertRow, type Recorder } from './journal.ts';

const HOUSE_ID = 'house';

/** What the breeder has written about the house; null before she has. */
export function storedHouse(db: Database.Database): House | null {
  const stored = db.prepare<[string], string>('SELECT house FROM house WHERE id = ?').pluck().get(HOUSE_ID);
  return stored === undefined ? null : storedHouseSchema.parse(JSON.parse(stored));
}

export function setHouse(db: Database.Database, recorder: Recorder, house: House): void {
  const text = JSON.stringify(house);
  if (storedHouse(db) === null) recorder.insert('house', { id: HOUSE_ID, house: text });
  else recorder.update('house', HOUSE_ID, { house: text });
}

const NOBODY = { breederName: '', address: '', phone: '', email: '', vetName: '', vetPhone: '' };

/** Erases whose house it is and whom to call, from the journal too; how weights and papers are shown stays. */
export function eraseHouse(db: Database.Database): void {
  const house = storedHouse(db);
  if (house === null) return;
  db.transaction(() => {
    db.prepare('UPDATE house SET house = ? WHERE id = ?').run(JSON.stringify({ ...house, ...NOBODY }), HOUSE_ID);
    forgetChanges(db, 'house', HOUSE_ID);
  }).immediate();
  overwriteFreed(db);
}

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
