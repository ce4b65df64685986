/**
 * A breeder's own line: what the puppies of her earlier litters of the same breed weighed by age, as multiples of birth weight.
 * Litters weigh alike, by a mixed model, so that one big litter does not rule. A table for one age needs 3 litters and 12
 * puppies: Kocevar et al 2022 (Vet Res Commun; seen) found that charts scaled to a cluster hold down to 3; the 12 are our own.
 * What it says is a note beside the levels and goes into none of them.
 */
import { DAY_MS } from '../../calendar/durations.ts';
import type { Puppy } from '../../litter/litter.ts';
import { isUnderBirth } from '../first-days.ts';
import { birthIn } from '../milestones.ts';
import { PUPPY_SPREAD } from '../noise.ts';
import { conditionalGain } from './conditional-gain.ts';
import { fitCurve, onCurve } from './fit-curve.ts';
import { asNormal, type Lms, lmsZ, percentileOf } from './lms.ts';
import { fitRandomIntercept } from './mixed-model.ts';

/** An earlier litter; of its readings only those that stand and are not in question. */
export interface EarlierLitter {
  readonly puppies: readonly Pick<Puppy, 'id' | 'bornInstant' | 'state'>[];
  readonly readings: readonly { readonly puppyId: string; readonly instant: number; readonly grams: number }[];
}

export interface LinePoint {
  readonly ageDays: number;
  readonly grams: number;
}

/** Litters and puppies that a table for one age needs. */
export const LINE_NEEDS = { litters: 3, puppies: 12 } as const;
export const LINE_DAYS = 56;

export interface LineAge extends Lms {
  /** Whole days of life; `m` is a multiple of birth weight. */
  readonly day: number;
  readonly litters: number;
  readonly puppies: number;
  /** Degrees of freedom of the spread `s`. */
  readonly degrees: number;
}

export interface OwnLineCurve {
  /** Earlier litters with a puppy that could be used, and such puppies. */
  readonly litters: number;
  readonly puppies: number;
  /** Grams, litters weighing alike; null while there are too few of them. */
  readonly birthGrams: number | null;
  /** Ages with enough of both, in order. Not all days need be there. */
  readonly ages: readonly LineAge[];
  /** The table at an age in days with fractions; null outside those with enough. */
  at(ageDays: number): LineAge | null;
  /** Correlation between the places at two whole days, over the same puppies; null with too few. */
  correlation(day1: number, day2: number): number | null;
}

/** Weights further apart than this say nothing of the days between. */
const WIDEST_GAP_DAYS = 3.2;
/** So far in ln from the line between its neighbours a weight was mistyped or is another puppy's. */
const MISTYPED = 0.15;
/** A narrower spread than that of one weighing is chance. */
const LEAST_SPREAD = PUPPY_SPREAD.weighing;
/** More than this no two ages can be told to go together: the gain between would be all noise. */
const MOST_CORRELATION = 0.98;

interface Grown {
  readonly litter: number;
  readonly birth: number;
  /** ln(weight / birth weight) by whole day. */
  readonly byDay: ReadonlyMap<number, number>;
}

/** The line of litters of one breed. */
export function ownLineOf(litters: readonly EarlierLitter[]): OwnLineCurve {
  const grown = litters.flatMap((litter, i) => litter.puppies.flatMap((puppy) => grownOf(puppy, litter, i) ?? []));
  const days = Array.from({ length: LINE_DAYS }, (_, i) => i + 1);
  const ages = days.flatMap((day) => {
    const values = grown.flatMap((g) => {
      const value = g.byDay.get(day);
      return value === undefined ? [] : [{ litter: g.litter, value }];
    });
    const found = spreadOf(values);
    return found === null
      ? []
      : [{ day, l: 0, m: Math.exp(found.mean), s: found.spread, degrees: found.degrees, ...countsOf(values) }];
  });
  const smooth = smoothed(ages);
  const byDay = new Map(smooth.map((a) => [a.day, a]));
  const births = spreadOf(grown.map((g) => ({ litter: g.litter, value: g.birth })));
  return {
    ...countsOf(grown),
    birthGrams: births?.mean ?? null,
    ages: smooth,
    at: (ageDays) => between(byDay, ageDays),
    correlation: (day1, day2) => correlationOf(grown, byDay.get(day1), byDay.get(day2)),
  };
}

