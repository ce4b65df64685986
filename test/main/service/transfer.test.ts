/** Exports and imports through the program: what goes out comes back, and nothing hostile gets in. */

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { parse } from 'csv-parse/sync';
import readXlsx from 'read-excel-file/node';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { ExportKind } from '../../../core/contract/records.ts';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { rearm } from '../../../core/records/csv.ts';
import { WEIGHT_HEADINGS } from '../../../core/records/export.ts';
import type { Program } from '../../../main/service/program.ts';
import { tableShapes } from '../../../main/store/full-export.ts';
import { MIGRATIONS } from '../../../main/store/migrations.ts';
import { isTable } from '../../../main/store/tables.ts';
import { readExported } from '../../../main/store/take-in.ts';
import { allFacts, before, call, litterFields, makeWorld, puppyFields, readingFields, type World } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

const HOSTILE = [
  '=1+2";=1+2',
  "'=x",
  '@SUM(A1)',
  '+1',
  '-1',
  '<b>&amp;</b>',
  '\u202eabc\u2066',
  'a\u200bb',
  'line\r\nbreak "q", x',
] as const;

let scratch: ReturnType<typeof scratchFolder>;
let program: Program;
let world: World;

beforeEach(async () => {
  scratch = scratchFolder();
  program = openOn(scratch.folder);
  world = await makeWorld(program.dispatch);
  for (const [i, callName] of HOSTILE.slice(0, 4).entries()) {
    const puppy = [...world.puppies, world.unweighed][i];
    await call(program.dispatch, 'litter.changePuppy', {
      puppyId: puppy?.id ?? '',
      change: { ...puppyFields(world.clock, i), callName, markings: HOSTILE[i + 4] ?? '' },
    });
  }
  await call(program.dispatch, 'people.setHouse', { change: { ...DEFAULT_HOUSE, breederName: HOSTILE[8], vetPhone: '01' } });
});

afterEach(() => {
  program.close();
  scratch.remove();
});

async function exported(as: ExportKind, from: Program = program): Promise<{ file: string; bytes: Buffer }[]> {
  const { files } = await call(from.dispatch, 'records.export', { as });
  const out = [];
  for (const { file, bytes } of files) {
    const { base64 } = await call(from.dispatch, 'records.exportFile', { file });
    out.push({ file, bytes: Buffer.from(base64, 'base64') });
    expect(out.at(-1)?.bytes.length).toBe(bytes);
  }
  return out;
}

async function wholeText(): Promise<string> {
  return (await exported('json'))[0]?.bytes.toString('utf8') ?? '';
}

async function intoNewHouse(text: string, work: (fresh: Program) => Promise<void>): Promise<void> {
  const other = scratchFolder();
  const fresh = openOn(other.folder);
  try {
    await call(fresh.dispatch, 'records.takeIn', { text });
    await work(fresh);
  } finally {
    fresh.close();
    other.remove();
  }
}

