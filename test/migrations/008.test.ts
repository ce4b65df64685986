import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { findPuppy, insertPuppy } from '../../main/store/litter.ts';
import { MIGRATIONS, runStep } from '../../main/store/migrations.ts';

let db: Database.Database;
const litter = `INSERT INTO litters (id, name, dam, sire, breed, whelpedAt, whelpedInstant, demo)
  VALUES ('litter-1', '', 'Yarrow', '', 'Mudi', '2026-03-01T02:00', 1772330400000, 0)`;
const puppy = (id: string, letter: string) => `INSERT INTO puppies
  (id, litterId, letter, colour, pattern, callName, sex, markings, birthOrder, bornAt, bornInstant, place, state)
  VALUES ('${id}', 'litter-1', '${letter}', 'red', 'plain', '', 'bitch', '', 1, '2026-03-01T02:00', 1772330400000, 0, 'litter')`;

beforeEach(() => {
  db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  for (const step of MIGRATIONS.slice(0, 7)) runStep(db, step);
  db.exec(litter);
  db.exec(puppy('puppy-one', 'A'));
  const step = MIGRATIONS[7];
  if (step === undefined) throw new Error('no step 8');
  runStep(db, step);
});

describe('step 8', () => {
  it('leaves every puppy the sex that it had, as seen', () => {
    expect(db.prepare('SELECT sex, sexSeen FROM puppies').get()).toEqual({ sex: 'bitch', sexSeen: 1 });
    expect(findPuppy(db, 'puppy-one')?.sex).toBe('bitch');
  });

  it('keeps a sex that was not seen, and the one seen later', () => {
    const found = findPuppy(db, 'puppy-one');
    if (found === null) throw new Error('no puppy');
    const recorder = {
      insert: (table: string, row: Record<string, unknown>) => {
        const columns = Object.keys(row);
        db.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`).run(
          ...Object.values(row),
        );
      },
    };
    insertPuppy(recorder, { ...found, id: 'puppy-two', collar: { ...found.collar, letter: 'B' }, sex: 'unseen' });
    expect(findPuppy(db, 'puppy-two')?.sex).toBe('unseen');
    expect(() => db.exec('UPDATE puppies SET sexSeen = 2')).toThrow(/CHECK/);
    db.exec("UPDATE puppies SET sex = 'dog', sexSeen = 1 WHERE id = 'puppy-two'");
    expect(findPuppy(db, 'puppy-two')?.sex).toBe('dog');
  });
});
