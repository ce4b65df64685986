/**
 * The invented weights are as noisy as a real litter's: six German Shepherd puppies on a scale with steps of an ounce
 * (J. Tyhurst, `codesamplerr`, MIT licence; open data). Residual noise after removing the common move, by the median distance:
 * 1.8 % on days 2-14 and 1.0 % on days 15-29 (computed from that data, status C).
 */
import { describe, expect, it } from 'vitest';
import { median } from '../../core/statistics/median.ts';
import { simulate } from './simulate.ts';

const OUNCE = 28.349523125;
const DAYS = [1, 2, 3, 5, 7, 10, 14];
const OUNCES = [
  [17, 17, 19, 16, 17, 17],
  [16, 17, 18, 16, 16, 16],
  [16, 16, 18, 16, 16, 16],
  [17, 16, 19, 15, 16, 19],
  [18, 18, 23, 18, 18, 22],
  [23, 21, 28, 23, 21, 28],
  [29, 25, 36, 29, 28, 34],
];

/** Standard deviation of one weighing in log units: each one against its neighbours in time, the litter's middle taken off. */
function residualNoise(days: readonly number[], weights: readonly (readonly number[])[]): number {
  const sizes: number[] = [];
  for (let k = 1; k < days.length - 1; k += 1) {
    const [a, b, c] = [days[k - 1] ?? 0, days[k] ?? 0, days[k + 1] ?? 0];
    const later = (b - a) / (c - a);
    const ln = (row: number, i: number) => Math.log(weights[row]?.[i] ?? Number.NaN);
    const off = (weights[k] ?? []).map((_, i) => ln(k, i) - (1 - later) * ln(k - 1, i) - later * ln(k + 1, i));
    const common = median(off);
    for (const e of off) sizes.push(Math.abs(e - common) / Math.sqrt(1 + later ** 2 + (1 - later) ** 2));
  }
  return 1.4826 * median(sizes);
}

/** The middle noise of invented litters of six large puppies on the same scale on the same mornings. */
function invented(days: readonly number[]): number {
  const found: number[] = [];
  for (let seed = 1; seed <= 400; seed += 1) {
    const sim = simulate('healthy', seed, { puppies: 6, slips: false, days: 32 });
    if (sim.input.sizeClass !== 'large') continue;
    const mornings = sim.input.readings.filter((r) => r.session === 'morning');
    const weights = days.map((day) =>
      sim.input.puppies.map((p) => {
        const reading = mornings.find((r) => r.puppyId === p.id && Math.round((r.instant - p.bornInstant) / 86_400_000) === day);
        return reading === undefined ? Number.NaN : Math.round(reading.grams / OUNCE) * OUNCE;
      }),
    );
    if (!weights.flat().some(Number.isNaN)) found.push(residualNoise(days, weights));
  }
  expect(found.length).toBeGreaterThan(15);
  return median(found);
}

describe('noise of the invented litters, beside a real one', () => {
  it('the measure gives the published figure on the real weights', () => {
    expect(residualNoise(DAYS, OUNCES)).toBeCloseTo(0.018, 2);
  });
  it('days 2-14: 1.8 %', () => {
    const noise = invented(DAYS);
    expect(noise).toBeGreaterThan(0.8 * 0.018);
    expect(noise).toBeLessThan(1.25 * 0.018);
  });
  it('days 15-29: 1.0 %', () => {
    const noise = invented([15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29]);
    expect(noise).toBeGreaterThan(0.8 * 0.01);
    expect(noise).toBeLessThan(1.25 * 0.01);
  });
});
