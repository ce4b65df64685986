/**
 * The journal as data. A file of shape 6, as its program wrote it (`test/fixtures/files/README.md`): what was done is said in the words that it
 * was written with, and undo and redo do at every step what they did.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { dateOf, localTime } from '../../core/calendar/clock.ts';
import { addDays } from '../../core/calendar/day.ts';
import { doneSentence } from '../../core/words/en/journal.ts';
import type { Program } from '../../main/service/program.ts';
import { MIGRATIONS, runStep } from '../../main/store/migrations.ts';
import { salvage } from '../../main/store/salvage.ts';
import { call } from '../contract/world.ts';
import { openOn } from '../main/open.ts';

const CLOCK = { instant: Date.UTC(2026, 10, 20, 8, 30), local: localTime('2026-11-20T08:30') };
const scratch = mkdtempSync(join(tmpdir(), 'whelpside-007-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const kept = (name: string) => gunzipSync(readFileSync(new URL(`../fixtures/files/${name}.gz`, import.meta.url)));
const open = (folder: string): Program => openOn(folder, { now: () => CLOCK });

let count = 0;
function folderOfSix(): string {
  count += 1;
  const folder = join(scratch, String(count));
  mkdirSync(folder);
  writeFileSync(join(folder, 'whelpside.sqlite'), kept('6.sqlite'));
  return folder;
}

interface Answers {
  readonly now: object;
  readonly said: readonly (readonly [operation: string, sentence: string, undone: boolean])[];
  readonly redone: readonly object[];
  readonly undone: readonly object[];
}
const answers = JSON.parse(kept('6.answers.json').toString()) as Answers;

/** What the earlier program was asked. */
async function facts({ dispatch }: Program): Promise<object> {
  const { litters } = await call(dispatch, 'litter.all', {});
  const { feedings } = await call(dispatch, 'food.feedings', {});
  const perLitter = [];
  for (const { litter, puppies } of litters) {
    const { readings } = await call(dispatch, 'growth.readings', { litterId: litter.id });
    perLitter.push([
      litter.id,
      litter.name,
      litter.dam,
      litter.sire,
      puppies.map((p) => [p.id, p.place, p.state, p.stateOn, p.markings]),
      readings.filter((r) => !r.withdrawn).map((r) => [r.id, r.grams, r.supersededBy, r.held, r.kept]),
      (await call(dispatch, 'homing.handedOver', { litterId: litter.id })).plans,
      await call(dispatch, 'weaning.plan', { litterId: litter.id }),
    ]);
  }
  const { eaters, ...stock } = await call(dispatch, 'freezer.stock', { since: addDays(dateOf(CLOCK.local), -60) });
  // A field of later programs: no earlier file has it filled in.
  const { vetOutOfHours, ...house } = (await call(dispatch, 'people.house', {})).house;
  expect(vetOutOfHours).toBe('');
  return {
    litters: perLitter,
    dams: (await call(dispatch, 'dogs.dams', {})).dams,
    // A grown dog had no id that the window saw.
    fed: { feedings: feedings.map((f) => ({ ...f, dogs: f.dogs.map(({ name, kg }) => ({ name, kg })) })) },
    stock: { ...stock, dogs: eaters },
    house,
    foods: (await call(dispatch, 'food.all', {})).foods.map((f) => [f.id, f.retired, f.fields.note]),
    rules: (await call(dispatch, 'feeding.rules', {})).versions.length,
  };
}

/** What was done, as the foot and the list of Records say it. */
async function said({ dispatch }: Program): Promise<string[]> {
  const { done } = await call(dispatch, 'records.done', { limit: 500 });
  return done.map((d) => `${d.undone ? 'undone: ' : ''}${doneSentence(d, 'g')}`);
}

