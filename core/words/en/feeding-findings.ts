/** Where a ration or a week parts from the published numbers: the fact, what mends it, and where the bound stands. */

import type { EnergyBand } from '../../feeding/energy.ts';
import type { EnergyFacts, Finding, FindingCode, RuleChange } from '../../feeding/finding.ts';
import type { HouseRules } from '../../feeding/rules.ts';
import { DAYS_OF_WEEK } from '../../food/rotation.ts';
import type { Known } from '../../reference/feeding/known.ts';
import type { MassUnit } from '../../units/mass.ts';
import { foodText } from './amounts.ts';
import { capital, fixed, percentText, plain, rangeText } from './figures.ts';
import { foodName, KNOWN } from './food.ts';

/** A finding in words. `mend` is null when there is nothing to do. */
export interface SaidFinding {
  readonly sentence: string;
  readonly mend: string | null;
  /** As it stands in the world, without how it is known. */
  readonly source: string;
}

type Said = Omit<SaidFinding, 'source'>;

const NO_SOURCE = 'common practice, no source';
const OWN_BOUNDS = 'The bounds of 80 and 120 %, and the graver ones, are our own';

/** Whose official time it is. */
export const OFFICIAL_PLACES: Record<HouseRules['officialKeeping'], string> = { 'uk-ie': 'UK and Ireland', us: 'US' };

