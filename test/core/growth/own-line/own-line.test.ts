/** The breeder's own line: who is in it, how litters weigh, and what it says of one puppy. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitCurve, onCurve } from '../../../../core/growth/own-line/fit-curve.ts';
import { lmsValue, lmsZ, percentileOf } from '../../../../core/growth/own-line/lms.ts';
import { fitRandomIntercept } from '../../../../core/growth/own-line/mixed-model.ts';
import { noPlace } from '../../../../core/growth/own-line/no-place.ts';
import { type EarlierLitter, ownLineOf, placeInLine } from '../../../../core/growth/own-line/own-line.ts';
import { ownLineWords } from '../../../../core/words/en/own-line.ts';
import { random } from '../../../growth-sim/random.ts';

const noPlaceSaid = (...facts: Parameters<typeof noPlace>) => ownLineWords.noPlace(noPlace(...facts));

const DAY = 86_400_000;

/** Multiples of birth weight on the way that these invented puppies grow. */
const multiple = (day: number, pace = 1) => Math.exp(pace * 3.9 * (1 - Math.exp(-0.0238 * day)));

/** A litter weighed once a day at the hour of birth; `paces` says how fast each puppy gains. */
function litter(name: string, paces: readonly number[], days = 58, birth = 400): EarlierLitter {
  const puppies = paces.map((_, i) => ({ id: `${name}-${i}`, bornInstant: 0, state: 'home' as const }));
  const readings = puppies.flatMap((p, i) =>
    Array.from({ length: days + 1 }, (_, day) => ({
      puppyId: p.id,
      instant: day * DAY,
      grams: (birth + 10 * i) * multiple(day, paces[i]),
    })),
  );
  return { puppies, readings };
}

const FOUR = [0.97, 0.99, 1.01, 1.03];
const THREE = ['a', 'b', 'c'].map((name) => litter(name, FOUR));

const series = (pace: number, days: number, birth = 400) =>
  Array.from({ length: days + 1 }, (_, day) => ({ ageDays: day, grams: birth * multiple(day, pace) }));

describe('a line', () => {
  test('needs three litters and twelve puppies at an age', () => {
    expect(ownLineOf(THREE)).toMatchObject({ litters: 3, puppies: 12 });
    expect(ownLineOf(THREE).ages.map((a) => a.day)).toEqual(Array.from({ length: 56 }, (_, i) => i + 1));
    expect(ownLineOf(THREE.slice(0, 2)).ages).toEqual([]);
    expect(ownLineOf([litter('a', FOUR), litter('b', FOUR), litter('c', FOUR.slice(1))]).ages).toEqual([]);
    expect(ownLineOf([...THREE.slice(1), litter('short', FOUR, 20)]).ages.map((a) => a.day)).toEqual(
      Array.from({ length: 20 }, (_, i) => i + 1),
    );
  });

  test('leaves out who died, lost a tenth, or was not weighed at birth, and a weight that is mistyped', () => {
    const [first, ...rest] = THREE;
    if (first === undefined) throw new Error('no litter');
    const without = (change: (l: EarlierLitter) => EarlierLitter) => ownLineOf([change(first), ...rest, litter('d', FOUR)]);
    expect(without((l) => l).puppies).toBe(16);
    expect(without((l) => ({ ...l, puppies: l.puppies.map((p, i) => (i === 0 ? { ...p, state: 'died' } : p)) })).puppies).toBe(
      15,
    );
    const lost = (r: EarlierLitter['readings'][number]) =>
      r.puppyId === 'a-0' && r.instant > 0 && r.instant <= 2 * DAY ? { ...r, grams: 355 } : r;
    expect(without((l) => ({ ...l, readings: l.readings.map(lost) })).puppies).toBe(15);
    expect(without((l) => ({ ...l, readings: l.readings.filter((r) => r.puppyId !== 'a-0' || r.instant >= DAY) })).puppies).toBe(
      15,
    );
    const plain = without((l) => l);
    const typo = (r: EarlierLitter['readings'][number]) =>
      r.puppyId === 'a-0' && r.instant === 20 * DAY ? { ...r, grams: r.grams * 10 } : r;
    const mistyped = without((l) => ({ ...l, readings: l.readings.map(typo) }));
    expect(mistyped.puppies).toBe(16);
    expect(mistyped.at(20)?.m).toBeCloseTo(plain.at(20)?.m ?? 0, 2);
    expect(mistyped.at(20)?.s).toBeCloseTo(plain.at(20)?.s ?? 0, 2);
  });

  test('lets litters weigh alike: one of twelve slow puppies does not rule', () => {
    const big = litter(
      'big',
      Array.from({ length: 12 }, (_, i) => 0.8 + 0.001 * i),
    );
    const line = ownLineOf([big, litter('a', FOUR), litter('b', FOUR), litter('c', FOUR)]);
    const puppyMean = (12 * 0.8055 + 12 * 1) / 24;
    const middle = Math.log(line.at(30)?.m ?? 0) / Math.log(multiple(30));
    expect(middle).toBeGreaterThan(puppyMean + 0.03);
    expect(middle).toBeCloseTo((0.8055 + 3) / 4, 2);
    expect(line.birthGrams).toBeGreaterThan(400);
  });

  test('is null outside its days, and between them follows the way', () => {
    const line = ownLineOf(THREE);
    expect(line.at(0.5)).toBeNull();
    expect(line.at(56.1)).toBeNull();
    expect(line.at(30.5)?.m).toBeGreaterThan(line.at(30)?.m ?? 0);
    expect(line.at(30.5)?.m).toBeLessThan(line.at(31)?.m ?? 0);
    expect(line.at(30)?.m).toBeCloseTo(multiple(30), 1);
  });
});