describe('export', () => {
  it('writes whole files that only their owner can read, and never over another', async () => {
    for (const as of ['weights', 'weights', 'csv', 'xlsx', 'json', 'file', 'person'] as const)
      expect((await exported(as)).length).toBeGreaterThan(0);
    const folder = join(scratch.folder, 'exports');
    const names = readdirSync(folder);
    expect(
      names.filter((n) => n.endsWith('weights.csv')).length + names.filter((n) => n.endsWith('weights (2).csv')).length,
    ).toBe(2);
    expect(names.filter((n) => n.endsWith('.part'))).toEqual([]);
    if (process.platform === 'win32') return;
    for (const name of names) expect(statSync(join(folder, name)).mode & 0o077, name).toBe(0);
    expect(statSync(folder).mode & 0o077).toBe(0);
  });

  it('gives every weight that stands, disarmed and exact, to an independent reader', async () => {
    const [file] = await exported('weights');
    const rows = parse(file?.bytes ?? '', { bom: true, record_delimiter: '\r\n' }) as string[][];
    expect(rows[0]).toEqual(WEIGHT_HEADINGS);
    const facts = z.object({ perLitter: z.array(z.object({ standing: z.number() })) }).parse(await allFacts(world));
    expect(rows.length - 1).toBe(facts.perLitter.reduce((sum, l) => sum + l.standing, 0));
    const names = new Set(rows.slice(1).map((row) => row[5] ?? ''));
    for (const name of names) expect(name).not.toMatch(/^[=+\-@]/);
    expect([...names].map(rearm).sort()).toEqual([...HOSTILE.slice(0, 4)].sort());
  });

  it('gives every table as CSV, marks and instants as people read them', async () => {
    const files = await exported('csv');
    const readings = files.find((f) => f.file.endsWith('readings.csv'));
    const rows = parse(readings?.bytes ?? '', { bom: true, columns: true }) as Record<string, string>[];
    expect(rows.find((r) => r['id'] === world.held.id)).toMatchObject({
      held: 'yes',
      withdrawn: 'no',
      grams: '1900',
      instant: new Date(world.held.instant).toISOString(),
    });
    const puppies = parse(files.find((f) => f.file.endsWith('puppies.csv'))?.bytes ?? '', { bom: true, columns: true }) as Record<
      string,
      string
    >[];
    expect(puppies.map((p) => rearm(p['markings'] ?? '')).sort()).toEqual([...HOSTILE.slice(4, 8)].sort());
  });

  it('gives a workbook whose text is text', async () => {
    const [file] = await exported('xlsx');
    const sheets = await readXlsx(file?.bytes ?? Buffer.alloc(0), { trim: false });
    expect(sheets.map((s) => s.sheet)).toEqual(
      expect.arrayContaining(['weights', 'litters', 'puppies', 'readings', 'plans', 'house']),
    );
    const puppies = sheets.find((s) => s.sheet === 'puppies')?.data ?? [];
    const at = puppies[0]?.indexOf('callName') ?? -1;
    expect(
      puppies
        .slice(1)
        .map((row) => row[at])
        .sort(),
    ).toEqual([...HOSTILE.slice(0, 4)].sort());
    const weights = sheets.find((s) => s.sheet === 'weights')?.data ?? [];
    expect(typeof weights[1]?.[WEIGHT_HEADINGS.indexOf('grams')]).toBe('number');
  });

  it('gives a copy of the data file that opens by itself', async () => {
    const [file] = await exported('file');
    const db = new Database(join(scratch.folder, 'exports', file?.file ?? ''), { readonly: true });
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(db.prepare('SELECT count(*) FROM readings').pluck().get()).toBeGreaterThan(9);
    db.close();
  });

  it('gives what is kept of persons', async () => {
    const [file] = await exported('person');
    expect(JSON.parse(file?.bytes.toString('utf8') ?? '')).toMatchObject({
      format: 'whelpside persons',
      persons: { breeder: { name: HOSTILE[8] }, vet: { phone: '01' } },
    });
  });

  it('leaves invented litters out', async () => {
    const { clock } = world;
    const text = await wholeText();
    await call(program.dispatch, 'records.addDemo', { now: clock.local, utcOffsetMinutes: 0 });
    const again = await wholeText();
    const tables = (t: string) => z.object({ tables: z.unknown() }).parse(JSON.parse(t)).tables;
    expect(tables(again)).toEqual(tables(text));
    expect(await exported('weights')).toHaveLength(1);
  });

  it('says its own schema, draft 2020-12, which lets it in and nothing else', async () => {
    const [document, schema] = await exported('json');
    const json = JSON.parse(schema?.bytes.toString('utf8') ?? '') as Record<string, unknown>;
    expect(json['$schema']).toBe('https://json-schema.org/draft/2020-12/schema');
    const value = JSON.parse(document?.bytes.toString('utf8') ?? '') as Record<string, unknown>;
    expect(value['$schema']).toBe(schema?.file);
    const checker = z.fromJSONSchema(json as Parameters<typeof z.fromJSONSchema>[0]);
    expect(checker.safeParse(value).success).toBe(true);
    expect(checker.safeParse({ ...value, surplus: 1 }).success).toBe(false);
    expect(checker.safeParse({ ...value, format: 'other' }).success).toBe(false);
  });
});

