/** What the method is measured against: rules used by hand, and two control charts from the quality handbooks. */
import type { GrowthInput } from '../../core/growth/input.ts';
import { referenceGain } from '../../core/growth/reference-gain.ts';
import { sessionsOf } from '../../core/growth/sessions.ts';
import { median } from '../../core/statistics/median.ts';
import type { Method, Seen } from './measure.ts';

/** z of each value against the plain mean and standard deviation of all. */
export function plainZ(values: readonly number[]): number[] {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const sd = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
  return values.map((v) => (v - mean) / sd);
}

/** Exponentially weighted moving average of a series that starts at `mean`. */
export function ewma(values: readonly number[], lambda: number, mean: number): number[] {
  let z = mean;
  return values.map((v) => (z = lambda * v + (1 - lambda) * z));
}

/** Upper limit of the moving average after so many values. */
export function ewmaLimit(lambda: number, width: number, mean: number, sd: number, count: number): number {
  return mean + width * sd * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * count)));
}

/** Upper cumulative sum over mean + allowance. */
export function cusum(values: readonly number[], mean: number, allowance: number): number[] {
  let c = 0;
  return values.map((v) => (c = Math.max(0, c + v - mean - allowance)));
}

/** A rule gives every weighing a number; the puppy is flagged while it is over a limit. */
export type Statistic = (input: GrowthInput) => Map<string, { instant: number; value: number }[]>;

interface Weighing {
  readonly instant: number;
  readonly age: number;
  readonly grams: number;
  /** Middle and mean of the littermates at the same session; null without any. */
  readonly median: number | null;
  readonly mean: number | null;
  readonly lightest: boolean;
}

const DAY = 86_400_000;

function weighings(input: GrowthInput): Map<string, Weighing[]> {
  const all = new Map<string, Weighing[]>(input.puppies.map((p) => [p.id, []]));
  for (const session of sessionsOf(input)) {
    for (const row of session.rows) {
      const others = session.rows.filter((r) => r !== row).map((r) => r.reading.grams);
      all.get(row.puppy.id)?.push({
        instant: row.reading.instant,
        age: row.ageDays,
        grams: row.reading.grams,
        median: others.length === 0 ? null : median(others),
        mean: others.length === 0 ? null : others.reduce((a, b) => a + b, 0) / others.length,
        lightest: others.length > 0 && row.reading.grams < Math.min(...others),
      });
    }
  }
  return all;
}

function each(of: (w: Weighing, before: readonly Weighing[]) => number): Statistic {
  return (input) =>
    new Map(
      [...weighings(input)].map(([id, list]) => [
        id,
        list.map((w, i) => ({ instant: w.instant, value: of(w, list.slice(0, i)) })),
      ]),
    );
}

/** The last weighing at least so many days before. */
function earlier(w: Weighing, before: readonly Weighing[], days: number): Weighing | undefined {
  return before.findLast((b) => (w.instant - b.instant) / DAY >= days);
}

const yes = (b: boolean) => (b ? 1 : 0);

/** The five rules that people use by hand, each over 0.5 when it speaks. */
export const HAND_RULES: Readonly<Record<string, Statistic>> = {
  'no gain in 24 h': each((w, before) => {
    const b = earlier(w, before, 0.9);
    return yes(b !== undefined && w.age > 1.5 && w.grams <= b.grams);
  }),
  'less than yesterday by 3 %': each((w, before) => {
    const b = earlier(w, before, 0.9);
    return yes(b !== undefined && w.grams < 0.97 * b.grams);
  }),
  'lightest of the litter': each((w) => yes(w.lightest)),
  '20 % under the mean': each((w) => yes(w.mean !== null && w.grams < 0.8 * w.mean)),
  'not doubled by day 10': each((w, before) => yes(w.age >= 10 && w.age < 12 && w.grams < 2 * (before[0]?.grams ?? 0))),
};

/**
 * Change of standing since the last weighing in its usual standard deviations at that age, as a chart wants it: downward is
 * positive, one wrong figure counts three at most. Without littermates the reference gain stands for theirs.
 */
function slips(list: readonly Weighing[]): number[] {
  const reference = referenceGain(list[0]?.grams ?? 400);
  return list.map((w, i) => {
    const b = list[i - 1];
    if (b === undefined) return 0;
    const days = (w.instant - b.instant) / DAY;
    const own = Math.log(w.grams / b.grams);
    const theirs =
      w.median === null || b.median === null ? reference.since(w.age) - reference.since(b.age) : Math.log(w.median / b.median);
    const sd = Math.sqrt(2 * WEIGHING_SD ** 2 + (RATE_SD * reference.pace(w.age)) ** 2 * days);
    return Math.max(-3, Math.min(3, (theirs - own) / sd));
  });
}

const WEIGHING_SD = 0.0145;
const RATE_SD = 0.3;

function chart(of: (values: number[]) => number[]): Statistic {
  return (input) =>
    new Map(
      [...weighings(input)].map(([id, list]) => [
        id,
        of(slips(list)).map((value, i) => ({ instant: list[i]?.instant ?? 0, value })),
      ]),
    );
}

/** Rules whose limit is set by the false alarms that are allowed. */
export const CHARTS: Readonly<Record<string, Statistic>> = {
  'gain over 48 h': each((w, before) => {
    const b = earlier(w, before, 1.9);
    return b === undefined || w.age < 2.5 ? -1 : -Math.log(w.grams / b.grams) / ((w.instant - b.instant) / DAY);
  }),
  'moving average .2': chart((values) => ewma(values, 0.2, 0)),
  'cumulative sum .5': chart((values) => cusum(values, 0, 0.5)),
};

/** A statistic with a limit, as a method to be measured. */
export function limited(statistic: Statistic, limit: number): Method {
  return (input) =>
    [...statistic(input)]
      .flatMap(([id, list]) =>
        list.map(
          ({ instant, value }): Seen => ({
            instant,
            puppies: new Map([[id, value > limit ? 'watch' : 'steady']]),
            litter: 'steady',
            flagged: [],
          }),
        ),
      )
      .sort((a, b) => a.instant - b.instant);
}
