/**
 * The program's own mistakes, one dated line each, in a small text file of the data folder that she can look at and send.
 * It holds what went wrong and where in the program: no weights, and no names of folders, which often are a person's.
 */
import { appendFileSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, join } from 'node:path';
import type { Timestamp } from '../store/timestamp.ts';

const LONGEST_LINE = 400;
/** Bytes from which the older half goes. */
const LARGEST = 60_000;
const SHOWN = 50;

export function faultFile(folder: string): string {
  return join(folder, 'faults.txt');
}

export interface Fault {
  readonly now: Timestamp;
  readonly version: string;
  /** The operation, or what the host was doing. */
  readonly operation: string;
  readonly error: unknown;
}

/** Adds a line. Never throws: that a mistake can't be written down is no second one. */
export function noteFault(folder: string, fault: Fault): void {
  const file = faultFile(folder);
  try {
    if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > LARGEST) {
      const lines = readFileSync(file, 'utf8').split('\n');
      writeFileSync(file, lines.slice(Math.floor(lines.length / 2)).join('\n'), { mode: 0o600 });
    }
    appendFileSync(file, `${lineOf(folder, fault)}\n`, { mode: 0o600 });
  } catch {
    return;
  }
}

/** As the window shows them: the file and its last lines, newest first. */
export function faultsOf(folder: string): { file: string; lines: string[] } {
  const file = faultFile(folder);
  try {
    const lines = readFileSync(file, 'utf8').split('\n');
    return {
      file,
      lines: lines
        .filter((line) => line !== '')
        .slice(-SHOWN)
        .reverse(),
    };
  } catch {
    return { file, lines: [] };
  }
}

function lineOf(folder: string, { now, version, operation, error }: Fault): string {
  const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const line = `${now.local.replace('T', ' ')} ${version} ${operation}: ${withoutFolders(what, folder)}${placeOf(error)}`;
  return line.replace(/[\p{Cc}\p{Cf}]+/gu, ' ').slice(0, LONGEST_LINE);
}

function withoutFolders(text: string, folder: string): string {
  return text.replaceAll(folder, '…').replaceAll(homedir(), '…');
}

/** Where in the program: the first line of the stack that names a file of ours, without its folder. */
function placeOf(error: unknown): string {
  const frame = error instanceof Error ? /\(?([^\s()]+):(\d+):\d+\)?$/m.exec(error.stack ?? '') : null;
  return frame === null ? '' : ` (${basename(frame[1] ?? '')}:${frame[2]})`;
}
