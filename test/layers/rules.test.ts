/** Each rule of the house, against small made-up houses that break it. */
import { describe, expect, it } from 'vitest';
import { type Module, parseModule } from './modules.ts';
import {
  barrels,
  cycles,
  danglingImports,
  forbiddenWords,
  impurities,
  layerComplaints,
  lockedAddresses,
  roomComplaints,
  topLevelComplaints,
} from './rules.ts';

const house = (files: Record<string, string>): Module[] => Object.entries(files).map(([path, text]) => parseModule(path, text));

describe('parseModule', () => {
  it('sees every kind of import, and what is a type', () => {
    const { imports } = parseModule(
      'core/growth/a.ts',
      `import { b } from './b.ts';
       import type { C } from '../units/c.ts';
       import { type D } from './d.ts';
       import './e.ts';
       export { f } from './f.ts';
       export type { G } from './g.ts';
       export * from './h.ts';
       const i = await import('./i.ts');
       // import { no } from './no.ts';
       const text = "import x from './no.ts'";`,
    );
    expect(imports.map(({ to, typeOnly }) => `${to}${typeOnly ? ' type' : ''}`)).toEqual([
      'core/growth/b.ts',
      'core/units/c.ts type',
      'core/growth/d.ts type',
      'core/growth/e.ts',
      'core/growth/f.ts',
      'core/growth/g.ts type',
      'core/growth/h.ts',
      'core/growth/i.ts',
    ]);
  });

  it('tells a package by its name and drops a query', () => {
    const { imports } = parseModule(
      'renderer/app/a.tsx',
      "import '@a/b/c.css'; import 'd/e'; import 'node:fs'; import '../f.css?inline';",
    );
    expect(imports.map(({ to }) => to)).toEqual(['@a/b', 'd', 'node:fs', 'renderer/f.css']);
  });

  it('refuses what it can not read', () => {
    expect(() => parseModule('core/a/a.ts', 'import { from')).toThrow('core/a/a.ts');
  });
});

describe('layerComplaints', () => {
  const complaint = (path: string, text: string) => layerComplaints(house({ [path]: text }));

  it.each([
    ['core/growth/a.ts', "import '../../main/store/b.ts';"],
    ['core/growth/a.ts', "import 'node:fs';"],
    ['core/growth/a.ts', "import 'react';"],
    ['core/growth/a.ts', "import '../homing/b.ts';"],
    ['core/growth/a.ts', "import '../feeding/b.ts';"],
    ['core/growth/a.ts', "import type { B } from '../contract/b.ts';"],
    ['core/growth/a.ts', "import '../strange/b.ts';"],
    ['core/units/a.ts', "import '../litter/b.ts';"],
    ['main/store/a.ts', "import '../service/b.ts';"],
    ['main/store/a.ts', "import 'electron';"],
    ['main/service/a.ts', "import 'better-sqlite3';"],
    ['main/service/a.ts', "import '../node/b.ts';"],
    ['main/hosting/a.ts', "import 'electron';"],
    ['main/node/a.ts', "import '../electron/b.ts';"],
    ['main/node/a.ts', "import '../store/b.ts';"],
    ['main/electron/a.ts', "import '../../renderer/app/b.ts';"],
    ['main/preload/a.ts', "import { b } from '../electron/b.ts';"],
    ['main/strange/a.ts', "import './b.ts'; import '../../core/units/b.ts';"],
    ['renderer/app/a.ts', "import '../../main/service/b.ts';"],
    ['renderer/growth/a.ts', "import '../feeding/b.ts';"],
    ['renderer/growth/a.ts', "import type { B } from '../app/b.ts';"],
    ['renderer/facts/a.ts', "import '../growth/b.ts';"],
    ['renderer/parts/a.ts', "import '../facts/b.ts';"],
    ['renderer/parts/form/a.ts', "import '../../print/b.ts';"],
    ['renderer/data/a.ts', "import '../parts/b.ts';"],
    ['renderer/links.ts', "import './app/b.ts';"],
    ['renderer/strange/a.ts', "import '../data/b.ts'; import '../strange2/c.ts';"],
    ['renderer/app/a.ts', "import 'node:path';"],
    ['renderer/app/a.ts', "import 'electron';"],
    ['renderer/app/a.ts', "const b = await import('../../main/service/b.ts');"],
    ['main/service/a.ts', "import '../../test/browser.ts';"],
  ])('complains of %s: %s', (path, text) => {
    expect(complaint(path, text).length).toBeGreaterThan(0);
  });

  it.each([
    ['core/growth/a.ts', "import 'zod'; import './b.ts'; import '../units/b.ts'; import '../reference/growth/b.ts';"],
    ['core/contract/a.ts', "import '../homing/b.ts';"],
    ['main/store/a.ts', "import 'better-sqlite3'; import 'node:fs'; import '../../core/litter/b.ts';"],
    ['main/node/a.ts', "import '../service/b.ts'; import '../hosting/b.ts'; import '../../package.json';"],
    ['main/preload/a.ts', "import 'electron'; import type { B } from '../electron/b.ts';"],
    ['renderer/app/a.ts', "import 'react'; import '../growth/b.ts'; import '../parts/b.ts'; import '../../core/units/b.ts';"],
    ['renderer/growth/a.ts', "import '../facts/b.ts'; import '../parts/form/c.ts'; import '../links.ts'; import './scale/d.ts';"],
    ['renderer/data/a.ts', "import '../state/b.ts';"],
    ['test/core/a.ts', "import 'node:fs'; import '../../main/store/b.ts';"],
  ])('is content with %s: %s', (path, text) => {
    expect(complaint(path, text)).toEqual([]);
  });
});