function countsOf(of: readonly { litter: number }[]): { litters: number; puppies: number } {
  return { litters: new Set(of.map((v) => v.litter)).size, puppies: of.length };
}

/** Null for a puppy that died, was not weighed at birth, or lost a tenth of it in the first days: it is no measure. */
function grownOf(puppy: EarlierLitter['puppies'][number], { readings }: EarlierLitter, litter: number): Grown | null {
  if (puppy.state === 'died') return null;
  const all = readings
    .filter((r) => r.puppyId === puppy.id)
    .map((r) => ({ ageDays: (r.instant - puppy.bornInstant) / DAY_MS, grams: r.grams }))
    .toSorted((a, b) => a.ageDays - b.ageDays);
  const birth = birthIn(all);
  if (birth === null) return null;
  const clean = all.filter((p, i) => !isOff(all[i - 1], p, all[i + 1]));
  if (clean.some((p) => p.ageDays <= 3 && isUnderBirth(birth, p.grams, 10))) return null;
  const byDay = new Map<number, number>();
  let k = 0;
  for (let day = 1; day <= LINE_DAYS; day += 1) {
    while (k + 1 < clean.length - 1 && (clean[k + 1]?.ageDays ?? 0) <= day) k += 1;
    const [from, to] = [clean[k], clean[k + 1]];
    if (from === undefined || to === undefined || from.ageDays > day || to.ageDays < day) continue;
    if (to.ageDays - from.ageDays <= WIDEST_GAP_DAYS) byDay.set(day, onTheWay(from, to, day) - Math.log(birth));
  }
  return { litter, birth, byDay };
}

/** ln grams between two weights. */
function onTheWay(from: LinePoint, to: LinePoint, ageDays: number): number {
  const part = to.ageDays === from.ageDays ? 1 : (ageDays - from.ageDays) / (to.ageDays - from.ageDays);
  return Math.log(from.grams) + part * Math.log(to.grams / from.grams);
}

/** The middle of three that lies off the way between the two. Long gaps bend by themselves and are left alone. */
function isOff(before: LinePoint | undefined, p: LinePoint, after: LinePoint | undefined): boolean {
  if (before === undefined || after === undefined || after.ageDays - before.ageDays > 2 * WIDEST_GAP_DAYS) return false;
  return Math.abs(Math.log(p.grams) - onTheWay(before, after, p.ageDays)) > MISTYPED;
}

/**
 * Mean with litters weighing alike, the spread of a puppy of another such litter, and the degrees of freedom of that spread after
 * Satterthwaite 1946 (from memory): the few litters count, and the many puppies in them. Null with too few.
 */
function spreadOf(
  values: readonly { litter: number; value: number }[],
): { mean: number; spread: number; degrees: number } | null {
  const { litters, puppies } = countsOf(values);
  if (litters < LINE_NEEDS.litters || puppies < LINE_NEEDS.puppies) return null;
  const groups = [...Map.groupBy(values, (v) => v.litter).values()];
  const fit = fitRandomIntercept(groups.map((g) => ({ x: g.map(() => [1]), y: g.map((v) => v.value) })));
  const mean = fit?.fixed[0];
  if (fit === null || mean === undefined) return null;
  const [each, own] = [puppies / litters, 1 + 1 / litters];
  // The mean of a few litters is itself off by as much as litters differ: `own` counts that in.
  const of = {
    litters: own * (fit.groupVariance + fit.residualVariance / each),
    puppies: fit.residualVariance * (1 - own / each),
  };
  const variance = of.litters + of.puppies;
  const degrees = variance ** 2 / (of.litters ** 2 / (litters - 1) + of.puppies ** 2 / (puppies - litters));
  return {
    mean,
    spread: Math.max(LEAST_SPREAD, Math.sqrt(variance)),
    degrees: variance > 0 ? Math.max(litters - 1, degrees) : litters - 1,
  };
}

/** The first days lose and catch up, which no growth curve does. */
const SMOOTH_FROM = 3;
const SMOOTH_AGES = 10;
/** In ln: where the line goes its own way, at weaning, its own middles stand. */
const SMOOTH_WITHIN = 0.03;

