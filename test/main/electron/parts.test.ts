/** Parts of the desktop host by themselves: where the window stands, the menu, the arguments, paper. */

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { PaperDocument } from '../../../core/contract/paper.ts';
import type { PlanDocument } from '../../../core/homing/document.ts';
import { readDesktopArguments } from '../../../main/electron/arguments.ts';
import { menuTemplate, setMenu } from '../../../main/electron/menu.ts';
import { windowPaper } from '../../../main/electron/paper.ts';
import { loadWindowState, saveWindowState } from '../../../main/electron/window-state.ts';
import { PaperSlots } from '../../../main/hosting/slots.ts';
import * as electron from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

const folder = mkdtempSync(join(tmpdir(), 'whelpside-parts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('where the window stands', () => {
  const screens = [
    { x: 0, y: 0, width: 1920, height: 1040 },
    { x: 1920, y: -200, width: 1280, height: 1000 },
  ];
  const state = { x: 100, y: 100, width: 900, height: 700, maximised: false };
  const kept = (text: string) => {
    writeFileSync(join(folder, 'window.json'), text);
    return loadWindowState(folder, screens);
  };

  test('it is kept whole, and nothing is left beside it', () => {
    saveWindowState(folder, state);
    expect(loadWindowState(folder, screens)).toEqual(state);
    saveWindowState(folder, { ...state, maximised: true });
    expect(loadWindowState(folder, screens)).toEqual({ ...state, maximised: true });
    expect(readdirSync(folder)).toEqual(['window.json']);
  });

  test('on the second screen it is in sight; without that screen it is not', () => {
    const right = { ...state, x: 2200, y: -150 };
    expect(kept(JSON.stringify(right))).toEqual(right);
    expect(loadWindowState(folder, screens.slice(0, 1))).toBeNull();
    expect(loadWindowState(folder, [])).toBeNull();
  });

  test.each([
    ['off to the left', { ...state, x: -800 }],
    ['its title bar above the screen', { ...state, y: -10 }],
    ['below the screen', { ...state, y: 1000 }],
  ])('%s it is out of reach', (_what, away) => {
    expect(kept(JSON.stringify(away))).toBeNull();
  });

  test.each([
    '',
    '{',
    'null',
    '[]',
    '"x"',
    JSON.stringify({ ...state, width: 1e9 }),
    JSON.stringify({ ...state, width: 10 }),
    JSON.stringify({ ...state, x: 1.5 }),
    JSON.stringify({ ...state, x: '100' }),
    JSON.stringify({ x: 1, y: 1, width: 900, height: 700 }),
  ])('a broken file counts as none: %s', (text) => {
    expect(kept(text)).toBeNull();
  });

  test('no file, or no folder, is no failure', () => {
    const nowhere = join(folder, 'none');
    expect(loadWindowState(nowhere, screens)).toBeNull();
    expect(() => saveWindowState(nowhere, state)).not.toThrow();
  });
});

describe('the menu', () => {
  const shape = (platform: NodeJS.Platform) =>
    menuTemplate(platform).map((menu) => [
      menu.role ?? menu.label,
      ...(Array.isArray(menu.submenu) ? menu.submenu.map((i) => i.role ?? i.label ?? '-') : []),
    ]);

  test('editing, print, zoom and full screen, and no tools for developers', () => {
    expect(shape('linux')).toEqual([
      ['&File', '&Print…', '-', 'quit'],
      ['&Edit', 'undo', 'redo', '-', 'cut', 'copy', 'paste', 'selectAll'],
      ['&View', 'resetZoom', 'zoomIn', 'zoomOut', '-', 'togglefullscreen'],
      ['windowMenu'],
    ]);
    expect(shape('darwin').map(([name]) => name)).toEqual(['appMenu', '&File', '&Edit', '&View', 'windowMenu']);
    expect(shape('darwin')[1]).toEqual(['&File', '&Print…', '-', 'close']);
  });

  test('print prints the window that she is in', () => {
    setMenu();
    expect(electron.Menu.set).toEqual({ template: electron.Menu.built });
    const file = menuTemplate('linux')[0]?.submenu;
    const print = (Array.isArray(file) ? file[0]?.click : undefined) as (() => void) | undefined;
    print?.();
    const window = new electron.BrowserWindow({});
    electron.BrowserWindow.focused = window;
    print?.();
    electron.BrowserWindow.focused = null;
    expect(window.webContents.print).toHaveBeenCalledExactlyOnceWith({ printBackground: true });
  });
});

describe('arguments', () => {
  test.each<[string[], string | null, boolean]>([
    [[], null, false],
    [['--data', '/a/b', '--demo'], '/a/b', true],
    [['--data=c'], '/from/c', false],
    [['--data', ''], null, false],
    [['/the/program', '--no-sandbox', '--demo', '--port', '1', '--inspect'], null, true],
    [['--data'], null, false],
  ])('%j', (args, data, demo) => {
    expect(readDesktopArguments(args, '/from')).toEqual({ data, demo });
  });
});

describe('paper', () => {
  const document = { title: 'a plan' } as PlanDocument;
  const slots = new PaperSlots(() => performance.now());
  const paper = windowPaper('/built/preload.cjs', slots);
  let made: electron.BrowserWindow | undefined;
  let handed: PaperDocument | null = null;
  let ready: string | null = 'true';

  beforeEach(() => {
    electron.BrowserWindow.onMade = (window) => {
      made = window;
      window.webContents.ready = ready;
      window.loadURL = async (url) => {
        const slot = /^app:\/\/whelpside\/#\/print\/slot\/([A-Za-z0-9_-]{32})\?paper=(a4|letter)$/.exec(url);
        handed = slots.take(`/paper/${slot?.[1]}`);
      };
    };
  });

  test('a hidden window is handed the document once, prints its own page and goes', async () => {
    const bytes = await paper.print(document, 'letter');
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
    expect(pdf.getPageCount()).toBe(1);
    expect(pdf.getCreator()).toBe('Whelpside');
    expect(handed).toBe(document);
    expect(made?.options['show']).toBe(false);
    expect(made?.options['webPreferences']).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
    });
    expect(made?.webContents.pdfOptions).toEqual([
      { preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true, generateDocumentOutline: true },
    ]);
    expect(made?.destroyed).toBe(true);
  });

  test.each([
    ['clipped', 'refused'],
    [null, 'internal'],
    ['', 'internal'],
    ['True', 'internal'],
  ])('ready %j is %s, and the window goes', async (says, code) => {
    ready = says;
    electron.BrowserWindow.onMade = (window) => {
      made = window;
      window.webContents.ready = says;
    };
    await expect(paper.print(document, 'a4')).rejects.toMatchObject({ error: { code } });
    expect(made?.webContents.pdfOptions).toEqual([]);
    expect(made?.destroyed).toBe(true);
    ready = 'true';
  });

  test('the script it waits with is a script', async () => {
    await paper.print(document, 'a4');
    const [script = ''] = made?.webContents.scripts ?? [];
    expect(() => new Function(`return ${script}`)).not.toThrow();
    expect(script).toContain("attributeFilter: ['data-ready']");
  });
});

test('the preload, the desktop and the page name the same bridge', () => {
  const text = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
  for (const channel of ['whelpside:call', 'whelpside:changed']) {
    expect(text('main/preload/preload.ts')).toContain(`'${channel}'`);
    expect(text('main/electron/ipc.ts')).toContain(`'${channel}'`);
  }
  expect(text('renderer/data/host.ts')).toContain('window.whelpside');
});
