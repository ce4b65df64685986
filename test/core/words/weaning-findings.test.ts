/** What is said of meals that were left, of a day of weaning, and of the dam's need. */
import { expect, it } from 'vitest';
import { date } from '../../../core/calendar/day.ts';
import { damDay } from '../../../core/feeding/dam-day.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';

const meal = { day: date('2026-04-20'), meal: 'evening', accepted: null, known: 'common practice' } as const;
const plainSpaces = (t: string) => t.replaceAll('\u00a0', ' ');

it('a suggestion is said with its figures, and its caution goes with it', () => {
  const cut = ENGLISH.weaning.suggestion({ code: 'cut', times: 3, cutShare: 0.1, ...meal });
  expect(plainSpaces(cut.sentence)).toBe('Food was left 3 times running. Weigh out 10 % less from the next meal.');
  expect(cut.caution).toMatch(/^Weigh them first\..*call your vet\.$/);
  expect(ENGLISH.weaning.suggestion({ code: 'restore', cleanMeals: 6, ...meal })).toEqual({
    sentence: 'Six meals were cleaned up. Weigh out the full amount again.',
    caution: null,
  });
});

it('puppies that were not weighed are named, and the bound that is ours says so', () => {
  const old = { code: 'weight-old', severity: 'caution', puppies: ['Tansy', 'Moss'], boundDays: 4, source: null } as const;
  expect(ENGLISH.weaning.finding({ ...old, known: 'common practice' })).toEqual({
    sentence: 'Not weighed for over four days: Tansy, Moss. The amounts are reckoned from an expected weight.',
    mend: 'Weigh them today.',
    source: 'our own bound of 4 days',
  });
});

// By hand: 20 kg, 20^0.75 = 9.457; 145 × 9.457 = 1 371; milk of six in week 2: 20 × (24 × 4 + 12 × 2) × 0.95 = 2 280, half of it still milk.
it('the dam’s need is said as the sum that it is', () => {
  const fields = {
    name: 'Sorrel',
    litterId: null,
    lh: null,
    ovulation: null,
    dioestrus: null,
    firstMating: null,
    lastMating: null,
    foodKcalPer100g: null,
  };
  const day = { fields, kg: 20, day: date('2026-03-10'), whelped: date('2026-03-01'), nursing: 6, solids: 0.5 };
  expect(ENGLISH.dam.sum(damDay(day).how)).toBe(
    '145 × kg^0.75 = 1371 for herself, and 1140 for the milk of 6 in week 2, of which 50 % is still milk',
  );
});
