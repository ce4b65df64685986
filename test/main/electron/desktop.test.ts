/**
 * The desktop host against a stand-in for Electron, point by point of Electron's own security checklist (docs,
 * tutorial/security.md, 20 points, August 2026) where a point is in this code; with a real program on a real folder.
 */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { endInASentence, startDesktop } from '../../../main/electron/desktop.ts';
import { newId, now } from '../../../main/hosting/clock.ts';
import { openProgram } from '../../../main/service/program.ts';
import { makeWindowFolder, PAGE, SCRIPT } from '../node/serving.ts';
import * as electron from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

const folder = mkdtempSync(join(tmpdir(), 'whelpside-desktop-'));
const data = join(folder, 'data');
const built = makeWindowFolder();
const options = { args: { data, demo: true }, windowFolder: join(built, 'window'), preload: '/built/preload.cjs' };
const started = () => electron.BrowserWindow.all[0] as electron.BrowserWindow;
const session = electron.session.defaultSession;

beforeAll(() => startDesktop(options));
afterAll(() => {
  electron.app.quit();
  for (const path of [folder, built]) rmSync(path, { recursive: true, force: true });
});

const serve = async (path: string, init: RequestInit = {}): Promise<Response> => {
  const handler = electron.protocol.handlers.get('app');
  if (handler === undefined) throw new Error('no handler');
  return handler(new Request(path.includes('://') ? path : `app://whelpside${path}`, init));
};

describe('start', () => {
  test('folders, the claim, the sandbox and the scheme come before the app is ready; the window last', () => {
    const place = (name: string) => electron.order.indexOf(name);
    for (const name of [
      'app.setPath',
      'app.requestSingleInstanceLock',
      'app.enableSandbox',
      'protocol.registerSchemesAsPrivileged',
    ]) {
      expect(place(name), name).toBeGreaterThanOrEqual(0);
      expect(place(name), name).toBeLessThan(place('app.whenReady'));
    }
    expect(place('app.setPath')).toBeLessThan(place('app.requestSingleInstanceLock'));
    for (const name of ['session.setPermissionRequestHandler', 'protocol.handle', 'ipcMain.handle']) {
      expect(place(name), name).toBeLessThan(place('new BrowserWindow'));
    }
  });

  test('data and Chromium each have their folder', () => {
    expect(electron.app.paths.get('userData')).toBe(data);
    expect(electron.app.paths.get('sessionData')).toBe(join(data, 'chromium'));
    expect(existsSync(join(data, 'whelpside.sqlite'))).toBe(true);
    if (process.platform !== 'win32') expect(statSync(data).mode & 0o077).toBe(0);
  });

  test('the demo is there, as asked', async () => {
    const answer = await electron.ipcRenderer.invoke('whelpside:call', 'records.status', {});
    expect(answer).toMatchObject({ ok: true, value: { demo: true, version: '0.0.0-test' } });
  });
});

describe('checklist 2, 3, 4, 6, 8, 9, 10, 11, 12: what a page may', () => {
  test('the preferences are these and no others', () => {
    expect(started().options['webPreferences']).toEqual({
      preload: '/built/preload.cjs',
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
      spellcheck: false,
    });
    expect(electron.order).toContain('app.enableSandbox');
  });

  test('a web view is refused', () => {
    const event = { preventDefault: vi.fn() };
    started().webContents.emit('will-attach-webview', event, {}, {});
    expect(event.preventDefault).toHaveBeenCalledOnce();
  });
});

