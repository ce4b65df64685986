/**
 * File, log or folder taken away or exchanged while the program runs: it is noticed at the next write, the open
 * connection writes itself a copy, and nothing is answered that is not there.
 */
import { copyFileSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Program } from '../../main/service/program.ts';
import { before, call, machineClock, makeWorld, readingFields, type World } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { rowsOfFile } from './dump.ts';
import { report } from './numbers.ts';

let scratch: { folder: string; remove(): void };
let data: string;
let program: Program;
let world: World;
const faults: string[] = [];
beforeEach(async () => {
  scratch = scratchFolder();
  data = join(scratch.folder, 'data');
  faults.length = 0;
  program = openOn(data, { onFault: (_operation, error) => faults.push(String(error)) });
  world = await makeWorld(program.dispatch);
});
afterEach(() => {
  program.close();
  scratch.remove();
});

let grams = 900;
async function weigh(): Promise<string> {
  grams += 1;
  const reading = readingFields(before(machineClock(), 0, 1), grams);
  return (await call(program.dispatch, 'growth.record', { puppyId: world.puppies[0]?.id ?? '', reading })).reading.id;
}
const there = (id: string) => rowsOfFile(join(data, 'whelpside.sqlite')).some((row) => row.includes(id));

const HARMS: readonly (readonly [string, () => void])[] = [
  ['the file', () => rmSync(join(data, 'whelpside.sqlite'))],
  ['the log', () => rmSync(join(data, 'whelpside.sqlite-wal'))],
  ['the folder', () => rmSync(data, { recursive: true })],
  ['the folder, which was given another name', () => renameSync(data, `${data} elsewhere`)],
  [
    'the file, with another in its place',
    () => {
      copyFileSync(join(data, 'whelpside.sqlite'), join(data, 'copy'));
      renameSync(join(data, 'copy'), join(data, 'whelpside.sqlite'));
    },
  ],
];

// Windows does not let a file go that somebody has open.
const canTake = onlyWhere(process.platform !== 'win32', 'on Windows an open file can not be taken away');
it.runIf(canTake).each(HARMS)('%s is gone: put back with every weight, and said', async (_what, harm) => {
  const first = await weigh();
  harm();
  const second = await weigh();
  expect(there(first) && there(second), 'both stand on the disk when the second is answered').toBe(true);
  const third = await weigh();
  expect(there(third)).toBe(true);
  expect(faults).toEqual(['Error: it was taken away while the program ran, and was put back']);
  expect((await call(program.dispatch, 'records.faults', {})).lines[0]).toMatch(
    /^\d{4}-\d\d-\d\d \d\d:\d\d .* data file: Error: it was taken away/,
  );
  program.close();
  program = openOn(data);
  for (const id of [first, second, third]) expect(there(id)).toBe(true);
  report({ what: 'taken away while it runs', rounds: 1, lost: 0, silent: 0, lockedOut: 0, recovered: 1 });
});

it.runIf(canTake)('gone between the last weight and the end: put back at the end', async () => {
  const id = await weigh();
  rmSync(join(data, 'whelpside.sqlite'));
  program.close();
  expect(there(id)).toBe(true);
  program = openOn(data);
});

it.runIf(canTake)('that can not be put back is no weight that was answered', async () => {
  await weigh();
  renameSync(data, `${data} elsewhere`);
  writeFileSync(data, 'in the way');
  const reading = readingFields(before(machineClock(), 0, 1), 1234);
  const answer = await program.dispatch('growth.record', { puppyId: world.puppies[0]?.id ?? '', reading });
  expect(answer.ok).toBe(false);
  rmSync(data);
  const id = await weigh();
  expect(there(id)).toBe(true);
  mkdirSync(join(data, 'backups'), { recursive: true });
  expect(readdirSync(data)).toContain('whelpside.sqlite');
  expect(readFileSync(join(data, 'faults.txt'), 'utf8')).not.toContain(scratch.folder);
});