const SAYS: { [C in FindingCode]: (f: Finding<C>, unit: MassUnit) => Said } = {
  'energy-low': (f) => energyLow(f),
  'energy-high': (f) => energyHigh(f),
  'week-energy-low': ({ numbers }) => ({
    sentence: weekEnergy(numbers),
    mend: 'Richer bowls, or more of them. The scale decides.',
  }),
  'week-energy-high': ({ numbers }) => ({
    sentence: weekEnergy(numbers),
    mend: 'Leaner bowls, or less of them. The scale decides.',
  }),
  'treats-high': ({ numbers: n }, unit) => ({
    sentence: `Treats are ${percentText(n.share, 0)} of the energy of the day.`,
    mend: `Keep them to ${percentText(n.most, 0)}: about ${foodText(n.gramsAtMost, unit)} of these treats.`,
  }),
  'calcium-low': (f) => ({
    sentence: `${calcium(f)} Too little calcium bends growing bones.`,
    mend: 'Use a mix with ground bone, or ask your vet about calcium. Do not feed it boneless.',
  }),
  'calcium-high': (f) => ({
    sentence: `${calcium(f)} Too much calcium harms growing bones.`,
    mend: 'Feed a mix with less bone, and no bones beside it.',
  }),
  'calcium-unknown': ({ numbers: n, food }) => ({
    sentence: `${foodName(food)}: nobody knows how much calcium is in it. Published for this age: ${fixed(n.least, 1)} to ${fixed(n.most, 1)} g per 1000 kcal.`,
    mend: 'Ask the maker, or write down what the pack says.',
  }),
  'phosphorus-low': (f) => ({ sentence: least(f, 'phosphorus'), mend: 'More meat, and bone in the same measure.' }),
  'minerals-day-low': ({ numbers: n, puppy }) => ({
    sentence: `In a day ${puppy} gets ${fixed(n.calcium, 1)} g of calcium and ${fixed(n.phosphorus, 1)} g of phosphorus at most. What is published as the least for all the energy it needs: ${fixed(n.leastCalcium, 1)} and ${fixed(n.leastPhosphorus, 1)}.`,
    mend: 'More of this food, if the scale agrees; or one with more in it.',
  }),
  'night-long': ({ numbers: n, puppy }) => ({
    sentence: `${puppy} goes ${plain(n.hours, 1)} hours without food at night. Before ${n.untilWeeks} weeks ${n.most} is long enough.`,
    mend: 'House rules: a later last meal, or one meal more.',
  }),
  'ratio-low': (f) => ({ sentence: ratio(f), mend: 'More ground bone, or a mix that has it.' }),
  'ratio-high': (f) => ({ sentence: ratio(f), mend: 'Less bone, more meat.' }),
  'bone-aim': ({ numbers: n }) => ({
    sentence: `Bone at ${percentText(n.boneShare, 0)} of the diet, with the bone in the mix counted, is about ${rangeText(n, 1)} g of calcium per 1000 kcal. Published limits for this age end at ${fixed(n.most, 1)}.`,
    mend: `Aim at ${percentText(Math.floor(n.shareAtMost * 100) / 100, 0)} or less, the mix included. Grey, white or crumbly stool: less bone.`,
  }),
  'vitamin-a': ({ numbers: n, food }) => ({
    sentence: `${foodName(food)}: ${Math.round(n.iuPer1000Kcal / 100) * 100} IU of vitamin A per 1000 kcal. The published upper limit is ${n.most}.`,
    mend: `Less liver: with beef liver, under ${percentText(n.beefLiverShareAtMost, 0)} of the mix.`,
  }),
  'protein-low': (f) => ({ sentence: least(f, 'protein'), mend: 'Put a leaner meat with it.' }),
  'fat-low': (f) => ({ sentence: least(f, 'fat'), mend: 'Put a fatter meat with it.' }),
  'freeze-dried': ({ numbers: n }) => ({
    sentence: `Freeze-dried food is ${percentText(n.share, 0)} of the energy. It is a small supplement, too rich to be the diet.`,
    mend: `Keep it to ${percentText(n.most, 0)}.`,
  }),
  'extra-water': ({ numbers: n }) => ({
    sentence: `${percentText(n.share, 0)} of the energy comes dry. A dog that eats dry food drinks a lot.`,
    mend: 'Soak it, and put more water down.',
  }),
  greens: ({ numbers: n }, unit) => ({
    sentence: `${foodText(n.grams / DAYS_OF_WEEK, unit)} a day, as a mean, are bowls without vegetables.`,
    mend: `Put ${plain(n.spoons, 1)} tablespoons of greens a week with them.`,
  }),
  'bone-under': (f) => ({ sentence: bone(f), mend: 'A meal of raw meaty bones brings more. Calcium decides, not the aim.' }),
  'bone-over': (f) => ({ sentence: bone(f), mend: 'A meal of bones less. Grey, white or crumbly stool: less bone.' }),
  'mixes-apart': ({ numbers: n }) => ({
    sentence: `${n.complete === 0 ? 'No meal holds' : `${n.complete} meals hold`} vegetables, and ${n.plain === 0 ? 'none is' : `${n.plain} are`} plain. Usual is about as many of each.`,
    mend:
      n.complete > n.plain
        ? 'Plain bowls in place of some complete ones, with greens.'
        : 'Complete bowls in place of some plain ones.',
  }),
  'meals-few': ({ numbers: n, puppy }) => ({
    sentence: `${puppy} gets ${n.meals === 3 ? 'three' : 'two'} meals a day. The published norm is four meals until ${n.untilWeeks} weeks; small breeds stay at three or four for longer.`,
    mend: `House rules: four meals until ${n.untilWeeks} weeks.`,
  }),
  'keeping-long': ({ numbers: n, of }) => ({
    sentence: `Your rule keeps thawed food ${n.houseHours} hours. The official time is ${n.officialHours} hours (${OFFICIAL_PLACES[of]}).`,
    mend: `Use it within ${n.officialHours} hours of thawing.`,
  }),
  'thaw-long': (f) => ({
    sentence: thawing(f),
    mend: 'The keeping time begins when the pack is thawed, which may be sooner than you count.',
  }),
  'thaw-short': (f) => ({ sentence: thawing(f), mend: 'Take it out a day ahead. Never thaw on the counter.' }),
  'weight-old': ({ numbers: n, puppy }) => ({
    sentence: `The last weight of ${puppy} is ${n.days} days old. A growing puppy outgrows its ration in that time.`,
    mend: `Weigh ${puppy} today.`,
  }),
};

