/** Finds the browser that the tests drive, and fetches one where the machine has none. */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';

export interface Browser {
  executablePath?: string;
  channel?: string;
  /** In words, for the log: where it came from. */
  how: string;
}

/** Chromium refuses to run as root inside its sandbox. */
export const SANDBOX: boolean = process.getuid?.() !== 0;

export const BROWSER_ARGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
] as const;

export const NO_BROWSER =
  'No browser for the tests was found, and none could be fetched. Install Chromium, Chrome or Edge, or run: npx playwright install --with-deps chromium';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** Fetched only where nothing else works, so it is no dependency: 67 MB for Linux x64 alone. */
const FROM_NPM = '@sparticuz/chromium@153.0.0';
const FROM_NPM_FOLDER = join(ROOT, 'node_modules/.cache/chromium');
const FROM_NPM_BROWSER = join(FROM_NPM_FOLDER, 'unpacked/start');
const MINUTE = 60_000;

/**
 * In this order: CHROMIUM_PATH; an installed Chromium, Chrome or Edge; Playwright's download; Debian's package, as root; the one on
 * the npm registry, on Linux x64. Each is started once before it is believed.
 * @throws Error with one line that mends it, when there is none
 */
export async function findBrowser(): Promise<Browser> {
  const named = process.env['CHROMIUM_PATH'];
  if (named) {
    if (await starts(named)) return { executablePath: named, how: 'CHROMIUM_PATH' };
    throw new Error(`CHROMIUM_PATH names a browser that does not start: ${named}`);
  }
  for (const path of atHand()) {
    if (await starts(path)) return { executablePath: path, how: `found: ${path}` };
  }
  for (const { how, fetch } of SOURCES) {
    const path = await fetch();
    if (path !== null && (await starts(path))) return { executablePath: path, how };
  }
  throw new Error(NO_BROWSER);
}

/** The browsers that are here already: where the usual installers put Chromium, Chrome and Edge, and what was fetched before. */
function atHand(): string[] {
  const names = [
    'chromium',
    'chromium-browser',
    'google-chrome',
    'google-chrome-stable',
    'microsoft-edge',
    'microsoft-edge-stable',
  ];
  const onPath = (process.env['PATH'] ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  const onMac = ['Chromium', 'Google Chrome', 'Microsoft Edge'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
  const programs = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => process.env[name] ?? []);
  const onWindows = programs.flatMap((folder) => [
    join(folder, 'Google/Chrome/Application/chrome.exe'),
    join(folder, 'Microsoft/Edge/Application/msedge.exe'),
    join(folder, 'Chromium/Application/chrome.exe'),
  ]);
  const places = { darwin: onMac, win32: onWindows }[process.platform as string] ?? onPath;
  return [...new Set([...places, chromium.executablePath(), FROM_NPM_BROWSER])].filter((path) => existsSync(path));
}

async function starts(executablePath: string): Promise<boolean> {
  try {
    const browser = await chromium.launch({
      executablePath,
      chromiumSandbox: SANDBOX,
      args: [...BROWSER_ARGS],
      timeout: MINUTE / 3,
    });
    const page = await browser.newPage();
    await page.setContent('<title>ready</title>');
    const ready = (await page.title()) === 'ready';
    await browser.close();
    return ready;
  } catch {
    return false;
  }
}

interface Source {
  how: string;
  /** The path of the fetched browser; null when it can't be had from here. */
  fetch: () => Promise<string | null> | string | null;
}

const SOURCES: readonly Source[] = [
  { how: 'downloaded by Playwright', fetch: fromPlaywright },
  { how: "installed just now: Debian's chromium", fetch: fromDebian },
  { how: 'fetched from the npm registry', fetch: fromNpm },
];

function fromPlaywright(): string | null {
  const path = chromium.executablePath();
  console.log('No browser is installed; trying the one that Playwright downloads.');
  const cli = join(ROOT, 'node_modules/playwright-core/cli.js');
  run(process.execPath, [cli, 'install', '--no-shell', 'chromium'], 3 * MINUTE, {
    PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: '5000',
  });
  return existsSync(path) ? path : null;
}

function fromDebian(): string | null {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null;
  console.log("Trying Debian's chromium package.");
  const quick = ['-o', 'Acquire::Retries=1', '-o', 'Acquire::http::Timeout=15'];
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  run('apt-get', [...quick, 'update'], 2 * MINUTE, env);
  run('apt-get', [...quick, 'install', '-y', '--no-install-recommends', 'chromium'], 6 * MINUTE, env);
  return existsSync('/usr/bin/chromium') ? '/usr/bin/chromium' : null;
}

function fromNpm(): string | null {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  console.log('Trying the Chromium of the npm registry.');
  mkdirSync(FROM_NPM_FOLDER, { recursive: true });
  // A package.json of its own keeps npm from looking further up, at ours.
  writeFileSync(join(FROM_NPM_FOLDER, 'package.json'), '{ "private": true, "type": "module" }');
  const npm = process.env['npm_execpath'];
  const install = ['install', '--no-save', '--no-package-lock', '--ignore-scripts', '--prefix', FROM_NPM_FOLDER, FROM_NPM];
  const done = npm === undefined ? run('npm', install, 5 * MINUTE) : run(process.execPath, [npm, ...install], 5 * MINUTE);
  return done && unpack() ? FROM_NPM_BROWSER : null;
}

/**
 * Unpacks it beside its package. The package unpacks into the folder for temporary files, keeps what it finds there, and hands out its
 * own copies of the libraries that a bare Debian lacks only where it believes to be at its usual provider: hence a folder of our own,
 * the provider's name, and a renaming once all is there. Its list of flags switches web security off and is not used.
 */
function unpack(): boolean {
  const parts = join(FROM_NPM_FOLDER, `unpacking-${process.pid}`);
  const whole = join(FROM_NPM_FOLDER, 'unpacked');
  mkdirSync(parts, { recursive: true });
  writeFileSync(
    join(FROM_NPM_FOLDER, 'unpack.js'),
    "import chromium from '@sparticuz/chromium';\nawait chromium.executablePath();\n",
  );
  const env = { TMPDIR: parts, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs24.x' };
  if (!run(process.execPath, [join(FROM_NPM_FOLDER, 'unpack.js')], 2 * MINUTE, env)) return false;
  const start = join(parts, 'start');
  writeFileSync(
    start,
    `#!/bin/sh
here=$(dirname "$0")
export LD_LIBRARY_PATH="$here/al2023/lib\${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}"
[ -d /etc/fonts ] || export FONTCONFIG_PATH="$here/fonts"
exec "$here/chromium" "$@"
`,
  );
  chmodSync(start, 0o755);
  rmSync(whole, { recursive: true, force: true });
  renameSync(parts, whole);
  return true;
}

function run(command: string, args: readonly string[], timeout: number, env: Record<string, string> = {}): boolean {
  const { status } = spawnSync(command, args, { stdio: 'ignore', timeout, env: { ...process.env, ...env } });
  return status === 0;
}
