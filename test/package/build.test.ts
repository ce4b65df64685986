/** What is built, as the hosts hand it out. */
import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { make } from '../../build/make.ts';
import { parseModule } from '../layers/modules.ts';

const out = fileURLToPath(new URL('../../out/', import.meta.url));
const text = (path: string) => readFileSync(join(out, path), 'utf8');

/** Packages that a built program expects to find when it runs. */
function packagesOf(path: string): string[] {
  const names = parseModule(path, text(path)).imports.map(({ to }) => to);
  return [...new Set(names)].filter((name) => !name.startsWith('node:') && !builtinModules.includes(name)).sort();
}

describe('the build', () => {
  beforeAll(make, 120_000);

  it('has a window without inline scripts, styles or handlers, as its policy demands', () => {
    const page = text('renderer/index.html');
    expect(page).toMatch(/<script type="module"[^>]* src="\/assets\/[^"]+\.js">/);
    expect([...page.matchAll(/<script(?![^>]* src=)/g)]).toEqual([]);
    expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  });

  it('has its fonts as files, and names only files that are there', () => {
    const styles = globSync('renderer/assets/*.css', { cwd: out });
    expect(styles.length).toBeGreaterThan(0);
    const addresses = styles.flatMap((path) => [...text(path).matchAll(/url\(["']?([^"')]+)/g)].map((match) => match[1] ?? ''));
    expect(addresses.filter((address) => address.endsWith('.woff2')).length).toBeGreaterThan(0);
    expect(addresses.filter((address) => !address.startsWith('/assets/'))).toEqual([]);
    expect(addresses.filter((address) => !existsSync(join(out, 'renderer', address)))).toEqual([]);
  });

  it('has a desktop program that needs nothing but Electron and better-sqlite3', () => {
    expect(packagesOf('main/main.mjs')).toEqual(['better-sqlite3', 'electron']);
  });

  it('has a browser host that needs no Electron', () => {
    expect(packagesOf('host/host.mjs').filter((name) => !['better-sqlite3', 'playwright-core'].includes(name))).toEqual([]);
  });

  it('has a preload of one CommonJS file that requires Electron alone', () => {
    expect(globSync('preload/*', { cwd: out })).toEqual(['preload/preload.cjs']);
    const required = [...text('preload/preload.cjs').matchAll(/\brequire\(["']([^"']+)["']\)/g)].map((match) => match[1]);
    expect(required).toEqual(['electron']);
    expect(text('preload/preload.cjs')).not.toMatch(/^\s*(import|export) /m);
  });

  it('is not made again from the same sources', async () => {
    const before = statSync(join(out, 'main/main.mjs')).mtimeMs;
    await make();
    expect(statSync(join(out, 'main/main.mjs')).mtimeMs).toBe(before);
  });
});
