/** The sentence of House rules names these parts: Klein et al. 2019 for the estimate; the puppies are those of the check table, rows feeding 41 and 49. */
import { expect, it } from 'vitest';
import { growthEstimate } from '../../../core/feeding/energy.ts';
import { rulesWords } from '../../../core/words/en/feeding.ts';

it('a share alone of a lean mix is the part of the estimate that House rules say', () => {
  const part = (kg: number, adultKg: number) => (0.055 * kg * 1000 * 1.66) / growthEstimate(kg, adultKg);
  expect(Math.round(part(0.5, 1.8) * 100)).toBe(35);
  expect(rulesWords.tension).toContain('35 % of the estimate for a toy puppy of eight weeks');
  expect(Math.round(part(5.2, 32) * 20) * 5).toBe(60);
  expect(rulesWords.tension).toContain('60 % for one of a breed of 32 kg');
});
