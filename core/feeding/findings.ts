/**
 * Where the house rule and the published numbers part: a value for each, with one thing that mends it. Nothing is changed behind
 * the breeder's back, and the puppy's own gain is the judge.
 */

import { ageInMonths } from '../calendar/age.ts';
import { ageInDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import { MEAL_NAMES, type MealName, mealCount } from '../food/bowls.ts';
import { boneCalciumMg, type Food, per1000Kcal } from '../food/food.ts';
import { OLD_WEIGHT_DAYS } from '../growth/puppy-weights.ts';
import { CALCIUM_LIMITS, LARGE_ADULT_KG, type Limits, PHOSPHORUS_LIMITS, TREATS_LIMIT } from '../reference/feeding/limits.ts';
import { REFRIGERATOR_THAW } from '../reference/freezer/keeping.ts';
import { clamp } from '../statistics/clamp.ts';
import { MOST_SHARE } from './amount.ts';
import { densityForShare, ESTIMATE_BOUNDS, GROWTH_SOURCES, shareForEnergy } from './energy.ts';
import type { EnergyFacts, EnergyNumbers, FigureChange, Finding } from './finding.ts';
import { keepingOf, thawHours } from './keeping.ts';
import { mealClock } from './meals.ts';
import { type Growth, growthOf, nutrientFindings, sideOf, vitaminAFinding } from './nutrient-findings.ts';
import { type DayRation, type RationInput, rationOn, treatShareOf, treatsAsFood } from './ration.ts';
import { type HouseRules, houseRulesSchema, SMALL_ADULT_KG } from './rules.ts';

export interface FindingsInput extends RationInput {
  /** What the puppy is called. */
  readonly name: string;
  /** Whether its gain follows the expected band; null when that can't be said. */
  readonly gainInBand: boolean | null;
  /** Day of the weight that is used; null when it is not a weighing. */
  readonly weighedOn: CivilDate | null;
}

/** What a mend aims at: the estimate is an average, so the safe side of it. */
const ENERGY_AIM = 0.9;
/** A share over this is more than a small stomach takes well; then a richer mix comes first. Our own bound. */
const BIG_SHARE = 0.1;
/** A mix of less energy, in kcal per 100 g, is called lean. Our own word. */
const LEAN_MIX = 200;
const FOUR_MEALS_NORM_WEEKS = 12;
/** Thawing is judged for the pack that the trade speaks of: a pound. */
const POUND_KG = 0.454;

/**
 * What is found about the house rules on their own, with a food: where the trade's custom and the published numbers part. It is said with the rules,
 * not on every page.
 */
export function rulesFindings(rules: HouseRules, food: Pick<Food, 'kcalPer100g' | 'bone'>): Finding[] {
  return [boneAim(rules, food, CALCIUM_LIMITS.late.usual)].filter((f) => f !== null);
}

/** Every finding about the ration of one weaned puppy on one day; none when all is within bounds. */
export function findings(input: FindingsInput): Finding[] {
  const ration = rationOn(input);
  const growing = ageInMonths(input.born, input.day) < input.rules.adultMonths;
  return [
    growing ? weightOld(input) : null,
    energy(input, ration),
    treatsHigh(input),
    ...(growing ? minerals(input, ration) : []),
    vitaminAFinding(input.food, growing ? 'growing' : 'grown'),
    mealsFew(input, ration),
    nightLong(input, ration),
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
    numbers: { days, boundDays: OLD_WEIGHT_DAYS },
    puppy: name,
    source: null,
    known: 'common practice',
  };
}

function energy(input: FindingsInput, ration: DayRation): Finding | null {
  const { food, weightGrams, gainInBand, name, adultKg, rules } = input;
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
    shareForEstimate: shareForEnergy(ration.estimateKcal, kg, food.kcalPer100g),
    densityForAim: densityForShare(aim, kg, ration.share),
  };
  const low = part < 1;
  return {
    code: low ? 'energy-low' : 'energy-high',
    severity: graded(input, part),
    numbers,
    puppy: name,
    gainInBand,
    leanMix: food.kcalPer100g < LEAN_MIX,
    bigDog: (adultKg ?? 0) > LARGE_ADULT_KG,
    raiseTo: raisedShare(numbers),
    method: rules.growthMethod,
    ...shareChange(input, numbers, low),
    ...GROWTH_SOURCES[rules.growthMethod],
  };
}

