/** How much a data file holds, in figures that a person can compare. */

import Database from 'better-sqlite3';
import type { Counts } from '../../core/contract/records.ts';

/** Reads a whole data file without changing it; what was taken back does not count. */
export function countsOf(file: string): Counts {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return countsIn(db);
  } finally {
    db.close();
  }
}

export function countsIn(db: Database.Database): Counts {
  const one = (sql: string): number | null => db.prepare<[], number | null>(sql).pluck().get() ?? null;
  return {
    litters: one('SELECT count(*) FROM litters WHERE removed = 0') ?? 0,
    puppies: one('SELECT count(*) FROM puppies WHERE removed = 0') ?? 0,
    readings: one('SELECT count(*) FROM readings WHERE withdrawn = 0') ?? 0,
    lastReading: one('SELECT max(recordedInstant) FROM readings WHERE withdrawn = 0'),
  };
}

/** The ids of the weights in a whole data file that were not taken back. */
export function weightIds(file: string): Set<string> {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return new Set(db.prepare<[], string>('SELECT id FROM readings WHERE withdrawn = 0').pluck().all());
  } finally {
    db.close();
  }
}
