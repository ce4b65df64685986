/** Foods: what is in them, and how that is known. Energy by a named method; bone calcium always as a range. */
import { BONE_CALCIUM, BONE_CALCIUM_TO_PHOSPHORUS, type BoneBasis } from '../reference/feeding/bone.ts';
import type { Known } from '../reference/feeding/known.ts';
import { type Ingredient, ingredient, type NdbNumber } from '../reference/feeding/usda.ts';

export const FOOD_FORMS = [
  'complete mix',
  'plain mix',
  'raw meaty bone',
  'meat',
  'organ',
  'vegetable blend',
  'freeze-dried',
  'dehydrated',
  'dry',
  'milk replacer',
  'other',
] as const;
export type FoodForm = (typeof FOOD_FORMS)[number];

/** Two ends of what a figure may be; equal when it is known. `high` is Infinity when nobody knows: then `low` is what is sure. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Per 100 g as fed: grams, milligrams and IU. Fibre and ash count as 0 in the energy methods when they are not known. */
export interface Analysis {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly fibre?: number;
  readonly ash?: number;
  /** The low ends of calcium and phosphorus belong together, and so do the high ends: both hang on the same bone. */
  readonly calciumMg: Range;
  readonly phosphorusMg: Range;
  /** What is counted, see the food's source; null when nobody knows. */
  readonly vitaminAIu: number | null;
}

/** What the figures of a pack are parts of: the food as it is, its dry matter (both in per cent), or 1000 kcal (in grams). */
export const LABEL_BASES = ['as fed', 'dry matter', 'per 1000 kcal'] as const;
export type LabelBasis = (typeof LABEL_BASES)[number];

export type EnergyMethod = 'raw 4/9/4' | 'modified Atwater' | 'NRC four-step' | 'label' | 'recipe';

/** Where the figures of a food come from. */
export type FoodSource =
  | {
      readonly by: 'pack';
      readonly basis: LabelBasis;
      readonly method: EnergyMethod;
      /** The pack says no calcium: it is reckoned from the bone, or not known. */
      readonly calciumFromBone: boolean;
      readonly waterGuessed: boolean;
    }
  | { readonly by: 'recipe'; readonly parts: number }
  /** A line of the published table. `plant`: its own energy is used; `withBone`: bone is in the piece, and gives no energy. */
  | { readonly by: 'table'; readonly ndb: string; readonly plant: boolean; readonly withBone: boolean }
  /** A generic mix of lines of that table. */
  | { readonly by: 'shipped-mix' }
  | { readonly by: 'week-mean' }
  | { readonly by: 'week-sum' };

/** A food as it is called: what is shipped is named by its id in the words, hers by its name. */
export interface NamedFood {
  readonly id: string;
  readonly name: string;
}

export interface Food extends NamedFood {
  readonly form: FoodForm;
  readonly kcalPer100g: number;
  readonly kcalMethod: EnergyMethod;
  readonly analysis: Analysis;
  /** Part of the food that is bone, 0 to 1, with what was weighed; null when the label gives calcium instead, or nobody knows. */
  readonly bone: { readonly share: number; readonly basis: BoneBasis } | null;
  readonly holdsVegetables: boolean;
  /** What a mix is made of, by weight; empty for what is not a mix. */
  readonly recipe: readonly (NamedFood & { readonly share: number })[];
  readonly source: FoodSource;
  readonly known: Known;
}

type Macro = Pick<Analysis, 'water' | 'protein' | 'fat' | 'fibre' | 'ash'>;

/** Carbohydrate by difference: what is left of 100 g, never under 0. */
function carbohydrate(a: Macro): number {
  return Math.max(0, 100 - a.water - a.protein - a.fat - (a.fibre ?? 0) - (a.ash ?? 0));
}

/**
 * Energy in kcal per 100 g from an analysis as fed. Sources: 4/9/4 for natural raw food and the NRC 2006 four steps: FEDIAF guidelines, annex
 * (seen); modified Atwater 3.5/8.5/3.5: AAFCO (second-hand).
 */
export function energyDensity(method: 'raw 4/9/4' | 'modified Atwater' | 'NRC four-step', a: Macro): number {
  const nfe = carbohydrate(a);
  if (method === 'raw 4/9/4') return rawEnergy(a.protein, a.fat, nfe);
  if (method === 'modified Atwater') return 3.5 * a.protein + 8.5 * a.fat + 3.5 * nfe;
  const fibre = a.fibre ?? 0;
  const gross = 5.7 * a.protein + 9.4 * a.fat + 4.1 * (nfe + fibre);
  const digestible = (gross * (91.2 - 1.43 * ((fibre / (100 - a.water)) * 100))) / 100;
  return digestible - 1.04 * a.protein;
}

function rawEnergy(protein: number, fat: number, nfe: number): number {
  return 4 * protein + 9 * fat + 4 * nfe;
}

