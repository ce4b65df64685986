/** Chips as rows. What was taken back, or belongs to a puppy that was, is not seen here. */
import type Database from 'better-sqlite3';
import { type Chip, chipSchema } from '../../core/care/microchip.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

const CHIP = `SELECT c.id, c.code, c.day, c.by FROM chips c JOIN puppies p ON p.id = c.id JOIN litters l ON l.id = p.litterId
  WHERE c.removed = 0 AND p.removed = 0 AND l.removed = 0`;

export function chipsOf(db: Database.Database, litterId: string): Chip[] {
  return db.prepare<[string], Row>(`${CHIP} AND l.id = ? ORDER BY p.place, p.id`).all(litterId).map(toChip);
}

export function findChip(db: Database.Database, puppyId: string): Chip | null {
  const row = db.prepare<[string], Row>(`${CHIP} AND c.id = ?`).get(puppyId);
  return row === undefined ? null : toChip(row);
}

/** The puppy that has this number, of any litter. */
export function puppyWithChip(db: Database.Database, code: string): string | null {
  return (db.prepare<[string], Row>(`${CHIP} AND c.code = ?`).get(code)?.['id'] as string | null) ?? null;
}

/** A chip that was taken back leaves its row, so the next one takes that row's place. */
export function setChip(db: Database.Database, recorder: Recorder, { id, ...fields }: Chip): void {
  const there = db.prepare('SELECT 1 FROM chips WHERE id = ?').get(id) !== undefined;
  if (there) recorder.update('chips', id, { ...fields, removed: 0 });
  else recorder.insert('chips', { id, ...fields });
}

export function removeChip(recorder: Recorder, puppyId: string): void {
  recorder.update('chips', puppyId, { removed: 1 });
}

function toChip(row: Row): Chip {
  return chipSchema.parse(row);
}
