/** What one puppy gets on one day: amount, bowls, energy. */

import { fillBowls, type Meals } from '../food/bowls.ts';
import type { MassUnit } from '../units/mass.ts';
import { type Amount, type AmountInput, amountOn } from './amount.ts';
import { mealsOn } from './meals.ts';

export interface Treats {
  readonly grams: number;
  readonly kcalPer100g: number;
}

export interface RationInput extends AmountInput {
  /** Treats come off the meals by their energy; left out or null, nothing comes off. */
  readonly treats?: Treats | null;
  /** How bowls are weighed; grams when left out. */
  readonly unit?: MassUnit;
}

export interface DayRation {
  /** Grams in the bowls of the day: exactly the sum of `meals`. */
  readonly dayGrams: number;
  /** The day's food before treats and before rounding, as a share of body weight. */
  readonly share: number;
  readonly meals: Meals;
  /** Inside the days in which midday is left off. */
  readonly changing: boolean;
  /** Energy of the bowls, without treats. */
  readonly kcal: number;
  /** Published estimate, null without an adult weight. */
  readonly estimateKcal: number | null;
}

/**
 * The ration of one day at the weight of that day, by the rules' basis. Bowls are rounded and the day is their sum. The first tread of a
 * meal ladder that begins on this day at this weight is the same.
 */
export function rationOn(input: RationInput): DayRation {
  const amount: Amount = amountOn(input);
  const { shares, changing } = mealsOn(input.rules, input.born, input.day, input.adultKg);
  const fed = fillBowls(Math.max(0, amount.grams - treatsAsFood(input)), shares, input.unit ?? 'g');
  return {
    ...fed,
    share: amount.grams / input.weightGrams,
    changing,
    kcal: (fed.dayGrams * input.food.kcalPer100g) / 100,
    estimateKcal: amount.estimateKcal,
  };
}

/** Grams of the food that hold as much energy as the treats: what comes off the bowls. */
export function treatsAsFood({ treats, food }: Pick<RationInput, 'treats' | 'food'>): number {
  return treats == null ? 0 : (treats.grams * treats.kcalPer100g) / food.kcalPer100g;
}

/** Part of the day's energy that the treats hold; 1 or more when they leave nothing for the bowls. */
export function treatShareOf(input: RationInput): number {
  return treatsAsFood(input) / amountOn(input).grams;
}
