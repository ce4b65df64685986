/** What a plan needs to know of the weights: the puppy's own, its littermates', the one it starts from, and the forecast. */
import { dateOf } from '../calendar/clock.ts';
import { type CivilDate, daysBetween } from '../calendar/day.ts';
import { assessLitter, type Level } from '../growth/assess.ts';
import { type AdultFrom, type Band, expectedAdultKg, forecastWeight } from '../growth/forecast.ts';
import { growthInput } from '../growth/input.ts';
import type { PuppyFinding } from '../growth/puppy-findings.ts';
import { bandOf, type SeriesPoint, seriesOf } from '../growth/series.ts';
import type { Litter, Puppy, Reading } from '../litter/litter.ts';
import type { House } from '../people/house.ts';

/** A weight older than this many days is too old to feed by without saying so. */
export const FRESH_DAYS = 4;

export interface Anchor {
  readonly ageDays: number;
  readonly grams: number;
  readonly on: CivilDate;
  /** Days from the weight to the day of the plan. */
  readonly daysAgo: number;
}

export interface PlanWeights {
  readonly own: readonly SeriesPoint[];
  readonly band: readonly { readonly ageDays: number; readonly low: number; readonly high: number }[];
  readonly anchor: Anchor | null;
  readonly adult: { readonly kg: number; readonly from: AdultFrom } | null;
  /** Grams at an age in whole days; the last weight holds until the day it was taken. Null where nothing can be expected. */
  readonly at: (ageDays: number) => Band | null;
  readonly level: Level;
  /** What the assessment found, for the breeder; null without one. */
  readonly finding: PuppyFinding | null;
  /** ln(weight / littermates' middle) at the last weigh-in, null in a litter of one. */
  readonly standing: number | null;
  readonly littermates: number;
}

/** Reads only what was weighed until the day of the plan. A puppy that has left may be weighed on by its new owner. */
export function planWeights(facts: {
  litter: Litter;
  puppies: readonly Puppy[];
  puppy: Puppy;
  readings: readonly Reading[];
  house: House;
  on: CivilDate;
}): PlanWeights {
  const { litter, puppy, house, on } = facts;
  const puppies = facts.puppies.map((p) =>
    p.id === puppy.id && p.state === 'home' ? { ...p, state: 'litter' as const, stateOn: null } : p,
  );
  const readings = facts.readings.filter((r) => dateOf(r.at) <= on);
  const input = growthInput(litter, puppies, readings, house.scaleStepGrams);
  const own = seriesOf(input, puppy.id);
  const assessed = assessLitter(input).puppies.get(puppy.id);
  const adult = expectedAdultKg(litter, puppy.sex);
  const last = own.at(-1);
  return {
    own,
    band: bandOf(input, puppy.id),
    anchor:
      last === undefined
        ? null
        : { ageDays: last.ageDays, grams: last.grams, on: dateOf(last.at), daysAgo: daysBetween(dateOf(last.at), on) },
    adult,
    at: expectation(last, adult, litter),
    level: assessed?.level ?? 'steady',
    finding: assessed?.finding ?? null,
    standing: assessed?.standing ?? null,
    littermates: puppies.length - 1,
  };
}

function expectation(
  last: SeriesPoint | undefined,
  adult: { kg: number; from: AdultFrom } | null,
  litter: Litter,
): (ageDays: number) => Band | null {
  if (last === undefined) return () => null;
  const forecast = forecastWeight({
    adultKg: adult?.kg ?? null,
    adultFrom: adult?.from,
    sizeClass: litter.sizeClass,
    anchorAgeDays: last.ageDays,
    anchorGrams: last.grams,
  });
  return (ageDays) => forecast.at(Math.max(ageDays, last.ageDays));
}
