/** The browser host as a process of its own: what it prints, how it ends. Needs the built program. */

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { onlyWhere } from '../../only-where.ts';
import { type Entered, enter } from './client.ts';

const HOST = fileURLToPath(new URL('../../../out/host/host.mjs', import.meta.url));
const isBuilt = existsSync(HOST) && existsSync(fileURLToPath(new URL('../../../out/renderer/index.html', import.meta.url)));

const folder = mkdtempSync(join(tmpdir(), 'whelpside-host-'));
const running: ChildProcess[] = [];
afterAll(() => {
  for (const child of running) if (child.exitCode === null) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

interface Run {
  readonly child: ChildProcess;
  /** Resolves with what was printed once it holds the text. */
  said(text: string): Promise<string>;
  readonly ended: Promise<{ code: number | null; out: string; err: string }>;
}

function run(...args: string[]): Run {
  const child = spawn(process.execPath, [HOST, '--no-open', ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  running.push(child);
  const heard = { out: '', err: '' };
  child.stdout.on('data', (part) => {
    heard.out += String(part);
  });
  child.stderr.on('data', (part) => {
    heard.err += String(part);
  });
  const ended = new Promise<{ code: number | null; out: string; err: string }>((resolve) => {
    child.once('close', (code) => resolve({ code, ...heard }));
  });
  const said = async (text: string): Promise<string> => {
    while (!heard.out.includes(text)) {
      const first = await Promise.race([ended, new Promise((next) => child.stdout.once('data', next))]);
      if (typeof first === 'object' && first !== null && 'code' in first) throw new Error(`it ended: ${heard.err}`);
    }
    return heard.out;
  };
  return { child, said, ended };
}

async function asked({ origin, headers }: Entered, name: string): Promise<unknown> {
  return await (await fetch(`${origin}/call/${name}`, { method: 'POST', headers, body: '{}' })).json();
}

const portIn = (out: string): number =>
  Number(/^Whelpside is open at http:\/\/127\.0\.0\.1:(\d+)\/enter#[A-Za-z0-9_-]{43}$/m.exec(out)?.[1]);

describe.runIf(onlyWhere(isBuilt, 'the browser host is not built; "npm test" builds it first'))('the host', () => {
  test('prints its address, holds its folder alone, ends on a signal, and what it wrote is there again', async () => {
    const data = join(folder, 'data');
    const first = run('--data', data, '--demo');
    const out = await first.said('\n');
    const port = portIn(out);
    expect(port).toBeGreaterThan(0);

    const second = run('--data', data);
    expect(await second.said('is open at')).toMatch(
      new RegExp(
        `^Whelpside is already open on this folder. Use that window, or close it first. \\(${data}\\) [^\\n]+\\nWhelpside is`,
      ),
    );
    const barred = await enter((await second.said('is open at')).trim().split(' ').at(-1) ?? '');
    expect(await asked(barred, 'litter.all')).toMatchObject({ ok: false, error: { code: 'busy' } });
    expect(await asked(barred, 'records.rescue')).toMatchObject({ ok: true, value: { rescue: { problem: 'locked' } } });
    expect(await asked(barred, 'records.tryAgain')).toMatchObject({ ok: true, value: { open: false } });

    const third = await run('--data', join(folder, 'other'), '--port', String(port)).ended;
    expect(third).toMatchObject({ code: 1, out: '', err: `Port ${port} is taken. Leave --port out to get a free one.\n` });

    const address = out.trim().split(' ').at(-1) ?? '';
    await enter(address);
    await expect(enter(address), 'a key is good once').rejects.toThrow('403');
    await enter(/^For another window: (\S+)$/m.exec(await first.said('For another window'))?.[1] ?? '');

    first.child.kill('SIGTERM');
    expect((await first.ended).code).toBe(0);
    expect(existsSync(join(data, 'whelpside.sqlite-wal'))).toBe(false);

    expect(await asked(barred, 'records.tryAgain'), 'the first has gone').toMatchObject({ ok: true, value: { open: true } });
    expect(await asked(barred, 'litter.all')).toMatchObject({ ok: true });
    second.child.kill('SIGTERM');
    expect(await second.ended).toMatchObject({ code: 0, err: '' });

    const again = run('--data', data, '--demo');
    await again.said('\n');
    again.child.kill('SIGINT');
    expect(await again.ended).toMatchObject({ code: 0, err: '' });
  });

  test('takes the port of last time again, and a free one when somebody else has it', async () => {
    const data = join(folder, 'port');
    const first = run('--data', data);
    const port = portIn(await first.said('\n'));
    first.child.kill('SIGKILL');
    await first.ended;
    const again = run('--data', data);
    expect(portIn(await again.said('\n'))).toBe(port);
    again.child.kill('SIGTERM');
    await again.ended;

    const squatter = createServer().listen(port, '127.0.0.1');
    await once(squatter, 'listening');
    const other = run('--data', data);
    const elsewhere = portIn(await other.said('\n'));
    expect(elsewhere).toBeGreaterThan(0);
    expect(elsewhere).not.toBe(port);
    other.child.kill('SIGTERM');
    await other.ended;
    squatter.close();

    writeFileSync(join(data, 'whelpside.port'), '80');
    const odd = run('--data', data);
    expect(portIn(await odd.said('\n'))).toBeGreaterThan(1023);
    odd.child.kill('SIGTERM');
    await odd.ended;
  });

  test('an open stream does not keep it from ending', async () => {
    const host = run('--data', join(folder, 'stream'));
    const address = (await host.said('\n')).trim().split(' ').at(-1) ?? '';
    const { headers } = await enter(address);
    const stream = await fetch(new URL('/changed', address), { headers });
    expect(stream.status).toBe(200);
    host.child.kill('SIGTERM');
    expect((await host.ended).code).toBe(0);
    await stream.text().catch(() => '');
  });

  test("another program's database is refused in one sentence and left as it is; the window offers another folder", async () => {
    const data = join(folder, 'foreign');
    mkdirSync(data);
    const database = Buffer.alloc(4096);
    database.write('SQLite format 3\0', 'latin1');
    writeFileSync(join(data, 'whelpside.sqlite'), database);
    const host = run('--data', data);
    const out = await host.said('is open at');
    expect(out).toMatch(/^The data file [^\n]+\. \([^\n]+\) Nothing was changed; [^\n]+\nWhelpside is open at /);
    const barred = await enter(out.trim().split(' ').at(-1) ?? '');
    expect(await asked(barred, 'records.rescue')).toMatchObject({ ok: true, value: { rescue: { problem: 'stranger' } } });
    expect(await asked(barred, 'records.beginAnew')).toMatchObject({ ok: false, error: { code: 'refused' } });
    host.child.kill('SIGTERM');
    expect(await host.ended).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(join(data, 'whelpside.sqlite')).equals(database)).toBe(true);
  });

  test('a damaged file is said, left as it is, and the window still opens, to name the ways on', async () => {
    const data = join(folder, 'damaged');
    mkdirSync(data);
    const letter = 'a letter to a friend, long enough to be looked at by its first hundred bytes. '.repeat(3);
    writeFileSync(join(data, 'whelpside.sqlite'), letter);
    const host = run('--data', data, '--demo');
    const out = await host.said('is open at');
    expect(out).toMatch(/^The data file is not in order\. [^\n]+\nWhelpside is open at http:\/\/127\.0\.0\.1:\d+\//);
    host.child.kill('SIGTERM');
    expect((await host.ended).code).toBe(0);
    expect(readFileSync(join(data, 'whelpside.sqlite'), 'utf8')).toBe(letter);
  });

  test('wrong arguments are said, with the right ones', async () => {
    const { code, err } = await run('--prot', '1').ended;
    expect(code).toBe(2);
    expect(err).toContain('Usage: whelpside [--data <folder>] [--port <number>] [--demo] [--no-open]');
  });
});
