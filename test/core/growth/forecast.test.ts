import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gompertz, logistic } from '../../../core/growth/curves.ts';
import { type AdultFrom, expectedAdultKg, forecastWeight } from '../../../core/growth/forecast.ts';
import { SIZE_CLASSES, type SizeClass } from '../../../core/reference/classes.ts';
import { GROWTH_CURVES } from '../../../core/reference/growth/curves.ts';
import { WILSON } from '../../fixtures/wilson-dog.ts';

describe('adult weight to expect', () => {
  const litter = { sizeClass: 'large', adultDogKg: 34, adultBitchKg: null } as const;
  it('breeder, other sex, class, nothing', () => {
    expect(expectedAdultKg(litter, 'dog')).toEqual({ kg: 34, from: 'breeder' });
    expect(expectedAdultKg(litter, 'bitch')?.from).toBe('other-sex');
    expect(expectedAdultKg(litter, 'bitch')?.kg).toBeCloseTo((34 * 26.7) / 31.4, 6);
    expect(expectedAdultKg({ ...litter, adultDogKg: null }, 'dog')).toEqual({ kg: 32, from: 'class' });
    expect(expectedAdultKg({ sizeClass: null, adultDogKg: null, adultBitchKg: null }, 'dog')).toBeNull();
  });
});

