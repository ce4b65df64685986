/**
 * Every operation, with inputs made from its own schema and with hostile ones: the program never throws, never answers
 * that it made a mistake, never answers by another shape, and a refused input changes no row.
 */
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { OPERATIONS, type OperationName } from '../../core/contract/operations.ts';
import { ERROR_CODES, type Result } from '../../core/contract/result.ts';
import { PaperSlots } from '../../main/hosting/slots.ts';
import { createServer } from '../../main/node/server.ts';
import type { Program } from '../../main/service/program.ts';
import { type Filed, goodInput } from '../contract/suite.ts';
import { call, type Dispatch, makeWorld } from '../contract/world.ts';
import { enter } from '../main/node/client.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { HOSTILE_TEXTS, Inputs, type Pool, textsIn } from './inputs.ts';
import { Chance, report, rounds } from './numbers.ts';

const INPUTS = rounds(100_000, 4_000);
/** A house takes so many inputs, then a new one is begun. */
const INPUTS_A_HOUSE = 1_000;
const NAMES = Object.keys(OPERATIONS) as OperationName[];
/** They write files and read whole houses: each is asked less often. */
const HEAVY = new Set<string>([
  'records.backUp',
  'records.backUpTo',
  'records.restore',
  'records.export',
  'records.addDemo',
  'records.removeDemo',
  'records.savePaper',
]);

const chance = new Chance(100_000);

class House {
  readonly folder: string;
  readonly remove: () => void;
  readonly stick: string;
  readonly program: Program;
  readonly faults: string[] = [];
  world: Filed | null = null;
  #watch: Database.Database | null = null;

  constructor() {
    const scratch = scratchFolder();
    this.folder = join(scratch.folder, 'data');
    this.remove = scratch.remove;
    this.stick = join(scratch.folder, 'stick');
    mkdirSync(this.stick);
    this.program = openOn(this.folder, { onFault: (name, error) => this.faults.push(`${name}: ${String(error)}`) });
  }

