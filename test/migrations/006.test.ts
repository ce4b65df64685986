/**
 * Files that the program wrote at every earlier shape, with what that program answered while everything was taken back and
 * done again (`test/fixtures/files/README.md`): today's program must answer the same at every step.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { dateOf, localTime } from '../../core/calendar/clock.ts';
import { addDays } from '../../core/calendar/day.ts';
import type { Program } from '../../main/service/program.ts';
import { MIGRATIONS, runStep } from '../../main/store/migrations.ts';
import { salvage } from '../../main/store/salvage.ts';
import { call } from '../contract/world.ts';
import { openOn } from '../main/open.ts';

const CLOCK = { instant: Date.UTC(2026, 10, 20, 8, 30), local: localTime('2026-11-20T08:30') };
const SHAPES = [1, 2, 3, 4, 5];
const scratch = mkdtempSync(join(tmpdir(), 'whelpside-earlier-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const kept = (name: string) => gunzipSync(readFileSync(new URL(`../fixtures/files/${name}.gz`, import.meta.url)));
const PEOPLE = ['A. Breeder', 'Long Meadow', '555-0101', 'Vet at the Mill', 'Vet by the Bridge', 'Somebody else', 'B. Breeder'];

let count = 0;
/** A data folder with the file of that shape. */
function folderOf(shape: number): string {
  count += 1;
  const folder = join(scratch, String(count));
  mkdirSync(folder);
  writeFileSync(join(folder, 'whelpside.sqlite'), kept(`${shape}.sqlite`));
  return folder;
}
const open = (folder: string): Program => openOn(folder, { now: () => CLOCK });

interface Answers {
  readonly now: object;
  readonly redone: readonly object[];
  readonly undone: readonly object[];
}
const said = (shape: number) => JSON.parse(kept(`${shape}.answers.json`).toString()) as Answers;

/** What the earlier program was asked, by today's names. */
async function facts({ dispatch }: Program): Promise<object> {
  const { litters } = await call(dispatch, 'litter.all', {});
  const stock = await call(dispatch, 'freezer.stock', { since: addDays(dateOf(CLOCK.local), -60) });
  const { feedings } = await call(dispatch, 'food.feedings', {});
  const plans = [];
  const weights = [];
  for (const { litter } of litters.filter((l) => !l.litter.demo)) {
    plans.push((await call(dispatch, 'homing.handedOver', { litterId: litter.id })).plans);
    const { readings } = await call(dispatch, 'growth.readings', { litterId: litter.id });
    weights.push(readings.map((r) => [r.id, r.grams, r.supersededBy]));
  }
  // A field of later programs: no earlier file has it filled in.
  const { vetOutOfHours, ...house } = (await call(dispatch, 'people.house', {})).house;
  expect(vetOutOfHours).toBe('');
  return {
    litters: litters.map(({ litter: l, puppies }) => [l.id, l.name, l.dam, l.sire, l.demo, puppies.length]),
    dams: (await call(dispatch, 'dogs.dams', {})).dams,
    fed: { feedings: feedings.map((f) => ({ ...f, dogs: f.dogs.map(({ name, kg }) => ({ name, kg })) })) },
    dogs: stock.eaters,
    starters: stock.starters,
    packs: stock.packs.length,
    house,
    kept: plans,
    weights,
    foods: (await call(dispatch, 'food.all', {})).foods.length,
    rules: (await call(dispatch, 'feeding.rules', {})).versions.length,
  };
}

