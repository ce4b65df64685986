/** Foods and what is fed, as the window has them. */
import { useMemo } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import { fedFoodOn } from '../../core/feeding/fed-food.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { type FoodCatalogue, foodCatalogue } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import type { StoredFood } from '../../core/food/own-food.ts';
import type { Feeding } from '../../core/food/rotation.ts';
import { expectedAdultKg } from '../../core/growth/forecast.ts';
import { useQuery } from '../data/query.ts';

const NO_FOODS: readonly StoredFood[] = [];
const NO_FEEDINGS: readonly Feeding[] = [];

export function useStoredFoods(): readonly StoredFood[] {
  return useQuery('food.all', {}).value?.foods ?? NO_FOODS;
}

export function useFoodCatalogue(): FoodCatalogue {
  const stored = useStoredFoods();
  return useMemo(() => foodCatalogue(stored), [stored]);
}

export function useFeedings(): readonly Feeding[] {
  return useQuery('food.feedings', {}).value?.feedings ?? NO_FEEDINGS;
}

/** The food that a litter's amounts and energy are reckoned with on a day: its own, else the house's, else the generic mix. */
export function useFoodOn(litterId: string | null, rules: HouseRules, born: CivilDate, day: CivilDate): Food {
  const catalogue = useFoodCatalogue();
  const feedings = useFeedings();
  const adultKg = useLitterAdultKg(litterId);
  return useMemo(
    () => fedFoodOn({ catalogue, feedings }, litterId, rules, born, day, adultKg),
    [catalogue, feedings, litterId, rules, born, day, adultKg],
  );
}

/** What the bitches of a litter will weigh, in kg: its meals go by the smaller ones. Null where it is not known, and without a litter. */
export function useLitterAdultKg(litterId: string | null): number | null {
  const litters = useQuery('litter.all', {}).value?.litters ?? [];
  const own = litters.find((l) => l.litter.id === litterId)?.litter;
  return own === undefined ? null : (expectedAdultKg(own, 'bitch')?.kg ?? null);
}
