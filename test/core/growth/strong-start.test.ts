/** Litters that gain from the first hour on, real and made: their growth is no fault of the scale. */
import { describe, expect, it } from 'vitest';
import { assessLitter } from '../../../core/growth/assess.ts';
import { historyOf } from '../../../core/growth/history.ts';
import { referenceGain } from '../../../core/growth/reference-gain.ts';
import { TYHURST, tyhurst } from '../../fixtures/tyhurst-litter.ts';
import { simulate } from '../../growth-sim/simulate.ts';
import { make, SIX } from './make.ts';

/** Log gain over the reference of a litter that gains 14 % on its first day and is fast for a week. */
const strong = (age: number) => 0.16 * Math.min(1, age) + 0.2 * (1 - Math.exp(-Math.max(0, age - 1) / 4));
const STRONG = SIX.map((p) => ({ ...p, drift: strong }));

/** Readings that were out at any time, whatever became of them later, by verdict. */
function everOut(input: Parameters<typeof historyOf>[0]): string[] {
  return historyOf(input).flatMap((known) =>
    known.cleaned.sessions.flatMap((s) =>
      s.rows.flatMap((r) => (r.verdict === 'counts' ? [] : [`${r.verdict} ${r.reading.id.split('-')[0]}`])),
    ),
  );
}

describe('a litter that gains from the first day', () => {
  it.each([1, 2] as const)('weighed %d times a day has nothing held out, and nobody flagged', (perDay) => {
    const input = make(STRONG, { days: 20, perDay });
    expect(everOut(input)).toEqual([]);
    for (const known of historyOf(input)) {
      expect(known.puppies.map((p) => p.level)).toEqual(SIX.map(() => 'steady'));
      expect(known.litter.level).toBe('steady');
    }
  });

  it('is expected to gain as it does, while another of the same birth weights is not', () => {
    const expectedOnDay = (puppies: typeof SIX, day: number) => {
      const known = historyOf(make(puppies, { days: 3 })).at(-1);
      return known?.reference.pace(day) ?? Number.NaN;
    };
    const usual = referenceGain(406).pace(4);
    expect(expectedOnDay(STRONG, 4)).toBeGreaterThan(1.15 * usual);
    expect(expectedOnDay(SIX, 4)).toBeLessThan(1.1 * usual);
    expect(expectedOnDay(SIX, 4)).toBeGreaterThanOrEqual(usual);
  });

  it('a litter short of milk from the first day does not lower what is expected of it', () => {
    const slow = SIX.map((p) => ({ ...p, drift: (age: number) => -0.05 * age }));
    const known = historyOf(make(slow, { days: 6 })).at(-1);
    expect(known?.reference.since(6)).toBeGreaterThanOrEqual(referenceGain(406).since(6));
    expect(known?.litter.level).toBe('act');
  });

  it('a fault of the scale in it is still found', () => {
    const input = make(STRONG, { days: 9, typed: (_name, day, grams) => (day === 6 ? Math.round(grams * 1.12) : grams) });
    const found = assessLitter(input).findings;
    expect(found.map((f) => [f.kind, f.readingId])).toEqual([['scale', 'r-Ash-6']]);
  });

  it('invented ones: at most one session in 500 is called a fault of the scale', () => {
    let faults = 0;
    let sessions = 0;
    for (let seed = 1; seed <= 14; seed += 1) {
      const { input } = simulate('healthy', 7000 + seed, { strongStart: true, slips: false, puppies: 6, days: 40 });
      const history = historyOf(input);
      sessions += history.length;
      faults += new Set(everOut(input).filter((out) => out.startsWith('scale'))).size;
    }
    expect(sessions).toBeGreaterThan(500);
    expect(faults / sessions).toBeLessThanOrEqual(1 / 500);
  });
});

describe('what was put back', () => {
  it('is not marked again', () => {
    // One jump that stays: the scale was exchanged for another, or they were fed; it is doubted once at most.
    const input = make(SIX, { days: 16, typed: (_name, day, grams) => (day >= 9 ? Math.round(grams * 1.13) : grams) });
    const history = historyOf(input);
    const courses = history.map((_, k) =>
      history.map((h) => (h.cleaned.sessions[k]?.rows.some((r) => r.verdict === 'scale') ? 'out' : 'in')).join(' '),
    );
    expect(courses.some((course) => course.includes('out in'))).toBe(true);
    for (const course of courses)
      expect(course.match(/in out/g) ?? []).toHaveLength(course.startsWith('in') && course.includes('out') ? 1 : 0);
    expect(
      history
        .at(-1)
        ?.cleaned.sessions.flatMap((s) => s.rows)
        .filter((r) => r.used === null),
    ).toEqual([]);
  });
});

describe('a whole real litter', () => {
  it('only its documented fault of the scale is held out for all, and one weight that was copied from the row above', () => {
    const findings = assessLitter(tyhurst()).findings;
    expect(findings.map((f) => [f.kind, f.readingId.split('-')[0]])).toEqual([
      ['scale', `d${TYHURST.faultDay}`],
      // 131, 131, 131 ounces in a row, the third one after 138 and before 157.
      ['mistyped', 'd42'],
    ]);
  });

  it('no other session was ever held out on the way', () => {
    expect([...new Set(everOut(tyhurst()))].sort()).toEqual(['mistyped d42', `scale d${TYHURST.faultDay}`]);
  });
});
