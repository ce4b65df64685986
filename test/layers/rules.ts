/** Who may import whom, and what the house looks like from outside. Each rule answers complaints; none is good. */
import type { Import, Module } from './modules.ts';

/** A feature has the same name on every floor. */
export const FEATURES = [
  'dogs',
  'litter',
  'growth',
  'food',
  'feeding',
  'weaning',
  'whelping',
  'care',
  'freezer',
  'people',
  'homing',
  'records',
];

/** The order inside core: a folder may use those before it, and none beside it. */
const CORE_ORDER = [
  ['calendar', 'statistics'],
  ['units'],
  ['reference'],
  ['dogs'],
  ['litter'],
  ['food', 'growth'],
  ['feeding'],
  ['weaning', 'whelping', 'care'],
  ['freezer', 'people'],
  ['homing', 'records'],
  ['words'],
  ['contract'],
];

/** The order inside the window, from the ground up: a room may use those before it. Features know no other feature. */
const RENDERER_ORDER = [['data', 'state', 'links.ts'], ['parts'], ['facts'], ['print'], FEATURES, ['app']];

export const ROOMS: Readonly<Record<string, readonly string[]>> = {
  core: CORE_ORDER.flat(),
  main: ['store', 'service', 'hosting', 'electron', 'node', 'preload'],
  renderer: [...FEATURES, 'app', 'facts', 'data', 'state', 'parts', 'print'],
};

interface Rule {
  /** Folders of the repository that it may import from, besides its own. */
  folders: readonly string[];
  /** Packages it may import; `node:` stands for all of Node. Null: any, but those of the machine. */
  packages: readonly string[] | null;
  typesOnly?: boolean;
}

const OF_THE_MACHINE = ['node:', 'electron', 'better-sqlite3', 'playwright-core'];
const PACK = 'package.json';

const RULES: Readonly<Record<string, Rule>> = {
  'main/store': { folders: ['core'], packages: ['node:', 'better-sqlite3', 'zod'] },
  'main/service': { folders: ['core', 'main/store'], packages: ['node:', 'zod', 'write-excel-file'] },
  'main/hosting': { folders: ['core', 'main/service'], packages: ['node:', 'zod', 'pdf-lib'] },
  'main/electron': { folders: ['core', 'main/service', 'main/hosting', PACK], packages: ['node:', 'zod', 'electron'] },
  'main/node': { folders: ['core', 'main/service', 'main/hosting', PACK], packages: ['node:', 'zod', 'playwright-core'] },
  'main/preload': { folders: ['core', 'main/service', 'main/hosting', 'main/electron'], packages: ['electron'], typesOnly: true },
  renderer: { folders: ['core', 'renderer'], packages: null },
};

/** `core/growth` of `core/growth/series.ts`; the floor itself for a file that lies on it. */
function roomOf(path: string): string {
  const parts = path.split('/');
  return parts.length > 2 ? `${parts[0]}/${parts[1]}` : (parts[0] ?? '');
}