describe('forecast', () => {
  const anchors = fc.record({
    adultKg: fc.double({ min: 2, max: 70, noNaN: true }),
    sizeClass: fc.constantFrom(...SIZE_CLASSES, null),
    anchorAgeDays: fc.double({ min: 3, max: 200, noNaN: true }),
    share: fc.double({ min: 0.03, max: 0.9, noNaN: true }),
  });

  it('starts at the puppy itself, rises to its adult weight and never narrows', () => {
    fc.assert(
      fc.property(anchors, ({ adultKg, sizeClass, anchorAgeDays, share }) => {
        const anchorGrams = adultKg * 1000 * share;
        const f = forecastWeight({ adultKg, sizeClass, anchorAgeDays, anchorGrams });
        expect(f.at(anchorAgeDays)?.mid).toBeCloseTo(anchorGrams, 6);
        expect(f.at(anchorAgeDays - 1)).toBeNull();
        let width = 0;
        for (let day = anchorAgeDays; day < 700; day += 11) {
          const b = f.at(day);
          if (b === null) throw new Error('no band');
          expect(b.low).toBeLessThan(b.mid);
          expect(b.high).toBeGreaterThan(b.mid);
          const now = (b.high - b.low) / b.mid;
          expect(now).toBeGreaterThanOrEqual(width - 1e-12);
          width = now;
        }
        const end = f.at(1500);
        expect(Math.abs((end?.mid ?? 0) / (adultKg * 1000) - 1)).toBeLessThan(0.01);
        expect(width).toBeLessThanOrEqual(0.4 + 1e-9);
      }),
    );
  });

  it('without an adult weight it ends after a fortnight', () => {
    const f = forecastWeight({ adultKg: null, sizeClass: null, anchorAgeDays: 10, anchorGrams: 800 });
    expect(f.adultGrams).toBeNull();
    expect(f.at(24)?.mid).toBeGreaterThan(1200);
    expect(f.at(24.1)).toBeNull();
  });

  it('is not made from a weight of the first three days', () => {
    for (const adultKg of [30, null]) {
      const f = forecastWeight({ adultKg, sizeClass: 'large', anchorAgeDays: 2.9, anchorGrams: 450 });
      expect([2.9, 10, 60].map((day) => f.at(day))).toEqual([null, null, null]);
      expect(forecastWeight({ adultKg, sizeClass: 'large', anchorAgeDays: 3, anchorGrams: 450 }).at(10)).not.toBeNull();
    }
  });

  it('opens to nine tenths of its width within a month', () => {
    const f = forecastWeight({ adultKg: 20, sizeClass: 'medium', anchorAgeDays: 60, anchorGrams: 5000 });
    const half = (day: number) => {
      const b = f.at(day);
      return b === null ? Number.NaN : (b.high - b.low) / (2 * b.mid);
    };
    expect(half(60)).toBeCloseTo(0.024, 6);
    expect(half(70)).toBeGreaterThan(0.13);
    expect(half(88)).toBeGreaterThan(0.18);
  });

  it('keeps a fifth of what a puppy is over its class, when only the class is known', () => {
    const at = (adultFrom: AdultFrom) =>
      forecastWeight({ adultKg: 18, adultFrom, sizeClass: 'medium', anchorAgeDays: 56, anchorGrams: 5400 }).at(1500)?.mid ?? 0;
    const over = 5400 / (18_000 * logistic(8, GROWTH_CURVES.medium));
    expect(at('class') / 18_000).toBeCloseTo(over ** 0.2, 2);
    expect(at('breeder') / 18_000).toBeCloseTo(1, 2);
  });

  describe('published ways to adulthood stay inside, told from any week after the eighth', () => {
    const days = Array.from({ length: 60 }, (_, i) => 63 + 7 * i);
    const outside = (adultKg: number, sizeClass: SizeClass, share: (day: number) => number) =>
      Array.from({ length: 12 }, (_, i) => 56 + 14 * i).flatMap((anchorAgeDays) => {
        const f = forecastWeight({ adultKg, sizeClass, anchorAgeDays, anchorGrams: 1000 * adultKg * share(anchorAgeDays) });
        return days.flatMap((day) => {
          const b = f.at(day);
          const grams = 1000 * adultKg * share(day);
          return b === null || day < anchorAgeDays + 7 || (grams >= b.low && grams <= b.high) ? [] : [[anchorAgeDays, day]];
        });
      });
    it('Labrador bitches and dogs (Helmink et al 2000, rebuilt)', () => {
      for (const kg of [26.7, 31.4]) expect(outside(kg, 'large', (d) => gompertz(d, 83.98, 58.75))).toEqual([]);
    });
    it('Great Danes (Lewis, Emmans 2020)', () => {
      expect(outside(55, 'giant', (d) => gompertz(d, 90.306, 1 / 0.0167))).toEqual([]);
    });
    it('Labradors and Great Danes from the third day on too, whether the breeder or only the class told the adult weight', () => {
      for (const [adultKg, sizeClass, share] of [
        [26.7, 'large', (d: number) => gompertz(d, 83.98, 58.75)],
        [31.4, 'large', (d: number) => gompertz(d, 83.98, 58.75)],
        [55, 'giant', (d: number) => gompertz(d, 90.306, 1 / 0.0167)],
      ] as const) {
        for (const adultFrom of ['breeder', 'class'] as const) {
          for (const anchorAgeDays of [3, 7, 14, 21, 28, 35, 42, 49]) {
            const anchorGrams = 1000 * adultKg * share(anchorAgeDays);
            const f = forecastWeight({ adultKg, adultFrom, sizeClass, anchorAgeDays, anchorGrams });
            for (let day = anchorAgeDays + 7; day <= 500; day += 7) {
              const { low = 0, high = 0 } = f.at(day) ?? {};
              const grams = 1000 * adultKg * share(day);
              expect(grams >= low && grams <= high, `${adultKg} kg from day ${anchorAgeDays} on day ${day}`).toBe(true);
            }
          }
        }
      }
    });
    it('large dogs (Posada et al 2014), from their twelfth week on', () => {
      const slow = outside(33, 'large', (d) => logistic(d / 30.4375, { half: 5.27, ninetyNine: 14.37 }));
      expect(slow.filter(([from = 0]) => from >= 84)).toEqual([]);
    });
    it('one dog, all its weights (demodelr, data set wilson)', () => {
      const { weights, adultKg } = WILSON;
      const inside = weights.flatMap((from, i) => {
        const f = forecastWeight({ adultKg, sizeClass: 'large', anchorAgeDays: from.day, anchorGrams: from.kg * 1000 });
        return weights.slice(i + 1).flatMap((to) => {
          const b = f.at(to.day);
          return b === null ? [] : [to.kg * 1000 >= b.low && to.kg * 1000 <= b.high];
        });
      });
      expect(inside.filter(Boolean).length / inside.length).toBeGreaterThan(0.9);
    });
  });
});
