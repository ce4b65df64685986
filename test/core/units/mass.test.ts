/** Weights as people write them. Factors: international pound of 1959, NIST Handbook 44 Appendix C. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  MASS_UNITS,
  type MassUnit,
  parseMass,
  poundsAndOunces,
  toGrams,
} from '../../../core/units/mass.ts';
import { massFigure, massText } from '../../../core/words/en/amounts.ts';

const grams = (text: string, usual: MassUnit = 'g') => {
  const r = parseMass(text, usual);
  return r.ok ? r.grams : r.fault.code;
};

describe('parsing', () => {
  it.each([
    ['412', 'g', 412],
    ['412 g', 'g', 412],
    ['0.412kg', 'g', 412],
    ['0,412 kg', 'g', 412],
    ['14.5oz', 'g', 411.1],
    ['14.5', 'oz', 411.1],
    ['1 lb 3', 'g', 538.6],
    ['1lb3.5oz', 'g', 552.8],
    ['1 lb 3 oz', 'g', 538.6],
    ['1:3.5', 'lboz', 552.8],
    ['1 3.5', 'lboz', 552.8],
    ['1 10', 'lboz', 737.1],
    ['2 lb', 'g', 907.2],
    ['2', 'lb', 907.2],
    ['1 204', 'g', 1204],
    ['1\u00a0204 g', 'g', 1204],
    ['.5kg', 'g', 500],
    ['412.5', 'g', 412.5],
    ['412,5', 'g', 412.5],
    ['0,545', 'g', 0.5],
    ['0,545', 'kg', 545],
    ['2.4', 'kg', 2400],
    ['４１２', 'g', 412],
  ] as const)('%s under %s', (text, usual, expected) => {
    expect(grams(text, usual)).toBe(expected);
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['4l2', 'letter'],
    ['l412', 'letter'],
    ['412x', 'letter'],
    ['412 stones', 'unit'],
    ['abc', 'number'],
    ['1.2.3', 'number'],
    ['1,204', 'number'],
    ['-5', 'not-positive'],
    ['0', 'not-positive'],
    ['0.01', 'not-positive'],
    ['200 kg', 'too-heavy'],
    ['1 lb 17', 'ounces-over'],
    ['9'.repeat(400), 'number'],
  ])('refuses %s', (text, code) => {
    expect(grams(text)).toBe(code);
  });

  it('never throws and never gives a weight out of bounds, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[0-9 .,:kglboz#-]{0,14}$/)),
        fc.constantFrom(...MASS_UNITS),
        (text, unit) => {
          const r = parseMass(text, unit);
          if (r.ok) {
            expect(r.grams).toBeGreaterThan(0);
            expect(r.grams).toBeLessThanOrEqual(150_000);
            expect(toGrams(r.grams)).toBe(r.grams);
          }
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('reads back what it shows, in every unit, within the figures shown', () => {
    const step: Record<MassUnit, number> = {
      g: 0.5,
      kg: 50,
      oz: GRAMS_PER_OUNCE / 20,
      lb: GRAMS_PER_POUND / 20,
      lboz: GRAMS_PER_OUNCE / 20,
    };
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 900_000 }), fc.constantFrom(...MASS_UNITS), (tenths, unit) => {
        const g = tenths / 10;
        const r = parseMass(massText(g, unit), unit);
        if (g >= step[unit] * 2) {
          expect(r.ok, massText(g, unit)).toBe(true);
          if (r.ok) expect(Math.abs(r.grams - g)).toBeLessThanOrEqual(step[unit] + 0.051);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe('showing', () => {
  it('carries ounces into pounds after rounding', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500_000 }), (tenths) => {
        const { pounds, ounces } = poundsAndOunces(tenths / 10);
        expect(ounces).toBeGreaterThanOrEqual(0);
        expect(ounces).toBeLessThan(16);
        expect(Math.abs((pounds * 16 + ounces) * GRAMS_PER_OUNCE - tenths / 10)).toBeLessThanOrEqual(GRAMS_PER_OUNCE * 0.0501);
      }),
    );
    expect(poundsAndOunces(907)).toEqual({ pounds: 2, ounces: 0 });
  });

  it('groups thousands with a no-break space', () => {
    expect(massFigure(2395, 'g')).toBe('2\u00a0395');
    expect(massText(412.4, 'g')).toBe('412\u00a0g');
    expect(massText(200, 'lboz')).toBe('7.1 oz');
  });
});
