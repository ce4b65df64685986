/**
 * Step 6 of the shape: dogs and people, each in one place. Dogs stood as words in litters, dams, eaters and the grown dogs
 * of the house; people in the house and beside starter packs. The journal is brought along: what an entry changed is worked
 * out as the difference between the new shapes of the file before and after it, so that undo and redo do what they did.
 * Frozen with the step: nothing of it may follow the program.
 */

import { randomUUID } from 'node:crypto';
import type Database from 'better-sqlite3';

type Cell = string | number | null;
type Row = Readonly<Record<string, Cell>>;
type Rows = Map<string, Row>;

export const DOGS_AND_PEOPLE = `
CREATE TABLE dogs (
  id TEXT PRIMARY KEY NOT NULL,
  name TEXT NOT NULL,
  sex TEXT CHECK (sex IN ('dog', 'bitch')),
  demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX dogs_name ON dogs (name);

CREATE TABLE grownDogs (
  id TEXT PRIMARY KEY NOT NULL,
  place INTEGER NOT NULL,
  dogId TEXT NOT NULL REFERENCES dogs (id),
  kg REAL NOT NULL CHECK (kg > 0),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE people (
  id TEXT PRIMARY KEY NOT NULL,
  role TEXT NOT NULL,
  name TEXT NOT NULL,
  address TEXT NOT NULL,
  phone TEXT NOT NULL,
  email TEXT NOT NULL,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX people_name ON people (name);

ALTER TABLE litters ADD COLUMN damId TEXT REFERENCES dogs (id);
ALTER TABLE litters ADD COLUMN sireId TEXT REFERENCES dogs (id);

DROP INDEX dams_litter;
ALTER TABLE dams RENAME TO pregnancies;
ALTER TABLE pregnancies ADD COLUMN damId TEXT REFERENCES dogs (id);
ALTER TABLE pregnancies DROP COLUMN name;
CREATE UNIQUE INDEX pregnancies_litter ON pregnancies (litterId) WHERE removed = 0 AND litterId IS NOT NULL;
ALTER TABLE damWeights RENAME COLUMN damId TO pregnancyId;

ALTER TABLE freezerDogs RENAME TO eaters;
ALTER TABLE eaters RENAME COLUMN damId TO pregnancyId;
ALTER TABLE eaters ADD COLUMN dogId TEXT REFERENCES dogs (id);
ALTER TABLE eaters DROP COLUMN name;

ALTER TABLE starters ADD COLUMN personId TEXT REFERENCES people (id);
ALTER TABLE starters DROP COLUMN who;

ALTER TABLE feeding DROP COLUMN dogs;
`;

/** The old tables that the step reads, each with its mark of what was taken back. */
const OLD = { litters: 'removed', dams: 'removed', freezerDogs: 'removed', starters: 'removed', feeding: null, house: null };
type OldTable = keyof typeof OLD;
type Old = Record<OldTable, Rows>;

/** Their changes are worked out anew; those of litters stay and get the dogs' ids beside them. */
const REPLACED = ['dams', 'freezerDogs', 'starters', 'feeding', 'house'];
/** Rows that are not there before they are named; then they are marked, never deleted. */
const NAMED = ['dogs', 'people', 'grownDogs'] as const;
const NEW = [...NAMED, 'litters', 'pregnancies', 'eaters', 'starters', 'feeding', 'house'] as const;
type New = Record<(typeof NEW)[number], Rows>;

interface Change {
  readonly kind: 'insert' | 'update';
  readonly table: string;
  readonly id: string;
  readonly row?: Row | null;
  readonly before?: Row;
  readonly after?: Row;
}

/** Reads the file at shape 5; what it answers writes it at shape 6, once the tables have changed. */
export function dogsAndPeople(db: Database.Database): () => void {
  const old = readOld(db);
  const shapes = new Shapes();
  const now = shapes.of(old);
  const entries = translated(db, old, shapes);
  return () => {
    for (const table of NAMED)
      for (const [id, row] of shapes.named[table]) insert(db, table, { ...row, removed: 1, ...now[table].get(id), id });
    for (const table of ['litters', 'pregnancies', 'eaters', 'starters', 'house'] as const)
      for (const [id, row] of now[table]) set(db, table, id, row);
    const keep = db.prepare('UPDATE journal SET changes = ? WHERE id = ?');
    for (const [id, changes] of entries) keep.run(JSON.stringify(changes), id);
  };
}

