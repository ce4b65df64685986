/**
 * What stands on a pack: read as fed, whatever it was written on, and checked against itself. A figure that can't be is stopped; one that is
 * unlikely is asked about and kept.
 */
import { z } from 'zod';
import { energyDensity, type FoodForm, LABEL_BASES } from './food.ts';

export const ENERGY_METHODS = ['label', 'raw 4/9/4', 'modified Atwater', 'NRC four-step'] as const;
export type LabelMethod = (typeof ENERGY_METHODS)[number];

const figure = z.number().min(0).max(400);

export const labelSchema = z.strictObject({
  basis: z.enum(LABEL_BASES),
  /** Always per cent as fed, whatever the basis. */
  water: z.number().min(0).max(100).nullable(),
  protein: figure,
  fat: figure,
  fibre: figure.nullable(),
  ash: figure.nullable(),
  calcium: figure.nullable(),
  phosphorus: figure.nullable(),
  /** IU per kg as fed. */
  vitaminAPerKg: z.number().min(0).max(10_000_000).nullable(),
  /** As it stands on the pack, as fed. */
  kcalPer100g: z.number().min(1).max(10_000).nullable(),
  /** Which energy is reckoned with; `label` is the figure of the pack. */
  method: z.enum(ENERGY_METHODS),
});
export type Label = z.infer<typeof labelSchema>;

/** Per 100 g as fed: grams, calcium and phosphorus in mg, null where the pack is silent. */
export interface AsFed {
  readonly water: number;
  /** Water is what the rest leaves, since the pack is silent. */
  readonly waterGuessed: boolean;
  readonly protein: number;
  readonly fat: number;
  readonly fibre: number;
  readonly ash: number;
  readonly calciumMg: number | null;
  readonly phosphorusMg: number | null;
  readonly vitaminAIu: number | null;
}

/** The pack's figures as fed; null when that can't be said: dry matter without the water, 1000 kcal without the energy. */
export function asFed(label: Label): AsFed | null {
  const part = partAsFed(label);
  if (part === null) return null;
  const of = (n: number | null) => (n === null ? null : n * part);
  const [protein, fat, fibre, ash] = [label.protein * part, label.fat * part, of(label.fibre) ?? 0, of(label.ash) ?? 0];
  const mg = (n: number | null) => (n === null ? null : n * part * 1000);
  return {
    water: label.water ?? Math.max(0, 100 - protein - fat - fibre - ash),
    waterGuessed: label.water === null,
    protein,
    fat,
    fibre,
    ash,
    calciumMg: mg(label.calcium),
    phosphorusMg: mg(label.phosphorus),
    vitaminAIu: label.vitaminAPerKg === null ? null : label.vitaminAPerKg / 10,
  };
}

/** Grams in 100 g as fed for one of what the pack counts in. */
function partAsFed({ basis, water, kcalPer100g }: Label): number | null {
  if (basis === 'as fed') return 1;
  if (basis === 'dry matter') return water === null ? null : (100 - water) / 100;
  return kcalPer100g === null ? null : kcalPer100g / 1000;
}

/** Energy in kcal per 100 g by each method; null where it can't be reckoned. */
export function labelEnergies(label: Label): Readonly<Record<LabelMethod, number | null>> {
  const a = asFed(label);
  const by = (method: Exclude<LabelMethod, 'label'>) => (a === null || a.water >= 100 ? null : energyDensity(method, a));
  return {
    label: label.kcalPer100g,
    'raw 4/9/4': by('raw 4/9/4'),
    'modified Atwater': by('modified Atwater'),
    'NRC four-step': by('NRC four-step'),
  };
}

/** The published method that goes with a form: 4/9/4 for raw food, the NRC steps for dry food, modified Atwater for what else is prepared. */
export function methodFor(form: FoodForm): Exclude<LabelMethod, 'label'> {
  if (form === 'dry') return 'NRC four-step';
  return form === 'dehydrated' || form === 'freeze-dried' || form === 'milk replacer' || form === 'other'
    ? 'modified Atwater'
    : 'raw 4/9/4';
}

export type LabelField = Exclude<keyof Label, 'basis' | 'method'>;

export interface Check<Code extends string, Field extends string = LabelField> {
  readonly code: Code;
  /** `stop` is not taken; `doubt` is asked about and kept. */
  readonly severity: 'stop' | 'doubt';
  readonly field: Field;
}

/** What is wrong or unlikely about a pack. Parts in g, energy in kcal, both in 100 g of the food. */
export type LabelCheck =
  | Check<'no-water' | 'no-energy' | 'method-without-energy' | 'only-water' | 'nothing-in-it'>
  | (Check<'parts-over'> & { readonly sum: number; readonly perhaps: 'dry-matter' | 'per-cent' | null })
  | (Check<'too-rich'> & { readonly kcal: number; readonly most: number })
  | (Check<'energy-off'> & {
      readonly kcal: number;
      /** What its analysis gives, by a published method. */
      readonly reckoned: number;
      readonly method: LabelMethod;
      readonly perhaps: 'kilojoules' | 'kilogram' | null;
    })
  | (Check<'calcium-much'> & { readonly grams: number })
  | (Check<'minerals-over-ash'> & { readonly grams: number; readonly ash: number })
  | (Check<'water-guessed'> & { readonly dry: boolean })
  | (Check<'water-form'> & { readonly dry: boolean; readonly water: number });

