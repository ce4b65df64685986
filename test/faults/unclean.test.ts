/**
 * Damage after an unclean stop: the program ended without closing, so that file and log both count, and then the disk or
 * a person did something to them. Every weight that was answered is there at the next start, or the start says so and
 * names ways on; nothing is an empty house, and no way leads nowhere.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openProgramOrRescue, type Program } from '../../main/service/program.ts';
import { listBackups } from '../../main/store/backup.ts';
import { before, call, type Dispatch, machineClock, makeWorld, readingFields } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { rowsOfFile } from './dump.ts';
import { Chance, report, rounds } from './numbers.ts';

const DAMAGES = rounds(810, 54);
const FILE = 'whelpside.sqlite';
const chance = new Chance(14);

let scratch: { folder: string; remove(): void };
/** What a kill left: forty weights answered after the last folding, none of them in a backup. */
let killed: string;
let answered: string[];
/** The folder as it was a day before, closed in order. */
let yesterday: string;
let strangeLog: Buffer;

const options = (folder: string) => ({ folder, now: machineClock, newId: () => crypto.randomUUID(), paper: null, version: '0' });

/** As a kill leaves it: the files copied while the program still has them open. */
function killCopy(from: string, to: string): void {
  cpSync(from, to, { recursive: true });
  rmSync(join(to, `${FILE}-shm`), { force: true });
}

async function weigh(dispatch: Dispatch, puppyId: string, count: number): Promise<string[]> {
  const ids: string[] = [];
  for (let n = 0; n < count; n += 1) {
    const reading = readingFields(before(machineClock(), 0, 100 - n), 900 + n);
    ids.push((await call(dispatch, 'growth.record', { puppyId, reading })).reading.id);
  }
  return ids;
}

beforeAll(async () => {
  scratch = scratchFolder();
  const live = join(scratch.folder, 'live');
  let program = openOn(live);
  const world = await makeWorld(program.dispatch);
  const puppyId = world.puppies[0]?.id ?? '';
  await call(program.dispatch, 'records.addDemo', { now: machineClock().local, utcOffsetMinutes: 0 });
  const early = await weigh(program.dispatch, puppyId, 20);
  program.close();
  yesterday = join(scratch.folder, 'yesterday');
  cpSync(live, yesterday, { recursive: true });
  program = openOn(live);
  answered = [...early, ...(await weigh(program.dispatch, puppyId, 40))];
  killed = join(scratch.folder, 'killed');
  killCopy(live, killed);
  program.close();
  const other = join(scratch.folder, 'other');
  const stranger = openOn(other);
  await makeWorld(stranger.dispatch);
  strangeLog = readFileSync(join(other, `${FILE}-wal`));
  stranger.close();
}, 60_000);
afterAll(() => scratch.remove());

const edit = (path: string, work: (bytes: Buffer) => Buffer): void => writeFileSync(path, work(readFileSync(path)));
const flip = (bytes: Buffer, at: number): Buffer => {
  bytes.writeUInt8((bytes[at] ?? 0) ^ (1 << chance.below(8)), at);
  return bytes;
};

const HARMS: readonly (readonly [kind: string, harm: (folder: string, file: string, log: string) => void])[] = [
  ['one bit of the log', (_folder, _file, log) => edit(log, (b) => flip(b, chance.below(b.length)))],
  ['one bit near the end of the log', (_folder, _file, log) => edit(log, (b) => flip(b, b.length - 1 - chance.below(4096)))],
  ["one bit of the log's header", (_folder, _file, log) => edit(log, (b) => flip(b, chance.below(32)))],
  ['a sector of the log', (_folder, _file, log) => edit(log, (b) => b.fill(0, 512 * chance.below(b.length / 512), undefined))],
  ['the log cut short', (_folder, _file, log) => edit(log, (b) => b.subarray(0, chance.below(b.length)))],
  ['the log emptied', (_folder, _file, log) => writeFileSync(log, '')],
  ['the log gone', (_folder, _file, log) => rmSync(log)],
  ["another house's log", (_folder, _file, log) => writeFileSync(log, strangeLog)],
  ['one bit of the file', (_folder, file) => edit(file, (b) => flip(b, chance.below(b.length)))],
  ['a page of the file', (_folder, file) => edit(file, (b) => b.fill(0, 4096 * chance.below(b.length / 4096), undefined))],
  ['the file cut short', (_folder, file) => edit(file, (b) => b.subarray(0, chance.below(b.length)))],
  ['the file gone', (_folder, file) => rmSync(file)],
  [
    'file and log gone',
    (_folder, file, log) => {
      rmSync(file);
      rmSync(log);
    },
  ],
  ["yesterday's file in its place, the log beside", (_folder, file) => writeFileSync(file, readFileSync(join(yesterday, FILE)))],
  [
    "yesterday's file in its place, without a log",
    (_folder, file, log) => {
      writeFileSync(file, readFileSync(join(yesterday, FILE)));
      rmSync(log);
    },
  ],
  [
    "yesterday's whole folder over today's",
    (folder, _file, log) => {
      for (const name of readdirSync(yesterday).filter((n) => n.startsWith(`${FILE}`)))
        cpSync(join(yesterday, name), join(folder, name));
      rmSync(log);
    },
  ],
  [
    'a link that leads to nothing',
    (folder, file, log) => {
      rmSync(file);
      rmSync(log);
      symlinkSync(join(folder, 'stick', FILE), file);
    },
  ],
  [
    'only the backups left',
    (folder) => {
      for (const name of readdirSync(folder).filter((n) => n !== 'backups')) rmSync(join(folder, name));
    },
  ],
];

