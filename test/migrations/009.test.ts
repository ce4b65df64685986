/** Chips: a file of shape 6, as its program wrote it, has none, and takes them; taking back and doing again find the row again. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, expect, it } from 'vitest';
import { localTime } from '../../core/calendar/clock.ts';
import { call } from '../contract/world.ts';
import { openOn } from '../main/open.ts';

const CLOCK = { instant: Date.UTC(2026, 10, 20, 8, 30), local: localTime('2026-11-20T08:30') };
const folder = mkdtempSync(join(tmpdir(), 'whelpside-009-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('an earlier file takes chips, one for a puppy', async () => {
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, 'whelpside.sqlite'),
    gunzipSync(readFileSync(new URL('../fixtures/files/6.sqlite.gz', import.meta.url))),
  );
  const program = openOn(folder, { now: () => CLOCK });
  const { litters } = await call(program.dispatch, 'litter.all', {});
  const { litter, puppies } = litters.find((l) => !l.litter.demo && l.puppies.length > 1) ??
    litters[0] ?? { litter: null, puppies: [] };
  const litterId = litter?.id ?? '';
  const puppyId = puppies[0]?.id ?? '';
  const chips = async () => (await call(program.dispatch, 'care.chips', { litterId })).chips;
  expect(await chips()).toEqual([]);
  const chip = { id: puppyId, code: '040000000000123', day: null, by: '' };
  await call(program.dispatch, 'care.setChip', { puppyId, change: { code: chip.code } });
  expect(await chips()).toEqual([chip]);
  await call(program.dispatch, 'care.removeChip', { puppyId });
  expect(await chips()).toEqual([]);
  await call(program.dispatch, 'care.setChip', { puppyId, change: { code: '982000001088420', by: 'the vet' } });
  expect(await chips()).toEqual([{ ...chip, code: '982000001088420', by: 'the vet' }]);
  for (const there of [[], [chip], []]) {
    await call(program.dispatch, 'records.undo', {});
    expect(await chips()).toEqual(there);
  }
  for (const there of [[chip], [], [{ ...chip, code: '982000001088420', by: 'the vet' }]]) {
    await call(program.dispatch, 'records.redo', {});
    expect(await chips()).toEqual(there);
  }
  program.close();
});
