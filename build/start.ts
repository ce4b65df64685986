/** `npm start`: builds when needed, then opens the program on the desktop, or in the browser where the desktop can't be had. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { electronBinary, fetchElectron, noWindowBecause } from './electron.ts';
import { make } from './make.ts';
import { readOptions, USAGE } from './options.ts';
import { ROOT } from './root.ts';

/** A desktop window that is gone with an error this soon never opened. */
const NEVER_OPENED_MS = 10_000;

interface Ended {
  code: number;
  /** The person stopped it: no error, whatever the code. */
  stopped: boolean;
}

function run(command: string, args: readonly string[]): Promise<Ended> {
  const env = { ...process.env };
  // Editors built on Electron set this in their terminals; it would turn the desktop window into a plain Node.
  delete env['ELECTRON_RUN_AS_NODE'];
  const child = spawn(command, args, { cwd: ROOT, stdio: 'inherit', env });
  let stopped = false;
  const stop = (signal: NodeJS.Signals) => {
    stopped = true;
    // Ctrl-C in a terminal reaches the child by itself.
    if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal);
  };
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.on(signal, stop);
  const watch = stopWithNpm(() => stop('SIGTERM'));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      clearInterval(watch);
      for (const signal of signals) process.off(signal, stop);
      resolve({ code: code ?? 1, stopped });
    });
  });
}

/** A signal to npm ends the shell between npm and this program, and the shell passes nothing on: its end is the signal. */
function stopWithNpm(stop: () => void): NodeJS.Timeout {
  const parent = process.ppid;
  let alone = process.env['npm_lifecycle_event'] === undefined;
  return setInterval(() => {
    if (alone || process.ppid === parent) return;
    alone = true;
    stop();
  }, 300);
}

/** Runs the desktop program. Says why and answers null when there is no window to be had. */
async function runDesktop(hostArguments: readonly string[]): Promise<Ended | null> {
  const because = noWindowBecause(process.platform, process.env, process.getuid?.());
  if (because !== null) {
    console.log(`No desktop window here (${because}): opening in the browser.`);
    return null;
  }
  const binary = electronBinary() ?? fetchElectron();
  if (binary === null) {
    console.log('Electron could not be fetched (try again with "npx install-electron"): opening in the browser.');
    return null;
  }
  const began = Date.now();
  const ended = await run(binary, [ROOT, ...hostArguments]);
  if (ended.stopped || ended.code === 0 || Date.now() - began > NEVER_OPENED_MS) return ended;
  console.log('The desktop window did not open: opening in the browser.');
  return null;
}

function runBrowserHost(hostArguments: readonly string[]): Promise<Ended> {
  return run(process.execPath, [join(ROOT, 'out/host/host.mjs'), ...hostArguments]);
}

async function start(): Promise<number> {
  const options = readOptions(process.argv.slice(2), process.env['INIT_CWD'] ?? process.cwd());
  if (typeof options === 'string') {
    console.error(`${options}.\n${USAGE}`);
    return 2;
  }
  if (options.help) {
    console.log(USAGE);
    return 0;
  }
  await make();
  const desktop = options.browser ? null : await runDesktop(options.hostArguments);
  const ended = desktop ?? (await runBrowserHost(options.hostArguments));
  return ended.stopped ? 0 : ended.code;
}

try {
  process.exitCode = await start();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
