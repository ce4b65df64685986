import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../main/store/migrations.ts';

let db: Database.Database;

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  for (const step of MIGRATIONS.slice(0, 1)) db.exec(step.sql);
  db.exec(`INSERT INTO litters VALUES ('l', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1772330400000, 0, 0)`);
  db.exec(MIGRATIONS[1]?.sql ?? '');
});

describe('step 2', () => {
  it('adds foods, what is eaten, and rules of a litter, and leaves what was there', () => {
    const names = db
      .prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name IN ('foods', 'feeding', 'litterRules') ORDER BY name",
      )
      .pluck()
      .all();
    expect(names).toEqual(['feeding', 'foods', 'litterRules']);
    expect(db.prepare('SELECT dam FROM litters').pluck().get()).toBe('Yarrow');
  });

  it('takes only what can be read again', () => {
    db.exec(`INSERT INTO foods VALUES ('f', '{"name":"mix"}', 0, 0)`);
    expect(() => db.exec(`INSERT INTO foods VALUES ('g', 'mix', 0, 0)`)).toThrow(/CHECK/);
    expect(() => db.exec(`INSERT INTO litterRules VALUES ('r', 'l', '2026-03-01', 'rules')`)).toThrow(/CHECK/);
    db.exec(`INSERT INTO litterRules VALUES ('r', 'l', '2026-03-01', NULL)`);
    expect(() => db.exec(`INSERT INTO litterRules VALUES ('s', 'l', '2026-03-01', '{}')`)).toThrow(/UNIQUE/);
    expect(() => db.exec(`INSERT INTO litterRules VALUES ('t', 'nobody', '2026-03-01', '{}')`)).toThrow(/FOREIGN KEY/);
  });

  it('has one row for the house and one for a litter', () => {
    db.exec(`INSERT INTO feeding VALUES ('house', NULL, NULL, NULL, '[]')`);
    db.exec(`INSERT INTO feeding VALUES ('l', 'l', 'f', NULL, '[]')`);
    expect(() => db.exec(`INSERT INTO feeding VALUES ('other', NULL, NULL, NULL, '[]')`)).toThrow(/CHECK/);
    expect(() => db.exec(`INSERT INTO feeding VALUES ('m', 'l', NULL, NULL, '[]')`)).toThrow(/UNIQUE/);
  });
});
