/** Copies that nobody asks for, what lies beside them, what a salvage takes from them, and mistakes that are written down. */
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localTime } from '../../core/calendar/clock.ts';
import { disarm, rearm } from '../../core/records/csv.ts';
import { tableOfText } from '../../core/records/table.ts';
import { openProgramOrRescue, type Program } from '../../main/service/program.ts';
import { listBackups } from '../../main/store/backup.ts';
import { salvage } from '../../main/store/salvage.ts';
import { before, call, machineClock, makeWorld, readingFields, type World } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { onlyWhere } from '../only-where.ts';
import { rowsOfFile } from './dump.ts';
import { report } from './numbers.ts';

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => remove());

const at = (day: string, clock: string) => ({
  instant: Date.parse(`${day}T${clock}:00Z`),
  local: localTime(`${day}T${clock}`),
});
const inBackups = () => readdirSync(join(folder, 'backups')).sort();

describe('the day’s own weights', () => {
  let clock = at('2026-05-01', '06:30');
  let program: Program;
  let puppyId = '';
  beforeEach(async () => {
    clock = at('2026-05-01', '06:30');
    program = openOn(folder, { now: () => clock });
    const world = await makeWorldAt();
    puppyId = world;
  });
  afterEach(() => program.close());

  async function makeWorldAt(): Promise<string> {
    const whelped = at('2026-04-20', '02:00');
    const { litter } = await call(program.dispatch, 'litter.begin', {
      litter: {
        name: '',
        dam: 'Sorrel',
        sire: '',
        breed: '',
        sizeClass: null,
        adultDogKg: null,
        adultBitchKg: null,
        breedBirthGrams: null,
        whelpedAt: whelped.local,
        whelpedInstant: whelped.instant,
      },
      puppies: [],
    });
    const collar = { letter: 'A', colour: 'red', pattern: 'plain' } as const;
    const fields = {
      collar,
      callName: '',
      sex: 'bitch',
      markings: '',
      birthOrder: 1,
      bornAt: whelped.local,
      bornInstant: whelped.instant,
    } as const;
    return (await call(program.dispatch, 'litter.addPuppy', { litterId: litter.id, fields, birthWeight: null })).puppy.id;
  }
  const weigh = async (grams: number) =>
    (await call(program.dispatch, 'growth.record', { puppyId, reading: readingFields(clock, grams) })).reading.id;
  const copied = (id: string) =>
    inBackups().some((name) => rowsOfFile(join(folder, 'backups', name)).some((row) => row.includes(id)));

  it('are in a copy as soon as the morning is done: with the first command after two', async () => {
    const morning = await weigh(900);
    clock = at('2026-05-01', '13:59');
    expect(readdirSync(folder)).not.toContain('backups');
    clock = at('2026-05-01', '14:00');
    await weigh(905);
    expect(copied(morning)).toBe(true);
  });

  it('are in a copy after a quarter of an hour of quiet, and at close', async () => {
    const morning = await weigh(900);
    clock = at('2026-05-01', '06:45');
    const next = await weigh(901);
    expect(copied(morning)).toBe(true);
    expect(copied(next)).toBe(false);
    program.close();
    expect(copied(next)).toBe(true);
    expect(inBackups(), 'one copy of the day stands, the later').toHaveLength(1);
    program = openOn(folder, { now: () => clock });
  });

  it('written before midnight are in the copy that begins the next day', async () => {
    clock = at('2026-05-01', '23:59');
    const late = await weigh(900);
    clock = at('2026-05-02', '00:00');
    await weigh(901);
    expect(inBackups()).toContain('whelpside-2026-05-02-daily.sqlite');
    expect(copied(late)).toBe(true);
  });

  it('a clock that is set back takes no copy away, and today’s is made all the same', async () => {
    for (let day = 1; day <= 20; day += 1) {
      clock = at(`2027-03-${String(day).padStart(2, '0')}`, '06:30');
      await weigh(900 + day);
      program.close();
      program = openOn(folder, { now: () => clock });
    }
    const ahead = inBackups();
    clock = at('2026-05-03', '06:30');
    await call(program.dispatch, 'feeding.setRules', {
      from: '2026-05-03',
      change: (await call(program.dispatch, 'feeding.rules', {})).versions[0]?.rules ?? {},
    });
    program.close();
    program = openOn(folder, { now: () => clock });
    for (const name of ahead) expect(inBackups()).toContain(name);
    expect(inBackups().some((name) => name.startsWith('whelpside-2026-05-03'))).toBe(true);
  });
});

