/** Sentences of feeding: house rules, where their numbers come from, the food, the house. Sources as in the project's reference list. */

import type { HouseRules } from '../../feeding/rules.ts';
import type { House } from '../../people/house.ts';
import type { MassUnit } from '../../units/mass.ts';

export type RuleKey = Exclude<keyof HouseRules, 'mealTimes'> | keyof HouseRules['mealTimes'];

export const unitWords: Record<MassUnit, string> = {
  g: 'grams',
  kg: 'kilograms',
  oz: 'ounces',
  lboz: 'pounds and ounces',
  lb: 'pounds',
};

export const unitShort: Record<MassUnit, string> = { g: 'g', kg: 'kg', oz: 'oz', lboz: 'lb oz', lb: 'lb' };

interface RuleWords {
  readonly rule: string;
  /** What stands as common practice, where the program begins with something else. */
  readonly usual?: string;
  /** The published norm or official value with its source and how it is known; null when none was found. */
  readonly published: string | null;
  /** An official value that is there to protect someone: set apart. */
  readonly official?: true;
}

const ENERGY =
  'Energy by a growing dog’s weight (Klein et al. 2019): 4 to 14 % of its weight a day, by its size and how rich the food is. Computed.';
const TEXTBOOK_MEALS =
  'Four meals from 6 to 12 weeks, three from 3 to 6 months, two after that; small breeds stay at three or four longer. Textbook norm, from memory.';

const NIGHT = 'No table of it was found. Our own bound: no night of more than eleven hours before 12 weeks.';

export const ruleWords: Record<RuleKey, RuleWords> = {
  shareYoung: { rule: 'Share of body weight a day, from weaning', published: ENERGY },
  youngUntilMonths: { rule: 'That share holds until', published: null },
  shareMiddle: { rule: 'Share of body weight a day, half-grown', published: ENERGY },
  middleMonths: { rule: 'The half-grown share is reached at', published: null },
  shareAdult: {
    rule: 'Share of body weight a day, grown',
    published:
      'At 2 % a quiet grown dog of 5 to 30 kg (95 kcal per kg to the power of ¾, FEDIAF, seen) needs food with 318 to 203 kcal in 100 g. Computed.',
  },
  adultMonths: { rule: 'The grown share is reached at', published: null },
  basis: {
    rule: 'What sets the amount',
    usual: 'share of body weight; the program begins with the floor, so that small dogs and lean mixes do not starve',
    published:
      'Estimate: (254.1 − 135 p) kcal per kg to the power of ¾, p the part of its grown weight (Klein et al. 2019, 493 puppies, seen).',
  },
  growthMethod: {
    rule: 'Which estimate of energy stands beside it',
    usual: 'no custom',
    published:
      'NRC 2006 (second-hand) runs 20 to 28 % above what pet puppies ate: 78 % of it at 8 to 17 weeks, 83 % at 17 to 26 (Klein et al. 2019, seen).',
  },
  energyFloor: {
    rule: 'With a floor: never under this part of the energy estimate',
    usual: 'no custom; the program begins with 85 %, our own choice',
    published:
      'Pet puppies ate 78 to 83 % of an older, higher estimate, NRC 2006 (Klein et al. 2019, seen); this one is fitted to what they ate.',
  },
  fourMealsUntilWeeks: { rule: 'Four meals a day until (0: never)', published: TEXTBOOK_MEALS },
  twoMealsFromMonths: { rule: 'Two meals a day from', published: TEXTBOOK_MEALS },
  smallFourMealsUntilWeeks: { rule: 'Four meals for those under 10 kg grown, until (0: never)', published: TEXTBOOK_MEALS },
  smallTwoMealsFromMonths: { rule: 'Two meals for those under 10 kg grown, from', published: TEXTBOOK_MEALS },
  stepDays: { rule: 'The change from three to two takes', published: null },
  morning: { rule: 'Morning meal at', published: null },
  midday: { rule: 'Midday meal at', published: null },
  evening: { rule: 'Evening meal at', published: NIGHT },
  eveningOfTwo: { rule: 'Evening meal at, with two meals', published: null },
  middayOfFour: { rule: 'Midday meal at, with four meals', published: null },
  afternoon: { rule: 'Third meal at, with four meals', published: null },
  eveningOfFour: { rule: 'Late meal at, with four meals', published: null },
  liftAfterMinutes: {
    rule: 'Lift what is left after',
    published: '20 minutes at weaning (a home veterinary handbook, second-hand).',
  },
  cutShare: {
    rule: 'Left again: cut the amount by',
    published: 'Change a ration in steps of 10 % (Small Animal Clinical Nutrition, 5th ed., table 17-3, seen).',
  },
  treatShare: {
    rule: 'Treats, at most this part of the energy',
    published: 'At most 10 % of the food, unless balanced like it (Small Animal Clinical Nutrition, 5th ed., p. 315, seen).',
  },
  boneShare: {
    rule: 'Bone, share of the diet aimed at',
    usual:
      'as high as 25 %, with twice the calcium that is published as the most; the program begins with what ground mixes hold, 10 %',
    published:
      'Calcium for growth 3.0 to 4.5 g in 1000 kcal (AAFCO, upper end seen). With 150 kcal in 100 g, 10 % whole wet poultry bone gives about 3.7 g, 25 % about 9.2 g: twice the most. Computed; bone varies by a factor of three to four.',
    official: true,
  },
  boneMinutes: {
    rule: 'A raw meaty bone is taken away after',
    published:
      'No official support for bones: the FDA calls bones of any size unsafe (second-hand). Raw only, watched all the time, right for the size of the puppy.',
    official: true,
  },
  vegetableSpoonsPerHalfPound: { rule: 'Green vegetables to half a pound (227 g) of a mix without them', published: null },
  thawHours: {
    rule: 'Thaw in the refrigerator for',
    usual: 'two days for a solid block of 1 lb; the program begins with the official time',
    published: '24 hours for each 2 to 2.5 kg, at least a day, at 4 °C or colder (FSIS, second-hand). Never on the counter.',
    official: true,
  },
  keepHours: {
    rule: 'Use within, once thawed',
    usual: 'three days more; the program begins with the stricter official time',
    published:
      '24 hours (UK and Ireland, food safety advice, second-hand); one to two days for minced meat and poultry (US, FSIS, second-hand).',
    official: true,
  },
  officialKeeping: {
    rule: 'Official time shown beside a longer one',
    usual: 'no custom',
    published: 'The two official times of the row above.',
  },
};

