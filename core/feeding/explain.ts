/** "Where this number comes from": the worked sum of a ration, line by line. */

import { ageInMonths, ageInWords } from '../calendar/age.ts';
import { ageInDays } from '../calendar/day.ts';
import { MEAL_NAMES } from '../food/bowls.ts';
import { percentText, plain, rangeText } from '../food/figures.ts';
import { boneFromCalcium, calciumPer1000Kcal, calciumToPhosphorus } from '../food/food.ts';
import { BONE_CALCIUM } from '../reference/feeding/bone.ts';
import type { Known } from '../reference/feeding/known.ts';
import { CALCIUM_LIMITS, EARLY_GROWTH_DAYS, LARGE_ADULT_KG } from '../reference/feeding/limits.ts';
import { foodText } from '../units/food.ts';
import { isMetric, massText } from '../units/mass.ts';
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
import { type DayRation, type RationInput, rationOn, treatsAsFood } from './ration.ts';

export interface ExplainedLine {
  readonly what: string;
  readonly figure: string;
  readonly source: string;
  /** `own record` is what she weighed or wrote down herself. */
  readonly known: Known | 'own record';
}

const HOUSE_RULES = 'house rules; common practice, no source';

/** The sum behind {@link rationOn}, in the order in which it is worked. */
export function explainRation(input: RationInput): ExplainedLine[] {
  const amount = amountOn(input);
  const ration = rationOn(input);
  return [
    ...theRule(input, amount),
    ...theEstimate(input, ration),
    ...theAmount(input, amount),
    ...theBowls(input, ration),
    ...theFood(input),
  ];
}

function theRule(input: RationInput, amount: Amount): ExplainedLine[] {
  const { rules, born, day, weightGrams } = input;
  const shares = `${percentText(rules.shareYoung, 1)} until ${rules.youngUntilMonths} months, ${percentText(rules.shareMiddle, 1)} at ${rules.middleMonths}, ${percentText(rules.shareAdult, 1)} from ${rules.adultMonths}`;
  return [
    { what: 'Age', figure: ageInWords(born, day), source: 'date of birth', known: 'own record' },
    {
      what: 'Weight',
      figure: massText(weightGrams, weightUnit(input)),
      source: 'the scale, or the forecast from it',
      known: 'own record',
    },
    {
      what: `House rule: ${shares}; between these an even glide`,
      figure: percentText(amount.ruleShare, 2),
      source: HOUSE_RULES,
      known: 'common practice',
    },
    {
      what: 'Share of the weight',
      figure: `${percentText(amount.ruleShare, 2)} × ${massText(weightGrams, weightUnit(input))} = ${plain(amount.ruleShare * weightGrams, 1)}\u00a0g`,
      source: 'computed',
      known: 'computed',
    },
  ];
}

function theEstimate({ weightGrams, adultKg, rules }: RationInput, ration: DayRation): ExplainedLine[] {
  const kg = weightGrams / 1000;
  const linear = restingEnergyLinear(kg);
  const resting: ExplainedLine = {
    what: 'Resting need, for comparison: 70 × kg^0.75',
    figure: `${kcal(restingEnergy(kg))}${linear === null ? '' : `; by the straight line 30 × kg + 70: ${kcal(linear)}`}`,
    source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 5-2',
    known: 'seen',
  };
  if (adultKg === null || ration.estimateKcal === null) {
    return [
      {
        what: 'Published estimate',
        figure: 'not without an expected adult weight',
        ...GROWTH_SOURCES[rules.growthMethod],
      },
      resting,
    ];
  }
  const p = partOfAdult(kg, adultKg);
  return [
    ...estimates(kg, p, adultKg, ration.estimateKcal, rules.growthMethod),
    {
      what: 'The same by the older steps of 210, 175, 140 kcal × kg^0.75',
      figure: kcal(growthEnergyOldFediaf(kg, p)),
      source: 'FEDIAF guidelines to 2020, in Veterinary Nursing Journal 37(4), 2022, p. 28, table 2',
      known: 'second-hand',
    },
    resting,
    {
      what: `Grown, at ${plain(adultKg, 1)} kg: 95 to 130 × kg^0.75`,
      figure: `${kcal(adultEnergy(adultKg, ADULT_FACTORS.quiet))} quiet, ${kcal(adultEnergy(adultKg, ADULT_FACTORS.usual))} usual, ${kcal(adultEnergy(adultKg, ADULT_FACTORS.active))} active`,
      source: 'FEDIAF guidelines (95, 110); NRC 2006 (130)',
      known: 'seen',
    },
  ];
}

