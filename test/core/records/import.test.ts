import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LocalTime, localTime } from '../../../core/calendar/clock.ts';
import { USUAL_COLLARS } from '../../../core/litter/collar.ts';
import { type Litter, type Puppy, puppySchema, type Reading } from '../../../core/litter/litter.ts';
import { writeCsv } from '../../../core/records/csv.ts';
import { weightsTable } from '../../../core/records/export.ts';
import { bornIn, type ImportAnswers, type ImportRow, type ImportTarget, judgeTable } from '../../../core/records/import.ts';
import { readColumns, type TableAnswers, type TableRead } from '../../../core/records/import-columns.ts';
import { readClockCell, readDateCell } from '../../../core/records/import-dates.ts';
import { newKey, type Who } from '../../../core/records/import-labels.ts';
import { matchPuppies, newPuppies } from '../../../core/records/import-puppies.ts';
import { tableOfText } from '../../../core/records/table.ts';
import { MASS_UNITS, toGrams } from '../../../core/units/mass.ts';

const PLAIN: TableAnswers = { shape: null, meanings: {}, litter: null };
const BORN = localTime('2026-11-20T14:30');
const NOW = localTime('2026-11-30T08:00');

const puppy = (index: number, more: Partial<Puppy> = {}): Puppy =>
  puppySchema.parse({
    id: `puppy-000${index}`,
    litterId: 'litter-0001',
    collar: USUAL_COLLARS[index],
    callName: '',
    sex: index % 2 === 0 ? 'bitch' : 'dog',
    markings: '',
    birthOrder: index + 1,
    bornAt: BORN,
    bornInstant: Date.UTC(2026, 10, 20, 14, 30),
    place: index,
    state: 'litter',
    stateOn: null,
    ...more,
  });
const PUPPIES = [puppy(0, { callName: 'Elder' }), puppy(1), puppy(2)];

const reading = (puppyId: string, at: string, grams: number, more: Partial<Reading> = {}): Reading => ({
  id: `reading-${puppyId}-${at.replace(/\D/g, '')}`,
  puppyId,
  at: localTime(at),
  instant: Date.parse(`${at}Z`),
  session: 'morning',
  grams: toGrams(grams),
  typed: String(grams),
  unit: 'g',
  source: 'keyboard',
  held: false,
  kept: false,
  supersedes: null,
  supersededBy: null,
  withdrawn: false,
  recordedInstant: 0,
  ...more,
});

const target = (more: Partial<ImportTarget> = {}): ImportTarget => ({
  whelpedAt: BORN,
  puppies: PUPPIES,
  readings: [],
  now: NOW,
  ...more,
});

function read(text: string, answers: Partial<TableAnswers> = {}): TableRead {
  const table = tableOfText(text);
  if (!table.ok) throw new Error(table.fault.code);
  const result = readColumns(table.table, { ...PLAIN, ...answers });
  if (!result.ok) throw new Error(result.fault);
  return result.read;
}

function judge(
  text: string,
  more: Partial<ImportAnswers> = {},
  into: ImportTarget = target(),
  answers: Partial<TableAnswers> = {},
): ImportRow[] {
  const table = read(text, answers);
  return judgeTable(table, { order: null, unit: 'g', who: matchPuppies(table.labels, into.puppies), ...more }, into);
}

const brief = (rows: readonly ImportRow[]) =>
  rows.map((r) =>
    r.reading === null
      ? `${r.state.is === 'refused' ? r.state.why.code : ''}`
      : `${r.puppy?.slice(-1)} ${r.reading.at} ${r.reading.session} ${r.reading.grams} ${r.state.is}`,
  );

const GRID = [
  '0 2026-11-21T07:00 morning 412 taken',
  '1 2026-11-21T07:00 morning 398.5 taken',
  '0 2026-11-22T07:00 morning 430 taken',
];

