/**
 * A rotation: a week of meals. A bowl holds foods with their shares, or is a meal of raw meaty bones. What stands empty is the food that is
 * fed otherwise. Who eats what is facts; what a week comes to is computed.
 */

import { z } from 'zod';
import { type CivilDate, weekday } from '../calendar/day.ts';
import { idSchema, longText } from '../units/fields.ts';
import type { MassUnit } from '../units/mass.ts';
import { bowlStep, MEAL_NAMES, type MealName, type Meals } from './bowls.ts';
import { type FoodCatalogue, foodOrDefault } from './catalogue.ts';
import { boneShareOf, type Food, type MixPart, mixFoods } from './food.ts';

const SHARES_OFF = 0.005;

export const bowlSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('foods'),
    parts: z
      .array(z.strictObject({ foodId: idSchema, share: z.number().min(0.01).max(1) }))
      .min(1)
      .max(6)
      .refine((parts) => Math.abs(parts.reduce((sum, p) => sum + p.share, 0) - 1) <= SHARES_OFF, 'the shares do not come to 1')
      .refine((parts) => new Set(parts.map((p) => p.foodId)).size === parts.length, 'a food stands in the bowl twice'),
  }),
  /** So many pieces to each dog, in place of the meal. */
  z.strictObject({
    kind: z.literal('bone'),
    foodId: idSchema,
    pieces: z.number().int().min(1).max(12),
    pieceGrams: z.number().min(1).max(2000),
  }),
]);
export type Bowl = z.infer<typeof bowlSchema>;

/** Days from Monday; a meal without a bowl is absent. */
export const weekSchema = z.array(z.partialRecord(z.enum(MEAL_NAMES), bowlSchema)).length(7);
export type Week = z.infer<typeof weekSchema>;

export const DAYS_OF_WEEK = 7;
export const EMPTY_WEEK: Week = Array.from({ length: DAYS_OF_WEEK }, () => ({}));

/** A place in a week of bowls. */
export interface Place {
  /** From Monday, 0. */
  readonly day: number;
  readonly meal: MealName;
}

/** The week with another bowl in one place; null empties it. */
export function withBowl(week: Week, { day, meal }: Place, bowl: Bowl | null): Week {
  return week.map((bowls, at) => {
    if (at !== day) return bowls;
    const { [meal]: _, ...others } = bowls;
    return bowl === null ? others : { ...others, [meal]: bowl };
  });
}

/** What the breeder writes about a grown dog of the house: the week is held against it, too. */
export const grownDogFieldsSchema = z.strictObject({ name: longText.max(60), kg: z.number().min(0.5).max(120) });
export const grownDogSchema = z.strictObject({ ...grownDogFieldsSchema.shape, id: idSchema });
export const MOST_GROWN_DOGS = 24;
export type GrownDog = z.infer<typeof grownDogSchema>;

/** What a litter, or the house (`litterId` null), eats. A litter without a food or a week has the house's. */
export const feedingSchema = z.strictObject({
  litterId: idSchema.nullable(),
  foodId: idSchema.nullable(),
  week: weekSchema.nullable(),
  /** Of the house only. */
  dogs: z.array(grownDogSchema).max(MOST_GROWN_DOGS),
});
export type Feeding = z.infer<typeof feedingSchema>;

/** What is fed to a litter, or to the house: its own, else the house's, else nothing written down. */
export function feedingOf(all: readonly Feeding[], litterId: string | null): Pick<Feeding, 'foodId' | 'week'> {
  const house = all.find((f) => f.litterId === null);
  const own = litterId === null ? undefined : all.find((f) => f.litterId === litterId);
  return { foodId: own?.foodId ?? house?.foodId ?? null, week: own?.week ?? house?.week ?? null };
}

/** The bowl of a meal on a day, null where the week has none. */
export function bowlOn(week: Week | null, day: CivilDate, meal: MealName): Bowl | null {
  return week?.[weekday(day)]?.[meal] ?? null;
}

/** Whether a week holds no bowl at all. */
export function isEmptyWeek(week: Week | null): boolean {
  return week === null || week.every((day) => MEAL_NAMES.every((meal) => day[meal] === undefined));
}

