import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../main/store/migrations.ts';

let db: Database.Database;

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  for (const step of MIGRATIONS.slice(0, 4)) db.exec(step.sql);
  db.exec(
    `INSERT INTO litters VALUES ('l', '', 'Yarrow', '', 'Mudi', NULL, NULL, NULL, '2026-03-01T02:00', 1772330400000, 0, 0)`,
  );
  db.exec(MIGRATIONS[4]?.sql ?? '');
});

describe('step 5', () => {
  it('leaves what was there, with no usual birth weight', () => {
    expect(db.prepare('SELECT dam, breed, breedBirthGrams FROM litters').get()).toEqual({
      dam: 'Yarrow',
      breed: 'Mudi',
      breedBirthGrams: null,
    });
  });

  it('takes grams to a tenth, and nothing that is no weight', () => {
    db.exec('UPDATE litters SET breedBirthGrams = 152.5');
    expect(db.prepare('SELECT breedBirthGrams FROM litters').pluck().get()).toBe(152.5);
    expect(() => db.exec('UPDATE litters SET breedBirthGrams = 0')).toThrow(/CHECK/);
    expect(() => db.exec("UPDATE litters SET breedBirthGrams = 'much'")).toThrow(/REAL/);
  });
});
