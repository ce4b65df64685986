import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { simulate } from './simulate.ts';

const run = promisify(execFile);

interface Said {
  readonly puppy: string;
  readonly date: string;
  readonly at: string;
  readonly level: string;
  readonly kind: string;
  readonly with?: string;
  readonly reason: string;
}

function csv(sim: ReturnType<typeof simulate>, until = Number.POSITIVE_INFINITY): string {
  const rows = sim.input.readings.filter((r) => r.instant <= until).map((r) => `${r.puppyId},${r.at},${r.grams}`);
  return `puppy,at,weight_g\n${rows.join('\n')}\n`;
}

describe('assessing a folder of weights', () => {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-assess-'));
  const out = join(folder, 'out');
  const sick = simulate('acute', 31, { puppies: 6 });
  const onset = (sick.input.puppies[0]?.bornInstant ?? 0) + (sick.troubles[0]?.onset ?? 0) * 86_400_000;
  let code = 0;
  let errors = '';
  let output = '';

  beforeAll(async () => {
    writeFileSync(join(folder, 'sick.csv'), csv(sick));
    writeFileSync(join(folder, 'cut.csv'), csv(sick, onset + 3 * 86_400_000));
    writeFileSync(join(folder, 'bad.csv'), 'puppy,at,weight_g\nA,2026-03-02T25:00,400\n');
    writeFileSync(
      join(folder, 'quoted.csv'),
      '\uFEFF"puppy","at","weight_g"\r\n"A","2026-03-02T07:00",400\r\n"A","2026-03-03T07:00",\r\n',
    );
    for (const name of ['small', 'small-no-note']) {
      const weights = ['A,2026-03-02T07:00,390', 'B,2026-03-02T07:01,410', 'C,2026-03-02T07:02,265'];
      writeFileSync(join(folder, `${name}.csv`), `puppy,at,weight_g\n${weights.join('\n')}\n`);
    }
    writeFileSync(
      join(folder, 'litters.json'),
      JSON.stringify([
        { file: 'small.csv', born_at: '2026-03-02T04:10', breed: 'Mudi', breed_birth_g: 400 },
        { file: 'sick.csv', born_at: '2026-03-02T04:10', expected_adult_kg: 20, puppies: [{ puppy: 'puppy-001', sex: 'f' }] },
      ]),
    );
    try {
      await run(process.execPath, [resolve('build/assess.ts'), folder, '--out', out]);
    } catch (error) {
      const failure = error as { code: number; stderr: string; stdout: string };
      code = failure.code;
      output = failure.stdout;
      errors = failure.stderr;
    }
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const read = (name: string): Said[] => JSON.parse(readFileSync(join(out, name), 'utf8'));

  it('one bad file is named, the others are written, the exit code says so', () => {
    expect(code).toBe(1);
    expect(errors).toContain('bad.csv: line 2: 2026-03-02T25:00 is not a time');
    expect(readdirSync(out).sort()).toEqual(['cut.json', 'quoted.json', 'sick.json', 'small-no-note.json', 'small.json']);
    expect(read('quoted.json')).toEqual([]);
  });

  it('a newborn is held against the usual birth weight of its breed where that is given', () => {
    expect(read('small.json')).toMatchObject([
      { puppy: 'C', level: 'watch', kind: 'puppy', reason: expect.stringContaining('under two thirds of the usual 400 g') },
    ]);
    expect(read('small-no-note.json')).toEqual([]);
  });

  it('says where the first weighing was taken as the birth', () => {
    expect(output).toContain('cut.csv: no born_at is noted, so the first weighing is taken as the birth');
    expect(output).not.toContain('sick.csv: no born_at');
  });

  it('says who is in trouble, since when and why', () => {
    const acts = read('sick.json').filter(
      (s) => s.kind === 'puppy' && s.puppy === sick.troubles[0]?.puppyId && s.level === 'act',
    );
    expect(acts.length).toBeGreaterThan(0);
    expect(acts[0]?.at.slice(0, 10)).toBe(acts[0]?.date);
    expect(acts[0]?.reason).toMatch(/^(Since|No gain since) \w+/);
  });

  it('a file that ends earlier says the same until then', () => {
    const cut = read('cut.json');
    const last = cut.at(-1)?.date ?? '';
    expect(cut.length).toBeGreaterThan(0);
    const whole = read('sick.json').filter((s) => s.date < last);
    expect(cut.filter((s) => s.date < last).map((s) => [s.puppy, s.at, s.level, s.kind])).toEqual(
      whole.map((s) => [s.puppy, s.at, s.level, s.kind]),
    );
  });
});