/** The foods of a bowl in parts by weight; a missing one is the usual food. */
function partsOf(bowl: Bowl | null, catalogue: FoodCatalogue, usual: Food): MixPart[] {
  if (bowl === null) return [{ food: usual, share: 1 }];
  if (bowl.kind === 'bone') return [{ food: catalogue.find(bowl.foodId) ?? usual, share: 1 }];
  return bowl.parts.map(({ foodId, share }) => ({ food: catalogue.find(foodId) ?? usual, share }));
}

/**
 * The food that amounts and energy are reckoned with: the mean of the week, in which all meals count alike; without a week the
 * one food that is fed. `meals` are those of the day, as parts of its food.
 */
export function reckonedFood(fed: Pick<Feeding, 'foodId' | 'week'>, catalogue: FoodCatalogue, meals: Meals): Food {
  const usual = foodOrDefault(catalogue, fed.foodId);
  const { week } = fed;
  if (week === null || isEmptyWeek(week)) return usual;
  const parts = new Map<string, MixPart>();
  for (const day of week) {
    for (const meal of MEAL_NAMES) {
      const part = meals[meal];
      if (part !== undefined)
        for (const p of partsOf(day[meal] ?? null, catalogue, usual)) addPart(parts, p.food, p.share * part);
    }
  }
  if (parts.size === 1) return [...parts.values()][0]?.food ?? usual;
  return mixFoods(
    {
      id: ROTATION_ID,
      name: '',
      form: 'other',
      source: { by: 'week-mean' },
      known: 'computed',
    },
    [...parts.values()],
  );
}

function addPart(parts: Map<string, MixPart>, food: Food, share: number): void {
  parts.set(food.id, { food, share: (parts.get(food.id)?.share ?? 0) + share });
}

export interface BowlPart {
  readonly food: Food;
  /** Pieces to each dog, for a meal of bones; else null. */
  readonly pieces: number | null;
  readonly grams: number;
}

/**
 * What to weigh out for one meal: grams of each food, to what can be weighed, adding up to the meal exactly. Bones are counted: so many pieces to
 * each of `eaters`, whatever the meal would weigh.
 */
export function fillBowl(
  bowl: Bowl | null,
  mealGrams: number,
  eaters: number,
  catalogue: FoodCatalogue,
  usual: Food,
  unit: MassUnit,
): BowlPart[] {
  if (bowl?.kind === 'bone')
    return [{ food: catalogue.find(bowl.foodId) ?? usual, pieces: bowl.pieces, grams: bowl.pieces * bowl.pieceGrams * eaters }];
  const parts = partsOf(bowl, catalogue, usual);
  const step = Math.min(bowlStep(mealGrams, unit), mealGrams);
  const rounded = parts.map((p) => ({ food: p.food, pieces: null, grams: Math.round((mealGrams * p.share) / step) * step }));
  const rest = mealGrams - rounded.reduce((sum, p) => sum + p.grams, 0);
  const biggest = rounded.reduce((at, p, i) => (p.grams > (rounded[at]?.grams ?? 0) ? i : at), 0);
  return rounded.map((p, i) => (i === biggest ? { ...p, grams: p.grams + rest } : p)).filter((p) => p.grams > 0);
}

/** Ids of what is only reckoned with: the mean of the bowls, and all of a week as one food. The words name them. */
const ROTATION_ID = 'rotation-of-the-week';
const WEEK_ID = 'the-whole-week';
export type ReckonedFoodId = typeof ROTATION_ID | typeof WEEK_ID;

/** Who eats: one dog or a litter together. `meals` are grams of each meal of a day for all of them. */
export interface Eaters {
  readonly count: number;
  readonly meals: Meals;
}

export interface WeekSummary {
  /** Means of a day, for all who eat. */
  readonly grams: number;
  readonly kcal: number;
  /** The week as one food: everything per 100 g, calcium and bone as ranges. */
  readonly food: Food;
  /** Part of the weight that is bone. */
  readonly bone: { readonly low: number; readonly high: number };
  /** Parts of the energy by what they come from; they add up to 1. */
  readonly complete: number;
  readonly plain: number;
  readonly bones: number;
  /** Dry, dehydrated and freeze-dried food. */
  readonly concentrated: number;
  readonly other: number;
  /** Part of the energy in freeze-dried food, which is counted in `concentrated` too. */
  readonly freezeDried: number;
  /** Grams a week of bowls that hold meat but no vegetables. */
  readonly withoutGreens: number;
  /** Meals of a week by kind. */
  readonly meals: { readonly all: number; readonly bones: number; readonly plain: number; readonly complete: number };
  /** Means of the day in kcal, from Monday. */
  readonly days: readonly number[];
  /** What there is in the week, most energy first. */
  readonly foods: readonly { readonly food: Food; readonly gramsAWeek: number; readonly energy: number }[];
}

