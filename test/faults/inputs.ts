/** Inputs for any operation, made from its own schema: fitting ones, ones at and past its borders, and hostile ones. */
import type { z } from 'zod';
import type { Chance } from './numbers.ts';

/** Text that has broken programs: markup, formulas, directions, marks of no width, half characters, names of prototypes. */
export const HOSTILE_TEXTS: readonly string[] = [
  '',
  ' ',
  '\t\r\n',
  '<script>window.pwned = 1</script>',
  '"><img src=x onerror="window.pwned = 1">',
  "'; DROP TABLE readings; --",
  '=1+2',
  '@SUM(A1:A9)',
  '-2+3',
  '{{7*7}}#{7*7}',
  '\u202eABC\u202c',
  '\u2066\u2067\u2069',
  'a\u200bb\u200d\ufeff',
  '\ud83d',
  '\udc15x',
  '🐕‍🦺',
  'e\u0301e\u0301',
  '\u0000',
  'a\u0000b',
  '\u001b[31m',
  '__proto__',
  'constructor',
  'hasOwnProperty',
  '../../whelpside.sqlite',
  'C:\\Windows',
  'NaN',
  'null',
  '1e999',
  'ﷺ'.repeat(300),
  'Z͑ͫ̓ͪ̂ͫ̽͏̴̙̤̞͉͚̯̞̠͍A̴̵̜̰͔ͫ͗͢L̠ͨͧͩ͘G̴̻͈͍͔̹̑͗̎̅͛́Ǫ̵̹̻̝̳͂̌̌͘',
  'x'.repeat(4001),
];

const HOSTILE_NUMBERS = [
  0,
  -0,
  -1,
  0.05,
  0.1,
  1e-7,
  1.5,
  2 ** 31,
  2 ** 53,
  2 ** 53 + 2,
  1e21,
  1e308,
  -1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
];

/** Values of every other kind, as no form sends them. */
function strange(chance: Chance): unknown {
  const deep = () => {
    let nested: unknown = [];
    for (let n = 0; n < 500; n += 1) nested = [nested];
    return nested;
  };
  const round = () => {
    const circle: Record<string, unknown> = {};
    circle['circle'] = circle;
    return circle;
  };
  return chance.pick<() => unknown>([
    () => null,
    () => undefined,
    () => true,
    () => [],
    () => ({}),
    () => JSON.parse('{"__proto__": {"polluted": true}}'),
    () => ({ constructor: { prototype: { polluted: true } } }),
    () => Array.from({ length: 5000 }, () => 'x'),
    () => new Date(0),
    () => new Map([['a', 1]]),
    () => 10n,
    () => Symbol.iterator,
    () => () => 1,
    () => new Uint8Array(100),
    () => ({ toString: () => 'abc', valueOf: () => 7 }),
    () => chance.pick(HOSTILE_TEXTS),
    () => chance.pick(HOSTILE_NUMBERS),
    () => 'x'.repeat(1_000_000),
    deep,
    round,
  ])();
}

/** Values that a field of that name may really have in the world at hand. */
export type Pool = Readonly<Record<string, readonly unknown[]>>;

export class Inputs {
  readonly #chance: Chance;
  /** Looked at for each input, since commands add to it. */
  readonly #pool: () => Pool;
  constructor(chance: Chance, pool: () => Pool) {
    this.#chance = chance;
    this.#pool = pool;
  }

