/** From the facts of a litter to what one puppy is fed: on this day, or on the day it is eight weeks old when that is still to come. */

import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { FindingsInput } from '../../core/feeding/findings.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { Food } from '../../core/food/food.ts';
import { expectedAdultKg, forecastWeight } from '../../core/growth/forecast.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { WEANED_DAYS } from '../../core/weaning/weaning-plan.ts';
import type { LitterGrowthFacts } from './useLitterGrowth.ts';

/** Fewer weights than these say nothing about gain. */
const FEWEST_WEIGHTS = 5;
/** Older than this a weight is carried on by the forecast. */
export const FRESH_DAYS = 1;

/** What a puppy's ration and its findings are reckoned from; null without a weight, or a forecast where one is needed. */
export function rationInput(
  facts: LitterGrowthFacts,
  puppy: Puppy,
  rules: HouseRules,
  food: Food,
  today: CivilDate,
): FindingsInput | null {
  const { litter, growth, input, house } = facts;
  const a = growth?.puppies.get(puppy.id);
  if (litter === null || a?.grams == null || a.at === null) return null;
  const born = dateOf(puppy.bornAt);
  const weaned = addDays(born, WEANED_DAYS);
  const day = weaned > today ? weaned : today;
  const adult = expectedAdultKg(litter, puppy.sex);
  const adultKg = adult?.kg ?? null;
  const weighedOn = dateOf(a.at);
  const forecast = forecastWeight({
    adultKg,
    adultFrom: adult?.from,
    sizeClass: litter.sizeClass,
    anchorAgeDays: daysBetween(born, weighedOn),
    anchorGrams: a.grams,
  });
  const carried = daysBetween(weighedOn, day) > FRESH_DAYS ? (forecast.at(daysBetween(born, day))?.mid ?? null) : a.grams;
  if (carried === null && day > today) return null;
  const count = input?.readings.filter((r) => r.puppyId === puppy.id).length ?? 0;
  return {
    rules,
    food,
    born,
    day,
    weightGrams: carried ?? a.grams,
    adultKg,
    unit: house.massUnit,
    name: puppyName(puppy),
    gainInBand: count < FEWEST_WEIGHTS ? null : a.level === 'steady',
    weighedOn: day > today ? null : weighedOn,
  };
}