describe('a puppy beside it', () => {
  const line = ownLineOf(THREE);
  const long = ownLineOf(Array.from({ length: 12 }, (_, i) => litter(`l${i}`, FOUR)));
  const at = (pace: number, beside = line) => {
    const place = placeInLine(beside, series(pace, 30));
    if (place === null) throw new Error('no place');
    return place;
  };

  test('is told in plain words, and never to gain more', () => {
    expect(ownLineWords.place(at(1), 'dog')).toBe('For his birth weight he is in the middle of your own line at this age.');
    expect(ownLineWords.place(at(1.015), 'bitch')).toMatch(
      /^For her birth weight she is heavier than about (60|65|70|75) of 100 puppies of your own line at this age\.$/,
    );
    expect(ownLineWords.place(at(0.985), 'dog')).toMatch(/lighter than about (60|65|70|75) of 100/);
    expect(ownLineWords.place(at(0.7, long), 'dog')).toContain('among the lightest');
    expect(ownLineWords.place(at(1.3, long), 'dog')).toContain('among the heaviest');
    expect(at(1).gain).toMatchObject({ days: 5 });
    expect(ownLineWords.gain(at(1), 'dog')).toBe('In the last 5 days he gained about as much as most that stood where he did.');
    for (const pace of [0.7, 0.98, 1, 1.02, 1.3]) {
      const said = `${ownLineWords.place(at(pace), 'dog')} ${ownLineWords.gain(at(pace), 'dog')}`;
      expect(said).not.toMatch(/should|must|feed|watch|act\b/);
    }
  });

  test('a stall of five days is less than of most, though it is still the heaviest', () => {
    const stalled = series(1.03, 30).map((p) =>
      p.ageDays > 25 ? { ...p, grams: 400 * multiple(25 + (p.ageDays - 25) / 3, 1.03) } : p,
    );
    const place = placeInLine(line, stalled);
    expect(place?.gain?.percentile).toBeLessThan(10);
    expect(place === null ? '' : ownLineWords.gain(place, 'bitch')).toMatch(/^In the last 5 days she gained less than /);
  });

  test('of puppies whose litters are as those of the line about one in five is told to be in the outer tenths', () => {
    for (const litters of [3, 8]) {
      const r = random(12);
      const paces = () => {
        const own = r.normal(0.03);
        return Array.from({ length: 5 }, () => 1 + own + r.normal(0.03));
      };
      let [outer, all] = [0, 0];
      for (let run = 0; run < 80; run += 1) {
        const known = ownLineOf(Array.from({ length: litters }, (_, i) => litter(`l${i}`, paces(), 22)));
        for (const pace of paces()) {
          const told = placeInLine(known, series(pace, 20))?.percentile ?? Number.NaN;
          all += 1;
          outer += told < 10 || told > 90 ? 1 : 0;
        }
      }
      expect(outer / all, `${litters} litters`).toBeGreaterThan(0.08);
      expect(outer / all, `${litters} litters`).toBeLessThan(0.27);
    }
  });

  test('says why there is no place', () => {
    expect(placeInLine(line, series(1, 30).slice(1))).toBeNull();
    expect(noPlaceSaid(line, 'Mudi', series(1, 30).slice(1))).toBe('This puppy has no birth weight to go by.');
    expect(placeInLine(line, series(1, 70))).toBeNull();
    expect(noPlaceSaid(line, 'Mudi', series(1, 70))).toBe('Your earlier litters have enough weights from day 1 to day 56 only.');
    expect(noPlaceSaid(ownLineOf([]), ' ', [])).toContain('Write down the breed');
    expect(noPlaceSaid(ownLineOf([]), 'Mudi', [])).toContain('No earlier litter of this breed');
    expect(noPlaceSaid(ownLineOf(THREE.slice(0, 1)), 'Mudi', [])).toBe(
      'There is 1 earlier litter of this breed with 4 puppies weighed from birth; your own line needs 3 litters and 12 puppies weighed from birth.',
    );
  });
});

