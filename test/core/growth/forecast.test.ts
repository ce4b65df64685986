import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedAdultKg, forecastWeight } from '../../../core/growth/forecast.ts';
import { SIZE_CLASSES } from '../../../core/reference/classes.ts';

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
    anchorAgeDays: fc.double({ min: 0, max: 200, noNaN: true }),
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
});
