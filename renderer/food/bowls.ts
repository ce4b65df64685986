/** Bowls of a week as the page shows and changes them. */

import { mealAges, mealNames } from '../../core/feeding/meals.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { MEAL_NAMES, type MealName } from '../../core/food/bowls.ts';
import { type FoodCatalogue, foodOrDefault } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type Bowl, EMPTY_WEEK, feedingOf, type Place, type Week } from '../../core/food/rotation.ts';
import { call } from '../data/host.ts';
import { inOrder, run } from '../data/query.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

/** The meals that have a column: three, four where the rules have them for dogs of that grown weight, and any that holds a bowl. */
export function columnsOf(week: Week, rules: HouseRules, adultKg: number | null): MealName[] {
  const fed = mealNames(mealAges(rules, adultKg).fourUntilWeeks > 0 ? 4 : 3);
  return MEAL_NAMES.filter((meal) => fed.includes(meal) || week.some((day) => day[meal] !== undefined));
}

export function bowlAt(week: Week, { day, meal }: Place): Bowl | null {
  return week[day]?.[meal] ?? null;
}

export function bowlOf(food: Pick<Food, 'id' | 'form'>): Bowl {
  return food.form === 'raw meaty bone' ? boneBowl(food.id) : { kind: 'foods', parts: [{ foodId: food.id, share: 1 }] };
}

/** Two pieces of a chicken wing's size, to begin with. */
export function boneBowl(foodId: string): Bowl {
  return { kind: 'bone', foodId, pieces: 2, pieceGrams: 90 };
}

/** What stands in a cell, a line for each food. */
export function bowlLines(bowl: Bowl | null, catalogue: FoodCatalogue): string[] {
  if (bowl === null) return [];
  if (bowl.kind === 'bone') return [words.week.bones(bowl.pieces, nameOf(catalogue, bowl.foodId))];
  if (bowl.parts.length === 1) return bowl.parts.map((p) => nameOf(catalogue, p.foodId));
  return bowl.parts.map((p) => words.week.part(words.percentText(p.share, 0).replace(/\D+$/, ''), nameOf(catalogue, p.foodId)));
}

function nameOf(catalogue: FoodCatalogue, foodId: string): string {
  return words.foods.nameOf(foodOrDefault(catalogue, foodId));
}

/** Puts a bowl into a place of the week, or empties it. What a litter has from the house becomes its own. */
export async function putBowl(litterId: string | null, place: Place, bowl: Bowl | null): Promise<boolean> {
  return (await run('food.changeWeek', { litterId, bowls: [{ ...place, bowl }] })).ok;
}

/** The bowl of a place, as it is stored when it is this job's turn, at the same meal on all seven days. */
export function putEveryDay(litterId: string | null, { day, meal }: Place): Promise<void> {
  return inOrder(async (run) => {
    const now = await call('food.feedings', {});
    if (!now.ok) return useWindow.getState().setFailure(now.error);
    const bowl = bowlAt(feedingOf(now.value.feedings, litterId).week ?? EMPTY_WEEK, { day, meal });
    await run('food.changeWeek', { litterId, bowls: EMPTY_WEEK.map((_, at) => ({ day: at, meal, bowl })) });
  });
}
