/** What a query depends on is what it reads: a table that it reads and whose tag it lacks would leave the window stale. */
import type Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { OPERATIONS, type OperationName } from '../../../core/contract/operations.ts';
import type { Tag } from '../../../core/contract/result.ts';
import { dispatcher } from '../../../main/service/dispatch.ts';
import { allHandlers } from '../../../main/service/program.ts';
import { openStore, type Store } from '../../../main/store/open.ts';
import { isTable, NOT_FACTS, tableOf } from '../../../main/store/tables.ts';
import { type Filed, goodInput } from '../../contract/suite.ts';
import { machineClock, makeWorld } from '../../contract/world.ts';
import { scratchFolder } from '../open.ts';

const QUERIES = (Object.keys(OPERATIONS) as OperationName[]).filter((name) => OPERATIONS[name].kind === 'query');
/** They work on other files, or on one that is named. */
const OF_FILES = ['records.backupsIn', 'records.exportFile', 'records.rescue', 'records.faults', 'records.paperFile'];

let store: Store;
let remove: () => void;
let world: Filed;
let read: Set<string>;

/** The database, with each table that a statement names noted. */
function probed(db: Database.Database): Database.Database {
  return new Proxy(db, {
    get: (target, name) => {
      const value: unknown = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      if (name !== 'prepare') return value.bind(target);
      return (sql: string) => {
        for (const [, table = ''] of sql.matchAll(/\b(?:FROM|JOIN)\s+(\w+)/gi)) read.add(table);
        return target.prepare(sql);
      };
    },
  });
}

beforeAll(async () => {
  const scratch = scratchFolder();
  remove = scratch.remove;
  store = openStore({ folder: scratch.folder, now: machineClock });
  read = new Set();
  const ports = { paper: null, chooseFolder: null, reopening: <T>(work: () => T) => work() };
  const handlers = allHandlers({
    store: { ...store, db: probed(store.db) },
    now: machineClock,
    newId: () => crypto.randomUUID(),
    version: '1',
    ...ports,
  });
  const hooks = {
    beforeCommand: () => undefined,
    afterwards: () => undefined,
    onChanged: () => undefined,
    onFault: console.error,
  };
  world = { ...(await makeWorld(dispatcher(handlers, hooks))), backup: '', otherFolder: scratch.folder };
});
afterAll(() => {
  store.close();
  remove();
});

function tagOf(table: string): Tag | null {
  return isTable(table) ? tableOf(table).tag : (NOT_FACTS[table] ?? null);
}

it.each(QUERIES)('%s carries the tag of every table that it reads', async (name) => {
  read.clear();
  const result = await world.dispatch(name, goodInput(name, world));
  const query = OPERATIONS[name];
  const tags: readonly Tag[] = query.kind === 'query' ? query.tags : [];
  if (OF_FILES.includes(name)) return expect([...read]).toEqual([]);
  expect(result).toMatchObject({ ok: true });
  expect(read.size).toBeGreaterThan(0);
  const lacking = [...read].filter((table) => !tags.includes(tagOf(table) as Tag));
  expect(lacking, 'tables whose changes it would not show').toEqual([]);
});
