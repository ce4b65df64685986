/** Sentences of foods: what they are called, where their figures come from, the pages of foods. */

import type { FindingCode } from '../../feeding/finding.ts';
import type { EnergyMethod, FoodForm, FoodSource, LabelBasis, NamedFood, ShippedFoodId } from '../../food/food.ts';
import type { LabelMethod } from '../../food/label.ts';
import type { ReckonedFoodId } from '../../food/rotation.ts';
import type { BoneBasis } from '../../reference/feeding/bone.ts';
import type { Known } from '../../reference/feeding/known.ts';
import { USDA_SOURCE } from '../../reference/feeding/usda.ts';
import { foodCheck } from './food-checks.ts';

const FORMS: Record<FoodForm, string> = {
  'complete mix': 'complete mix: meat, bone, organ and vegetables',
  'plain mix': 'plain mix: without vegetables',
  'raw meaty bone': 'raw meaty bone',
  meat: 'meat',
  organ: 'organ',
  'vegetable blend': 'vegetable blend',
  'freeze-dried': 'freeze-dried',
  dehydrated: 'dehydrated',
  dry: 'dry food',
  'milk replacer': 'milk replacer',
  other: 'something else',
};

const FORM_SHORT: Record<FoodForm, string> = { ...FORMS, 'complete mix': 'complete mix', 'plain mix': 'plain mix', dry: 'dry' };

/** How a figure is known. */
export const KNOWN: Record<Known, string> = {
  seen: 'seen',
  'second-hand': 'second-hand',
  'from memory': 'from memory',
  computed: 'computed',
  'common practice': 'common practice, no source',
};

const BONE_BASES: Record<BoneBasis, string> = {
  wet: 'whole wet bone, as in a piece',
  clean: 'bone cleaned of meat',
  solids: 'bone solids, as inspectors count',
  unknown: 'not said',
};

const BASES: Record<LabelBasis, string> = {
  'as fed': 'as fed, in %',
  'dry matter': 'in dry matter, in %',
  'per 1000 kcal': 'in 1000 kcal, in grams',
};

const METHODS: Record<LabelMethod, string> = {
  label: 'as it stands on the pack',
  'raw 4/9/4': 'reckoned 4/9/4, for raw food',
  'modified Atwater': 'reckoned 3.5/8.5/3.5, modified Atwater',
  'NRC four-step': 'reckoned in the four steps of NRC, for dry food',
};

const METHOD_SOURCES: Record<EnergyMethod, string> = {
  label: 'as written down',
  'raw 4/9/4': '4/9/4 kcal in a gram of protein, fat, carbohydrate: FEDIAF guidelines, annex (seen)',
  'modified Atwater': '3.5/8.5/3.5 kcal in a gram: AAFCO (second-hand)',
  'NRC four-step': 'NRC 2006 in four steps: FEDIAF guidelines, annex (seen)',
  recipe: 'the sum of its parts',
};

const NAMES: Record<ShippedFoodId | ReckonedFoodId, string> = {
  'food-generic-mix': 'complete mix, generic',
  'food-generic-plain': 'plain mix, generic',
  'usda-05100': 'chicken wing, meat and skin',
  'usda-05084': 'chicken neck, meat and skin',
  'usda-05048': 'chicken back, meat and skin',
  'usda-05066': 'chicken drumstick, meat and skin',
  'usda-05001': 'chicken, whole with giblets',
  'usda-05179': 'turkey neck, meat only',
  'usda-05195': 'turkey wing, meat and skin',
  'usda-10088': 'pork spareribs',
  'usda-10102': 'pork feet',
  'usda-10219': 'pork, ground',
  'usda-23572': 'beef, ground, 80 % lean',
  'usda-13498': 'beef, ground, 70 % lean',
  'usda-13321': 'beef heart',
  'usda-13325': 'beef liver',
  'usda-05027': 'chicken liver',
  'usda-10110': 'pork liver',
  'usda-17199': 'lamb liver',
  'usda-13341': 'beef tripe, white',
  'usda-05301': 'poultry, mechanically deboned',
  'usda-13330': 'beef, mechanically separated',
  'usda-10114': 'pork, mechanically separated',
  'usda-11090': 'broccoli',
  'usda-11233': 'kale',
  'usda-11124': 'carrot',
  'usda-01123': 'egg, whole',
  'rotation-of-the-week': 'the week’s rotation',
  'the-whole-week': 'The week',
};
const NAME_OF: Readonly<Partial<Record<string, string>>> = NAMES;

