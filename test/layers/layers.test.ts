/** The rules of the house, over the repository as it is. */
import { existsSync, globSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readModules } from './modules.ts';
import {
  barrels,
  cycles,
  danglingImports,
  FEATURES,
  forbiddenWords,
  impurities,
  layerComplaints,
  lockedAddresses,
  ROOMS,
  roomComplaints,
  topLevelComplaints,
} from './rules.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const modules = readModules(root);
const foldersIn = (path: string) =>
  readdirSync(join(root, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);

describe('the graph of imports', () => {
  it('saw the modules of every floor', () => {
    expect(modules.length).toBeGreaterThan(20);
    for (const floor of ['core/', 'main/', 'renderer/', 'test/', 'build/']) {
      expect(modules.filter((module) => module.path.startsWith(floor)).length, floor).toBeGreaterThan(3);
    }
    expect(modules.flatMap((module) => module.imports).length).toBeGreaterThan(modules.length);
  });

  it('names only files that are there', () => {
    expect(danglingImports(modules, (path) => existsSync(join(root, path)))).toEqual([]);
  });

  it('keeps to who may import whom', () => {
    expect(layerComplaints(modules)).toEqual([]);
  });

  it('has no cycles', () => {
    expect(cycles(modules)).toEqual([]);
  });

  it('has no barrels', () => {
    expect(barrels(modules)).toEqual([]);
  });

  it('has neither clock nor chance in core', () => {
    expect(impurities(modules)).toEqual([]);
  });
});

describe('the house', () => {
  it('has the same features on every floor, and no room that is not on the list', () => {
    const floors = Object.fromEntries(Object.keys(ROOMS).map((floor) => [floor, foldersIn(floor)]));
    expect(FEATURES.filter((feature) => floors['core']?.includes(feature)).length).toBeGreaterThan(3);
    expect(roomComplaints(floors, readdirSync(join(root, 'main/service')))).toEqual([]);
  });

  it('has tests in folders named after what they test', () => {
    for (const floor of Object.keys(ROOMS)) {
      for (const folder of foldersIn(`test/${floor}`)) expect(foldersIn(floor), `test/${floor}/${folder}`).toContain(folder);
    }
  });

  it('has nothing at the top level that does not belong there', () => {
    const ignored = readFileSync(join(root, '.gitignore'), 'utf8').split('\n').filter(Boolean);
    const isIgnored = (name: string) => ignored.some((pattern) => name.startsWith(pattern.replace(/[*/]+$/, '')));
    expect(topLevelComplaints(readdirSync(root), isIgnored)).toEqual([]);
  });

  it('holds no word that it must not hold', () => {
    const places = [
      '*.{json,md,yml}',
      '.{npmrc,gitignore,editorconfig}',
      '.ci/*',
      '{core,main,renderer,test,build}/**/*.{ts,tsx,mjs,json,css,html,md,yml}',
    ];
    const paths = globSync(places, { cwd: root, exclude: (name) => name === 'node_modules' });
    expect(paths.length).toBeGreaterThan(modules.length);
    expect(paths.flatMap((path) => forbiddenWords(path, readFileSync(join(root, path), 'utf8')))).toEqual([]);
  });

  it('has no address in the lock file', () => {
    const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
    expect(Object.keys(lock.packages).length).toBeGreaterThan(100);
    expect(lockedAddresses(lock)).toEqual([]);
  });
});