/** What a finding says, what mends it and where it stands; amounts of food in the unit of her bowls. */
export function findingText(finding: Finding, unit: MassUnit): SaidFinding {
  const says = SAYS[finding.code] as (f: Finding, unit: MassUnit) => Said;
  return { ...says(finding, unit), source: sourceOf(finding) };
}

function sourceOf(f: Finding): string {
  const source = f.source ?? NO_SOURCE;
  switch (f.code) {
    case 'energy-low':
    case 'energy-high':
      return `${source}${f.method === 'nrc' ? ', which runs 20 to 28 % above what pet puppies ate' : ''}. ${OWN_BOUNDS}`;
    case 'week-energy-low':
    case 'week-energy-high':
      return bandSource({ of: f.of, source });
    case 'treats-high':
      return `${source}: at most a tenth`;
    case 'bone-aim':
      return `${source}; calcium of wet bone 4 to 6 %, trade tables (second-hand, weak)`;
    case 'minerals-day-low':
      return `${source}, times the energy estimate`;
    case 'night-long':
      return 'our own bound';
    case 'freeze-dried':
      return `${source}; the bound of a tenth is our own`;
    case 'meals-few':
      return 'kennel-club and textbook norm';
    case 'weight-old':
      return `our own bound of ${f.numbers.boundDays} days`;
    default:
      return source;
  }
}

/** Where the published energy of grown dogs, or around the estimate of growing ones, stands. */
export function bandSource({ of, source }: Pick<EnergyBand, 'of' | 'source'>): string {
  return of === 'grown' ? `95 to 130 × kg^0.75: ${source}` : `${source}. ${OWN_BOUNDS}`;
}

function energyLow({ numbers: n, puppy, gainInBand, leanMix, bigDog, raiseTo }: EnergyFacts): Said {
  const lean = leanMix ? 'This mix is lean. ' : '';
  const fact = `${lean}At ${percentText(n.share, 1)} ${puppy} gets about ${percentText(n.part, 0)} of the published estimate.`;
  if (gainInBand === true) return { sentence: `${fact} ${puppy} is gaining as expected, and the scale decides.`, mend: null };
  const slow = bigDog ? ' Slow growth is safe growth in a big dog.' : '';
  const richer = `a richer mix, about ${Math.round(n.densityForAim / 10) * 10} kcal per 100 g`;
  const todo = raiseTo.isBig
    ? `choose a richer mix, and raise a tenth at a time; with this mix the estimate would take about ${percentText(raiseTo.share, 1)}, a lot for a small stomach`
    : `raise to ${percentText(raiseTo.share, 1)}, a tenth at a time, or choose ${richer}`;
  return gainInBand === false
    ? { sentence: `${fact} ${puppy} is not gaining as expected.`, mend: `${capital(todo)}.` }
    : { sentence: `${fact}${slow}`, mend: `If ${puppy} is not gaining as expected: ${todo}.` };
}

function energyHigh({ numbers: n, puppy, gainInBand }: EnergyFacts): Said {
  const fact = `At ${percentText(n.share, 1)} ${puppy} gets about ${percentText(n.part, 0)} of the published estimate. The common mistake is too much food.`;
  return gainInBand === true
    ? {
        sentence: `${fact} ${puppy} is gaining as expected.`,
        mend: 'Feel the ribs: if they are hard to find, take off a tenth.',
      }
    : {
        sentence: fact,
        mend: `Take off a tenth, and look again in a week. The estimate is met at about ${percentText(n.shareForEstimate, 1)}.`,
      };
}

const weekEnergy = (n: Finding<'week-energy-low'>['numbers']): string =>
  `The week comes to ${plain(n.kcal, 0)} kcal a day. Published: ${rangeText(n, 0)}.`;

function calcium({ numbers: n, food }: Finding<'calcium-low' | 'calcium-high'>): string {
  return `${foodName(food)}: ${rangeText(n, 1)} g of calcium per 1000 kcal. Published for this age: ${fixed(n.least, 1)} to ${fixed(n.most, 1)}.`;
}

