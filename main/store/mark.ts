/**
 * The mark: what had been answered when the program last ran, in a small file beside the data file. It is written after
 * each command and not synced: a killed program leaves it whole, and a power cut can only leave an older one or one that
 * can't be read, never one that promises more than the log holds, which was durable first.
 */
import { closeSync, constants, fsyncSync, openSync, readFileSync, readSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import type Database from 'better-sqlite3';
import { makePrivate, syncFolder } from './file.ts';
import type { Answered } from './log.ts';

export interface Mark extends Answered {
  /** The number of the last journal entry; they count up and none is given twice. */
  readonly last: number;
}

const nameOf = (file: string): string => `${file}.mark`;
const LINE = /^([0-9a-f]{16})? (\d+) (\d+) (\d+) (\d+)\n/;

const checksum = (text: string): number => [...text].reduce((sum, c) => (Math.imul(sum, 31) + c.charCodeAt(0)) >>> 0, 7);

/** The mark beside a data file; null when there is none that can be read. */
export function readMark(file: string): Mark | null {
  let text: string;
  try {
    text = readFileSync(nameOf(file), 'latin1');
  } catch {
    return null;
  }
  const [, salts = '', frames, folded, last, sum] = LINE.exec(text) ?? [];
  if (Number(sum) !== checksum(`${salts} ${frames} ${folded} ${last}`)) return null;
  return { salts, frames: Number(frames), folded: Number(folded), last: Number(last) };
}

export function removeMark(file: string): void {
  rmSync(nameOf(file), { force: true });
}

/** Keeps the mark of an open data file up to what its log holds. */
export class Marker {
  readonly #db: Database.Database;
  readonly #file: string;
  readonly #fd: number;
  #folded = 0;
  #written = '';

  /** For a file that holds all of its log. */
  constructor(db: Database.Database, file: string) {
    this.#db = db;
    this.#file = file;
    makePrivate(nameOf(file));
    this.#fd = openSync(nameOf(file), constants.O_RDWR);
    this.fold();
    syncFolder(dirname(file));
  }

  /** Frames in the log that are not in the data file yet. */
  waiting(): number {
    return framesInLog(this.#db) - this.#folded;
  }

  /** Says, durably, that the data file holds all of the log: so a mark is never older than the log before this one. */
  fold(): void {
    this.#folded = framesInLog(this.#db);
    this.write();
    fsyncSync(this.#fd);
  }

  write(): void {
    const frames = framesInLog(this.#db);
    if (frames < this.#folded) this.#folded = 0; // the log began anew
    const said = `${frames === 0 ? '' : saltsIn(`${this.#file}-wal`)} ${frames} ${this.#folded} ${lastEntry(this.#db)}`;
    if (said === this.#written) return;
    writeSync(this.#fd, `${said} ${checksum(said)}\n`.padEnd(80), 0);
    this.#written = said;
  }

  close(): void {
    closeSync(this.#fd);
  }
}

/** Asks how long the log is; NOOP checkpoints nothing. */
function framesInLog(db: Database.Database): number {
  const [row] = db.pragma('wal_checkpoint(NOOP)') as { log: number }[];
  return Math.max(0, row?.log ?? 0);
}

function saltsIn(log: string): string {
  const header = Buffer.alloc(24);
  const fd = openSync(log, 'r');
  try {
    readSync(fd, header, 0, 24, 0);
  } finally {
    closeSync(fd);
  }
  return header.toString('hex', 16, 24);
}

/** The highest number that a journal entry ever had, whether it is still there or not. */
export function lastEntry(db: Database.Database): number {
  return db.prepare<[], number>("SELECT seq FROM sqlite_sequence WHERE name = 'journal'").pluck().get() ?? 0;
}
