/** The freezer as rows: packs, what was taken out to thaw, who eats from it, its settings. What was taken back is not seen here. */

import type Database from 'better-sqlite3';
import {
  type Eater,
  eaterSchema,
  type FreezerSettings,
  freezerSettingsSchema,
  type Pack,
  packSchema,
  type Starter,
  starterSchema,
  type Thaw,
  thawSchema,
} from '../../core/freezer/pack.ts';
import { damOfPregnancy, dogNamed, releaseDogs } from './dogs.ts';
import type { Recorder } from './journal.ts';
import { buyerNamed, releaseBuyers } from './people.ts';
import type { Row } from './rows.ts';

const SETTINGS_ID = 'freezer';
const PACK = `SELECT id, foodId, grams, portions, frozenOn, bestBefore, price, place, addedInstant, left, gone, goneOn
  FROM packs WHERE removed = 0`;
const THAW = `SELECT t.id, t.packId, t.portions, t.at, t.instant, t.way, t.ended, t.endedAt
  FROM thaws t JOIN packs p ON p.id = t.packId WHERE t.removed = 0 AND p.removed = 0`;
const DOG = `SELECT e.id, d.name, e.foodId, e.gramsADay, e.pregnancyId AS damId, e.meals, e.fromDay, e.untilDay
  FROM eaters e JOIN dogs d ON d.id = e.dogId WHERE e.removed = 0`;
const STARTER = `SELECT s.id, p.name AS who, s.day, s.foodId, s.grams FROM starters s JOIN people p ON p.id = s.personId
  WHERE s.removed = 0`;

/**
 * Packs with something in the freezer; those emptied since a day; and the last pack of each food that was put in, with and without a price, so that
 * the next delivery and the shopping list know how the food comes.
 */
export function packsSince(db: Database.Database, since: string): Pack[] {
  const sql = `${PACK} AND (
      (gone IS NULL AND left > 0) OR goneOn >= :since
      OR id IN (SELECT packId FROM thaws WHERE removed = 0 AND at >= :since)
      OR id IN (SELECT id FROM (SELECT id, row_number() OVER (PARTITION BY foodId, price IS NULL ORDER BY addedInstant DESC, id DESC) AS n
                FROM packs WHERE removed = 0) WHERE n = 1))
    ORDER BY addedInstant, id`;
  return db.prepare<{ since: string }, Row>(sql).all({ since }).map(toPack);
}

export function findPack(db: Database.Database, id: string): Pack | null {
  const row = db.prepare<[string], Row>(`${PACK} AND id = ?`).get(id);
  return row === undefined ? null : toPack(row);
}

export function insertPack(recorder: Pick<Recorder, 'insert'>, pack: Pack): void {
  recorder.insert('packs', { ...pack });
}

export function updatePack(recorder: Recorder, id: string, columns: Partial<Omit<Pack, 'id'>>): void {
  recorder.update('packs', id, { ...columns });
}

/** What was taken out since a day, in order of time. */
export function thawsSince(db: Database.Database, since: string): Thaw[] {
  return db.prepare<[string], Row>(`${THAW} AND (t.at >= ? OR t.ended IS NULL) ORDER BY t.instant, t.id`).all(since).map(toThaw);
}

export function findThaw(db: Database.Database, id: string): Thaw | null {
  const row = db.prepare<[string], Row>(`${THAW} AND t.id = ?`).get(id);
  return row === undefined ? null : toThaw(row);
}

export function insertThaw(recorder: Pick<Recorder, 'insert'>, thaw: Thaw): void {
  recorder.insert('thaws', { ...thaw });
}

export function endThaw(recorder: Recorder, id: string, ended: 'used' | 'thrown', endedAt: string): void {
  recorder.update('thaws', id, { ended, endedAt });
}

export function eatersOf(db: Database.Database): Eater[] {
  return db
    .prepare<[], Row>(`${DOG} ORDER BY d.name, e.id`)
    .all()
    .map((row) => eaterSchema.parse(row));
}

export function setEater(db: Database.Database, recorder: Recorder, { id, name, damId, ...fields }: Eater): void {
  const dam = damId === null ? null : damOfPregnancy(db, damId, name);
  const dogId = dam ?? dogNamed(db, recorder, { name, sex: null, demo: false });
  const row = { ...fields, pregnancyId: damId, dogId };
  if (eatersOf(db).some((d) => d.id === id)) recorder.update('eaters', id, row);
  else recorder.insert('eaters', { id, ...row });
  releaseDogs(db, recorder);
}

export function removeEater(db: Database.Database, recorder: Recorder, id: string): void {
  recorder.update('eaters', id, { removed: 1 });
  releaseDogs(db, recorder);
}

export function starters(db: Database.Database): Starter[] {
  return db
    .prepare<[], Row>(`${STARTER} ORDER BY s.day, s.id`)
    .all()
    .map((row) => starterSchema.parse(row));
}

/** Answers the id of the person that it is for. */
export function setStarter(db: Database.Database, recorder: Recorder, { id, who, ...fields }: Starter): string {
  // One who was erased has no name, and stays the one it is for.
  const personId = who === '' ? buyerOf(db, id) : buyerNamed(db, recorder, who);
  const row = { ...fields, personId };
  if (starters(db).some((s) => s.id === id)) recorder.update('starters', id, row);
  else recorder.insert('starters', { id, ...row });
  releaseBuyers(db, recorder);
  return personId;
}

/** Answers the id of the person that it was for. */
export function removeStarter(db: Database.Database, recorder: Recorder, id: string): string {
  recorder.update('starters', id, { removed: 1 });
  releaseBuyers(db, recorder);
  return buyerOf(db, id);
}

function buyerOf(db: Database.Database, starterId: string): string {
  return String(db.prepare<[string], string>('SELECT personId FROM starters WHERE id = ?').pluck().get(starterId));
}

/** Null before she has written any. */
export function storedFreezer(db: Database.Database): FreezerSettings | null {
  const stored = db.prepare<[string], string>('SELECT settings FROM freezer WHERE id = ?').pluck().get(SETTINGS_ID);
  return stored === undefined ? null : freezerSettingsSchema.parse(JSON.parse(stored));
}

export function setFreezer(db: Database.Database, recorder: Recorder, settings: FreezerSettings): void {
  const text = JSON.stringify(settings);
  if (storedFreezer(db) === null) recorder.insert('freezer', { id: SETTINGS_ID, settings: text });
  else recorder.update('freezer', SETTINGS_ID, { settings: text });
}

function toPack(row: Row): Pack {
  return packSchema.parse(row);
}

function toThaw(row: Row): Thaw {
  return thawSchema.parse(row);
}