const GRADES = ['note', 'caution', 'warning'] as const;
/** Parts of the estimate under which a ration is worth a caution and a warning, and over which a caution. Our own bounds. */
const CAUTION_UNDER = 0.7;
const WARNING_UNDER = 0.55;
const CAUTION_OVER = 1.4;
/** A toy puppy has nothing to draw on: it is warned of sooner. Grown weight in kg, and age. */
const TOY_KG = 5;
const TOY_WEEKS = 12;

/** How grave it is; a grade less when the puppy gains well on this ration, a grade more when it does not. */
function graded({ gainInBand, adultKg, born, day }: FindingsInput, part: number): Finding['severity'] {
  const isLittle = (adultKg ?? Number.POSITIVE_INFINITY) <= TOY_KG && ageInDays(born, day) < TOY_WEEKS * 7;
  const warningUnder = isLittle ? CAUTION_UNDER : WARNING_UNDER;
  const plain = part < warningUnder ? 2 : part < CAUTION_UNDER || part > CAUTION_OVER ? 1 : 0;
  const by = gainInBand === null ? 0 : gainInBand ? -1 : 1;
  return GRADES[clamp(plain + by, 0, 2)] ?? 'caution';
}

/** The share to raise to: down to the half percent, but never the share that is fed already. */
function raisedShare(n: Pick<EnergyNumbers, 'share' | 'shareForAim'>): EnergyFacts['raiseTo'] {
  const share = Math.max(Math.floor(n.shareForAim * 200) / 200, Math.floor(n.share * 200) / 200 + 0.005);
  return { share, isBig: share > BIG_SHARE };
}

/** A tenth more or less of the share that holds at this age, but not past the estimate; none where the scale says that all is well. */
function shareChange(
  input: FindingsInput,
  n: Pick<EnergyNumbers, 'part' | 'shareForAim' | 'shareForEstimate'>,
  low: boolean,
): Changed {
  const { rules, born, day, gainInBand } = input;
  if (
    rules.basis === 'share' &&
    low &&
    graded(input, n.part) === 'warning' &&
    n.shareForEstimate * rules.energyFloor <= MOST_SHARE
  ) {
    return { change: { key: 'basis', value: 'share-with-floor' } };
  }
  if (rules.basis !== 'share' || (low && (gainInBand === true || n.shareForAim > BIG_SHARE))) return {};
  const months = ageInMonths(born, day);
  const key = months < rules.youngUntilMonths ? 'shareYoung' : months < rules.adultMonths ? 'shareMiddle' : 'shareAdult';
  const step = rules[key] * (low ? 1.1 : 0.9);
  const value = low ? Math.min(step, Math.max(n.shareForAim, rules[key])) : Math.max(step, n.shareForEstimate);
  return changeOf(rules, key, Math.round(value * 1000) / 1000);
}

type Changed = Pick<Finding, 'change'>;

/** The change as a part of a finding, if it changes anything and the rules still hold together with it. */
function changeOf(rules: HouseRules, key: FigureChange['key'], value: number): Changed {
  const fits = rules[key] !== value && houseRulesSchema.safeParse({ ...rules, [key]: value }).success;
  return fits ? { change: { key, value } } : {};
}

function treatsHigh(input: FindingsInput): Finding | null {
  const share = treatShareOf(input);
  if (input.treats == null || share === 0 || share <= input.rules.treatShare) return null;
  const limit = input.rules.treatShare;
  return {
    code: 'treats-high',
    severity: 'note',
    numbers: { share, most: limit, gramsAtMost: (input.treats.grams * limit) / share },
    source: TREATS_LIMIT.source,
    known: TREATS_LIMIT.known,
  };
}

function minerals(input: FindingsInput, ration: DayRation): Finding[] {
  const growth = growthOf(input.adultKg, ageInDays(input.born, input.day));
  const found = nutrientFindings(input.food, growth);
  const bones = found.some((f) => f.code !== 'protein-low' && f.code !== 'fat-low');
  const short = bones ? null : mineralsShort(input, ration, growth);
  return short === null ? found : [...found, short];
}

