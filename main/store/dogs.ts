/** Dams and their weights as rows. What was taken back is not seen here. */

import type Database from 'better-sqlite3';
import { type Dam, type DamFields, damSchema } from '../../core/dogs/dam.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './tables.ts';

/** A dam whose litter was removed has none. */
const DAM = `SELECT d.id, d.name, l.id AS litterId, d.lh, d.ovulation, d.dioestrus, d.firstMating, d.lastMating, d.foodKcal
  FROM dams d LEFT JOIN litters l ON l.id = d.litterId AND l.removed = 0 WHERE d.removed = 0`;

/** All dams, the latest written first. */
export function allDams(db: Database.Database): Dam[] {
  const rows = db.prepare<[], Row>(`${DAM} ORDER BY d.rowid DESC`).all();
  return rows.map((row) => toDam(db, row));
}

export function findDam(db: Database.Database, id: string): Dam | null {
  const row = db.prepare<[string], Row>(`${DAM} AND d.id = ?`).get(id);
  return row === undefined ? null : toDam(db, row);
}

export function insertDam(recorder: Pick<Recorder, 'insert'>, id: string, fields: DamFields): void {
  recorder.insert('dams', { id, ...columns(fields) });
}

export function updateDam(recorder: Recorder, id: string, fields: DamFields): void {
  recorder.update('dams', id, columns(fields));
}

export function removeDam(recorder: Recorder, id: string): void {
  recorder.update('dams', id, { removed: 1 });
}

export function insertDamWeight(recorder: Pick<Recorder, 'insert'>, damId: string, weight: Dam['weights'][number]): void {
  recorder.insert('damWeights', { ...weight, damId });
}

export function withdrawDamWeight(recorder: Recorder, id: string): void {
  recorder.update('damWeights', id, { withdrawn: 1 });
}

/** Whose weight it is; null when there is none of that id, or it was taken back. */
export function damOfWeight(db: Database.Database, weightId: string): { damId: string; grams: number } | null {
  const row = db
    .prepare<[string], { damId: string; grams: number }>('SELECT damId, grams FROM damWeights WHERE withdrawn = 0 AND id = ?')
    .get(weightId);
  return row ?? null;
}

function columns({ foodKcalPer100g, ...fields }: DamFields): Row {
  return { ...fields, foodKcal: foodKcalPer100g };
}

function toDam(db: Database.Database, { id, foodKcal, ...fields }: Row): Dam {
  const sql =
    'SELECT id, at, instant, grams, typed, unit FROM damWeights WHERE withdrawn = 0 AND damId = ? ORDER BY instant, rowid';
  const weights = db.prepare<[string], Row>(sql).all(String(id));
  return damSchema.parse({ id, fields: { ...fields, foodKcalPer100g: foodKcal }, weights });
}