describe('a whole house', () => {
  it('is taken into an empty one as it was, and can be undone', async () => {
    const text = await wholeText();
    const facts = await allFacts(world);
    await intoNewHouse(text, async (fresh) => {
      const there = { dispatch: fresh.dispatch, clock: world.clock };
      expect(await allFacts(there)).toEqual(facts);
      const [again] = await exported('json', fresh);
      const exact = (t: string) => ({ ...(JSON.parse(t) as object), $schema: '', exported: '' });
      expect(exact(again?.bytes.toString('utf8') ?? '')).toEqual(exact(text));
      expect(await fresh.dispatch('records.takeIn', { text })).toMatchObject({ ok: false, error: { code: 'conflict' } });
      expect((await call(fresh.dispatch, 'records.undo', {})).done.operation).toBe('records.takeIn');
      expect(await call(fresh.dispatch, 'litter.all', {})).toEqual({ litters: [] });
      expect((await call(fresh.dispatch, 'people.house', {})).house.breederName).toBe('');
      await call(fresh.dispatch, 'records.redo', {});
      expect(await allFacts(there)).toEqual(facts);
      await call(fresh.dispatch, 'litter.begin', { litter: litterFields(world.clock, 'Tansy'), puppies: [] });
    });
  });

  it('keeps replaced and withdrawn weights', async () => {
    const { dispatch } = program;
    await call(dispatch, 'growth.correct', { readingId: world.reading.id, reading: readingFields(before(world.clock, 1), 901) });
    await call(dispatch, 'growth.withdraw', { readingId: world.held.id });
    const { readings } = await call(dispatch, 'growth.readings', { litterId: world.litter.id });
    await intoNewHouse(await wholeText(), async (fresh) => {
      expect((await call(fresh.dispatch, 'growth.readings', { litterId: world.litter.id })).readings).toEqual(readings);
    });
  });

  it('takes the house into one where only settings are written', async () => {
    const text = await wholeText();
    const other = scratchFolder();
    const fresh = openOn(other.folder);
    await call(fresh.dispatch, 'people.setHouse', { change: { ...DEFAULT_HOUSE, breederName: 'Somebody', vetName: 'V' } });
    await call(fresh.dispatch, 'records.takeIn', { text });
    expect((await call(fresh.dispatch, 'people.house', {})).house).toMatchObject({ breederName: HOSTILE[8], vetName: '' });
    await call(fresh.dispatch, 'records.undo', {});
    expect((await call(fresh.dispatch, 'people.house', {})).house).toMatchObject({ breederName: 'Somebody', vetName: 'V' });
    fresh.close();
    other.remove();
  });

  it('refuses what does not hang together, and changes nothing by it', async () => {
    const value = JSON.parse(await wholeText()) as { shape: number; tables: Record<string, Record<string, unknown>[]> };
    const changed = (change: (copy: typeof value) => void) => {
      const copy = structuredClone(value);
      change(copy);
      return JSON.stringify(copy);
    };
    const row = (copy: typeof value, table: string) => copy.tables[table]?.[0] ?? {};
    const cases: [string, string][] = [
      ['a column too many', changed((v) => Object.assign(row(v, 'readings'), { surplus: 1 }))],
      ['a column missing', changed((v) => delete row(v, 'readings')['grams'])],
      ['a weight of a wrong kind', changed((v) => Object.assign(row(v, 'readings'), { grams: '412' }))],
      ['a weight of nothing', changed((v) => Object.assign(row(v, 'readings'), { grams: -4 }))],
      ['a time that is none', changed((v) => Object.assign(row(v, 'readings'), { at: '2026-02-30T07:00' }))],
      ['a unit that is none', changed((v) => Object.assign(row(v, 'readings'), { unit: 'stone' }))],
      ['a puppy of no litter', changed((v) => Object.assign(row(v, 'puppies'), { litterId: 'nowhere-0000' }))],
      ['a row twice', changed((v) => v.tables['litters']?.push(row(v, 'litters')))],
      ['a colour that is none', changed((v) => Object.assign(row(v, 'puppies'), { colour: 'octarine' }))],
      ['half a character', changed((v) => Object.assign(row(v, 'litters'), { dam: '\ud800' }))],
      ['a control character', changed((v) => Object.assign(row(v, 'litters'), { dam: '\u0007' }))],
      ['a table too many', changed((v) => Object.assign(v.tables, { journal: [] }))],
      ['a table missing', changed((v) => delete v.tables['readings'])],
      ['a plan that can not be read', changed((v) => Object.assign(row(v, 'plans'), { document: { version: 1 } }))],
      ['a house that can not be read', changed((v) => Object.assign(row(v, 'house'), { house: { massUnit: 'stone' } }))],
      ['a key of every object', JSON.stringify(value).replace('{', '{"constructor":{"x":1},')],
    ];
    const other = scratchFolder();
    const fresh = openOn(other.folder);
    for (const [why, text] of cases) {
      expect(await fresh.dispatch('records.takeIn', { text }), why).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    }
    expect(await call(fresh.dispatch, 'litter.all', {})).toEqual({ litters: [] });
    expect((await call(fresh.dispatch, 'records.status', {})).canUndo).toBeNull();
    fresh.close();
    other.remove();
  });

  it('reads the export of the first shape there was', () => {
    const db = new Database(':memory:');
    for (const step of MIGRATIONS.slice(0, 1)) db.exec(step.sql);
    const tables = Object.fromEntries(tableShapes(db).map((t) => [t.name, []]));
    db.close();
    const whole = readExported({ format: 'whelpside', version: 1, shape: 1, exported: '2026-11-25T07:00', tables });
    expect(whole.map((t) => t.name)).toEqual(expect.arrayContaining(['litters', 'readings', 'foods']));
  });

  it('leaves out no table: each is written by commands and has an id', () => {
    const db = new Database(':memory:');
    for (const step of MIGRATIONS) db.exec(step.sql);
    const shapes = tableShapes(db);
    db.close();
    expect(shapes.length).toBeGreaterThan(6);
    for (const { name, columns } of shapes) {
      expect(isTable(name), name).toBe(true);
      expect(columns[0]?.name, name).toBe('id');
    }
    expect(shapes.find((s) => s.name === 'readings')?.columns).toEqual(
      expect.arrayContaining([
        { name: 'held', kind: 'flag', nullable: false, words: null, names: null },
        { name: 'session', kind: 'text', nullable: false, words: ['birth', 'morning', 'evening'], names: null },
        { name: 'puppyId', kind: 'text', nullable: false, words: null, names: 'puppies' },
      ]),
    );
    expect(shapes.filter((s) => s.settings).map((s) => s.name)).toEqual(expect.arrayContaining(['house']));
  });
});