describe('the other rules', () => {
  it('find a cycle, however long, and one of types', () => {
    const files = {
      'core/a.ts': "import './b.ts';",
      'core/b.ts': "import './c.ts';",
      'core/c.ts': "import type { A } from './a.ts';",
    };
    expect(cycles(house(files))).toEqual(['core/a.ts > core/b.ts > core/c.ts > core/a.ts']);
    expect(cycles(house({ ...files, 'core/c.ts': 'export const c = 1;' }))).toEqual([]);
  });

  it('do not take two ways to one module for a cycle', () => {
    const files = {
      'core/a.ts': "import './b.ts'; import './c.ts';",
      'core/b.ts': "import './c.ts';",
      'core/c.ts': 'export const c = 1;',
    };
    expect(cycles(house(files))).toEqual([]);
  });

  it('find a barrel', () => {
    const files = {
      'core/a/index.ts': "export { b } from './b.ts'; export * from './c.ts';",
      'core/a/b.ts': "export { c } from './c.ts'; export const b = 1;",
    };
    expect(barrels(house(files))).toEqual(['core/a/index.ts']);
  });

  it('find clock and chance in core, and leave a given instant alone', () => {
    const text = 'const a = [Date.now(), Math.random(), new Date(), new Date(0), Math.round(1)]; // Date.now';
    expect(impurities(house({ 'core/a/a.ts': text, 'main/store/a.ts': text }))).toEqual([
      'core/a/a.ts calls Date.now',
      'core/a/a.ts calls Math.random',
      'core/a/a.ts calls new Date()',
    ]);
  });

  it('find an import of a file that is not there', () => {
    expect(danglingImports(house({ 'core/a/a.ts': "import './b.ts'; import 'zod';" }), () => false)).toEqual([
      'core/a/a.ts imports core/a/b.ts',
    ]);
  });

  it('find a strange room and a missing floor of a feature', () => {
    expect(roomComplaints({ core: ['growth', 'helpers'], main: ['store'], renderer: ['app'] }, ['litter.ts'])).toEqual([
      'core/helpers is no room of the house',
      'renderer/growth is missing',
      'main/service/growth.ts is missing',
    ]);
  });

  it('find what does not belong at the top level, and what is missing', () => {
    const complaints = topLevelComplaints(['core', 'vite.config.ts', 'out', '.git'], (name) => name === 'out');
    expect(complaints).toContain('vite.config.ts does not belong at the top level');
    expect(complaints).toContain('README.md is missing');
    expect(complaints).not.toContain('out does not belong at the top level');
  });

  it.each(['work', 'root', 'tmp'])('find a path of a machine under %s', (folder) => {
    expect(forbiddenWords('a.ts', `const a = '/${folder}/a';`)).toHaveLength(1);
    expect(forbiddenWords('a.ts', `const a = '../${folder}/a'; // home${folder}/`)).toEqual([]);
  });

  it.each([
    ['registry', 'example.org'],
    ['@ts', 'ignore', '-'],
    ['biome', 'ignore', '-'],
    ['as', 'any', ' '],
    ['it', 'only(', '.'],
  ])('find %s joined with %s', (first, second, joint = '.') => {
    expect(forbiddenWords('a.ts', `${first}${joint}${second}`)).toHaveLength(1);
    expect(forbiddenWords('a.ts', `${first} and ${second}`)).toEqual([]);
  });

  it('find an address in a lock file and leave a path of ours', () => {
    const packages = { '': {}, a: { resolved: 'https://example.org/a.tgz' }, b: { resolved: 'build/b' }, c: {} };
    expect(lockedAddresses({ packages })).toEqual(['a: https://example.org/a.tgz']);
  });
});
