import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessLitter } from '../../../core/growth/assess.ts';
import { historyOf } from '../../../core/growth/history.ts';
import { program } from '../../growth-sim/methods.ts';
import { KINDS, simulate } from '../../growth-sim/simulate.ts';

describe('no looking ahead', () => {
  it('a litter cut short has the same answers up to the cut', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS),
        fc.integer({ min: 1, max: 100_000 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (kind, seed, at) => {
          const { input } = simulate(kind, seed, { days: 28 });
          const whole = program(input);
          const cut = whole[Math.floor(whole.length * at)]?.instant ?? 0;
          const short = program({ ...input, readings: input.readings.filter((r) => r.instant <= cut) });
          expect(short).toEqual(whole.slice(0, short.length));
          expect(short.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('the order in which readings arrive does not matter', () => {
    const { input } = simulate('acute', 77, { days: 14 });
    expect(assessLitter({ ...input, readings: [...input.readings].reverse() })).toEqual(assessLitter(input));
  });

  it('what was asked before does not matter', () => {
    const { input } = simulate('several', 78, { days: 21 });
    const whole = assessLitter(input);
    const shorter = { ...input, readings: input.readings.slice(0, Math.floor(input.readings.length / 2)) };
    const other = simulate('slow', 79, { days: 21 }).input;
    assessLitter(shorter);
    assessLitter(other);
    expect(assessLitter(input)).toEqual(whole);
    const changed = { ...input, readings: input.readings.map((r, i) => (i === 5 ? { ...r, grams: r.grams + 1 } : r)) };
    expect(
      historyOf(changed)
        .at(-1)
        ?.cleaned.sessions[0]?.rows.some((r) => r.reading.grams === changed.readings[5]?.grams),
    ).toBe(true);
  });
});
