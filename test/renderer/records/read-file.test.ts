import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import writeXlsx from 'write-excel-file/node';
import { cellText, readFile } from '../../../renderer/records/read-file.ts';
import { UnpackError, unpackSheet } from '../../../renderer/records/unpack-sheet.ts';

const rowsOf = async (file: Blob) => {
  const read = await readFile(file);
  return read.is === 'tables' ? read.tables.map((t) => [t.name, t.table.rows]) : read;
};
const text = (t: string | Uint8Array<ArrayBuffer>) => new Blob([t]);
const workbook = async (data: Parameters<typeof writeXlsx>[0]) => new Blob([new Uint8Array(await writeXlsx(data).toBuffer())]);

/** A ZIP with one deflated part that says and is what it is told. */
function zip(name: string, content: Uint8Array, change: (bytes: Buffer) => void = () => undefined): Uint8Array<ArrayBuffer> {
  const packed = deflateRawSync(content);
  const local = Buffer.alloc(30);
  local.writeUInt32LE(0x04034b50, 0);
  local.writeUInt16LE(8, 8);
  local.writeUInt16LE(name.length, 26);
  const central = Buffer.alloc(46);
  central.writeUInt32LE(0x02014b50, 0);
  central.writeUInt16LE(8, 10);
  central.writeUInt32LE(packed.length, 20);
  central.writeUInt16LE(name.length, 28);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(local.length + name.length + packed.length, 16);
  const bytes = Buffer.concat([local, Buffer.from(name), packed, central, Buffer.from(name), end]);
  change(bytes);
  return new Uint8Array(bytes);
}

describe('a file that was chosen', () => {
  it('is read as UTF-8, UTF-16 or the old code page', async () => {
    expect(await rowsOf(text('\ufeffpuppy;grams\nZoë;412\n'))).toEqual([
      [
        '',
        [
          ['puppy', 'grams'],
          ['Zoë', '412'],
        ],
      ],
    ]);
    const utf16 = new Uint8Array([0xff, 0xfe, ...Buffer.from('a\tZoë\n', 'utf16le')]);
    expect(await rowsOf(text(utf16))).toEqual([['', [['a', 'Zoë']]]]);
    const old = await readFile(text(new Uint8Array(Buffer.from('a,Zo\xeb\n', 'latin1'))));
    expect(old).toMatchObject({ is: 'tables', oldText: true, tables: [{ table: { rows: [['a', 'Zoë']] } }] });
  });

  it.each<[string, Blob, string]>([
    ['nothing', text(''), 'empty'],
    ['bytes that are no text', text(new Uint8Array([1, 0, 0xe9, 0, 0xff])), 'not-text'],
    ['too much', text('a,b\n'.repeat(1_300_000)), 'too-large'],
    ['a broken workbook', text('PK\u0003\u0004 and nothing more'), 'not-a-sheet'],
    ['a ZIP that is no workbook', new Blob([zip('a.xml', Buffer.from('<a/>'))]), 'not-a-sheet'],
  ])('is refused: %s', async (_, file, code) => {
    expect(await readFile(file)).toEqual({ is: 'fault', fault: { code } });
  });

  it('is told from an export by what is in it', async () => {
    expect(await readFile(text(' {"format":"whelpside"}'))).toEqual({ is: 'json', text: ' {"format":"whelpside"}' });
  });

  it('is read as a workbook: text, figures, days, and each sheet', async () => {
    const file = await workbook([
      {
        sheet: 'weights',
        data: [
          [{ value: 'puppy' }, { value: 'date' }, { value: 'g' }],
          [{ value: '=1+2' }, { value: new Date('2026-11-21T00:00Z'), type: Date, format: 'dd/mm/yyyy' }, { value: 412.5 }],
          [null, null, null],
          [
            { value: 'Zoë <b>' },
            { value: new Date('2026-11-22T07:10Z'), type: Date, format: 'dd/mm/yyyy hh:mm' },
            { value: 0.1 + 0.2 },
          ],
        ],
      },
      { sheet: 'notes', data: [[{ value: 'x' }, { value: 'y' }]] },
    ]);
    expect(await rowsOf(file)).toEqual([
      [
        'weights',
        [
          ['puppy', 'date', 'g'],
          ['=1+2', '2026-11-21', '412.5'],
          ['Zoë <b>', '2026-11-22T07:10', '0.3'],
        ],
      ],
      ['notes', [['x', 'y']]],
    ]);
  });

  it('is read when its parts are large, without workers', async () => {
    const rows = Array.from({ length: 9_000 }, (_, i) => [
      { value: `puppy ${i}` },
      { value: i },
      { value: `some longer text ${i * 7}` },
    ]);
    const read = await readFile(await workbook([{ sheet: 'a', data: rows }]));
    expect(read.is === 'tables' && read.tables[0]?.table.rows.length).toBe(9_000);
  });

  it('gives a time of day alone as a clock', () => {
    expect(cellText(new Date('1899-12-30T07:10:00Z'))).toBe('07:10');
    expect(cellText(new Date(Number.NaN))).toBe('');
    expect(cellText(true)).toBe('true');
    expect(cellText(null)).toBe('');
  });
});

describe('unpacking', () => {
  it('stops at the bound, whatever the file says of its size', async () => {
    await expect(unpackSheet(zip('a.xml', new Uint8Array(61_000_000)))).rejects.toMatchObject({ code: 'too-large' });
  });

  it.each([
    ['XFD1048576', 'too-many-rows'],
    ['A100001', 'too-many-rows'],
    ['OK1', 'too-many-columns'],
    ['XFD1', 'too-many-columns'],
  ])('a cell at %s, which would fill in all before it, is refused before it is read', async (cell, code) => {
    const sheet = Buffer.from(`<sheetData><row r="1"><c r="A1"/></row><row><c r="${cell}"><v>1</v></c></row></sheetData>`);
    await expect(unpackSheet(zip('xl/worksheets/sheet1.xml', sheet))).rejects.toMatchObject({ code });
  });

  it('ends in its own error or a ZIP, whatever is damaged', async () => {
    const whole = zip('sheet.xml', Buffer.from('<a>'.repeat(200)));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        async (damages) => {
          const bytes = whole.slice();
          for (const [at, value] of damages) bytes[at] = value;
          try {
            expect((await unpackSheet(bytes)).byteLength).toBeGreaterThanOrEqual(22);
          } catch (error) {
            expect(error).toBeInstanceOf(UnpackError);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
