import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../main/store/migrations.ts';

let db: Database.Database;

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  db.exec(MIGRATIONS[0]?.sql ?? '');
  for (const id of ['l', 'm'])
    db.exec(
      `INSERT INTO litters VALUES ('${id}', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1772330400000, 0, 0)`,
    );
  for (const step of MIGRATIONS.slice(1, 3)) db.exec(step.sql);
});

describe('step 3', () => {
  it('leaves what was there and adds the tables of weaning and dams', () => {
    expect(db.prepare('SELECT count(*) FROM litters').pluck().get()).toBe(2);
    const names = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
      .pluck()
      .all();
    expect(names).toEqual(expect.arrayContaining(['damWeights', 'dams', 'weaning', 'weaningEvents']));
  });

  it('has one plan a litter, of a litter that is there', () => {
    db.exec("INSERT INTO weaning VALUES ('l', '{}', 0)");
    expect(() => db.exec("INSERT INTO weaning VALUES ('l', '{}', 0)")).toThrow(/UNIQUE/);
    expect(() => db.exec("INSERT INTO weaning VALUES ('x', '{}', 0)")).toThrow(/FOREIGN KEY/);
    expect(() => db.exec("INSERT INTO weaning VALUES ('m', 'no', 0)")).toThrow(/CHECK/);
  });

  it('has one dam a litter, and any number that have none yet', () => {
    const dam = (id: string, litter: string, removed = 0) =>
      db.exec(`INSERT INTO dams VALUES ('${id}', ${litter}, 'Hazel', NULL, NULL, NULL, '2026-01-01', NULL, 180, ${removed})`);
    dam('a', 'NULL');
    dam('b', 'NULL');
    dam('c', "'l'", 1);
    dam('d', "'l'");
    expect(() => dam('e', "'l'")).toThrow(/UNIQUE/);
    expect(() => db.exec("INSERT INTO damWeights VALUES ('w', 'nobody', '2026-03-02T07:00', 1, 20000, '20', 'kg', 0)")).toThrow(
      /FOREIGN KEY/,
    );
    expect(() => db.exec("INSERT INTO damWeights VALUES ('w', 'a', '2026-03-02T07:00', 1, 0, '0', 'kg', 0)")).toThrow(/CHECK/);
  });
});