/** The middles on one growth curve where it runs close by all of them: few litters make a line that jumps from day to day. */
function smoothed(ages: readonly LineAge[]): readonly LineAge[] {
  const points = ages.filter((a) => a.day >= SMOOTH_FROM).map((a) => ({ age: a.day, weight: a.m }));
  if (points.length < SMOOTH_AGES) return ages;
  const curve = (['gompertz', 'logistic'] as const)
    .map((shape) => fitCurve(points, shape, 'share'))
    .reduce((best, c) => (c === null || (best !== null && best.rss <= c.rss) ? best : c), null);
  if (curve === null) return ages;
  const off = Math.max(...points.map((p) => Math.abs(Math.log(onCurve(curve, p.age) / p.weight))));
  return off > SMOOTH_WITHIN ? ages : ages.map((a) => (a.day < SMOOTH_FROM ? a : { ...a, m: onCurve(curve, a.day) }));
}

/** Between two days with a table, straight in ln; alone no day carries further than itself. */
function between(byDay: ReadonlyMap<number, LineAge>, ageDays: number): LineAge | null {
  const low = byDay.get(Math.floor(ageDays));
  const high = byDay.get(Math.ceil(ageDays));
  if (low === undefined || high === undefined) return null;
  const part = ageDays - Math.floor(ageDays);
  return {
    ...(part < 0.5 ? low : high),
    m: Math.exp(Math.log(low.m) + part * Math.log(high.m / low.m)),
    s: low.s + part * (high.s - low.s),
  };
}

function correlationOf(grown: readonly Grown[], one: LineAge | undefined, two: LineAge | undefined): number | null {
  if (one === undefined || two === undefined) return null;
  const pairs = grown.flatMap((g) => {
    const [a, b] = [g.byDay.get(one.day), g.byDay.get(two.day)];
    return a === undefined || b === undefined ? [] : [{ litter: g.litter, a: a - Math.log(one.m), b: b - Math.log(two.m) }];
  });
  const { litters, puppies } = countsOf(pairs);
  if (litters < LINE_NEEDS.litters || puppies < LINE_NEEDS.puppies) return null;
  const sum = (f: (p: { a: number; b: number }) => number) => pairs.reduce((s, p) => s + f(p), 0);
  const size = Math.sqrt(sum((p) => p.a * p.a) * sum((p) => p.b * p.b));
  return size === 0 ? null : Math.max(0, Math.min(MOST_CORRELATION, sum((p) => p.a * p.b) / size));
}

/** Where one puppy is in the line, at its last weight. */
export interface LinePlace {
  readonly ageDays: number;
  readonly table: LineAge;
  /** The line's middle for this puppy's birth weight, in grams. */
  readonly medianGrams: number;
  readonly z: number;
  /** How many of 100 puppies of the line are lighter for their birth weight. */
  readonly percentile: number;
  /** The gain since some days ago, among those that stood where it did; null without a weight then. */
  readonly gain: { readonly days: number; readonly z: number; readonly percentile: number } | null;
}

/** The gain looks back about this far: shorter ones are mostly weighing noise. */
const LAST_DAYS = { about: 5, from: 4, to: 7 } as const;

/** Null without a birth weight or when the line has no table for its age. `series` is in order and in grams. */
export function placeInLine(line: OwnLineCurve, series: readonly LinePoint[]): LinePlace | null {
  const last = series.at(-1);
  const birth = birthIn(series);
  if (birth === null || last === undefined) return null;
  const table = line.at(last.ageDays);
  if (table === null) return null;
  const z = lmsZ(last.grams / birth, table);
  return {
    ageDays: last.ageDays,
    table,
    medianGrams: birth * table.m,
    z,
    percentile: percentileOf(asNormal(z, table.degrees)),
    gain: gainInLine(line, series, birth, z),
  };
}

function gainInLine(line: OwnLineCurve, series: readonly LinePoint[], birth: number, z: number): LinePlace['gain'] {
  const last = series.at(-1)?.ageDays ?? 0;
  const off = (p: LinePoint) => Math.abs(last - p.ageDays - LAST_DAYS.about);
  const then = series
    .filter((p) => last - p.ageDays >= LAST_DAYS.from && last - p.ageDays <= LAST_DAYS.to)
    .reduce<LinePoint | null>((best, p) => (best === null || off(p) < off(best) ? p : best), null);
  const table = then === null ? null : line.at(then.ageDays);
  if (then === null || table === null) return null;
  const r = line.correlation(Math.round(then.ageDays), Math.round(last));
  if (r === null) return null;
  const gain = conditionalGain(lmsZ(then.grams / birth, table), z, r);
  return { days: last - then.ageDays, z: gain, percentile: percentileOf(asNormal(gain, table.degrees)) };
}
