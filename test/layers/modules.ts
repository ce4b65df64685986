/** Reads the sources into a graph of modules, with a real parser. */
import { globSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { parseSync } from 'vite';

export interface Import {
  /** A path of the repository for relative imports, else the package's name or `node:…`. */
  to: string;
  typeOnly: boolean;
}

export interface Module {
  /** With forward slashes, from the repository's root. */
  path: string;
  imports: Import[];
  /** Nothing in it but re-exports. */
  isBarrel: boolean;
  /** Calls that a pure function can't make: the clock and chance. */
  impurities: string[];
}

const FLOORS = ['core', 'main', 'renderer', 'test', 'build'];

/** Every module of the repository. */
export function readModules(root: string): Module[] {
  const patterns = FLOORS.map((floor) => `${floor}/**/*.{ts,tsx,mjs}`);
  const paths = globSync(patterns, { cwd: root, exclude: (name) => name.includes('node_modules') });
  return paths.map((path) => parseModule(path.replaceAll('\\', '/'), readFileSync(posix.join(root, path), 'utf8')));
}

/** @throws Error when the text is not TypeScript: a module that can't be read must not pass for one without imports */
export function parseModule(path: string, text: string): Module {
  const { program, module, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`);
  const imports: Import[] = [];
  const note = (specifier: string, typeOnly: boolean) => imports.push({ to: resolved(path, specifier), typeOnly });
  for (const { moduleRequest, entries } of module.staticImports) {
    note(moduleRequest.value, entries.length > 0 && entries.every((entry) => entry.isType));
  }
  for (const { entries } of module.staticExports) {
    for (const { moduleRequest, isType } of entries) if (moduleRequest) note(moduleRequest.value, isType);
  }
  for (const { moduleRequest } of module.dynamicImports) {
    const literal = /^['"](.+)['"]$/.exec(text.slice(moduleRequest.start, moduleRequest.end));
    if (literal?.[1] !== undefined) note(literal[1], false);
  }
  const reExports = program.body.filter(
    (statement) => 'source' in statement && statement.source && statement.type.startsWith('Export'),
  );
  return {
    path,
    imports,
    isBarrel: program.body.length > 0 && reExports.length === program.body.length,
    impurities: impuritiesIn(program),
  };
}

function resolved(path: string, specifier: string): string {
  if (specifier.startsWith('.')) return posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ''));
  if (specifier.startsWith('node:')) return specifier;
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

/** Walks the whole tree for `Date.now`, `Math.random` and `new Date()` without arguments. */
function impuritiesIn(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(impuritiesIn);
  if (typeof node !== 'object' || node === null) return [];
  const found = Object.values(node).flatMap(impuritiesIn);
  const {
    type,
    object,
    property,
    callee,
    arguments: args,
  } = node as Record<string, { name?: string; length?: number } | undefined> & { type?: string };
  if (type === 'MemberExpression' && object?.name === 'Date' && property?.name === 'now') found.push('Date.now');
  if (type === 'MemberExpression' && object?.name === 'Math' && property?.name === 'random') found.push('Math.random');
  if (type === 'NewExpression' && callee?.name === 'Date' && args?.length === 0) found.push('new Date()');
  return found;
}
