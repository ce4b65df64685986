import { expect, test } from 'vitest';
import { asksBreedBirth, breedBirthHint, breedBirthText, readBreedBirth } from '../../../renderer/litter/breed-birth.ts';
import {
  grownText,
  readClock,
  readDate,
  readGrownKg,
  readMass,
  readNumber,
  readText,
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

test('the usual birth weight of a breed is grams or ounces, within sensible limits, and is asked only without published figures', () => {
  expect(readBreedBirth('g')('152,5')).toEqual({ ok: true, value: 152.5 });
  expect(readBreedBirth('kg')('240')).toEqual({ ok: true, value: 240 });
  // 1 oz = 28.349523125 g exactly (NIST Handbook 44, appendix C)
  for (const unit of ['oz', 'lb', 'lboz'] as const) expect(readBreedBirth(unit)('8.5')).toEqual({ ok: true, value: 241 });
  expect(readBreedBirth('g')(' ')).toEqual({ ok: true, value: null });
  expect(readBreedBirth('g')('39')).toEqual({ ok: false, sentence: 'It has to be from 40 g to 1500 g.' });
  expect(readBreedBirth('g')('1501').ok).toBe(false);
  expect(readBreedBirth('kg')('0.24').ok).toBe(false);
  expect(readBreedBirth('g')('2l0')).toMatchObject({ ok: false, sentence: expect.stringContaining('letter l in 2l0') });
  expect([breedBirthText(152.5, 'g'), breedBirthText(241, 'lb'), breedBirthText(null, 'g')]).toEqual(['152.5 g', '8.5 oz', '']);
  expect(asksBreedBirth('Mudi', false)).toBe(true);
  expect(asksBreedBirth('labrador retriever', true)).toBe(false);
  expect([asksBreedBirth(' ', false), asksBreedBirth('', true)]).toEqual([false, true]);
  expect(breedBirthHint('Pug', 'g')).toContain('left empty, the 152.5 g of one small study counts');
  expect(breedBirthHint('Mudi', 'g')).not.toContain('study');
});

test('a birth weight keeps what was typed; empty is none; a letter is named', () => {
  expect(readMass('g')('14.5oz')).toMatchObject({ ok: true, value: { grams: 411.1, unit: 'oz', typed: '14.5oz' } });
  expect(readMass('g')('  ')).toEqual({ ok: true, value: null });
  expect(readMass('g')('4l2')).toMatchObject({ ok: false, sentence: expect.stringContaining('letter l in 4l2') });
});

test('numbers, dates and lines are refused with a sentence', () => {
  const count = readNumber({ low: 0, high: 16, integer: true, example: '8' });
  expect(count('8')).toEqual({ ok: true, value: 8 });
  for (const text of ['', '3x', '-1', '17', '1.5']) expect(count(text).ok, text).toBe(false);
  expect(readDate('2026-02-29').ok).toBe(false);
  expect(readText(5)('  dam ')).toEqual({ ok: true, value: 'dam' });
  expect(readText(5)('too long').ok).toBe(false);
  expect(readText(5, 'needed')(' ')).toEqual({ ok: false, sentence: 'needed' });
});