describe.each(SHAPES)('a file of shape %i', (shape) => {
  it('opens with everything in it, and undo and redo do at every step what they did', async () => {
    const program = open(folderOf(shape));
    const { now, redone, undone } = said(shape);
    expect(await facts(program)).toEqual(now);
    for (const [n, answer] of redone.entries()) {
      await call(program.dispatch, 'records.redo', {});
      expect(await facts(program), `redo ${n + 1}`).toEqual(answer);
    }
    expect(await program.dispatch('records.redo', {})).toMatchObject({ ok: false, error: { code: 'nothing-to-redo' } });
    for (const _ of redone) await call(program.dispatch, 'records.undo', {});
    for (const [n, answer] of undone.entries()) {
      const { done } = await call(program.dispatch, 'records.undo', {});
      expect(await facts(program), `undo ${n + 1}: ${done.operation}`).toEqual(answer);
    }
    expect(await program.dispatch('records.undo', {})).toMatchObject({ ok: false, error: { code: 'nothing-to-undo' } });
    for (const _ of undone) await call(program.dispatch, 'records.redo', {});
    expect(await facts(program)).toEqual(now);
    program.close();
  }, 120_000);

  it('has each dog once: the dam of two litters, what eats under the name it is written with', () => {
    const folder = folderOf(shape);
    open(folder).close();
    const db = new Database(join(folder, 'whelpside.sqlite'), { readonly: true });
    const dogs = db
      .prepare<[], [string, string | null]>('SELECT name, sex FROM dogs WHERE removed = 0 AND demo = 0 ORDER BY name, sex, rowid')
      .raw()
      .all();
    const dams = db
      .prepare("SELECT count(DISTINCT damId) FROM litters WHERE dam = 'Yarrow' AND removed = 0 AND demo = 0")
      .pluck();
    expect(dams.get()).toBe(1);
    expect(dogs.filter(([, sex]) => sex !== null).map(([name]) => name)).toEqual(['Comfrey', 'Hazel', 'Larch', 'Yarrow']);
    const fed = shape < 2 ? [] : ['Comfrey', 'Comfrey', 'Sorrel'];
    expect(dogs.filter(([, sex]) => sex === null).map(([name]) => name)).toEqual(
      shape < 4 ? fed : ['Bramble', ...fed.slice(0, 2), 'Larch', 'Sorrel'],
    );
    expect(db.pragma('foreign_key_check')).toEqual([]);
    db.close();
  });

  it('lets go of breeder and vet, out of the journal too', async () => {
    const folder = folderOf(shape);
    const program = open(folder);
    const before = await facts(program);
    for (const personId of ['person-breeder', 'person-vet'])
      await call(program.dispatch, 'people.erase', { personId, papers: false });
    const bytes = () =>
      ['', '-wal'].map((end) => readFileSync(join(folder, `whelpside.sqlite${end}`)).toString('latin1')).join('');
    // What was handed over stays as it was.
    const db = new Database(join(folder, 'whelpside.sqlite'), { readonly: true });
    const rows = ['people', 'house', 'journal'].map((table) => JSON.stringify(db.prepare(`SELECT * FROM ${table}`).all())).join();
    db.close();
    for (const trace of PEOPLE) expect(rows).not.toContain(trace);
    expect(bytes()).not.toContain('Somebody else');
    while ((await program.dispatch('records.undo', {})).ok);
    const { house } = await call(program.dispatch, 'people.house', {});
    expect(house).toMatchObject({ breederName: '', address: '', phone: '', email: '', vetName: '', vetPhone: '' });
    expect(before).toMatchObject({ house: { breederName: 'A. Breeder', vetName: 'Vet at the Mill' } });
    program.close();
  }, 60_000);

  it('is written out, and taken in again', async () => {
    const from = open(folderOf(shape));
    const { folder, files } = await call(from.dispatch, 'records.export', { as: 'json' });
    const text = readFileSync(join(folder, files[0]?.file ?? ''), 'utf8');
    const into = open(join(scratch, `into-${shape}`));
    await call(into.dispatch, 'records.takeIn', { text });
    const { litters, ...others } = (await facts(from)) as { litters: unknown[][]; dams: { fields: { litterId: string } }[] };
    const real = litters.filter(([, , , , demo]) => demo !== true);
    const invented = litters.filter(([, , , , demo]) => demo === true).map(([id]) => id);
    const dams = others.dams.filter((dam) => !invented.includes(dam.fields.litterId));
    expect(await facts(into)).toEqual({ ...others, litters: real, dams });
    from.close();
    into.close();
  }, 60_000);

  it('is rescued at its shape, and brought up to date then', async () => {
    const folder = folderOf(shape);
    const rescued = join(scratch, `rescued-${shape}`);
    mkdirSync(rescued);
    expect(salvage(join(folder, 'whelpside.sqlite'), join(rescued, 'whelpside.sqlite')).leftOut).toBe(0);
    const program = open(rescued);
    expect(await facts(program)).toEqual(said(shape).now);
    program.close();
  }, 60_000);
});

it('an empty file gets the tables and nothing in them', () => {
  const db = new Database(':memory:');
  for (const step of MIGRATIONS.slice(0, 6)) runStep(db, step);
  for (const table of ['dogs', 'people', 'grownDogs', 'pregnancies', 'eaters'])
    expect(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get(), table).toBe(0);
});
