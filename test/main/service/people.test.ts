/** People: everybody who is written down, each taken out alone, and erased so that no byte of the file holds her. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import { doneSentence } from '../../../core/words/en/journal.ts';
import type { Program } from '../../../main/service/program.ts';
import {
  allFacts,
  call,
  dayBefore,
  keptPlan,
  makeWorld,
  readingFields,
  starterFields,
  type World,
} from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

let program: Program;
let scratch: ReturnType<typeof scratchFolder>;
let world: World;

beforeEach(async () => {
  scratch = scratchFolder();
  program = openOn(scratch.folder);
  world = await makeWorld(program.dispatch);
});
afterEach(() => {
  program.close();
  scratch.remove();
});

const everybody = async () => (await call(program.dispatch, 'people.all', {})).people;
const named = async (name: string) => {
  const person = (await everybody()).find((p) => p.name === name);
  if (person === undefined) throw new Error(`nobody is called ${name}`);
  return person;
};
const starter = (who: string, grams = 454) =>
  call(program.dispatch, 'freezer.addStarter', { fields: { ...starterFields(world.clock), who, grams } });
const facts = () => allFacts({ dispatch: program.dispatch, clock: world.clock });
const stock = () => call(program.dispatch, 'freezer.stock', { since: dayBefore(world.clock, 60) });
const said = async () =>
  (await call(program.dispatch, 'records.done', { limit: 500 })).done.map((d) => doneSentence(d, 'g')).join('\n');

/** Every byte of the data file and of what SQLite keeps beside it. */
function bytes(folder = scratch.folder): string {
  return readdirSync(folder)
    .filter((name) => name.startsWith('whelpside.sqlite'))
    .map((name) => readFileSync(join(folder, name), 'latin1'))
    .join();
}

/** Takes everything back and does it again: nothing that was erased may come with it. */
async function backAndForth(dispatch: Program['dispatch']): Promise<void> {
  while ((await dispatch('records.undo', {})).ok);
  while ((await dispatch('records.redo', {})).ok);
}

describe('a buyer', () => {
  it('is in the list once, whatever was renamed and taken back', async () => {
    const { starter: pack } = await starter('Tansy Quarrington');
    await starter('Tansy Quarrington');
    await call(program.dispatch, 'freezer.changeStarter', { starterId: pack.id, change: { who: 'Meadow Quarrington' } });
    await call(program.dispatch, 'freezer.removeStarter', { starterId: pack.id });
    expect((await everybody()).map((p) => [p.name, p.role, p.isNamed, p.starters])).toEqual([
      ['Vetch', 'buyer', true, 1],
      ['Tansy Quarrington', 'buyer', true, 1],
      ['Meadow Quarrington', 'buyer', false, 0],
    ]);
  });

  it('is erased out of every byte, and what was put aside stays for a buyer', async () => {
    await starter('Tansy Quarrington', 454);
    const { starter: other } = await starter('Somebody Else', 300);
    await call(program.dispatch, 'freezer.changeStarter', { starterId: other.id, change: { who: 'Tansy Quarrington' } });
    await call(program.dispatch, 'growth.record', {
      puppyId: world.unweighed.id,
      reading: readingFields(world.clock, 980),
    });
    const { backup } = await call(program.dispatch, 'records.backUp', {});
    const { id: personId } = await named('Tansy Quarrington');
    expect(await said()).toContain('Starter pack for Tansy Quarrington');
    expect(bytes()).toContain('Quarrington');

    expect(await call(program.dispatch, 'people.erase', { personId, papers: false })).toEqual({ starters: 2, papers: 0 });

    expect(bytes()).not.toContain('Quarrington');
    expect((await stock()).starters.map((s) => [s.who, s.grams]).toSorted()).toEqual([
      ['', 300],
      ['', 454],
      ['Vetch', 454],
    ]);
    expect(await said()).toContain('Starter pack for a buyer, 454\u00a0g');
    expect(await said()).not.toContain('Quarrington');
    expect((await everybody()).map((p) => p.name)).toEqual(['Vetch', 'Somebody Else']);
    // What hangs on her can still be changed, and stays hers who has no name.
    const of300 = (await stock()).starters.find((s) => s.grams === 300);
    await call(program.dispatch, 'freezer.changeStarter', { starterId: of300?.id ?? '', change: { grams: 310 } });
    expect((await stock()).starters.map((s) => s.who).toSorted()).toEqual(['', '', 'Vetch']);
    const now = await facts();
    await backAndForth(program.dispatch);
    expect(await facts()).toEqual(now);
    program.close();
    expect(bytes()).not.toContain('Quarrington');
    expect(readFileSync(join(scratch.folder, 'backups', backup.file), 'latin1')).toContain('Quarrington');
    program = openOn(scratch.folder);
    expect(await facts()).toEqual(now);
    expect(await program.dispatch('people.erase', { personId, papers: false })).toMatchObject({ error: { code: 'not-found' } });
  });

  it('who was taken back is erased too, under every row of that name', async () => {
    const { starter: pack } = await starter('Tansy Quarrington');
    await call(program.dispatch, 'freezer.removeStarter', { starterId: pack.id });
    await starter('Tansy Quarrington');
    const { id: personId, isNamed } = await named('Tansy Quarrington');
    expect(isNamed).toBe(true);
    await call(program.dispatch, 'people.erase', { personId, papers: false });
    expect(bytes()).not.toContain('Quarrington');
    await backAndForth(program.dispatch);
    expect(bytes()).not.toContain('Quarrington');
  });

  it('is written out alone', async () => {
    await starter('Tansy Quarrington', 454);
    await starter('Somebody Else', 300);
    const { id: personId } = await named('Tansy Quarrington');
    const { folder, files } = await call(program.dispatch, 'people.export', { personId });
    expect(files.map((f) => f.file)).toEqual([expect.stringMatching(/^whelpside [-\d]+ \d{4} person\.json$/)]);
    const text = readFileSync(join(folder, files[0]?.file ?? ''), 'utf8');
    expect(JSON.parse(text)).toMatchObject({
      format: 'whelpside person',
      person: { id: personId, role: 'buyer', name: 'Tansy Quarrington' },
      kept: { people: [{ name: 'Tansy Quarrington' }], starters: [{ personId, grams: 454 }] },
    });
    expect(text).not.toContain('Somebody Else');
  });
});

