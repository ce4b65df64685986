/** Each test has a house of its own: a fresh data folder, the real browser host, a real browser. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { test as base, expect, type Page } from '@playwright/test';

export const HOST = fileURLToPath(new URL('../../out/host/host.mjs', import.meta.url));

export interface House {
  readonly folder: string;
  address: string;
  /** Ends the host as a power cut would: no warning, no clean-up. */
  kill(): Promise<void>;
  /** Ends the host in order. */
  stop(): Promise<void>;
  start(): Promise<string>;
}

export async function startHost(file: string, folder: string): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(process.execPath, [file, '--data', folder, '--no-open'], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  const address = await new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(said);
      if (found !== null) resolve(found[0]);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('exit', (code) => reject(new Error(`the host ended with ${code}: ${said}`)));
  });
  return { child, address };
}

export async function ended(child: ChildProcess, signal: 'SIGTERM' | 'SIGKILL'): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill(signal);
  await gone;
}

/** This morning at ten past eight, by the browser's clock, so that it is the morning's weigh-in whenever the tests run. */
export function thisMorning(): Date {
  const morning = new Date();
  morning.setHours(8, 10, 0, 0);
  return morning;
}

export const test = base.extend<{ hostFile: string; house: House; quiet: string[] }>({
  /** The host that is started; another build of it for a test that asks. */
  hostFile: [HOST, { option: true }],
  house: async ({ page, hostFile }, use) => {
    const folder = await mkdtemp(join(tmpdir(), 'whelpside-'));
    let running = await startHost(hostFile, folder);
    const house: House = {
      folder,
      address: running.address,
      kill: () => ended(running.child, 'SIGKILL'),
      stop: () => ended(running.child, 'SIGTERM'),
      async start() {
        running = await startHost(hostFile, folder);
        house.address = running.address;
        return running.address;
      },
    };
    await use(house);
    // The window goes before its host: else it may still be asking, and complains of the lost connection.
    if (!page.isClosed()) await page.goto('about:blank');
    await ended(running.child, 'SIGTERM');
    await rm(folder, { recursive: true, force: true });
  },
  /** What the browser complained of; a test that leaves something in it fails. */
  quiet: [
    async ({ page }, use) => {
      const complaints: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
      });
      page.on('pageerror', (error) => complaints.push(String(error)));
      page.on('request', (request) => {
        const url = new URL(request.url());
        if (!['127.0.0.1', 'localhost'].includes(url.hostname) && !['data:', 'blob:'].includes(url.protocol)) {
          complaints.push(`asked for ${request.url()}`);
        }
      });
      await use(complaints);
      expect(complaints, 'the browser complained').toEqual([]);
    },
    { auto: true },
  ],
});

/** Opens the window on the house, at its first page. */
export async function open(page: Page, house: House): Promise<void> {
  await page.clock.setFixedTime(thisMorning());
  await page.goto(house.address);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

/** Opens the window with the invented litters in it, as one click does. */
export async function openDemo(page: Page, house: House): Promise<void> {
  await open(page, house);
  await page.getByRole('button', { name: 'Look round three invented litters' }).click();
  await expect(page.getByText('These are invented litters')).toBeVisible();
}

export { expect };
