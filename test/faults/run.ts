/** `npm run faults`: every fault test with its full numbers, then one table. Takes a quarter of an hour on a slow machine. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { argv, env, execPath } from 'node:process';
import { fileURLToPath } from 'node:url';
import { HEADING, type Line, textOf } from './numbers.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'whelpside-faults-'));
const table = join(folder, 'table');

function vitest(): Promise<number> {
  const only = argv.slice(2).map((name) => `test/faults/${name}`);
  const args = ['run', '--config', 'build/vitest.config.ts', ...(only.length > 0 ? only : ['test/faults/'])];
  const child = spawn(execPath, [join(root, 'node_modules/vitest/vitest.mjs'), ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...env, WHELPSIDE_FAULTS: 'full', WHELPSIDE_FAULTS_TABLE: table },
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}

const code = await vitest();
const lines = existsSync(table)
  ? readFileSync(table, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
  : [];
console.log(`\n${HEADING}`);
const told = lines.sort().map((line) => JSON.parse(line) as Line);
for (const line of told) console.log(textOf(line));
const sum = (of: (line: Line) => number | undefined) => told.reduce((all, line) => all + (of(line) ?? 0), 0);
console.log(
  textOf({
    what: 'all together',
    rounds: sum((line) => line.rounds),
    lost: sum((line) => line.lost),
    silent: sum((line) => line.silent),
    lockedOut: sum((line) => line.lockedOut),
    letIn: sum((line) => line.letIn),
    refused: sum((line) => line.refused),
    recovered: sum((line) => line.recovered),
  }),
);
rmSync(folder, { recursive: true, force: true });
process.exitCode = code;
