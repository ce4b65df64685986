/**
 * Backups against the file: a file that lacks weights which its newest backup holds is an older one, or has lost them.
 * Backups that were there when she chose another file on purpose are accepted: they may hold more.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { backupsFolder, listBackups } from './backup.ts';
import { isIntact, makePrivate, placeDurably } from './file.ts';

const nameOf = (file: string): string => `${file}.accepted`;

/** Remembers, durably, that the file may lack what the backups hold that are there now. */
export function acceptBackups(folder: string, file: string): void {
  const part = `${nameOf(file)}.part`;
  makePrivate(part);
  writeFileSync(
    part,
    listBackups(folder)
      .map((b) => `${b.file}\n`)
      .join(''),
  );
  placeDurably(part, nameOf(file));
}

/** Paths of the whole backups that were not accepted, newest first. */
export function tellingBackups(folder: string, file: string): string[] {
  const accepted = acceptedNames(file);
  return listBackups(folder)
    .filter((b) => b.checked && !accepted.has(b.file))
    .map((b) => join(backupsFolder(folder), b.file));
}

/** The names of those backups. */
export function acceptedNames(file: string): Set<string> {
  try {
    return new Set(readFileSync(nameOf(file), 'utf8').split('\n'));
  } catch {
    return new Set();
  }
}

/** How many litters, puppies and weights the newest whole backup holds that the file lacks; invented ones don't count. */
export function lackOfNewestBackup(folder: string, file: string): number {
  for (const backup of tellingBackups(folder, file)) {
    const held = idsIn(backup);
    if (held === null) continue;
    const there = new Set(idsIn(file));
    const lack = held.filter((id) => !there.has(id)).length;
    if (lack === 0 || isIntact(backup)) return lack;
  }
  return 0;
}

/** None of these rows is ever deleted, only marked, but those of invented litters. */
const OWN_ROWS = `
  SELECT id FROM litters WHERE demo = 0
  UNION ALL SELECT p.id FROM puppies p JOIN litters l ON l.id = p.litterId WHERE l.demo = 0
  UNION ALL SELECT r.id FROM readings r JOIN puppies p ON p.id = r.puppyId JOIN litters l ON l.id = p.litterId WHERE l.demo = 0`;

function idsIn(file: string): string[] | null {
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    try {
      return db.prepare<[], string>(OWN_ROWS).pluck().all();
    } finally {
      db.close();
    }
  } catch {
    return null;
  }
}
