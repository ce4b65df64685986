/** Growth curves as published: share of adult weight by age. */
import type { GrowthCurve } from '../reference/growth/curves.ts';

/** ln 99: the logistic reaches 99 % so many scales after its middle. */
const TO_99 = Math.log(99);

/** The scale (1 / rate) of a logistic from the ages of 50 % and of 99 %. */
export function logisticScale(half: number, ninetyNine: number): number {
  return (ninetyNine - half) / TO_99;
}

/** Share of adult weight at an age, in the time unit of the curve. */
export function logistic(age: number, curve: GrowthCurve): number {
  return 1 / (1 + Math.exp(-(age - curve.half) / logisticScale(curve.half, curve.ninetyNine)));
}

/** Gompertz: exp(-exp(-(t - c)/b)), a share of adult weight; c is the age of fastest gain. */
export function gompertz(age: number, c: number, b: number): number {
  return Math.exp(-Math.exp(-(age - c) / b));
}

/** Largest gain per time unit on a Gompertz curve, in the unit of the adult weight. */
export function gompertzPeakGain(adult: number, b: number): number {
  return adult / (Math.E * b);
}

/** Gompertz rate per day for an adult weight in kg, scaled as B* A^-0.27. */
export function scaledRate(bStar: number, adultKg: number): number {
  return bStar * adultKg ** -0.27;
}

/**
 * The most that a newborn grows to, as a multiple of birth weight, from birth to day 21: Alves 2020 (Vet Med Sci, doi
 * 10.1002/vms3.322), 345 puppies of 19 breeds. An upper bound, not a mean. Seen.
 * After day 21 the formula is only a bound of our own; it stops rising at day 40.
 */
export function fastestGrowth(ageDays: number): number {
  const x = Math.min(40, Math.max(0, ageDays));
  return Math.exp(0.13084 * x - 0.001616 * x * x);
}
