/** The house as a row, and how whose it is and whom to call is erased. */
import type Database from 'better-sqlite3';
import type { Tag } from '../../core/contract/result.ts';
import { type House, storedHouseSchema } from '../../core/people/house.ts';
import { forgetChanges, overwriteFreed } from './erase.ts';
import type { Recorder } from './journal.ts';
import { tagsOf } from './tables.ts';

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

/** Erases whose house it is and whom to call, from the journal too; how weights and papers are shown stays. Answers the tags of what changed. */
export function eraseHouse(db: Database.Database): Tag[] {
  const house = storedHouse(db);
  if (house === null) return [];
  db.transaction(() => {
    db.prepare('UPDATE house SET house = ? WHERE id = ?').run(JSON.stringify({ ...house, ...NOBODY }), HOUSE_ID);
    forgetChanges(db, 'house', HOUSE_ID);
  }).immediate();
  overwriteFreed(db);
  return [...tagsOf(['house']), 'records'];
}
