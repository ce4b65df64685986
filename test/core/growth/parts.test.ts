import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromLocalMinutes, localMinutes } from '../../../core/calendar/clock.ts';
import { type Assessment, assessLitter } from '../../../core/growth/assess.ts';
import { logistic } from '../../../core/growth/curves.ts';
import { firstDaysLevel, isUnderBirth } from '../../../core/growth/first-days.ts';
import { bestGuess } from '../../../core/growth/guesses.ts';
import { LITTER_MARKS, levelAfter, puppyMarks } from '../../../core/growth/levels.ts';
import { inferredStep } from '../../../core/growth/noise.ts';
import { referenceGain } from '../../../core/growth/reference-gain.ts';
import { sessionsOf } from '../../../core/growth/sessions.ts';
import { GROWTH_CURVES } from '../../../core/reference/growth/curves.ts';
import { median } from '../../../core/statistics/median.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { make, SIX, sixWith } from './make.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const sentence = (a: Assessment | undefined) => (a === undefined ? '' : plain(say.puppy(a.finding, 'g')));

describe('levels', () => {
  it('are kept until the score is well under the mark', () => {
    const marks = { watch: 2, act: 3 };
    const scores = [1.9, 2, 1.7, 1.5, 3, 2.7, 2.5, 1.7, 1.5];
    let level: 'steady' | 'watch' | 'act' = 'steady';
    const seen = scores.map((s) => (level = levelAfter(level, s, marks)));
    expect(seen).toEqual(['steady', 'watch', 'watch', 'steady', 'act', 'act', 'watch', 'watch', 'steady']);
  });

  it('larger litters ask for a little more', () => {
    const acts = [1, 2, 6, 10, 14].map((n) => puppyMarks(n).act);
    expect(acts).toEqual([...acts].sort((a, b) => a - b));
    expect(LITTER_MARKS.act).toBeGreaterThan(LITTER_MARKS.watch);
  });
});

describe('the first-days rules', () => {
  it('are decided in whole tenths of a gram', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 9000 }), fc.integer({ min: 400, max: 9000 }), (birth, now) => {
        expect(isUnderBirth(birth / 10, now / 10, 10)).toBe(10 * (birth - now) >= birth);
      }),
    );
  });

  it('4 % counts on day two only, and is kept until it is made good', () => {
    expect(firstDaysLevel('steady', 400, 384, 1, 1)).toBe('steady');
    expect(firstDaysLevel('steady', 400, 384, 2, 1)).toBe('watch');
    expect(firstDaysLevel('watch', 400, 384, 4, 1)).toBe('watch');
    expect(firstDaysLevel('watch', 400, 390, 4, 1)).toBe('steady');
    expect(firstDaysLevel('steady', 400, 360, 1, 1)).toBe('act');
  });

  it('one step of a coarse scale is no loss; two are', () => {
    const ounce = 28.35;
    expect(firstDaysLevel('steady', 17 * ounce, 16 * ounce, 2, ounce)).toBe('steady');
    expect(firstDaysLevel('steady', 17 * ounce, 15 * ounce, 2, ounce)).toBe('act');
    expect(firstDaysLevel('steady', 26 * ounce, 24 * ounce, 2, ounce)).toBe('watch');
    expect(firstDaysLevel('steady', 30 * ounce, 28.5 * ounce, 2, ounce)).toBe('watch');
  });
});

describe('guesses', () => {
  const guess = (typed: number, expected: number, unit: 'g' | 'kg' | 'lboz' = 'g') =>
    bestGuess(typed, Math.log(expected), 0.03, unit);
  it('name the slip', () => {
    expect(guess(224, 2240)?.kind).toBe('tenth');
    expect(guess(22_400, 2240)?.kind).toBe('tenfold');
    expect(guess(2.2, 2240)?.kind).toBe('kilo');
    expect(guess(2420, 2240)).toMatchObject({ kind: 'digits', grams: 2240, slip: 'swapped' });
    expect(guess(4112, 412)).toMatchObject({ kind: 'digits', grams: 412, slip: 'doubled' });
    expect(guess(24, 244)).toMatchObject({ kind: 'tenth', grams: 240 });
    expect(guess(700, 412)).toBeNull();
    expect(guess(4841, 1835)).toMatchObject({ kind: 'digits', slip: 'one-wrong', grams: 1841 });
    expect(guess(1341, 1835)).toMatchObject({ slip: 'one-wrong', grams: 1841 });
    // Any figure in the first place would be as near as this.
    expect(guess(700, 430)).toBeNull();
  });

  it('never offer what was typed, and only what fits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 100, max: 60_000 }), (typed, expected) => {
        const g = guess(typed, expected);
        if (g === null) return;
        expect(g.grams).not.toBe(typed);
        expect(Math.abs(Math.log(g.grams / expected))).toBeLessThanOrEqual(2.5 * 0.03 + 1e-9);
      }),
    );
  });
});

