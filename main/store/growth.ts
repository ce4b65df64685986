/** Readings as rows: put in, marked as replaced or withdrawn, never taken out. */

import type Database from 'better-sqlite3';
import { type Reading, readingSchema } from '../../core/litter/litter.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

const READING = `SELECT r.id, r.puppyId, r.at, r.instant, r.session, r.grams, r.typed, r.unit, r.source, r.held, r.kept,
  r.supersedes, r.supersededBy, r.withdrawn, r.kept, r.recordedInstant FROM readings r JOIN puppies p ON p.id = r.puppyId JOIN litters l ON l.id = p.litterId
  WHERE p.removed = 0 AND l.removed = 0`;

/** All readings of a litter in the order of time, those replaced and withdrawn too. */
export function readingsOf(db: Database.Database, litterId: string): Reading[] {
  return db
    .prepare<[string], Row>(`${READING} AND p.litterId = ? ORDER BY r.instant, r.recordedInstant, r.id`)
    .all(litterId)
    .map(toReading);
}

export function findReading(db: Database.Database, id: string): Reading | null {
  const row = db.prepare<[string], Row>(`${READING} AND r.id = ?`).get(id);
  return row === undefined ? null : toReading(row);
}

/** The readings of a puppy that count, in the order of time. */
export function standingReadings(db: Database.Database, puppyId: string): Reading[] {
  const sql = `${READING} AND r.puppyId = ? AND r.supersededBy IS NULL AND r.withdrawn = 0 ORDER BY r.instant, r.id`;
  return db.prepare<[string], Row>(sql).all(puppyId).map(toReading);
}

/** Whether a puppy was weighed after birth, by a reading that was not withdrawn. */
export function wasWeighed(db: Database.Database, puppyId: string): boolean {
  return (
    db
      .prepare(
        "SELECT 1 FROM readings WHERE puppyId = ? AND session <> 'birth' AND withdrawn = 0 AND supersededBy IS NULL LIMIT 1",
      )
      .get(puppyId) !== undefined
  );
}

/** Instant of the first weighing after birth in a litter, by a reading that was not withdrawn; null when there is none. */
export function firstWeighing(db: Database.Database, litterId: string): number | null {
  const sql = `SELECT min(r.instant) FROM readings r JOIN puppies p ON p.id = r.puppyId
    WHERE p.litterId = ? AND p.removed = 0 AND r.session <> 'birth' AND r.withdrawn = 0`;
  return db.prepare<[string], number | null>(sql).pluck().get(litterId) ?? null;
}

export function insertReading(recorder: Pick<Recorder, 'insert'>, { held, withdrawn, kept, ...reading }: Reading): void {
  recorder.insert('readings', { ...reading, held: bit(held), kept: bit(kept), withdrawn: bit(withdrawn) });
}

/** Puts a reading in the place of the one that it supersedes. */
export function replaceReading(recorder: Recorder, reading: Reading): void {
  insertReading(recorder, reading);
  if (reading.supersedes !== null) recorder.update('readings', reading.supersedes, { supersededBy: reading.id });
}

export function markWithdrawn(recorder: Recorder, id: string): void {
  recorder.update('readings', id, { withdrawn: 1 });
}

/** The reading that another had taken the place of counts again. */
export function markStanding(recorder: Recorder, id: string): void {
  recorder.update('readings', id, { supersededBy: null });
}

export function markKept(recorder: Recorder, id: string): void {
  recorder.update('readings', id, { held: 0, kept: 1 });
}

function bit(mark: boolean): number {
  return mark ? 1 : 0;
}

function toReading(row: Row): Reading {
  return readingSchema.parse({ ...row, held: row['held'] === 1, kept: row['kept'] === 1, withdrawn: row['withdrawn'] === 1 });
}
