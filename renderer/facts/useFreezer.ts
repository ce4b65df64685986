/** The freezer as the window reckons it: facts from the program, the plan from `core`, again every half minute. */
import { useEffect, useMemo, useState } from 'react';
import { dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import type { OutputOf } from '../../core/contract/operations.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { FoodCatalogue } from '../../core/food/catalogue.ts';
import type { Demand } from '../../core/freezer/demand.ts';
import { planFreezer, wasteWithin } from '../../core/freezer/plan.ts';
import type { FreezerPlan } from '../../core/freezer/plan-shape.ts';
import { type Purchase, shoppingList } from '../../core/freezer/shopping.ts';
import { GONE_DAYS, PLANNED_DAYS, REMEMBERED_DAYS, WEEK_DAYS } from '../../core/freezer/thaw-list.ts';
import type { House } from '../../core/people/house.ts';
import { now } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { words } from '../state/words.ts';
import { useFoodCatalogue } from './useFoods.ts';
import { useHouse } from './useLitterGrowth.ts';
import { useRules } from './useRules.ts';

export type Stock = OutputOf<'freezer.stock'>;

export interface Freezer {
  readonly now: LocalTime;
  readonly today: CivilDate;
  readonly untilDay: CivilDate;
  readonly stock: Stock;
  readonly demand: readonly Demand[];
  readonly plan: FreezerPlan;
  readonly purchases: readonly Purchase[];
  /** Grams expected to be thrown away in the next seven days. */
  readonly wasteGrams: number;
  readonly rules: HouseRules;
  readonly house: House;
  readonly catalogue: FoodCatalogue;
  /** What a food is called; its id when it is not there any more. */
  readonly nameOf: (foodId: string) => string;
}

/** The local time to the minute. */
function useNow(): LocalTime {
  const [time, setTime] = useState(() => now().local);
  useEffect(() => {
    const timer = setInterval(() => setTime(now().local), 30_000);
    return () => clearInterval(timer);
  }, []);
  return time;
}

/** Null while the facts are fetched. */
export function useFreezer(): Freezer | null {
  const time = useNow();
  const today = dateOf(time);
  const untilDay = addDays(today, PLANNED_DAYS - 1);
  const stock = useQuery('freezer.stock', { since: addDays(today, -GONE_DAYS) }).value;
  const demand = useQuery('freezer.demand', { from: addDays(today, -REMEMBERED_DAYS), until: untilDay }).value?.demand;
  const rules = useRules(today);
  const house = useHouse();
  const catalogue = useFoodCatalogue();
  return useMemo(() => {
    if (stock === null || demand === undefined) return null;
    const { packs, thaws, starters, settings } = stock;
    const plan = planFreezer({ now: time, untilDay, rules, settings, packs, thaws, starters, demand });
    return {
      now: time,
      today: dateOf(time),
      untilDay,
      stock,
      demand,
      plan,
      purchases: shoppingList(plan, packs, rules, dateOf(time)),
      wasteGrams: wasteWithin(plan, time, WEEK_DAYS),
      rules,
      house,
      catalogue,
      nameOf: (foodId) => {
        const food = catalogue.find(foodId);
        return food === null ? foodId : words.foods.nameOf(food);
      },
    };
  }, [stock, demand, time, untilDay, rules, house, catalogue]);
}
