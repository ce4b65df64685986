/**
 * Killed at any moment, the host keeps every command that it acknowledged, keeps none by half, and nothing stands in
 * the way of its next start.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { isIntact } from '../../main/store/file.ts';
import {
  before,
  call,
  type Dispatch,
  dayBefore,
  litterFields,
  machineClock,
  puppyFields,
  readingFields,
} from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { Gone, Killable } from './killable.ts';
import { Chance, report, rounds } from './numbers.ts';

const ROUNDS = rounds(1000, 24);
/** A house is used for so many rounds, then a new one is begun: listing all its readings would grow slow. */
const ROUNDS_A_HOUSE = 50;

const chance = new Chance(20_261_125);

interface Acknowledged {
  readonly readings: string[];
  readonly puppies: string[];
}

/** Commands as a weigh-in makes them, one after another, until the host is gone. */
async function work(host: Killable, acknowledged: Acknowledged): Promise<void> {
  await host.enter();
  const clock = machineClock();
  let [litterId, puppyId] = await firstPuppy(host);
  if (puppyId === '') {
    if (litterId === '')
      litterId = (await host.call('litter.begin', { litter: litterFields(clock, 'Yarrow'), puppies: [] })).litter.id;
    puppyId = (await host.call('litter.addPuppy', { litterId, fields: puppyFields(clock, 0), birthWeight: null })).puppy.id;
    acknowledged.puppies.push(puppyId);
  }
  for (let n = 1; ; n += 1) {
    const reading = readingFields(before(clock, 0, 1), 400 + n / 10);
    const recorded = await host.call('growth.record', { puppyId, reading });
    acknowledged.readings.push(recorded.reading.id);
    if (n % 5 === 0) {
      const corrected = await host.call('growth.correct', { readingId: recorded.reading.id, reading });
      acknowledged.readings.push(corrected.reading.id);
    }
    if (n % 7 === 0) {
      await host.call('records.undo', {});
      await host.call('records.redo', {});
    }
    if (n % 11 === 0) await host.call('homing.handOver', { puppyId, on: dayBefore(clock, 0), leaves: false });
    if (n % 13 === 0) await host.call('records.backUp', {});
  }
}

async function firstPuppy(host: Killable): Promise<[litterId: string, puppyId: string]> {
  const { litters } = await host.call('litter.all', {});
  return [litters[0]?.litter.id ?? '', litters[0]?.puppies[0]?.id ?? ''];
}

/** Lets a host work for a while and kills it: mostly in the middle of work, now and then while it starts. */
async function workUntilKilled(folder: string, acknowledged: Acknowledged): Promise<void> {
  const host = new Killable(folder);
  const count = acknowledged.readings.length;
  const working = work(host, acknowledged).catch((error: unknown) => {
    if (!(error instanceof Gone)) throw error;
  });
  if (chance.yes(0.15)) await later(chance.below(500));
  else {
    while (acknowledged.readings.length === count) await Promise.race([later(2), working]);
    await later(chance.below(70));
  }
  await host.kill();
  await working;
}

async function readingIds(dispatch: Dispatch): Promise<Map<string, boolean>> {
  const { litters } = await call(dispatch, 'litter.all', {});
  const ids = new Map<string, boolean>();
  for (const { litter } of litters) {
    const { readings } = await call(dispatch, 'growth.readings', { litterId: litter.id });
    for (const r of readings) ids.set(r.id, r.withdrawn);
  }
  return ids;
}

interface Insert {
  readonly kind: string;
  readonly table: string;
  readonly id: string;
}

/** Commands of which only a part is in the file: rows without their entry, entries without their rows. */
function halves(file: string): string[] {
  const db = new Database(file, { readonly: true });
  const entries = db.prepare<[], { id: number; state: string; changes: string }>('SELECT id, state, changes FROM journal').all();
  const found: string[] = [];
  const entered = new Map<string, number>([
    ['litters', 0],
    ['puppies', 0],
    ['readings', 0],
    ['plans', 0],
  ]);
  for (const { id, state, changes } of entries) {
    for (const change of JSON.parse(changes) as Insert[]) {
      if (change.kind !== 'insert') continue;
      entered.set(change.table, (entered.get(change.table) ?? 0) + 1);
      const mark = change.table === 'readings' ? 'withdrawn' : 'removed';
      const taken = db.prepare<[string], number>(`SELECT ${mark} FROM ${change.table} WHERE id = ?`).pluck().get(change.id);
      if (taken !== (state === 'done' ? 0 : 1)) found.push(`entry ${id} (${state}): ${change.table} ${mark} ${String(taken)}`);
    }
  }
  for (const [table, count] of entered) {
    const rows = db.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();
    if (rows !== count) found.push(`${table}: ${String(rows)} rows, ${count} entered`);
  }
  const unanswered = db.prepare(
    'SELECT 1 FROM readings o JOIN readings n ON o.supersededBy = n.id WHERE n.supersedes IS NOT o.id',
  );
  if (unanswered.get() !== undefined) found.push('a correction by half');
  if (db.pragma('integrity_check', { simple: true }) !== 'ok') found.push('integrity_check');
  if ((db.pragma('foreign_key_check') as unknown[]).length > 0) found.push('foreign_key_check');
  db.close();
  return found;
}

/** Takes the last command back and does it again: the facts are the same then. */
async function undoWorks(dispatch: Dispatch): Promise<void> {
  const facts = await readingIds(dispatch);
  const undone = await dispatch('records.undo', {});
  if (!undone.ok) return expect(undone.error.code).toBe('nothing-to-undo');
  await call(dispatch, 'records.redo', {});
  expect(await readingIds(dispatch)).toEqual(facts);
}

it(`keeps every acknowledged command over ${ROUNDS} kills of the host`, async () => {
  let lost = 0;
  let silent = 0;
  let recovered = 0;
  for (let done = 0; done < ROUNDS; done += ROUNDS_A_HOUSE) {
    const { folder, remove } = scratchFolder();
    const acknowledged: Acknowledged = { readings: [], puppies: [] };
    const house = Math.min(ROUNDS_A_HOUSE, ROUNDS - done);
    for (let round = 0; round < house; round += 1) {
      await workUntilKilled(folder, acknowledged);
      const program = openOn(folder);
      const found = await readingIds(program.dispatch);
      lost += acknowledged.readings.filter((id) => !found.has(id)).length;
      // A kill between undo and redo leaves the last one taken back.
      if ([...found.values()].includes(true)) while ((await program.dispatch('records.redo', {})).ok);
      await undoWorks(program.dispatch);
      const wrong = halves(join(folder, 'whelpside.sqlite'));
      program.close();
      if (wrong.length > 0) silent += 1;
      else recovered += 1;
      expect(wrong, `round ${done + round}`).toEqual([]);
    }
    expect(acknowledged.readings.length, 'the host was at work').toBeGreaterThan(house / 2);
    const copies = existsSync(join(folder, 'backups')) ? readdirSync(join(folder, 'backups')) : [];
    for (const file of copies.filter((name) => name.endsWith('.sqlite')))
      expect(isIntact(join(folder, 'backups', file)), file).toBe(true);
    remove();
  }
  report({ what: 'killed while it works', rounds: ROUNDS, lost, silent, recovered });
  expect(lost).toBe(0);
}, 3_600_000);