describe('shapes of a table', () => {
  it.each([
    ['one row a weight', 'puppy,date,weight (g)\nElder,2026-11-21,412\nB,2026-11-21,398.5\nA,2026-11-22,430\n'],
    [
      'semicolons and decimal commas',
      'Pup;Weighed on;Weight (kg)\nElder;21.11.2026;0,412\nB;21.11.26;0,3985\nA;22.11.2026;0,43\n',
    ],
    ['a unit of its own', 'collar\tday\tweight\tunit\nA\t1\t0.412\tkg\nB\t1\t398.5\tg\nA\t2\t430\tg\n'],
    ['days down', 'date,Elder,B\n2026-11-21,412,398.5\n2026-11-22,430,\n'],
    ['days down, by age, with sums', 'day,A,B,average,notes\n1,412,398.5,405,fine\n2,430,-,,\n'],
    ['days down, in words', 'Day,Red,Blue collar\n21 Nov 2026,412g,398.5 g\n"Nov 22, 2026",0.430kg,\n'],
    ['a title above the headings', 'Weights of the autumn litter\n\ndate;A;B\n2026-11-21;412;398.5\n2026-11-22;430;\n'],
    ['no headings', 'Elder,2026-11-21,412\nB,2026-11-21,398.5\nA,2026-11-22,430\n'],
  ])('%s', (_, text) => {
    expect(brief(judge(text))).toEqual(GRID);
  });

  it('days across, with the birth weight and an age', () => {
    const text = 'puppy,sex,birth weight,day 1,2026-11-22,total\nElder,f,350,412,430,1\nB,m,341,,401,2\n';
    expect(read(text).shape).toBe('days-across');
    expect(brief(judge(text))).toEqual([
      '0 2026-11-20T14:30 birth 350 taken',
      '0 2026-11-21T07:00 morning 412 taken',
      '0 2026-11-22T07:00 morning 430 taken',
      '1 2026-11-20T14:30 birth 341 taken',
      '1 2026-11-22T07:00 morning 401 taken',
    ]);
  });

  it('days across under plain numbers', () => {
    expect(brief(judge('pup,0,1,2\nA,350,412,430\n'))).toEqual([
      '0 2026-11-20T14:30 birth 350 taken',
      '0 2026-11-21T07:00 morning 412 taken',
      '0 2026-11-22T07:00 morning 430 taken',
    ]);
  });

  it('a table of one puppy, which the person names', () => {
    const text = 'date,time,weight\n2026-11-21,7:10,412\n2026-11-21,7:05 pm,420\n2026-11-22,morning,430\n';
    expect(brief(judge(text))).toEqual(['puppy', 'puppy', 'puppy']);
    const key = read(text).labels[0]?.key ?? '';
    expect(brief(judge(text, { who: new Map([[key, { is: 'there', puppyId: 'puppy-0001' }]]) }))).toEqual([
      '1 2026-11-21T07:10 morning 412 taken',
      '1 2026-11-21T19:05 evening 420 taken',
      '1 2026-11-22T07:00 morning 430 taken',
    ]);
  });

  it('asks which litter, where the table names several', () => {
    const text = 'litter,puppy,date,grams\nSpring,A,2026-11-21,412\nAutumn,A,2026-11-21,398\n';
    const { litters } = read(text);
    expect(litters.map((l) => l.name)).toEqual(['Spring', 'Autumn']);
    expect(read(text).entries).toEqual([]);
    expect(brief(judge(text, {}, target(), { litter: litters[1]?.key ?? '' }))).toEqual(['0 2026-11-21T07:00 morning 398 taken']);
  });

  it('says when there is no weight or no day in it', () => {
    const faultOf = (text: string) => {
      const table = tableOfText(text);
      if (!table.ok) return table.fault.code;
      const result = readColumns(table.table, PLAIN);
      return result.ok ? null : result.fault;
    };
    expect(faultOf('puppy,date\nA,2026-11-21\n')).toBe('no-weights');
    expect(faultOf('puppy,weight\nA,412\n')).toBe('no-dates');
    expect(faultOf('puppy,date,weight\n')).toBe('no-rows');
    expect(faultOf(' \n\n')).toBe('empty');
    expect(faultOf('a\0b')).toBe('not-text');
    expect(faultOf('half \ud800')).toBe('not-text');
    expect(faultOf('puppy,"date\n')).toBe('quote');
    expect(faultOf('a,b\n'.repeat(10_001))).toBe('too-many-rows');
  });
});

