/**
 * The way to adulthood: a published curve by size class, started at the puppy's own weight today. What the puppy weighs
 * above or below the curve now is carried forward and fades; the band opens as the days go. It is a range, not a goal.
 */

import type { Litter } from '../litter/litter.ts';
import type { Sex, SizeClass } from '../reference/classes.ts';
import { CLASS_ADULT_KG, DOG_TO_BITCH } from '../reference/growth/adult-weight.ts';
import { GREAT_DANE, GROWTH_CURVES, LABRADOR } from '../reference/growth/curves.ts';
import { gompertz, logistic } from './curves.ts';
import { referenceGain } from './reference-gain.ts';

export type AdultFrom = 'breeder' | 'other-sex' | 'class';

/**
 * Adult weight to expect: the breeder's figure for the sex, else hers for the other sex, else the class; null when nothing is known. While the
 * sex was not seen it is halfway between the two.
 */
export function expectedAdultKg(
  litter: Pick<Litter, 'sizeClass' | 'adultDogKg' | 'adultBitchKg'>,
  sex: Sex,
): { kg: number; from: AdultFrom } | null {
  if (sex === 'unseen') {
    const [dog, bitch] = [expectedAdultKg(litter, 'dog'), expectedAdultKg(litter, 'bitch')];
    if (dog === null || bitch === null) return null;
    return { kg: (dog.kg + bitch.kg) / 2, from: dog.from === 'other-sex' ? dog.from : bitch.from };
  }
  const [own, other] = sex === 'dog' ? [litter.adultDogKg, litter.adultBitchKg] : [litter.adultBitchKg, litter.adultDogKg];
  if (own !== null) return { kg: own, from: 'breeder' };
  if (other !== null) return { kg: sex === 'dog' ? other * DOG_TO_BITCH : other / DOG_TO_BITCH, from: 'other-sex' };
  return litter.sizeClass === null ? null : { kg: CLASS_ADULT_KG[litter.sizeClass], from: 'class' };
}

/** The size class of an adult weight: toy to 5 kg, small to 10, medium to 25, large to 45, giant above. */
export function classOfAdult(kg: number): SizeClass {
  if (kg <= 5) return 'toy';
  if (kg <= 10) return 'small';
  if (kg <= 25) return 'medium';
  return kg <= 45 ? 'large' : 'giant';
}

