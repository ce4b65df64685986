import { existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { listBackups } from '../../../main/store/backup.ts';
import { APPLICATION_ID } from '../../../main/store/file.ts';
import { MIGRATIONS, type Migration } from '../../../main/store/migrations.ts';
import { openStore, type Store } from '../../../main/store/open.ts';
import { onlyWhere } from '../../only-where.ts';
import { scratchFolder } from '../open.ts';

let folder: string;
let remove: () => void;
const now = () => ({ instant: 1_772_434_800_000, local: localTime('2026-03-02T07:00') });
const open = (migrations: readonly Migration[] = MIGRATIONS): Store => openStore({ folder, now, migrations });
const second: Migration = { version: MIGRATIONS.length + 1, name: 'a note', sql: 'ALTER TABLE litters ADD COLUMN note TEXT' };

beforeEach(() => {
  const scratch = scratchFolder();
  folder = join(scratch.folder, 'kept here', 'data');
  remove = scratch.remove;
});
afterEach(() => remove());

const mode = (path: string) => statSync(path).mode & 0o777;

describe('opening', () => {
  const modes = it.runIf(onlyWhere(process.platform !== 'win32', 'Windows keeps no owner modes'));
  modes('makes a folder and files for their owner only', () => {
    const store = open();
    store.db.exec("INSERT INTO house VALUES ('house', '{}')");
    expect(mode(folder)).toBe(0o700);
    for (const name of ['whelpside.sqlite', 'whelpside.sqlite-wal', 'whelpside.sqlite-shm', 'whelpside.lock']) {
      expect(mode(join(folder, name)), name).toBe(0o600);
    }
    store.close();
  });

  it('sets what keeps facts safe', () => {
    const store = open();
    const pragma = (name: string) => store.db.pragma(name, { simple: true });
    expect(pragma('application_id')).toBe(APPLICATION_ID);
    expect(pragma('user_version')).toBe(MIGRATIONS.length);
    expect(pragma('journal_mode')).toBe('wal');
    expect(pragma('synchronous')).toBe(2);
    expect(pragma('foreign_keys')).toBe(1);
    expect(pragma('secure_delete')).toBe(1);
    expect(pragma('auto_vacuum')).toBe(2);
    store.close();
  });

  it('opens again what it made, and knows which is new', () => {
    const first = open();
    expect(first.isNew).toBe(true);
    first.close();
    const again = open();
    expect(again.isNew).toBe(false);
    again.close();
  });

  it('starts over after a file that was never finished', () => {
    open().close();
    renameSync(join(folder, 'whelpside.sqlite'), join(folder, 'whelpside.sqlite.new'));
    writeFileSync(join(folder, 'whelpside.sqlite.new'), 'half of a file');
    rmSync(join(folder, 'whelpside.sqlite.seal')); // only a finished file is ever sealed
    const store = open();
    expect(store.isNew).toBe(true);
    expect(existsSync(join(folder, 'whelpside.sqlite.new'))).toBe(false);
    store.close();
  });

  it('refuses to make a file beside the log of one that was lost', () => {
    open().close();
    rmSync(join(folder, 'whelpside.sqlite'));
    writeFileSync(join(folder, 'whelpside.sqlite-wal'), 'pages');
    expect(() => open()).toThrow(expect.objectContaining({ code: 'damaged' }));
    expect(readFileSync(join(folder, 'whelpside.sqlite-wal'), 'utf8')).toBe('pages');
  });

  it('says that the folder is a file', () => {
    writeFileSync(join(folder, '..', '..', 'taken'), '');
    expect(() => openStore({ folder: join(folder, '..', '..', 'taken'), now })).toThrow(
      expect.objectContaining({ code: 'no-folder' }),
    );
  });
});

describe('migrating', () => {
  it('keeps a checked copy of the file as it was, then goes on with the facts', () => {
    const before = open();
    before.db.exec(
      "INSERT INTO litters (id, name, dam, sire, breed, whelpedAt, whelpedInstant, demo) VALUES ('l', '', 'Yarrow', '', '', '2026-03-01T02:00', 1, 0)",
    );
    before.close();
    const after = open([...MIGRATIONS, second]);
    expect(after.db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length + 1);
    expect(after.db.prepare('SELECT dam, note FROM litters').get()).toEqual({ dam: 'Yarrow', note: null });
    const [copy] = listBackups(folder);
    expect(copy).toMatchObject({ kind: 'before-migration', checked: true, instant: now().instant });
    const old = new Database(join(folder, 'backups', copy?.file ?? ''), { readonly: true });
    expect(old.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(old.prepare('SELECT * FROM litters').get()).not.toHaveProperty('note');
    old.close();
    after.close();
  });

  it('makes no copy of a new file', () => {
    open([...MIGRATIONS, second]).close();
    expect(listBackups(folder)).toEqual([]);
  });

  it('leaves the file at its old shape when a step fails', () => {
    open().close();
    const broken: Migration = {
      version: MIGRATIONS.length + 1,
      name: 'broken',
      sql: 'ALTER TABLE litters ADD COLUMN note TEXT; SELECT 1 FROM nowhere',
    };
    expect(() => open([...MIGRATIONS, broken])).toThrow(/nowhere/);
    expect(() => open([...MIGRATIONS, broken])).toThrow(expect.objectContaining({ name: 'StoreError', code: 'update' }));
    const store = open();
    expect(store.db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(store.db.prepare("SELECT count(*) FROM pragma_table_info('litters') WHERE name = 'note'").pluck().get()).toBe(0);
    store.close();
  });
});
