/** The exports folder: files under names that people can read, each whole or not there at all. */
import { existsSync, lstatSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, placeDurably } from './file.ts';
import { writeAll } from './papers.ts';

export interface ExportedFile {
  readonly file: string;
  readonly bytes: number;
}

/** Larger files are fetched from the folder itself. */
const LARGEST_FETCHED = 40_000_000;

export function exportsFolder(folder: string): string {
  return join(folder, 'exports');
}

/** Makes the exports folder if it is not there, and answers it. */
export function makeExportsFolder(folder: string): string {
  const into = exportsFolder(folder);
  makeFolder(into);
  return into;
}

/** Writes a file as `stem.end`, or with a number when that is taken. The stem is the program's own, never a person's text. */
export function writeExport(folder: string, stem: string, end: string, content: string | Uint8Array): ExportedFile {
  const into = makeExportsFolder(folder);
  const part = join(into, 'export.part');
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  rmSync(part, { force: true });
  try {
    writeAll(part, bytes);
    const file = freeName(into, stem, end);
    placeDurably(part, join(into, file));
    return { file, bytes: bytes.length };
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

function freeName(into: string, stem: string, end: string): string {
  for (let n = 1; ; n += 1) {
    const file = n === 1 ? `${stem}.${end}` : `${stem} (${n}).${end}`;
    if (!existsSync(join(into, file))) return file;
  }
}

/** Whether the text is the bare name of an export: no separators, no drive, nothing that leads out of a folder. */
export function isExportName(file: string): boolean {
  return /^whelpside[-\w ()]*(?:\.schema)?\.(?:csv|json|xlsx|sqlite)$/.test(file);
}

/** The bytes of an export; null when there is none of that name, `too-large` when it is better fetched from the folder. */
export function readExport(folder: string, file: string): Buffer | 'too-large' | null {
  if (!isExportName(file)) return null;
  const path = join(exportsFolder(folder), file);
  if (lstatSync(path, { throwIfNoEntry: false })?.isFile() !== true) return null;
  return statSync(path).size > LARGEST_FETCHED ? 'too-large' : readFileSync(path);
}
