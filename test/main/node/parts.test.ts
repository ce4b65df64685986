/** Parts of the browser host by themselves: arguments, folders, browsers, secrets, files, the page and the slots. */

import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { parseLocalTime } from '../../../core/calendar/clock.ts';
import type { PlanDocument } from '../../../core/homing/document.ts';
import { idSchema } from '../../../core/units/fields.ts';
import { newId, now } from '../../../main/hosting/clock.ts';
import { readWindowFiles } from '../../../main/hosting/files.ts';
import { dataFolder, houseOf } from '../../../main/hosting/folder.ts';
import { windowPage } from '../../../main/hosting/page.ts';
import { printRoute, requireWhole } from '../../../main/hosting/printed.ts';
import { PaperSlots } from '../../../main/hosting/slots.ts';
import { readArguments } from '../../../main/node/arguments.ts';
import { findBrowser } from '../../../main/node/find-browser.ts';
import { Letter, openerFor } from '../../../main/node/open-browser.ts';
import { hasSession, isSecret, newSecrets } from '../../../main/node/secrets.ts';
import { sentenceFor } from '../../../main/service/refusals.ts';
import { StoreError } from '../../../main/store/fault.ts';
import { makeWindowFolder, PAGE } from './serving.ts';

describe('arguments', () => {
  test('none, all, and a relative folder', () => {
    expect(readArguments([], '/from')).toEqual({ data: null, demo: false, port: 0, open: true });
    expect(readArguments(['--data', '/a', '--demo', '--port', '8123', '--no-open'], '/from')).toEqual({
      data: '/a',
      demo: true,
      port: 8123,
      open: false,
    });
    expect(readArguments(['--data=litters', '--port=0'], '/from')).toMatchObject({ data: '/from/litters', port: 0 });
  });

  test.each([
    [['--port', 'x']],
    [['--port', '65536']],
    [['--port', '-1']],
    [['--port', '1e3']],
    [['--port=']],
    [['--data=']],
    [['--data']],
    [['--unknown']],
    [['a-word']],
    [['--demo=yes']],
  ])('%j is refused in words', (args) => {
    expect(readArguments(args, '/from')).toMatch(/\w+ .*\w/);
  });
});