  /** A number that changes with every change of the file by the program. */
  version(): number {
    this.#watch ??= new Database(join(this.folder, 'whelpside.sqlite'), { readonly: true });
    return Number(this.#watch.pragma('data_version', { simple: true }));
  }

  /** The file may be another one now. */
  lookAgain(): void {
    this.#watch?.close();
    this.#watch = null;
  }

  close(): void {
    this.lookAgain();
    this.program.close();
    this.remove();
  }

  pool(): Pool {
    const { world } = this;
    const backups = join(this.folder, 'backups');
    return {
      litterId: [world?.litter.id, world?.emptyLitter.id],
      puppyId: [...(world?.puppies ?? []), world?.unweighed].map((p) => p?.id),
      readingId: [world?.reading.id, world?.held.id],
      planId: [world?.planId],
      foodId: [world?.foodId],
      folder: [this.stick, join(this.stick, 'none'), 'stick', '..', '\0', `${this.stick}/../stick`, null],
      file: [...readdirSync(backups), '../whelpside.sqlite', 'whelpside-2020-01-01-daily.sqlite', 'Vetch.pdf'],
      instant: [world?.clock.instant, world?.reading.instant],
      at: [world?.clock.local, world?.reading.at],
      on: [world?.clock.local.slice(0, 10), '2020-01-01'],
      from: [world?.clock.local.slice(0, 10)],
    };
  }
}

async function openHouse(): Promise<House> {
  const house = new House();
  const world = await makeWorld(house.program.dispatch);
  const { backup } = await call(house.program.dispatch, 'records.backUp', {});
  house.world = { ...world, backup: backup.file, otherFolder: house.stick };
  return house;
}

/** What the contract's own suite sends. */
function goodFor(house: House, name: OperationName): unknown {
  return house.world === null ? undefined : goodInput(name, house.world);
}

function shown(input: unknown): string {
  try {
    return JSON.stringify(input)?.slice(0, 600) ?? String(input);
  } catch {
    return 'something that is no JSON';
  }
}

/** Asks once. Answers whether it was taken; fails when a rule of the contract is broken. */
async function ask(house: House, name: OperationName, input: unknown): Promise<boolean> {
  const before = house.version();
  let result: Result<unknown>;
  try {
    result = await house.program.dispatch(name, input);
  } catch (error) {
    throw new Error(`${name} threw at ${shown(input)}`, { cause: error });
  }
  if (result.ok) {
    // What was taken fits the output's schema; the dispatch has held it against it.
    if (name === 'records.restore') house.lookAgain();
    return true;
  }
  const said = `${name} at ${shown(input)}: ${JSON.stringify(result.error)} ${house.faults.join('; ')}`;
  expect(ERROR_CODES, said).toContain(result.error.code);
  expect(result.error.code, said).not.toBe('internal');
  expect(result.error.message, said).not.toMatch(/SQLITE|at .*\.ts:\d/);
  expect(house.version(), `${said} changed a row`).toBe(before);
  return false;
}

it(`takes or refuses ${INPUTS} inputs over every operation, and a refused one changes nothing`, async () => {
  const taken = new Map<string, number>();
  let refused = 0;
  let house = await openHouse();
  let inputs = new Inputs(chance, () => house.pool());
  for (let n = 0; n < INPUTS; n += 1) {
    if (n > 0 && n % INPUTS_A_HOUSE === 0) {
      house.close();
      house = await openHouse();
      inputs = new Inputs(chance, () => house.pool());
    }
    const name = NAMES[n % NAMES.length] ?? 'litter.all';
    if (HEAVY.has(name) && n % (NAMES.length * 8) >= NAMES.length) continue;
    if (await ask(house, name, inputs.of(OPERATIONS[name].input, goodFor(house, name))))
      taken.set(name, (taken.get(name) ?? 0) + 1);
    else refused += 1;
  }
  expect(house.faults).toEqual([]);
  house.close();
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  // A test that only ever sent rubbish would prove little.
  expect(taken.size).toBeGreaterThan(NAMES.length * 0.8);
  report({ what: 'inputs of every shape', rounds: INPUTS, lost: 0, silent: 0, refused });
}, 3_600_000);

it('over the loopback host the same inputs never break it', async () => {
  const house = await openHouse();
  const inputs = new Inputs(chance, () => house.pool());
  const server = await createServer({
    dispatch: house.program.dispatch,
    files: { page: '<!doctype html><html><head></head><body></body></html>', others: new Map() },
    slots: new PaperSlots(() => performance.now()),
    port: 0,
  });
  const { headers } = await enter(server.address);
  const count = rounds(4_000, 400);
  const statuses = new Map<number, number>();
  for (let n = 0; n < count; n += 1) {
    const name = NAMES[n % NAMES.length] ?? 'litter.all';
    if (HEAVY.has(name) && n % (NAMES.length * 8) >= NAMES.length) continue;
    const body = bodyOf(inputs.of(OPERATIONS[name].input));
    const answer = await fetch(`${server.origin}/call/${name}`, { method: 'POST', headers, body });
    const result = (await answer.json()) as Result<unknown>;
    expect(answer.status, name).toBeLessThan(500);
    if (!result.ok) expect(result.error.code, `${name} at ${body.slice(0, 300)}`).not.toBe('internal');
    statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
  }
  expect(statuses.get(200)).toBeGreaterThan(count / 2);
  await server.close();
  house.close();
}, 900_000);

function bodyOf(input: unknown): string {
  try {
    return JSON.stringify(input) ?? 'undefined';
  } catch {
    return '{';
  }
}

it('a text is kept as it was written, or refused: never changed without a word', async () => {
  const house = await openHouse();
  const { dispatch } = house.program;
  for (const text of HOSTILE_TEXTS) await keepsText(dispatch, house.world?.litter.id ?? '', text);
  house.close();
});

async function keepsText(dispatch: Dispatch, litterId: string, text: string): Promise<void> {
  const find = async () => (await call(dispatch, 'litter.all', {})).litters.find((l) => l.litter.id === litterId)?.litter;
  const litter = await find();
  if (litter === undefined) throw new Error('no litter');
  const { id: _id, demo: _demo, ...fields } = litter;
  const changed = await dispatch('litter.change', { litterId, change: { ...fields, name: text } });
  expect((await find())?.name, shown(text)).toBe(changed.ok ? text : litter.name);
  const { house } = await call(dispatch, 'people.house', {});
  const set = await dispatch('people.setHouse', { change: { ...house, address: text } });
  expect((await call(dispatch, 'people.house', {})).house.address, shown(text)).toBe(set.ok ? text : house.address);
}

/** Texts that are not kept as they are: names and whole files that are only looked at. */
const LOOKED_AT = new Set(['file', 'key', 'puppy', 'text']);

it('half a character, and the character of no length, are let into no field that is kept', () => {
  const letIn: string[] = [];
  for (const name of NAMES) {
    for (const [path, schema] of textsIn(OPERATIONS[name].input, name)) {
      if (LOOKED_AT.has(path.split('.').at(-1) ?? '')) continue;
      if (schema.safeParse('\ud83d').success || schema.safeParse('a\u0000').success) letIn.push(path);
    }
  }
  expect(letIn).toEqual([]);
});
