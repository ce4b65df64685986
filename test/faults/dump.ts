/** Every row of a data file as text, to compare what was with what is. */
import Database from 'better-sqlite3';

/** One line a row, in the order of tables and rows. The journal is left out on request: a salvage begins a new one. */
export function rowsIn(db: Database.Database, without: readonly string[] = []): string[] {
  const tables = db
    .prepare<[], string>(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~' ORDER BY name",
    )
    .pluck()
    .all();
  return tables
    .filter((table) => !without.includes(table))
    .flatMap((table) =>
      db
        .prepare(`SELECT * FROM ${table} ORDER BY rowid`)
        .all()
        .map((row) => `${table} ${JSON.stringify(row)}`),
    );
}

/** The rows of a file that nobody has open for writing, or whose writer is between two commands. */
export function rowsOfFile(file: string, without: readonly string[] = []): string[] {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return rowsIn(db, without);
  } finally {
    db.close();
  }
}
