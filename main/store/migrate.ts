/** How a data file is made and set up, and brought to the newest shape. */
import { rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { StoreError, storeCodeOf } from './fault.ts';
import { APPLICATION_ID, makePrivate, sideFiles } from './file.ts';
import { MIGRATIONS, type Migration, runStep } from './migrations.ts';

export function setUp(db: Database.Database): void {
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('fullfsync = ON'); // macOS: through the drive's own cache; no effect elsewhere
  db.pragma('foreign_keys = ON');
  db.pragma('secure_delete = ON');
  db.pragma('trusted_schema = OFF');
}

/** Runs the steps that the file lacks, each in a transaction; `before` only when there are any. StoreError `update`. */
export function migrate(db: Database.Database, migrations: readonly Migration[], before: () => void): void {
  const version = Number(db.pragma('user_version', { simple: true }));
  if (version >= migrations.length) return;
  before();
  for (const step of migrations.slice(version)) {
    try {
      db.transaction(() => {
        runStep(db, step);
        db.pragma(`user_version = ${step.version}`);
      }).immediate();
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      throw new StoreError(storeCodeOf(error) ?? 'update', `step ${step.version} (${step.name}) failed: ${text}`);
    }
  }
}

/** An empty data file that keeps a log, closed. What was there of that name goes. */
export function makeFile(fresh: string, migrations: readonly Migration[] = MIGRATIONS): void {
  for (const path of [fresh, ...sideFiles(fresh)]) rmSync(path, { force: true });
  makePrivate(fresh);
  const db = new Database(fresh);
  try {
    db.pragma('auto_vacuum = INCREMENTAL'); // only before the first table
    db.pragma(`application_id = ${APPLICATION_ID}`);
    // In its place it must never have a journal, which a kill would leave hot and the next start could not read over.
    setUp(db);
    migrate(db, migrations, () => undefined);
  } finally {
    db.close();
  }
}
