/**
 * Fifteen weights typed into a host that fails: killed while it writes, gone for a while, answers that never arrive. Each is
 * in the file once, under its puppy, in the order it was typed, and none was said to be written before it was. Needs the
 * built program. The window's own writer is driven; what a browser gives it is made of what Node has.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Result } from '../../core/contract/result.ts';
import { type Reading, readingFieldsSchema } from '../../core/litter/litter.ts';
import { before, call, dayBefore, machineClock, makeWorld, readingFields } from '../contract/world.ts';
import { type Entered, enter } from '../main/node/client.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { Chance, report, rounds } from './numbers.ts';

const HOST = fileURLToPath(new URL('../../out/host/host.mjs', import.meta.url));
const isBuilt = existsSync(HOST);
const ROUNDS = rounds(20, 2);
const TYPED = 15;
const chance = new Chance(15);

let scratch: { folder: string; remove(): void };
beforeAll(() => {
  scratch = scratchFolder();
});
afterAll(() => {
  vi.unstubAllGlobals();
  scratch.remove();
});

/** The host of one folder, which can be ended as if killed and started again. */
class House {
  readonly folder: string;
  #child: ChildProcess | null = null;
  #entered: Entered | null = null;
  #starting: Promise<void> = Promise.resolve();
  constructor(folder: string) {
    this.folder = folder;
  }

  async start(): Promise<void> {
    const child = spawn(process.execPath, [HOST, '--no-open', '--data', this.folder], { stdio: ['ignore', 'pipe', 'pipe'] });
    this.#child = child;
    let said = '';
    const address = await new Promise<string>((resolve, reject) => {
      const hear = (part: Buffer) => {
        said += part.toString();
        const found = /is open at (\S+)\n/.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      child.once('close', () => reject(new Error(`it ended: ${said}`)));
    });
    this.#entered = await enter(address);
  }

  /** Starts it in a while; whoever ends it meanwhile waits for that. */
  startIn(ms: number): void {
    this.#starting = later(ms).then(() => this.start());
  }

  async kill(): Promise<void> {
    await this.#starting;
    const child = this.#child;
    this.#child = null;
    this.#entered = null;
    if (child === null) return;
    const gone = new Promise((resolve) => child.once('close', resolve));
    child.kill('SIGKILL');
    await gone;
  }

  /** As the window's bridge asks; what does not answer is `unreachable`, and so is an answer that is lost on its way. */
  async ask(name: string, input: unknown, isLost: boolean): Promise<Result<unknown>> {
    const unreachable: Result<unknown> = { ok: false, error: { code: 'unreachable', message: 'the host does not answer' } };
    const to = this.#entered;
    if (to === null) return unreachable;
    try {
      const answer = await fetch(`${to.origin}/call/${name}`, {
        method: 'POST',
        headers: to.headers,
        body: JSON.stringify(input),
      });
      const result = (await answer.json()) as Result<unknown>;
      return isLost ? unreachable : result;
    } catch {
      return unreachable;
    }
  }
}

/** A tab: a store of its own, a bridge to the house, and the window's modules, fresh. */
async function openTab(house: House) {
  const kept = new Map<string, string>();
  for (const storage of ['localStorage', 'sessionStorage'])
    vi.stubGlobal(storage, {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
      removeItem: (key: string) => kept.delete(key),
    });
  vi.stubGlobal('window', {
    whelpside: {
      call: (name: string, input: unknown) => house.ask(name, input, name === 'growth.record' && chance.yes(0.2)),
      onChanged: () => () => undefined,
    },
  });
  vi.resetModules();
  const { writeWeight, flush } = await import('../../renderer/data/write-weights.ts');
  const { useUnwritten } = await import('../../renderer/state/unwritten.ts');
  return { writeWeight, flush, useUnwritten };
}

async function round(n: number): Promise<{ lost: number; twice: number; early: number }> {
  const house = new House(join(scratch.folder, `house-${n}`));
  const program = openOn(house.folder);
  const world = await makeWorld(program.dispatch);
  program.close();
  await house.start();
  const tab = await openTab(house);
  const puppies = world.puppies.map((p) => p.id);
  const typed = Array.from({ length: TYPED }, (_, i) => ({
    puppyId: puppies[i % puppies.length] ?? '',
    reading: readingFieldsSchema.parse(readingFields(before(machineClock(), 0, 1), 900 + i)),
  }));
  const failing = [chance.below(TYPED), chance.below(TYPED)];
  const said: Reading[] = [];
  for (const [i, { puppyId, reading }] of typed.entries()) {
    const item = {
      id: `typed-${i}`,
      litterId: world.litter.id,
      puppyId,
      day: dayBefore(machineClock(), 0),
      session: reading.session,
      reading,
      replaces: null,
      after: null,
      keep: false,
    };
    void tab.writeWeight(item).then((written) => said.push(written));
    if (!failing.includes(i)) continue;
    await later(chance.below(30));
    await house.kill();
    // She goes on typing while it is away.
    house.startIn(50 + chance.below(300));
  }
  const until = Date.now() + 60_000;
  while (tab.useUnwritten.getState().all.length > 0 && Date.now() < until) {
    await tab.flush();
    await later(50);
  }
  await later(300);
  await house.kill();
  const again = openOn(house.folder);
  const { readings } = await call(again.dispatch, 'growth.readings', { litterId: world.litter.id });
  const { done } = await call(again.dispatch, 'records.done', { limit: 100 });
  again.close();
  const own = readings.filter((r) => r.grams >= 900 && r.grams < 900 + TYPED && Number.isInteger(r.grams));
  const times = typed.map((t) => own.filter((r) => r.grams === t.reading.grams && r.puppyId === t.puppyId).length);
  const inOrder = done.filter((d) => d.operation === 'growth.record').map((d) => d.grams ?? 0);
  expect(inOrder.slice(0, TYPED).reverse(), 'in the order they were typed').toEqual(typed.map((t) => t.reading.grams));
  return {
    lost: times.filter((t) => t === 0).length,
    twice: times.filter((t) => t > 1).length,
    early: said.filter((r) => !own.some((o) => o.id === r.id)).length,
  };
}

describe.runIf(onlyWhere(isBuilt, 'the browser host is not built; "npm test" builds it first'))('the window', () => {
  it(`types ${TYPED} weights into a failing host, ${ROUNDS} times: none is lost, none is written twice`, async () => {
    const sum = { lost: 0, twice: 0, early: 0 };
    for (let n = 0; n < ROUNDS; n += 1) {
      const { lost, twice, early } = await round(n);
      sum.lost += lost;
      sum.twice += twice;
      sum.early += early;
      rmSync(join(scratch.folder, `house-${n}`), { recursive: true, force: true });
    }
    report({
      what: `${TYPED} weights typed into a failing host`,
      rounds: ROUNDS,
      lost: sum.lost,
      silent: sum.early,
      recovered: ROUNDS,
    });
    expect(sum).toEqual({ lost: 0, twice: 0, early: 0 });
  }, 3_600_000);
});
