/**
 * What keeps an open data file provable: it folds the log into the file, sealing the file anew each time, keeps the mark
 * of what was answered, and notices when the file or its log is no longer there.
 */
import { statSync } from 'node:fs';
import type Database from 'better-sqlite3';
import { Marker } from './mark.ts';
import { breakSeal, seal } from './seal.ts';

/** Frames that wait in the log before they are folded in: about 4 MB. */
const FOLDED_FROM = 1000;

const keepers = new WeakMap<Database.Database, Keeper>();

/** Folds the log into the file and empties it, so that nothing that was erased stands in it any more. */
export function emptyLog(db: Database.Database): void {
  const keeper = keepers.get(db);
  if (keeper === undefined) db.pragma('wal_checkpoint(TRUNCATE)');
  else keeper.fold('TRUNCATE');
}

export class Keeper {
  readonly #db: Database.Database;
  readonly #file: string;
  readonly #marker: Marker;
  readonly #there: readonly string[];

  /** For a file that was just opened; nothing else may write it. */
  constructor(db: Database.Database, file: string) {
    this.#db = db;
    this.#file = file;
    db.pragma('wal_autocheckpoint = 0');
    db.pragma('wal_checkpoint(TRUNCATE)');
    this.#marker = new Marker(db, file);
    seal(file, 'open');
    this.#there = this.#identities();
    keepers.set(db, this);
  }

  /** After a command: what it wrote is answered for from now on. */
  settle(): void {
    this.#marker.write();
    if (this.#marker.waiting() <= FOLDED_FROM) return;
    try {
      this.fold('PASSIVE');
    } catch {
      // The log holds it all; it is tried again after the next command.
    }
  }

  /** Folds the log into the file. Without a seal in between: the file is being written. */
  fold(how: 'PASSIVE' | 'TRUNCATE'): void {
    breakSeal(this.#file);
    const [row] = this.#db.pragma(`wal_checkpoint(${how})`) as { busy: number; log: number; checkpointed: number }[];
    if (row === undefined || row.busy !== 0 || row.checkpointed < row.log) return;
    this.#marker.fold();
    seal(this.#file, 'open');
  }

  /** Whether the file and its log are still those that were opened. */
  isThere(): boolean {
    return this.#identities().every((identity, n) => identity !== '' && identity === this.#there[n]);
  }

  /** Lets go of the mark. */
  close(): void {
    keepers.delete(this.#db);
    this.#marker.close();
  }

  #identities(): string[] {
    return [this.#file, `${this.#file}-wal`].map((path) => {
      const found = statSync(path, { bigint: true, throwIfNoEntry: false });
      return found === undefined ? '' : `${found.dev} ${found.ino}`;
    });
  }
}