/** What a food is called: hers by the name she gave it, what is shipped or only reckoned with by ours. */
export function foodName({ id, name }: NamedFood): string {
  return NAME_OF[id] ?? name;
}

/** Where the figures of a food come from. */
export function foodSource(source: FoodSource): string {
  switch (source.by) {
    case 'pack':
      return [
        `your pack${source.basis === 'as fed' ? '' : `, figures ${source.basis === 'dry matter' ? 'in dry matter' : source.basis}`}`,
        `energy ${source.method === 'label' ? 'as on the pack' : `by ${source.method}`}`,
        ...(source.calciumFromBone ? ['calcium from its bone alone'] : []),
        ...(source.waterGuessed ? ['water is what the rest leaves'] : []),
      ].join('; ');
    case 'recipe':
      return `your recipe of ${source.parts} foods, the sum of its parts`;
    case 'table':
      return `${USDA_SOURCE}, NDB ${source.ndb}; energy ${source.plant ? "the table's own" : '4/9/4 on protein and fat'}${source.withBone ? '; as bought, bone gives no energy here' : ''}; vitamin A of the livers only`;
    case 'shipped-mix':
      return `${USDA_SOURCE}; energy 4/9/4 on protein and fat of meat, the table's own for vegetables; bone gives no energy here, so the true figure is a little higher; vitamin A of the liver only`;
    case 'week-mean':
      return 'the mean of the week’s bowls';
    case 'week-sum':
      return 'the sum of the week’s bowls';
  }
}

export const foodsWords = {
  nameOf: foodName,
  sourceOf: foodSource,
  title: 'Foods',
  lead: 'What is in the bowls. The label of your own food is always better than a table.',
  write: 'Write down a food',
  who: 'Who eats what',
  whoNote: 'Amounts and energy are reckoned with this food. With a week of bowls, with the mean of the week.',
  eater: 'who',
  food: 'food',
  week: 'week of bowls',
  house: 'the house',
  foodOf: (who: string) => `Food of ${who}`,
  asShipped: (name: string) => `${name} (until you choose)`,
  asHouse: (name: string) => `as the house: ${name}`,
  weekOpen: 'Open it',
  weekOpenOf: (who: string) => `: week of bowls of ${who}`,
  weekNone: 'Make one',
  weekHouse: 'as the house',
  bowls: (n: number) => (n === 1 ? '1 bowl' : `${n} bowls`),
  yours: 'Your foods',
  none: 'None yet. Take a pack in hand, and write down what stands on it.',
  name: 'food',
  form: 'kind',
  kcal: 'kcal in 100 g',
  protein: 'protein',
  fat: 'fat',
  calcium: 'calcium',
  perKcal: 'calcium, g in 1000 kcal',
  bone: 'bone, %',
  vitaminA: 'vitamin A, IU',
  remark: 'for a young puppy',
  within: 'within the published numbers',
  broken: 'its figures do not hold together',
  putAway: 'Put away',
  putAwayOf: (name: string) => `Put away ${name}`,
  takeBack: 'Take back',
  takeBackOf: (name: string) => `Take back ${name}`,
  away: 'Put away',
  shipped: 'Plain ingredients and two generic mixes',
  shippedLead:
    'Public figures, per 100 g of the piece as it is bought. Bone holds calcium but gives no energy here, so a bony piece is a little richer than it says.',
  ndb: 'NDB number',
  grams: 'g',
  milligrams: 'mg',
  forms: FORMS,
  formShort: FORM_SHORT,
  known: KNOWN,
  boneBases: BONE_BASES,
  findings: {
    'calcium-low': 'calcium low',
    'calcium-high': 'calcium high',
    'ratio-low': 'calcium to phosphorus low',
    'ratio-high': 'calcium to phosphorus high',
    'vitamin-a': 'vitamin A high',
    'protein-low': 'protein low',
    'fat-low': 'fat low',
  } as Readonly<Partial<Record<FindingCode, string>>>,
  back: 'Back to the foods',
} as const;