/** A lean day can be in ratio and still short: the least per 1000 kcal is published for a dog that eats all the energy it needs. */
function mineralsShort(
  { food, name }: FindingsInput,
  { dayGrams, estimateKcal }: DayRation,
  { stage, size, severity }: Growth,
): Finding | null {
  if (estimateKcal === null) return null;
  const { calciumMg, phosphorusMg } = food.analysis;
  const limits = CALCIUM_LIMITS[stage][size];
  const numbers = {
    calcium: (calciumMg.high * dayGrams) / 100_000,
    leastCalcium: (limits.low * estimateKcal) / 1000,
    phosphorus: (phosphorusMg.high * dayGrams) / 100_000,
    leastPhosphorus: (PHOSPHORUS_LIMITS[stage].low * estimateKcal) / 1000,
  };
  if (numbers.calcium >= numbers.leastCalcium && numbers.phosphorus >= numbers.leastPhosphorus) return null;
  return { code: 'minerals-day-low', severity, numbers, puppy: name, source: limits.source, known: limits.known };
}

/** The house rule's aim for bone in the whole diet, as calcium: a quarter of wet bone is about twice what is published. */
function boneAim(rules: HouseRules, food: Pick<Food, 'kcalPer100g' | 'bone'>, limits: Limits): Finding | null {
  const mg = boneCalciumMg(rules.boneShare, 'wet');
  const range = { low: per1000Kcal(mg.low / 1000, food.kcalPer100g), high: per1000Kcal(mg.high / 1000, food.kcalPer100g) };
  if (sideOf(range, limits) !== 'high') return null;
  // The mend keeps the whole range inside the limit, not only its nearer end.
  const shareLimit = (rules.boneShare * limits.high) / range.high;
  return {
    code: 'bone-aim',
    severity: 'caution',
    numbers: {
      boneShare: rules.boneShare,
      low: range.low,
      high: range.high,
      most: limits.high,
      shareAtMost: shareLimit,
      inFood: food.bone?.share ?? 0,
    },
    ...changeOf(rules, 'boneShare', Math.floor(shareLimit * 100) / 100),
    source: limits.source,
    known: limits.known,
  };
}

function mealsFew({ name, born, day, rules, adultKg }: FindingsInput, ration: DayRation): Finding | null {
  const isSmall = adultKg !== null && adultKg < SMALL_ADULT_KG;
  const weeks = ageInDays(born, day) / 7;
  const count = mealCount(ration.meals);
  if (weeks >= FOUR_MEALS_NORM_WEEKS || count >= 4) return null;
  return {
    code: 'meals-few',
    severity: 'note',
    numbers: { meals: count, weeks, untilWeeks: FOUR_MEALS_NORM_WEEKS },
    puppy: name,
    ...changeOf(rules, isSmall ? 'smallFourMealsUntilWeeks' : 'fourMealsUntilWeeks', FOUR_MEALS_NORM_WEEKS),
    source: null,
    known: 'from memory',
  };
}

/** Hours that a puppy of under twelve weeks may go without food at night. Our own bound. */
const LONGEST_NIGHT = 11;

function nightLong({ name, born, day, rules }: FindingsInput, { meals }: DayRation): Finding | null {
  const names = MEAL_NAMES.filter((meal) => meals[meal] !== undefined);
  const [first, last] = [names[0], names.at(-1)];
  if (ageInDays(born, day) >= FOUR_MEALS_NORM_WEEKS * 7 || first === undefined || last === undefined) return null;
  const at = (meal: MealName) => {
    const clock = mealClock(rules, meal, names.length);
    return Number(clock.slice(0, 2)) + Number(clock.slice(3)) / 60;
  };
  const hours = 24 - at(last) + at(first);
  if (hours <= LONGEST_NIGHT || hours > 24) return null;
  return {
    code: 'night-long',
    severity: 'note',
    numbers: { hours, most: LONGEST_NIGHT, untilWeeks: FOUR_MEALS_NORM_WEEKS },
    puppy: name,
    source: null,
    known: 'common practice',
  };
}

function keepingLong({ rules }: FindingsInput): Finding | null {
  const { houseHours, official, longer } = keepingOf(rules);
  if (!longer) return null;
  return {
    code: 'keeping-long',
    severity: 'note',
    numbers: { houseHours, officialHours: official.hours },
    of: official.of,
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
    numbers: { houseHours: rules.thawHours, publishedHours: published, upToKg: REFRIGERATOR_THAW.value.kg },
    ...changeOf(rules, 'thawHours', published),
    source: REFRIGERATOR_THAW.source,
    known: REFRIGERATOR_THAW.known,
  };
}