describe('the reference', () => {
  it('loses 2 % on the first day, then rises, and more slowly every week', () => {
    fc.assert(
      fc.property(fc.double({ min: 60, max: 900, noNaN: true }), (birth) => {
        const r = referenceGain(birth);
        expect(r.since(1)).toBeCloseTo(-0.02, 9);
        const weeks = [2, 9, 16, 23, 30, 37, 44, 51].map((d) => r.since(d + 7) - r.since(d));
        expect(weeks.every((w, i) => w > 0 && (i === 0 || w < (weeks[i - 1] ?? 0)))).toBe(true);
      }),
    );
  });

  it('is the class curve from nine weeks on', () => {
    for (const [birth, size] of [
      [150, 'toy'],
      [290, 'medium'],
      [560, 'giant'],
    ] as const) {
      const r = referenceGain(birth);
      const curve = (day: number) => Math.log(logistic(day / 7, GROWTH_CURVES[size]));
      expect(r.since(112) - r.since(63)).toBeCloseTo(curve(112) - curve(63), 9);
      expect(r.since(70.5) - r.since(69.5)).toBeCloseTo(r.pace(70), 5);
      expect(r.since(63 + 1e-9)).toBeCloseTo(r.since(63), 6);
    }
  });

  it('lies within the published daily gains: 5 to 10 % in week one, 3.5 to 6 % in weeks two to four', () => {
    for (const birth of [190, 290, 420]) {
      const r = referenceGain(birth);
      const percent = (from: number, to: number) => 100 * (Math.exp((r.since(to) - r.since(from)) / (to - from)) - 1);
      expect(percent(2, 7)).toBeGreaterThan(5);
      expect(percent(2, 7)).toBeLessThan(10);
      expect(percent(7, 28)).toBeGreaterThan(3.5);
      expect(percent(7, 28)).toBeLessThan(7);
    }
  });
});

describe('the step of the scale', () => {
  it('is read off the weights', () => {
    expect(inferredStep([410, 395, 430, 380, 415, 400, 425, 435])).toBe(5);
    expect(inferredStep([411, 395, 430, 380, 418, 402, 425, 437])).toBe(1);
    expect(inferredStep([17, 16, 19, 18, 23, 21, 28, 25].map((oz) => Math.round(oz * 283.49523125) / 10))).toBeCloseTo(28.35, 2);
  });
});

describe('sessions', () => {
  it('hold no puppy twice, lose no reading, and go forward', () => {
    const input = make(SIX, { days: 10, perDay: 2 });
    const again = {
      ...input,
      readings: [
        ...input.readings,
        ...input.readings.slice(20, 30).map((r) => ({ ...r, id: `${r.id}-again`, instant: r.instant + 600_000 })),
      ],
    };
    const sessions = sessionsOf(again);
    expect(sessions.flatMap((s) => s.rows)).toHaveLength(again.readings.length);
    for (const s of sessions) expect(new Set(s.rows.map((r) => r.puppy.id)).size).toBe(s.rows.length);
    expect(sessions.map((s) => s.instant)).toEqual(sessions.map((s) => s.instant).sort((a, b) => a - b));
  });

  it('a weight after the end of a series is left out', () => {
    const input = make(sixWith('Ash', { endsDay: 3 }), { days: 6 });
    const late = input.readings.find((r) => r.id === 'r-Briar-6');
    if (late === undefined) throw new Error('no reading');
    const rows = sessionsOf({ ...input, readings: [...input.readings, { ...late, id: 'late', puppyId: 'Ash' }] }).flatMap(
      (s) => s.rows,
    );
    expect(rows.some((r) => r.reading.id === 'late')).toBe(false);
  });
});

