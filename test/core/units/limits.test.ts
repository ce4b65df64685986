import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { longText, shortText } from '../../../core/units/fields.ts';
import { limitsIn, limitsOf, longestOf } from '../../../core/units/limits.ts';

describe('what a form asks for', () => {
  it('has the bounds of its schema', () => {
    expect(limitsOf(z.number().int().min(2).max(12))).toEqual({ low: 2, high: 12, integer: true });
    expect(limitsOf(z.number().min(0.5).max(120).nullable())).toEqual({ low: 0.5, high: 120, integer: false });
    expect(
      limitsOf(
        z
          .number()
          .min(0)
          .max(9)
          .refine((n) => n !== 3),
      ),
    ).toEqual({ low: 0, high: 9, integer: false });
  });

  it('has them in per cent without the rests of binary', () => {
    expect(limitsIn(z.number().min(0.005).max(0.2), 100)).toEqual({ low: 0.5, high: 20, integer: false });
    expect(limitsIn(z.number().min(0.07).max(0.29), 100)).toEqual({ low: 7, high: 29, integer: false });
  });

  it('has the longest of its text, the narrower of two', () => {
    expect([longestOf(shortText), longestOf(longText), longestOf(longText.max(60).refine((t) => t !== ''))]).toEqual([
      120, 4000, 60,
    ]);
  });

  it('is refused without bounds', () => {
    expect(() => limitsOf(z.number().min(1))).toThrow(RangeError);
    expect(() => limitsOf(z.number().int())).toThrow(RangeError);
    expect(() => longestOf(z.string())).toThrow(RangeError);
  });
});
