/** What is known of one puppy's weight on a day: those that count, the last of them, and what to expect from it. */
import { dateOf } from '../calendar/clock.ts';
import { type CivilDate, daysBetween } from '../calendar/day.ts';
import type { Litter, Puppy } from '../litter/litter.ts';
import { type AdultFrom, type Band, expectedAdultKg, forecastWeight } from './forecast.ts';
import type { GrowthInput } from './input.ts';
import { type SeriesPoint, seriesOf } from './series.ts';

/** A weight older than this many days is too old to feed by without saying so. */
export const OLD_WEIGHT_DAYS = 4;

export interface LastWeight {
  readonly ageDays: number;
  readonly grams: number;
  readonly on: CivilDate;
  /** Days from the weight to the day that is asked about. */
  readonly daysAgo: number;
}

export interface PuppyWeights {
  /** Oldest first. */
  readonly own: readonly SeriesPoint[];
  readonly last: LastWeight | null;
  readonly adult: { readonly kg: number; readonly from: AdultFrom } | null;
  /** Grams at an age in whole days; the last weight holds until the day it was taken. Null where nothing can be expected. */
  readonly at: (ageDays: number) => Band | null;
}

/** `growth` holds what was weighed until the day. */
export function puppyWeights(litter: Litter, puppy: Puppy, growth: GrowthInput, on: CivilDate): PuppyWeights {
  const own = seriesOf(growth, puppy.id);
  const adult = expectedAdultKg(litter, puppy.sex);
  const last = own.at(-1);
  if (last === undefined) return { own, last: null, adult, at: () => null };
  const { ageDays, grams } = last;
  const weighedOn = dateOf(last.at);
  const forecast = forecastWeight({
    adultKg: adult?.kg ?? null,
    adultFrom: adult?.from,
    sizeClass: litter.sizeClass,
    anchorAgeDays: ageDays,
    anchorGrams: grams,
  });
  return {
    own,
    last: { ageDays, grams, on: weighedOn, daysAgo: daysBetween(weighedOn, on) },
    adult,
    at: (age) => forecast.at(Math.max(age, ageDays)),
  };
}
