/** "Where this number comes from": the worked sum of a ration, line by line, as codes and figures. */

import { ageInMonths } from '../calendar/age.ts';
import { ageInDays, type CivilDate } from '../calendar/day.ts';
import { MEAL_NAMES } from '../food/bowls.ts';
import {
  boneFromCalcium,
  calciumPer1000Kcal,
  calciumToPhosphorus,
  type FoodSource,
  type NamedFood,
  type Range,
} from '../food/food.ts';
import { BONE_CALCIUM, type BoneBasis } from '../reference/feeding/bone.ts';
import { ENERGY_STEPS, GROWN_ENERGY, RESTING_ENERGY } from '../reference/feeding/energy.ts';
import type { Known } from '../reference/feeding/known.ts';
import { CALCIUM_LIMITS, type Limits } from '../reference/feeding/limits.ts';
import { type Amount, amountOn } from './amount.ts';
import {
  ADULT_FACTORS,
  adultEnergy,
  GROWTH_SOURCES,
  type GrowthMethod,
  growthEnergyKlein,
  growthEnergyNrc,
  growthEnergyOldFediaf,
  partOfAdult,
  restingEnergy,
  restingEnergyLinear,
} from './energy.ts';
import { growthOf } from './nutrient-findings.ts';
import { type DayRation, type RationInput, rationOn, treatsAsFood } from './ration.ts';
import type { HouseRules } from './rules.ts';

interface Line<Code extends string> {
  readonly code: Code;
  /** `own record` is what she weighed or wrote down herself. */
  readonly known: Known | 'own record';
}
/** `source` is published. */
type Cited<Code extends string> = Line<Code> & { readonly source: string };
type OfFood<Code extends string> = Line<Code> & { readonly food: NamedFood; readonly source: FoodSource };

/** A line of the sum. Shares are parts of 1, weights and food in grams, grown weights in kg, energy in kcal. */
export type ExplainedLine =
  | (Line<'age'> & { readonly born: CivilDate; readonly day: CivilDate })
  | (Line<'weight'> & { readonly grams: number })
  | (Line<'rule'> & { readonly rules: HouseRules; readonly share: number })
  | (Line<'share'> & { readonly share: number; readonly weightGrams: number; readonly grams: number })
  | Cited<'no-estimate'>
  | (Cited<'estimate'> & {
      readonly method: GrowthMethod;
      readonly kg: number;
      readonly adultKg: number;
      readonly p: number;
      readonly kcal: number;
    })
  | (Cited<'other-estimate'> & { readonly method: GrowthMethod; readonly kcal: number })
  | (Cited<'older-steps'> & { readonly kcal: number })
  /** `linear` is the same by the straight line; null outside of its weights. */
  | (Cited<'resting'> & { readonly kcal: number; readonly linear: number | null })
  | (Cited<'grown'> & { readonly adultKg: number; readonly quiet: number; readonly usual: number; readonly active: number })
  /** `estimateKcal` is null where the amount is not reckoned from energy; `floor` is the part of it that is the least. */
  | (Line<'amount'> & {
      readonly by: Amount['by'];
      readonly floor: number;
      readonly estimateKcal: number | null;
      readonly kcalPer100g: number;
      readonly grams: number;
    })
  | (Line<'treats'> & { readonly grams: number })
  | (Line<'bowls'> & { readonly grams: readonly number[]; readonly dayGrams: number; readonly changing: boolean })
  | (OfFood<'energy'> & { readonly kcalPer100g: number; readonly kcal: number; readonly part: number | null })
  | (OfFood<'calcium'> & { readonly range: Range; readonly published: Limits | null })
  /** Grams in the bowls of a day. */
  | (OfFood<'minerals-day'> & { readonly calcium: Range; readonly phosphorus: Range })
  | (OfFood<'ratio'> & { readonly range: Range })
  /** Grams of calcium in 100 g of bone, and per cent of the food that is bone. */
  | (Cited<'bone'> & { readonly basis: BoneBasis; readonly calcium: Range; readonly percent: Range });

/** The sum behind {@link rationOn}, in the order in which it is worked. */
export function explainRation(input: RationInput): ExplainedLine[] {
  const amount = amountOn(input);
  const ration = rationOn(input);
  return [
    ...theRule(input, amount),
    ...theEstimate(input, ration),
    theAmount(input, amount),
    ...theBowls(input, ration),
    ...theFood(input, ration),
  ];
}

