/**
 * Killed at each of its own operations on files: first start, update, going back, salvage, a copy, the end, and the copies
 * that are made when two in the afternoon or midnight is crossed. The next start opens, with every answered weight, and asks
 * nothing: a kill is no damage.
 */
import { spawn } from 'node:child_process';
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openProgramOrRescue } from '../../main/service/program.ts';
import { MIGRATIONS } from '../../main/store/migrations.ts';
import { before, call, machineClock, makeWorld, readingFields } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { rowsOfFile } from './dump.ts';
import { Chance, report, rounds } from './numbers.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const CHILD = fileURLToPath(new URL('./aimed-child.ts', import.meta.url));
/** The same in one file, which starts in a fraction of the time. */
const MADE = join(ROOT, 'test-results', `aimed-${process.pid}`);
const FILE = 'whelpside.sqlite';
const KINDS = ['first start', 'update', 'going back', 'salvage', 'a copy', 'afternoon', 'midnight', 'the end'] as const;
type Kind = (typeof KINDS)[number];
/** The so-manieth calls that are tried of each kind; all of them at the full numbers. */
const TRIED = rounds(Number.POSITIVE_INFINITY, 1);
const chance = new Chance(41);

let scratch: { folder: string; remove(): void };
/** A house with weights of which the last are in no backup; the same killed, with its file damaged; and one of the first shape. */
let house: string;
let damaged: string;
let old: string;
let ids: string[];

beforeAll(async () => {
  await build({
    configFile: false,
    logLevel: 'error',
    root: ROOT,
    ssr: { external: ['better-sqlite3'], noExternal: true },
    build: { ssr: CHILD, outDir: MADE, rolldownOptions: { output: { entryFileNames: 'child.mjs' } } },
  });
  scratch = scratchFolder();
  house = join(scratch.folder, 'house');
  const program = openOn(house);
  const world = await makeWorld(program.dispatch);
  await call(program.dispatch, 'records.backUp', {});
  ids = [];
  for (let n = 0; n < 5; n += 1) {
    const reading = readingFields(before(machineClock(), 0, 30 - n), 900 + n);
    ids.push((await call(program.dispatch, 'growth.record', { puppyId: world.puppies[0]?.id ?? '', reading })).reading.id);
  }
  program.close();
  damaged = join(scratch.folder, 'damaged');
  cpSync(house, damaged, { recursive: true });
  writeFileSync(join(damaged, FILE), readFileSync(join(damaged, FILE)).fill(0, 0, 100));
  old = join(scratch.folder, 'old');
  cpSync(house, old, { recursive: true, filter: (path) => !/whelpside\.|backups/.test(path) });
  const db = new Database(join(old, FILE));
  db.pragma('journal_mode = WAL');
  db.pragma('application_id = 1464355920');
  db.exec(MIGRATIONS[0]?.sql ?? '');
  db.pragma('user_version = 1');
  db.exec("INSERT INTO litters VALUES ('l', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1, 0, 0)");
  db.close();
}, 60_000);
afterAll(() => {
  scratch.remove();
  rmSync(MADE, { recursive: true, force: true });
});

/** Runs the work up to that call; answers what it said. */
function upTo(kind: Kind, folder: string, call: number, how: 'WHOLE' | 'HALF'): Promise<string> {
  rmSync(folder, { recursive: true, force: true });
  if (kind !== 'first start') cpSync(kind === 'update' ? old : kind === 'salvage' ? damaged : house, folder, { recursive: true });
  const child = spawn(process.execPath, [join(MADE, 'child.mjs'), folder, kind, String(call), how], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return new Promise((resolve, reject) => {
    let [out, err] = ['', ''];
    child.stdout.on('data', (part) => {
      out += String(part);
    });
    child.stderr.on('data', (part) => {
      err += String(part);
    });
    child.once('close', (code, signal) => (signal === 'SIGKILL' || code === 0 ? resolve(out) : reject(new Error(err))));
  });
}

/** What must stand in the file when it opens. */
function mustHold(kind: Kind, said: string): readonly string[] {
  if (kind === 'first start') return [];
  // Gone back or not, either house is whole.
  if (kind === 'update' || kind === 'going back') return ['Yarrow'];
  return [...ids, ...said.split('\n').filter((line) => /^[0-9a-f-]{36}$/.test(line))];
}

const later = () => before(machineClock(), -3);

interface Counts {
  rounds: number;
  lost: number;
  silent: number;
  lockedOut: number;
  recovered: number;
}

/** What is wrong with the next start, or null. */
function nextStart(kind: Kind, folder: string, must: readonly string[], counts: Counts): string | null {
  counts.rounds += 1;
  const program = openProgramOrRescue({ folder, now: later, newId: () => 'none', paper: null, version: '0' });
  const asks = program.isRescue();
  program.close();
  // A salvage that was broken off is asked for again.
  if (asks && kind === 'salvage') {
    counts.recovered += 1;
    return null;
  }
  if (asks) {
    counts.lockedOut += 1;
    return 'it asks for a rescue';
  }
  const rows = rowsOfFile(join(folder, FILE)).join('\n');
  const missing = must.filter((text) => !rows.includes(text)).length;
  counts.lost += missing;
  if (missing > 0) counts.silent += 1;
  else counts.recovered += 1;
  return missing > 0 ? `${missing} gone without a word` : null;
}

const canKill = onlyWhere(process.platform !== 'win32', 'Windows has no such signal');
it.runIf(canKill).each(KINDS)(
  '%s',
  async (kind) => {
    const counts: Counts = { rounds: 0, lost: 0, silent: 0, lockedOut: 0, recovered: 0 };
    const wrong: string[] = [];
    const folder = join(scratch.folder, 'aimed');
    const all = Number(/calls (\d+)/.exec(await upTo(kind, folder, -1, 'WHOLE'))?.[1]);
    expect(all, 'calls that a kill can be aimed at').toBeGreaterThan(5);
    expect(existsSync(join(folder, FILE))).toBe(true);
    const numbers = Array.from({ length: all }, (_, n) => n + 1);
    const tried = TRIED >= all ? numbers : Array.from({ length: TRIED }, () => chance.pick(numbers));
    for (const n of tried) {
      for (const how of TRIED >= all ? (['WHOLE', 'HALF'] as const) : [chance.pick(['WHOLE', 'HALF'] as const)]) {
        const said = await upTo(kind, folder, n, how);
        expect(said, 'it was killed').not.toContain('calls');
        const what = nextStart(kind, folder, mustHold(kind, said), counts);
        if (what !== null) wrong.push(`${n} ${how}: ${what}`);
      }
    }
    report({ what: `killed at each operation: ${kind}`, ...counts });
    expect(wrong).toEqual([]);
  },
  3_600_000,
);