function ratio({ numbers: n, food }: Finding<'ratio-low' | 'ratio-high'>): string {
  return `${foodName(food)}: calcium to phosphorus is ${rangeText(n, 2)} to 1. Published: ${fixed(n.least, 1)} to ${fixed(n.most, 1)}.`;
}

function least({ numbers: n, food }: Finding<'protein-low' | 'fat-low' | 'phosphorus-low'>, what: string): string {
  return `${foodName(food)}: ${plain(n.has, n.has < 10 ? 1 : 0)} g of ${what} per 1000 kcal. Published for this age: at least ${plain(n.least, 1)}.`;
}

function bone({ numbers: n }: Finding<'bone-under' | 'bone-over'>): string {
  return `Bone is ${rangeText({ low: n.low * 100, high: n.high * 100 }, 0)} % of the week. Your rule aims at ${percentText(n.aim, 0)}.`;
}

function thawing({ numbers: n }: Finding<'thaw-long' | 'thaw-short'>): string {
  return `Your rule thaws a pack in ${n.houseHours} hours. Published: ${n.publishedHours} hours in the refrigerator for up to ${n.upToKg} kg.`;
}

const SEVERITIES: Record<Finding['severity'], string> = { note: 'Note', caution: 'Caution', warning: 'Warning' };

export const findingWords = {
  say: findingText,
  title: 'Beside the published numbers',
  severities: SEVERITIES,
  mend: (what: string) => `${what}, for this litter`,
  what: {
    shareYoung: (v: string) => `Make it ${v} %`,
    shareMiddle: (v: string) => `Make it ${v} % half-grown`,
    shareAdult: (v: string) => `Make it ${v} % grown`,
    boneShare: (v: string) => `Aim at ${v} % bone`,
    fourMealsUntilWeeks: (v: string) => `Four meals until ${v} weeks`,
    smallFourMealsUntilWeeks: (v: string) => `Four meals until ${v} weeks`,
    basis: () => 'Never under the energy floor',
    keepHours: (v: string) => `Keep it ${v} hours at most`,
    thawHours: (v: string) => `Thaw it for ${v} hours`,
  } satisfies Record<RuleChange['key'], (v: string) => string>,
  sourceLine: (source: string, known: Known) =>
    `Source: ${source}${source.startsWith(KNOWN[known]) ? '' : ` (${KNOWN[known]})`}.`,
  sameFor: (names: string) => `The same holds for ${names}.`,
  none: 'Nothing parts from the published numbers.',
  noWeight: 'Needs a weight, and the grown weight or the size of the breed.',
  atEight: (mass: string) => `Reckoned for the day it is eight weeks old, at the forecast of ${mass}.`,
  now: (mass: string) => `Reckoned for today, at ${mass}.`,
  forecast: (mass: string, days: number) => `Reckoned for today, at the forecast of ${mass}: last weighed ${days} days ago.`,
  amount: (grams: string) => `${grams} a day`,
  ofEstimate: (kcal: string, percent: string) => `${kcal} kcal, ${percent} % of the published estimate`,
  noEstimate: (kcal: string) => `${kcal} kcal; no estimate without a grown weight`,
  how: (share: string, food: string) => `${share} % of the weight, in bowls that can be weighed; ${food}.`,
  withFood: (name: string) => `Food: ${name}.`,
  foodLink: 'Foods',
} as const;

export const treatWords = {
  title: 'Treats today',
  note: 'To try out what a treat takes off the meals of today. Not written down.',
  grams: 'treats today',
  gramsHint: (unit: string) => `${unit}, all of the day together`,
  kcal: 'energy of the treats',
  kcalHint: (asFood: string) => `kcal in 100 g; empty: as the food, ${asFood}`,
  example: '320',
  meals: (bowls: string, unit: string) => `Meals then: ${bowls} ${unit}`,
  share: (percent: string) => `treats are ${percent} of the day`,
  result: (meals: string, share: string) => `${meals}; ${share}.`,
  nothingLeft: (percent: string) => `Nothing would be left for the meals: these treats hold ${percent} of the day’s energy.`,
} as const;
