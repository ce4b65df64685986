/**
 * The shape of the data file, step by step. A step that was released is never changed: a new one is added, with a test
 * and a new frozen schema. Columns are named as the facts are in `core`; instants are milliseconds, weights grams.
 *
 * Nothing a person entered is deleted: a litter, puppy or plan taken back is marked `removed`, a reading `withdrawn`.
 */
import type Database from 'better-sqlite3';
import { DOGS_AND_PEOPLE, dogsAndPeople } from './dogs-and-people.ts';

export interface Migration {
  /** `user_version` after the step; steps count up by one from 1. */
  readonly version: number;
  readonly name: string;
  readonly sql: string;
  /** Where facts move: reads them before the statement, and answers what writes them after it. */
  readonly carry?: (db: Database.Database) => () => void;
}

/** Brings a file from one shape to the next. The caller's transaction holds it. */
export function runStep(db: Database.Database, { sql, carry }: Migration): void {
  const write = carry?.(db);
  db.exec(sql);
  write?.();
}

export const MIGRATIONS: readonly Migration[] = [
  {
    version: 1,
    name: 'litters, puppies, readings, rules, house, plans, journal',
    sql: `
CREATE TABLE litters (
  id TEXT PRIMARY KEY NOT NULL,
  name TEXT NOT NULL,
  dam TEXT NOT NULL,
  sire TEXT NOT NULL,
  breed TEXT NOT NULL,
  sizeClass TEXT CHECK (sizeClass IN ('toy', 'small', 'medium', 'large', 'giant')),
  adultDogKg REAL,
  adultBitchKg REAL,
  whelpedAt TEXT NOT NULL,
  whelpedInstant INTEGER NOT NULL,
  demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE puppies (
  id TEXT PRIMARY KEY NOT NULL,
  litterId TEXT NOT NULL REFERENCES litters (id),
  letter TEXT NOT NULL,
  colour TEXT NOT NULL,
  pattern TEXT NOT NULL,
  callName TEXT NOT NULL,
  sex TEXT NOT NULL CHECK (sex IN ('dog', 'bitch')),
  markings TEXT NOT NULL,
  birthOrder INTEGER NOT NULL,
  bornAt TEXT NOT NULL,
  bornInstant INTEGER NOT NULL,
  place INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('litter', 'home', 'kept', 'died')),
  stateOn TEXT,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX puppies_letter ON puppies (litterId, letter) WHERE removed = 0;

CREATE TABLE readings (
  id TEXT PRIMARY KEY NOT NULL,
  puppyId TEXT NOT NULL REFERENCES puppies (id),
  at TEXT NOT NULL,
  instant INTEGER NOT NULL,
  session TEXT NOT NULL CHECK (session IN ('birth', 'morning', 'evening')),
  grams REAL NOT NULL CHECK (grams > 0),
  typed TEXT NOT NULL,
  unit TEXT NOT NULL,
  source TEXT NOT NULL,
  held INTEGER NOT NULL CHECK (held IN (0, 1)),
  kept INTEGER NOT NULL CHECK (kept IN (0, 1)),
  supersedes TEXT REFERENCES readings (id),
  supersededBy TEXT REFERENCES readings (id),
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
  recordedInstant INTEGER NOT NULL
) STRICT;
CREATE INDEX readings_puppy ON readings (puppyId, instant);

CREATE TABLE rules (
  id TEXT PRIMARY KEY NOT NULL,
  fromDay TEXT NOT NULL UNIQUE,
  rules TEXT NOT NULL CHECK (json_valid(rules))
) STRICT;

CREATE TABLE house (
  id TEXT PRIMARY KEY NOT NULL CHECK (id = 'house'),
  house TEXT NOT NULL CHECK (json_valid(house))
) STRICT;

CREATE TABLE plans (
  id TEXT PRIMARY KEY NOT NULL,
  puppyId TEXT NOT NULL REFERENCES puppies (id),
  handedOver TEXT NOT NULL,
  recordedInstant INTEGER NOT NULL,
  title TEXT NOT NULL,
  document TEXT NOT NULL CHECK (json_valid(document)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX plans_puppy ON plans (puppyId);

CREATE TABLE journal (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  instant INTEGER NOT NULL,
  operation TEXT NOT NULL,
  who TEXT NOT NULL,
  grams REAL,
  litterId TEXT REFERENCES litters (id),
  puppyId TEXT REFERENCES puppies (id),
  changes TEXT NOT NULL CHECK (json_valid(changes)),
  state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'dead'))
) STRICT;
CREATE INDEX journal_state ON journal (state, id);
CREATE INDEX journal_litter ON journal (litterId);
`,
  },
  {
    version: 2,
    name: 'foods, what litters and house eat, rules of a litter',
    sql: `
CREATE TABLE foods (
  id TEXT PRIMARY KEY NOT NULL,
  fields TEXT NOT NULL CHECK (json_valid(fields)),
  retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE feeding (
  id TEXT PRIMARY KEY NOT NULL,
  litterId TEXT UNIQUE REFERENCES litters (id),
  foodId TEXT,
  week TEXT CHECK (week IS NULL OR json_valid(week)),
  dogs TEXT NOT NULL CHECK (json_valid(dogs)),
  CHECK ((litterId IS NULL) = (id = 'house'))
) STRICT;

CREATE TABLE litterRules (
  id TEXT PRIMARY KEY NOT NULL,
  litterId TEXT NOT NULL REFERENCES litters (id),
  fromDay TEXT NOT NULL,
  rules TEXT CHECK (rules IS NULL OR json_valid(rules)),
  UNIQUE (litterId, fromDay)
) STRICT;
`,
  },
  {
    version: 3,
    name: 'weaning, dams',
    sql: `
CREATE TABLE weaning (
  id TEXT PRIMARY KEY NOT NULL REFERENCES litters (id),
  plan TEXT NOT NULL CHECK (json_valid(plan)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE weaningEvents (
  id TEXT PRIMARY KEY NOT NULL,
  litterId TEXT NOT NULL REFERENCES litters (id),
  puppyId TEXT REFERENCES puppies (id),
  day TEXT NOT NULL,
  at TEXT NOT NULL,
  instant INTEGER NOT NULL,
  note TEXT NOT NULL CHECK (json_valid(note)),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX weaningEvents_litter ON weaningEvents (litterId, day);

CREATE TABLE dams (
  id TEXT PRIMARY KEY NOT NULL,
  litterId TEXT REFERENCES litters (id),
  name TEXT NOT NULL,
  lh TEXT,
  ovulation TEXT,
  dioestrus TEXT,
  firstMating TEXT,
  lastMating TEXT,
  foodKcal REAL CHECK (foodKcal > 0),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX dams_litter ON dams (litterId) WHERE removed = 0 AND litterId IS NOT NULL;

CREATE TABLE damWeights (
  id TEXT PRIMARY KEY NOT NULL,
  damId TEXT NOT NULL REFERENCES dams (id),
  at TEXT NOT NULL,
  instant INTEGER NOT NULL,
  grams REAL NOT NULL CHECK (grams > 0),
  typed TEXT NOT NULL,
  unit TEXT NOT NULL,
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1))
) STRICT;
CREATE INDEX damWeights_dam ON damWeights (damId, instant);
`,
  },
  {
    version: 4,
    name: 'the freezer',
    sql: `
CREATE TABLE packs (
  id TEXT PRIMARY KEY NOT NULL,
  foodId TEXT NOT NULL,
  grams REAL NOT NULL CHECK (grams > 0),
  portions INTEGER NOT NULL CHECK (portions > 0),
  frozenOn TEXT NOT NULL,
  bestBefore TEXT,
  price REAL,
  place TEXT NOT NULL,
  addedInstant INTEGER NOT NULL,
  left INTEGER NOT NULL CHECK (left >= 0 AND left <= portions),
  gone TEXT CHECK (gone IN ('used', 'thrown', 'given')),
  goneOn TEXT,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX packs_food ON packs (foodId, addedInstant);

CREATE TABLE thaws (
  id TEXT PRIMARY KEY NOT NULL,
  packId TEXT NOT NULL REFERENCES packs (id),
  portions INTEGER NOT NULL CHECK (portions > 0),
  at TEXT NOT NULL,
  instant INTEGER NOT NULL,
  way TEXT NOT NULL CHECK (way IN ('refrigerator', 'cold-water', 'counter')),
  ended TEXT CHECK (ended IN ('used', 'thrown')),
  endedAt TEXT,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX thaws_pack ON thaws (packId);
CREATE INDEX thaws_at ON thaws (at);

CREATE TABLE freezerDogs (
  id TEXT PRIMARY KEY NOT NULL,
  name TEXT NOT NULL,
  foodId TEXT NOT NULL,
  gramsADay REAL NOT NULL CHECK (gramsADay > 0),
  damId TEXT,
  meals INTEGER NOT NULL CHECK (meals > 0),
  fromDay TEXT NOT NULL,
  untilDay TEXT,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE starters (
  id TEXT PRIMARY KEY NOT NULL,
  who TEXT NOT NULL,
  day TEXT NOT NULL,
  foodId TEXT NOT NULL,
  grams REAL NOT NULL CHECK (grams > 0),
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;

CREATE TABLE freezer (
  id TEXT PRIMARY KEY NOT NULL CHECK (id = 'freezer'),
  settings TEXT NOT NULL CHECK (json_valid(settings))
) STRICT;
`,
  },
  {
    version: 5,
    name: 'the usual birth weight of a breed',
    sql: `
ALTER TABLE litters ADD COLUMN breedBirthGrams REAL CHECK (breedBirthGrams > 0);
`,
  },
  { version: 6, name: 'dogs and people', sql: DOGS_AND_PEOPLE, carry: dogsAndPeople },
  {
    version: 7,
    name: 'what was done, as data',
    sql: `
ALTER TABLE journal ADD COLUMN about TEXT CHECK (json_valid(about));
`,
  },
  {
    version: 8,
    name: 'a sex that was not seen yet',
    sql: `
ALTER TABLE puppies ADD COLUMN sexSeen INTEGER NOT NULL DEFAULT 1 CHECK (sexSeen IN (0, 1));
`,
  },
  {
    version: 9,
    name: 'chips',
    sql: `
CREATE TABLE chips (
  id TEXT PRIMARY KEY NOT NULL REFERENCES puppies (id),
  code TEXT NOT NULL CHECK (length(code) BETWEEN 9 AND 15),
  day TEXT,
  by TEXT NOT NULL,
  removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
) STRICT;
CREATE INDEX chips_code ON chips (code);
`,
  },
];
