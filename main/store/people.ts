/** The people of the house and its settings as rows, and how what is kept of a person is erased. */

import { randomUUID } from 'node:crypto';
import type Database from 'better-sqlite3';
import { type AnyPlan, anyPlanSchema } from '../../core/homing/document.ts';
import { withoutPerson } from '../../core/homing/persons.ts';
import { DEFAULT_SETTINGS, type House, type HouseSettings, storedSettingsSchema } from '../../core/people/house.ts';
import { type Person, personSchema } from '../../core/people/person.ts';
import { blankTexts, forgetChanges, overwriteFreed, rememberedOf } from './erase.ts';
import type { Recorder, Written } from './journal.ts';
import type { Row } from './rows.ts';
import { TABLES, type TableName, tableOf, tagsOf } from './tables.ts';

const HOUSE_ID = 'house';
const BREEDER_ID = 'person-breeder';
const VET_ID = 'person-vet';
/** Only a telephone number: whoever answers it when the vet is closed. */
const OUT_OF_HOURS_ID = 'person-vet-out-of-hours';
const NOBODY = { name: '', address: '', phone: '', email: '' };
const PERSON = 'SELECT id, role, name, address, phone, email FROM people WHERE removed = 0';

/** Everybody who is written down, in the order they were. */
export function allPeople(db: Database.Database): Person[] {
  return db
    .prepare<[], Row>(`${PERSON} ORDER BY rowid`)
    .all()
    .map((row) => personSchema.parse(row));
}

function findPerson(db: Database.Database, id: string): Person | null {
  const row = db.prepare<[string], Row>(`${PERSON} AND id = ?`).get(id);
  return row === undefined ? null : personSchema.parse(row);
}

/** What the breeder has written about the house; null before she has. */
export function storedHouse(db: Database.Database): House | null {
  const settings = storedSettings(db);
  const breeder = findPerson(db, BREEDER_ID);
  const vet = findPerson(db, VET_ID);
  const late = findPerson(db, OUT_OF_HOURS_ID);
  if (settings === null && breeder === null && vet === null && late === null) return null;
  const { name: breederName, address, phone, email } = breeder ?? NOBODY;
  const { name: vetName, phone: vetPhone } = vet ?? NOBODY;
  const { phone: vetOutOfHours } = late ?? NOBODY;
  return { ...(settings ?? DEFAULT_SETTINGS), breederName, address, phone, email, vetName, vetPhone, vetOutOfHours };
}

function storedSettings(db: Database.Database): HouseSettings | null {
  const stored = db.prepare<[string], string>('SELECT house FROM house WHERE id = ?').pluck().get(HOUSE_ID);
  return stored === undefined ? null : storedSettingsSchema.parse(JSON.parse(stored));
}

export function setHouse(db: Database.Database, recorder: Recorder, house: House): void {
  const { breederName, address, phone, email, vetName, vetPhone, vetOutOfHours, ...settings } = house;
  const text = JSON.stringify(settings);
  if (storedSettings(db) === null) recorder.insert('house', { id: HOUSE_ID, house: text });
  else recorder.update('house', HOUSE_ID, { house: text });
  setPerson(db, recorder, { id: BREEDER_ID, role: 'breeder', name: breederName, address, phone, email });
  setPerson(db, recorder, { ...NOBODY, id: VET_ID, role: 'vet', name: vetName, phone: vetPhone });
  setPerson(db, recorder, { ...NOBODY, id: OUT_OF_HOURS_ID, role: 'vet', phone: vetOutOfHours });
}

/** A person of whom nothing is written, and never was, gets no row. */
function setPerson(db: Database.Database, recorder: Recorder, { id, role, ...fields }: Person): void {
  const isThere = db.prepare('SELECT 1 FROM people WHERE id = ?').get(id) !== undefined;
  if (isThere) recorder.update('people', id, { ...fields, removed: 0 });
  else if (Object.values(fields).some((value) => value !== '')) recorder.insert('people', { id, role, ...fields });
}

/** The id of the buyer of that name, written down if need be: the same name is the same person. */
export function buyerNamed(db: Database.Database, recorder: Pick<Recorder, 'insert'>, name: string): string {
  const there = db.prepare<[string], string>(
    "SELECT id FROM people WHERE removed = 0 AND role = 'buyer' AND name = ? ORDER BY rowid",
  );
  const found = there.pluck().get(name);
  if (found !== undefined) return found;
  const id = randomUUID();
  recorder.insert('people', { ...NOBODY, id, role: 'buyer', name });
  return id;
}

/** Takes back buyers for whom nothing is put aside any more. */
export function releaseBuyers(db: Database.Database, recorder: Recorder): void {
  const sql = `SELECT id FROM people WHERE removed = 0 AND role = 'buyer'
    AND id NOT IN (SELECT personId FROM starters WHERE removed = 0 AND personId IS NOT NULL)`;
  for (const id of db.prepare<[], string>(sql).pluck().all()) recorder.update('people', id, { removed: 1 });
}

/** Somebody who is written down, and what hangs on her. */
interface WrittenPerson extends Person {
  readonly isNamed: boolean;
  readonly starters: number;
  readonly papers: number;
}

/** Everybody of whom something is written: those who were taken back are still in the file. The same name and role is the same person. */
export function everybody(db: Database.Database): WrittenPerson[] {
  const rows = db
    .prepare<[], Row>('SELECT id, role, name, address, phone, email, removed FROM people ORDER BY removed, rowid')
    .all();
  const plans = allPlans(db);
  const seen = new Set<string>();
  return rows.flatMap(({ removed, ...row }) => {
    const person = personSchema.parse(row);
    const written = writtenIn(row);
    const who = `${person.role} ${person.name}`;
    if (written.length === 0 || seen.has(who)) return [];
    seen.add(who);
    const papers = naming(plans, new Set(written)).length;
    return [{ ...person, isNamed: removed === 0, starters: startersFor(db, person), papers }];
  });
}

