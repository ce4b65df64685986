/** The house rule: which share of its weight a puppy gets in a day, by age. */
import { ageInMonths } from '../calendar/age.ts';
import { addMonths, type CivilDate, daysBetween } from '../calendar/day.ts';
import type { HouseRules } from './rules.ts';

/**
 * The share of body weight a day by the house rule: the young share until `youngUntilMonths`, the middle one at
 * `middleMonths`, the adult one from `adultMonths` (default 5.5, 3.5, 2 %: common practice, no source). Between two of these
 * ages the **logarithm** of the share falls evenly, so that each week takes off the same part of it: with the defaults a tenth a
 * week from 5 to 6 months, and growth makes up for some of that.
 *
 * This is the plain rule for one day. It knows nothing of growth, so on its own the grams may dip and rise again; the meal
 * ladder (`ladder.ts`) sees to that.
 */
export function shareOfWeight(rules: HouseRules, born: CivilDate, day: CivilDate): number {
  return shareAtMonths(rules, monthsOld(born, day));
}

/** The same by age in calendar months, fractions allowed. */
export function shareAtMonths(rules: HouseRules, months: number): number {
  const { youngUntilMonths: young, middleMonths: middle, adultMonths: adult } = rules;
  if (months <= young) return rules.shareYoung;
  if (months < middle) return glide(rules.shareYoung, rules.shareMiddle, (months - young) / (middle - young));
  if (months < adult) return glide(rules.shareMiddle, rules.shareAdult, (months - middle) / (adult - middle));
  return rules.shareAdult;
}

/** Age in calendar months with the part of the month that has begun: 5.5 halfway from 5 to 6 months. */
function monthsOld(born: CivilDate, day: CivilDate): number {
  const months = ageInMonths(born, day);
  const start = addMonths(born, months);
  return months + daysBetween(start, day) / daysBetween(start, addMonths(born, months + 1));
}

/** From one share to a lower one, even in the logarithm; exactly `from` at 0. */
function glide(from: number, to: number, part: number): number {
  return from * (to / from) ** part;
}