describe('a watch asks for another weighing, and it counts', () => {
  it('weighed again alone after eight hours the puppy is judged by that weight', () => {
    const input = make(sixWith('Dock', { drift: (age) => (age < 5 ? 0 : -0.12 * (age - 5)) }), { days: 7, perDay: 2 });
    const last = input.readings.find((r) => r.id === 'r-Dock-7');
    if (last === undefined) throw new Error('no reading');
    const before = assessLitter(input).puppies.get('Dock');
    const at = fromLocalMinutes(localMinutes(last.at) + 480);
    const again = (grams: number) =>
      assessLitter({
        ...input,
        readings: [
          ...input.readings,
          { ...last, id: 'again', at, instant: last.instant + 28_800_000, grams, session: 'evening' },
        ],
      });
    const worse = again(Math.round(last.grams * 0.985));
    const better = again(Math.round(last.grams * 1.09));
    expect(worse.puppies.get('Dock')?.score).toBeGreaterThan(before?.score ?? 9);
    expect(better.puppies.get('Dock')?.score).toBeLessThan(before?.score ?? 0);
    expect(worse.litter.level).toBe('steady');
    expect([...worse.puppies.values()].filter((a) => a.level !== 'steady').map((a) => a.puppyId)).toEqual(['Dock']);
  });
});

describe('a coarse scale', () => {
  it('is said once, for the litter', () => {
    const coarse = { ...make(SIX, { days: 3 }), scaleStepGrams: 5 };
    expect(plain(say.coarseScale(assessLitter(coarse).coarseStepGrams ?? 0, 'g'))).toBe(
      'The scale moves in steps of 5 g: too coarse for early signs at these weights.',
    );
    expect(assessLitter(make(SIX, { days: 3 })).coarseStepGrams).toBeNull();
  });
});

describe('a very low birth weight in a breed of the study', () => {
  it('is watched from birth with the published figure, and no longer than two days when it gains', () => {
    const input = { ...make(sixWith('Fern', { birth: 240 }), { days: 4 }), breed: 'Labrador Retriever' };
    const upTo = (day: number) =>
      assessLitter({
        ...input,
        readings: input.readings.filter((r) => r.instant <= (input.puppies[0]?.bornInstant ?? 0) + day * 86_400_000 + 36_000_000),
      });
    expect(upTo(0).puppies.get('Fern')?.level).toBe('watch');
    expect(sentence(upTo(0).puppies.get('Fern'))).toContain('240 g at birth is very little for the breed (under 248 g)');
    expect(upTo(4).puppies.get('Fern')?.level).toBe('steady');
  });
});

describe('a very low birth weight in a breed that the study does not have', () => {
  const born = (birth: number, breed: string, breedBirthGrams: number | null) => {
    const input = { ...make(sixWith('Fern', { birth }), { days: 4 }), breed, breedBirthGrams };
    const onDay = (day: number) =>
      assessLitter({
        ...input,
        readings: input.readings.filter((r) => r.instant <= (input.puppies[0]?.bornInstant ?? 0) + day * 86_400_000 + 36_000_000),
      }).puppies.get('Fern');
    return { birth: onDay(0), day4: onDay(4) };
  };

  it('is watched from birth under two thirds of what the breeder wrote, without deaths, until it gains', () => {
    const { birth, day4 } = born(265, 'Mudi', 400);
    expect(birth?.level).toBe('watch');
    expect(sentence(birth)).toBe('265 g at birth is very little for the breed (under two thirds of the usual 400 g).');
    expect(day4?.level).toBe('steady');
    expect(born(267, 'Mudi', 400).birth?.level).toBe('steady');
  });

  it('goes by a small study when she wrote nothing, and is silent when there is none', () => {
    expect(sentence(born(345, 'Dobermann', null).birth)).toBe(
      '345 g at birth is very little for the breed (under two thirds of the usual 525 g).',
    );
    expect(born(345, 'Mudi', null).birth?.level).toBe('steady');
  });

  it('is reckoned anew when the figure changes, also over the same weights', () => {
    expect([300, 500, 300, null].map((usual) => born(265, 'Mudi', usual).birth?.level)).toEqual([
      'steady',
      'watch',
      'steady',
      'steady',
    ]);
  });
});

describe('the middle', () => {
  it('is the median', () => {
    expect(median([412, 398, 405, 421, 330, 409])).toBe(407);
    expect(Number.isNaN(median([]))).toBe(true);
  });
});