function theRule(input: RationInput, amount: Amount): ExplainedLine[] {
  const { rules, born, day, weightGrams } = input;
  const share = amount.ruleShare;
  return [
    { code: 'age', born, day, known: 'own record' },
    { code: 'weight', grams: weightGrams, known: 'own record' },
    { code: 'rule', rules, share, known: 'common practice' },
    { code: 'share', share, weightGrams, grams: share * weightGrams, known: 'computed' },
  ];
}

function theEstimate({ weightGrams, adultKg, rules }: RationInput, ration: DayRation): ExplainedLine[] {
  const kg = weightGrams / 1000;
  const resting = { code: 'resting', kcal: restingEnergy(kg), linear: restingEnergyLinear(kg), ...RESTING_ENERGY } as const;
  if (adultKg === null || ration.estimateKcal === null)
    return [{ code: 'no-estimate', ...GROWTH_SOURCES[rules.growthMethod] }, resting];
  const p = partOfAdult(kg, adultKg);
  const method = rules.growthMethod;
  const other = method === 'nrc' ? 'klein' : 'nrc';
  const grown = (factor: number) => adultEnergy(adultKg, factor);
  return [
    { code: 'estimate', method, kg, adultKg, p, kcal: ration.estimateKcal, ...GROWTH_SOURCES[method] },
    {
      code: 'other-estimate',
      method: other,
      kcal: other === 'nrc' ? growthEnergyNrc(kg, p) : growthEnergyKlein(kg, p),
      ...GROWTH_SOURCES[other],
    },
    { code: 'older-steps', kcal: growthEnergyOldFediaf(kg, p), ...ENERGY_STEPS },
    resting,
    {
      code: 'grown',
      adultKg,
      quiet: grown(ADULT_FACTORS.quiet),
      usual: grown(ADULT_FACTORS.usual),
      active: grown(ADULT_FACTORS.active),
      ...GROWN_ENERGY,
    },
  ];
}

function theAmount({ rules, food }: RationInput, { by, estimateKcal, grams }: Amount): ExplainedLine {
  const byEnergy = by === 'energy' || by === 'floor';
  return {
    code: 'amount',
    by,
    floor: rules.energyFloor,
    estimateKcal: byEnergy ? estimateKcal : null,
    kcalPer100g: food.kcalPer100g,
    grams,
    known: 'common practice',
  };
}

function theBowls(input: RationInput, ration: DayRation): ExplainedLine[] {
  const { food } = input;
  const treats = treatsAsFood(input);
  return [
    ...(treats === 0 ? [] : [{ code: 'treats', grams: treats, known: 'common practice' } as const]),
    {
      code: 'bowls',
      grams: MEAL_NAMES.flatMap((name) => ration.meals[name] ?? []),
      dayGrams: ration.dayGrams,
      changing: ration.changing,
      known: 'computed',
    },
    {
      code: 'energy',
      kcalPer100g: food.kcalPer100g,
      kcal: ration.kcal,
      part: ration.estimateKcal === null ? null : ration.kcal / ration.estimateKcal,
      food,
      source: food.source,
      known: food.known,
    },
  ];
}

function theFood({ food, adultKg, rules, born, day }: RationInput, { dayGrams }: DayRation): ExplainedLine[] {
  const { stage, size } = growthOf(adultKg, ageInDays(born, day));
  const limits = CALCIUM_LIMITS[stage][size];
  const bone = food.bone ?? { ...boneFromCalcium(food.analysis.calciumMg.low, 'unknown'), basis: 'unknown' as const };
  const share = 'share' in bone ? { low: bone.share, high: bone.share } : bone;
  const basis = BONE_CALCIUM[bone.basis];
  const of = { food, source: food.source, known: food.known };
  const grams = ({ low, high }: Range) => ({ low: (low * dayGrams) / 100_000, high: (high * dayGrams) / 100_000 });
  const aDay: ExplainedLine[] = [
    { code: 'minerals-day', calcium: grams(food.analysis.calciumMg), phosphorus: grams(food.analysis.phosphorusMg), ...of },
  ];
  return [
    {
      code: 'calcium',
      range: calciumPer1000Kcal(food),
      published: ageInMonths(born, day) < rules.adultMonths ? limits : null,
      ...of,
    },
    ...aDay,
    { code: 'ratio', range: calciumToPhosphorus(food), ...of },
    {
      code: 'bone',
      basis: bone.basis,
      calcium: { low: basis.low * 100, high: basis.high * 100 },
      percent: { low: share.low * 100, high: share.high * 100 },
      source: basis.source,
      known: basis.known,
    },
  ];
}
