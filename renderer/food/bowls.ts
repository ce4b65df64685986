/** Bowls of a week as the page shows and changes them. */

import type { HouseRules } from '../../core/feeding/rules.ts';
import { MEAL_NAMES, type MealName } from '../../core/food/bowls.ts';
import { type FoodBook, foodOrDefault } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type Bowl, DAYS_OF_WEEK, EMPTY_WEEK, feedingOf, type Week } from '../../core/food/rotation.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import { inTurn } from '../parts/form/in-turn.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

export interface Place {
  /** From Monday, 0. */
  readonly day: number;
  readonly meal: MealName;
}

/** The meals that have a column: three, and the afternoon where the rules or a bowl ask for it. */
export function columnsOf(week: Week, rules: HouseRules): MealName[] {
  const four = rules.fourMealsUntilWeeks > 0 || week.some((day) => day.afternoon !== undefined);
  return MEAL_NAMES.filter((meal) => meal !== 'afternoon' || four);
}

export function bowlAt(week: Week, { day, meal }: Place): Bowl | null {
  return week[day]?.[meal] ?? null;
}

/** The week with another bowl in one place; null empties it. */
export function withBowl(week: Week, { day, meal }: Place, bowl: Bowl | null): Week {
  return week.map((bowls, at) => {
    if (at !== day) return bowls;
    const { [meal]: _, ...others } = bowls;
    return bowl === null ? others : { ...others, [meal]: bowl };
  });
}

/** The same bowl at this meal on all seven days. */
export function everyDay(week: Week, { day, meal }: Place): Week {
  const bowl = bowlAt(week, { day, meal });
  return Array.from({ length: DAYS_OF_WEEK }, (_, at) => at).reduce((so, at) => withBowl(so, { day: at, meal }, bowl), week);
}

export function bowlOf(food: Pick<Food, 'id' | 'form'>): Bowl {
  return food.form === 'raw meaty bone' ? boneBowl(food.id) : { kind: 'foods', parts: [{ foodId: food.id, share: 1 }] };
}

/** Two pieces of a chicken wing's size, to begin with. */
export function boneBowl(foodId: string): Bowl {
  return { kind: 'bone', foodId, pieces: 2, pieceGrams: 90 };
}

/** What stands in a cell, a line for each food. */
export function bowlLines(bowl: Bowl | null, book: FoodBook): string[] {
  if (bowl === null) return [];
  if (bowl.kind === 'bone') return [words.week.bones(bowl.pieces, nameOf(book, bowl.foodId))];
  if (bowl.parts.length === 1) return bowl.parts.map((p) => nameOf(book, p.foodId));
  return bowl.parts.map((p) => words.week.part(words.percentText(p.share, 0).replace(/\D+$/, ''), nameOf(book, p.foodId)));
}

function nameOf(book: FoodBook, foodId: string): string {
  return words.foods.nameOf(foodOrDefault(book, foodId));
}

/** Sends a change of the week as it is stored now, one after another. What a litter has from the house becomes its own. */
export function changeWeek(litterId: string | null, change: (week: Week) => Week | null): Promise<boolean> {
  return inTurn(async () => {
    const now = await call('food.feedings', {});
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return false;
    }
    const week = change(feedingOf(now.value.feedings, litterId).week ?? EMPTY_WEEK);
    return (await run('food.setWeek', { litterId, week })).ok;
  });
}
