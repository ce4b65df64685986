import { readdirSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { addDays, date } from '../../../core/calendar/day.ts';
import { backUp, backUpDaily, listBackups, outdated } from '../../../main/store/backup.ts';
import { openStore, type Store } from '../../../main/store/open.ts';
import { scratchFolder } from '../open.ts';

let folder: string;
let remove: () => void;
let store: Store;
const START = date('2026-03-02'); // a Monday
const on = (days: number, clock = '07:00') => ({
  instant: 1_772_434_800_000 + days * 86_400_000,
  local: localTime(`${addDays(START, days)}T${clock}`),
});

beforeEach(() => {
  ({ folder, remove } = scratchFolder());
  store = openStore({ folder, now: () => on(0) });
  store.db.exec(
    "INSERT INTO litters (id, name, dam, sire, breed, whelpedAt, whelpedInstant, demo) VALUES ('l', '', 'Yarrow', '', '', '2026-03-01T02:00', 1, 0)",
  );
});
afterEach(() => {
  store.close();
  remove();
});

describe('copies', () => {
  it('hold the facts that were written last, and open by themselves', () => {
    const copy = backUp(store.db, folder, on(0), 'by-hand');
    expect(copy).toMatchObject({
      kind: 'by-hand',
      file: 'whelpside-2026-03-02-0700-by-hand.sqlite',
      checked: true,
      instant: on(0).instant,
    });
    const path = join(folder, 'backups', copy.file);
    expect(statSync(path).size).toBe(copy.bytes);
    const db = new Database(path, { readonly: true });
    expect(db.prepare('SELECT dam FROM litters').pluck().all()).toEqual(['Yarrow']);
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    db.close();
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o777).toBe(0o600);
  });

  it('never take the place of another, and leave nothing half made', () => {
    const first = backUp(store.db, folder, on(0), 'by-hand');
    writeFileSync(join(folder, 'backups', 'whelpside.part'), 'left by a power cut');
    const second = backUp(store.db, folder, on(0), 'by-hand');
    expect(second.file).not.toBe(first.file);
    expect(readdirSync(join(folder, 'backups')).sort()).toEqual([first.file, second.file].sort());
  });

  it('can be put in the place of the data file', () => {
    const { file } = backUp(store.db, folder, on(0), 'by-hand');
    const other = join(folder, 'restored');
    openStore({ folder: other, now: () => on(0) }).close();
    const bytes = new Database(join(folder, 'backups', file), { readonly: true }).serialize();
    writeFileSync(join(other, 'whelpside.sqlite'), bytes);
    expect(() => openStore({ folder: other, now: () => on(0) })).toThrow(expect.objectContaining({ code: 'changed' }));
    const restored = openStore({ folder: other, now: () => on(0), asItIs: true });
    expect(restored.db.prepare('SELECT dam FROM litters').pluck().all()).toEqual(['Yarrow']);
    expect(restored.db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(restored.db.pragma('auto_vacuum', { simple: true })).toBe(2);
    restored.close();
  });

  it('are no longer called checked once cut short', () => {
    const { file, bytes } = backUp(store.db, folder, on(0), 'by-hand');
    truncateSync(join(folder, 'backups', file), bytes - 512);
    expect(listBackups(folder)).toMatchObject([{ file, checked: false }]);
    truncateSync(join(folder, 'backups', file), 10);
    expect(listBackups(folder)).toMatchObject([{ file, checked: false }]);
  });

  it('are listed newest first; other files are not ours', () => {
    backUp(store.db, folder, on(0), 'by-hand');
    backUp(store.db, folder, on(2), 'before-migration');
    backUpDaily(store.db, folder, on(1));
    writeFileSync(join(folder, 'backups', 'holiday.sqlite'), '');
    writeFileSync(join(folder, 'backups', 'whelpside-2026-02-31-daily.sqlite'), '');
    expect(listBackups(folder).map((b) => b.kind)).toEqual(['before-migration', 'daily', 'by-hand']);
  });
});

describe('the daily copy', () => {
  it('is made once a day', () => {
    backUpDaily(store.db, folder, on(0, '06:00'));
    store.db.exec("UPDATE litters SET dam = 'Comfrey'");
    backUpDaily(store.db, folder, on(0, '22:00'));
    const [copy, ...more] = listBackups(folder);
    expect(more).toEqual([]);
    const db = new Database(join(folder, 'backups', copy?.file ?? ''), { readonly: true });
    expect(db.prepare('SELECT dam FROM litters').pluck().get()).toBe('Yarrow');
    db.close();
  });

  it('keeps fourteen days and eight weeks before them, and all that were made by hand', () => {
    backUp(store.db, folder, on(0), 'by-hand');
    for (let day = 0; day < 100; day += 1) backUpDaily(store.db, folder, on(day));
    const days = listBackups(folder)
      .filter((b) => b.kind === 'daily')
      .map((b) => b.file.slice(10, 20));
    const fortnight = Array.from({ length: 14 }, (_, i) => addDays(START, 99 - i));
    expect(days.slice(0, 14)).toEqual(fortnight);
    // Day 85 is a Tuesday: the newest of its week that is not among the fourteen; before it Sundays.
    expect(days.slice(14)).toEqual([85, 83, 76, 69, 62, 55, 48, 41].map((d) => addDays(START, d)));
    expect(listBackups(folder).some((b) => b.kind === 'by-hand')).toBe(true);
  });

  it('counts days that have a copy, not days gone by', () => {
    const copies = [0, 30, 60, 90].map((d) => ({ file: `f${d}`, day: addDays(START, d) }));
    expect(outdated(copies)).toEqual([]);
  });
});
