/** The set-up, run as npm runs it, in a folder of its own and with a stand-in for npm that is over in a moment. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

/** Does what `npm ci` does to a folder, slowly enough to be caught at it, and notes when it began and ended. */
const STAND_IN = `
const fs = require('node:fs');
fs.rmSync('node_modules', { recursive: true, force: true });
fs.mkdirSync('node_modules');
fs.appendFileSync('calls.txt', 'begin ' + process.argv.slice(2).join(' ') + '\\n');
setTimeout(() => {
  if (fs.existsSync('fail')) process.exit(3);
  fs.writeFileSync('node_modules/whole', '');
  fs.appendFileSync('calls.txt', 'end\\n');
}, Number(process.env.STAND_IN_MS ?? 300));
`;

let folder = '';
const running: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'set-up-'));
  mkdirSync(join(folder, 'build/node-runtime'), { recursive: true });
  for (const name of ['ensure.mjs', 'lock.mjs', 'node-runtime/package.json']) {
    cpSync(resolve('build', name), join(folder, 'build', name));
  }
  writeFileSync(join(folder, 'package.json'), '{ "name": "a" }');
  writeFileSync(join(folder, 'package-lock.json'), '{ "lockfileVersion": 3 }');
  writeFileSync(join(folder, 'npm.cjs'), STAND_IN);
});

afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

interface Run {
  child: ChildProcess;
  output: () => string;
  ended: Promise<number | null>;
}

function setUp(standInMs = 300): Run {
  const env = {
    ...process.env,
    npm_execpath: join(folder, 'npm.cjs'),
    npm_node_execpath: process.execPath,
    STAND_IN_MS: String(standInMs),
  };
  const child = spawn(process.execPath, [join(folder, 'build/ensure.mjs')], { env, cwd: folder });
  running.push(child);
  let output = '';
  child.stdout.on('data', (chunk) => (output += String(chunk)));
  child.stderr.on('data', (chunk) => (output += String(chunk)));
  return { child, output: () => output, ended: new Promise((done) => child.on('close', (code) => done(code))) };
}

const calls = () =>
  existsSync(join(folder, 'calls.txt')) ? readFileSync(join(folder, 'calls.txt'), 'utf8').trim().split('\n') : [];
const isWhole = () => existsSync(join(folder, 'node_modules/whole')) && existsSync(join(folder, 'node_modules/.installed'));
const isLocked = () => existsSync(join(folder, '.install-lock'));

async function until(condition: () => boolean): Promise<void> {
  for (let i = 0; !condition(); i += 1) {
    if (i > 400) throw new Error('waited 10 s in vain');
    await sleep(25);
  }
}

const BEGIN = 'begin ci --include=dev --include=optional --loglevel=error';

describe('the set-up', () => {
  it('installs once, and then has nothing to do', async () => {
    expect(await setUp().ended).toBe(0);
    expect(isWhole()).toBe(true);
    expect(isLocked()).toBe(false);
    expect(await setUp().ended).toBe(0);
    expect(calls()).toEqual([BEGIN, 'end']);
  });

  it('installs again when the lock file changes', async () => {
    await setUp().ended;
    writeFileSync(join(folder, 'package-lock.json'), '{ "lockfileVersion": 3, "name": "b" }');
    expect(await setUp().ended).toBe(0);
    expect(calls()).toEqual([BEGIN, 'end', BEGIN, 'end']);
  });

  it('lets the second of two at once wait, and installs once', async () => {
    const both = [setUp(), setUp()];
    expect(await Promise.all(both.map((run) => run.ended))).toEqual([0, 0]);
    expect(calls()).toEqual([BEGIN, 'end']);
    expect(both.map((run) => run.output()).join('')).toContain('waiting for it');
    expect(isLocked()).toBe(false);
  });

  it('stops npm when it is stopped, leaves no lock, and mends at the next start', async () => {
    const first = setUp(60_000);
    await until(() => calls().length === 1);
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(130);
    expect(isLocked()).toBe(false);
    expect(isWhole()).toBe(false);
    expect(await setUp().ended).toBe(0);
    expect(isWhole()).toBe(true);
  });

  it('waits for the npm of a killed set-up to end before it begins its own', async () => {
    const killed = setUp(1_500);
    await until(() => calls().length === 1);
    killed.child.kill('SIGKILL');
    await killed.ended;
    expect(isLocked()).toBe(true);
    expect(await setUp(100).ended).toBe(0);
    expect(calls()).toEqual([BEGIN, 'end', BEGIN, 'end']);
    expect(isWhole()).toBe(true);
    expect(isLocked()).toBe(false);
  });

  it('takes over the lock of a process that is gone', async () => {
    const gone = spawn(process.execPath, ['-e', '']);
    await new Promise((done) => gone.on('close', done));
    mkdirSync(join(folder, '.install-lock'));
    writeFileSync(join(folder, '.install-lock/owner'), JSON.stringify({ token: 'old', host: hostname(), pids: [gone.pid] }));
    expect(await setUp().ended).toBe(0);
    expect(isWhole()).toBe(true);
    expect(existsSync(join(folder, '.install-lock-old'))).toBe(false);
  });

  it('takes over a lock without an owner once nobody has touched it for a minute, not before', async () => {
    const lock = join(folder, '.install-lock');
    mkdirSync(lock);
    const run = setUp();
    await until(() => run.output().includes('waiting for it'));
    await sleep(500);
    expect(calls()).toEqual([]);
    const longAgo = new Date(Date.now() - 120_000);
    utimesSync(lock, longAgo, longAgo);
    expect(await run.ended).toBe(0);
    expect(isWhole()).toBe(true);
  });

  it('says so when npm fails, leaves no stamp and no lock, and tries again next time', async () => {
    writeFileSync(join(folder, 'fail'), '');
    const run = setUp();
    expect(await run.ended).toBe(3);
    expect(run.output()).toContain('The set-up did not finish');
    expect(isWhole()).toBe(false);
    expect(isLocked()).toBe(false);
    rmSync(join(folder, 'fail'));
    expect(await setUp().ended).toBe(0);
  });
});
