/**
 * The built desktop program, started as she starts it. Runs where Electron's binary has been fetched and there is a
 * display (`npm start` fetches it); it is never fetched here.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ElectronApplication, _electron as electron, expect, type Page, test } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { electronBinary, noWindowBecause } from '../../build/electron.ts';
import { ROOT } from '../../build/root.ts';
import type { InputOf, OperationName, OutputOf } from '../../core/contract/operations.ts';
import type { Result } from '../../core/contract/result.ts';

const binary = electronBinary();
const isBuilt = existsSync(join(ROOT, 'out/main/main.mjs'));
const because =
  binary === null
    ? "Electron's binary is not here"
    : !isBuilt
      ? 'the program is not built'
      : noWindowBecause(process.platform, process.env, process.getuid?.());
if (because !== null) console.log(`The desktop window was not tested: ${because}.`);

interface Bridge {
  call(name: string, input: unknown): Promise<Result<unknown>>;
}

let folder = '';
let app: ElectronApplication;
let window: Page;
const complaints: string[] = [];

function launch(): Promise<ElectronApplication> {
  return electron.launch({ executablePath: binary ?? '', args: [ROOT, '--data', join(folder, 'data'), '--demo'] });
}

async function call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const result = await window.evaluate(
    ([n, i]) => (globalThis as unknown as { whelpside: Bridge }).whelpside.call(n as string, i),
    [name, input] as const,
  );
  if (!result.ok) throw new Error(`${name}: ${result.error.message}`);
  return result.value as OutputOf<N>;
}

test.describe('the desktop program', () => {
  test.skip(because !== null, because ?? '');

  test.beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'whelpside-desktop-'));
    app = await launch();
    window = await app.firstWindow();
    window.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    window.on('pageerror', (error) => complaints.push(error.message));
    await window.reload();
  });
  test.afterAll(async () => {
    await app?.close();
    if (folder !== '') rmSync(folder, { recursive: true, force: true });
  });

  test('shows the window from its own scheme, with the demo, and nothing complains', async () => {
    expect(window.url()).toMatch(/^app:\/\/whelpside\//);
    const { litters } = await call('litter.all', {});
    await expect(window.locator('#window')).toContainText(litters[0]?.litter.dam ?? 'no dam');
    expect(await window.evaluate(() => globalThis.isSecureContext)).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('gives the page the bridge and nothing of Node or Electron', async () => {
    const seen = await window.evaluate(() => {
      const all = globalThis as unknown as Record<string, unknown>;
      const bridge = all['whelpside'] as object;
      return {
        bridge: Object.keys(bridge).sort(),
        others: ['require', 'process', 'module', 'Buffer', 'ipcRenderer'].filter((n) => n in all),
      };
    });
    expect(seen).toEqual({ bridge: ['call', 'onChanged'], others: [] });
  });

  test('opens no window, goes nowhere, asks no network, and gets no leave but for the scale', async () => {
    const tried = await window.evaluate(async () => {
      const opened = globalThis.open('app://whelpside/');
      const fetched = await fetch('https://example.com/').then(
        () => 'fetched',
        () => 'refused',
      );
      const { state } = await navigator.permissions.query({ name: 'geolocation' });
      globalThis.location.href = 'https://example.com/';
      return { opened: opened === null, fetched, state };
    });
    expect(tried).toEqual({ opened: true, fetched: 'refused', state: 'denied' });
    await window.waitForTimeout(500);
    expect(window.url()).toMatch(/^app:\/\/whelpside\//);
    expect(app.windows()).toHaveLength(1);
  });

  test('prints a plan on three sheets', async () => {
    const { litters } = await call('litter.all', {});
    const puppyId = litters[0]?.puppies[0]?.id ?? '';
    const today = new Date();
    const on = [today.getFullYear(), today.getMonth() + 1, today.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
    const saved = await call('records.savePaper', { of: { kind: 'puppy', puppyId, on }, paper: 'a4' });
    const bytes = readFileSync(join(saved.folder, saved.file));
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    expect(pdf.numPages).toBe(3);
    expect(await (await pdf.getPage(1)).getStructTree()).not.toBeNull();
  });

  test('a second start ends by itself and leaves the first alone', async () => {
    const second = await launch().catch(() => null);
    if (second !== null) await second.waitForEvent('close');
    expect((await call('records.status', {})).demo).toBe(true);
  });

  test('what was done is there after a new start', async () => {
    const { house } = await call('people.house', {});
    await call('people.setHouse', { change: { ...house, breederName: 'Somebody Else' } });
    await app.close();
    app = await launch();
    window = await app.firstWindow();
    expect((await call('people.house', {})).house.breederName).toBe('Somebody Else');
    expect(existsSync(join(folder, 'data/window.json'))).toBe(true);
  });
});