function isInside(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`);
}

function isOfTheRepository(to: string): boolean {
  return /^(core|main|renderer|test|build)\/|^package\.json$/.test(to);
}

/** Every import that a floor or a room may not make. */
export function layerComplaints(modules: readonly Module[]): string[] {
  return modules.flatMap((module) =>
    module.imports.flatMap((to) => {
      const reason = refusal(module.path, to);
      return reason === null ? [] : [`${module.path} imports ${to.to}: ${reason}`];
    }),
  );
}

function refusal(path: string, to: Import): string | null {
  const room = roomOf(path);
  const [floor = ''] = path.split('/');
  if (floor === 'test' || floor === 'build') return null;
  if (isInside(to.to, 'test') || isInside(to.to, 'build')) return 'only tests and the build use these';
  if (floor === 'core') return refusalInCore(room, to);
  const rule = RULES[room] ?? RULES[floor];
  if (rule === undefined) return `${room} has no rule yet`;
  if (isOfTheRepository(to.to)) {
    if (floor === 'renderer' && isInside(to.to, 'renderer')) return refusalInRenderer(path, to.to);
    if (isInside(to.to, room)) return null;
    if (!rule.folders.some((folder) => isInside(to.to, folder))) return `${room} may use ${rule.folders.join(', ')}`;
    return rule.typesOnly && !to.typeOnly ? 'types only' : null;
  }
  return mayUse(rule.packages, to.to) ? null : `${room} may not use this package`;
}

function refusalInCore(room: string, { to, typeOnly }: Import): string | null {
  if (!isOfTheRepository(to)) return to === 'zod' ? null : 'core uses no package but zod';
  if (!isInside(to, 'core')) return 'core knows no other floor';
  const target = roomOf(to);
  if (target === room) return null;
  // Sentences are spoken of anything, so their types may come from anywhere.
  if (room === 'core/words' && typeOnly) return null;
  return rankOf(target) < rankOf(room) ? null : 'it comes later in the order inside core';
}

function refusalInRenderer(path: string, to: string): string | null {
  const [, from = ''] = path.split('/');
  const [, target = ''] = to.split('/');
  if (from === target) return null;
  if (FEATURES.includes(from) && FEATURES.includes(target)) return 'no feature knows another';
  const [place, targetPlace] = [placeOf(from), placeOf(target)];
  if (place === -1 || targetPlace === -1) return 'it has no place in the order inside the window';
  return targetPlace < place || (place === 0 && targetPlace === 0) ? null : 'it comes later in the order inside the window';
}

function placeOf(room: string): number {
  return RENDERER_ORDER.findIndex((rooms) => rooms.includes(room));
}

function rankOf(room: string): number {
  const rank = CORE_ORDER.findIndex((folders) => folders.some((folder) => room === `core/${folder}`));
  return rank === -1 ? Number.POSITIVE_INFINITY : rank;
}

function mayUse(packages: readonly string[] | null, name: string): boolean {
  const matches = (list: readonly string[]) =>
    list.some((item) => name === item || (item === 'node:' && name.startsWith('node:')));
  return packages === null ? !matches(OF_THE_MACHINE) : matches(packages);
}

/** Circles of imports, types included, each told once as a path that comes back to its beginning. */
export function cycles(modules: readonly Module[]): string[] {
  const edges = new Map(modules.map((module) => [module.path, [...new Set(module.imports.map((to) => to.to))]]));
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, trail: readonly string[]) => {
    const start = trail.indexOf(path);
    if (start !== -1) found.push([...trail.slice(start), path].join(' > '));
    if (start !== -1 || done.has(path)) return;
    for (const next of edges.get(path) ?? []) if (edges.has(next)) visit(next, [...trail, path]);
    done.add(path);
  };
  for (const path of edges.keys()) visit(path, []);
  return found;
}

export function barrels(modules: readonly Module[]): string[] {
  return modules.filter((module) => module.isBarrel).map((module) => module.path);
}

/** Clock and chance in core, where both have to be passed in. */
export function impurities(modules: readonly Module[]): string[] {
  const pure = modules.filter((module) => isInside(module.path, 'core'));
  return pure.flatMap((module) => module.impurities.map((call) => `${module.path} calls ${call}`));
}

/** Relative imports that name no file of ours. */
export function danglingImports(modules: readonly Module[], exists: (path: string) => boolean): string[] {
  return modules.flatMap((module) =>
    module.imports.filter((to) => isOfTheRepository(to.to) && !exists(to.to)).map((to) => `${module.path} imports ${to.to}`),
  );
}

/** Folders with a name that is not on their floor's list, and features that are missing on a floor. */
export function roomComplaints(floors: Readonly<Record<string, readonly string[]>>, serviceFiles: readonly string[]): string[] {
  const strangers = Object.entries(floors).flatMap(([floor, folders]) =>
    folders.filter((folder) => !ROOMS[floor]?.includes(folder)).map((folder) => `${floor}/${folder} is no room of the house`),
  );
  const features = FEATURES.filter((feature) => floors['core']?.includes(feature));
  const missing = features.flatMap((feature) => [
    ...(floors['renderer']?.includes(feature) ? [] : [`renderer/${feature} is missing`]),
    ...(serviceFiles.includes(`${feature}.ts`) ? [] : [`main/service/${feature}.ts is missing`]),
  ]);
  return [...strangers, ...missing];
}

const TOP_LEVEL = [
  ...['main', 'renderer', 'core', 'test', 'build', '.ci'],
  ...[
    'README.md',
    'DEVELOPERS.md',
    'CHANGELOG.md',
    'LICENSE',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'biome.json',
    'electron-builder.yml',
  ],
  ...['.npmrc', '.gitignore', '.editorconfig', '.github'],
];
const MAY_BE_THERE = ['.git', '.gitattributes', '.gitmodules'];

/** What lies at the top level and should not, or should and does not. `ignored` names what version control leaves out. */
export function topLevelComplaints(entries: readonly string[], ignored: (name: string) => boolean): string[] {
  const strangers = entries.filter((name) => !TOP_LEVEL.includes(name) && !MAY_BE_THERE.includes(name) && !ignored(name));
  const missing = TOP_LEVEL.filter((name) => !entries.includes(name));
  return [...strangers.map((name) => `${name} does not belong at the top level`), ...missing.map((name) => `${name} is missing`)];
}

/** What no file may hold: this machine's paths, a package registry's address, and ways around the checks. */
const FORBIDDEN: readonly { pattern: RegExp; what: string }[] = [
  { pattern: /(?<![\w.])\/(?:work|root|tmp)\//, what: "a path of somebody's machine" },
  { pattern: /\bregistry\.[a-z]+\.(?:org|com|net)\b/, what: 'the address of a registry' },
  { pattern: /@ts-(?:ignore|expect-error|nocheck)/, what: 'a way around the type check' },
  { pattern: /biome-(?:ignore)/, what: 'a way around the linter' },
  { pattern: /\bas (?:any)\b/, what: 'a way around the types' },
  { pattern: /\b(?:it|test|describe)\.(?:only)\(/, what: 'a test that shuts out the others' },
];

export function forbiddenWords(path: string, text: string): string[] {
  return FORBIDDEN.filter(({ pattern }) => pattern.test(text)).map(
    ({ what, pattern }) => `${path} holds ${what}: ${pattern.exec(text)?.[0]}`,
  );
}

/** Addresses in a lock file: with them it would install from one place only. */
export function lockedAddresses(lock: { packages: Record<string, { resolved?: string }> }): string[] {
  return Object.entries(lock.packages)
    .filter(([, { resolved }]) => resolved !== undefined && /^[a-z+]+:/.test(resolved))
    .map(([name, { resolved }]) => `${name}: ${resolved}`);
}
