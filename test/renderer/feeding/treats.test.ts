/** Treats as people type them, and what they leave for the meals: reckoned by hand, 5.5 % of 3 980 g is 218.9 g. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';
import { readTreatGrams, readTreatKcal, treatsLeave } from '../../../renderer/feeding/treats.ts';
import { EXAMPLE } from '../../core/feeding/arbitrary.ts';

const poppy = {
  ...EXAMPLE,
  rules: { ...DEFAULT_RULES, basis: 'share' as const },
  name: 'Poppy',
  gainInBand: null,
  weighedOn: EXAMPLE.day,
};
const plainSpaces = (t: string) => t.replaceAll('\u00a0', ' ');
const left = (grams: number, change: { unit?: 'g' | 'oz' } = {}) =>
  treatsLeave({ ...poppy, ...change }, { grams, kcalPer100g: DEFAULT_FOOD.kcalPer100g });

describe('what is typed', () => {
  it('grams, other units, nothing', () => {
    expect(readTreatGrams(' 12,5 g', 'g')).toEqual({ ok: true, value: 12.5 });
    expect(readTreatGrams('1', 'lb')).toEqual({ ok: true, value: 28.3 });
    for (const none of ['', '  ', '0', '0 g']) expect(readTreatGrams(none, 'g')).toEqual({ ok: true, value: null });
    for (const wrong of ['a few', '-5', '3 cups']) expect(readTreatGrams(wrong, 'g').ok).toBe(false);
  });

  it('energy: empty is that of the food', () => {
    expect(readTreatKcal('', 185)).toEqual({ ok: true, value: 185 });
    expect(readTreatKcal('320 kcal', 185)).toEqual({ ok: true, value: 320 });
    for (const wrong of ['rich', '0', '901']) expect(readTreatKcal(wrong, 185).ok).toBe(false);
  });
});

describe('what is left', () => {
  it('within the share: 205.9 g in three bowls', () => {
    const { sentence, high } = left(13);
    expect(plainSpaces(sentence)).toBe('Meals then: 68, 68, 68 g; treats are 6 % of the day.');
    expect(high).toBeNull();
  });

  it('over the share: the rule and where it comes from', () => {
    const { high } = left(30);
    expect(plainSpaces((high === null ? null : ENGLISH.finding.say(high, 'g').mend) ?? '')).toBe(
      'Keep them to 10 %: about 22 g of these treats.',
    );
    expect(high?.source).toContain('p. 315');
  });

  it('more than the day: no bowls', () => {
    expect(plainSpaces(left(438).sentence)).toBe(
      'Nothing would be left for the meals: these treats hold 200 % of the day’s energy.',
    );
  });

  it('bowls in tenths of an ounce, under two and a half', () => {
    expect(plainSpaces(left(13, { unit: 'oz' }).sentence)).toBe('Meals then: 2.40, 2.40, 2.40 oz; treats are 6 % of the day.');
  });
});