describe('checklist 5: permissions', () => {
  const asks = session.handlers;
  const ALL = [
    'media',
    'geolocation',
    'notifications',
    'midi',
    'usb',
    'clipboard-read',
    'openExternal',
    'fullscreen',
    'unknown',
    'fileSystem',
  ];

  test.each(ALL)('%s is denied', (permission) => {
    const answer = vi.fn();
    const details = { isMainFrame: true, requestingUrl: 'app://whelpside/' };
    asks.get('setPermissionRequestHandler')?.({}, permission, answer, details);
    expect(answer).toHaveBeenCalledExactlyOnceWith(false);
    expect(asks.get('setPermissionCheckHandler')?.({}, permission, 'app://whelpside/', details)).toBe(false);
  });

  test.each(['hid', 'serial'])('%s is granted to our own page, and to it alone', (permission) => {
    const granted = (isMainFrame: boolean, requestingUrl: string) => {
      const answer = vi.fn();
      asks.get('setPermissionRequestHandler')?.({}, permission, answer, { isMainFrame, requestingUrl });
      const check = asks.get('setPermissionCheckHandler')?.({}, permission, requestingUrl, { isMainFrame });
      expect(answer).toHaveBeenCalledExactlyOnceWith(check);
      return check;
    };
    expect(granted(true, 'app://whelpside/')).toBe(true);
    expect(granted(true, 'app://whelpside')).toBe(true);
    expect(granted(false, 'app://whelpside/')).toBe(false);
    for (const stranger of [
      'https://whelpside/',
      'app://other/',
      'app://whelpside.evil/',
      'app://a@whelpside/',
      'file:///',
      'null',
      '',
    ]) {
      expect(granted(true, stranger), stranger).toBe(false);
    }
  });

  test('a device is granted by kind and origin', () => {
    const may = (deviceType: string, origin: string) =>
      asks.get('setDevicePermissionHandler')?.({ deviceType, origin, device: {} });
    expect(may('hid', 'app://whelpside')).toBe(true);
    expect(may('serial', 'app://whelpside')).toBe(true);
    expect(may('usb', 'app://whelpside')).toBe(false);
    expect(may('hid', 'https://evil.example')).toBe(false);
  });
});

describe('checklist 1, 7, 18: the scheme', () => {
  test('it is standard and secure, keeps the policy and has no leave beyond', () => {
    expect(electron.protocol.schemes).toEqual([
      {
        scheme: 'app',
        privileges: {
          standard: true,
          secure: true,
          supportFetchAPI: true,
          bypassCSP: false,
          corsEnabled: false,
          allowServiceWorkers: false,
          stream: false,
        },
      },
    ]);
    expect(started().loaded).toEqual(['app://whelpside/']);
  });

  test('the page has a strict policy with its own nonce and no secret', async () => {
    const [first, second] = [await serve('/'), await serve('/')];
    const text = await first.text();
    const nonce = /<meta property="csp-nonce" nonce="([A-Za-z0-9_-]{22})">/.exec(text)?.[1] ?? 'none';
    expect(first.headers.get('content-security-policy')).toBe(
      `default-src 'none'; script-src 'self'; style-src 'self' 'nonce-${nonce}'; img-src 'self' blob: data:; font-src 'self'; ` +
        "connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; object-src 'none'",
    );
    expect(await second.text()).not.toContain(nonce);
    expect(text).not.toContain('x-whelpside');
    expect(text.replace(/<meta property[^>]*>/, '')).toBe(PAGE);
  });

  test('a file comes with its type and the same headers', async () => {
    const answer = await serve('/assets/app-1f.js');
    expect(await answer.text()).toBe(SCRIPT);
    expect(answer.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('content-security-policy')).toContain("style-src 'self';");
  });

  test.each([
    ['/nothing', 404],
    ['/assets/../../outside.txt', 404],
    ['/%2e%2e/outside.txt', 404],
    ['/..%2foutside.txt', 404],
    ['/..%5coutside.txt', 404],
    ['/link.txt', 404],
    ['/assets/app-1f.js.map', 404],
    ['/assets/app-1f.js?x', 404],
    ['/__proto__', 404],
    ['/paper/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA', 404],
    ['app://other/', 403],
    ['app://whelpside.evil/', 403],
    ['app://whelpside:1/', 403],
  ])('%s is %i', async (path, status) => {
    const answer = await serve(path);
    expect(answer.status).toBe(status);
    expect(await answer.text()).toBe('');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
  });

  test('only reading is answered', async () => {
    expect((await serve('/', { method: 'POST', body: '{}' })).status).toBe(405);
  });

  test('what would go over a network is cancelled', () => {
    const [name = '', handler] = [...session.handlers].find(([key]) => key.startsWith('onBeforeRequest')) ?? [];
    expect(name).toBe('onBeforeRequest http://*/* https://*/* ws://*/* wss://*/* ftp://*/*');
    const answer = vi.fn();
    handler?.({ url: 'https://evil.example/' }, answer);
    expect(answer).toHaveBeenCalledExactlyOnceWith({ cancel: true });
  });
});