/** The equation that the rules chose first, with its p, then the other. */
function estimates(kg: number, p: number, adultKg: number, kcalADay: number, method: GrowthMethod): ExplainedLine[] {
  const sum = `p = ${plain(kg, 2)} / ${plain(adultKg, 1)} = ${plain(p, 2)}; ${kcal(kcalADay)}`;
  const klein = {
    what: 'growth: (254.1 − 135.0 p) × kg^0.75, p = weight over expected adult weight',
    kcal: growthEnergyKlein(kg, p),
    ...GROWTH_SOURCES.klein,
  };
  const nrc = {
    what: 'growth by NRC 2006: 130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1), which runs 20 to 28 % above what pet puppies ate',
    kcal: growthEnergyNrc(kg, p),
    ...GROWTH_SOURCES.nrc,
  };
  const [chosen, other] = method === 'nrc' ? [nrc, klein] : [klein, nrc];
  return [
    { what: `Published estimate for ${chosen.what}`, figure: sum, source: chosen.source, known: chosen.known },
    { what: `For comparison, ${other.what}`, figure: kcal(other.kcal), source: other.source, known: other.known },
  ];
}

const BASIS_WORDS: Readonly<Record<Amount['by'], string>> = {
  share: 'The amount: the share of the weight',
  energy: 'The amount: the estimate over the energy of the food',
  floor: 'The amount: the share would be under the floor, so the floor',
  most: 'The amount: a fifth of the weight, which is the most',
};

function theAmount({ rules, food }: RationInput, amount: Amount): ExplainedLine[] {
  const sum =
    amount.estimateKcal === null || (amount.by !== 'energy' && amount.by !== 'floor')
      ? ''
      : `${amount.by === 'floor' ? `${percentText(rules.energyFloor, 0)} of ` : ''}${kcal(amount.estimateKcal)} / ${plain(food.kcalPer100g, 0)} × 100 = `;
  return [
    {
      what: BASIS_WORDS[amount.by],
      figure: `${sum}${plain(amount.grams, 1)}\u00a0g`,
      source: HOUSE_RULES,
      known: 'common practice',
    },
  ];
}

function theBowls(input: RationInput, ration: DayRation): ExplainedLine[] {
  const unit = input.unit ?? 'g';
  const bowls = MEAL_NAMES.flatMap((name) => ration.meals[name] ?? []).map((grams) => foodText(grams, unit));
  const ofEstimate = ration.estimateKcal === null ? '' : `, ${percentText(ration.kcal / ration.estimateKcal, 0)} of the estimate`;
  const treats = treatsAsFood(input);
  const off: ExplainedLine[] =
    treats === 0
      ? []
      : [
          {
            what: 'Treats come off, by their energy',
            figure: `${plain(treats, 1)}\u00a0g`,
            source: HOUSE_RULES,
            known: 'common practice',
          },
        ];
  return [
    ...off,
    {
      what: `Bowls, each rounded to what can be weighed; the day is their sum${ration.changing ? '. Midday is being left off' : ''}`,
      figure: `${bowls.join(' + ')} = ${foodText(ration.dayGrams, unit)}`,
      source: 'computed',
      known: 'computed',
    },
    {
      what: `Energy of the bowls, at ${plain(input.food.kcalPer100g, 0)} kcal per 100 g`,
      figure: `${kcal(ration.kcal)}${ofEstimate}`,
      source: `${input.food.name}: ${input.food.source}`,
      known: input.food.known,
    },
  ];
}

function theFood({ food, adultKg, rules, born, day }: RationInput): ExplainedLine[] {
  const stage = ageInDays(born, day) < EARLY_GROWTH_DAYS ? 'early' : 'late';
  const limits = CALCIUM_LIMITS[stage][(adultKg ?? 0) > LARGE_ADULT_KG ? 'large' : 'usual'];
  const published =
    ageInMonths(born, day) < rules.adultMonths
      ? `; published ${limits.low.toFixed(1)} to ${limits.high.toFixed(1)} (${limits.source})`
      : '';
  const bone = food.bone ?? { ...boneFromCalcium(food.analysis.calciumMg.low, 'unknown'), basis: 'unknown' as const };
  const share = 'share' in bone ? { low: bone.share, high: bone.share } : bone;
  const basis = BONE_CALCIUM[bone.basis];
  return [
    {
      what: `Calcium per 1000 kcal${published}`,
      figure: `${rangeText(calciumPer1000Kcal(food), 1)}\u00a0g`,
      source: food.source,
      known: food.known,
    },
    {
      what: 'Calcium to phosphorus',
      figure: `${rangeText(calciumToPhosphorus(food), 2)} to 1`,
      source: food.source,
      known: food.known,
    },
    {
      what: `Bone, ${bone.basis === 'unknown' ? 'not said how weighed' : `weighed ${bone.basis}`}: ${rangeText({ low: basis.low * 100, high: basis.high * 100 }, 1)} g of calcium in 100 g of it`,
      figure: `${rangeText({ low: share.low * 100, high: share.high * 100 }, 0)}\u00a0% of the food`,
      source: basis.source,
      known: basis.known,
    },
  ];
}

function weightUnit(input: RationInput): 'kg' | 'lboz' {
  return input.unit === undefined || isMetric(input.unit) ? 'kg' : 'lboz';
}

function kcal(figure: number): string {
  return `${plain(figure, 0)}\u00a0kcal`;
}