export const foodWords = {
  check: foodCheck,
  newTitle: 'A food of yours',
  newLead: 'Take the pack in hand. What it does not say, leave empty.',
  changeLead: 'As you wrote it down.',
  shippedLead: 'Shipped with the program; it can’t be changed.',
  gone: 'There is no such food. It may have been undone.',
  theFood: 'The food',
  name: 'name',
  form: 'kind',
  made: 'figures from',
  madeLabel: 'the pack',
  madeRecipe: 'a recipe of other foods',
  pack: 'On the pack',
  basis: 'figures are',
  water: 'water (moisture)',
  protein: 'protein',
  fat: 'fat',
  fibre: 'fibre',
  ash: 'ash',
  calcium: 'calcium',
  phosphorus: 'phosphorus',
  vitaminA: 'vitamin A',
  vitaminAHint: 'IU in 1 kg',
  kcal: 'energy on the pack',
  kcalHint: 'kcal in 100 g',
  method: 'energy is',
  percent: '%',
  perKcal: 'g in 1000 kcal',
  waterHint: '% as fed',
  bone: 'bone in it',
  boneHint: '%; empty when the pack does not say',
  boneBasis: 'bone counted as',
  vegetables: 'It holds vegetables',
  keeping: 'Packs',
  packGrams: 'a pack weighs',
  packHint: 'g',
  portions: 'can be cut into',
  portionsHint: 'portions, half frozen',
  portionsEach: (grams: string) => `portions of ${grams} g, half frozen`,
  price: 'price of a pack',
  priceHint: 'in your currency',
  keepHours: 'keeps once open',
  keepHint: 'hours, if the pack says so',
  note: 'note',
  recipe: 'Recipe',
  recipeLead: 'Parts by weight. Its figures are the sum of its parts.',
  part: (n: number) => `Part ${n}`,
  partShare: (n: number) => `Share of part ${n}`,
  choosePart: 'choose a food',
  addPart: 'Add a part',
  removePart: (n: number) => `Take out part ${n}`,
  takeOut: 'Take out',
  sum: (percent: string) => `${percent} so far`,
  save: 'Write it down',
  saved: 'Written down.',
  notSaved: 'Not written down yet: see what stands beside the fields.',
  comesTo: 'What it comes to',
  notYet: 'Protein, fat and water are enough to begin with; or the energy on the pack.',
  what: 'what',
  figure: 'holds',
  published: 'a growing dog needs',
  energy: 'energy',
  energyFigure: (kcal: string) => `${kcal} kcal in 100 g`,
  byMethods: 'The same by each method',
  calciumIn: (range: string) => `${range} g in 1000 kcal`,
  milligrams: (range: string) => `${range} mg in 100 g`,
  gramsIn: (g: string) => `${g} g in 100 g`,
  ratio: 'calcium to phosphorus',
  ratioFigure: (range: string) => (range === 'not known' ? range : `${range} to 1`),
  boneShare: 'bone',
  boneFigure: (range: string) => (range === 'not known' ? range : `${range} % of it`),
  vitaminAFigure: (iu: string) => `${iu} IU in 1000 kcal`,
  between: (low: string, high: string) => `${low} to ${high}`,
  atLeast: (low: string) => `at least ${low}`,
  atMost: (high: string) => `at most ${high}`,
  bigDogs: (low: string, high: string) => `${low} to ${high} from 14 weeks to about six months when grown over 15 kg`,
  notKnown: 'not known',
  bothRanges: 'A range, where bone decides: bone holds more or less calcium. The end nearer to the limit counts.',
  found: 'Beside the published numbers',
  nothingFound: 'Within the published numbers for a puppy under 14 weeks.',
  forBig: 'For a dog that will weigh over 25 kg:',
  madeOf: 'made of',
  madeOfPart: (percent: string, name: string) => `${percent} % ${name}`,
  instead: 'Instead of it',
  insteadOf: (name: string) => `Instead of 100 g of ${name}`,
  insteadFood: 'feed',
  insteadFigure: (grams: string, name: string) => `${grams} g of ${name}`,
  insteadNote: 'By energy alone. Calcium and vitamins are not weighed up.',
  bases: BASES,
  methods: METHODS,
  methodSources: METHOD_SOURCES,
  examples: { percent: '14.5', grams: '45', kcal: '180', pack: '454', whole: '4', price: '3.50', vitaminA: '9000' },
  nameNeeded: 'A food needs a name.',
  partNeeded: 'Choose a food.',
} as const;
