/** `npm start` from its second line on: the program that is built, opened through the browser host, and ended. */

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { make } from '../../build/make.ts';
import { enter } from '../main/node/client.ts';
import { onlyWhere } from '../only-where.ts';

const script = fileURLToPath(new URL('../../build/start.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'start-'));
let child: ChildProcess | null = null;

// Not SIGKILL, which would leave the host behind.
afterEach(() => child?.kill('SIGTERM'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Started {
  address: string;
  output: () => string;
  ended: Promise<number | null>;
}

/** Starts it as on a machine without a display and waits for its address. */
function start(...args: string[]): Promise<Started> {
  const env: NodeJS.ProcessEnv = { ...process.env, INIT_CWD: folder };
  for (const name of ['DISPLAY', 'WAYLAND_DISPLAY', 'npm_lifecycle_event', 'NODE_ENV']) delete env[name];
  const program = spawn(process.execPath, [script, '--no-open', ...args], { env });
  child = program;
  let output = '';
  const ended = new Promise<number | null>((done) => program.on('close', done));
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      output += String(chunk);
      const address = /http:\/\/127\.0\.0\.1:\d+\S*/.exec(output)?.[0];
      if (address !== undefined) resolve({ address, output: () => output, ended });
    };
    program.stdout.on('data', hear);
    program.stderr.on('data', hear);
    void ended.then((code) => reject(new Error(`ended with ${code}: ${output}`)));
  });
}

describe('npm start', () => {
  beforeAll(make, 120_000);

  it('opens through the browser host, hands out the window, and ends cleanly when it is stopped', async () => {
    const { address, output, ended } = await start('--browser', '--data', 'house');
    const { cookie } = await enter(address);
    const page = await fetch(new URL('/', address), { headers: { cookie } });
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Whelpside</title>');
    expect(output()).not.toContain('Building');
    child?.kill('SIGTERM');
    expect(await ended).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  const canBeWithoutDisplay = onlyWhere(process.platform === 'linux', 'only Linux may lack a display');
  it.runIf(canBeWithoutDisplay)('says in one line why it opens in the browser where there is no display', async () => {
    const { output, ended } = await start('--data', 'house');
    expect(output()).toContain('No desktop window here (there is no display): opening in the browser.');
    child?.kill('SIGINT');
    expect(await ended).toBe(0);
  });

  it('says what it does not understand, and does nothing', () => {
    const { status, stderr, stdout } = spawnSync(process.execPath, [script, '--colour', 'red'], { encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr).toContain("Unknown option '--colour'");
    expect(stdout).toBe('');
  });
});
