/** Dogs as rows, each once: named by litters, pregnancies, what eats from the freezer, and the grown dogs of the house. What was taken back is not seen here. */

import { randomUUID } from 'node:crypto';
import type Database from 'better-sqlite3';
import { type Dam, type DamFields, damSchema } from '../../core/dogs/dam.ts';
import { type HouseDog, houseDogSchema } from '../../core/dogs/dog.ts';
import { type GrownDog, grownDogSchema } from '../../core/food/rotation.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

/** What a dog is told apart by. `nth`: of several of that name, where they are told apart though. */
type Naming = Pick<HouseDog, 'name' | 'sex'> & { readonly demo: boolean; readonly nth?: number };

/** The id of the dog of that name and role, written down if need be: the same name and role is the same dog. */
export function dogNamed(
  db: Database.Database,
  recorder: Pick<Recorder, 'insert'>,
  { name, sex, demo, nth = 0 }: Naming,
): string {
  const sql = 'SELECT id FROM dogs WHERE removed = 0 AND name = ? AND sex IS ? AND demo = ? ORDER BY rowid LIMIT 1 OFFSET ?';
  const found = db
    .prepare<[string, string | null, number, number], string>(sql)
    .pluck()
    .get(name, sex, demo ? 1 : 0, nth);
  if (found !== undefined) return found;
  const id = randomUUID();
  recorder.insert('dogs', { id, name, sex, demo: demo ? 1 : 0 });
  return id;
}

/** Takes back the dogs that nothing names any more. */
export function releaseDogs(db: Database.Database, recorder: Recorder): void {
  const naming = [
    'SELECT damId FROM litters WHERE removed = 0',
    'SELECT sireId FROM litters WHERE removed = 0',
    'SELECT damId FROM pregnancies WHERE removed = 0',
    'SELECT dogId FROM eaters WHERE removed = 0',
    'SELECT dogId FROM grownDogs WHERE removed = 0',
  ].join(' UNION ');
  const sql = `SELECT d.id FROM dogs d LEFT JOIN (${naming}) n ON n.damId = d.id WHERE d.removed = 0 AND n.damId IS NULL`;
  for (const id of db.prepare<[], string>(sql).pluck().all()) recorder.update('dogs', id, { removed: 1 });
}

/** Every dog that is named, by name; invented ones are left out. */
export function allDogs(db: Database.Database): HouseDog[] {
  return db
    .prepare<[], Row>('SELECT id, name, sex FROM dogs WHERE removed = 0 AND demo = 0 ORDER BY name, rowid')
    .all()
    .map((row) => houseDogSchema.parse(row));
}

/** The grown dogs of the house in the order they were written. */
export function grownDogs(db: Database.Database): GrownDog[] {
  const sql = 'SELECT g.id, d.name, g.kg FROM grownDogs g JOIN dogs d ON d.id = g.dogId WHERE g.removed = 0 ORDER BY g.place';
  return db
    .prepare<[], Row>(sql)
    .all()
    .map((row) => grownDogSchema.parse(row));
}

/** After those that are there. */
export function insertGrownDog(db: Database.Database, recorder: Recorder, { id, name, kg }: GrownDog): void {
  const nth = grownDogs(db).filter((d) => d.name === name).length;
  const dogId = dogNamed(db, recorder, { name, sex: null, demo: false, nth });
  const place = db.prepare<[], number>('SELECT coalesce(max(place) + 1, 0) FROM grownDogs').pluck().get() ?? 0;
  recorder.insert('grownDogs', { id, place, dogId, kg });
}

export function removeGrownDog(db: Database.Database, recorder: Recorder, id: string): void {
  recorder.update('grownDogs', id, { removed: 1 });
  releaseDogs(db, recorder);
}

/** A dam whose litter was removed has none. */
const DAM = `SELECT p.id, d.name, l.id AS litterId, p.lh, p.ovulation, p.dioestrus, p.firstMating, p.lastMating, p.foodKcal
  FROM pregnancies p JOIN dogs d ON d.id = p.damId LEFT JOIN litters l ON l.id = p.litterId AND l.removed = 0 WHERE p.removed = 0`;

/** All dams, the latest written first. */
export function allDams(db: Database.Database): Dam[] {
  const rows = db.prepare<[], Row>(`${DAM} ORDER BY p.rowid DESC`).all();
  return rows.map((row) => toDam(db, row));
}

export function findDam(db: Database.Database, id: string): Dam | null {
  const row = db.prepare<[string], Row>(`${DAM} AND p.id = ?`).get(id);
  return row === undefined ? null : toDam(db, row);
}

/** The dog that is the dam of a pregnancy and has that name; null for an invented one, which may go. */
export function damOfPregnancy(db: Database.Database, pregnancyId: string, name: string): string | null {
  const sql = `SELECT d.id FROM pregnancies p JOIN dogs d ON d.id = p.damId WHERE p.id = ? AND d.name = ? AND d.demo = 0`;
  return db.prepare<[string, string], string>(sql).pluck().get(pregnancyId, name) ?? null;
}

export function insertDam(db: Database.Database, recorder: Pick<Recorder, 'insert'>, id: string, fields: DamFields): void {
  recorder.insert('pregnancies', { id, ...columns(db, recorder, fields) });
}

export function updateDam(db: Database.Database, recorder: Recorder, id: string, fields: DamFields): void {
  recorder.update('pregnancies', id, columns(db, recorder, fields));
  releaseDogs(db, recorder);
}

export function removeDam(db: Database.Database, recorder: Recorder, id: string): void {
  recorder.update('pregnancies', id, { removed: 1 });
  releaseDogs(db, recorder);
}

export function insertDamWeight(recorder: Pick<Recorder, 'insert'>, damId: string, weight: Dam['weights'][number]): void {
  recorder.insert('damWeights', { ...weight, pregnancyId: damId });
}

export function withdrawDamWeight(recorder: Recorder, id: string): void {
  recorder.update('damWeights', id, { withdrawn: 1 });
}

/** Whose weight it is; null when there is none of that id, or it was taken back. */
export function damOfWeight(db: Database.Database, weightId: string): { damId: string; grams: number } | null {
  const row = db
    .prepare<[string], { damId: string; grams: number }>(
      'SELECT pregnancyId AS damId, grams FROM damWeights WHERE withdrawn = 0 AND id = ?',
    )
    .get(weightId);
  return row ?? null;
}

function columns(
  db: Database.Database,
  recorder: Pick<Recorder, 'insert'>,
  { name, foodKcalPer100g, ...fields }: DamFields,
): Row {
  const demo = db.prepare('SELECT 1 FROM litters WHERE id = ? AND demo = 1').get(fields.litterId) !== undefined;
  return { ...fields, foodKcal: foodKcalPer100g, damId: dogNamed(db, recorder, { name, sex: 'bitch', demo }) };
}

function toDam(db: Database.Database, { id, foodKcal, ...fields }: Row): Dam {
  const sql =
    'SELECT id, at, instant, grams, typed, unit FROM damWeights WHERE withdrawn = 0 AND pregnancyId = ? ORDER BY instant, rowid';
  const weights = db.prepare<[string], Row>(sql).all(String(id));
  return damSchema.parse({ id, fields: { ...fields, foodKcalPer100g: foodKcal }, weights });
}