describe('breeder and vet on plans that were handed over', () => {
  const HOUSE = {
    ...DEFAULT_HOUSE,
    breederName: 'Ottilie Quarrington',
    address: 'Nettlecombe Lane 3',
    phone: '0123 998877',
    vetName: 'Dr. Pemberwick',
    vetPhone: '0123 445566',
  } as const;
  let planId = '';
  beforeEach(async () => {
    await call(program.dispatch, 'people.setHouse', { change: HOUSE });
    const on = dayBefore(world.clock, 0);
    const puppyId = world.puppies[1]?.id ?? '';
    planId = (await call(program.dispatch, 'homing.handOver', { puppyId, on, leaves: false })).plan.id;
    // What stood on that plan is no longer what is written.
    await call(program.dispatch, 'people.setHouse', { change: { breederName: 'O. Quarrington-Reed' } });
  });

  it('leave what they did where they are named beside it, and the journal of that', async () => {
    const puppyId = world.chip.id;
    await call(program.dispatch, 'care.setChip', { puppyId, change: { by: 'Dr. Pemberwick' } });
    await call(program.dispatch, 'care.setChip', { puppyId, change: { by: 'Somebody Else' } });
    await call(program.dispatch, 'care.setChip', { puppyId, change: { by: ' Dr. Pemberwick' } });
    await call(program.dispatch, 'people.erase', { personId: 'person-vet', papers: true });
    expect(bytes()).not.toContain('Pemberwick');
    const by = async () =>
      (await call(program.dispatch, 'care.chips', { litterId: world.litter.id })).chips.find((c) => c.id === puppyId)?.by;
    expect(await by()).toBe('');
    await call(program.dispatch, 'records.undo', {});
    expect(await by()).toBe('Somebody Else');
    await backAndForth(program.dispatch);
    expect(bytes()).not.toContain('Pemberwick');
  });

  it('stay on it as it was printed, and it is said how many there are', async () => {
    const before = await keptPlan(program.dispatch, planId);
    expect(before.contact).toMatchObject({ name: HOUSE.breederName, address: HOUSE.address });
    expect((await everybody()).map((p) => [p.role, p.papers])).toEqual([
      ['buyer', 0],
      ['breeder', 1],
      ['vet', 1],
    ]);
    const answer = await call(program.dispatch, 'people.erase', { personId: 'person-breeder', papers: false });
    expect(answer).toEqual({ starters: 0, papers: 1 });
    expect(await keptPlan(program.dispatch, planId)).toEqual(before);
    expect((await call(program.dispatch, 'people.house', {})).house).toMatchObject({
      breederName: '',
      vetName: 'Dr. Pemberwick',
    });
  });

  it('leave it when she says so, with every name that was ever on it, and nothing else of it changes', async () => {
    const { contact, vet, ...before } = await keptPlan(program.dispatch, planId);
    await call(program.dispatch, 'people.erase', { personId: 'person-breeder', papers: true });
    for (const word of ['Quarrington', 'Nettlecombe', '998877']) expect(bytes(), word).not.toContain(word);
    const { contact: blank, vet: same, ...after } = await keptPlan(program.dispatch, planId);
    expect(after).toEqual(before);
    expect(same).toEqual(vet);
    expect(blank).toEqual({ ...contact, name: '', address: '', phone: '', email: '' });
    expect(await call(program.dispatch, 'people.erase', { personId: 'person-vet', papers: true })).toEqual({
      starters: 0,
      papers: 1,
    });
    for (const word of ['Pemberwick', '445566']) expect(bytes(), word).not.toContain(word);
    await backAndForth(program.dispatch);
    program.close();
    for (const word of ['Quarrington', 'Nettlecombe', '998877', 'Pemberwick', '445566'])
      expect(bytes(), word).not.toContain(word);
    program = openOn(scratch.folder);
  });
});

it('a buyer in a file of shape 6 leaves the words of its old entries too', async () => {
  const folder = join(scratch.folder, 'six');
  mkdirSync(folder);
  const file = new URL('../../fixtures/files/6.sqlite.gz', import.meta.url);
  writeFileSync(join(folder, 'whelpside.sqlite'), gunzipSync(readFileSync(file)));
  expect(existsSync(file)).toBe(true);
  const six = openOn(folder);
  for (const name of ['Somebody Tansy', 'Another Buyer']) {
    expect(bytes(folder)).toContain(name);
    const person = (await call(six.dispatch, 'people.all', {})).people.find((p) => p.name === name);
    await call(six.dispatch, 'people.erase', { personId: person?.id ?? '', papers: false });
    expect(bytes(folder), name).not.toContain(name);
  }
  const { done } = await call(six.dispatch, 'records.done', { limit: 500 });
  expect(done.map((d) => doneSentence(d, 'g'))).toContain('Starter pack for a buyer, 908\u00a0g');
  await backAndForth(six.dispatch);
  six.close();
  for (const name of ['Somebody Tansy', 'Another Buyer']) expect(bytes(folder), name).not.toContain(name);
});