describe('the data folder', () => {
  test.each<[NodeJS.Platform, Record<string, string>, string, string]>([
    ['linux', {}, '/home/a', '/home/a/.local/share/whelpside'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/home/a', '/data/whelpside'],
    ['linux', { XDG_DATA_HOME: '' }, '/home/a', '/home/a/.local/share/whelpside'],
    ['linux', { XDG_DATA_HOME: 'relative' }, '/home/a', '/home/a/.local/share/whelpside'],
    ['darwin', { XDG_DATA_HOME: '/data' }, '/Users/a', '/Users/a/Library/Application Support/Whelpside'],
    ['win32', { APPDATA: 'C:\\Users\\a\\AppData\\Roaming' }, 'C:\\Users\\a', 'C:\\Users\\a\\AppData\\Roaming\\Whelpside'],
    ['win32', {}, 'C:\\Users\\a', 'C:\\Users\\a\\AppData\\Roaming\\Whelpside'],
  ])('on %s with %j', (platform, env, home, folder) => {
    expect(dataFolder({ platform, env, home })).toBe(folder);
  });
});

describe('a house that is kept in another folder', () => {
  const home = mkdtempSync(join(tmpdir(), 'whelpside-home-'));
  afterAll(() => rmSync(home, { recursive: true, force: true }));
  const around = { platform: process.platform, env: {}, home };

  test('is noted, found at the next start and must be there; the usual one takes the note away', () => {
    const usual = dataFolder(around);
    const elsewhere = join(home, 'stick');
    expect(houseOf(null, around)).toMatchObject({ folder: usual, mustExist: false });
    expect(houseOf(null, around).onMoved(elsewhere)).toBe(true);
    expect(houseOf(null, around)).toMatchObject({ folder: elsewhere, mustExist: true, usualFolder: usual });
    expect(houseOf(null, around).onMoved(usual)).toBe(true);
    expect(houseOf(null, around)).toMatchObject({ folder: usual, mustExist: false });
  });

  test('a start that is told its folder notes nothing, and says so', () => {
    expect(houseOf(join(home, 'told'), around).onMoved(join(home, 'stick'))).toBe(false);
    expect(houseOf(null, around).mustExist).toBe(false);
  });

  test('a note that can not be written is said', () => {
    const dark = { ...around, home: join(home, 'file', 'in', 'the', 'way') };
    writeFileSync(join(home, 'file'), '');
    expect(houseOf(null, dark).onMoved(join(home, 'stick'))).toBe(false);
  });
});

describe('opening the browser', () => {
  const address = '/run/whelpside-opens-1/whelpside.html';
  test('it is given a file, and the key stands only in that, for its owner alone, until it is used', () => {
    const place = mkdtempSync(join(tmpdir(), 'whelpside-letter-'));
    const letter = new Letter('http://127.0.0.1:1/enter#a-_9', place);
    expect(letter.file).not.toContain('a-_9');
    expect(readFileSync(letter.file, 'utf8')).toContain('0;url=http://127.0.0.1:1/enter#a-_9"');
    if (process.platform !== 'win32') {
      expect(statSync(letter.file).mode & 0o077).toBe(0);
      expect(statSync(join(letter.file, '..')).mode & 0o077).toBe(0);
    }
    letter.remove();
    expect(readdirSync(place)).toEqual([]);
    rmSync(place, { recursive: true });
  });

  test('each platform has its opener; no display, none', () => {
    expect(openerFor('darwin', {}, address)).toEqual({ command: 'open', args: [address] });
    expect(openerFor('linux', { DISPLAY: ':0' }, address)).toEqual({ command: 'xdg-open', args: [address] });
    expect(openerFor('linux', { WAYLAND_DISPLAY: 'wayland-0' }, address)).toEqual({ command: 'xdg-open', args: [address] });
    expect(openerFor('linux', { DISPLAY: '' }, address)).toBeNull();
    expect(openerFor('win32', {}, address)).toEqual({ command: 'cmd', args: ['/d', '/c', 'start', '""', `"${address}"`] });
  });
});

describe('finding a browser for paper', () => {
  const machine = (platform: NodeJS.Platform, env: Record<string, string>, ...there: string[]) =>
    findBrowser({ platform, env, runs: (path) => there.includes(path) });

  test('the named one goes first, and a wrong name is not replaced in silence', () => {
    expect(machine('linux', { CHROMIUM_PATH: '/own', PATH: '/bin' }, '/own', '/bin/chromium')).toBe('/own');
    expect(machine('linux', { CHROMIUM_PATH: '/wrong', PATH: '/bin' }, '/bin/chromium')).toBeNull();
  });

  test('then the path, then the places of the platform', () => {
    expect(machine('linux', { PATH: '/a:/b' }, '/b/google-chrome', '/b/chromium')).toBe('/b/chromium');
    expect(machine('linux', { PATH: '/a::/b' }, '/b/microsoft-edge')).toBe('/b/microsoft-edge');
    expect(machine('linux', { PATH: '/a' }, '/b/chromium')).toBeNull();
    expect(machine('linux', {})).toBeNull();
    const edge = '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge';
    expect(machine('darwin', {}, edge)).toBe(edge);
    const chrome = join('C:\\Programs', 'Google', 'Chrome', 'Application', 'chrome.exe');
    expect(machine('win32', { PROGRAMFILES: 'C:\\Programs' }, chrome)).toBe(chrome);
  });
});

describe('secrets', () => {
  test('256 bits each, never the same', () => {
    const all = [newSecrets(), newSecrets()].flatMap((s) => [s.key, s.session, s.header]);
    for (const secret of all) expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
    expect(new Set(all).size).toBe(6);
  });

  test('only the very text is the secret', () => {
    const { key } = newSecrets();
    expect(isSecret(key, key)).toBe(true);
    for (const wrong of ['', null, undefined, key.slice(1), `${key} `, key.toUpperCase()])
      expect(isSecret(wrong, key)).toBe(false);
  });

  test('the session is found by name and port', () => {
    expect(hasSession('a=1; whelpside-8=abc; b=2', 8, 'abc')).toBe(true);
    expect(hasSession('whelpside-8=old; whelpside-8=abc', 8, 'abc')).toBe(true);
    for (const header of [
      undefined,
      '',
      'whelpside-9=abc',
      'whelpside-8=ab',
      'whelpside-8',
      'whelpside-8="abc"',
      'x-whelpside-8=abc',
    ]) {
      expect(hasSession(header, 8, 'abc'), header).toBe(false);
    }
  });
});

describe('the page and its files', () => {
  test('only what the window uses is read; links lead nowhere', () => {
    const folder = makeWindowFolder();
    const files = readWindowFiles(join(folder, 'window'));
    expect([...files.others.keys()].sort()).toEqual([
      '/assets/app-1f.css',
      '/assets/app-1f.js',
      '/assets/face-1f.woff2',
      '/mark.svg',
    ]);
    expect(files.others.get('/assets/face-1f.woff2')?.bytes.at(-1)).toBe(0xff);
    rmSync(folder, { recursive: true });
    expect(() => readWindowFiles(join(folder, 'window'))).toThrow(/ENOENT/);
  });

  test('the tags go first into the head', () => {
    expect(windowPage(PAGE, 'n-1')).toBe(
      '<!doctype html><html lang="en"><head><meta property="csp-nonce" nonce="n-1">' +
        '<title>Window</title></head><body>the window</body></html>',
    );
    expect(windowPage('<HEAD lang="x"></HEAD>', 'n')).toBe('<HEAD lang="x"><meta property="csp-nonce" nonce="n"></HEAD>');
    expect(() => windowPage('<header></header>', 'n')).toThrow('the page has no head');
    expect(() => windowPage(PAGE, '"><script>')).toThrow(RangeError);
    expect(() => windowPage(PAGE, '')).toThrow(RangeError);
  });
});

describe('slots', () => {
  const document = { title: 'a plan' } as PlanDocument;

  test('a document is taken once, within a minute, by its own path only', () => {
    let clock = 0;
    const slots = new PaperSlots(() => clock);
    const [first, second, third] = [slots.put(document), slots.put(document), slots.put(document)];
    expect(first).toMatch(/^[A-Za-z0-9_-]{32}$/);
    expect(slots.take(first)).toBeNull();
    expect(slots.take(`/paper/${first}/`)).toBeNull();
    expect(slots.take(`/paper/${first}`)).toBe(document);
    expect(slots.take(`/paper/${first}`)).toBeNull();
    slots.drop(third);
    expect(slots.take(`/paper/${third}`)).toBeNull();
    clock = 59_999;
    expect(slots.take(`/paper/${second}`)).toBe(document);
    const fourth = slots.put(document);
    clock += 60_000;
    expect(slots.take(`/paper/${fourth}`)).toBeNull();
  });

  test('the route names slot and paper', () => {
    expect(printRoute('abc', 'letter')).toBe('#/print/slot/abc?paper=letter');
  });

  test('a clipped sheet is refused, and so is a page that is not ready', () => {
    expect(() => requireWhole('true')).not.toThrow();
    expect(() => requireWhole('clipped')).toThrow(
      expect.objectContaining({ error: { code: 'refused', message: 'a sheet would be clipped' } }),
    );
    for (const said of [null, '', 'false'])
      expect(() => requireWhole(said)).toThrow(expect.objectContaining({ error: expect.objectContaining({ code: 'internal' }) }));
  });
});

describe('clock and ids', () => {
  test('local time and instant are of one moment', () => {
    const { instant, local } = now();
    expect(parseLocalTime(local)).toBe(local);
    expect(Math.floor(new Date(local).getTime() / 60_000)).toBe(Math.floor(instant / 60_000));
  });

  test('ids fit the schema', () => {
    expect(idSchema.parse(newId())).not.toBe(newId());
  });
});

test.each(['damaged', 'newer', 'foreign', 'locked', 'read-only', 'disk-full', 'no-folder'] as const)(
  '“%s” is said in plain words',
  (code) => {
    expect(sentenceFor(new StoreError(code, 'SQLITE_SOMETHING'), '/data')).toMatch(/^[A-Z][a-zA-Z ';,.]+\. \(\/data\)$/);
  },
);

test('another error has no sentence: it is a mistake of the program', () => {
  expect(sentenceFor(new Error('x'), '/data')).toBeNull();
});