  /** One input: fitting more often than not. `good` is one that is known to be taken, where there is one. */
  of(schema: z.ZodType, good: unknown = undefined): unknown {
    const fitting = good !== undefined && this.#chance.yes(0.4) ? good : this.#value(schema, '');
    if (this.#chance.yes(0.55)) return fitting;
    if (this.#chance.yes(0.15)) return strange(this.#chance);
    return this.#spoilt(fitting);
  }

  /** The value with one leaf or key of it changed. */
  #spoilt(value: unknown): unknown {
    if (typeof value !== 'object' || value === null || this.#chance.yes(0.1)) return strange(this.#chance);
    if (Array.isArray(value)) {
      const at = this.#chance.below(value.length + 1);
      return value.length > 0 ? value.with(at % value.length, this.#spoilt(value[at % value.length])) : [strange(this.#chance)];
    }
    const keys = Object.keys(value);
    if (keys.length === 0 || this.#chance.yes(0.1)) return { ...value, [this.#chance.pick(HOSTILE_TEXTS)]: 1 };
    const key = this.#chance.pick(keys);
    const inside = (value as Record<string, unknown>)[key];
    if (this.#chance.yes(0.1)) return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key));
    return { ...value, [key]: this.#spoilt(inside) };
  }

  #value(schema: z.ZodType, name: string): unknown {
    const known = this.#pool()[name];
    if (known !== undefined && known.length > 0 && this.#chance.yes(0.85)) return this.#chance.pick(known);
    const { def } = (schema as unknown as z.core.$ZodTypes)._zod;
    switch (def.type) {
      case 'object':
        return Object.fromEntries(Object.entries(def.shape).map(([key, inner]) => [key, this.#value(inner as z.ZodType, key)]));
      case 'array':
        return this.#list(schema, def.element as z.ZodType, name);
      case 'record':
        return this.#record(def.keyType as z.ZodType, def.valueType as z.ZodType, name);
      case 'nullable':
        return this.#chance.yes(0.25) ? null : this.#value(def.innerType as z.ZodType, name);
      case 'optional':
        return this.#chance.yes(0.25) ? undefined : this.#value(def.innerType as z.ZodType, name);
      case 'union':
        return this.#value(this.#chance.pick(def.options as readonly z.ZodType[]), name);
      case 'enum':
        return this.#chance.pick(Object.values(def.entries));
      case 'literal':
        return this.#chance.pick(def.values);
      case 'boolean':
        return this.#chance.yes(0.5);
      case 'number':
        return this.#number(schema);
      case 'string':
        return this.#text(schema);
      default:
        throw new Error(`no inputs can be made for a schema of the kind ${def.type}: teach them`);
    }
  }

  #list(schema: z.ZodType, element: z.ZodType, name: string): unknown[] {
    const { least, most } = limitsOf(schema);
    const length = this.#chance.yes(0.1) ? this.#chance.pick([least, Math.min(most, 60)]) : least + this.#chance.below(4);
    return Array.from({ length }, () => this.#value(element, name.replace(/s$/, '')));
  }

  #record(key: z.ZodType, value: z.ZodType, name: string): Record<string, unknown> {
    const length = this.#chance.below(4);
    return Object.fromEntries(Array.from({ length }, () => [String(this.#value(key, '')), this.#value(value, name)]));
  }

  #number(schema: z.ZodType): number {
    if (this.#chance.yes(0.1)) return this.#chance.pick(HOSTILE_NUMBERS);
    const { least, most, whole } = limitsOf(schema);
    const [low, high] = [Math.max(least, -1e6), Math.min(most, 1e6)];
    if (this.#chance.yes(0.1)) return this.#chance.pick([least, most, least - 1, most + 1]);
    const number = low + this.#chance.next() * (high - low);
    return whole ? Math.round(number) : Math.round(number * 10) / 10;
  }

  #text(schema: z.ZodType): string {
    const candidates = [...HOSTILE_TEXTS, ...WORDS].filter((text) => schema.safeParse(text).success);
    if (candidates.length === 0 || this.#chance.yes(0.1)) return this.#chance.pick(HOSTILE_TEXTS);
    return this.#chance.pick(candidates);
  }
}

/** Texts that fit the schemas which ask for a form. */
const WORDS = [
  'Yarrow',
  'Möhre, fein gerieben',
  'a@b.example',
  '07:30',
  '23:59',
  '2026-11-20',
  '2024-02-29',
  '0001-01-01',
  '9999-12-31',
  '2026-11-20T07:10',
  '00000000-0000-4000-8000-000000000000',
  'whelpside-2026-11-25-daily.sqlite',
  'A',
  '#aa3344',
  '982000001088420',
  '12.5',
];

interface Limits {
  least: number;
  most: number;
  whole: boolean;
}

function limitsOf(schema: z.ZodType): Limits {
  const limits: Limits = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY, whole: false };
  for (const check of schema._zod.def.checks ?? []) {
    const { def } = (check as unknown as z.core.$ZodChecks)._zod;
    if (def.check === 'greater_than') limits.least = Number(def.value);
    if (def.check === 'less_than') limits.most = Number(def.value);
    if (def.check === 'number_format') limits.whole = true;
    if (def.check === 'min_length') limits.least = def.minimum;
    if (def.check === 'max_length') limits.most = def.maximum;
    if (def.check === 'length_equals') limits.least = limits.most = def.length;
  }
  if (schema._zod.def.type === 'array') limits.least = Math.max(0, limits.least);
  return limits;
}

/** Every text that a schema asks for, with its path. */
export function* textsIn(schema: z.ZodType, path: string): Generator<[path: string, schema: z.ZodType]> {
  const { def } = (schema as unknown as z.core.$ZodTypes)._zod;
  if (def.type === 'string') yield [path, schema];
  if (def.type === 'object')
    for (const [key, inner] of Object.entries(def.shape)) yield* textsIn(inner as z.ZodType, `${path}.${key}`);
  if (def.type === 'array') yield* textsIn(def.element as z.ZodType, path);
  if (def.type === 'nullable' || def.type === 'optional') yield* textsIn(def.innerType as z.ZodType, path);
  if (def.type === 'union') for (const option of def.options) yield* textsIn(option as z.ZodType, path);
  if (def.type === 'record') yield* textsIn(def.valueType as z.ZodType, path);
}
