/** Erasing what was written about a person: what the journal remembers of it, and the bytes where it stood. */
import type Database from 'better-sqlite3';
import { emptyLog } from './keeper.ts';
import type { Row } from './rows.ts';
import { type TableName, tableOf } from './tables.ts';

/**
 * Takes every change of a row out of the journal, so that neither undo nor a look into the file brings it back; entries
 * that were about nothing else go. Copies made before still hold it until they expire.
 */
export function forgetChanges(db: Database.Database, table: TableName, id: string): void {
  const about = "c.value ->> 'table' = ? AND c.value ->> 'id' = ?";
  const entries = db
    .prepare<[string, string], number>(
      `SELECT id FROM journal WHERE EXISTS (SELECT 1 FROM json_each(journal.changes) c WHERE ${about})`,
    )
    .pluck()
    .all(table, id);
  const keepOthers = db.prepare(
    `UPDATE journal SET changes =
       (SELECT json_group_array(json(c.value)) FROM json_each(journal.changes) c WHERE NOT (${about})) WHERE id = ?`,
  );
  const dropEmpty = db.prepare("DELETE FROM journal WHERE id = ? AND changes = '[]'");
  for (const entry of entries) {
    keepOthers.run(table, id, entry);
    dropEmpty.run(entry);
  }
}

/** What the journal remembers of a row: the columns of every change of it. */
export function rememberedOf(db: Database.Database, table: TableName, id: string): Row[] {
  const sql = `SELECT c.value FROM journal, json_each(journal.changes) c
    WHERE c.value ->> 'table' = ? AND c.value ->> 'id' = ?`;
  const changes = db.prepare<[string, string], string>(sql).pluck().all(table, id);
  return changes.flatMap((change): Row[] => {
    const { row, before, after } = JSON.parse(change) as { row?: Row | null; before?: Row; after?: Row };
    return [row, before, after].filter((columns) => columns !== null && columns !== undefined);
  });
}

/** Empties a table's personal columns where one of these texts stands alone in them, in its rows and in what the journal remembers of them. */
export function blankTexts(db: Database.Database, table: TableName, texts: ReadonlySet<string>): void {
  const { personal } = tableOf(table);
  if (personal.length === 0) return;
  const list = JSON.stringify([...texts]);
  for (const column of personal)
    db.prepare(`UPDATE ${table} SET ${column} = '' WHERE trim(${column}) IN (SELECT value FROM json_each(?))`).run(list);
  const blanked = (columns: Row): Row =>
    Object.fromEntries(
      Object.entries(columns).map(([name, cell]) => [
        name,
        personal.includes(name) && texts.has(String(cell).trim()) ? '' : cell,
      ]),
    );
  const about = `SELECT id, changes FROM journal WHERE EXISTS
    (SELECT 1 FROM json_each(journal.changes) c WHERE c.value ->> 'table' = ?)`;
  const keep = db.prepare('UPDATE journal SET changes = ? WHERE id = ?');
  for (const { id, changes } of db.prepare<[string], { id: number; changes: string }>(about).all(table)) {
    const all = (JSON.parse(changes) as { table: string }[]).map((change) =>
      change.table !== table
        ? change
        : Object.fromEntries(
            Object.entries(change).map(([key, value]: [string, unknown]) => [
              key,
              typeof value === 'object' && value !== null ? blanked(value as Row) : value,
            ]),
          ),
    );
    keep.run(JSON.stringify(all), id);
  }
}

/** Gives freed pages back and empties the log, which still held the old ones. Not inside a transaction. */
export function overwriteFreed(db: Database.Database): void {
  db.pragma('incremental_vacuum');
  emptyLog(db);
}
