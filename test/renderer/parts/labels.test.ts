import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageTicks, axisUnit } from '../../../renderer/parts/charts/axes.ts';
import { roughMeasure } from '../../../renderer/parts/measure.ts';
import { spread } from '../../../renderer/parts/spread.ts';
import { wrapText } from '../../../renderer/parts/wrap.ts';

describe('labels at the ends of lines', () => {
  it('leaves labels that are far apart where they are', () => {
    expect(spread([100, 20, 60], 18, 0, 200)).toEqual([100, 20, 60]);
  });

  it('moves two that touch apart around their middle', () => {
    expect(spread([50, 50], 20, 0, 200)).toEqual([40, 60]);
  });

  it('keeps order, distance and bounds', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -50, max: 450, noNaN: true }), { minLength: 1, maxLength: 16 }), (wanted) => {
        const placed = spread(wanted, 20, 0, 400);
        const byWish = wanted.map((w, i) => ({ w, i, p: placed[i] ?? Number.NaN })).sort((a, b) => a.w - b.w || a.i - b.i);
        return byWish.every(
          (l, i) => l.p >= -1e-6 && l.p <= 400 + 1e-6 && (i === 0 || l.p - (byWish[i - 1]?.p ?? 0) >= 20 - 1e-6),
        );
      }),
    );
  });

  it('shares the room evenly when there is too little', () => {
    expect(spread([5, 5, 5], 20, 0, 20)).toEqual([0, 10, 20]);
  });
});

describe('text in lines', () => {
  it('keeps every word in order and every line within the width', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,9}$/), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 90, max: 600 }),
        (words, width) => {
          const lines = wrapText(words.join(' '), 16, width, roughMeasure, width - 10);
          expect(lines.join(' ').trim()).toBe(words.join(' '));
          for (const [i, line] of lines.entries())
            expect(roughMeasure(line, 16)).toBeLessThanOrEqual(i === 0 ? width - 10 : width);
        },
      ),
    );
  });
});

describe('axes of the charts', () => {
  it('counts age in days, then weeks, then months', () => {
    expect(ageTicks({ from: 0, until: 4 }, 1000).map((t) => t.label)).toEqual(['birth', '1 day', '2 days', '3 days', '4 days']);
    expect(ageTicks({ from: 0, until: 33 }, 1000).map((t) => [t.value, t.label])).toEqual([
      [0, 'birth'],
      [7, '1 week'],
      [14, '2 weeks'],
      [21, '3 weeks'],
      [28, '4 weeks'],
    ]);
    expect(ageTicks({ from: 0, until: 365 }, 700).map((t) => t.label)).toEqual([
      'birth',
      '2 months',
      '4 months',
      '6 months',
      '8 months',
      '10 months',
    ]);
  });

  it('never has more ticks than there is room for', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 340, max: 1300 }),
        (until, width) => ageTicks({ from: 0, until }, width).length <= (width - 116) / 62 + 1.31,
      ),
    );
  });

  it('counts in the unit of her scale; pounds and ounces in pounds', () => {
    expect(axisUnit('g', 2400)).toMatchObject({ grams: 1, name: 'g' });
    expect(axisUnit('kg', 2400)).toMatchObject({ grams: 1000, name: 'kg' });
    expect(axisUnit('lboz', 2400)).toMatchObject({ grams: 453.59237, name: 'lb' });
    expect(axisUnit('g', 2400).figure(2500)).toBe('2\u00a0500');
  });
});