/** Parts may come to so much over 100 by rounding on the pack. */
const ROUNDING = 0.5;
/** Energy on the pack may differ by this part from the energy of its analysis. Our own bound. */
const ENERGY_OFF = 0.15;
/** Pure fat. */
const RICHEST_KCAL = 900;
/** Kilojoules in a kilocalorie. */
export const KILOJOULE = 4.184;

/** What is wrong or unlikely about a pack's figures; empty when they agree with one another. */
export function labelChecks(label: Label, form: FoodForm): LabelCheck[] {
  const silent = missing(label);
  if (silent !== null) return [silent];
  const a = asFed(label);
  if (a === null) return [];
  return [
    partsOver(label, a),
    emptyFood(label, a),
    tooRich(label),
    energyOff(label, form, a),
    minerals(label, a),
    waterAndForm(form, a),
  ].filter((c) => c !== null);
}

function missing({ basis, water, kcalPer100g, method }: Label): LabelCheck | null {
  if (basis === 'dry matter' && water === null) return { code: 'no-water', severity: 'stop', field: 'water' };
  if (basis === 'dry matter' && water !== null && water >= 100) return { code: 'only-water', severity: 'stop', field: 'water' };
  if (basis === 'per 1000 kcal' && kcalPer100g === null) return { code: 'no-energy', severity: 'stop', field: 'kcalPer100g' };
  if (method === 'label' && kcalPer100g === null)
    return { code: 'method-without-energy', severity: 'stop', field: 'kcalPer100g' };
  return null;
}

function partsOver(label: Label, a: AsFed): LabelCheck | null {
  const sum = a.protein + a.fat + a.fibre + a.ash + (a.waterGuessed ? 0 : a.water);
  if (sum <= 100 + ROUNDING) return null;
  const perhaps =
    label.basis === 'as fed' && !a.waterGuessed && a.protein + a.fat > 100 - a.water
      ? 'dry-matter'
      : label.basis === 'per 1000 kcal'
        ? 'per-cent'
        : null;
  return { code: 'parts-over', severity: 'stop', field: 'protein', sum, perhaps };
}

function emptyFood(label: Label, a: AsFed): LabelCheck | null {
  if (a.protein + a.fat > 0 || label.method === 'label') return null;
  return { code: 'nothing-in-it', severity: 'stop', field: 'protein' };
}

function tooRich({ kcalPer100g }: Label): LabelCheck | null {
  if (kcalPer100g === null || kcalPer100g <= RICHEST_KCAL) return null;
  return { code: 'too-rich', severity: 'stop', field: 'kcalPer100g', kcal: kcalPer100g, most: RICHEST_KCAL };
}

function energyOff(label: Label, form: FoodForm, a: AsFed): LabelCheck | null {
  const method = methodFor(form);
  const reckoned = labelEnergies(label)[method];
  const kcal = label.kcalPer100g;
  // Without the water, carbohydrate is left out, so the analysis gives only the least.
  if (kcal === null || reckoned === null || reckoned <= 0 || (a.waterGuessed && kcal > reckoned)) return null;
  if (Math.abs(kcal / reckoned - 1) <= ENERGY_OFF) return null;
  const near = (times: number) => Math.abs(kcal / reckoned / times - 1) < ENERGY_OFF;
  const perhaps = near(KILOJOULE) ? 'kilojoules' : near(10) ? 'kilogram' : null;
  return { code: 'energy-off', severity: 'doubt', field: 'kcalPer100g', kcal, reckoned, method, perhaps };
}

/** Grams of calcium in 100 g beyond which a figure is a slip: bone with its marrow holds less. Our own bound. */
const MOST_CALCIUM = 10;
/** Per cent by which minerals may pass the ash, both being rounded on the pack. */
const ASH_ROUNDING = 0.05;

function minerals(label: Label, a: AsFed): LabelCheck | null {
  const calcium = (a.calciumMg ?? 0) / 1000;
  if (calcium > MOST_CALCIUM) return { code: 'calcium-much', severity: 'stop', field: 'calcium', grams: calcium };
  const both = calcium + (a.phosphorusMg ?? 0) / 1000;
  if (label.ash === null || both <= a.ash + ASH_ROUNDING) return null;
  return { code: 'minerals-over-ash', severity: 'doubt', field: 'calcium', grams: both, ash: a.ash };
}

const DRY_FORMS: readonly FoodForm[] = ['dry', 'dehydrated', 'freeze-dried'];

/** Per cent of water: a food that is dry has no more than the first, one that is raw no less than the second. Our own bounds. */
const MOST_WATER_DRY = 25;
const LEAST_WATER_RAW = 35;

function waterAndForm(form: FoodForm, a: AsFed): LabelCheck | null {
  const dry = DRY_FORMS.includes(form);
  if (a.waterGuessed) return { code: 'water-guessed', severity: dry ? 'stop' : 'doubt', field: 'water', dry };
  if (dry ? a.water <= MOST_WATER_DRY : a.water >= LEAST_WATER_RAW || form === 'milk replacer' || form === 'other') return null;
  return { code: 'water-form', severity: 'doubt', field: 'water', dry, water: a.water };
}
