import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { MIGRATIONS, runStep } from '../../../main/store/migrations.ts';
import { storedHouse } from '../../../main/store/people.ts';

/** A file of shape 5 with that house, brought up to date. */
function brought(house: object | null): Database.Database {
  const db = new Database(':memory:');
  for (const step of MIGRATIONS.slice(0, 5)) runStep(db, step);
  if (house !== null) db.prepare('INSERT INTO house VALUES (?, ?)').run('house', JSON.stringify(house));
  for (const step of MIGRATIONS.slice(5)) runStep(db, step);
  return db;
}

describe('the house as an older program wrote it', () => {
  it('is read with what that program did not ask for at its default', () => {
    expect(storedHouse(brought(null))).toBeNull();
    const {
      scale: _scale,
      scaleTick: _tick,
      vetOutOfHours: _late,
      ...older
    } = { ...DEFAULT_HOUSE, breederName: 'A. Breeder', vetPhone: '555-0188' };
    expect(storedHouse(brought(older))).toEqual({ ...DEFAULT_HOUSE, breederName: 'A. Breeder', vetPhone: '555-0188' });
    expect(() => storedHouse(brought({ ...older, massUnit: 'stone' }))).toThrow();
  });
});
