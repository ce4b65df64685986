/** `npm test`: every check there is, in order, all of them even when one fails; the last line is "N passed, N failed". */
import { spawn } from 'node:child_process';
import { existsSync, globSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from '../test/browser.ts';
import { add, addPlaywright, addVitest, type Count, type Counts, readReport, summary, total } from './counts.ts';
import { electronBinary, noWindowBecause } from './electron.ts';
import { takeLock } from './lock.mjs';
import { make } from './make.ts';
import { ROOT } from './root.ts';

const RESULTS = join(ROOT, 'test-results');
const TYPE_CHECKS = ['build/tsconfig/core.json', 'build/tsconfig/main.json', 'build/tsconfig/renderer.json', 'tsconfig.json'];
const counts: Counts = new Map();

/** Runs a tool of node_modules on this Node and answers its exit code. Stopped with this program, not only by Ctrl-C. */
function tool(script: string, args: readonly string[], env: Record<string, string> = {}): Promise<number> {
  const child = spawn(process.execPath, [join(ROOT, 'node_modules', script), ...args], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  const stop = (signal: NodeJS.Signals) => {
    child.kill(signal);
    process.exit(1);
  };
  process.once('SIGTERM', stop).once('SIGHUP', stop);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      process.off('SIGTERM', stop).off('SIGHUP', stop);
      resolve(code ?? 1);
    });
  });
}

/** One check without tests of its own: it passes or it fails. */
function check(suite: string, what: string, passed: boolean): void {
  console.log(`${passed ? 'passed' : 'FAILED'}: ${what}`);
  add(counts, suite, passed ? 'passed' : 'failed');
}

async function types(): Promise<void> {
  for (const project of TYPE_CHECKS)
    check('types', `tsc -p ${project}`, (await tool('typescript/bin/tsc', ['-p', project])) === 0);
}

async function style(): Promise<void> {
  check('style', 'biome check', (await tool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings'])) === 0);
}

async function unused(): Promise<void> {
  check('unused', 'knip', (await tool('knip/bin/knip.js', ['--config', 'build/knip.json'])) === 0);
}

async function built(): Promise<void> {
  const error = await make().then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (error !== null) console.error(error instanceof Error ? error.message : error);
  check('build', 'vite build', error === null);
}

/** The tests that need no window, of one folder under `test/` or of all. */
async function units(folder: string | null): Promise<void> {
  const file = fresh('vitest.json');
  const only = folder === null ? [] : [`test/${folder}/`];
  const args = [
    'run',
    '--config',
    'build/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
  ];
  const code = await tool('vitest/vitest.mjs', [...args, ...only]);
  settle('vitest', code, readReport<Parameters<typeof addVitest>[1]>(file), (report) =>
    addVitest(counts, report, join(ROOT, 'test')),
  );
}

async function playwright(suite: 'e2e' | 'desktop'): Promise<void> {
  const file = fresh(`${suite}.json`);
  const args = ['test', '--config', `test/${suite}/playwright.config.ts`, '--reporter=list,json'];
  const code = await tool('@playwright/test/cli.js', args, { PLAYWRIGHT_JSON_OUTPUT_FILE: file });
  settle(suite, code, readReport<Parameters<typeof addPlaywright>[1]>(file), (report) => addPlaywright(counts, report, suite));
}

/** Counts a report. A runner that failed without naming a failed test, or wrote no report, is itself a failure. */
function settle<T>(suite: string, code: number, report: T | null, count: (report: T) => void): void {
  const before = total(counts).failed;
  if (report !== null) count(report);
  if (code !== 0 && total(counts).failed === before) check(suite, `${suite} ended with an error of its own`, false);
}

function fresh(name: string): string {
  mkdirSync(RESULTS, { recursive: true });
  const file = join(RESULTS, name);
  rmSync(file, { force: true });
  return file;
}

/** The browser is looked for once; every suite that needs one finds it through CHROMIUM_PATH. */
async function browser(): Promise<void> {
  const found = await findBrowser().catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    return null;
  });
  if (found?.executablePath !== undefined) process.env['CHROMIUM_PATH'] = found.executablePath;
  check('browser', found === null ? 'no browser for the tests' : `a browser for the tests, ${found.how}`, found !== null);
}

async function e2e(): Promise<void> {
  if (failedIn('build') || failedIn('browser')) check('e2e', 'the end-to-end tests need the build and a browser', false);
  else await playwright('e2e');
}

async function desktop(): Promise<void> {
  const because = noDesktopBecause();
  if (because !== null)
    console.log(`Not run: ${because}. The same window is tested through the browser host, Electron's side in test/main.`);
  else if (failedIn('build')) check('desktop', 'the desktop tests need the build', false);
  else await playwright('desktop');
}

function noDesktopBecause(): string | null {
  if (globSync('test/desktop/**/*.spec.ts', { cwd: ROOT }).length === 0) return 'there are no desktop tests';
  if (electronBinary() === null) return "Electron's binary is not here; it can be fetched with npx install-electron";
  return noWindowBecause(process.platform, process.env, process.getuid?.());
}

function failedIn(suite: string): boolean {
  return ((counts.get(suite) as Count | undefined)?.failed ?? 0) > 0;
}

interface Step {
  name: string;
  heading: string;
  run: () => Promise<void> | void;
}

const STEPS: readonly Step[] = [
  { name: 'types', heading: 'Types', run: types },
  { name: 'style', heading: 'Style and rules of import', run: style },
  { name: 'unused', heading: 'Nothing unused', run: unused },
  { name: 'build', heading: 'Build', run: built },
  { name: 'browser', heading: 'A browser for the tests', run: browser },
  { name: 'units', heading: 'Tests without a window', run: () => units(null) },
  { name: 'e2e', heading: 'End to end, in the browser', run: e2e },
  { name: 'desktop', heading: 'Desktop', run: desktop },
];

/** The steps of `--only <suite>`: a step by its name, or one folder under `test/`. Null when there is no such suite. */
function chosen(args: readonly string[]): readonly Step[] | null {
  if (args.length === 0) return STEPS;
  const [flag, suite = ''] = args;
  if (flag !== '--only' || args.length !== 2) return null;
  const needed = { e2e: ['build', 'browser', 'e2e'], desktop: ['build', 'desktop'] }[suite] ?? [suite];
  const steps = STEPS.filter((step) => needed.includes(step.name));
  if (steps.length > 0) return steps;
  if (!existsSync(join(ROOT, 'test', suite))) return null;
  return [{ name: suite, heading: `Tests of test/${suite}`, run: () => units(suite) }];
}

function suiteNames(): string {
  const folders = readdirSync(join(ROOT, 'test'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return [...new Set([...STEPS.map((step) => step.name), ...folders.map((folder) => folder.name)])].join(', ');
}

async function runAll(steps: readonly Step[]): Promise<void> {
  // Two runs at once would write the same reports.
  const lock = await takeLock(join(ROOT, '.test-lock'), () =>
    console.log('Another npm test is at work in this folder; waiting for it.'),
  );
  for (const { heading, run } of steps) {
    console.log(`\n== ${heading} ==`);
    await run();
  }
  lock.release();
  console.log(`\n${summary(counts)}`);
  process.exitCode = total(counts).failed > 0 || total(counts).passed === 0 ? 1 : 0;
}

const steps = chosen(process.argv.slice(2));
if (steps === null) {
  console.error(`npm test [-- --only <suite>], where a suite is one of: ${suiteNames()}`);
  process.exitCode = 2;
} else {
  await runAll(steps);
}