const BASIS: Record<HouseRules['basis'], string> = {
  share: 'share of body weight',
  energy: 'the energy estimate',
  'share-with-floor': 'share, over a floor',
};
const GROWTH: Record<HouseRules['growthMethod'], string> = {
  klein: 'Klein 2019, of pet puppies',
  nrc: 'NRC 2006, higher',
};
const OFFICIAL: Record<HouseRules['officialKeeping'], string> = { 'uk-ie': '24 hours, UK and Ireland', us: '48 hours, US' };

export const choiceWords = { basis: BASIS, growthMethod: GROWTH, officialKeeping: OFFICIAL } as const;

export const rulesWords = {
  title: 'House rules',
  lead: 'Yours to change. A change holds from today; a plan that was handed over keeps the rules it was made with.',
  leadCommon: 'Common practice until you change it. A change holds from today.',
  whose: 'rules of',
  ofHouse: 'the house',
  goesByHouse: 'This litter goes by the house. The first rule you change here is for this litter alone.',
  ofItsOwn: 'This litter has rules of its own. What you change for the house leaves them as they are.',
  backToHouse: 'Back to the rules of the house',
  rule: 'rule',
  yours: 'yours',
  common: 'common practice, no source',
  published: 'published or official',
  noneFound: 'none found',
  resetTo: (rule: string, value: string) => `Back to ${value}: ${rule}`,
  backTo: (value: string) => `Back to ${value}`,
  caution: 'Official caution:',
  agesMustRise: 'The ages have to rise: first the young share, then the half-grown, then the grown one.',
  sharesMustFall: 'The shares have to fall with age: young, half-grown, grown.',
  mealsMustFall: 'Four meals have to end before two begin: meals never become more with age.',
  doesNotFit: 'That does not fit the other rules.',
  longerThanOfficial: (hours: number) =>
    `That is longer than the official ${hours} hours. The shorter time is printed beside it.`,
  groups: {
    amounts: 'How much',
    meals: 'Meals',
    left: 'What is left, and treats',
    bone: 'Bone and vegetables',
    keeping: 'Thawing and keeping',
  },
  tension:
    'The trade feeds a share of body weight, the published estimate goes by energy, and they part for small dogs and lean mixes: 5.5 % alone of a mix with 166 kcal in 100 g is 35 % of the estimate for a toy puppy of eight weeks and 60 % for one of a breed of 32 kg. So the program begins with a floor of 85 % under the share. Estimate: Klein et al. 2019; the parts are computed.',
  glide: 'Between the ages the amount changes evenly: it rises once, then falls, by a tenth in a week at most.',
  units: {
    shareYoung: '%',
    shareMiddle: '%',
    shareAdult: '%',
    youngUntilMonths: 'months',
    middleMonths: 'months',
    adultMonths: 'months',
    basis: '',
    growthMethod: '',
    energyFloor: '%',
    fourMealsUntilWeeks: 'weeks',
    twoMealsFromMonths: 'months',
    smallFourMealsUntilWeeks: 'weeks',
    smallTwoMealsFromMonths: 'months',
    stepDays: 'days',
    morning: '',
    midday: '',
    evening: '',
    eveningOfTwo: '',
    middayOfFour: '',
    afternoon: '',
    eveningOfFour: '',
    liftAfterMinutes: 'minutes',
    cutShare: '%',
    treatShare: '%',
    boneShare: '%',
    boneMinutes: 'minutes',
    vegetableSpoonsPerHalfPound: 'tablespoons',
    thawHours: 'hours',
    keepHours: 'hours',
    officialKeeping: '',
  } satisfies Record<RuleKey, string>,
  /** "5 months", "1 tablespoon" */
  withUnit: (text: string, unit: string) => `${text}\u00a0${text === '1' ? unit.replace(/s$/, '') : unit}`,
  effect: 'What it does',
  effectOn: 'for',
  example: 'an invented puppy',
  exampleLine: (mass: string) => `Invented: eight weeks old today, ${mass}, of a medium breed.`,
  puppyLine: (name: string, mass: string) => `${name}, from its last weight of ${mass}.`,
  noForecast:
    'Nobody knows yet how heavy it will be: write the grown weight or the size of the breed on the page Puppies, and weigh it.',
  before: 'As it was when you opened this page',
  after: 'As it is now',
  trying: 'With what you are typing',
  unchanged: 'With your rules',
  versions: 'Versions',
  versionFrom: (day: string) => `From ${day}`,
  versionDefault: 'As the program came: common practice',
  versionSame: 'the same as before',
  change: (rule: string, before: string, after: string) => `${rule}: ${before} → ${after}`,
} as const;

