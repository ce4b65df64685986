/** House rules by the day they come into force; foods; what litters and the house eat. */
import type Database from 'better-sqlite3';
import { type StoredFood, storedFoodSchema } from '../../core/feeding/own-food.ts';
import { type Feeding, feedingSchema } from '../../core/feeding/rotation.ts';
import { type LitterRules, litterRulesSchema, type RulesVersion, rulesVersionSchema } from '../../core/feeding/rules.ts';
import type { Recorder, Row } from './journal.ts';

/** The breeder's own versions, latest day first. */
export function rulesVersions(db: Database.Database): RulesVersion[] {
  return db.prepare<[], Row>('SELECT id, fromDay, rules FROM rules ORDER BY fromDay DESC').all().map(toVersion);
}

/** The version that comes into force on exactly that day. */
export function rulesFrom(db: Database.Database, day: string): RulesVersion | null {
  const row = db.prepare<[string], Row>('SELECT id, fromDay, rules FROM rules WHERE fromDay = ?').get(day);
  return row === undefined ? null : toVersion(row);
}

export function insertRules(recorder: Recorder, version: RulesVersion): void {
  recorder.insert('rules', { id: version.id, fromDay: version.from, rules: JSON.stringify(version.rules) });
}

export function updateRules(recorder: Recorder, version: RulesVersion): void {
  recorder.update('rules', version.id, { rules: JSON.stringify(version.rules) });
}

function toVersion(row: Row): RulesVersion {
  return rulesVersionSchema.parse({ id: row['id'], from: row['fromDay'], rules: JSON.parse(String(row['rules'])) });
}

const LITTER_RULES = `SELECT r.id, r.litterId, r.fromDay, r.rules FROM litterRules r JOIN litters l ON l.id = r.litterId WHERE l.removed = 0`;

/** What litters have of their own, latest day first. */
export function litterRules(db: Database.Database): LitterRules[] {
  return db.prepare<[], Row>(`${LITTER_RULES} ORDER BY r.fromDay DESC, r.litterId`).all().map(toLitterRules);
}

/** The litter's version that comes into force on exactly that day. */
export function litterRulesFrom(db: Database.Database, litterId: string, day: string): LitterRules | null {
  const row = db.prepare<[string, string], Row>(`${LITTER_RULES} AND r.litterId = ? AND r.fromDay = ?`).get(litterId, day);
  return row === undefined ? null : toLitterRules(row);
}

export function insertLitterRules(recorder: Recorder, version: LitterRules): void {
  recorder.insert('litterRules', {
    id: version.id,
    litterId: version.litterId,
    fromDay: version.from,
    rules: jsonOrNull(version.rules),
  });
}

export function updateLitterRules(recorder: Recorder, version: LitterRules): void {
  recorder.update('litterRules', version.id, { rules: jsonOrNull(version.rules) });
}

function toLitterRules(row: Row): LitterRules {
  const rules = row['rules'] ?? null;
  return litterRulesSchema.parse({
    id: row['id'],
    litterId: row['litterId'],
    from: row['fromDay'],
    rules: rules === null ? null : JSON.parse(String(rules)),
  });
}

const FOOD = 'SELECT id, fields, retired FROM foods WHERE removed = 0';

/** Her foods, retired ones too, in the order they were written down. */
export function storedFoods(db: Database.Database): StoredFood[] {
  return db.prepare<[], Row>(`${FOOD} ORDER BY rowid`).all().map(toFood);
}

export function findFood(db: Database.Database, id: string): StoredFood | null {
  const row = db.prepare<[string], Row>(`${FOOD} AND id = ?`).get(id);
  return row === undefined ? null : toFood(row);
}

export function insertFood(recorder: Recorder, food: StoredFood): void {
  recorder.insert('foods', { id: food.id, fields: JSON.stringify(food.fields), retired: food.retired ? 1 : 0 });
}

export function updateFood(recorder: Recorder, food: StoredFood): void {
  recorder.update('foods', food.id, { fields: JSON.stringify(food.fields), retired: food.retired ? 1 : 0 });
}

function toFood(row: Row): StoredFood {
  return storedFoodSchema.parse({ id: row['id'], fields: JSON.parse(String(row['fields'])), retired: row['retired'] === 1 });
}

const HOUSE_ID = 'house';
const FEEDING = `SELECT f.litterId, f.foodId, f.week, f.dogs FROM feeding f LEFT JOIN litters l ON l.id = f.litterId
  WHERE (f.litterId IS NULL OR l.removed = 0)`;

/** What the house and the litters eat, the house first. */
export function feedings(db: Database.Database): Feeding[] {
  return db.prepare<[], Row>(`${FEEDING} ORDER BY f.litterId IS NOT NULL, f.litterId`).all().map(toFeeding);
}

/** Writes what a litter, or the house with null, eats. */
export function setFeeding(db: Database.Database, recorder: Recorder, { litterId, foodId, week, dogs }: Feeding): void {
  const id = litterId ?? HOUSE_ID;
  const row = { foodId, week: jsonOrNull(week), dogs: JSON.stringify(dogs) };
  const there = db.prepare<[string], number>('SELECT 1 FROM feeding WHERE id = ?').pluck().get(id) !== undefined;
  if (there) recorder.update('feeding', id, row);
  else recorder.insert('feeding', { id, litterId, ...row });
}

function toFeeding(row: Row): Feeding {
  const week = row['week'] ?? null;
  return feedingSchema.parse({
    litterId: row['litterId'],
    foodId: row['foodId'],
    week: week === null ? null : JSON.parse(String(week)),
    dogs: JSON.parse(String(row['dogs'])),
  });
}

function jsonOrNull(value: unknown): string | null {
  return value === null ? null : JSON.stringify(value);
}
