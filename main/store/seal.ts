/**
 * The seal: what the data file is, byte for byte, whenever nobody writes into it: since it was closed, and while it is
 * open from one folding of its log to the next. SQLite keeps no sums over its pages, so a figure that rotted on the disk
 * would be read as if she had written it; the seal shows that it is not hers, after a kill too. It is broken, durably,
 * before the file is written: a file without one was being written when it ended.
 */
import { createHash } from 'node:crypto';
import { closeSync, openSync, readFileSync, readSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { makePrivate, placeDurably, syncFolder } from './file.ts';

const PIECE = 1 << 20;

/**
 * `none` there is no seal to compare with · `closed` the file is as it was when it was closed in order, and has no log ·
 * `open` it is as it was when its log was last folded into it · `changed` it is not as it was left.
 */
export type SealState = 'none' | 'closed' | 'open' | 'changed';

const sealOf = (file: string): string => `${file}.seal`;

/** Seals a data file: one that is closed only when it has no log, one that is open only when all of its log is in it. */
export function seal(file: string, state: 'closed' | 'open'): void {
  if (state === 'closed' && (statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0) > 0) return;
  writeSeal(file, digestOf(file), state);
}

/** Seals what is about to be put into the place of a data file. */
export function sealAhead(file: string, fresh: string): void {
  writeSeal(file, digestOf(fresh), 'closed');
}

function writeSeal(file: string, digest: string, state: 'closed' | 'open'): void {
  const part = `${file}.seal.part`;
  makePrivate(part);
  writeFileSync(part, state === 'open' ? `${digest} open\n` : `${digest}\n`);
  placeDurably(part, sealOf(file));
}

/** Compares the file, or another in its stead, with its seal. Changes nothing. */
export function sealState(file: string, instead = file): SealState {
  // A seal that is itself damaged says nothing about the file.
  const [, digest, open] = /^([0-9a-f]{64})( open)?\n?$/.exec(textOf(sealOf(file))) ?? [];
  if (digest === undefined) return 'none';
  if (digestOf(instead) !== digest) return 'changed';
  return open === undefined ? 'closed' : 'open';
}

/** Whether there is or was a sealed file of that name. */
export function hasSeal(file: string): boolean {
  return textOf(sealOf(file)) !== '';
}

/** Takes the seal away, so that it is gone before anything is written. */
export function breakSeal(file: string): void {
  if (statSync(sealOf(file), { throwIfNoEntry: false }) === undefined) return;
  rmSync(sealOf(file), { force: true });
  syncFolder(dirname(file));
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'latin1');
  } catch {
    return '';
  }
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
