/**
 * Where the house rule and the published numbers part: a value for each, in calm words, with one thing that mends it. Nothing is changed behind
 * the breeder's back, and the puppy's own gain is the judge.
 */

import { ageInMonths } from '../calendar/age.ts';
import { ageInDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import { capital } from '../calendar/words.ts';
import { mealCount } from '../food/bowls.ts';
import { percentText, plain, rangeText } from '../food/figures.ts';
import {
  boneCalciumMg,
  calciumPer1000Kcal,
  calciumToPhosphorus,
  type Food,
  liverLimit,
  per1000Kcal,
  type Range,
} from '../food/food.ts';
import type { Known } from '../reference/feeding/known.ts';
import {
  CALCIUM_LIMITS,
  EARLY_GROWTH_DAYS,
  FAT_LIMIT,
  LARGE_ADULT_KG,
  type Limits,
  PROTEIN_LIMITS,
  RATIO_LIMITS,
  VITAMIN_A_LIMIT,
} from '../reference/feeding/limits.ts';
import { ingredient } from '../reference/feeding/usda.ts';
import { foodText } from '../units/food.ts';
import { densityForShare, ESTIMATE_BOUNDS, GROWTH_SOURCES, type GrowthMethod, OWN_BOUNDS, shareForEnergy } from './energy.ts';
import { keepingOf, thawHours } from './keeping.ts';
import { type DayRation, type RationInput, rationOn, treatShareOf, treatsAsFood } from './ration.ts';
import { type HouseRules, houseRulesSchema } from './rules.ts';

export type FindingCode =
  | 'energy-low'
  | 'energy-high'
  | 'treats-high'
  | 'calcium-low'
  | 'calcium-high'
  | 'ratio-low'
  | 'ratio-high'
  | 'bone-aim'
  | 'vitamin-a'
  | 'protein-low'
  | 'fat-low'
  | 'freeze-dried'
  | 'extra-water'
  | 'greens'
  | 'bone-under'
  | 'bone-over'
  | 'mixes-apart'
  | 'meals-few'
  | 'keeping-long'
  | 'thaw-long'
  | 'thaw-short'
  | 'weight-old';

/** One rule set to another figure: what the one action writes. */
export interface RuleChange {
  readonly key: 'shareYoung' | 'shareMiddle' | 'shareAdult' | 'boneShare' | 'fourMealsUntilWeeks' | 'keepHours' | 'thawHours';
  readonly value: number;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: 'note' | 'caution' | 'warning';
  /** What the sentence is made of, by name; units in the name. */
  readonly numbers: Readonly<Record<string, number>>;
  readonly sentence: string;
  /** One thing to do, or null when there is nothing. */
  readonly mend: string | null;
  /** The rule that mends it, where one does; the breeder takes it or not. */
  readonly change?: RuleChange;
  readonly source: string;
  readonly known: Known;
}

export interface FindingsInput extends RationInput {
  /** What the puppy is called. */
  readonly name: string;
  /** Whether its gain follows the expected band; null when that can't be said. */
  readonly gainInBand: boolean | null;
  /** Day of the weight that is used; null when it is not a weighing. */
  readonly weighedOn: CivilDate | null;
}

const ENERGY_SOURCES: Readonly<Record<GrowthMethod, Pick<Finding, 'source' | 'known'>>> = {
  klein: { ...GROWTH_SOURCES.klein, source: `${GROWTH_SOURCES.klein.source}. ${OWN_BOUNDS}` },
  nrc: {
    ...GROWTH_SOURCES.nrc,
    source: `${GROWTH_SOURCES.nrc.source}, which runs 20 to 28 % above what pet puppies ate. ${OWN_BOUNDS}`,
  },
};
/** What a mend aims at: the estimate is an average, so the safe side of it. */
const ENERGY_AIM = 0.9;
/** A share over this is more than a small stomach takes well; then a richer mix comes first. Our own bound. */
const BIG_SHARE = 0.1;
const OLD_WEIGHT_DAYS = 4;
const FOUR_MEALS_NORM_WEEKS = 12;
/** Thawing is judged for the pack that the trade speaks of: a pound. */
const POUND_KG = 0.454;

/** Every finding about the ration of one weaned puppy on one day; none when all is within bounds. */
export function findings(input: FindingsInput): Finding[] {
  const ration = rationOn(input);
  const growing = ageInMonths(input.born, input.day) < input.rules.adultMonths;
  return [
    growing ? weightOld(input) : null,
    energy(input, ration),
    treatsHigh(input),
    ...(growing ? minerals(input) : []),
    vitaminAFinding(input.food),
    mealsFew(input, ration),
    keepingLong(input),
    thawing(input),
  ].filter((f) => f !== null);
}

function weightOld({ name, day, weighedOn }: FindingsInput): Finding | null {
  const days = weighedOn === null ? 0 : daysBetween(weighedOn, day);
  if (days <= OLD_WEIGHT_DAYS) return null;
  return {
    code: 'weight-old',
    severity: 'caution',
    numbers: { days },
    sentence: `The last weight of ${name} is ${days} days old. A growing puppy outgrows its ration in that time.`,
    mend: `Weigh ${name} today.`,
    source: 'our own bound of 4 days',
    known: 'common practice',
  };
}

function energy(input: FindingsInput, ration: DayRation): Finding | null {
  const { food, weightGrams, gainInBand } = input;
  if (ration.estimateKcal === null) return null;
  const kcal = ration.kcal + (treatsAsFood(input) * food.kcalPer100g) / 100;
  const part = kcal / ration.estimateKcal;
  if (part >= ESTIMATE_BOUNDS.low && part <= ESTIMATE_BOUNDS.high) return null;
  const aim = ration.estimateKcal * ENERGY_AIM;
  const kg = weightGrams / 1000;
  const numbers = {
    part,
    kcal,
    estimateKcal: ration.estimateKcal,
    share: ration.share,
    shareForAim: shareForEnergy(aim, kg, food.kcalPer100g),
    densityForAim: densityForShare(aim, kg, ration.share),
  };
  const low = part < 1;
  return {
    code: low ? 'energy-low' : 'energy-high',
    severity: gainInBand === null ? 'caution' : gainInBand ? 'note' : 'warning',
    numbers,
    ...(low ? lowWords(input, numbers) : highWords(input, numbers)),
    ...shareChange(input, numbers, low),
    ...ENERGY_SOURCES[input.rules.growthMethod],
  };
}

/** A tenth more or less of the share that holds at this age, but not past the estimate; none where the scale says that all is well. */
function shareChange(input: FindingsInput, n: EnergyNumbers, low: boolean): Pick<Finding, 'change'> {
  const { rules, born, day, gainInBand } = input;
  if (rules.basis !== 'share' || (low && (gainInBand === true || n.shareForAim > BIG_SHARE))) return {};
  const months = ageInMonths(born, day);
  const key = months < rules.youngUntilMonths ? 'shareYoung' : months < rules.adultMonths ? 'shareMiddle' : 'shareAdult';
  const step = rules[key] * (low ? 1.1 : 0.9);
  const value = low ? Math.min(step, Math.max(n.shareForAim, rules[key])) : Math.max(step, n.shareForAim / ENERGY_AIM);
  return changeOf(rules, key, Math.round(value * 1000) / 1000);
}

/** The change as a part of a finding, if it changes anything and the rules still hold together with it. */
function changeOf(rules: HouseRules, key: RuleChange['key'], value: number): Pick<Finding, 'change'> {
  const fits = rules[key] !== value && houseRulesSchema.safeParse({ ...rules, [key]: value }).success;
  return fits ? { change: { key, value } } : {};
}

interface EnergyNumbers {
  readonly part: number;
  readonly share: number;
  readonly shareForAim: number;
  readonly densityForAim: number;
}

/** A mix of less energy, in kcal per 100 g, is called lean. Our own word. */
const LEAN_MIX = 200;

function lowWords({ name, food, gainInBand, adultKg }: FindingsInput, n: EnergyNumbers): Pick<Finding, 'sentence' | 'mend'> {
  const lean = food.kcalPer100g < LEAN_MIX ? 'This mix is lean. ' : '';
  const fact = `${lean}At ${percentText(n.share, 1)} ${name} gets about ${percentText(n.part, 0)} of the published estimate.`;
  if (gainInBand === true) return { sentence: `${fact} ${name} is gaining as expected, and the scale decides.`, mend: null };
  const slow = (adultKg ?? 0) > LARGE_ADULT_KG ? ' Slow growth is safe growth in a big dog.' : '';
  return {
    sentence: gainInBand === false ? `${fact} ${name} is not gaining as expected.` : `${fact}${slow}`,
    mend: lowMend(name, gainInBand, n),
  };
}

function lowMend(name: string, gainInBand: boolean | null, n: EnergyNumbers): string {
  // Down to the half percent, but never to the share that is fed already.
  const share = Math.max(Math.floor(n.shareForAim * 200) / 200, Math.floor(n.share * 200) / 200 + 0.005);
  const richer = `a richer mix, about ${Math.round(n.densityForAim / 10) * 10} kcal per 100 g`;
  const todo =
    share <= BIG_SHARE
      ? `raise to ${percentText(share, 1)}, a tenth at a time, or choose ${richer}`
      : `choose a richer mix, and raise a tenth at a time; with this mix the estimate would take about ${percentText(share, 1)}, a lot for a small stomach`;
  return gainInBand === false ? `${capital(todo)}.` : `If ${name} is not gaining as expected: ${todo}.`;
}

function highWords({ name, gainInBand }: FindingsInput, n: EnergyNumbers): Pick<Finding, 'sentence' | 'mend'> {
  const fact = `At ${percentText(n.share, 1)} ${name} gets about ${percentText(n.part, 0)} of the published estimate. The common mistake is too much food.`;
  if (gainInBand === true)
    return {
      sentence: `${fact} ${name} is gaining as expected.`,
      mend: 'Feel the ribs: if they are hard to find, take off a tenth.',
    };
  return {
    sentence: fact,
    mend: `Take off a tenth, and look again in a week. The estimate is met at about ${percentText(n.shareForAim / ENERGY_AIM, 1)}.`,
  };
}

function treatsHigh(input: FindingsInput): Finding | null {
  const share = treatShareOf(input);
  if (input.treats == null || share === 0 || share <= input.rules.treatShare) return null;
  const most = (input.treats.grams * input.rules.treatShare) / share;
  return {
    code: 'treats-high',
    severity: 'note',
    numbers: { share, most: input.rules.treatShare },
    sentence: `Treats are ${percentText(share, 0)} of the energy of the day.`,
    mend: `Keep them to ${percentText(input.rules.treatShare, 0)}: about ${foodText(most, input.unit ?? 'g')} of these treats.`,
    source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, p. 315: at most a tenth',
    known: 'seen',
  };
}

function minerals(input: FindingsInput): (Finding | null)[] {
  const growth = growthOf(input.adultKg, ageInDays(input.born, input.day));
  return [
    ...nutrientFindings(input.food, growth),
    boneAim(input, CALCIUM_LIMITS[growth.stage][growth.size], growth.size === 'large' ? 'warning' : 'caution'),
  ];
}

/** Which limits hold: by the weight it will have, and early or late in growth. */
export interface Growth {
  readonly size: 'usual' | 'large';
  readonly stage: 'early' | 'late';
}

/** Which published limits fit: by expected adult weight in kg (null counts as usual) and age in whole days. */
export function growthOf(adultKg: number | null, ageDays: number): Growth {
  return { size: (adultKg ?? 0) > LARGE_ADULT_KG ? 'large' : 'usual', stage: ageDays < EARLY_GROWTH_DAYS ? 'early' : 'late' };
}

/** What a growing dog would lack or have too much of, were this food all it ate. Vitamin A is on its own: {@link vitaminAFinding}. */
export function nutrientFindings(food: Food, { size, stage }: Growth): Finding[] {
  const severity = size === 'large' ? 'warning' : 'caution';
  return [
    calciumFinding(food, CALCIUM_LIMITS[stage][size], severity),
    ratioFinding(food, RATIO_LIMITS[size], severity),
    leastFinding(food, 'protein-low', food.analysis.protein, PROTEIN_LIMITS[stage], 'protein'),
    leastFinding(food, 'fat-low', food.analysis.fat, FAT_LIMIT, 'fat'),
  ].filter((f) => f !== null);
}

function leastFinding(
  food: Food,
  code: 'protein-low' | 'fat-low',
  per100g: number,
  limit: Pick<Limits, 'low' | 'source' | 'known'>,
  what: string,
): Finding | null {
  const has = per1000Kcal(per100g, food.kcalPer100g);
  // A food written down with its energy alone says nothing of what is in it.
  if (has >= limit.low || food.analysis.protein + food.analysis.fat === 0) return null;
  return {
    code,
    severity: 'caution',
    numbers: { has, least: limit.low },
    sentence: `${food.name}: ${plain(has, 0)} g of ${what} per 1000 kcal. Published for this age: at least ${plain(limit.low, 1)}.`,
    mend: what === 'protein' ? 'Put a leaner meat with it.' : 'Put a fatter meat with it.',
    source: limit.source,
    known: limit.known,
  };
}

/** Which side of the limits a range is on, judged by its nearer end: outside only when all of it is. */
export function sideOf(range: Range, limits: Pick<Limits, 'low' | 'high'>): 'low' | 'inside' | 'high' {
  if (range.high < limits.low) return 'low';
  return range.low > limits.high ? 'high' : 'inside';
}

function calciumFinding(food: Food, limits: Limits, severity: Finding['severity']): Finding | null {
  const range = calciumPer1000Kcal(food);
  const side = sideOf(range, limits);
  if (side === 'inside') return null;
  const fact = `${food.name}: ${rangeText(range, 1)} g of calcium per 1000 kcal. Published for this age: ${limits.low.toFixed(1)} to ${limits.high.toFixed(1)}.`;
  return {
    code: side === 'low' ? 'calcium-low' : 'calcium-high',
    severity,
    numbers: { low: range.low, high: range.high, least: limits.low, most: limits.high },
    sentence:
      side === 'low' ? `${fact} Too little calcium bends growing bones.` : `${fact} Too much calcium harms growing bones.`,
    mend:
      side === 'low'
        ? 'Use a mix with ground bone, or ask your vet about calcium. Do not feed it boneless.'
        : 'Feed a mix with less bone, and no bones beside it.',
    source: limits.source,
    known: limits.known,
  };
}

function ratioFinding(food: Food, limits: Limits, severity: Finding['severity']): Finding | null {
  const range = calciumToPhosphorus(food);
  const side = sideOf(range, limits);
  if (side === 'inside') return null;
  return {
    code: side === 'low' ? 'ratio-low' : 'ratio-high',
    severity,
    numbers: { low: range.low, high: range.high, least: limits.low, most: limits.high },
    sentence: `${food.name}: calcium to phosphorus is ${rangeText(range, 2)} to 1. Published: ${limits.low.toFixed(1)} to ${limits.high.toFixed(1)}.`,
    mend: side === 'low' ? 'More ground bone, or a mix that has it.' : 'Less bone, more meat.',
    source: limits.source,
    known: limits.known,
  };
}

/** The house rule's aim for bone in the whole diet, as calcium: a quarter of wet bone is about twice what is published. */
function boneAim({ rules, food }: FindingsInput, limits: Limits, severity: Finding['severity']): Finding | null {
  const mg = boneCalciumMg(rules.boneShare, 'wet');
  const range = { low: per1000Kcal(mg.low / 1000, food.kcalPer100g), high: per1000Kcal(mg.high / 1000, food.kcalPer100g) };
  if (sideOf(range, limits) !== 'high') return null;
  // The mend keeps the whole range inside the limit, not only its nearer end.
  const most = (rules.boneShare * limits.high) / range.high;
  return {
    code: 'bone-aim',
    severity,
    numbers: {
      boneShare: rules.boneShare,
      low: range.low,
      high: range.high,
      most: limits.high,
      shareAtMost: most,
      inFood: food.bone?.share ?? 0,
    },
    sentence: `Bone at ${percentText(rules.boneShare, 0)} of the diet, with the bone in the mix counted, is about ${rangeText(range, 1)} g of calcium per 1000 kcal. Published limits for this age end at ${limits.high.toFixed(1)}.`,
    mend: `Aim at ${percentText(Math.floor(most * 100) / 100, 0)} or less, the mix included. Grey, white or crumbly stool: less bone.`,
    ...changeOf(rules, 'boneShare', Math.floor(most * 100) / 100),
    source: `${limits.source}; calcium of wet bone 4 to 6 %, trade tables (second-hand, weak)`,
    known: limits.known,
  };
}

/** Vitamin A over the published upper limit: too much liver. */
export function vitaminAFinding(food: Food): Finding | null {
  if (food.analysis.vitaminAIu === null) return null;
  const iu = per1000Kcal(food.analysis.vitaminAIu, food.kcalPer100g);
  if (iu <= VITAMIN_A_LIMIT.high) return null;
  const liver = ingredient('13325');
  const most = liverLimit(VITAMIN_A_LIMIT.high, food.kcalPer100g, liver.vitaminAIu ?? 0);
  return {
    code: 'vitamin-a',
    severity: 'caution',
    numbers: { iuPer1000Kcal: iu, most: VITAMIN_A_LIMIT.high, beefLiverShareAtMost: most },
    sentence: `${food.name}: ${Math.round(iu / 100) * 100} IU of vitamin A per 1000 kcal. The published upper limit is ${VITAMIN_A_LIMIT.high}.`,
    mend: `Less liver: with beef liver, under ${percentText(most, 0)} of the mix.`,
    source: VITAMIN_A_LIMIT.source,
    known: VITAMIN_A_LIMIT.known,
  };
}

function mealsFew({ name, born, day, rules }: FindingsInput, ration: DayRation): Finding | null {
  const weeks = ageInDays(born, day) / 7;
  const count = mealCount(ration.meals);
  if (weeks >= FOUR_MEALS_NORM_WEEKS || count >= 4) return null;
  return {
    code: 'meals-few',
    severity: 'note',
    numbers: { meals: count, weeks },
    sentence: `${name} gets ${count === 3 ? 'three' : 'two'} meals a day. The published norm is four meals until ${FOUR_MEALS_NORM_WEEKS} weeks; small breeds stay at three or four for longer.`,
    mend: `House rules: four meals until ${FOUR_MEALS_NORM_WEEKS} weeks.`,
    ...changeOf(rules, 'fourMealsUntilWeeks', FOUR_MEALS_NORM_WEEKS),
    source: 'kennel-club and textbook norm',
    known: 'from memory',
  };
}

function keepingLong({ rules }: FindingsInput): Finding | null {
  const { houseHours, official, longer } = keepingOf(rules);
  if (!longer) return null;
  return {
    code: 'keeping-long',
    severity: 'note',
    numbers: { houseHours, officialHours: official.hours },
    sentence: `Your rule keeps thawed food ${houseHours} hours. The official time is ${official.hours} hours (${official.where}).`,
    mend: `Use it within ${official.hours} hours of thawing.`,
    ...changeOf(rules, 'keepHours', official.hours),
    source: official.source,
    known: official.known,
  };
}

function thawing({ rules }: FindingsInput): Finding | null {
  const published = thawHours(POUND_KG);
  if (rules.thawHours === published) return null;
  const long = rules.thawHours > published;
  return {
    code: long ? 'thaw-long' : 'thaw-short',
    severity: long ? 'note' : 'caution',
    numbers: { houseHours: rules.thawHours, publishedHours: published },
    sentence: `Your rule thaws a pack in ${rules.thawHours} hours. Published: ${published} hours in the refrigerator for up to 2.25 kg.`,
    mend: long
      ? 'The keeping time begins when the pack is thawed, which may be sooner than you count.'
      : 'Take it out a day ahead. Never thaw on the counter.',
    ...changeOf(rules, 'thawHours', published),
    source: 'USDA Food Safety and Inspection Service, "The Big Thaw": 24 h for each 4 to 5 lb',
    known: 'second-hand',
  };
}
