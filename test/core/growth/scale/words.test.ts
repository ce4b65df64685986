/** What scales send, by report and by line. Vectors: published usage tables, indicator and balance manuals, seen or computed. */
import { describe, expect, test } from 'vitest';
import { decodeNumberedReport, decodeReport, layoutOf } from '../../../../core/growth/scale/hid-report.ts';
import { lines, parseLine } from '../../../../core/growth/scale/serial-line.ts';
import { parseTyped } from '../../../../core/growth/scale/wedge.ts';

const report = (hex: string) => decodeNumberedReport(Uint8Array.from(hex.split(' '), (h) => Number.parseInt(h, 16)));

describe('reports of a USB scale', () => {
  test.each([
    ['03 04 02 00 6E 03', 878, true],
    ['03 04 0B FF 4E 00', 221.126280375, true],
    ['03 04 02 00 90 00', 144, true],
    ['03 04 0B FF 19 00', 70.8738078125, true],
    ['03 04 0B FF 97 00', 428.0777991875, true],
    ['03 04 03 FE D2 04', 12_340, true],
    ['03 04 0C FF 7B 00', 5579.186151, true],
    ['03 03 02 00 F4 01', 500, false],
    ['03 04 02 01 32 00', 500, true],
    // The other units of the usage table, against the definitions of the pound and of the metric carat.
    ['03 04 01 03 64 00', 100, true], // 100 000 mg
    ['03 04 04 00 E8 03', 200, true], // 1000 carats
    ['03 04 06 00 58 1B', 453.59237, true], // 7000 grains
    ['03 04 07 00 14 00', 31.1034768, true], // 20 pennyweights
    ['03 04 0A 00 01 00', 31.1034768, true], // a troy ounce
    ['03 04 08 FD 01 00', 1000, true], // a thousandth of a tonne
  ])('%s is %d g', (hex, grams, stable) => {
    const value = report(hex);
    expect(value).toMatchObject({ kind: 'weight', stable });
    expect(value?.kind === 'weight' ? value.grams : Number.NaN).toBeCloseTo(grams, 8);
  });

  test.each([
    ['03 02 0B FF 00 00', { kind: 'zero' }],
    ['03 01 02 00 90 00', { kind: 'fault', fault: 'fault' }],
    ['03 05 0B FF 00 00', { kind: 'fault', fault: 'under-zero' }],
    ['03 06 02 00 90 00', { kind: 'fault', fault: 'over-limit' }],
    ['03 07 02 00 90 00', { kind: 'fault', fault: 'calibrate' }],
    ['03 08 02 00 90 00', { kind: 'fault', fault: 're-zero' }],
    ['03 04 00 00 90 00', { kind: 'fault', fault: 'unit' }],
    ['03 04 05 00 90 00', { kind: 'fault', fault: 'unit' }],
    ['03 04 09 00 90 00', { kind: 'fault', fault: 'unit' }],
    ['03 04 0D 00 90 00', { kind: 'fault', fault: 'unit' }],
    ['03 00 02 00 90 00', { kind: 'fault', fault: 'garbled' }],
    ['03 09 02 00 90 00', { kind: 'fault', fault: 'garbled' }],
    ['03 04 02', { kind: 'fault', fault: 'garbled' }],
  ])('%s is no weight', (hex, value) => {
    expect(report(hex)).toEqual(value);
  });

  test('another report is not read; a longer one is read as far as it is known', () => {
    expect(report('04 04 02 00 6E 03')).toBeNull();
    expect(report('03 04 02 00 6E 03 00 00')).toMatchObject({ grams: 878 });
    expect(decodeReport(Uint8Array.of(4, 2, 0, 0x6e, 3))).toMatchObject({ grams: 878 });
  });

  test('the descriptor says where the parts lie', () => {
    const fields = [
      { usages: [0x8d0051, 0x8d0052, 0x8d005b], bits: 8 },
      { usages: [0x8d0070, 0x8d0071, 0x8d0074], bits: 8 },
      { usages: [], bits: 8 },
      { usages: [0x8d0041], bits: 8 },
      { usages: [0x8d0040], bits: 24 },
    ];
    const layout = layoutOf(fields);
    expect(layout).toEqual({ unit: 0, status: 1, exponent: 3, weight: 4, weightBytes: 3 });
    expect(layout === null ? null : decodeReport(Uint8Array.of(2, 4, 0, 0, 0x70, 0x11, 1), layout)).toMatchObject({
      grams: 70_000,
    });
    expect(layoutOf(fields.slice(1))).toBeNull();
    expect(layoutOf(fields.map((f) => (f.usages.includes(0x8d0040) ? { ...f, bits: 12 } : f)))).toBeNull();
  });
});