describe('dates', () => {
  it.each<[string, unknown]>([
    ['2026-11-05', { kind: 'date', date: '2026-11-05', clock: null }],
    ['2026/11/5', { kind: 'date', date: '2026-11-05', clock: null }],
    ['2026-11-05T07:10:30', { kind: 'date', date: '2026-11-05', clock: '07:10' }],
    ['5.11.2026 19.05', { kind: 'date', date: '2026-11-05', clock: '19:05' }],
    ['05.11.26', { kind: 'date', date: '2026-11-05', clock: null }],
    ['Thu 5 Nov 2026', { kind: 'date', date: '2026-11-05', clock: null }],
    ['November 5th, 2026', { kind: 'date', date: '2026-11-05', clock: null }],
    ['05/11/2026 7:10 pm', { kind: 'figures', dmy: '2026-11-05', mdy: '2026-05-11', clock: '19:10' }],
    ['25/11/2026', { kind: 'figures', dmy: '2026-11-25', mdy: null, clock: null }],
    ['11/25/26', { kind: 'figures', dmy: null, mdy: '2026-11-25', clock: null }],
    ['11-11-2026', { kind: 'date', date: '2026-11-11', clock: null }],
    ['week 2', { kind: 'age', days: 14 }],
    ['3 days old', { kind: 'age', days: 3 }],
    ['at birth', { kind: 'age', days: 0 }],
    ['5.11.', { kind: 'no-year' }],
    ['5 November', { kind: 'no-year' }],
    ['31.2.2026', { kind: 'unreadable' }],
    ['32/13/2026', { kind: 'unreadable' }],
    ['Elder', { kind: 'unreadable' }],
    ['', { kind: 'unreadable' }],
  ])('%s', (text, expected) => {
    expect(readDateCell(text)).toEqual(expected);
  });

  it.each([
    ['7:10', '07:10'],
    ['0710', '07:10'],
    ['7h10', '07:10'],
    ['12 am', '00:00'],
    ['12:30 p.m.', '12:30'],
    ['24:00', null],
    ['13 pm', null],
    ['7', null],
    ['noon', null],
  ])('time %s', (text, clock) => {
    expect(readClockCell(text)).toBe(clock);
  });

  const two = 'puppy,date,grams\nA,03/04/2026,412\nA,04/04/2026,420\n';
  const spring = target({
    whelpedAt: localTime('2026-03-01T00:00'),
    puppies: PUPPIES.map((p) => ({ ...p, bornAt: localTime('2026-03-01T00:00') })),
  });

  it('refuses what can be read two ways until it is answered', () => {
    expect(read(two)).toMatchObject({ twoWays: true, order: null });
    expect(brief(judge(two, {}, spring))).toEqual(['order', '0 2026-04-04T07:00 morning 420 taken']);
    expect(brief(judge(two, { order: 'dmy' }, spring))[0]).toBe('0 2026-04-03T07:00 morning 412 taken');
    expect(brief(judge(two, { order: 'mdy' }, spring))[0]).toBe('0 2026-03-04T07:00 morning 412 taken');
  });

  it('takes the order from a date that only one order makes, and asks when they differ', () => {
    expect(brief(judge(`${two}A,13/04/2026,450\n`, {}, spring))[0]).toBe('0 2026-04-03T07:00 morning 412 taken');
    const both = `${two}A,13/04/2026,450\nA,04/13/2026,450\n`;
    expect(read(both).order).toBe('both');
    expect(brief(judge(both, {}, spring))).toEqual(['order', '0 2026-04-04T07:00 morning 420 taken', 'order', 'order']);
    expect(brief(judge(both, { order: 'mdy' }, spring)).slice(2)).toEqual(['date', '0 2026-04-13T07:00 morning 450 taken']);
  });
});