describe('checklist 13, 14, 15: going elsewhere', () => {
  const goes = (event: string, url: string): boolean => {
    const details = { url, preventDefault: vi.fn() };
    started().webContents.emit(event, details);
    return details.preventDefault.mock.calls.length === 0;
  };

  test.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('%s', (event) => {
    expect(goes(event, 'app://whelpside/#/litter/1')).toBe(true);
    for (const url of [
      'https://evil.example/',
      'http://127.0.0.1/',
      'file:///etc/passwd',
      'app://other/',
      'data:text/html,x',
      'javascript:1',
      'blob:x',
      'about:blank',
      '',
    ]) {
      expect(goes(event, url), url).toBe(false);
    }
  });

  test('no window is opened, not even for our own address', () => {
    for (const url of ['https://evil.example/', 'app://whelpside/', 'about:blank']) {
      expect(started().webContents.openHandler?.({ url })).toEqual({ action: 'deny' });
    }
  });

  test('only what the page made itself is saved', () => {
    const saves = (url: string): boolean => {
      const event = { preventDefault: vi.fn() };
      session.emit('will-download', event, { getURL: () => url });
      return event.preventDefault.mock.calls.length === 0;
    };
    expect(saves('blob:app://whelpside/0b1e')).toBe(true);
    for (const url of ['blob:https://evil.example/1', 'https://evil.example/a.exe', 'app://whelpside/a', 'data:text/plain,x']) {
      expect(saves(url), url).toBe(false);
    }
  });

  test('the system is never asked to open an address', () => {
    const sources = ['desktop', 'window', 'navigation', 'menu', 'ipc', 'paper', 'devices', 'protocol', 'permissions', 'main'];
    for (const name of sources) {
      const text = readFileSync(new URL(`../../../main/electron/${name}.ts`, import.meta.url), 'utf8');
      expect(text, name).not.toMatch(/openExternal|openPath|\bshell\b|\bremote\b/);
    }
  });
});

describe('checklist 16 and 20: current, and nothing of it in the page', () => {
  const read = (path: string) => JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

  test('one Electron is named, to the last digit, of a major that is still supported, and it is the one installed', () => {
    const named: string = read('package.json').devDependencies.electron;
    expect(named).toMatch(/^\d+\.\d+\.\d+$/);
    expect(read('node_modules/electron/package.json').version).toBe(named);
    // The newest three majors are supported; 45 was the newest in November 2026 (Electron's timeline).
    expect(Number(named.split('.')[0])).toBeGreaterThanOrEqual(43);
  });

  test('the preload imports nothing but the bridge, and hands on no event and no channel', () => {
    const text = readFileSync(new URL('../../../main/preload/preload.ts', import.meta.url), 'utf8');
    expect(/import \{([^}]*)\} from 'electron'/.exec(text)?.[1]?.replace(/\s/g, '')).toBe(
      'contextBridge,typeIpcRendererEvent,ipcRenderer',
    );
    expect(text.match(/exposeInMainWorld/g)).toHaveLength(1);
    expect(text).not.toMatch(/exposeInMainWorld\([^,]+, *ipcRenderer|\bshell\b|\bwebFrame\b|process\./);
  });

  test('a file that is dropped on the window goes nowhere', () => {
    const details = { url: 'file:///home/her/letter.html', preventDefault: vi.fn() };
    started().webContents.emit('will-navigate', details);
    expect(details.preventDefault).toHaveBeenCalledOnce();
    expect(started().options['webPreferences']).toMatchObject({ navigateOnDragDrop: false });
  });
});