/** A figure of the edible part, per 100 g of the piece as bought: the bone holds none of it, so energy is a floor. */
export function asBought(edible: number, bonePercent: number | null): number {
  return edible * (1 - (bonePercent ?? 0) / 100);
}

/** Calcium of so much bone, in mg per 100 g of food; `share` is the part of the food that is bone. */
export function boneCalciumMg(share: number, basis: BoneBasis): Range {
  const perGram = BONE_CALCIUM[basis];
  return { low: share * perGram.low * 100_000, high: share * perGram.high * 100_000 };
}

/** The share of bone that a calcium figure (mg per 100 g) stands for: the most bone at the low end of calcium in bone, and the least. */
export function boneFromCalcium(calciumMg: number, basis: BoneBasis): Range {
  const perGram = BONE_CALCIUM[basis];
  return { low: calciumMg / (perGram.high * 100_000), high: calciumMg / (perGram.low * 100_000) };
}

/** A figure per 100 g of food, per 1000 kcal. */
export function per1000Kcal(per100g: number, kcalPer100g: number): number {
  return (per100g / kcalPer100g) * 1000;
}

/** Calcium in grams per 1000 kcal. */
export function calciumPer1000Kcal(food: Pick<Food, 'analysis' | 'kcalPer100g'>): Range {
  const { low, high } = food.analysis.calciumMg;
  return { low: per1000Kcal(low / 1000, food.kcalPer100g), high: per1000Kcal(high / 1000, food.kcalPer100g) };
}

/** Calcium over phosphorus, end by end; {@link UNKNOWN} when either is. */
export function calciumToPhosphorus(food: Pick<Food, 'analysis'>): Range {
  const { calciumMg: ca, phosphorusMg: p } = food.analysis;
  if (!Number.isFinite(ca.high) || !Number.isFinite(p.high) || p.low <= 0) return UNKNOWN;
  const ends = [ca.low / p.low, ca.high / p.high];
  return { low: Math.min(...ends), high: Math.max(...ends) };
}

/**
 * The share of liver, 0 to 1, at which a food reaches so much vitamin A. `limit` in IU per 1000 kcal, liver in IU per 100 g.
 */
export function liverLimit(limit: number, kcalPer100g: number, liverIuPer100g: number): number {
  return (limit * kcalPer100g) / 1000 / liverIuPer100g;
}

/** Nobody knows. */
export const UNKNOWN: Range = { low: 0, high: Number.POSITIVE_INFINITY };

/** The part of a food that is bone, as a range from 0 to 1: as written down, or worked back from its calcium, or not known. */
export function boneShareOf(food: Pick<Food, 'bone' | 'analysis' | 'form'>): Range {
  if (food.bone !== null) return { low: food.bone.share, high: food.bone.share };
  if (BONELESS.includes(food.form)) return { low: 0, high: 0 };
  const { low, high } = food.analysis.calciumMg;
  return {
    low: boneFromCalcium(Math.max(0, low - MEAT_CALCIUM_MG), 'unknown').low,
    high: Math.min(1, boneFromCalcium(high, 'unknown').high),
  };
}

/** Calcium in these does not come as bone that could be counted. */
const BONELESS: readonly FoodForm[] = ['organ', 'vegetable blend', 'dry', 'milk replacer'];
/** Calcium in 100 g of meat without bone is at most about this, in mg: the most of the meats of the table. */
const MEAT_CALCIUM_MG = 24;

/** Grams of another food that hold as much energy: "instead of this, so much of that". */
export function equivalentGrams(grams: number, of: Pick<Food, 'kcalPer100g'>, as: Pick<Food, 'kcalPer100g'>): number {
  return (grams * of.kcalPer100g) / as.kcalPer100g;
}

/** What a food is of an ingredient of the table. The plants have no form of their own there; egg shell and the like are left out. */
function formOf(i: Ingredient): FoodForm {
  if (i.ndb.startsWith('11')) return 'vegetable blend';
  if (i.name.endsWith('liver')) return 'organ';
  return i.bonePercent !== null && i.bonePercent > 0 && i.ndb !== EGG ? 'raw meaty bone' : 'meat';
}

const EGG = '01123';

