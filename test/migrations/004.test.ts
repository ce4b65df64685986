import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../main/store/migrations.ts';

let db: Database.Database;
const pack = (id: string, portions: number, left: number) =>
  db.exec(
    `INSERT INTO packs VALUES ('${id}', 'food-generic-mix', 454, ${portions}, '2026-03-01', NULL, 3.2, '', 1772330400000, ${left}, NULL, NULL, 0)`,
  );
const thaw = (packId: string, way: string) =>
  db.exec(`INSERT INTO thaws VALUES ('t', '${packId}', 1, '2026-03-02T18:00', 1772474400000, '${way}', NULL, NULL, 0)`);

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  for (const step of MIGRATIONS.slice(0, 3)) db.exec(step.sql);
  db.exec(`INSERT INTO litters VALUES ('l', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1772330400000, 0, 0)`);
  db.exec(MIGRATIONS[3]?.sql ?? '');
});

describe('step 4', () => {
  it('adds the freezer and leaves what was there', () => {
    const names = db
      .prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name IN ('packs', 'thaws', 'freezerDogs', 'starters', 'freezer') ORDER BY name",
      )
      .pluck()
      .all();
    expect(names).toEqual(['freezer', 'freezerDogs', 'packs', 'starters', 'thaws']);
    expect(db.prepare('SELECT dam FROM litters').pluck().get()).toBe('Yarrow');
  });

  it('keeps no more portions in a pack than it was cut into', () => {
    pack('a', 4, 3);
    expect(() => pack('b', 4, 5)).toThrow(/CHECK/);
    expect(() => pack('c', 0, 0)).toThrow(/CHECK/);
  });

  it('knows the pack that thaws, and how', () => {
    pack('a', 4, 3);
    expect(() => thaw('nobody', 'refrigerator')).toThrow(/FOREIGN KEY/);
    expect(() => thaw('a', 'sunshine')).toThrow(/CHECK/);
    thaw('a', 'counter');
    expect(() => db.exec("DELETE FROM packs WHERE id = 'a'")).toThrow(/FOREIGN KEY/);
  });

  it('has one row of settings', () => {
    db.exec(`INSERT INTO freezer VALUES ('freezer', '{"moveAt":"meals","roomGrams":null,"money":""}')`);
    expect(() => db.exec(`INSERT INTO freezer VALUES ('other', '{}')`)).toThrow(/CHECK/);
  });
});
