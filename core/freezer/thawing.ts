/** The clock of one thaw: when it is ready and until when it may be fed, by the house rule and by the official one. */
import { fromLocalMinutes, type LocalTime, localMinutes } from '../calendar/clock.ts';
import { moveAheadHours, OFFICIAL_KEEPING, thawHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { COLD_WATER, OUT_OF_THE_COLD } from '../reference/freezer/keeping.ts';
import { GRAMS_PER_POUND } from '../units/mass.ts';
import type { ThawWay } from './pack.ts';

/**
 * Hours in cold water, the upper end of what is published: 1 h to 1 lb, 3 h at 4 lb, evenly between, half an hour a pound above that but
 * never under 3 h. Source: USDA FSIS, The Big Thaw (seen); the straight line between is ours.
 */
export function coldWaterHours(kg: number): number {
  const pounds = (kg * 1000) / GRAMS_PER_POUND;
  const [small, large] = COLD_WATER.value;
  if (small === undefined || large === undefined) throw new RangeError('no cold-water times');
  if (pounds <= small.pounds) return small.hours;
  if (pounds <= large.pounds) {
    return small.hours + ((pounds - small.pounds) / (large.pounds - small.pounds)) * (large.hours - small.hours);
  }
  return Math.max(large.hours, pounds * COLD_WATER.hoursPerPoundAbove);
}

export interface ThawClock {
  readonly ready: LocalTime;
  /** By the house rule for the refrigerator; by the official two hours for cold water and the counter. */
  readonly useBy: LocalTime;
  /** By published times alone: never later than `useBy` unless the house rule is stricter. */
  readonly officialUseBy: LocalTime;
}

/**
 * Refrigerator: ready after the house's thaw time for that mass, then the house's keeping time. Cold water: ready after its hours, then
 * "feed at once", held to the two hours of the counter rule. Counter: two hours from the freezer, ready or not.
 */
export function thawClock(rules: HouseRules, way: ThawWay, at: LocalTime, kg: number): ThawClock {
  const from = localMinutes(at);
  const after = (hours: number) => fromLocalMinutes(from + Math.ceil(hours * 60 - 1e-6));
  const outHours = OUT_OF_THE_COLD.value.hours;
  if (way === 'counter') return { ready: at, useBy: after(outHours), officialUseBy: after(outHours) };
  if (way === 'cold-water') {
    const hours = coldWaterHours(kg);
    return { ready: after(hours), useBy: after(hours + outHours), officialUseBy: after(hours + outHours) };
  }
  const ahead = moveAheadHours(rules, kg);
  return {
    ready: after(ahead),
    useBy: after(ahead + rules.keepHours),
    officialUseBy: after(thawHours(kg) + OFFICIAL_KEEPING[rules.officialKeeping].hours),
  };
}
