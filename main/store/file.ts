/** Files on disk: the header of a data file, making things durable, private permissions. */
import { chmodSync, closeSync, fsyncSync, mkdirSync, openSync, readSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';

/** `WHLP`: marks a SQLite file as one of this program's. */
export const APPLICATION_ID = 0x57484c50;

const MAGIC = 'SQLite format 3\0';

export interface Header {
  readonly applicationId: number;
  readonly userVersion: number;
  /** What the header says the file should measure; the write-ahead log may hold more. */
  readonly bytes: number;
}

/** The header of a SQLite file without opening it by SQLite, which could change it; null when it is not one. */
export function readHeader(file: string): Header | null {
  const head = Buffer.alloc(100);
  const fd = openSync(file, 'r');
  try {
    if (readSync(fd, head, 0, 100, 0) < 100) return null;
  } finally {
    closeSync(fd);
  }
  if (head.toString('latin1', 0, 16) !== MAGIC) return null;
  const page = head.readUInt16BE(16);
  return {
    applicationId: head.readUInt32BE(68),
    userVersion: head.readUInt32BE(60),
    bytes: (page === 1 ? 65536 : page) * head.readUInt32BE(28),
  };
}

const SIDE_FILES = ['-journal', '-wal', '-shm'];

/** The files that SQLite keeps beside a database. */
export function sideFiles(file: string): string[] {
  return SIDE_FILES.map((end) => file + end);
}

/** Whether `quick_check` finds the file whole. Opens it for reading only; never writes to it. */
export function isIntact(file: string): boolean {
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    try {
      return db.pragma('quick_check', { simple: true }) === 'ok';
    } finally {
      db.close();
    }
  } catch (error) {
    if (error instanceof Database.SqliteError && /^SQLITE_(CORRUPT|NOTADB|IOERR)/.test(error.code)) return false;
    throw error;
  }
}

/** Puts a finished file in its place so that a power cut leaves either none or all of it. */
export function placeDurably(temporary: string, file: string): void {
  syncFile(temporary);
  renameSync(temporary, file);
  syncFolder(dirname(file));
}

/** Makes what was written into a file durable. */
export function syncFile(file: string): void {
  const fd = openSync(file, 'r+');
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** Makes a change of names in a folder durable. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return; // a folder can't be opened there
  const fd = openSync(folder, 'r');
  try {
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** An empty file that only its owner can read, if there is none yet; SQLite gives its side files the same mode. */
export function makePrivate(file: string): void {
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
}

/** A folder that only its owner can enter, if there is none yet. One that is there keeps its mode. */
export function makeFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
}
