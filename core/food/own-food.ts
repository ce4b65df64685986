/** Foods as the breeder writes them down: from a pack, or as a recipe of other foods. What they are in figures is computed. */

import { z } from 'zod';
import { idSchema, longText } from '../units/fields.ts';
import { boneCalciumMg, FOOD_FORMS, type Food, mixFoods, type Range, UNKNOWN } from './food.ts';
import { asFed, type Check, type Label, type LabelCheck, labelChecks, labelEnergies, labelSchema } from './label.ts';

const partSchema = z.strictObject({ foodId: idSchema, share: z.number().min(0.001).max(1) });
export type RecipePart = z.infer<typeof partSchema>;

export const foodFieldsSchema = z.strictObject({
  name: longText.max(80).refine((t) => t.trim() !== '', 'a food has a name'),
  form: z.enum(FOOD_FORMS),
  made: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('label'), label: labelSchema }),
    z.strictObject({ by: z.literal('recipe'), parts: z.array(partSchema).min(1).max(20) }),
  ]),
  /** Part of the food that is bone, 0 to 1, with what was weighed; null when the pack does not say. A recipe's comes from its parts. */
  bone: z.strictObject({ share: z.number().min(0).max(1), basis: z.enum(['wet', 'clean', 'solids', 'unknown']) }).nullable(),
  holdsVegetables: z.boolean(),
  packGrams: z.number().min(1).max(50_000).nullable(),
  /** Into how many a pack can be cut. */
  portionsPerPack: z.number().int().min(1).max(64),
  /** For a pack, in her own money. */
  price: z.number().min(0).max(100_000).nullable(),
  /** How long it keeps once thawed or opened, when the pack says so. */
  keepHours: z.number().int().min(1).max(20_000).nullable(),
  note: longText.max(300),
});
export type FoodFields = z.infer<typeof foodFieldsSchema>;

/** A food of hers. One that is retired is no longer offered, but stays where it is used. */
export const storedFoodSchema = z.strictObject({ id: idSchema, fields: foodFieldsSchema, retired: z.boolean() });
export type StoredFood = z.infer<typeof storedFoodSchema>;

const SHARES_OFF = 0.005;
/** No recipe goes deeper than this. */
export const DEEPEST_RECIPE = 8;

/** The same of a food: its pack, its recipe, its bone. Shares are parts of 1, calcium in g in 100 g. */
export type FoodCheck =
  | LabelCheck
  | Check<'part-itself' | 'part-twice' | 'part-gone', 'parts'>
  | (Check<'shares-off', 'parts'> & { readonly sum: number })
  | (Check<'bone-off', 'bone'> & {
      readonly share: number;
      readonly low: number;
      readonly high: number;
      readonly onPack: number;
    });

/** The food in figures. For a recipe the foods of its parts are asked of `find`; null when one is not there, or a figure is missing. */
export function foodOf(id: string, fields: FoodFields, find: (foodId: string) => Food | null): Food | null {
  return fields.made.by === 'label' ? fromLabel(id, fields, fields.made.label) : fromRecipe(id, fields, fields.made.parts, find);
}

function fromLabel(id: string, fields: FoodFields, label: Label): Food | null {
  const a = asFed(label);
  const kcal = labelEnergies(label)[label.method];
  if (a === null || kcal === null || !(kcal > 0)) return null;
  return {
    id,
    name: fields.name,
    form: fields.form,
    kcalPer100g: kcal,
    kcalMethod: label.method,
    analysis: {
      water: a.water,
      protein: a.protein,
      fat: a.fat,
      fibre: a.fibre,
      ash: a.ash,
      calciumMg: calciumOf(a.calciumMg, fields),
      phosphorusMg: a.phosphorusMg === null ? UNKNOWN : exactly(a.phosphorusMg),
      vitaminAIu: a.vitaminAIu,
    },
    bone: fields.bone,
    holdsVegetables: fields.holdsVegetables,
    recipe: [],
    source: {
      by: 'pack',
      basis: label.basis,
      method: label.method,
      calciumFromBone: a.calciumMg === null,
      waterGuessed: a.waterGuessed,
    },
    known: label.method === 'label' && label.basis === 'as fed' ? 'seen' : 'computed',
  };
}