describe('odd things among the backups', () => {
  let program: Program;
  let world: World;
  beforeEach(async () => {
    program = openOn(folder);
    world = await makeWorld(program.dispatch);
    await call(program.dispatch, 'records.backUp', {});
  });
  afterEach(() => program.close());

  it('a folder, a link and a letter by a copy’s name harm nothing', async () => {
    const today = machineClock().local.slice(0, 10);
    const backups = join(folder, 'backups');
    const good = listBackups(folder).map((b) => b.file);
    mkdirSync(join(backups, `whelpside-${today}-daily.sqlite`));
    mkdirSync(join(backups, 'whelpside.part'));
    writeFileSync(join(backups, 'whelpside.part', 'kept'), '');
    symlinkSync('nowhere', join(backups, 'whelpside-2026-01-01-daily.sqlite'));
    writeFileSync(join(backups, 'whelpside-2026-01-02-daily.sqlite'), 'Dear diary');
    program.close();
    program = openOn(folder);
    const { backups: listed } = await call(program.dispatch, 'records.status', {});
    expect(listed.filter((b) => b.checked).map((b) => b.file)).toEqual(expect.arrayContaining(good));
    expect(await program.dispatch('records.backUp', {})).toMatchObject({ ok: true });
    const reading = readingFields(before(world.clock, 0, 1), 1010);
    await call(program.dispatch, 'growth.record', { puppyId: world.puppies[0]?.id ?? '', reading });
    program.close();
    const holding = listBackups(folder).filter((b) => b.kind === 'daily' && b.checked);
    expect(holding.length, 'today has a copy of its own all the same').toBeGreaterThan(0);
    program = openOn(folder);
  });

  it('backups that are a file are no backups, and no lock', async () => {
    rmSync(join(folder, 'backups'), { recursive: true });
    writeFileSync(join(folder, 'backups'), '');
    expect((await call(program.dispatch, 'records.status', {})).backups).toEqual([]);
  });

  it('a stranger’s file on a stick is left alone, whatever it is called', async () => {
    const stick = join(folder, 'stick');
    mkdirSync(stick);
    writeFileSync(join(stick, 'whelpside.part'), 'a stranger’s');
    expect(await program.dispatch('records.backUpTo', { folder: stick })).toMatchObject({ ok: true });
    expect(readFileSync(join(stick, 'whelpside.part'), 'utf8')).toBe('a stranger’s');
    expect(readdirSync(stick)).toHaveLength(2);
  });

  const hasDevices = onlyWhere(process.platform === 'linux', 'only Linux shows its devices there');
  it.runIf(hasDevices).each(['/dev', '/dev/shm', '/proc', '/proc/self', '/sys'])('%s is no place for a copy', async (place) => {
    const answer = await program.dispatch('records.backUpTo', { folder: place });
    expect(answer).toMatchObject({ ok: false, error: { code: 'bad-input', field: 'folder' } });
  });

  it('a lock that is not one any more shuts nobody out', () => {
    program.close();
    writeFileSync(join(folder, 'whelpside.lock'), 'no lock at all, but words. '.repeat(400));
    program = openOn(folder);
  });
});

it('a salvage takes parents that are lost from the newest backup, and their weights stay', async () => {
  const program = openOn(folder);
  const world = await makeWorld(program.dispatch);
  const { backup } = await call(program.dispatch, 'records.backUp', {});
  program.close();
  const file = join(folder, 'whelpside.sqlite');
  const db = new Database(file);
  db.pragma('foreign_keys = OFF');
  const id = world.puppies[0]?.id ?? '';
  const weights = db.prepare('SELECT count(*) FROM readings WHERE puppyId = ?').pluck().get(id);
  db.prepare('DELETE FROM puppies WHERE id = ?').run(id); // as if the page it stood on were lost
  db.close();
  const count = (backups: string[]) => {
    const target = join(folder, 'salvaged');
    rmSync(target, { force: true });
    salvage(file, target, backups);
    const made = new Database(target, { readonly: true });
    const found = made.prepare('SELECT count(*) FROM readings WHERE puppyId = ?').pluck().get(id);
    made.close();
    return found;
  };
  expect(Number(weights)).toBeGreaterThan(0);
  expect(count([])).toBe(0);
  expect(count([join(folder, 'backups', backup.file)])).toBe(weights);
  report({ what: 'parents taken from a backup', rounds: 1, lost: 0, recovered: 1 });
});

