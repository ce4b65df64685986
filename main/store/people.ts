/** The people of the house and its settings as rows, and how what is kept of a person is erased. */

import { randomUUID } from 'node:crypto';
import type Database from 'better-sqlite3';
import type { Tag } from '../../core/contract/result.ts';
import { DEFAULT_SETTINGS, type House, type HouseSettings, storedSettingsSchema } from '../../core/people/house.ts';
import { type Person, personSchema } from '../../core/people/person.ts';
import { forgetChanges, overwriteFreed } from './erase.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';
import { TABLES, tagsOf } from './tables.ts';

const HOUSE_ID = 'house';
const BREEDER_ID = 'person-breeder';
const VET_ID = 'person-vet';
const NOBODY = { name: '', address: '', phone: '', email: '' };
const PERSON = 'SELECT id, role, name, address, phone, email FROM people WHERE removed = 0';

/** Everybody who is written down, in the order they were. */
export function allPeople(db: Database.Database): Person[] {
  return db
    .prepare<[], Row>(`${PERSON} ORDER BY rowid`)
    .all()
    .map((row) => personSchema.parse(row));
}

function findPerson(db: Database.Database, id: string): Person | null {
  const row = db.prepare<[string], Row>(`${PERSON} AND id = ?`).get(id);
  return row === undefined ? null : personSchema.parse(row);
}

/** What the breeder has written about the house; null before she has. */
export function storedHouse(db: Database.Database): House | null {
  const settings = storedSettings(db);
  const breeder = findPerson(db, BREEDER_ID);
  const vet = findPerson(db, VET_ID);
  if (settings === null && breeder === null && vet === null) return null;
  const { name: breederName, address, phone, email } = breeder ?? NOBODY;
  const { name: vetName, phone: vetPhone } = vet ?? NOBODY;
  return { ...(settings ?? DEFAULT_SETTINGS), breederName, address, phone, email, vetName, vetPhone };
}

function storedSettings(db: Database.Database): HouseSettings | null {
  const stored = db.prepare<[string], string>('SELECT house FROM house WHERE id = ?').pluck().get(HOUSE_ID);
  return stored === undefined ? null : storedSettingsSchema.parse(JSON.parse(stored));
}

export function setHouse(db: Database.Database, recorder: Recorder, house: House): void {
  const { breederName, address, phone, email, vetName, vetPhone, ...settings } = house;
  const text = JSON.stringify(settings);
  if (storedSettings(db) === null) recorder.insert('house', { id: HOUSE_ID, house: text });
  else recorder.update('house', HOUSE_ID, { house: text });
  setPerson(db, recorder, { id: BREEDER_ID, role: 'breeder', name: breederName, address, phone, email });
  setPerson(db, recorder, { ...NOBODY, id: VET_ID, role: 'vet', name: vetName, phone: vetPhone });
}

/** A person of whom nothing is written, and never was, gets no row. */
function setPerson(db: Database.Database, recorder: Recorder, { id, role, ...fields }: Person): void {
  const isThere = db.prepare('SELECT 1 FROM people WHERE id = ?').get(id) !== undefined;
  if (isThere) recorder.update('people', id, { ...fields, removed: 0 });
  else if (Object.values(fields).some((value) => value !== '')) recorder.insert('people', { id, role, ...fields });
}

/** The id of the buyer of that name, written down if need be: the same name is the same person. */
export function buyerNamed(db: Database.Database, recorder: Pick<Recorder, 'insert'>, name: string): string {
  const there = db.prepare<[string], string>(
    "SELECT id FROM people WHERE removed = 0 AND role = 'buyer' AND name = ? ORDER BY rowid",
  );
  const found = there.pluck().get(name);
  if (found !== undefined) return found;
  const id = randomUUID();
  recorder.insert('people', { ...NOBODY, id, role: 'buyer', name });
  return id;
}

/** Takes back buyers for whom nothing is put aside any more. */
export function releaseBuyers(db: Database.Database, recorder: Recorder): void {
  const sql = `SELECT id FROM people WHERE removed = 0 AND role = 'buyer'
    AND id NOT IN (SELECT personId FROM starters WHERE removed = 0 AND personId IS NOT NULL)`;
  for (const id of db.prepare<[], string>(sql).pluck().all()) recorder.update('people', id, { removed: 1 });
}

/** Erases whose house it is and whom to call, from the journal too; how weights and papers are shown stays. Answers the tags of what changed. */
export function eraseHouse(db: Database.Database): Tag[] {
  const blank = TABLES.people.personal.map((column) => `${column} = ''`).join(', ');
  db.transaction(() => {
    for (const id of [BREEDER_ID, VET_ID]) {
      db.prepare(`UPDATE people SET ${blank} WHERE id = ?`).run(id);
      forgetChanges(db, 'people', id);
    }
  }).immediate();
  overwriteFreed(db);
  return [...tagsOf(['people']), 'records'];
}