describe('checklist 17: who calls', () => {
  const callAs = async (frame: { url: string; parent: unknown } | null, name: unknown = 'litter.all') => {
    const handler = electron.ipcMain.handlers.get('whelpside:call');
    return handler?.({ senderFrame: frame }, name, {});
  };

  test('there is one channel', () => {
    expect([...electron.ipcMain.handlers.keys()]).toEqual(['whelpside:call']);
  });

  test('the top frame of our page is answered', async () => {
    expect(await callAs({ url: 'app://whelpside/#/x', parent: null })).toMatchObject({ ok: true });
  });

  test.each([
    ['a frame inside our page', { url: 'app://whelpside/', parent: {} }],
    ['another page', { url: 'https://evil.example/', parent: null }],
    ['another host of the scheme', { url: 'app://other/', parent: null }],
    ['a look-alike', { url: 'app://whelpside.evil/', parent: null }],
    ['a file', { url: 'file:///app://whelpside/', parent: null }],
    ['a page of text', { url: 'data:text/html,app://whelpside/', parent: null }],
    ['a page with no address', { url: '', parent: null }],
    ['a frame that is gone', null],
  ])('%s is refused', async (_what, frame) => {
    expect(await callAs(frame)).toEqual({ ok: false, error: { code: 'forbidden', message: 'not asked by the window' } });
  });

  test.each([
    ['a number', 7],
    ['a list', ['litter.all']],
    ['nothing', null],
  ])('a name that is %s', async (_what, name) => {
    expect(await callAs({ url: 'app://whelpside/', parent: null }, name)).toMatchObject({
      ok: false,
      error: { code: 'unknown-operation' },
    });
  });

  test('what changed is told to every window', async () => {
    const before = started().webContents.sent.length;
    await electron.ipcRenderer.invoke('whelpside:call', 'records.backUp', {});
    expect(started().webContents.sent.slice(before)).toEqual([['whelpside:changed', ['records']]]);
  });
});

describe('the scale', () => {
  const choose = async (event: string, ...args: unknown[]): Promise<string> => {
    const preventDefault = vi.fn();
    const chosen = await new Promise<string>((resolve) => session.emit(event, { preventDefault }, ...args, resolve));
    expect(preventDefault).toHaveBeenCalledOnce();
    return chosen;
  };
  const frame = { url: 'app://whelpside/', parent: null };
  const scale = { deviceId: '1', name: 'Kitchen scale' };

  test('none, one, and one of two', async () => {
    expect(await choose('select-hid-device', { frame, deviceList: [] })).toBe('');
    expect(await choose('select-hid-device', { frame, deviceList: [scale, scale] })).toBe('1');
    expect(electron.dialog.boxes).toEqual([]);
    electron.dialog.response = 1;
    expect(await choose('select-hid-device', { frame, deviceList: [scale, { deviceId: '2', name: '' }] })).toBe('2');
    expect(electron.dialog.boxes.at(-1)).toMatchObject({ buttons: ['Kitchen scale', '2', 'Cancel'], cancelId: 2 });
    electron.dialog.response = 2;
    expect(
      await choose(
        'select-serial-port',
        [
          { portId: 'a', portName: 'COM3' },
          { portId: 'b', portName: 'COM4' },
        ],
        { mainFrame: frame },
      ),
    ).toBe('');
  });

  test('a stranger gets none', async () => {
    expect(
      await choose('select-hid-device', { frame: { url: 'https://evil.example/', parent: null }, deviceList: [scale] }),
    ).toBe('');
    expect(await choose('select-hid-device', { frame: null, deviceList: [scale] })).toBe('');
    const contents = { mainFrame: { url: 'https://evil.example/', parent: null } };
    expect(await choose('select-serial-port', [{ portId: 'a', portName: 'COM3' }], contents)).toBe('');
  });
});

describe('the window', () => {
  test('it shows once its page is drawn', () => {
    expect(started().options).toMatchObject({ show: false, width: 1280, height: 860, title: 'Whelpside' });
    expect(started().shown).toBe(true);
  });

  test('a second start brings it to the front', () => {
    started().minimised = true;
    electron.app.emit('second-instance');
    expect(started().minimised).toBe(false);
    expect(started().focusedOnce).toBe(true);
  });

  test('it keeps its place when it closes; a Mac opens it there again', async () => {
    started().bounds = { x: 100, y: 50, width: 1000, height: 800 };
    started().maximised = true;
    started().emit('close');
    started().emit('closed');
    started().destroy();
    expect(JSON.parse(readFileSync(join(data, 'window.json'), 'utf8'))).toEqual({
      x: 100,
      y: 50,
      width: 1000,
      height: 800,
      maximised: true,
    });
    electron.app.emit('activate');
    const again = electron.BrowserWindow.all.at(-1);
    expect(again).not.toBe(started());
    expect(again?.options).toMatchObject({ x: 100, y: 50, width: 1000, height: 800 });
    await vi.waitFor(() => expect(again?.maximised).toBe(true));
    electron.app.emit('activate');
    expect(electron.BrowserWindow.all.at(-1)).toBe(again);
  });
});