it('a mistake of the program leaves a dated line that Records shows, private, small, without folders', async () => {
  const paper = {
    print: () => {
      throw new TypeError(`broken in ${folder}\nsecond line`);
    },
  };
  const program = openOn(folder, { paper, onFault: () => undefined });
  const world = await makeWorld(program.dispatch);
  const save = () => program.dispatch('records.savePaper', { of: { kind: 'handed-over', planId: world.planId }, paper: 'a4' });
  expect(await save()).toMatchObject({ ok: false, error: { code: 'internal', message: 'the program made a mistake' } });
  const { file, lines } = await call(program.dispatch, 'records.faults', {});
  expect(lines).toEqual([
    expect.stringMatching(
      /^\d{4}-\d\d-\d\d \d\d:\d\d 0\.0\.0-test records\.savePaper: TypeError: broken in … second line \(keeping\.test\.ts:\d+\)$/,
    ),
  ]);
  if (process.platform !== 'win32') expect(statSync(file).mode & 0o077).toBe(0);
  writeFileSync(file, `${'x'.repeat(99)}\n`.repeat(1000));
  await save();
  expect(statSync(file).size).toBeLessThan(60_000);
  expect((await call(program.dispatch, 'records.faults', {})).lines[0]).toContain('records.savePaper');
  program.close();
});

it('a litter of her own by an invented dam stays when the invented litters go, its dam too', async () => {
  const program = openOn(folder);
  await call(program.dispatch, 'records.addDemo', { now: machineClock().local, utcOffsetMinutes: 0 });
  const world = await makeWorld(program.dispatch);
  const file = join(folder, 'whelpside.sqlite');
  const db = new Database(file);
  const dam = db.prepare<[], string>('SELECT id FROM dogs WHERE demo = 1').pluck().get() ?? '';
  db.prepare('UPDATE litters SET damId = ? WHERE id = ?').run(dam, world.litter.id);
  db.close();
  const own = (await call(program.dispatch, 'growth.readings', { litterId: world.litter.id })).readings.length;
  await call(program.dispatch, 'records.removeDemo', {});
  expect((await call(program.dispatch, 'growth.readings', { litterId: world.litter.id })).readings).toHaveLength(own);
  expect(rowsOfFile(file).some((row) => row.startsWith('dogs ') && row.includes(dam))).toBe(true);
  expect((await call(program.dispatch, 'records.status', {})).demo).toBe(false);
  program.close();
});

describe('cells', () => {
  it.each(['=1+1', ' =1+1', '\u00a0=1+1', '\u200b@SUM(1)', '  \t+1', '\ufeff-1', "'  =1", '\u3000\uff1d1'])(
    '%j is disarmed, and comes back as it was',
    (text) => {
      expect(disarm(text)).toBe(`'${text}`);
      expect(rearm(disarm(text))).toBe(text);
    },
  );

  it.each(['Vetch', ' Vetch', "'Vetch", '4 - 5', ''])('%j is left alone', (text) => {
    expect(disarm(text)).toBe(text);
    expect(rearm(text)).toBe(text);
  });

  it('that are huge are looked at no further than a weight, a day or a name goes', () => {
    const read = tableOfText(`date,A\n2026-05-01,${'9 '.repeat(1_000_000)}\n`);
    expect(read.ok && read.table.rows[1]?.[1]).toHaveLength(200);
  });
});

it('every state that refuses a start of hers offers a way on', async () => {
  openOn(folder).close();
  chmodSync(folder, 0o700);
  const file = join(folder, 'whelpside.sqlite');
  const whole = readFileSync(file);
  const states: Record<string, (bytes: Buffer) => Buffer> = {
    damaged: (bytes) => bytes.fill(0, 0, 100),
    foreign: (bytes) => {
      bytes.writeUInt32BE(7, 68);
      return bytes;
    },
    newer: (bytes) => {
      bytes.writeUInt32BE(99, 60);
      return bytes;
    },
    changed: (bytes) => {
      bytes.writeUInt32BE(bytes.readUInt32BE(24) + 1, 24);
      return bytes;
    },
  };
  for (const [problem, harm] of Object.entries(states)) {
    writeFileSync(file, harm(Buffer.from(whole)));
    const program = openProgramOrRescue({ folder, now: machineClock, newId: () => 'none', paper: null, version: '0' });
    expect((await call(program.dispatch, 'records.rescue', {})).rescue?.problem).toBe(problem);
    program.close();
  }
});