/** Calcium as the pack says; else a range from its bone; else nobody knows. */
function calciumOf(calciumMg: number | null, { bone }: FoodFields): Range {
  if (calciumMg !== null) return exactly(calciumMg);
  return bone === null ? UNKNOWN : boneCalciumMg(bone.share, bone.basis);
}

function exactly(figure: number): Range {
  return { low: figure, high: figure };
}

function fromRecipe(
  id: string,
  fields: FoodFields,
  parts: readonly RecipePart[],
  find: (foodId: string) => Food | null,
): Food | null {
  const mixed = parts.flatMap(({ foodId, share }) => {
    const food = find(foodId);
    return food === null ? [] : [{ food, share }];
  });
  if (mixed.length !== parts.length) return null;
  const mix = mixFoods(
    {
      id,
      name: fields.name,
      form: fields.form,
      source: { by: 'recipe', parts: parts.length },
      known: 'computed',
    },
    mixed,
  );
  return { ...mix, holdsVegetables: mix.holdsVegetables || fields.holdsVegetables };
}

/**
 * What is wrong or unlikely about a food as it is written. `stop` is not taken. `id` is null for a new food; `find` answers the food of a part,
 * or null, and `uses` whether a food has another in it at any depth.
 */
export function foodChecks(
  id: string | null,
  fields: FoodFields,
  find: (foodId: string) => Food | null,
  uses: (foodId: string, wanted: string) => boolean,
): FoodCheck[] {
  if (fields.made.by === 'recipe') return recipeChecks(id, fields.made.parts, find, uses);
  const { label } = fields.made;
  const checks: FoodCheck[] = labelChecks(label, fields.form);
  return checks.some((c) => c.severity === 'stop') ? checks : [...checks, ...boneCheck(fields, label)];
}

function recipeChecks(
  id: string | null,
  parts: readonly RecipePart[],
  find: (foodId: string) => Food | null,
  uses: (foodId: string, wanted: string) => boolean,
): FoodCheck[] {
  const stop = { severity: 'stop', field: 'parts' } as const;
  const checks: FoodCheck[] = [];
  if (id !== null && parts.some((p) => p.foodId === id || uses(p.foodId, id))) checks.push({ code: 'part-itself', ...stop });
  if (new Set(parts.map((p) => p.foodId)).size !== parts.length) checks.push({ code: 'part-twice', ...stop });
  if (parts.some((p) => p.foodId !== id && find(p.foodId) === null)) checks.push({ code: 'part-gone', ...stop });
  const sum = parts.reduce((total, p) => total + p.share, 0);
  if (Math.abs(sum - 1) > SHARES_OFF) checks.push({ code: 'shares-off', ...stop, sum });
  return checks;
}

/** How far a pack's calcium may be from its bone before it is asked about. Our own bound. */
const BONE_SLACK = 0.2;
/** Milligrams of calcium in 100 g that meat and greens bring of their own, at the most. Our own bound. */
const CALCIUM_BESIDE_BONE_MG = 60;

/** Calcium on the pack that no such bone could give. */
function boneCheck({ bone }: FoodFields, label: Label): FoodCheck[] {
  const onPack = asFed(label)?.calciumMg ?? null;
  if (bone === null || onPack === null) return [];
  const fits = boneCalciumMg(bone.share, bone.basis);
  if (onPack >= fits.low * (1 - BONE_SLACK) && onPack <= fits.high * (1 + BONE_SLACK) + CALCIUM_BESIDE_BONE_MG) return [];
  const [low, high] = [fits.low / 1000, fits.high / 1000];
  return [{ code: 'bone-off', severity: 'doubt', field: 'bone', share: bone.share, low, high, onPack: onPack / 1000 }];
}
