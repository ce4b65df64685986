/**
 * Two published rules of the first days, against birth weight. In whole tenths of a gram, so that exactly 4 % is 4 %.
 * Mila et al 2015 (J Anim Sci, doi 10.2527/jas.2015-8971): 4 % or more under birth weight at two days, more deaths later.
 * Ten per cent or more lost in the first days: common practice of home veterinary handbooks.
 */
import type { Level } from './levels.ts';

const tenths = (grams: number) => Math.round(grams * 10);

/** 100 (W - W0) / W0, in percent. */
export function firstDaysGrowth(birthGrams: number, grams: number): number {
  return (100 * (tenths(grams) - tenths(birthGrams))) / tenths(birthGrams);
}

/** So many whole percent or more under birth weight. */
export function isUnderBirth(birthGrams: number, grams: number, percent: number): boolean {
  return 100 * (tenths(grams) - tenths(birthGrams)) <= -percent * tenths(birthGrams);
}

/** Day two, give or take half a day. */
const DAY_TWO = { from: 1.5, to: 2.5 };
/** Three days, and the hours by which a weighing is late. */
const FIRST_DAYS = 3.25;

/**
 * Four per cent or more under birth weight, as far as the scale can tell: where one step of it is more than that (an ounce
 * of 480 g), a single step down tells nothing. Grams.
 */
export function hasLost4(birthGrams: number, grams: number, stepGrams: number): boolean {
  const scaleCanTell = 25 * stepGrams < birthGrams || tenths(birthGrams) - tenths(grams) > tenths(stepGrams);
  return scaleCanTell && isUnderBirth(birthGrams, grams, 4);
}

/** What the rules say of one weight. `before` is what they said at the last one: kept until it is back within the rule. */
export function firstDaysLevel(before: Level, birthGrams: number, grams: number, ageDays: number, stepGrams: number): Level {
  const lost10 = isUnderBirth(birthGrams, grams, 10);
  const lost4 = hasLost4(birthGrams, grams, stepGrams);
  if (lost10 && (ageDays <= FIRST_DAYS || before === 'act')) return 'act';
  if (lost4 && ((ageDays >= DAY_TWO.from && ageDays <= DAY_TWO.to) || before !== 'steady')) return 'watch';
  return 'steady';
}