function readOld(db: Database.Database): Old {
  const rows = (table: OldTable): Rows =>
    new Map(
      db
        .prepare<[], Row>(`SELECT * FROM ${table} ORDER BY rowid`)
        .all()
        .map((row) => [String(row['id']), row]),
    );
  return {
    litters: rows('litters'),
    dams: rows('dams'),
    freezerDogs: rows('freezerDogs'),
    starters: rows('starters'),
    feeding: rows('feeding'),
    house: rows('house'),
  };
}

/** The new shape of old states: the same dog or person has the same id in each. */
class Shapes {
  /** Every row that any of the states had, as it was last. */
  readonly named: Record<(typeof NAMED)[number], Rows> = { dogs: new Map(), people: new Map(), grownDogs: new Map() };
  readonly #ids = new Map<string, string>();

  of(old: Old): New {
    const shape = Object.fromEntries(NEW.map((table) => [table, new Map()])) as New;
    for (const [id, litter] of old.litters) {
      const dog = (sex: 'bitch' | 'dog', name: Cell) => this.#dog(shape, sex, name, isDemo(litter), isHere(litter));
      shape.litters.set(id, { damId: dog('bitch', litter['dam'] ?? ''), sireId: dog('dog', litter['sire'] ?? '') });
    }
    for (const [id, { name, id: _, ...dam }] of old.dams) {
      const damId = this.#dog(shape, 'bitch', name ?? '', isOfDemo(old, dam), isHere(dam));
      shape.pregnancies.set(id, { ...dam, damId });
    }
    for (const [id, { name, damId, id: _, ...eater }] of old.freezerDogs) {
      const dam = old.dams.get(String(damId));
      const isDam = dam !== undefined && dam['name'] === name && !isOfDemo(old, dam);
      const dogId = this.#dog(shape, isDam ? 'bitch' : null, name ?? '', false, isHere(eater));
      shape.eaters.set(id, { ...eater, pregnancyId: damId ?? null, dogId });
    }
    for (const [id, { who, id: _, ...starter }] of old.starters)
      shape.starters.set(id, { ...starter, personId: this.#buyer(shape, who ?? '', isHere(starter)) });
    for (const [id, { dogs, id: _, ...fed }] of old.feeding) {
      shape.feeding.set(id, fed);
      if (id === 'house') this.#grown(shape, JSON.parse(String(dogs)));
    }
    for (const [id, row] of old.house) shape.house.set(id, { house: this.#house(shape, JSON.parse(String(row['house']))) });
    return shape;
  }

  /** The same name and role is the same dog; null where no name stands. `nth`: of several that are told apart though. */
  #dog(shape: New, sex: 'bitch' | 'dog' | null, name: Cell, demo: boolean, isNamed: boolean, nth = 0): string | null {
    if (name === '' && sex !== null) return null;
    const id = this.#id(`dog ${sex} ${demo} ${nth} ${name}`);
    this.#add(shape, 'dogs', id, { name, sex, demo: demo ? 1 : 0, removed: 0 }, isNamed);
    return id;
  }

  #buyer(shape: New, name: Cell, isNamed: boolean): string {
    const id = this.#id(`buyer ${name}`);
    this.#add(shape, 'people', id, { role: 'buyer', name, address: '', phone: '', email: '', removed: 0 }, isNamed);
    return id;
  }

  #grown(shape: New, dogs: readonly { name: string; kg: number }[]): void {
    for (const [place, { name, kg }] of dogs.entries()) {
      const nth = dogs.slice(0, place).filter((d) => d.name === name).length;
      const dogId = this.#dog(shape, null, name, false, true, nth);
      this.#add(shape, 'grownDogs', `grown-dog-${place}`, { place, dogId, kg, removed: 0 }, true);
    }
  }

  #house(shape: New, house: Record<string, unknown>): string {
    const { breederName, address, phone, email, vetName, vetPhone, ...settings } = house;
    const text = (value: unknown) => (typeof value === 'string' ? value : '');
    const person = (role: string, row: Record<'name' | 'address' | 'phone' | 'email', string>) => {
      const isWritten = Object.values(row).some((value) => value !== '');
      this.#add(shape, 'people', `person-${role}`, { role, ...row, removed: 0 }, isWritten);
    };
    person('breeder', { name: text(breederName), address: text(address), phone: text(phone), email: text(email) });
    person('vet', { name: text(vetName), address: '', phone: text(vetPhone), email: '' });
    return JSON.stringify(settings);
  }

