/**
 * The journal: one entry per command, with every change it made as data. Undo applies the changes backwards, redo
 * forwards, each in one transaction, so both survive a restart. What a command put in is never deleted by undo where
 * its table has a mark: it is marked as taken back.
 */

import type Database from 'better-sqlite3';
import { z } from 'zod';
import { nameNow } from '../../core/contract/earlier-names.ts';
import { aboutSchema, type Done, type DoneAbout, doneSchema } from '../../core/contract/journal.ts';
import type { Tag } from '../../core/contract/result.ts';
import type { Cell, Row } from './rows.ts';
import { TABLES, type TableName, tagsOf } from './tables.ts';

const tableName = z.enum(Object.keys(TABLES) as [TableName, ...TableName[]]);
// Column names come back out of the file and go into SQL text: letters only.
const cells = z.record(z.string().regex(/^[A-Za-z]+$/), z.union([z.string(), z.number(), z.null()]));
const changesSchema = z.array(
  z.discriminatedUnion('kind', [
    /** The row itself only where the table has no mark, so that redo can put it back. */
    z.strictObject({ kind: z.literal('insert'), table: tableName, id: z.string(), row: cells.nullable() }),
    z.strictObject({ kind: z.literal('update'), table: tableName, id: z.string(), before: cells, after: cells }),
  ]),
);
type Change = z.infer<typeof changesSchema>[number];

/** Writes rows and remembers what changed. */
export interface Recorder {
  insert(table: TableName, row: Row & { id: string }): void;
  /** Sets columns of a row that is there; columns that stay the same are not remembered. */
  update(table: TableName, id: string, columns: Row): void;
}

/** An entry that can't be taken back or done again: it speaks of a table or column that this program does not have. */
export class JournalError extends Error {
  constructor() {
    super('the entry is of an earlier shape of the file');
    this.name = 'JournalError';
  }
}

/** What was answered, and the tags of what was written for it. */
export interface Written<T> {
  readonly value: T;
  readonly changed: readonly Tag[];
}

/** What a command was about, for the list of things done. */
export interface About {
  readonly what: DoneAbout;
  readonly grams: number | null;
  readonly litterId: string | null;
  readonly puppyId: string | null;
}

/**
 * Runs a command: its rows and its journal entry in one transaction. What was undone before can't be redone after it.
 * An error thrown by `work` leaves everything as it was.
 */
export function runCommand<T>(
  db: Database.Database,
  entry: { readonly instant: number; readonly operation: string },
  work: (recorder: Recorder) => { value: T; about: About },
): Written<T> {
  return db
    .transaction(() => {
      const changes: Change[] = [];
      const { value, about } = work(recorderOf(db, changes));
      const { what, ...of } = about;
      db.prepare("UPDATE journal SET state = 'dead' WHERE state = 'undone'").run();
      db.prepare(
        `INSERT INTO journal (instant, operation, who, about, grams, litterId, puppyId, changes, state)
         VALUES (:instant, :operation, '', :about, :grams, :litterId, :puppyId, :changes, 'done')`,
      ).run({ ...entry, ...of, about: JSON.stringify(aboutSchema.parse(what)), changes: JSON.stringify(changes) });
      return { value, changed: changedBy(changes) };
    })
    .immediate();
}

/** Each entry changes the list of things done, too. */
function changedBy(changes: readonly Change[]): Tag[] {
  return [...tagsOf(changes.map((change) => change.table)), 'records'];
}

function recorderOf(db: Database.Database, changes: Change[]): Recorder {
  return {
    insert: (table, row) => {
      insertRow(db, table, row);
      changes.push({ kind: 'insert', table, id: row.id, row: TABLES[table].mark === null ? row : null });
    },
    update: (table, id, columns) => {
      const names = Object.keys(columns);
      const old = statement(db, `SELECT ${names.join(', ')} FROM ${table} WHERE id = ?`).get(id) as Row | undefined;
      if (old === undefined) throw new Error(`no row ${id} in ${table}`);
      const changed = names.filter((name) => old[name] !== columns[name]);
      if (changed.length === 0) return;
      const after = pick(columns, changed);
      setColumns(db, table, id, after);
      changes.push({ kind: 'update', table, id, before: pick(old, changed), after });
    },
  };
}

/** A cell of JSON; an empty one for null. */
export function jsonOrNull(value: unknown): string | null {
  return value === null ? null : JSON.stringify(value);
}

const statements = new WeakMap<Database.Database, Map<string, Database.Statement>>();

/** A statement that is run for each row of a table that was pasted: made once a file, which takes longer than running it. */
function statement(db: Database.Database, sql: string): Database.Statement {
  const known = statements.get(db) ?? new Map<string, Database.Statement>();
  statements.set(db, known);
  const made = known.get(sql) ?? db.prepare(sql);
  known.set(sql, made);
  return made;
}

/** Inserts a row without remembering it. */
export function insertRow(db: Database.Database, table: TableName, row: Row): void {
  const names = Object.keys(row);
  statement(db, `INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map((n) => `:${n}`).join(', ')})`).run(row);
}

