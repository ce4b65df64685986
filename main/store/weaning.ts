/** The plan of weaning and its diary as rows. What was taken back is not seen here. */

import type Database from 'better-sqlite3';
import { type WeaningEvent, weaningEventSchema } from '../../core/weaning/eaten.ts';
import { type WeaningPlan, weaningPlanSchema } from '../../core/weaning/weaning-plan.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

export function weaningPlanOf(db: Database.Database, litterId: string): WeaningPlan | null {
  const sql = `SELECT w.plan FROM weaning w JOIN litters l ON l.id = w.id WHERE w.removed = 0 AND l.removed = 0 AND w.id = ?`;
  const stored = db.prepare<[string], string>(sql).pluck().get(litterId);
  return stored === undefined ? null : weaningPlanSchema.parse(JSON.parse(stored));
}

/** A plan that undo took back leaves its row, so the next one takes that row's place. */
export function setWeaningPlan(db: Database.Database, recorder: Recorder, litterId: string, plan: WeaningPlan): void {
  const there = db.prepare('SELECT 1 FROM weaning WHERE id = ?').get(litterId) !== undefined;
  if (there) recorder.update('weaning', litterId, { plan: JSON.stringify(plan), removed: 0 });
  else insertWeaningPlan(recorder, litterId, plan);
}

/** For a litter that never had one. */
export function insertWeaningPlan(recorder: Pick<Recorder, 'insert'>, litterId: string, plan: WeaningPlan): void {
  recorder.insert('weaning', { id: litterId, plan: JSON.stringify(plan) });
}

export function removeWeaningPlan(recorder: Recorder, litterId: string): void {
  recorder.update('weaning', litterId, { removed: 1 });
}

const EVENT = `SELECT e.id, e.litterId, e.puppyId, e.day, e.at, e.instant, e.note FROM weaningEvents e JOIN litters l ON l.id = e.litterId
  WHERE e.removed = 0 AND l.removed = 0`;

/** The diary of a litter, oldest first. */
export function weaningEventsOf(db: Database.Database, litterId: string): WeaningEvent[] {
  return db.prepare<[string], Row>(`${EVENT} AND e.litterId = ? ORDER BY e.instant, e.rowid`).all(litterId).map(toEvent);
}

export function findWeaningEvent(db: Database.Database, id: string): WeaningEvent | null {
  const row = db.prepare<[string], Row>(`${EVENT} AND e.id = ?`).get(id);
  return row === undefined ? null : toEvent(row);
}

export function insertWeaningEvent(recorder: Pick<Recorder, 'insert'>, { note, ...event }: WeaningEvent): void {
  recorder.insert('weaningEvents', { ...event, note: JSON.stringify(note) });
}

export function removeWeaningEvent(recorder: Recorder, id: string): void {
  recorder.update('weaningEvents', id, { removed: 1 });
}

function toEvent(row: Row): WeaningEvent {
  return weaningEventSchema.parse({ ...row, note: JSON.parse(String(row['note'])) });
}