  #id(key: string): string {
    const id = this.#ids.get(key) ?? randomUUID();
    this.#ids.set(key, id);
    return id;
  }

  #add(shape: New, table: (typeof NAMED)[number], id: string, row: Row, isNamed: boolean): void {
    this.named[table].set(id, row);
    if (isNamed) shape[table].set(id, row);
  }
}

function isHere(row: Row): boolean {
  return row['removed'] === 0;
}

function isDemo(litter: Row | undefined): boolean {
  return litter?.['demo'] === 1;
}

function isOfDemo(old: Old, dam: Row): boolean {
  return isDemo(old.litters.get(String(dam['litterId'])));
}

interface Entry {
  readonly id: number;
  readonly state: 'done' | 'undone' | 'dead';
  readonly changes: string;
}

/** The entries whose changes read otherwise now: back from today through what was done, forth through what was undone. */
function translated(db: Database.Database, today: Old, shapes: Shapes): Map<number, Change[]> {
  const entries = db.prepare<[], Entry>('SELECT id, state, changes FROM journal ORDER BY id').all();
  const out = new Map<number, Change[]>();
  const walk = (list: readonly Entry[], isBack: boolean) => {
    const old = copied(today);
    for (const { id, changes } of list) {
      const all = parsed(changes);
      if (!all.some((change) => isOld(change.table))) continue;
      const here = shapes.of(old);
      for (const change of isBack ? [...all].reverse() : all) apply(old, change, isBack);
      const there = shapes.of(old);
      out.set(id, [...all.filter(isKept), ...(isBack ? difference(there, here) : difference(here, there))]);
    }
  };
  walk(entries.filter((e) => e.state === 'done').reverse(), true);
  walk(
    entries.filter((e) => e.state === 'undone'),
    false,
  );
  // What was undone and then let go is never done again.
  for (const { id, changes } of entries.filter((e) => e.state === 'dead')) out.set(id, parsed(changes).filter(isKept));
  return out;
}

function parsed(changes: string): Change[] {
  const all: unknown = JSON.parse(changes);
  return Array.isArray(all) ? (all as Change[]) : [];
}

function isOld(table: string): table is OldTable {
  return Object.hasOwn(OLD, table);
}

function isKept({ table }: Change): boolean {
  return !REPLACED.includes(table);
}

function copied(old: Old): Old {
  return Object.fromEntries(Object.entries(old).map(([table, rows]) => [table, new Map(rows)])) as Old;
}

/** As undo and redo did it on the old shape. */
function apply(old: Old, { kind, table, id, row, before, after }: Change, isBack: boolean): void {
  if (!isOld(table)) return;
  const there = old[table].get(id);
  const mark = OLD[table];
  if (kind === 'update') {
    if (there !== undefined) old[table].set(id, { ...there, ...(isBack ? before : after) });
  } else if (mark !== null) {
    if (there !== undefined) old[table].set(id, { ...there, [mark]: isBack ? 1 : 0 });
  } else if (isBack) old[table].delete(id);
  else if (row !== null && row !== undefined) old[table].set(id, row);
}

function difference(before: New, after: New): Change[] {
  return NEW.flatMap((table) => {
    const ids = new Set([...before[table].keys(), ...after[table].keys()]);
    return [...ids].flatMap((id) => {
      const change = changeOf(table, id, before[table].get(id), after[table].get(id));
      return change === null ? [] : [change];
    });
  });
}

function changeOf(table: (typeof NEW)[number], id: string, before: Row | undefined, after: Row | undefined): Change | null {
  if (before !== undefined && after !== undefined) {
    const names = Object.keys(after).filter((name) => before[name] !== after[name]);
    const pick = (row: Row) => Object.fromEntries(names.map((name) => [name, row[name] ?? null]));
    return names.length === 0 ? null : { kind: 'update', table, id, before: pick(before), after: pick(after) };
  }
  if (NAMED.some((name) => name === table))
    return { kind: 'update', table, id, before: before ?? { removed: 1 }, after: after ?? { removed: 1 } };
  // A row without a mark was put in; commands never took one out.
  return after === undefined ? null : { kind: 'insert', table, id, row: { ...after, id } };
}

function insert(db: Database.Database, table: string, row: Row): void {
  const names = Object.keys(row);
  db.prepare(`INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map((n) => `:${n}`).join(', ')})`).run(row);
}

function set(db: Database.Database, table: string, id: string, row: Row): void {
  const names = Object.keys(row);
  db.prepare(`UPDATE ${table} SET ${names.map((name) => `${name} = :${name}`).join(', ')} WHERE id = :id`).run({ ...row, id });
}