describe('weights of a table', () => {
  const reading = (puppy: string, days: number, grams: number) => ({
    puppy,
    reading: { ...readingFields(before(world.clock, days), grams), source: 'file' as const },
  });

  it('go into a new litter with its puppies, in one entry that undo takes back', async () => {
    const facts = await allFacts(world);
    const { litter, puppies, readings } = await call(program.dispatch, 'records.import', {
      into: { kind: 'new', litter: litterFields(world.clock, 'Sorrel') },
      puppies: [0, 1].map((i) => ({ key: `k${i}`, fields: puppyFields(world.clock, i) })),
      readings: [reading('k0', 10, 600), reading('k1', 10, 610), reading('k0', 9, 640)],
    });
    expect([litter.dam, puppies.map((p) => p.place), readings]).toEqual(['Sorrel', [0, 1], 3]);
    const { done } = await call(program.dispatch, 'records.done', { limit: 1 });
    expect(done[0]).toMatchObject({ operation: 'records.import', about: { of: 'litter', dam: 'Sorrel' }, litterId: litter.id });
    await call(program.dispatch, 'records.undo', {});
    expect(await allFacts(world)).toEqual(facts);
  });

  it('take ten thousand at once', async () => {
    const readings = Array.from({ length: 10_000 }, (_, i) => reading('k', 10, 500 + i / 10));
    const done = await call(program.dispatch, 'records.import', {
      into: { kind: 'new', litter: litterFields(world.clock, 'Sorrel') },
      puppies: [{ key: 'k', fields: puppyFields(world.clock, 0) }],
      readings,
    });
    expect(done.readings).toBe(10_000);
    expect(readFileSync(join(scratch.folder, 'whelpside.sqlite')).length).toBeGreaterThan(0);
  });
});
