import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { storedHouse } from '../../../main/store/people.ts';

describe('the house as an older program wrote it', () => {
  it('is read with what that program did not ask for at its default', () => {
    const db = new Database(':memory:');
    db.exec('CREATE TABLE house (id TEXT PRIMARY KEY, house TEXT NOT NULL)');
    expect(storedHouse(db)).toBeNull();
    const { scale: _scale, scaleTick: _tick, ...older } = { ...DEFAULT_HOUSE, breederName: 'A. Breeder', vetPhone: '555-0188' };
    db.prepare('INSERT INTO house VALUES (?, ?)').run('house', JSON.stringify(older));
    expect(storedHouse(db)).toEqual({ ...DEFAULT_HOUSE, breederName: 'A. Breeder', vetPhone: '555-0188' });
    db.prepare('UPDATE house SET house = ?').run(JSON.stringify({ ...older, massUnit: 'stone' }));
    expect(() => storedHouse(db)).toThrow();
    db.close();
  });
});
