/** Foods; what litters and the house eat. */

import type Database from 'better-sqlite3';
import { type StoredFood, storedFoodSchema } from '../../core/food/own-food.ts';
import { type Feeding, feedingSchema, type GrownDog } from '../../core/food/rotation.ts';
import { grownDogs } from './dogs.ts';
import { jsonOrNull, type Recorder } from './journal.ts';
import type { Row } from './rows.ts';

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
const FEEDING = `SELECT f.litterId, f.foodId, f.week FROM feeding f LEFT JOIN litters l ON l.id = f.litterId
  WHERE (f.litterId IS NULL OR l.removed = 0)`;

/** What the house and the litters eat, the house first. */
export function feedings(db: Database.Database): Feeding[] {
  const dogs = grownDogs(db);
  const all = db.prepare<[], Row>(`${FEEDING} ORDER BY f.litterId IS NOT NULL, f.litterId`).all();
  const ofHouse =
    all.some((row) => row['litterId'] === null) || dogs.length === 0 ? [] : [{ litterId: null, foodId: null, week: null }];
  return [...ofHouse, ...all].map((row) => toFeeding(row, dogs));
}

/** Writes what a litter, or the house with null, eats. */
export function setFeeding(db: Database.Database, recorder: Recorder, { litterId, foodId, week }: Feeding): void {
  const id = litterId ?? HOUSE_ID;
  const row = { foodId, week: jsonOrNull(week) };
  const there = db.prepare<[string], number>('SELECT 1 FROM feeding WHERE id = ?').pluck().get(id) !== undefined;
  if (there) recorder.update('feeding', id, row);
  else recorder.insert('feeding', { id, litterId, ...row });
}

function toFeeding(row: Row, grown: readonly GrownDog[]): Feeding {
  const week = row['week'] ?? null;
  return feedingSchema.parse({
    litterId: row['litterId'],
    foodId: row['foodId'],
    week: week === null ? null : JSON.parse(String(week)),
    dogs: row['litterId'] === null ? grown : [],
  });
}
