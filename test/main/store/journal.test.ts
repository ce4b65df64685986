import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { type About, doneList, JournalError, lastDone, nextUndone, redo, runCommand, undo } from '../../../main/store/journal.ts';
import { openStore, type Store } from '../../../main/store/open.ts';
import { scratchFolder } from '../open.ts';

let store: Store;
let folder: string;
let remove: () => void;
const nobody: About = { what: { of: 'house' }, grams: null, litterId: null, puppyId: null };
const setHouse = (text: string, operation = 'people.setHouse') =>
  runCommand(store.db, { instant: 1, operation }, (recorder) => {
    if (house() === undefined) recorder.insert('house', { id: 'house', house: text });
    else recorder.update('house', 'house', { house: text });
    return { value: text, about: nobody };
  });
const house = () => store.db.prepare<[], string>('SELECT house FROM house').pluck().get();
const now = () => ({ instant: 1, local: localTime('2026-03-02T07:00') });

beforeEach(() => {
  ({ folder, remove } = scratchFolder());
  store = openStore({ folder, now });
});
afterEach(() => {
  store.close();
  remove();
});

describe('the journal', () => {
  it('goes back and forth over a restart', () => {
    for (const n of ['1', '2', '3']) setHouse(n);
    undo(store.db);
    undo(store.db);
    expect(house()).toBe('1');
    store.close();
    store = openStore({ folder, now });
    expect(redo(store.db)).toMatchObject({ value: { done: { id: 2, undone: false } } });
    expect(house()).toBe('2');
    undo(store.db);
    undo(store.db);
    expect(house()).toBeUndefined();
    expect(undo(store.db)).toBeNull();
    for (const _ of [1, 2, 3]) redo(store.db);
    expect(house()).toBe('3');
    expect(redo(store.db)).toBeNull();
  });

  it('says so when an entry speaks of what is no more, and changes nothing', () => {
    setHouse('1', 'first');
    setHouse('2', 'second');
    const keep = (changes: object) =>
      store.db.prepare('UPDATE journal SET changes = ? WHERE id = 2').run(JSON.stringify([changes]));
    const other = { kind: 'update', id: 'house', before: { house: '1' }, after: { house: '2' } };
    keep({ ...other, table: 'kennel' });
    expect(() => undo(store.db)).toThrow(JournalError);
    keep({ ...other, table: 'house', before: { house: '1', sign: 'A' } });
    expect(() => undo(store.db)).toThrow(JournalError);
    expect(house()).toBe('2');
    expect(doneList(store.db, 10).map((d) => [d.operation, d.undone])).toEqual([
      ['second', false],
      ['first', false],
    ]);
    expect(lastDone(store.db)).toMatchObject({ operation: 'second' });
  });

  it('forgets the way forward at a new command, but lists what was done', () => {
    setHouse('1', 'first');
    setHouse('2', 'second');
    undo(store.db);
    setHouse('3', 'third');
    expect(nextUndone(store.db)).toBeNull();
    expect(lastDone(store.db)).toMatchObject({ operation: 'third' });
    expect(doneList(store.db, 10).map((d) => [d.operation, d.undone])).toEqual([
      ['third', false],
      ['second', true],
      ['first', false],
    ]);
    undo(store.db);
    expect(house()).toBe('1');
  });

  it('leaves no trace of a command that failed', () => {
    setHouse('1');
    undo(store.db);
    const fail = () =>
      runCommand(store.db, { instant: 1, operation: 'x' }, (recorder) => {
        recorder.insert('house', { id: 'house', house: '9' });
        throw new Error('half way');
      });
    expect(fail).toThrow('half way');
    expect(house()).toBeUndefined();
    expect(doneList(store.db, 10)).toHaveLength(1);
    expect(redo(store.db)).not.toBeNull();
  });

  it('takes no column names from the file that are not names', () => {
    setHouse('1');
    const changes = [{ kind: 'update', table: 'house', id: 'house', before: { 'house = 1; --': 'x' }, after: {} }];
    store.db.prepare('UPDATE journal SET changes = ?').run(JSON.stringify(changes));
    expect(() => undo(store.db)).toThrow();
    expect(house()).toBe('1');
    expect(lastDone(store.db)).not.toBeNull();
  });
});
