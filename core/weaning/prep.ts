/**
 * The prep sheet: what is weighed out for each meal of the litter. Puppies share bowls by texture, a few to a bowl. Puppies, bowls, meals and the
 * day are sums of the same rounded bowls, so they agree to the gram.
 */

import type { CivilDate } from '../calendar/day.ts';
import type { MealName } from '../food/bowls.ts';
import type { Food } from '../food/food.ts';
import { type Texture, waterFor } from './texture.ts';
import type { PuppyDay, WeaningDay } from './weaning.ts';

/** Grams at each meal, in the order of the day's meals, and their sum. */
export interface PrepAmounts {
  readonly byMeal: readonly number[];
  readonly day: number;
}

export interface PrepBowl {
  readonly texture: Texture;
  readonly puppies: readonly (PrepAmounts & { readonly puppyId: string; readonly holds: boolean; readonly share: number })[];
  readonly food: PrepAmounts;
  readonly water: PrepAmounts;
}

export interface PrepSheet {
  readonly day: CivilDate;
  readonly meals: readonly MealName[];
  readonly bowls: readonly PrepBowl[];
  readonly food: PrepAmounts;
  readonly water: PrepAmounts;
}

/** The sheet of a day; without bowls when nothing is fed yet. Puppies without a weight are left out. */
export function prepSheet(day: WeaningDay, atOneBowl: number, food: Pick<Food, 'form'>): PrepSheet {
  const meals = day.meals.map((m) => m.name);
  const fed = day.puppies.filter((p) => p.grams !== null);
  const bowls = shared(fed, atOneBowl).map((puppies) => bowlOf(puppies, meals, food));
  return {
    day: day.day,
    meals,
    bowls,
    food: total(
      bowls.map((b) => b.food),
      meals.length,
    ),
    water: total(
      bowls.map((b) => b.water),
      meals.length,
    ),
  };
}

/** Puppies of one texture together, the texture of most first, evenly over as few bowls as hold them. */
function shared(puppies: readonly PuppyDay[], atOneBowl: number): PuppyDay[][] {
  const byTexture = new Map<Texture, PuppyDay[]>();
  for (const p of puppies) byTexture.set(p.texture, [...(byTexture.get(p.texture) ?? []), p]);
  return [...byTexture.values()]
    .sort((a, b) => b.length - a.length)
    .flatMap((group) => {
      const bowls = Math.ceil(group.length / atOneBowl);
      const each = Math.ceil(group.length / bowls);
      return Array.from({ length: bowls }, (_, n) => group.slice(n * each, (n + 1) * each)).filter((b) => b.length > 0);
    });
}

function bowlOf(puppies: readonly PuppyDay[], meals: readonly MealName[], food: Pick<Food, 'form'>): PrepBowl {
  const texture = puppies[0]?.texture ?? 'gruel';
  const rows = puppies.map((p) => ({
    puppyId: p.puppyId,
    holds: p.holds,
    share: p.share,
    byMeal: meals.map((name) => p.meals[name] ?? 0),
    day: p.dayGrams,
  }));
  const all = total(rows, meals.length);
  const water = all.byMeal.map((grams) => waterFor(grams, texture, food));
  return { texture, puppies: rows, food: all, water: { byMeal: water, day: sum(water) } };
}

function total(parts: readonly PrepAmounts[], meals: number): PrepAmounts {
  const byMeal = Array.from({ length: meals }, (_, i) => sum(parts.map((p) => p.byMeal[i] ?? 0)));
  return { byMeal, day: sum(byMeal) };
}

function sum(figures: readonly number[]): number {
  return figures.reduce((all, f) => all + f, 0);
}
