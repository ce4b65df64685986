/**
 * Reading a damaged file page by page, weighed against the simplest thing that could work: opening it and copying each table's rows
 * from both ends until a row can't be read. The same damages for both; the reason why `main/store/salvage.ts` is kept.
 */
import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { MIGRATIONS, runStep } from '../../main/store/migrations.ts';
import { salvage } from '../../main/store/salvage.ts';
import { call, machineClock, makeWorld } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { rowsIn, rowsOfFile } from './dump.ts';
import { Chance, rounds } from './numbers.ts';

const PAGE = 4096;
const ROUNDS = rounds(200, 24);
const NOT_FACTS = ['journal'];
const chance = new Chance(544);

let scratch: { folder: string; remove(): void };
let whole: string;
let facts: ReadonlySet<string>;

beforeAll(async () => {
  scratch = scratchFolder();
  const folder = join(scratch.folder, 'house');
  const program = openOn(folder);
  await makeWorld(program.dispatch);
  await call(program.dispatch, 'records.addDemo', { now: machineClock().local, utcOffsetMinutes: 0 });
  program.close();
  whole = join(folder, 'whelpside.sqlite');
  facts = new Set(rowsOfFile(whole, NOT_FACTS));
}, 60_000);
afterAll(() => scratch.remove());

const DAMAGES: Readonly<Record<string, (bytes: Buffer) => Buffer>> = {
  'bits turned over': (bytes) => {
    for (let n = 0; n < 20; n += 1) {
      const at = chance.below(bytes.length);
      bytes.writeUInt8((bytes[at] ?? 0) ^ (1 << chance.below(8)), at);
    }
    return bytes;
  },
  'pages zeroed': (bytes) => {
    const page = chance.below(bytes.length / PAGE);
    return bytes.fill(0, page * PAGE, Math.min(bytes.length, (page + 2) * PAGE));
  },
  'cut short': (bytes) => bytes.subarray(0, PAGE + chance.below(bytes.length - PAGE)),
  'the first page gone': (bytes) => bytes.fill(0, 0, PAGE),
};

type Row = Record<string, unknown>;

/** What both ends of each table still give, as far as it makes a file that the program can open: a row whose owner is gone is dropped. */
function copied(file: string): Set<string> {
  const target = new Database(':memory:');
  for (const step of MIGRATIONS) runStep(target, step);
  target.pragma('foreign_keys = OFF');
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true });
    try {
      const tables = db.prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
      for (const table of tables.filter((t) => !NOT_FACTS.includes(t))) {
        for (const order of ['ASC', 'DESC']) copyUntilUnreadable(db, target, table, order);
      }
    } finally {
      db.close();
    }
  } catch {
    // It can't be opened, or its list of tables can't be read: nothing more is copied.
  }
  dropOrphans(target);
  const rows = new Set(rowsIn(target, NOT_FACTS));
  target.close();
  return rows;
}

function copyUntilUnreadable(db: Database.Database, target: Database.Database, table: string, order: string): void {
  try {
    for (const row of db.prepare<[], Row>(`SELECT * FROM "${table}" NOT INDEXED ORDER BY rowid ${order}`).iterate()) {
      const names = Object.keys(row);
      const sql = `INSERT OR IGNORE INTO "${table}" ("${names.join('", "')}") VALUES (${names.map(() => '?').join(', ')})`;
      target.prepare(sql).run(...Object.values(row));
    }
  } catch {
    // The rest of it is read from the other end.
  }
}

function dropOrphans(db: Database.Database): void {
  for (;;) {
    const orphans = db.pragma('foreign_key_check') as { table: string; rowid: number }[];
    if (orphans.length === 0) return;
    for (const { table, rowid } of orphans) db.prepare(`DELETE FROM "${table}" WHERE rowid = ?`).run(rowid);
  }
}

function salvaged(file: string): Set<string> {
  const target = join(scratch.folder, 'salvaged.sqlite');
  rmSync(target, { force: true });
  salvage(file, target);
  return new Set(rowsOfFile(target, NOT_FACTS));
}

const kept = (rows: ReadonlySet<string>) => [...rows].filter((row) => facts.has(row)).length;

it('rescues facts that copying rows cannot', () => {
  const byKind = Object.entries(DAMAGES).map(([kind, harm]) => {
    let [pages, rows] = [0, 0];
    for (let n = 0; n < ROUNDS / Object.keys(DAMAGES).length; n += 1) {
      const file = join(scratch.folder, 'damaged.sqlite');
      copyFileSync(whole, file);
      writeFileSync(file, harm(readFileSync(file)));
      rows += kept(copied(file));
      pages += kept(salvaged(file));
    }
    const of = (facts.size * ROUNDS) / Object.keys(DAMAGES).length;
    console.log(`${kind}: of ${of} rows page by page ${pages}, by copying rows ${rows}`);
    return { kind, pages, rows };
  });
  // By chance a page is hit that only one of them needs: of a kind neither may be far behind.
  for (const { kind, pages, rows } of byKind) expect(pages, kind).toBeGreaterThanOrEqual(0.95 * rows);
  expect(byKind.find((k) => k.kind === 'the first page gone')?.rows).toBe(0);
  const sum = (of: 'pages' | 'rows') => byKind.reduce((all, k) => all + k[of], 0);
  expect(sum('pages')).toBeGreaterThan(1.1 * sum('rows'));
}, 600_000);