function setColumns(db: Database.Database, table: TableName, id: string, columns: Row): void {
  const names = Object.keys(columns);
  if (names.length === 0) return;
  const set = names.map((name) => `${name} = ?`).join(', ');
  statement(db, `UPDATE ${table} SET ${set} WHERE id = ?`).run(...names.map((name) => columns[name] ?? null), id);
}

function pick(row: Row, names: readonly string[]): Row {
  return Object.fromEntries(names.map((name) => [name, row[name] ?? null]));
}

/** Takes the last command back; null when there is none. JournalError when it is of a shape that is no more. */
export function undo(db: Database.Database): Written<{ done: Done }> | null {
  return step(db, lastDone(db), 'undone', (changes) => {
    for (const change of [...changes].reverse()) applyBackwards(db, change);
  });
}

/** Does again what was last taken back; null when there is nothing. JournalError as for undo. */
export function redo(db: Database.Database): Written<{ done: Done }> | null {
  return step(db, nextUndone(db), 'done', (changes) => {
    for (const change of changes) applyForwards(db, change);
  });
}

function step(
  db: Database.Database,
  entry: Done | null,
  state: 'done' | 'undone',
  apply: (changes: Change[]) => void,
): Written<{ done: Done }> | null {
  if (entry === null) return null;
  const changes = changesOf(db, entry.id);
  db.transaction(() => {
    apply(changes);
    db.prepare('UPDATE journal SET state = ? WHERE id = ?').run(state, entry.id);
  }).immediate();
  return { value: { done: { ...entry, undone: state === 'undone' } }, changed: changedBy(changes) };
}

/** What an entry changed. JournalError when it names a table or column that is no more: nothing is changed then. */
function changesOf(db: Database.Database, id: number): Change[] {
  const stored = db.prepare<[number], string>('SELECT changes FROM journal WHERE id = ?').pluck().get(id);
  const changes = changesSchema.safeParse(JSON.parse(stored ?? '[]'));
  if (!changes.success) throw new JournalError();
  const columns = new Map<TableName, readonly string[]>();
  for (const change of changes.data) {
    const there = columns.get(change.table) ?? columnsOf(db, change.table);
    columns.set(change.table, there);
    const named = change.kind === 'update' ? [change.before, change.after] : [change.row ?? {}];
    if (named.flatMap(Object.keys).some((name) => !there.includes(name))) throw new JournalError();
  }
  return changes.data;
}

function columnsOf(db: Database.Database, table: TableName): readonly string[] {
  return db.prepare<[string], string>('SELECT name FROM pragma_table_info(?)').pluck().all(table);
}

function applyBackwards(db: Database.Database, change: Change): void {
  if (change.kind === 'update') return setColumns(db, change.table, change.id, change.before);
  const mark = TABLES[change.table].mark;
  if (mark === null) db.prepare(`DELETE FROM ${change.table} WHERE id = ?`).run(change.id);
  else setColumns(db, change.table, change.id, { [mark]: 1 });
}

function applyForwards(db: Database.Database, change: Change): void {
  if (change.kind === 'update') return setColumns(db, change.table, change.id, change.after);
  const mark = TABLES[change.table].mark;
  if (mark !== null) setColumns(db, change.table, change.id, { [mark]: 0 });
  else if (change.row !== null) insertRow(db, change.table, change.row);
}

/** A person is named as she is called now: what was erased of her is in no entry. */
const ENTRY = `SELECT j.id, j.instant, j.operation, j.who, j.about, j.grams, j.litterId, j.puppyId, j.state, p.name
  FROM journal j LEFT JOIN people p ON p.id = j.about ->> 'personId'`;

/** The command that undo would take back. */
export function lastDone(db: Database.Database): Done | null {
  return one(db.prepare<[], Row>(`${ENTRY} WHERE j.state = 'done' ORDER BY j.id DESC LIMIT 1`).get());
}

/** The command that redo would do again. */
export function nextUndone(db: Database.Database): Done | null {
  return one(db.prepare<[], Row>(`${ENTRY} WHERE j.state = 'undone' ORDER BY j.id LIMIT 1`).get());
}

/** The latest commands, newest first; those taken back are among them, marked. */
export function doneList(db: Database.Database, limit: number): Done[] {
  return db.prepare<[number], Row>(`${ENTRY} ORDER BY j.id DESC LIMIT ?`).all(limit).map(toDone);
}

function one(row: Row | undefined): Done | null {
  return row === undefined ? null : toDone(row);
}

function toDone({ state, who, about, name, ...row }: Row): Done {
  const operation = nameNow(String(row['operation']));
  return doneSchema.parse({ ...row, operation, about: aboutOf(who, about, name), undone: state !== 'done' });
}

/** Entries of earlier files have the words that they were written with. */
function aboutOf(who: Cell | undefined, about: Cell | undefined, name: Cell | undefined): Done['about'] {
  if (about === null || about === undefined) return { of: 'text', text: String(who) };
  const what = aboutSchema.parse(JSON.parse(String(about)));
  return what.of === 'person' ? { of: 'person', name: String(name ?? '') } : what;
}