/** Grams. */
export interface Band {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export interface Forecast {
  readonly adultGrams: number | null;
  /** Null before the weight it starts from, and beyond the short horizon when no adult weight is known. */
  at(ageDays: number): Band | null;
}

/** The early curve carries until here, then the class curve takes over by degrees of a fortnight. */
const JOIN_DAY = 56;
const SHORT_HORIZON_DAYS = 14;
/** Nothing is told from a weight of the first days: birth weight and first losses say little of the way. */
const FIRST_DAY = 3;
/** Days in which the puppy's own distance from the curve fades to 1/e. Our own choice, not published. */
const OWN_RATIO_DAYS = 84;
/** Where only the class is known the puppy may well end heavier or lighter than it: this share of its distance stays. */
const STAYS_OF_CLASS = 0.2;
/** Days in which the band opens to 1 - 1/e of its full width. Our own choice: see `npm run bench:growth`. */
const BAND_DAYS = 10;
const BAND_FULL = 0.2;
const BAND_NOW = 0.024;

/**
 * The forecast from one weight (grams at an age in days); none from the first three days. `adultKg` null gives the short one;
 * `adultFrom` says how the adult weight is known, the breeder's own figure when left out.
 */
export function forecastWeight(input: {
  adultKg: number | null;
  adultFrom?: AdultFrom | undefined;
  sizeClass: SizeClass | null;
  anchorAgeDays: number;
  anchorGrams: number;
}): Forecast {
  const { adultKg, anchorAgeDays: from, anchorGrams } = input;
  if (from < FIRST_DAY) return { adultGrams: adultKg === null ? null : adultKg * 1000, at: () => null };
  const halfWidth = (age: number) => BAND_NOW + (BAND_FULL - BAND_NOW) * (1 - Math.exp(-(age - from) / BAND_DAYS));
  const band = (mid: number, age: number): Band => ({ mid, low: mid * (1 - halfWidth(age)), high: mid * (1 + halfWidth(age)) });
  if (adultKg === null) {
    const early = earlyCurve(from, anchorGrams);
    return {
      adultGrams: null,
      at: (age) => (age < from || age > from + SHORT_HORIZON_DAYS ? null : band(anchorGrams * (early(age) / early(from)), age)),
    };
  }
  const curve = wholeCurve(adultKg, input.sizeClass ?? classOfAdult(adultKg), from, anchorGrams);
  const ratio = Math.log(anchorGrams / curve(from));
  const stays = input.adultFrom === 'class' ? STAYS_OF_CLASS : 0;
  const left = (age: number) => stays + (1 - stays) * Math.exp(-(age - from) / OWN_RATIO_DAYS);
  return {
    adultGrams: adultKg * 1000,
    at: (age) => (age < from ? null : band(curve(age) * Math.exp(ratio * left(age)), age)),
  };
}

/** Multiples of birth weight, from the weight that the puppy would have been born with on the reference. */
function earlyCurve(age: number, grams: number): (age: number) => number {
  let birth = grams;
  for (let i = 0; i < 6; i += 1) birth = grams / Math.exp(referenceGain(birth).since(age));
  const reference = referenceGain(birth);
  return (a) => Math.exp(reference.since(a));
}

/**
 * Before eight weeks the class curve is far too heavy (6.5 % of adult at birth where 1 to 5 % is true), so until then the
 * early curve holds, scaled to meet it.
 */
function wholeCurve(adultKg: number, size: SizeClass, from: number, grams: number): (age: number) => number {
  const share = shareOfAdult(size, adultKg, from, grams);
  const class_ = (age: number) => adultKg * 1000 * share(age);
  if (from >= JOIN_DAY) return class_;
  const early = earlyCurve(from, grams);
  const meet = class_(JOIN_DAY) / early(JOIN_DAY);
  return (age) => (age >= JOIN_DAY ? class_(age) : meet * early(age));
}

/**
 * Large and giant dogs as published differ by two months at half of their weight: slow ones by the class curve, fast ones
 * raised in kennels by a Gompertz curve. A puppy follows the one that it is on; where the two are together it goes between
 * them. Either then stays inside the band (test/core/growth/forecast.test.ts); the weights are our own choice.
 */
function shareOfAdult(size: SizeClass, adultKg: number, from: number, grams: number): (ageDays: number) => number {
  const slow = (day: number) => logistic(day / 7, GROWTH_CURVES[size]);
  if (size !== 'large' && size !== 'giant') return slow;
  const { scaleDays, fastestDay, between } = FAST[size];
  const fast = (day: number) => gompertz(day, fastestDay, scaleDays);
  const day = Math.max(from, JOIN_DAY);
  const apart = Math.log(fast(day) / slow(day));
  const told = from < JOIN_DAY ? 0 : Math.min(1, Math.abs(apart) / TOLD_APART);
  const place = apart === 0 ? 0 : Math.log(grams / (1000 * adultKg) / slow(day)) / apart;
  const share = (1 - told) * between + told * Math.min(1, Math.max(0, place));
  return (age) => slow(age) ** (1 - share) * fast(age) ** share;
}

const FAST = {
  large: { ...LABRADOR, between: 0.7 },
  giant: { scaleDays: 1 / GREAT_DANE.ratePerDay, fastestDay: GREAT_DANE.fastestDay, between: 0.7 },
} as const;
/** So far apart, in log units, a weight tells which of the two it is on. */
const TOLD_APART = 0.3;