/** The person of that id, taken back or not; null when there is none, or nothing is written of her. */
export function personOf(db: Database.Database, id: string): WrittenPerson | null {
  return everybody(db).find((person) => person.id === id) ?? null;
}

/** All rows of a person: one who was taken back and written down again has several. */
function samePerson(db: Database.Database, { id, role, name }: Person): string[] {
  if (name === '') return [id];
  return db.prepare<[string, string], string>('SELECT id FROM people WHERE role = ? AND name = ?').pluck().all(role, name);
}

/** What is put aside for a person and was not taken back. */
function startersFor(db: Database.Database, { id, role, name }: Person): number {
  const sql = `SELECT count(*) FROM starters s JOIN people p ON p.id = s.personId
    WHERE s.removed = 0 AND (p.id = ? OR (p.role = ? AND p.name = ? AND p.name <> ''))`;
  return db.prepare<[string, string, string], number>(sql).pluck().get(id, role, name) ?? 0;
}

/** The rows of a person's own table, and of those that belong to it, for an export. */
export function rowsAbout(db: Database.Database, person: Person): Record<string, Row[]> {
  const ids = JSON.stringify(samePerson(db, person));
  return Object.fromEntries(
    [...columnsNaming()].map(([table, by]) => [
      table,
      db.prepare<[string], Row>(`SELECT * FROM ${table} WHERE ${by} IN (SELECT value FROM json_each(?))`).all(ids),
    ]),
  );
}

/** The tables whose rows are about people, each with the column that says whom. */
function* columnsNaming(): Iterable<[table: TableName, by: string]> {
  yield ['people', 'id'];
  for (const table of Object.keys(TABLES) as TableName[])
    for (const { to, by } of tableOf(table).belongs) if (to === 'people') yield [table, by];
}

/**
 * Erases what is written of a person, from the journal too, and overwrites where it stood; with `papers` also where plans that
 * were handed over say it. Answers what stays of her, without a name, and on how many plans it stood.
 */
export function erasePerson(
  db: Database.Database,
  person: Person,
  papers: boolean,
): Written<{ starters: number; papers: number }> {
  const ids = samePerson(db, person);
  const starters = startersFor(db, person);
  let plans: Plan[] = [];
  db.transaction(() => {
    const rows = ids.map((id) => db.prepare<[string], Row>('SELECT * FROM people WHERE id = ?').get(id) ?? {});
    const remembered = ids.flatMap((id) => rememberedOf(db, 'people', id));
    const written = new Set([...rows, ...remembered].flatMap(writtenIn));
    plans = naming(allPlans(db), written);
    for (const [table, by] of columnsNaming()) blank(db, table, by, ids);
    for (const id of ids) forgetChanges(db, 'people', id);
    for (const table of PERSONAL) if (!OWNED.includes(table)) blankTexts(db, table, written);
    forgetWords(
      db,
      [...rows, ...remembered].map((row) => String(row['name'] ?? '')),
    );
    const keep = db.prepare('UPDATE plans SET document = ? WHERE id = ?');
    if (papers) for (const { id, document } of plans) keep.run(JSON.stringify(withoutPerson(document, written)), id);
  }).immediate();
  overwriteFreed(db);
  return { value: { starters, papers: plans.length }, changed: [...tagsOf([...PERSONAL, 'starters', 'plans']), 'records'] };
}

/** Tables whose rows say by an id whose they are; elsewhere a person is a text beside other things. */
const PERSONAL = (Object.keys(TABLES) as TableName[]).filter((table) => tableOf(table).personal.length > 0);
const OWNED: readonly string[] = [...columnsNaming()].map(([table]) => table);

/** Empties the personal columns of a table. */
function blank(db: Database.Database, table: TableName, by: string, ids: readonly string[]): void {
  const { personal } = tableOf(table);
  if (personal.length === 0) return;
  const set = personal.map((column) => `${column} = ''`).join(', ');
  db.prepare(`UPDATE ${table} SET ${set} WHERE ${by} IN (SELECT value FROM json_each(?))`).run(JSON.stringify(ids));
}

/** What stands in the personal columns of a row, each once. */
function writtenIn(row: Row): string[] {
  const texts = TABLES.people.personal.map((column) => String(row[column] ?? '').trim());
  return [...new Set(texts.filter((text) => text !== ''))];
}

/** Earlier programs wrote the name of a starter pack's buyer as the text of what was done. */
function forgetWords(db: Database.Database, names: readonly string[]): void {
  db.prepare(
    `UPDATE journal SET who = '' WHERE about IS NULL AND operation LIKE 'freezer.%Starter'
       AND who IN (SELECT value FROM json_each(?))`,
  ).run(JSON.stringify(names));
}

interface Plan {
  readonly id: string;
  readonly document: AnyPlan;
}

/** Every plan that was handed over, those taken back too. */
function allPlans(db: Database.Database): Plan[] {
  return db
    .prepare<[], { id: string; document: string }>('SELECT id, document FROM plans')
    .all()
    .map(({ id, document }) => ({ id, document: anyPlanSchema.parse(JSON.parse(document)) }));
}

function naming(plans: readonly Plan[], written: ReadonlySet<string>): Plan[] {
  return plans.filter(({ document }) => withoutPerson(document, written) !== document);
}
