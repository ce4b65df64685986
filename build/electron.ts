/** Where Electron's own binary is, and how it comes here: its package installs without it and fetches it afterwards. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ROOT } from './root.ts';

const PACKAGE = join(ROOT, 'node_modules/electron');
const NOTE = join(ROOT, 'node_modules/.cache/electron-not-fetched');
const FETCH_MS = 120_000;
const TRY_AGAIN_MS = 24 * 3_600_000;

/** The path of the Electron binary; null when it has not been fetched whole. */
export function electronBinary(): string | null {
  const pathFile = join(PACKAGE, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const binary = join(process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(PACKAGE, 'dist'), readFileSync(pathFile, 'utf8'));
  return existsSync(binary) ? binary : null;
}

/**
 * Fetches the Electron binary (about 110 MB), for two minutes at most. A failure is remembered for a day, so that a place where it
 * can't be had does not wait at every start.
 */
export function fetchElectron(): string | null {
  if (existsSync(NOTE) && Date.now() - statSync(NOTE).mtimeMs < TRY_AGAIN_MS) return null;
  console.log('Fetching Electron for the desktop window. This happens once; "npm start -- --browser" does without.');
  const { status } = spawnSync(process.execPath, [join(PACKAGE, 'install.js')], { stdio: 'ignore', timeout: FETCH_MS });
  const binary = status === 0 ? electronBinary() : null;
  if (binary === null) {
    mkdirSync(dirname(NOTE), { recursive: true });
    writeFileSync(NOTE, '');
  } else {
    rmSync(NOTE, { force: true });
  }
  return binary;
}

/** Why a desktop window can't open here, whatever is installed; null when nothing speaks against it. */
export function noWindowBecause(platform: NodeJS.Platform, env: NodeJS.ProcessEnv, uid: number | undefined): string | null {
  if (platform !== 'linux') return null;
  if (!env['DISPLAY'] && !env['WAYLAND_DISPLAY']) return 'there is no display';
  if (uid === 0) return 'Electron does not run as root';
  return null;
}
