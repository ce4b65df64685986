/** Litters and puppies as rows. What was removed is not seen here. */

import type Database from 'better-sqlite3';
import {
  type Litter,
  litterSchema,
  type Puppy,
  type PuppyFields,
  type PuppyState,
  puppySchema,
} from '../../core/litter/litter.ts';
import type { Sex } from '../../core/reference/classes.ts';
import { dogNamed, releaseDogs } from './dogs.ts';
import type { Recorder } from './journal.ts';
import type { Row } from './rows.ts';

const LITTER = `SELECT l.id, l.name, l.dam, l.sire, l.breed, l.sizeClass, l.adultDogKg, l.adultBitchKg, l.breedBirthGrams, l.whelpedAt,
  l.whelpedInstant, l.demo FROM litters l WHERE l.removed = 0`;
const PUPPY = `SELECT p.id, p.litterId, p.letter, p.colour, p.pattern, p.callName, p.sex, p.sexSeen, p.markings, p.birthOrder, p.bornAt, p.bornInstant,
  p.place, p.state, p.stateOn FROM puppies p JOIN litters l ON l.id = p.litterId WHERE p.removed = 0 AND l.removed = 0`;

/** All litters, the youngest first. */
export function allLitters(db: Database.Database): Litter[] {
  return db.prepare<[], Row>(`${LITTER} ORDER BY l.whelpedInstant DESC, l.id`).all().map(toLitter);
}

export function findLitter(db: Database.Database, id: string): Litter | null {
  const row = db.prepare<[string], Row>(`${LITTER} AND l.id = ?`).get(id);
  return row === undefined ? null : toLitter(row);
}

/** The puppies of a litter in the order of the weigh-in. */
export function puppiesOf(db: Database.Database, litterId: string): Puppy[] {
  return db.prepare<[string], Row>(`${PUPPY} AND p.litterId = ? ORDER BY p.place, p.birthOrder, p.id`).all(litterId).map(toPuppy);
}

export function findPuppy(db: Database.Database, id: string): Puppy | null {
  const row = db.prepare<[string], Row>(`${PUPPY} AND p.id = ?`).get(id);
  return row === undefined ? null : toPuppy(row);
}

export function insertLitter(db: Database.Database, recorder: Pick<Recorder, 'insert'>, { demo, ...litter }: Litter): void {
  recorder.insert('litters', { ...litter, demo: demo ? 1 : 0, ...parents(db, recorder, litter, demo) });
}

/** The rows of the dogs that a litter names. */
function parents(
  db: Database.Database,
  recorder: Pick<Recorder, 'insert'>,
  { dam, sire }: Pick<Litter, 'dam' | 'sire'>,
  demo: boolean,
): { damId: string; sireId: string | null } {
  const damId = dogNamed(db, recorder, { name: dam, sex: 'bitch', demo });
  return { damId, sireId: sire === '' ? null : dogNamed(db, recorder, { name: sire, sex: 'dog', demo }) };
}

export function updateLitter(db: Database.Database, recorder: Recorder, { id, demo, ...fields }: Litter): void {
  recorder.update('litters', id, { ...fields, ...parents(db, recorder, fields, demo) });
  releaseDogs(db, recorder);
}

export function removeLitter(db: Database.Database, recorder: Recorder, id: string): void {
  recorder.update('litters', id, { removed: 1 });
  releaseDogs(db, recorder);
}

export function insertPuppy(recorder: Pick<Recorder, 'insert'>, { collar, sex, ...puppy }: Puppy): void {
  recorder.insert('puppies', { ...puppy, ...collar, ...sexCells(sex) });
}

export function updatePuppy(recorder: Recorder, id: string, { collar, sex, ...fields }: Partial<PuppyFields>): void {
  recorder.update('puppies', id, { ...fields, ...collar, ...(sex === undefined ? {} : sexCells(sex)) });
}

/** The first shape of the file has no third sex: one that was not seen is marked beside it. */
function sexCells(sex: Sex): { sex: 'dog' | 'bitch'; sexSeen: 0 | 1 } {
  return sex === 'unseen' ? { sex: 'dog', sexSeen: 0 } : { sex, sexSeen: 1 };
}

export function removePuppy(recorder: Recorder, id: string): void {
  recorder.update('puppies', id, { removed: 1 });
}

export function setState(recorder: Recorder, id: string, state: PuppyState, stateOn: string | null): void {
  recorder.update('puppies', id, { state, stateOn });
}

export function setPlace(recorder: Recorder, id: string, place: number): void {
  recorder.update('puppies', id, { place });
}

function toLitter(row: Row): Litter {
  return litterSchema.parse({ ...row, demo: row['demo'] === 1 });
}

function toPuppy({ letter, colour, pattern, sexSeen, ...row }: Row): Puppy {
  const sex = sexSeen === 0 ? 'unseen' : row['sex'];
  return puppySchema.parse({ ...row, sex, collar: { letter, colour, pattern } });
}