function missingIn(folder: string): number {
  const rows = rowsOfFile(join(folder, FILE)).filter((row) => row.startsWith('readings'));
  const text = rows.join('\n');
  return answered.filter((id) => !text.includes(id)).length;
}

const WAYS = ['records.restore', 'records.salvage', 'records.beginAnew'] as const;

/** One of the ways that the rescue names leads to a program that works, now and at the next start. */
async function leadsOn(program: Program, folder: string, way: (typeof WAYS)[number]): Promise<boolean> {
  const newest = listBackups(folder)[0];
  const input = way === 'records.restore' ? { folder: null, file: newest?.file ?? '' } : {};
  const answer = await program.dispatch(way, input);
  const after = answer.ok ? await program.dispatch('litter.all', {}) : answer;
  program.close();
  if (after.ok) openOn(folder).close();
  return after.ok;
}

it(`${DAMAGES} damages after unclean stops: nothing lost without a word, nobody locked out`, async () => {
  const counts = { lost: 0, silent: 0, lockedOut: 0, refused: 0, recovered: 0 };
  const wrong: string[] = [];
  for (let n = 0; n < DAMAGES; n += 1) {
    const [kind, harm] = HARMS[n % HARMS.length] ?? ['', () => undefined];
    const folder = join(scratch.folder, 'harmed');
    rmSync(folder, { recursive: true, force: true });
    cpSync(killed, folder, { recursive: true });
    harm(folder, join(folder, FILE), join(folder, `${FILE}-wal`));
    let program: Program;
    try {
      program = openProgramOrRescue(options(folder));
    } catch (error) {
      counts.lockedOut += 1;
      wrong.push(`${n} ${kind}: locked out: ${String(error)}`);
      continue;
    }
    if (program.isRescue()) {
      counts.refused += 1;
      // Each kind of damage meets each way in turn.
      if (await leadsOn(program, folder, WAYS[Math.floor(n / HARMS.length) % WAYS.length] ?? 'records.restore'))
        counts.recovered += 1;
      else {
        counts.lockedOut += 1;
        wrong.push(`${n} ${kind}: the way leads nowhere`);
      }
      continue;
    }
    program.close();
    const missing = missingIn(folder);
    if (missing > 0) {
      counts.silent += 1;
      counts.lost += missing;
      wrong.push(`${n} ${kind}: ${missing} weights gone without a word`);
    } else counts.recovered += 1;
  }
  report({ what: 'damaged after an unclean stop', rounds: DAMAGES, ...counts });
  expect(wrong).toEqual([]);
}, 900_000);

describe('after an unclean stop with no damage', () => {
  it('everything is there, and nothing is asked', () => {
    const folder = join(scratch.folder, 'whole');
    cpSync(killed, folder, { recursive: true });
    const program = openProgramOrRescue(options(folder));
    expect(program.isRescue()).toBe(false);
    program.close();
    expect(missingIn(folder)).toBe(0);
  });

  it('a salvage of a log with one bad bit brings what SQLite would forget', async () => {
    const folder = join(scratch.folder, 'one bit');
    cpSync(killed, folder, { recursive: true });
    const log = join(folder, `${FILE}-wal`);
    edit(log, (bytes) => flip(bytes, Math.floor(bytes.length / 10)));
    const program = openProgramOrRescue(options(folder));
    expect(program.isRescue()).toBe(true);
    await call(program.dispatch, 'records.salvage', {});
    program.close();
    expect(missingIn(folder)).toBe(0);
  });

  it('an empty folder is an empty house', () => {
    const folder = join(scratch.folder, 'empty');
    mkdirSync(folder);
    openOn(folder).close();
    expect(existsSync(join(folder, FILE))).toBe(true);
  });
});
