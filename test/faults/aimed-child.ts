/**
 * A program that ends as if killed, just before one of its own operations on files: its so-manieth call of the file system
 * or of SQLite since the work began. Run as `node aimed-child.ts FOLDER KIND NUMBER WHOLE|HALF`; with `HALF` what that call
 * would write is written half. Prints the ids of the weights that were answered, and at the end how many calls there were.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { argv, kill, pid } from 'node:process';
import Database from 'better-sqlite3';
import type { OperationName } from '../../core/contract/operations.ts';
import { before, call, dayBefore, machineClock, readingFields } from '../contract/world.ts';

const AIMED_KINDS = ['first start', 'update', 'going back', 'salvage', 'a copy', 'afternoon', 'midnight', 'the end'] as const;
type Kind = (typeof AIMED_KINDS)[number];

const [folder = '', kind = '', number = '', half = ''] = argv.slice(2);
const isKind = (text: string): text is Kind => AIMED_KINDS.some((known) => known === text);
const say = fs.writeSync.bind(fs, 1) as (text: string) => number;
let calls = 0;
let aims = false;

function count(writeHalf: (() => void) | null): void {
  if (!aims) return;
  calls += 1;
  if (calls !== Number(number)) return;
  if (half === 'HALF') writeHalf?.();
  kill(pid, 'SIGKILL');
}

const CALLS = ['openSync', 'writeSync', 'fsyncSync', 'closeSync', 'renameSync', 'rmSync', 'mkdirSync', 'chmodSync', 'utimesSync'];

function takeAim(): void {
  const patched = fs as unknown as Record<string, (...args: unknown[]) => unknown>;
  const wrap = (name: string, halfOf: (plain: (...args: unknown[]) => unknown, args: unknown[]) => void) => {
    const plain = patched[name];
    if (plain === undefined) throw new Error(`no ${name}`);
    patched[name] = (...args) => {
      count(() => halfOf(plain, args));
      return plain(...args);
    };
  };
  for (const name of CALLS) wrap(name, () => undefined);
  wrap('writeFileSync', (plain, [file, content, ...rest]) => {
    const bytes = Buffer.from(content as string | Buffer);
    plain(file, bytes.subarray(0, bytes.length >> 1), ...rest);
  });
  wrap('copyFileSync', (plain, [from, to]) => {
    plain(from, to);
    fs.truncateSync(to as string, fs.statSync(to as string).size >> 1);
  });
  syncBuiltinESMExports();
  const database = Database.prototype as unknown as Record<string, (...args: unknown[]) => unknown>;
  for (const name of ['exec', 'pragma', 'prepare', 'close']) {
    const plain = database[name];
    if (plain === undefined) throw new Error(`no ${name}`);
    database[name] = function (this: unknown, ...args) {
      count(null);
      return plain.apply(this, args);
    };
  }
}

/** Tomorrow by the machine, so that nothing of the house lies in the future. */
let clock = before(machineClock(), -1);
function setClock(days: number, time: string): void {
  const local = `${dayBefore(machineClock(), -days)}T${time}`;
  const { instant } = machineClock();
  const minutes = (Date.parse(`${local}Z`) - Date.parse(`${machineClock().local}Z`)) / 60_000;
  clock = before({ instant, local: machineClock().local }, 0, -minutes);
}

async function work(what: Kind): Promise<void> {
  const { openProgramOrRescue } = await import('../../main/service/program.ts');
  const open = () =>
    openProgramOrRescue({ folder, now: () => clock, newId: () => crypto.randomUUID(), paper: null, version: '0' });
  if (what === 'first start' || what === 'update') {
    aims = true;
    open();
    return;
  }
  if (what === 'afternoon' || what === 'midnight') setClock(1, what === 'afternoon' ? '13:50' : '23:50');
  const program = open();
  const { backups } = await call(program.dispatch, what === 'salvage' ? 'records.backupsIn' : 'records.status', {
    ...(what === 'salvage' ? { folder: `${folder}/backups` } : {}),
  } as never);
  const file = backups.find((b) => b.kind === 'by-hand')?.file ?? '';
  const done = (name: OperationName, input: unknown) => call(program.dispatch, name, input as never);
  const weigh = async (grams: number) => {
    const { litters } = await call(program.dispatch, 'litter.all', {});
    const puppyId = litters.flatMap((l) => l.puppies)[0]?.id ?? '';
    const { reading } = await call(program.dispatch, 'growth.record', { puppyId, reading: readingFields(clock, grams) });
    say(`${reading.id}\n`);
  };
  if (what === 'afternoon' || what === 'midnight') await weigh(1200);
  aims = true;
  if (what === 'going back') await done('records.restore', { folder: null, file });
  else if (what === 'salvage') await done('records.salvage', {});
  else if (what === 'a copy') await done('records.backUp', {});
  else if (what === 'the end') program.close();
  else {
    setClock(what === 'afternoon' ? 1 : 2, what === 'afternoon' ? '14:01' : '00:05');
    await weigh(1201);
    await weigh(1202);
    program.close();
  }
}

takeAim();
if (!isKind(kind)) throw new Error(`no such kind: ${kind}`);
await work(kind);
aims = false;
say(`calls ${calls}\n`);
process.exit(0);