describe('rows', () => {
  const one = (row: string, more?: Partial<ImportAnswers>, into?: ImportTarget) =>
    judge(`puppy,date,time,weight\n${row}\n`, more, into)[0];

  it.each([
    ['Nobody,2026-11-21,,412', 'puppy'],
    ['A,,,412', 'no-date'],
    ['A,21.11.,,412', 'no-year'],
    ['A,soon,,412', 'date'],
    ['A,2026-11-19,,412', 'before-birth'],
    ['A,2026-12-01,,412', 'future'],
    ['A,2026-11-30,09:00,412', 'future'],
    ['A,2026-11-21,25:10,412', 'clock'],
    ['A,2026-11-21,,', 'no-weight'],
    ['A,2026-11-21,,41O2', 'mass'],
    ['A,2026-11-21,,-5', 'mass'],
    ['A,2026-11-21,,400000', 'mass'],
    ['A,2026-11-21,,1.204', 'two-ways'],
    ['A,2026-11-21,,"1,204"', 'two-ways'],
  ])('refuses %s: %s', (row, code) => {
    expect(one(row)).toMatchObject({ state: { is: 'refused', why: { code } }, reading: null, puppy: null });
  });

  it('keeps the text as it was written, in its unit', () => {
    expect(one('A,2026-11-21,,1 lb 3')?.reading).toMatchObject({ grams: 538.6, typed: '1 lb 3', unit: 'lboz' });
    expect(one('A,2026-11-21,,14.5', { unit: 'oz' })?.reading).toMatchObject({ grams: 411.1, typed: '14.5', unit: 'oz' });
    expect(one('A,2026-11-21,,1.204', { unit: 'kg' })?.reading).toMatchObject({ grams: 1204 });
  });

  it('today’s weight without a time is never later than now', () => {
    expect(one('A,2026-11-30,,412', {}, target({ now: localTime('2026-11-30T06:10') }))?.reading?.at).toBe('2026-11-30T06:10');
  });

  it('sees what is there already, and another weight in its place', () => {
    const readings = [
      reading('puppy-0000', '2026-11-21T06:52', 412),
      reading('puppy-0001', '2026-11-21T06:55', 400),
      reading('puppy-0002', '2026-11-21T06:55', 350, { withdrawn: true }),
    ];
    const rows = judge('puppy,date,weight\nA,2026-11-21,412\nB,2026-11-21,398\nC,2026-11-21,350\n', {}, target({ readings }));
    expect(rows.map((r) => r.state)).toEqual([
      { is: 'there' },
      { is: 'doubtful', why: { code: 'other-there', grams: 400 } },
      { is: 'taken' },
    ]);
  });

  it('sees a row that stands twice, and a second weight of a day', () => {
    const rows = judge('puppy,date,weight\nA,2026-11-21,412\nA,2026-11-21,412\nA,2026-11-21,420\n');
    expect(rows.map((r) => [r.state.is, r.reading?.at])).toEqual([
      ['taken', '2026-11-21T07:00'],
      ['twice', '2026-11-21T19:00'],
      ['doubtful', '2026-11-21T19:00'],
    ]);
  });

  it('doubts a weight after the puppy went', () => {
    const gone = target({ puppies: [puppy(0, { state: 'died', stateOn: '2026-11-22' as Puppy['stateOn'] })] });
    expect(judge('puppy,date,weight\nA,2026-11-22,412\nA,2026-11-23,412\n', {}, gone).map((r) => r.state.is)).toEqual([
      'taken',
      'doubtful',
    ]);
  });

  it('leaves out whom the person leaves out', () => {
    const text = 'date,A,B\n2026-11-21,412,398\n';
    const who = new Map<string, Who>(
      read(text).labels.map((l) => [l.key, l.letter === 'A' ? { is: 'nobody' } : { is: 'there', puppyId: 'puppy-0001' }]),
    );
    expect(brief(judge(text, { who }))).toEqual(['left-out', '1 2026-11-21T07:00 morning 398 taken']);
  });

  it('never throws, whatever the table holds', () => {
    const words = fc.constantFrom(
      'puppy',
      'date',
      'grams',
      'A',
      '412',
      '2026-11-21',
      '03/04/2026',
      '',
      '-',
      '=1+1',
      'day 3',
      '\u202e',
      '1 lb 3',
      'birth',
      '99999999',
      '\u000b412',
    );
    const cells = fc.oneof(words, fc.string({ maxLength: 8 }));
    fc.assert(
      fc.property(fc.array(fc.array(cells, { maxLength: 5 }), { maxLength: 6 }), fc.constantFrom(...MASS_UNITS), (rows, unit) => {
        const table = tableOfText(writeCsv(rows));
        if (!table.ok) return;
        const result = readColumns(table.table, PLAIN);
        if (!result.ok) return;
        const who = new Map<string, Who>(result.read.labels.map((l) => [l.key, { is: 'new' }]));
        const judged = judgeTable(result.read, { order: 'dmy', unit, who }, target());
        newPuppies(result.read.labels, judged, target());
        expect(judged).toHaveLength(result.read.entries.length);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('our own export', () => {
  /** Any text that the program keeps: no controls but tab and line ends, no half characters. */
  const kept = fc
    .oneof(
      fc.string({ unit: 'grapheme', maxLength: 20 }),
      fc.constantFrom(
        '=1+2',
        "'=1",
        '@x',
        '"q"',
        'a,b',
        'a;b',
        'x\r\ny',
        ' Red ',
        'girl',
        '\u202eabc',
        'a\u200bb',
        'A',
        '\t',
        '-',
      ),
    )
    .filter((t) => t.isWellFormed() && t.length <= 40 && !/(?![\t\n\r])\p{Cc}/u.test(t));
  const facts = fc.record({
    names: fc.array(kept, { minLength: 1, maxLength: 4 }),
    litter: fc.record({ name: kept, dam: kept.map((t) => `${t}d`), sire: kept, breed: kept }),
    weights: fc.array(
      fc.record({
        puppy: fc.nat(3),
        minute: fc.integer({ min: 0, max: 9 * 1440 }),
        tenths: fc.integer({ min: 1, max: 1_500_000 }),
        typed: kept,
        unit: fc.constantFrom(...MASS_UNITS),
        held: fc.boolean(),
        session: fc.constantFrom('birth', 'morning', 'evening'),
      }),
      { maxLength: 8 },
    ),
  });
  const at = (minute: number): LocalTime =>
    localTime(new Date(Date.parse(`${BORN}Z`) + minute * 60_000).toISOString().slice(0, 16));

  it('comes back into a new litter to the letter', () => {
    fc.assert(
      fc.property(facts, ({ names, litter: words, weights }) => {
        const puppies = names.map((callName, i) => puppy(i, { callName }));
        const litter: Litter = {
          ...words,
          id: 'litter-0001',
          sizeClass: null,
          adultDogKg: null,
          adultBitchKg: null,
          breedBirthGrams: null,
          whelpedAt: BORN,
          whelpedInstant: 0,
          demo: false,
        };
        const unlike = new Map(weights.map((w) => [`${w.puppy % names.length} ${w.minute}`, w]));
        const readings = [...unlike.values()].map(({ puppy: p, minute, tenths, typed, unit, held, session }, i) =>
          reading(`puppy-000${p % names.length}`, at(minute), tenths / 10, { id: `reading-${i}000`, typed, unit, held, session }),
        );
        const table = tableOfText(writeCsv(weightsTable([{ litter, puppies, readings }]), { forSpreadsheet: true }));
        if (readings.length === 0) return;
        if (!table.ok) throw new Error(table.fault.code);
        const result = readColumns(table.table, PLAIN);
        if (!result.ok) throw new Error(result.fault);
        const into = target({ puppies: [] });
        const who = new Map<string, Who>(result.read.labels.map((l) => [l.key, { is: 'new' }]));
        const rows = judgeTable(result.read, { order: null, unit: 'oz', who }, into);
        const made = newPuppies(result.read.labels, rows, into) ?? [];
        const letterOf = (key: string | null) => made.find((p) => p.key === key)?.collar.letter;
        const back = rows.map((r) => [letterOf(r.puppy), r.reading]);
        const meant = puppies.flatMap((p) =>
          readings
            .filter((r) => r.puppyId === p.id)
            .toSorted((a, b) => a.instant - b.instant)
            .map((r) => [
              p.collar.letter,
              { at: r.at, session: r.session, grams: r.grams, typed: r.typed, unit: r.unit, held: r.held },
            ]),
        );
        expect(back).toEqual(meant);
        expect(rows.every((r) => r.state.is === 'taken')).toBe(true);
        const weighed = puppies.filter((p) => readings.some((r) => r.puppyId === p.id));
        expect(made.map((p) => [p.collar, p.callName, p.sex])).toEqual(weighed.map((p) => [p.collar, p.callName, p.sex]));
        expect(result.read.litters[0]).toMatchObject(words);
        expect(bornIn(result.read, null, null)).toBe(BORN);
      }),
      { numRuns: 1000 },
    );
  });

  it('is recognised as there already when it is taken in again', () => {
    const litter: Litter = {
      name: '',
      dam: 'Hazel',
      sire: '',
      breed: '',
      id: 'litter-0001',
      sizeClass: null,
      adultDogKg: null,
      adultBitchKg: null,
      breedBirthGrams: null,
      whelpedAt: BORN,
      whelpedInstant: 0,
      demo: false,
    };
    const readings = PUPPIES.flatMap((p, i) => [
      reading(p.id, '2026-11-20T14:30', 340 + i, { session: 'birth' }),
      reading(p.id, '2026-11-21T06:52', 400 + i),
      reading(p.id, '2026-11-21T19:02', 410 + i, { session: 'evening' }),
    ]);
    const text = writeCsv(weightsTable([{ litter, puppies: PUPPIES, readings }]));
    expect(judge(text, {}, target({ readings })).map((r) => r.state.is)).toEqual(Array(9).fill('there'));
    expect(newKey({ key: 'x' })).toBe('new:x');
  });
});
