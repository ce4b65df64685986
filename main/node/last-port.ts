/**
 * The port of last time, kept beside the data: a window that is still open, and what was typed in it and is not written yet, can be reached
 * only at the address that it was opened at.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const FILE = 'whelpside.port';

/** The port that the host of this folder listened on last; null when there is none, or when the file holds anything else. */
export function lastPort(folder: string): number | null {
  try {
    const text = readFileSync(join(folder, FILE), 'latin1');
    const port = Number(text);
    return /^\d{4,5}$/.test(text) && port >= 1024 && port <= 65_535 ? port : null;
  } catch {
    return null;
  }
}

/** A folder that cannot be written to costs only the address, never the start. */
export function rememberPort(folder: string, port: number): void {
  try {
    if (lastPort(folder) !== port) writeFileSync(join(folder, FILE), String(port), { mode: 0o600 });
  } catch {
    // Next time there is a free port instead.
  }
}
