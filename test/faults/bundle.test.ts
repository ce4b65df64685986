/**
 * The bundled host, as she runs it, killed at any moment of what it does at a start and at going back: after each kill
 * the next start opens with every answered weight, or names ways on. Needs the built program.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../../core/contract/result.ts';
import { openProgramOrRescue } from '../../main/service/program.ts';
import { MIGRATIONS } from '../../main/store/migrations.ts';
import { before, call, machineClock, makeWorld, readingFields } from '../contract/world.ts';
import { type Entered, enter } from '../main/node/client.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { rowsOfFile } from './dump.ts';
import { Chance, report, rounds } from './numbers.ts';

const HOST = fileURLToPath(new URL('../../out/host/host.mjs', import.meta.url));
const isBuilt = existsSync(HOST) && existsSync(fileURLToPath(new URL('../../out/renderer/index.html', import.meta.url)));
const FILE = 'whelpside.sqlite';
const chance = new Chance(28);

interface Running {
  readonly child: ChildProcess;
  /** The printed address; rejects when it ends before. */
  readonly address: Promise<string>;
  kill(): Promise<void>;
}

function start(folder: string): Running {
  const child = spawn(process.execPath, [HOST, '--no-open', '--data', folder], { stdio: ['ignore', 'pipe', 'pipe'] });
  const gone = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const address = new Promise<string>((resolve, reject) => {
    let said = '';
    const hear = (part: Buffer) => {
      said += part.toString();
      const found = /is open at (\S+)\n/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('close', () => reject(new Error(`it ended: ${said}`)));
  });
  address.catch(() => undefined);
  return {
    child,
    address,
    kill: async () => {
      child.kill('SIGKILL');
      await gone;
    },
  };
}

async function ask(to: Entered, name: string, input: unknown): Promise<Result<unknown>> {
  const answer = await fetch(`${to.origin}/call/${name}`, { method: 'POST', headers: to.headers, body: JSON.stringify(input) });
  return (await answer.json()) as Result<unknown>;
}

let scratch: { folder: string; remove(): void };
/** A house of weights with a copy that lacks the last ones, in today's shape and in the first. */
let house: string;
let old: string;
let ids: string[];
let puppyId: string;

beforeAll(async () => {
  scratch = scratchFolder();
  house = join(scratch.folder, 'house');
  const program = openOn(house);
  const world = await makeWorld(program.dispatch);
  await call(program.dispatch, 'records.backUp', {});
  ids = [];
  puppyId = world.puppies[0]?.id ?? '';
  for (let n = 0; n < 10; n += 1) {
    const reading = readingFields(before(machineClock(), 0, 30 - n), 900 + n);
    ids.push((await call(program.dispatch, 'growth.record', { puppyId, reading })).reading.id);
  }
  program.close();
  old = join(scratch.folder, 'old');
  makeOld(old);
}, 60_000);
afterAll(() => scratch.remove());

/** A file of the first shape, as a program of that time left it, with one litter. */
function makeOld(folder: string): void {
  cpSync(house, folder, { recursive: true, filter: (path) => !/whelpside\.|backups/.test(path) });
  const db = new Database(join(folder, FILE));
  db.pragma('journal_mode = WAL');
  db.pragma('application_id = 1464355920');
  db.exec(MIGRATIONS[0]?.sql ?? '');
  db.pragma('user_version = 1');
  db.exec("INSERT INTO litters VALUES ('l', '', 'Yarrow', '', '', NULL, NULL, NULL, '2026-03-01T02:00', 1, 0, 0)");
  db.close();
}

interface Counts {
  lost: number;
  silent: number;
  lockedOut: number;
  recovered: number;
}

/** The next start. `must` are texts that its rows have to hold when it opens without a word. */
function nextStart(folder: string, must: readonly string[], counts: Counts): string | null {
  try {
    const program = openProgramOrRescue({ folder, now: machineClock, newId: () => 'none', paper: null, version: '0' });
    const isRescue = program.isRescue();
    program.close();
    if (!isRescue) {
      const rows = rowsOfFile(join(folder, FILE)).join('\n');
      const missing = must.filter((text) => !rows.includes(text)).length;
      counts.lost += missing;
      if (missing > 0) counts.silent += 1;
      if (missing > 0) return `${missing} gone without a word`;
    }
    counts.recovered += 1;
    return null;
  } catch (error) {
    counts.lockedOut += 1;
    return `locked out: ${String(error)}`;
  }
}

const KINDS = ['first start', 'update', 'going back', 'a copy', 'a start', 'the end'] as const;

/** Kills the host while it does one of these; its start takes up to about so many ms. */
async function killed(kind: (typeof KINDS)[number], folder: string, startMs: number): Promise<readonly string[]> {
  rmSync(folder, { recursive: true, force: true });
  if (kind === 'first start') {
    await killWithin(start(folder), startMs);
    return [];
  }
  cpSync(kind === 'update' ? old : house, folder, { recursive: true });
  if (kind === 'update' || kind === 'a start') {
    await killWithin(start(folder), startMs);
    return kind === 'update' ? ['Yarrow'] : ids;
  }
  const host = start(folder);
  const to = await enter(await host.address);
  if (kind === 'the end') {
    host.child.kill('SIGTERM');
    await later(chance.below(60));
    await host.kill();
    return ids;
  }
  const backups = ((await ask(to, 'records.status', {})) as { value: { backups: { file: string; kind: string }[] } }).value
    .backups;
  const copy = backups.find((b) => b.kind === 'by-hand')?.file ?? '';
  const working = kind === 'a copy' ? ask(to, 'records.backUp', {}) : ask(to, 'records.restore', { folder: null, file: copy });
  working.catch(() => undefined);
  await later(chance.below(60));
  await host.kill();
  // Gone back or not: either house is whole.
  return kind === 'a copy' ? ids : ['Yarrow'];
}

async function killWithin(host: Running, ms: number): Promise<void> {
  await later(ms * (0.2 + 0.9 * chance.next()));
  await host.kill();
}

describe.runIf(onlyWhere(isBuilt, 'the browser host is not built; "npm test" builds it first'))('the bundled host', () => {
  const KILLS = rounds(600, 18);
  it(`killed ${KILLS} times at first start, update, going back, copying, starting and ending`, async () => {
    const counts: Counts = { lost: 0, silent: 0, lockedOut: 0, recovered: 0 };
    const wrong: string[] = [];
    const folder = join(scratch.folder, 'killed');
    const began = performance.now();
    const trial = start(folder);
    await trial.address;
    const startMs = performance.now() - began;
    await trial.kill();
    for (let n = 0; n < KILLS; n += 1) {
      const kind = KINDS[n % KINDS.length] ?? 'a start';
      const must = await killed(kind, folder, startMs);
      for (const what of [nextStart(folder, must, counts)]) if (what !== null) wrong.push(`${n} ${kind}: ${what}`);
    }
    report({ what: 'bundle killed at start, update, going back', rounds: KILLS, ...counts });
    expect(wrong).toEqual([]);
  }, 3_600_000);

  const WORK = rounds(60, 3);
  it(`killed ${WORK} times while it works: no answered weight is gone`, async () => {
    const counts: Counts = { lost: 0, silent: 0, lockedOut: 0, recovered: 0 };
    const wrong: string[] = [];
    const folder = join(scratch.folder, 'working');
    cpSync(house, folder, { recursive: true });
    const answered = [...ids];
    for (let n = 0; n < WORK; n += 1) {
      const host = start(folder);
      const to = await enter(await host.address);
      let going = true;
      let first = () => {};
      const begun = new Promise<void>((resolve) => {
        first = resolve;
      });
      const working = (async () => {
        for (let grams = 500; going; grams += 0.1) {
          const result = await ask(to, 'growth.record', {
            puppyId,
            reading: readingFields(before(machineClock(), 0, 1), Math.round(grams * 10) / 10),
          });
          if (!result.ok) throw new Error(result.error.message);
          answered.push((result.value as { reading: { id: string } }).reading.id);
          first();
        }
      })();
      const ended = working.catch((error: Error) => error);
      // From the first answer on: on a slow disk a fixed time may pass without any, and nothing would be tested.
      await Promise.race([begun, ended.then((error) => Promise.reject(error))]);
      await later(chance.below(300));
      await host.kill();
      going = false;
      await ended;
      const what = nextStart(folder, answered, counts);
      if (what !== null) wrong.push(`${n}: ${what}`);
    }
    expect(answered.length).toBeGreaterThanOrEqual(ids.length + WORK);
    report({ what: 'bundle killed while it works', rounds: WORK, ...counts });
    expect(wrong).toEqual([]);
  }, 3_600_000);

  it('its key stands in no list of processes', async () => {
    const folder = join(scratch.folder, 'listed');
    const host = start(folder);
    const key = (await host.address).split('#')[1] ?? '';
    expect(key).toHaveLength(43);
    const { execFileSync } = await import('node:child_process');
    const list = process.platform === 'win32' ? '' : execFileSync('ps', ['-eo', 'args'], { encoding: 'utf8' });
    expect(list).not.toContain(key);
    await host.kill();
    report({ what: 'looks at the list of processes', rounds: 1, letIn: 0 });
  });
});