describe('lines of a serial scale', () => {
  test.each([
    ['ST,GS,+00012.34kg\r\n', 12_340, true, 'gross'],
    ['US,NT,-000.250kg', -250, false, 'net'],
    ['ST,NT,  0412.5 g', 412.5, true, 'net'],
    ['ST GS + 14.50 oz', 14.5 * 28.349523125, true, 'gross'],
    ['ST,G ,+   2.50lb', 2.5 * 453.59237, true, 'gross'],
    ['   412.34 g  ', 412.34, null, null],
    ['   412.34 g ?', 412.34, false, null],
    ['S S      415 g', 415, true, null],
    ['S D      415 g', 415, null, null],
    ['\u0001\u0002S+000412g%', 412, true, null],
    ['\u0001\u0002U-000412gK', -412, false, null],
    ['1 lb 3.5 oz', 453.59237 + 3.5 * 28.349523125, null, null],
    ['No. 1: 412 g', 412, null, null],
    ['+.412 kg', 412, null, null],
    ['0,412 kg', 412, null, null],
  ])('%j', (line, grams, stable, basis) => {
    const value = parseLine(line, null);
    expect(value).toMatchObject({ kind: 'weight', stable, basis });
    expect(value?.kind === 'weight' ? value.grams : Number.NaN).toBeCloseTo(grams, 8);
  });

  test.each([
    ['OL,GS,+00000.00kg', 'over-limit'],
    ['ST,GS,  OL  ,kg', 'over-limit'],
    ['ST,GS,+0412', 'no-unit'],
    ['14.5 ozt', 'unit'],
    ['120 gn', 'unit'],
    ['1,204 g', 'garbled'],
  ])('%j is refused', (line, fault) => {
    expect(parseLine(line, null)).toEqual({ kind: 'fault', fault });
  });

  test('a number alone is in the unit she said, and words alone are nothing', () => {
    expect(parseLine('ST,GS,+0412', 'g')).toMatchObject({ grams: 412 });
    expect(parseLine('0.412', 'kg')).toMatchObject({ grams: 412, stepGrams: 1 });
    expect(parseLine('READY', 'g')).toBeNull();
    expect(parseLine('\r\n', 'g')).toBeNull();
  });

  test('lines are put together from whatever pieces the port hands over', () => {
    const heard: string[] = [];
    const feed = lines((line) => heard.push(line));
    for (const piece of ['ST,GS,+004', '12 g\r', '\nST,GS,+00413 g\r\nS+000414g', '%\u0003\u0004x', '9'.repeat(5000), '\n'])
      feed(piece);
    expect(heard.slice(0, 3)).toEqual(['ST,GS,+00412 g', 'ST,GS,+00413 g', 'S+000414g%']);
    expect(heard[3]?.length).toBeLessThan(300);
  });
});

describe('a scale that types', () => {
  test('its line is a weight, what people write stays what it was, and a slip stays a slip', () => {
    expect(parseTyped('ST,GS,+00012.34kg', 'g')).toEqual({ ok: true, grams: 12_340, exact: 12_340, unit: 'g' });
    expect(parseTyped('412', 'g')).toEqual({ ok: true, grams: 412, exact: 412, unit: 'g' });
    expect(parseTyped('  +412 g', 'g')).toMatchObject({ ok: false });
    expect(parseTyped('N 412.0 g', 'g')).toMatchObject({ ok: true, grams: 412 });
    expect(parseTyped('US,GS,+0412 g', 'g')).toEqual({ ok: false, fault: { code: 'scale-moving' } });
    expect(parseTyped('412 g ?', 'g')).toEqual({ ok: false, fault: { code: 'scale-moving' } });
    expect(parseTyped('OL,GS,+9999 g', 'g')).toEqual({ ok: false, fault: { code: 'scale-refused' } });
    expect(parseTyped('ST,GS,-0412 g', 'g')).toEqual({ ok: false, fault: { code: 'not-positive' } });
    expect(parseTyped('4l2', 'g')).toEqual({ ok: false, fault: { code: 'letter', letter: 'l' } });
  });
});
