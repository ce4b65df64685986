/** Doses with every trap of a label. Worked examples with their sources are rows standards 28 to 31 of the evidence. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, date } from '../../../core/calendar/day.ts';
import { type DoseLabel, type DosePuppy, doseOf, measuredIn, perKg, perUnit, STRENGTH_UNITS } from '../../../core/care/dose.ts';

const BORN = date('2026-10-01');
const NOW = { day: addDays(BORN, 42), instant: Date.UTC(2026, 10, 12, 9) };
const HOUR = 3_600_000;
const LABEL: DoseLabel = {
  rate: { amount: 50, unit: 'mg/kg' },
  light: null,
  strength: { amount: 100, unit: 'mg/mL' },
  mark: 0.1,
  leastDays: null,
  leastGrams: null,
};
const puppy = (grams: number, more: Partial<DosePuppy> = {}): DosePuppy => ({
  bornOn: BORN,
  level: 'steady',
  weighed: { grams, instant: NOW.instant - HOUR },
  ...more,
});
const dose = (label: DoseLabel, of: DosePuppy) => {
  const answer = doseOf(label, of, NOW);
  if (!answer.ok) throw new Error(answer.why.code);
  return answer.dose;
};
const why = (label: DoseLabel, of: DosePuppy) => {
  const answer = doseOf(label, of, NOW);
  return answer.ok ? null : answer.why.code;
};
const remarks = (label: DoseLabel, of: DosePuppy) => dose(label, of).remarks.map((r) => r.code);

describe('a dose', () => {
  it('says the exact and the drawn amount and what the drawn one gives', () => {
    const it = dose({ ...LABEL, rate: { amount: 10, unit: 'mg/kg' }, strength: { amount: 4.54, unit: 'mg/mL' } }, puppy(650));
    expect([it.mg, it.exact, it.drawn, it.mgPerKg].map((n) => Number(n.toFixed(4)))).toEqual([6.5, 1.4317, 1.4, 9.7785]);
    expect(it.remarks).toEqual([]);
  });

  it('reads a per cent as 10 mg in a millilitre, pounds as pounds', () => {
    expect(dose({ ...LABEL, strength: { amount: 10, unit: '%' } }, puppy(1200)).exact).toBeCloseTo(0.6, 12);
    expect(dose({ ...LABEL, rate: { amount: 22.6796185, unit: 'mg/lb' } }, puppy(1200)).mg).toBeCloseTo(60, 9);
  });

  it('is measured in grams of granules and in tablets', () => {
    expect(dose({ ...LABEL, strength: { amount: 222, unit: 'mg/g' }, mark: 0.01 }, puppy(1200))).toMatchObject({
      drawn: 0.27,
      unit: 'g',
    });
    expect(dose({ ...LABEL, strength: { amount: 60, unit: 'mg/tablet' }, mark: 0.25 }, puppy(1200))).toMatchObject({
      drawn: 1,
      unit: 'tablet',
    });
    expect(STRENGTH_UNITS.map(measuredIn)).toEqual(['mL', 'mL', 'g', 'tablet']);
  });

  it('takes the rate of the light ones up to the weight, that weight included', () => {
    const label: DoseLabel = { ...LABEL, light: { upToGrams: 2267.96, rate: { amount: 100, unit: 'mg/kg' } } };
    expect(dose(label, puppy(2267.9)).mg).toBeCloseTo(226.79, 6);
    expect(dose(label, puppy(2268)).mg).toBeCloseTo(113.4, 6);
  });

  it('tells every rounding up, however small, and a large one down', () => {
    expect(remarks(LABEL, puppy(1180))).toEqual(['dose-rounded']);
    expect(remarks(LABEL, puppy(1220))).toEqual([]);
    expect(remarks({ ...LABEL, mark: 0.5 }, puppy(1400))).toEqual(['dose-rounded']);
  });

  it('is refused under a mark, not rounded to nothing and not up to a whole mark', () => {
    expect(why({ ...LABEL, mark: 1 }, puppy(600))).toBe('dose-under-a-mark');
  });

  it('asks about much liquid: a strength that slipped by ten', () => {
    expect(remarks({ ...LABEL, strength: { amount: 10, unit: 'mg/mL' } }, puppy(1200))).toEqual([]);
    expect(remarks({ ...LABEL, strength: { amount: 1, unit: 'mg/mL' } }, puppy(1200))).toEqual(['dose-much']);
    expect(remarks({ ...LABEL, strength: { amount: 1, unit: '%' } }, puppy(1200))).toEqual([]);
  });

  it('goes by the weight of today, tells an older one and refuses a week-old one', () => {
    const weighed = (hours: number) => puppy(1200, { weighed: { grams: 1200, instant: NOW.instant - hours * HOUR } });
    expect(remarks(LABEL, weighed(24))).toEqual([]);
    expect(remarks(LABEL, weighed(25))).toEqual(['dose-weight-of']);
    expect(remarks(LABEL, weighed(7 * 24))).toEqual(['dose-weight-of']);
    expect(why(LABEL, weighed(7 * 24 + 1))).toBe('dose-weight-old');
    expect(why(LABEL, puppy(0, { weighed: null }))).toBe('dose-no-weight');
  });

  it('keeps to the least age and weight of the label, themselves allowed', () => {
    expect(why({ ...LABEL, leastDays: 43 }, puppy(1200))).toBe('dose-too-young');
    expect(why({ ...LABEL, leastDays: 42 }, puppy(1200))).toBeNull();
    expect(why({ ...LABEL, leastGrams: 1200.1 }, puppy(1200))).toBe('dose-too-light');
    expect(why({ ...LABEL, leastGrams: 1200 }, puppy(1200))).toBeNull();
  });

  it('is not worked out for a puppy at watch or act', () => {
    expect(why(LABEL, puppy(1200, { level: 'watch' }))).toBe('dose-ask-vet');
    expect(why(LABEL, puppy(1200, { level: 'act' }))).toBe('dose-ask-vet');
    expect(why(LABEL, puppy(1200, { level: null }))).toBeNull();
  });

  it('is within half a mark of the exact amount, and the two say the same in mg', () => {
    const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        figure(60, 60_000),
        figure(0.1, 200),
        figure(0.5, 500),
        fc.constantFrom(0.01, 0.05, 0.1, 0.25, 1),
        (grams, rate, strength, mark) => {
          const label: DoseLabel = {
            ...LABEL,
            rate: { amount: rate, unit: 'mg/kg' },
            strength: { amount: strength, unit: 'mg/mL' },
            mark,
          };
          const answer = doseOf(label, puppy(grams), NOW);
          if (!answer.ok) {
            expect(answer.why.code).toBe('dose-under-a-mark');
            return;
          }
          const { exact, drawn, mg, mgPerKg } = answer.dose;
          expect(Math.abs(drawn - exact)).toBeLessThanOrEqual(mark / 2 + 1e-9);
          expect(exact * perUnit(label.strength)).toBeCloseTo(mg, 6);
          expect(mgPerKg / perKg(label.rate)).toBeCloseTo(drawn / exact, 9);
        },
      ),
    );
  });
});