describe('the ground it stands on', () => {
  test('z and value undo each other, at any power and far out', () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -6, max: 6, noNaN: true }), (l, z) => {
        const lms = { l, m: 4.2, s: 0.13 };
        expect(lmsZ(lmsValue(z, lms), lms)).toBeCloseTo(z, 6);
      }),
    );
    expect(lmsZ(0, { l: 0, m: 1, s: 0.1 })).toBeNaN();
    expect(percentileOf(0)).toBeCloseTo(50, 5);
  });

  test('a mixed model of groups that do not differ gives them no variance, and of too few values nothing', () => {
    const ones = [1, 2, 3].map(() => ({ x: [[1], [1], [1], [1]], y: [1, 2, 3, 4] }));
    expect(fitRandomIntercept(ones)).toMatchObject({ groupVariance: 0, fixed: [expect.closeTo(2.5, 9)] });
    expect(fitRandomIntercept([{ x: [[1]], y: [1] }])).toBeNull();
    expect(
      fitRandomIntercept([
        {
          x: [
            [1, 2],
            [1, 2],
            [1, 2],
          ],
          y: [1, 2, 3],
        },
      ]),
    ).toBeNull();
  });

  test('a curve through points of its own shape is found again; falling weights and three ages have none', () => {
    for (const shape of ['logistic', 'gompertz'] as const) {
      const curve = { shape, end: 30, place: 120, scale: 45 };
      const points = [20, 60, 100, 150, 220, 300].map((age) => ({ age, weight: onCurve(curve, age) }));
      const found = fitCurve(points, shape);
      expect(found?.end).toBeCloseTo(30, 5);
      expect(found?.place).toBeCloseTo(120, 4);
      expect(found?.scale).toBeCloseTo(45, 4);
      expect(fitCurve(points.slice(0, 3), shape)).toBeNull();
      expect(
        fitCurve(
          [9, 7, 4, 2].map((weight, age) => ({ age, weight })),
          shape,
        ),
      ).toBeNull();
    }
  });
});
