/**
 * The set-up that `npm start`, `npm test` and `npm run evidence` do by themselves: installs what the lock file says, once.
 * On a fresh clone it runs on whatever Node the machine has, before any package is there: plain JavaScript, nothing imported but Node.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { takeLock } from './lock.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const modules = join(root, 'node_modules');
const stamp = join(modules, '.installed');
const inputs = ['package-lock.json', 'package.json', 'build/node-runtime/package.json'];

function wanted() {
  const hash = createHash('sha256');
  for (const name of inputs) hash.update(name).update(readFileSync(join(root, name)));
  return hash.update(`${process.platform} ${process.arch}`).digest('hex');
}

function isSetUp() {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted();
}

/** @returns {{ command: string, args: string[], shell: boolean }} npm itself, by the Node that started it */
function npmCi() {
  // Quiet about the machine's own Node being older than what the packages ask for: they run on the one that is being installed.
  const args = ['ci', '--include=dev', '--include=optional', '--loglevel=error'];
  const npm = process.env['npm_execpath'];
  if (npm === undefined) return { command: 'npm', args, shell: process.platform === 'win32' };
  return { command: process.env['npm_node_execpath'] ?? process.execPath, args: [npm, ...args], shell: false };
}

/**
 * Runs `npm ci`, passing signals on.
 * @param {(pid: number) => void} onStart
 * @returns {Promise<number>} npm's exit code; 130 when it was interrupted
 */
function install(onStart) {
  const { command, args, shell } = npmCi();
  const child = spawn(command, args, { cwd: root, stdio: 'inherit', shell });
  if (child.pid !== undefined) onStart(child.pid);
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => child.kill(signal));
  return new Promise((resolve) => {
    child.on('error', (error) => {
      console.error(`npm could not be started: ${error.message}`);
      resolve(1);
    });
    child.on('close', (code, signal) => resolve(signal === null ? (code ?? 1) : 130));
  });
}

async function setUp() {
  if (isSetUp()) return 0;
  // A running .exe can't be replaced on Windows, and this script runs on the Node that `npm ci` is about to remove.
  if (process.platform === 'win32' && process.execPath.startsWith(modules + sep)) {
    console.error('The list of packages has changed. Run "npm ci" once, then try again.');
    return 1;
  }
  const lock = await takeLock(join(root, '.install-lock'), () =>
    console.log('Another set-up is at work in this folder; waiting for it.'),
  );
  try {
    if (isSetUp()) return 0;
    console.log('Setting up: installing the packages of the lock file. This happens once and takes about a minute.');
    rmSync(stamp, { force: true });
    const code = await install((pid) => lock.alsoHeldBy(pid));
    if (code === 0) {
      mkdirSync(modules, { recursive: true });
      writeFileSync(stamp, wanted());
    } else if (code !== 130) {
      console.error('The set-up did not finish. The lines above say why; the next start tries again.');
    }
    return code;
  } finally {
    lock.release();
  }
}

process.exitCode = await setUp();
