import { expect, test } from 'vitest';
import {
  grownText,
  readClock,
  readDate,
  readGrownKg,
  readLine,
  readMass,
  readNumber,
} from '../../../renderer/parts/form/read.ts';

test('a clock is read as people write it', () => {
  for (const text of ['6:30', '06:30', '6.30', '630', '0630', ' 06:30 '])
    expect(readClock(text), text).toEqual({ ok: true, value: '06:30' });
  for (const text of ['', '24:00', '6:60', 'six', '6']) expect(readClock(text).ok, text).toBe(false);
});

test('a grown weight is kilograms for who weighs in grams, pounds for who weighs in ounces', () => {
  expect(readGrownKg('g')('24')).toEqual({ ok: true, value: 24 });
  // 1 lb = 0.45359237 kg exactly (NIST Handbook 44, appendix C)
  expect(readGrownKg('oz')('53')).toMatchObject({ ok: true, value: 24.0404 });
  expect(readGrownKg('g')('53 lb')).toMatchObject({ ok: true, value: 24.0404 });
  expect(readGrownKg('g')('')).toEqual({ ok: true, value: null });
  expect(readGrownKg('g')('130').ok).toBe(false);
  expect(grownText(24.0404, 'lb')).toBe('53 lb');
  expect(grownText(24, 'g')).toBe('24 kg');
});

test('a birth weight keeps what was typed; empty is none; a letter is named', () => {
  expect(readMass('g')('14.5oz')).toMatchObject({ ok: true, value: { grams: 411.1, unit: 'oz', typed: '14.5oz' } });
  expect(readMass('g')('  ')).toEqual({ ok: true, value: null });
  expect(readMass('g')('4l2')).toMatchObject({ ok: false, sentence: expect.stringContaining('letter l in 4l2') });
});

test('numbers, dates and lines are refused with a sentence', () => {
  const count = readNumber({ low: 0, high: 16, whole: true, example: '8' });
  expect(count('8')).toEqual({ ok: true, value: 8 });
  for (const text of ['', '3x', '-1', '17', '1.5']) expect(count(text).ok, text).toBe(false);
  expect(readDate('2026-02-29').ok).toBe(false);
  expect(readLine(5)('  dam ')).toEqual({ ok: true, value: 'dam' });
  expect(readLine(5)('too long').ok).toBe(false);
  expect(readLine(5, 'needed')(' ')).toEqual({ ok: false, sentence: 'needed' });
});
