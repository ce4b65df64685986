import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../main/store/migrations.ts';

let db: Database.Database;
const puppy = (id: string, litterId: string, letter: string, removed = 0) =>
  db
    .prepare(
      `INSERT INTO puppies VALUES (?, ?, ?, 'red', 'plain', '', 'bitch', '', 1, '2026-03-01T02:00', 1772330400000, 0, 'litter', NULL, ?)`,
    )
    .run(id, litterId, letter, removed);
const reading = (values: string) => db.exec(`INSERT INTO readings VALUES (${values})`);

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  db.exec(MIGRATIONS[0]?.sql ?? '');
  db.exec(`INSERT INTO litters VALUES ('l', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1772330400000, 0, 0)`);
});

describe('step 1', () => {
  it('makes the tables', () => {
    const names = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
      .pluck()
      .all();
    expect(names).toEqual(['house', 'journal', 'litters', 'plans', 'puppies', 'readings', 'rules']);
  });

  it('has each letter once in a litter, but frees that of a removed puppy', () => {
    puppy('a', 'l', 'A');
    expect(() => puppy('b', 'l', 'A')).toThrow(/UNIQUE/);
    puppy('c', 'l', 'A', 1);
    expect(() => puppy('d', 'nowhere', 'A')).toThrow(/FOREIGN KEY/);
  });

  it('takes no weight that is none, and no text for a number', () => {
    puppy('a', 'l', 'A');
    const row = (grams: string) =>
      `'r', 'a', '2026-03-02T07:00', 1772434800000, 'morning', ${grams}, '412', 'g', 'keyboard', 0, 0, NULL, NULL, 0, 1772434800000`;
    expect(() => reading(row('0'))).toThrow(/CHECK/);
    expect(() => reading(row("'much'"))).toThrow(/cannot store TEXT/);
    reading(row('412.5'));
    expect(db.prepare('SELECT grams FROM readings').pluck().get()).toBe(412.5);
  });

  it('keeps a puppy that has readings', () => {
    puppy('a', 'l', 'A');
    reading(`'r', 'a', '2026-03-02T07:00', 1, 'morning', 412, '412', 'g', 'keyboard', 0, 0, NULL, NULL, 0, 1`);
    expect(() => db.exec("DELETE FROM puppies WHERE id = 'a'")).toThrow(/FOREIGN KEY/);
  });
});
