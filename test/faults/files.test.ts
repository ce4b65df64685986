/** Files that can't be used are refused with a code, and are afterwards what they were, byte for byte. */

import { createHash } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  closeSync,
  copyFileSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StoreError } from '../../main/store/fault.ts';
import { MIGRATIONS } from '../../main/store/migrations.ts';
import { call, machineClock, makeWorld } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';

let folder: string;
let file: string;
let remove: () => void;

beforeEach(async () => {
  ({ folder, remove } = scratchFolder());
  file = join(folder, 'whelpside.sqlite');
  const program = openOn(folder);
  await makeWorld(program.dispatch);
  await call(program.dispatch, 'records.addDemo', { now: machineClock().local, utcOffsetMinutes: 0 });
  program.close();
});
afterEach(() => remove());

const digest = () => createHash('sha256').update(readFileSync(file)).digest('hex');

function codeOfOpening(): string {
  try {
    openOn(folder).close();
    return 'opened';
  } catch (error) {
    if (error instanceof StoreError) return error.code;
    throw error;
  }
}

function overwrite(position: number, bytes: Uint8Array): void {
  const fd = openSync(file, 'r+');
  writeSync(fd, bytes, 0, bytes.length, position);
  closeSync(fd);
}

describe('a file that is not whole', () => {
  const size = () => readFileSync(file).length;
  const harms: [string, () => void][] = [
    ['its header zeroed', () => overwrite(0, new Uint8Array(100))],
    ['cut in the middle of a page', () => truncateSync(file, Math.floor(size() / 2) + 100)],
    ['cut after its first page', () => truncateSync(file, 4096)],
    ['cut to a few bytes', () => truncateSync(file, 60)],
    ['emptied', () => truncateSync(file, 0)],
    ['not a database', () => writeFileSync(file, 'Dear diary, '.repeat(2000))],
    ['pages of noise inside', () => overwrite(8192, Buffer.alloc(40_960, 0xa5))],
  ];
  it.each(harms)('%s: refused, left as it is', (_what, harm) => {
    harm();
    const before = digest();
    expect(codeOfOpening()).toBe('damaged');
    expect(digest()).toBe(before);
    expect(codeOfOpening()).toBe('damaged');
  });

  it('can be replaced by a copy, by hand', () => {
    copyFileSync(file, join(folder, 'copy'));
    overwrite(0, new Uint8Array(100));
    expect(codeOfOpening()).toBe('damaged');
    copyFileSync(join(folder, 'copy'), file);
    expect(codeOfOpening()).toBe('opened');
  });
});

describe('a file that is not for this program', () => {
  it('written by a newer version: refused by name, left as it is', () => {
    const db = new Database(file);
    db.pragma(`user_version = ${MIGRATIONS.length + 1}`);
    db.close();
    const before = digest();
    const copies = readdirSync(join(folder, 'backups'));
    expect(codeOfOpening()).toBe('newer');
    expect(() => openOn(folder)).toThrow(/whelpside\.sqlite was written by a newer version/);
    expect(digest()).toBe(before);
    expect(readdirSync(join(folder, 'backups'))).toEqual(copies);
  });

  it('newer, but so far only in its log: refused, file and log left as they are', () => {
    const db = new Database(file);
    db.pragma(`user_version = ${MIGRATIONS.length + 3}`);
    const other = join(folder, 'crashed');
    mkdirSync(other);
    // What a crash leaves: the file and its log, copied while the writer still holds them open.
    for (const end of ['', '-wal']) copyFileSync(file + end, join(other, `whelpside.sqlite${end}`));
    db.close();
    const log = readFileSync(join(other, 'whelpside.sqlite-wal'));
    expect(log.length).toBeGreaterThan(0);
    expect(() => openOn(other)).toThrow(expect.objectContaining({ code: 'newer' }));
    expect(readFileSync(join(other, 'whelpside.sqlite-wal'))).toEqual(log);
  });

  it("another program's database: refused, left as it is", () => {
    const db = new Database(file);
    db.pragma('application_id = 1234');
    db.close();
    const before = digest();
    expect(codeOfOpening()).toBe('foreign');
    expect(digest()).toBe(before);
  });
});

describe('two at once', () => {
  it('the second is refused until the first has closed', async () => {
    const first = openOn(folder);
    expect(codeOfOpening()).toBe('locked');
    expect((await first.dispatch('litter.all', {})).ok).toBe(true);
    first.close();
    expect(codeOfOpening()).toBe('opened');
  });
});

const NOBODY = 65_534;
const canDropRights = process.geteuid?.() === 0;

/** Rights do not bind the superuser: the work is done as nobody then. */
function withoutRights<T>(work: () => T): T {
  if (!canDropRights) return work();
  process.seteuid?.(NOBODY);
  try {
    return work();
  } finally {
    process.seteuid?.(0);
  }
}

function giveAway(path: string): void {
  if (canDropRights) chownSync(path, NOBODY, NOBODY);
}

// On Windows a folder's read-only mark does not stop files being made in it.
const hasReadOnly = onlyWhere(process.platform !== 'win32', 'on Windows a read-only folder still takes files');
describe.runIf(hasReadOnly)('a folder that can only be read', () => {
  it('is refused with its own code, the file left as it is', () => {
    const before = digest();
    for (const name of readdirSync(folder)) giveAway(join(folder, name));
    giveAway(folder);
    for (const name of ['whelpside.sqlite', 'whelpside.lock']) chmodSync(join(folder, name), 0o400);
    chmodSync(folder, 0o500);
    try {
      expect(withoutRights(codeOfOpening)).toBe('read-only');
    } finally {
      chmodSync(folder, 0o700);
    }
    expect(digest()).toBe(before);
  });

  it('a folder that can not be made is refused', () => {
    giveAway(folder);
    chmodSync(folder, 0o500);
    try {
      const opening = () => withoutRights(() => openOn(join(folder, 'new')));
      expect(opening).toThrow(expect.objectContaining({ code: 'read-only' }));
    } finally {
      chmodSync(folder, 0o700);
    }
  });
});