describe('a file of shape 6', () => {
  it('opens with everything in it, and undo and redo do at every step what they did', async () => {
    const program = open(folderOfSix());
    expect(await facts(program)).toEqual(answers.now);
    for (const [n, answer] of answers.redone.entries()) {
      await call(program.dispatch, 'records.redo', {});
      expect(await facts(program), `redo ${n + 1}`).toEqual(answer);
    }
    expect(await program.dispatch('records.redo', {})).toMatchObject({ ok: false, error: { code: 'nothing-to-redo' } });
    for (const _ of answers.redone) await call(program.dispatch, 'records.undo', {});
    for (const [n, answer] of answers.undone.entries()) {
      const { done } = await call(program.dispatch, 'records.undo', {});
      expect(await facts(program), `undo ${n + 1}: ${done.operation}`).toEqual(answer);
    }
    expect(await program.dispatch('records.undo', {})).toMatchObject({ ok: false, error: { code: 'nothing-to-undo' } });
    for (const _ of answers.undone) await call(program.dispatch, 'records.redo', {});
    expect(await facts(program)).toEqual(answers.now);
    program.close();
  }, 120_000);

  it('says what was done in the words of then, and what is done now beside it', async () => {
    const folder = folderOfSix();
    const program = open(folder);
    const then = answers.said.map(([, sentence, undone]) => `${undone ? 'undone: ' : ''}${sentence}`);
    expect(await said(program)).toEqual(then);
    const { litters } = await call(program.dispatch, 'litter.all', {});
    const puppy = litters.flatMap((l) => l.puppies).find((p) => p.callName === 'Vetch');
    await call(program.dispatch, 'litter.setState', { puppyId: puppy?.id ?? '', state: 'kept', on: dateOf(CLOCK.local) });
    expect(await said(program)).toEqual(['Vetch: kept', ...then]);
    await call(program.dispatch, 'records.undo', {});
    await call(program.dispatch, 'records.undo', {});
    // What had been undone before can no longer be done again, and stays in the list.
    const settings = then.findIndex((line) => !line.startsWith('undone: '));
    expect(await said(program)).toEqual(['undone: Vetch: kept', ...then.with(settings, `undone: ${then[settings]}`)]);
    program.close();
    const db = new Database(join(folder, 'whelpside.sqlite'), { readonly: true });
    const columns = db.prepare("SELECT who, about FROM journal WHERE operation = 'litter.setState' ORDER BY id").all();
    db.close();
    expect(columns.slice(0, -1)).toEqual([
      { who: 'C: kept', about: null },
      { who: 'C: back in the litter', about: null },
      { who: 'C: gone home', about: null },
    ]);
    expect(columns.at(-1)).toEqual({ who: '', about: '{"of":"puppies","names":["Vetch"],"state":"kept"}' });
  });

  it('is written out, and taken in again', async () => {
    const from = open(folderOfSix());
    const { folder, files } = await call(from.dispatch, 'records.export', { as: 'json' });
    const text = readFileSync(join(folder, files[0]?.file ?? ''), 'utf8');
    const into = open(join(scratch, 'into'));
    await call(into.dispatch, 'records.takeIn', { text });
    expect(await facts(into)).toEqual(await facts(from));
    from.close();
    into.close();
  }, 60_000);

  it('is rescued at its shape, and brought up to date then', async () => {
    const folder = folderOfSix();
    const rescued = join(scratch, 'rescued');
    mkdirSync(rescued);
    expect(salvage(join(folder, 'whelpside.sqlite'), join(rescued, 'whelpside.sqlite')).leftOut).toBe(0);
    const program = open(rescued);
    expect(await facts(program)).toEqual(answers.now);
    program.close();
  }, 60_000);
});

it('takes nothing for what was done but JSON', () => {
  const db = new Database(':memory:');
  for (const step of MIGRATIONS.slice(0, 7)) runStep(db, step);
  const put = (about: string | null) =>
    db
      .prepare("INSERT INTO journal (instant, operation, who, about, changes, state) VALUES (1, 'x', '', ?, '[]', 'done')")
      .run(about);
  put(null);
  put('{"of":"house"}');
  expect(() => put('the house')).toThrow(/CHECK/);
});
