import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cell, DELIMITERS, disarm, guessDelimiter, readCsv, rearm, writeCsv } from '../../../core/records/csv.ts';

/** Text as a hostile person writes it: formulas, quotes, line breaks, marks of direction, marks without width. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '=',
        '+',
        '-',
        '@',
        "'",
        '"',
        ',',
        ';',
        '\t',
        '\r',
        '\n',
        '\r\n',
        '\u202e',
        '\u2066',
        '\u200b',
        '\ufeff',
        '＝',
      ),
      fc.constantFrom('=1+2', '=HYPERLINK("x")', '<b>', '&amp;', '|', ' ', 'ä', '🐶', '12"', "''"),
      fc.string({ unit: 'grapheme', maxLength: 6 }),
    ),
    { maxLength: 6 },
  )
  .map((parts) => parts.join(''));
const cell: fc.Arbitrary<Cell> = fc.oneof(
  hostile,
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constant(null),
);
const table = fc
  .integer({ min: 1, max: 5 })
  .chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 8 }));

const asText = (value: Cell) => (value === null ? '' : String(value));
const holdsNothing = (row: readonly Cell[]) => row.length === 1 && row[0] === null;

describe('CSV', () => {
  it('comes back as it went out, whatever is written', () => {
    fc.assert(
      fc.property(table, fc.boolean(), (rows, forSpreadsheet) => {
        const read = readCsv(writeCsv(rows, { forSpreadsheet }), ',');
        if (!read.ok) throw new Error(read.fault.code);
        expect(read.rows.map((row) => row.map(rearm))).toEqual(
          rows.filter((row) => !holdsNothing(row)).map((row) => row.map(asText)),
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('is read alike by csv-parse, an independent reader of RFC 4180', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const text = writeCsv(rows);
        const theirs = parse(text, { relax_column_count: true, record_delimiter: '\r\n', skip_empty_lines: true }) as string[][];
        const ours = readCsv(text, ',');
        expect(ours.ok && ours.rows).toEqual(theirs);
      }),
      { numRuns: 1000 },
    );
  });

  it('reads what csv-stringify, an independent writer, writes with any delimiter', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(hostile, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...DELIMITERS),
        (rows, delimiter) => {
          const read = readCsv(stringify(rows, { delimiter, quoted: true }), delimiter);
          expect(read.ok && read.rows).toEqual(rows);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('leaves no cell that a spreadsheet would run', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        expect(disarm(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/u);
        expect(rearm(disarm(text))).toBe(text);
      }),
      { numRuns: 5000 },
    );
  });

  it('leaves figures alone', () => {
    expect(writeCsv([[-12, 0.5, 1e21, null, '-12']])).toBe(`-12,0.5,1e+21,,"'-12"\r\n`);
    expect(() => writeCsv([[Number.NaN]])).toThrow(RangeError);
  });

  it.each([
    ['a,b\r\n1,2\r\n', ','],
    ['Datum;Gewicht\n25.11.2026;0,412\n26.11.2026;0,450\n', ';'],
    ['day\tA\tB\n1\t412\t398\n', '\t'],
    ['puppy;grams\nA, the big one;412\nB, the small one;398\n', ';'],
    ['one column\nonly\n', ','],
    ['"a;b",c\n"d;e",f\n', ','],
  ])('finds the delimiter of %j', (text, delimiter) => {
    expect(guessDelimiter(text)).toBe(delimiter);
  });

  it('keeps the line that each row begins on, over breaks inside quotes and empty lines', () => {
    const read = readCsv('a,b\r\n"two\nlines",1\r\n\r\n  \nc,2', ',');
    expect(read).toMatchObject({
      ok: true,
      rows: [
        ['a', 'b'],
        ['two\nlines', '1'],
        ['c', '2'],
      ],
      lines: [1, 2, 6],
    });
  });

  it('keeps spaces and quotes inside a cell, and an empty last cell', () => {
    expect(readCsv(' a , 5" b,\n1,2,3', ',')).toMatchObject({
      rows: [
        [' a ', ' 5" b', ''],
        ['1', '2', '3'],
      ],
    });
    expect(readCsv('a,', ',')).toMatchObject({ rows: [['a', '']] });
  });

  it.each([
    ['a,"b\nc,d', { code: 'quote', line: 1 }],
    ['a,b\n"c" d,e', { code: 'after-quote', line: 2 }],
  ])('says where %j cannot be read', (text, fault) => {
    expect(readCsv(text, ',')).toEqual({ ok: false, fault });
  });
});