/** What a week comes to for those who eat it; null when nobody eats. */
export function weekSummary(week: Week | null, eaters: Eaters, catalogue: FoodCatalogue, usual: Food): WeekSummary | null {
  const fed = new Map<string, MixPart>();
  const days: number[] = [];
  const meals = { all: 0, bones: 0, plain: 0, complete: 0 };
  let withoutGreens = 0;
  for (let d = 0; d < DAYS_OF_WEEK; d += 1) {
    let kcal = 0;
    for (const meal of MEAL_NAMES) {
      const grams = eaters.meals[meal];
      if (grams === undefined || grams <= 0) continue;
      const bowl = week?.[d]?.[meal] ?? null;
      const parts = partsOf(bowl, catalogue, usual);
      const weight = bowl?.kind === 'bone' ? bowl.pieces * bowl.pieceGrams * eaters.count : grams;
      meals.all += 1;
      meals[bowl?.kind === 'bone' ? 'bones' : parts.some((p) => p.food.holdsVegetables) ? 'complete' : 'plain'] += 1;
      if (bowl?.kind !== 'bone' && isWithoutGreens(parts)) withoutGreens += weight;
      for (const p of parts) {
        addPart(fed, p.food, p.share * weight);
        kcal += (p.share * weight * p.food.kcalPer100g) / 100;
      }
    }
    days.push(kcal);
  }
  const parts = [...fed.values()];
  const week7 = parts.reduce((sum, p) => sum + p.share, 0);
  if (week7 <= 0) return null;
  return { ...summed(parts, week7), withoutGreens, meals, days };
}

function summed(parts: readonly MixPart[], gramsAWeek: number): Omit<WeekSummary, 'withoutGreens' | 'meals' | 'days'> {
  const food = mixFoods({ id: WEEK_ID, name: '', form: 'other', source: { by: 'week-sum' }, known: 'computed' }, parts);
  const kcalAWeek = (gramsAWeek * food.kcalPer100g) / 100;
  const energy = (of: (f: Food) => boolean) =>
    parts.reduce((sum, p) => sum + (of(p.food) ? (p.share * p.food.kcalPer100g) / 100 : 0), 0) / kcalAWeek;
  const bones = parts.map((p) => ({ weight: p.share / gramsAWeek, share: boneShareOf(p.food) }));
  return {
    grams: gramsAWeek / DAYS_OF_WEEK,
    kcal: kcalAWeek / DAYS_OF_WEEK,
    food,
    bone: {
      low: bones.reduce((sum, b) => sum + b.weight * b.share.low, 0),
      high: bones.reduce((sum, b) => sum + b.weight * b.share.high, 0),
    },
    complete: energy((f) => f.form === 'complete mix'),
    plain: energy((f) => f.form === 'plain mix'),
    bones: energy((f) => f.form === 'raw meaty bone'),
    concentrated: energy(isConcentrated),
    other: energy((f) => !['complete mix', 'plain mix', 'raw meaty bone'].includes(f.form) && !isConcentrated(f)),
    freezeDried: energy((f) => f.form === 'freeze-dried'),
    foods: parts
      .map((p) => ({ food: p.food, gramsAWeek: p.share, energy: (p.share * p.food.kcalPer100g) / 100 / kcalAWeek }))
      .toSorted((a, b) => b.energy - a.energy),
  };
}

function isConcentrated(food: Pick<Food, 'form'>): boolean {
  return food.form === 'freeze-dried' || food.form === 'dehydrated' || food.form === 'dry';
}

function isWithoutGreens(parts: readonly MixPart[]): boolean {
  const meat = parts.some((p) => ['plain mix', 'meat', 'organ'].includes(p.food.form));
  return meat && parts.every((p) => !p.food.holdsVegetables);
}