describe('checklist 19: the fuses of the package', () => {
  const text = readFileSync(new URL('../../../electron-builder.yml', import.meta.url), 'utf8');
  test.each([
    ['runAsNode', 'false'],
    ['enableNodeOptionsEnvironmentVariable', 'false'],
    ['enableNodeCliInspectArguments', 'false'],
    ['enableEmbeddedAsarIntegrityValidation', 'true'],
    ['onlyLoadAppFromAsar', 'true'],
    ['grantFileProtocolExtraPrivileges', 'false'],
  ])('%s: %s', (fuse, value) => {
    const section = /^electronFuses:\n((?: +.*\n)+)/m.exec(text)?.[1] ?? '';
    expect(section.split('\n').map((line) => line.trim())).toContain(`${fuse}: ${value}`);
  });
});

describe('folders', () => {
  const ask = () => electron.ipcRenderer.invoke('whelpside:call', 'records.chooseFolder', {});

  test("are chosen in the system's own dialog, and may not be chosen", async () => {
    electron.dialog.folder = '/media/stick';
    expect(await ask()).toMatchObject({ ok: true, value: { folder: '/media/stick' } });
    expect(electron.dialog.boxes.at(-1)).toEqual({ properties: ['openDirectory', 'createDirectory'] });
    electron.dialog.folder = null;
    expect(await ask()).toMatchObject({ ok: true, value: { folder: null } });
  });

  test('the window knows that there is a dialog', async () => {
    const status = await electron.ipcRenderer.invoke('whelpside:call', 'records.status', {});
    expect(status).toMatchObject({ ok: true, value: { canChooseFolder: true } });
  });
});

