import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ContractFailure, type Tag } from '../../../core/contract/result.ts';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { type Dispatch, dispatcher } from '../../../main/service/dispatch.ts';
import type { Handlers } from '../../../main/service/handlers.ts';
import { allHandlers } from '../../../main/service/program.ts';
import { openStore, type Store } from '../../../main/store/open.ts';
import { machineClock } from '../../contract/world.ts';
import { scratchFolder } from '../open.ts';

let store: Store;
let remove: () => void;
let handlers: Handlers;
let changes: Tag[][];
let faults: string[];

beforeEach(() => {
  const scratch = scratchFolder();
  remove = scratch.remove;
  store = openStore({ folder: scratch.folder, now: machineClock });
  const ports = { paper: null, chooseFolder: null, reopening: <T>(work: () => T) => work() };
  handlers = allHandlers({ store, now: machineClock, newId: () => crypto.randomUUID(), version: '1', ...ports });
  changes = [];
  faults = [];
});
afterEach(() => {
  store.close();
  remove();
});

const make = (more: Partial<Handlers> = {}): Dispatch =>
  dispatcher(
    { ...handlers, ...more },
    {
      beforeCommand: () => undefined,
      afterwards: () => undefined,
      onChanged: (tags) => changes.push([...tags]),
      onFault: (name) => faults.push(name),
    },
  );
const house = { ...DEFAULT_HOUSE, address: 'long '.repeat(30) };
const setHouse = (dispatch: Dispatch) => dispatch('people.setHouse', { change: house });

describe('dispatch', () => {
  it('says what changed, to the caller and to whoever listens; nothing for queries', async () => {
    const dispatch = make();
    expect(await setHouse(dispatch)).toEqual({ ok: true, value: {}, changed: ['house', 'records'] });
    expect(await dispatch('people.house', {})).toMatchObject({ ok: true, changed: [], value: { house } });
    expect(changes).toEqual([['house', 'records']]);
  });

  it('names the field at fault', async () => {
    const result = await make()('people.setHouse', { change: { ...house, massUnit: 'stone' } });
    expect(result).toMatchObject({ ok: false, error: { code: 'bad-input', field: 'change.massUnit' } });
    expect(changes).toEqual([]);
  });

  it('says that the disk is full, and keeps what was there', async () => {
    const dispatch = make();
    await setHouse(dispatch);
    store.db.pragma('wal_checkpoint(TRUNCATE)');
    store.db.pragma(`max_page_count = ${String(store.db.pragma('page_count', { simple: true }))}`);
    let last = await setHouse(dispatch);
    for (let n = 0; n < 200 && last.ok; n += 1) last = await setHouse(dispatch);
    expect(last).toEqual({ ok: false, error: { code: 'disk-full', message: 'the disk is full' } });
    expect(await dispatch('people.house', {})).toMatchObject({ ok: true, value: { house } });
    expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
  });

  it('says that the file can only be read', async () => {
    store.db.pragma('query_only = ON');
    expect(await setHouse(make())).toMatchObject({ ok: false, error: { code: 'read-only' } });
    expect(faults).toEqual([]);
  });

  it.each([
    ['SQLITE_CORRUPT_INDEX', 'damaged'],
    ['SQLITE_NOTADB', 'damaged'],
    ['SQLITE_IOERR_READ', 'damaged'],
    ['SQLITE_FULL', 'disk-full'],
    ['ENOSPC', 'disk-full'],
    ['SQLITE_READONLY_DBMOVED', 'read-only'],
    ['EROFS', 'read-only'],
    ['EACCES', 'read-only'],
    ['SQLITE_CONSTRAINT_UNIQUE', 'internal'],
  ])('answers an error %s as %s, without a path', async (code, expected) => {
    const thrown = Object.assign(new Error(`${code} on /home/someone/whelpside.sqlite`), { code });
    const result = await make({ 'people.house': () => Promise.reject(thrown) })('people.house', {});
    expect(result).toMatchObject({ ok: false, error: { code: expected } });
    expect(JSON.stringify(result)).not.toContain('someone');
    expect(faults).toEqual(expected === 'internal' ? ['people.house'] : []);
  });

  it('passes on what a service says, and nothing that does not fit the output schema', async () => {
    const refuses = make({
      'people.house': () => {
        throw new ContractFailure('refused', 'no', 'x');
      },
    });
    expect(await refuses('people.house', {})).toEqual({ ok: false, error: { code: 'refused', message: 'no', field: 'x' } });
    const wrong = make({ 'people.house': () => ({ house: { ...house, theme: 'pink' as 'day' } }) });
    expect(await wrong('people.house', {})).toMatchObject({ ok: false, error: { code: 'internal' } });
  });

  it('never throws, even for a closed store or a name that is no text', async () => {
    const dispatch = make();
    expect(await dispatch(7 as unknown as string, {})).toMatchObject({ ok: false, error: { code: 'unknown-operation' } });
    store.close();
    expect(await dispatch('litter.all', {})).toMatchObject({ ok: false, error: { code: 'internal' } });
  });
});
