/** Finds an installed Chromium, Chrome or Edge that can make a PDF. Nothing is ever downloaded. */
import { delimiter, join } from 'node:path';

export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether a file is there and may be run. */
  readonly runs: (path: string) => boolean;
}

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const MAC_PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const WINDOWS_PLACES = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
];

function candidates({ platform, env }: Machine): string[] {
  if (platform === 'darwin') return MAC_PLACES;
  if (platform === 'win32') {
    const roots = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']].filter((root) => root !== undefined);
    return roots.flatMap((root) => WINDOWS_PLACES.map((place) => join(root, ...place)));
  }
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** The browser's path, or null. `CHROMIUM_PATH` goes first; if it is set and wrong, nothing else is tried in its place. */
export function findBrowser(machine: Machine): string | null {
  const named = machine.env['CHROMIUM_PATH'];
  if (named) return machine.runs(named) ? named : null;
  return candidates(machine).find((path) => machine.runs(path)) ?? null;
}