export const reckonedWords = {
  title: 'The food it is reckoned with',
  figures: (kcal: string, calcium: string) => `${kcal} kcal in 100 g; calcium ${calcium} g in 1000 kcal`,
  toFoods: 'Foods',
} as const;

const PAPERS: Record<House['paper'], string> = { a4: 'A4', letter: 'Letter' };
const THEMES: Record<House['theme'], string> = { 'by-hour': 'by the hour', day: 'always day paper', night: 'always night lamp' };

export const houseWords = {
  title: 'Your house',
  lead: 'Stands on the papers that go with a puppy, and wherever help is needed.',
  breederName: 'your name',
  address: 'address',
  phone: 'phone',
  email: 'e-mail',
  vetName: 'your vet',
  vetPhone: 'your vet, by phone',
  vetOutOfHours: 'out of hours, by phone',
  massUnit: 'weights in',
  massUnitHint: 'or write any unit as you go: 14.5oz',
  scaleStep: 'step of your scale, grams',
  scaleStepHint: 'the smallest difference it shows; 1 g or finer sees trouble sooner. Empty: it is read off the weights',
  scaleStepExample: '1',
  scaleTick: 'sound of the scale',
  scaleTickHint: 'when the value of a connected scale has settled and is written',
  scaleTicks: { none: 'none', tick: 'one low tick' },
  paper: 'paper',
  papers: PAPERS,
  theme: 'day or night',
  themes: THEMES,
  nightFrom: 'night lamp from',
  nightUntil: 'until',
} as const;
