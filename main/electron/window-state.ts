/** Where the window stood when it was closed. A file that is missing, broken or off every screen counts as none. */
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';

/** A place on the desk of all screens, in whole px. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface WindowState extends Area {
  readonly maximised: boolean;
}

/** So much of the window must be on a screen, in px, that she can take hold of it. */
const IN_SIGHT = { width: 200, height: 100 };

const LEAST_SIDE = 200;
const MOST = 100_000;

function isState(value: unknown): value is WindowState {
  if (typeof value !== 'object' || value === null) return false;
  const { x, y, width, height, maximised } = value as Record<string, unknown>;
  const isBetween = (n: unknown, least: number): boolean => Number.isInteger(n) && Number(n) >= least && Number(n) <= MOST;
  const placed = isBetween(x, -MOST) && isBetween(y, -MOST) && isBetween(width, LEAST_SIDE) && isBetween(height, LEAST_SIDE);
  return placed && typeof maximised === 'boolean';
}

const overlap = (a: number, aLength: number, b: number, bLength: number): number =>
  Math.min(a + aLength, b + bLength) - Math.max(a, b);

function isInSight(state: Area, screens: readonly Area[]): boolean {
  return screens.some(
    (screen) =>
      overlap(state.x, state.width, screen.x, screen.width) >= IN_SIGHT.width &&
      overlap(state.y, state.height, screen.y, screen.height) >= IN_SIGHT.height &&
      // The title bar is what she takes hold of.
      state.y >= screen.y,
  );
}

const fileIn = (folder: string): string => join(folder, 'window.json');

/** The kept state, if it is whole and in sight on one of the screens' work areas. */
export function loadWindowState(folder: string, screens: readonly Area[]): WindowState | null {
  try {
    const state: unknown = JSON.parse(readFileSync(fileIn(folder), 'utf8'));
    return isState(state) && isInSight(state, screens) ? state : null;
  } catch {
    return null;
  }
}

/** Keeps the state: written beside, flushed, then put in place at once. A folder that can't be written keeps nothing. */
export function saveWindowState(folder: string, state: WindowState): void {
  const file = fileIn(folder);
  const beside = `${file}.new`;
  try {
    const handle = openSync(beside, 'w', 0o600);
    try {
      writeSync(handle, JSON.stringify(state));
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(beside, file);
  } catch {
    rmSync(beside, { force: true });
  }
}