describe('other starts', () => {
  const program = { now, newId, paper: null, version: '0' };

  test('a damaged file opens the window, which names the ways on', async () => {
    const damaged = join(folder, 'damaged');
    mkdirSync(damaged);
    writeFileSync(join(damaged, 'whelpside.sqlite'), 'Dear diary, today it rained. '.repeat(40));
    vi.mocked(electron.app.exit).mockClear();
    await startDesktop({ ...options, args: { data: damaged, demo: true } });
    expect(electron.app.exit).not.toHaveBeenCalled();
    const answer = await electron.ipcRenderer.invoke('whelpside:call', 'records.rescue', {});
    expect(answer).toMatchObject({ ok: true, value: { rescue: { problem: 'damaged', backups: [] } } });
    expect(await electron.ipcRenderer.invoke('whelpside:call', 'litter.all', {})).toMatchObject({
      ok: false,
      error: { code: 'damaged' },
    });
  });

  test("one that says it is another program's, where hers lay, opens the window too", async () => {
    const hers = join(folder, 'hers');
    openProgram({ ...program, folder: hers }).close();
    const bytes = readFileSync(join(hers, 'whelpside.sqlite'));
    bytes.writeUInt32BE(1234, 68);
    writeFileSync(join(hers, 'whelpside.sqlite'), bytes);
    await startDesktop({ ...options, args: { data: hers, demo: false } });
    const answer = await electron.ipcRenderer.invoke('whelpside:call', 'records.rescue', {});
    expect(answer).toMatchObject({ ok: true, value: { rescue: { problem: 'foreign', readable: { litters: 0 } } } });
  });

  test('a mistake of the program is a sentence and a dated line, never a stack', async () => {
    const broken = join(folder, 'broken');
    await startDesktop({ ...options, windowFolder: join(folder, 'nowhere'), args: { data: broken, demo: false } }).catch(
      endInASentence,
    );
    const [, sentence = ''] = vi.mocked(electron.dialog.showErrorBox).mock.lastCall ?? [];
    expect(sentence).toMatch(/^Whelpside could not start: [^\n]+faults\.txt\.$/);
    expect(sentence).not.toMatch(/ENOENT|\bat /);
    expect(readFileSync(join(broken, 'faults.txt'), 'utf8')).toMatch(
      /^\d{4}-\d\d-\d\d \d\d:\d\d 0\.0\.0-test start: Error: ENOENT[^\n]*\n$/,
    );
    vi.mocked(electron.dialog.showErrorBox).mockClear();
    vi.mocked(electron.app.exit).mockClear();
  });

  test('a window whose process dies is loaded again, and given up in a sentence when it dies again and again', async () => {
    const lively = join(folder, 'lively');
    await startDesktop({ ...options, args: { data: lively, demo: false } });
    const window = electron.BrowserWindow.getAllWindows().at(-1) as electron.BrowserWindow;
    const die = () => window.webContents.emit('render-process-gone', {}, { reason: 'oom' });
    const loads = window.loaded.length;
    for (let n = 0; n < 3; n += 1) die();
    expect(window.loaded.length).toBe(loads + 3);
    expect(electron.dialog.showErrorBox).not.toHaveBeenCalled();
    die();
    expect(window.loaded.length).toBe(loads + 3);
    expect(electron.dialog.showErrorBox).toHaveBeenCalledExactlyOnceWith('Whelpside', expect.stringMatching(/is kept\./));
    expect(readFileSync(join(lively, 'faults.txt'), 'utf8').match(/window: Error: its process was gone: oom/g)).toHaveLength(4);
    vi.mocked(electron.dialog.showErrorBox).mockClear();
  });

  test('a second program on the same folder stops before it opens anything', async () => {
    const windows = electron.BrowserWindow.all.length;
    electron.order.length = 0;
    electron.app.isFirst = false;
    electron.app.quit = vi.fn();
    await startDesktop(options);
    electron.app.isFirst = true;
    expect(electron.app.quit).toHaveBeenCalledOnce();
    expect(electron.order).toEqual(['app.setPath', 'app.setPath', 'app.requestSingleInstanceLock']);
    expect(electron.BrowserWindow.all.length).toBe(windows);
  });

  test('a file of another program opens the window, which offers another folder, and is left as it is', async () => {
    const foreign = join(folder, 'foreign');
    mkdirSync(foreign);
    const bytes = Buffer.alloc(4096);
    bytes.write('SQLite format 3\0', 'latin1');
    bytes.writeUInt32BE(1234, 68);
    writeFileSync(join(foreign, 'whelpside.sqlite'), bytes);
    vi.mocked(electron.app.exit).mockClear();
    vi.mocked(electron.dialog.showErrorBox).mockClear();
    await startDesktop({ ...options, args: { data: foreign, demo: false } });
    const ask = (name: string, input: unknown) => electron.ipcRenderer.invoke('whelpside:call', name, input);
    expect(await ask('records.rescue', {})).toMatchObject({
      ok: true,
      value: { rescue: { problem: 'stranger', canChooseFolder: true, usualFolder: null } },
    });
    expect(await ask('litter.all', {})).toMatchObject({ ok: false, error: { code: 'damaged' } });
    electron.dialog.folder = join(folder, 'hers');
    expect(await ask('records.chooseFolder', {})).toMatchObject({ ok: true, value: { folder: join(folder, 'hers') } });
    electron.dialog.folder = null;
    expect(electron.dialog.showErrorBox).not.toHaveBeenCalled();
    expect(electron.app.exit).not.toHaveBeenCalled();
    expect(readFileSync(join(foreign, 'whelpside.sqlite')).equals(bytes)).toBe(true);
  });

  test('a folder that can not be made opens the window, and goes on when it is tried again', async () => {
    const barred = join(folder, 'barred');
    writeFileSync(barred, 'in the way');
    await startDesktop({ ...options, args: { data: barred, demo: true } });
    const ask = (name: string) => electron.ipcRenderer.invoke('whelpside:call', name, {});
    expect(await ask('records.rescue')).toMatchObject({ ok: true, value: { rescue: { problem: 'no-folder' } } });
    expect(await ask('records.tryAgain')).toMatchObject({ ok: true, value: { open: false } });
    rmSync(barred);
    expect(await ask('records.tryAgain')).toMatchObject({ ok: true, value: { open: true } });
    expect(await ask('litter.all')).toMatchObject({ ok: true });
  });
});