/** An ingredient of the table as it is bought, bone and all: figures per 100 g of the piece. An egg is without its shell. */
export function ingredientFood(ndb: string): Food {
  const i = ingredient(ndb);
  const boneShare = ndb === EGG ? 0 : (i.bonePercent ?? 0) / 100;
  const edible = (figure: number) => asBought(figure, boneShare * 100);
  const fromBone = boneCalciumMg(boneShare, 'wet');
  const plant = ndb.startsWith('11');
  return {
    id: `usda-${ndb}`,
    name: i.name,
    form: formOf(i),
    // Meat holds no carbohydrate to speak of; for plants the table's own energy is used, since it lists no fibre or ash.
    kcalPer100g: plant ? edible(i.kcal) : rawEnergy(edible(i.protein), edible(i.fat), 0),
    kcalMethod: plant ? 'label' : 'raw 4/9/4',
    analysis: {
      water: edible(i.water),
      protein: edible(i.protein),
      fat: edible(i.fat),
      calciumMg: { low: edible(i.calciumMg) + fromBone.low, high: edible(i.calciumMg) + fromBone.high },
      phosphorusMg: {
        low: edible(i.phosphorusMg) + fromBone.low / BONE_CALCIUM_TO_PHOSPHORUS,
        high: edible(i.phosphorusMg) + fromBone.high / BONE_CALCIUM_TO_PHOSPHORUS,
      },
      vitaminAIu: i.vitaminAIu === null ? null : edible(i.vitaminAIu),
    },
    // Where bone is ground in, the table's calcium holds it, and how much bone it is stays open.
    bone: i.bonePercent === null ? null : { share: boneShare, basis: 'wet' },
    holdsVegetables: plant,
    recipe: [],
    source: { by: 'table', ndb, plant, withBone: boneShare > 0 },
    known: 'computed',
  };
}

export interface MixPart {
  readonly food: Food;
  /** Parts by weight; they need not add up to 1. */
  readonly share: number;
}

/**
 * A mix of foods by weight: its analysis is the sum of its parts, calcium end by end, so that a part nobody knows leaves the top open.
 * Vitamin A is the sum of what is known, null when nothing is. RangeError when nothing is mixed.
 */
export function mixFoods(head: Pick<Food, 'id' | 'name' | 'form' | 'source' | 'known'>, mixed: readonly MixPart[]): Food {
  const shares = mixed.reduce((total, p) => total + p.share, 0);
  if (shares <= 0) throw new RangeError('nothing is mixed');
  const parts = mixed.map((p) => ({ food: p.food, share: p.share / shares }));
  const sum = (of: (f: Food) => number) => parts.reduce((total, p) => total + p.share * of(p.food), 0);
  const ends = (of: (f: Food) => Range): Range => ({ low: sum((f) => of(f).low), high: sum((f) => of(f).high) });
  const bones = parts.filter((p) => (p.food.bone?.share ?? 0) > 0).map((p) => p.food.bone?.basis ?? 'unknown');
  const bone = parts.some((p) => p.food.bone === null)
    ? null
    : { share: sum((f) => f.bone?.share ?? 0), basis: bones.every((b) => b === bones[0]) ? (bones[0] ?? 'wet') : 'unknown' };
  return {
    ...head,
    kcalPer100g: sum((f) => f.kcalPer100g),
    kcalMethod: 'recipe',
    analysis: {
      water: sum((f) => f.analysis.water),
      protein: sum((f) => f.analysis.protein),
      fat: sum((f) => f.analysis.fat),
      calciumMg: ends((f) => f.analysis.calciumMg),
      phosphorusMg: ends((f) => f.analysis.phosphorusMg),
      vitaminAIu: parts.every((p) => p.food.analysis.vitaminAIu === null) ? null : sum((f) => f.analysis.vitaminAIu ?? 0),
    },
    bone,
    holdsVegetables: parts.some((p) => p.food.holdsVegetables),
    recipe: parts.map((p) => ({ id: p.food.id, name: p.food.name, share: p.share })),
  };
}

/** The foods that the program brings along; the words name them. */
export type ShippedFoodId = 'food-generic-mix' | 'food-generic-plain' | `usda-${NdbNumber}`;

/** A shipped mix of plain ingredients as bought, bone ground in; the words call it by its id. */
function shippedMix(id: ShippedFoodId, form: FoodForm, parts: readonly (readonly [ndb: string, share: number])[]): Food {
  return mixFoods(
    {
      id,
      name: id,
      form,
      source: { by: 'shipped-mix' },
      known: 'computed',
    },
    parts.map(([ndb, share]) => ({ food: ingredientFood(ndb), share })),
  );
}

/**
 * One generic complete mix, for as long as the breeder has not written down her own: a tenth bone, a twentieth liver, a tenth vegetables.
 * The recipe is our own; its figures are computed from the table. The label of the real food is always better.
 */
export const DEFAULT_FOOD: Food = shippedMix('food-generic-mix', 'complete mix', [
  ['05084', 0.28],
  ['23572', 0.3],
  ['13321', 0.27],
  ['13325', 0.05],
  ['11124', 0.05],
  ['11233', 0.05],
]);

/** The same without vegetables, for days of plain mixes: greens are added to it. The recipe is our own. */
export const PLAIN_FOOD: Food = shippedMix('food-generic-plain', 'plain mix', [
  ['05084', 0.28],
  ['23572', 0.32],
  ['13321', 0.35],
  ['13325', 0.05],
]);
