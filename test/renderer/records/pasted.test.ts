/**
 * Ten thousand weights pasted: the work grows with their number and no faster, and one undo takes them back. Work is counted,
 * not timed: cells that are read, readings that are looked at, rows that SQLite is asked for. `npm run -s bench:pasted` times it.
 */
import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { assessLitter } from '../../../core/growth/assess.ts';
import type { Table } from '../../../core/records/table.ts';
import { openProgram, type Program } from '../../../main/service/program.ts';
import { call, machineClock } from '../../contract/world.ts';
import { make } from '../../core/growth/make.ts';
import { scratchFolder } from '../../main/open.ts';
import { pastedLog, previewed, takenBack, written } from '../../pasted.ts';

const COUNTS = [2_500, 5_000, 10_000];

let scratch: { folder: string; remove(): void };
let program: Program;
let asked = 0;
beforeAll(() => {
  const statement = Object.getPrototypeOf(new Database(':memory:').prepare('SELECT 1')) as Record<
    string,
    (...args: unknown[]) => unknown
  >;
  for (const name of ['run', 'get', 'all']) {
    const plain = statement[name];
    statement[name] = function (this: unknown, ...args) {
      const answer: unknown = plain?.apply(this, args);
      asked += 1 + (Array.isArray(answer) ? answer.length : 0);
      return answer;
    };
  }
  scratch = scratchFolder();
  program = openProgram({ folder: scratch.folder, now: machineClock, newId: randomUUID, paper: null, version: '0' });
});
afterAll(() => {
  program.close();
  scratch.remove();
});

/** How much more was done for twice as many, each time. */
function growth(work: readonly number[]): number[] {
  return work.slice(1).map((w, i) => w / (work[i] ?? Number.NaN));
}

it('are read and looked through cell by cell, a few times each', () => {
  let cells = 0;
  const counting = (table: Table): Table => ({
    ...table,
    rows: table.rows.map(
      (row) =>
        new Proxy(row, {
          get: (target, key, receiver) => {
            cells += 1;
            return Reflect.get(target, key, receiver) as unknown;
          },
        }),
    ),
  });
  const work = COUNTS.map((count) => {
    cells = 0;
    expect(previewed(pastedLog(count), counting).input.readings).toHaveLength(count);
    return cells;
  });
  expect(work[0]).toBeGreaterThan(COUNTS[0] ?? 0);
  for (const more of growth(work)) expect(more).toBeLessThan(2.2);
});

it('are assessed with a bounded number of looks at each', () => {
  const { puppies, ...litter } = make([{ name: 'Solo', birth: 400 }], { days: 56 });
  const work = COUNTS.map((count) => {
    let looks = 0;
    const readings = previewed(pastedLog(count)).input.readings.map(({ reading }, i) => ({
      instant: reading.instant,
      at: localTime(reading.at),
      session: reading.session,
      held: false,
      id: `r-${String(i).padStart(6, '0')}`,
      puppyId: puppies[0]?.id ?? '',
      kept: false,
      get grams() {
        looks += 1;
        return reading.grams;
      },
    }));
    assessLitter({ ...litter, puppies, readings });
    return looks;
  });
  for (const more of growth(work)) expect(more).toBeLessThan(2.2);
});

it('are written, and taken back by one undo, with as many statements and rows as there are weights', async () => {
  const work: number[] = [];
  for (const count of COUNTS) {
    const { input } = previewed(pastedLog(count));
    asked = 0;
    expect(await written(program.dispatch, input)).toBe(count);
    await takenBack(program.dispatch);
    work.push(asked);
  }
  expect(work[0]).toBeGreaterThan(COUNTS[0] ?? 0);
  for (const more of growth(work)) expect(more).toBeLessThan(2.2);
  expect((await call(program.dispatch, 'litter.all', {})).litters, 'all of it is taken back').toEqual([]);
  expect((await call(program.dispatch, 'records.status', {})).canRedo).toMatchObject({ operation: 'records.import' });
}, 120_000);
