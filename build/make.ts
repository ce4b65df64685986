/** Builds `out/` from the sources, unless it is built from just these already. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { takeLock } from './lock.mjs';
import { ROOT } from './root.ts';

const STAMP = join(ROOT, 'out/.made');
const OUTPUTS = ['main/main.mjs', 'host/host.mjs', 'preload/preload.cjs', 'renderer/index.html'];
const SOURCES = ['core/**/*', 'main/**/*', 'renderer/**/*', 'build/vite.config.ts', 'package.json', 'package-lock.json'];

/** The hash of everything that the build reads. */
function sourcesHash(): string {
  const hash = createHash('sha256');
  const files = globSync(SOURCES, { cwd: ROOT, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = files.map((entry) => join(entry.parentPath, entry.name)).sort();
  for (const path of paths) hash.update(path.slice(ROOT.length)).update('\0').update(readFileSync(path)).update('\0');
  return hash.digest('hex');
}

function isMade(hash: string): boolean {
  const isWhole = OUTPUTS.every((path) => existsSync(join(ROOT, 'out', path)));
  return isWhole && existsSync(STAMP) && readFileSync(STAMP, 'utf8') === hash;
}

/** Makes `out/` whole. Throws when the build fails; Vite has then said why. */
export async function make(): Promise<void> {
  if (isMade(sourcesHash())) return;
  const lock = await takeLock(join(ROOT, '.build-lock'), () =>
    console.log('Another build is at work in this folder; waiting for it.'),
  );
  try {
    const hash = sourcesHash();
    if (isMade(hash)) return;
    console.log('Building the program.');
    rmSync(STAMP, { force: true });
    const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
    const { status } = spawnSync(process.execPath, [vite, 'build', '--app', '--config', join(ROOT, 'build/vite.config.ts')], {
      cwd: ROOT,
      stdio: 'inherit',
      // A test runner's NODE_ENV would bring React's development build along.
      env: { ...process.env, NODE_ENV: 'production' },
    });
    if (status !== 0) throw new Error('The build failed.');
    mkdirSync(join(ROOT, 'out'), { recursive: true });
    writeFileSync(STAMP, hash);
  } finally {
    lock.release();
  }
}
