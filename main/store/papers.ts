/** The papers folder: PDFs under names that people can read. */
import { closeSync, existsSync, fsyncSync, lstatSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, placeDurably } from './file.ts';

export function papersFolder(folder: string): string {
  return join(folder, 'papers');
}

/** Writes a PDF under the stem, or the stem with a number when it is taken, and answers the name it got. */
export function writePaper(folder: string, stem: string, bytes: Uint8Array): string {
  const into = papersFolder(folder);
  makeFolder(into);
  const part = join(into, 'paper.part');
  rmSync(part, { force: true });
  try {
    writeAll(part, bytes);
    const file = freeName(into, safeStem(stem));
    placeDurably(part, join(into, file));
    return file;
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

/** Writes a file that was not there, for its owner only, and makes its bytes durable. */
export function writeAll(file: string, bytes: Uint8Array): void {
  const fd = openSync(file, 'wx', 0o600);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(fd, bytes, at);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

/** A file name that every system takes: no separators, reserved marks or control characters, not hidden, not long. */
export function safeStem(stem: string): string {
  const plain = stem
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}<>:"/\\|?*%]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '');
  return [...plain].slice(-80).join('').trim() || 'go-home plan';
}

function freeName(into: string, stem: string): string {
  for (let n = 1; ; n += 1) {
    const file = n === 1 ? `${stem}.pdf` : `${stem} (${n}).pdf`;
    if (!existsSync(join(into, file))) return file;
  }
}

/** The bytes of a paper, or null when there is none of that name: a bare name, in that folder, not a link. */
export function readPaper(folder: string, file: string): Buffer | null {
  if (!isBareName(file)) return null;
  const path = join(papersFolder(folder), file);
  return lstatSync(path, { throwIfNoEntry: false })?.isFile() === true ? readFileSync(path) : null;
}

/** Whether the text is a PDF's name alone: no separators, no drive, nothing that leads out of a folder. */
export function isBareName(file: string): boolean {
  return /^[^\p{Cc}<>:"/\\|?*%.][^\p{Cc}<>:"/\\|?*%]*\.pdf$/u.test(file);
}
