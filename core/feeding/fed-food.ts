/** The food that a litter's amounts and energy are reckoned with. */
import type { CivilDate } from '../calendar/day.ts';
import type { FoodCatalogue } from '../food/catalogue.ts';
import type { Food } from '../food/food.ts';
import { type Feeding, feedingOf, reckonedFood } from '../food/rotation.ts';
import { mealsOn } from './meals.ts';
import type { HouseRules } from './rules.ts';

export interface FedFacts {
  readonly catalogue: FoodCatalogue;
  readonly feedings: readonly Feeding[];
}

/** On a day, for puppies of that grown weight in kg: the litter's own, else the house's (always with null), else the generic mix; a rotation counts as the mean of its week. */
export function fedFoodOn(
  { catalogue, feedings }: FedFacts,
  litterId: string | null,
  rules: HouseRules,
  born: CivilDate,
  day: CivilDate,
  adultKg: number | null,
): Food {
  return reckonedFood(feedingOf(feedings, litterId), catalogue, mealsOn(rules, born, day, adultKg).shares);
}
