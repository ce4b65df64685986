/** The window: a page of our own scheme in a sandbox, with the bridge and nothing else. */
import { BrowserWindow, dialog, screen, type WebPreferences } from 'electron';
import { WINDOW_ADDRESS } from './address.ts';
import { loadWindowState, saveWindowState } from './window-state.ts';

/** For every page the program opens. What is not named here stays at Electron's safe default. */
export function webPreferences(preload: string): WebPreferences {
  return {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    // Its dictionaries would be fetched from a stranger's server.
    spellcheck: false,
  };
}

function keepState(window: BrowserWindow, folder: string): void {
  window.on('close', () => {
    saveWindowState(folder, { ...window.getNormalBounds(), maximised: window.isMaximized() });
  });
}

/** Makes the window where it stood last; it shows itself when its page is drawn. `folder` is where its place is kept. */
export function makeWindow(preload: string, folder: string): BrowserWindow {
  const screens = screen.getAllDisplays().map((display) => display.workArea);
  const { maximised, ...bounds } = loadWindowState(folder, screens) ?? { width: 1280, height: 860, maximised: false };
  const window = new BrowserWindow({
    ...bounds,
    minWidth: 360,
    minHeight: 480,
    title: 'Whelpside',
    show: false,
    webPreferences: webPreferences(preload),
  });
  window.once('ready-to-show', () => {
    if (maximised) window.maximize();
    window.show();
  });
  keepState(window, folder);
  return window;
}

/** Loads the page. That she closed the window before it was there is no failure. */
export async function loadWindow(window: BrowserWindow): Promise<void> {
  await window.loadURL(WINDOW_ADDRESS).catch((error: unknown) => {
    if (!window.isDestroyed()) throw error;
  });
}

const MOST_REVIVALS = 3;
const REVIVALS_WITHIN_MS = 60_000;

/**
 * A page whose process died (no memory left, a driver that broke) is loaded again: she would sit before an empty window.
 * One that dies again and again is given up, with a sentence; what was written is in the file.
 */
export function reviveWhenGone(window: BrowserWindow, note: (why: string) => void): void {
  let revivals: number[] = [];
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    note(reason);
    const now = Date.now();
    revivals = [...revivals.filter((at) => now - at < REVIVALS_WITHIN_MS), now];
    if (revivals.length <= MOST_REVIVALS) void loadWindow(window);
    else
      dialog.showErrorBox(
        'Whelpside',
        'The window ended several times in a row. What you wrote is kept. Start the program again.',
      );
  });
}
