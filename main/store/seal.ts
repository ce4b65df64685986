/**
 * The seal: what the data file was, byte for byte, when the program last closed it. SQLite keeps no sums over its pages,
 * so a figure that rotted on the disk would be read as if she had written it; the seal shows that it is not hers. It is
 * broken, durably, before the file is written again: a file that was not closed in order has none.
 */
import { createHash } from 'node:crypto';
import { closeSync, existsSync, openSync, readFileSync, readSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { makePrivate, placeDurably, syncFolder } from './file.ts';

const PIECE = 1 << 20;

/** `none` there is no seal to compare with · `kept` the file is as it was left · `changed` it is not. */
export type SealState = 'none' | 'kept' | 'changed';

const sealOf = (file: string): string => `${file}.seal`;

/** Seals a closed data file. One whose log is still there is not sealed. */
export function seal(file: string): void {
  if ((statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0) > 0) return;
  const part = `${file}.seal.part`;
  makePrivate(part);
  writeFileSync(part, `${digestOf(file)}\n`);
  placeDurably(part, sealOf(file));
}

/** Compares the file with its seal. Changes nothing. */
export function sealState(file: string): SealState {
  if (!existsSync(sealOf(file))) return 'none';
  const sealed = readFileSync(sealOf(file), 'latin1').trim();
  // A seal that is itself damaged says nothing about the file.
  if (!/^[0-9a-f]{64}$/.test(sealed)) return 'none';
  return digestOf(file) === sealed ? 'kept' : 'changed';
}

/** Takes the seal away, so that it is gone before anything is written. */
export function breakSeal(file: string): void {
  if (!existsSync(sealOf(file))) return;
  rmSync(sealOf(file), { force: true });
  syncFolder(dirname(file));
}

function digestOf(file: string): string {
  const hash = createHash('sha256');
  const piece = Buffer.alloc(PIECE);
  const fd = openSync(file, 'r');
  try {
    for (;;) {
      const read = readSync(fd, piece, 0, PIECE, null);
      if (read === 0) return hash.digest('hex');
      hash.update(piece.subarray(0, read));
    }
  } finally {
    closeSync(fd);
  }
}
