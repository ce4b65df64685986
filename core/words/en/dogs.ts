/** Sentences of the dam: her dates, her weight, her food while she carries and nurses. */
import type { CivilDate } from '../../calendar/day.ts';
import type { DamPhase, DamSum } from '../../feeding/dam-day.ts';
import { type GestationFrom, SMALL_LITTER } from '../../reference/feeding/gestation.ts';
import { DAM_FOOD_DENSITY } from '../../reference/feeding/nursing.ts';
import { dayOfWeek, longDate } from './dates.ts';
import { numberWord, plain } from './figures.ts';

/** How the energy of her day came about. */
function damSum(sum: DamSum): string {
  if (sum.code === 'early') return '130 × kg^0.75: in the first four weeks she needs no more than before';
  const own = plain(sum.ownKcal, 0);
  if (sum.code === 'late') return `130 × kg^0.75 = ${own}, and 26 kcal a kg in the last five weeks`;
  const still = sum.stillMilk < 1 ? `, of which ${plain(sum.stillMilk * 100, 0)} % is still milk` : '';
  return `145 × kg^0.75 = ${own} for herself, and ${plain(sum.milkKcal, 0)} for the milk of ${sum.puppies} in week ${sum.week}${still}`;
}

const PHASES: Record<DamPhase, string> = {
  before: 'no date is written yet',
  early: 'carrying, first weeks',
  late: 'carrying, last five weeks',
  milk: 'in full milk',
  drying: 'her milk is going',
  dry: 'dry',
};
const FROM: Record<GestationFrom, string> = {
  lh: 'LH peak',
  ovulation: 'ovulation',
  dioestrus: 'first day of dioestrus',
  mating: 'mating',
};

export const damWords = {
  sum: damSum,
  title: (name: string) => `${name}, the dam`,
  heading: 'The dam',
  phases: PHASES,
  week: (n: number) => `week ${n}`,
  none: 'Her dates and weights are not written down.',
  write: (name: string) => `Write down ${name}`,
  join: (name: string) => `This is ${name}, already written down`,
  needWeight: 'Weigh her, and her food can be reckoned.',
  more: 'All about her',
  food: 'Her food',
  kcal: 'energy, kcal a day',
  atWeight: (kg: number, sum: string) => `At ${kg.toFixed(1)}\u00a0kg: ${sum}.`,
  grams: (unit: string) => `of her food, ${unit} a day`,
  gramsNone: 'write what her food holds, and grams stand here',
  meals: 'meals a day',
  mealsFigure: (low: number, high: number) => (low === high ? String(low) : `${low} to ${high}`),
  mealsNote: 'common practice, no source',
  water: 'water, L a day',
  waterNote: 'about a mL a kcal (Hand et al. 2010, seen); always down',
  milk: 'milk at the peak, L a day',
  milkNote: 'Hand et al. 2010, table 15-8 (seen)',
  stepDown: (percent: string) => `Her puppies take ${percent} from bowls; what goes into milk falls in step with it.`,
  compare: (low: string, high: string) =>
    `By multiples of resting energy: ${low} to ${high} kcal (Hand et al. 2010, tables 5-2 and 15-10, seen).`,
  estimate: 'An estimate for many dams. Her own weight and condition are the judge.',
  vet: 'A dam that goes off her food, shakes, runs a fever or lets her puppies cry needs your vet the same day.',
  birthShare: (percent: string, is: 'under' | 'usual' | 'over') =>
    is === 'usual'
      ? `The litter weighed ${percent} of her at birth, which is usual (12 to 14 %).`
      : is === 'under'
        ? `The litter weighed ${percent} of her at birth; 12 to 14 % is usual. A small litter weighs less. If the litter is not small, check the birth weights.`
        : `The litter weighed ${percent} of her at birth; 12 to 14 % is usual. Check her weight and the birth weights.`,
  weigh: 'weigh her',
  weighHint: (unit: string) => `in ${unit}, or with any unit behind it`,
  weights: 'Her weight',
  weightsNone: 'No weight of hers is written yet.',
  weightsPicture: (n: number, last: string) => `Her weight, ${n} times; last ${last}.`,
  whelpedMark: 'whelped',
  dueMark: 'due',
  takeBack: 'take back',
  takeBackOf: (mass: string, when: string) => `take back ${mass}, ${when}`,

  /* dates */
  dates: 'Her dates',
  name: 'name',
  lh: 'LH peak',
  ovulation: 'ovulation',
  dioestrus: 'first day of dioestrus',
  firstMating: 'first mating',
  lastMating: 'last mating',
  foodKcal: 'her food holds, kcal in 100 g',
  foodHint: `from the label; for milk at least ${DAM_FOOD_DENSITY.good} kcal in a gram of dry matter are wanted, and under ${DAM_FOOD_DENSITY.least} she loses weight (Hand et al. 2010, seen)`,
  kcalExample: '180',
  due: 'Due',
  dueFrom: FROM,
  dueWindow: (low: CivilDate, high: CivilDate) => `${longDate(low)} to ${longDate(high)}`,
  dueShort: (low: CivilDate, high: CivilDate) => `${dayOfWeek(low)} to ${dayOfWeek(high)}`,
  dueMiddle: (day: CivilDate) => dayOfWeek(day),
  dueNone: 'Write one of her dates, and the window stands here.',
  dueGo: `The first line is the one to go by. A litter of ${numberWord(SMALL_LITTER.most)} or fewer is carried about a day longer (Eilts et al. 2005, seen). Past the window, or with a green discharge and no puppy, call your vet.`,
  from: 'counted from',
  middle: 'most likely',
  window: 'window',
  daysToGo: (n: number) =>
    n === 0
      ? 'most likely today'
      : n > 0
        ? `most likely in ${n} ${n === 1 ? 'day' : 'days'}`
        : `${-n} ${n === -1 ? 'day' : 'days'} past the most likely day`,
  whelped: 'She has whelped: begin the litter',
  ofLitter: (litter: string) => `Dam of ${litter}`,
  expecting: 'Expecting',
  expectingNone: 'A bitch that is mated can be written down before there is a litter: her due days and her food follow.',
  add: 'Write down a dam',
  nameNeeded: 'Her name is needed.',
  remove: 'Remove her',
  gone: 'No such dam.',
  future: 'That day is still to come.',
  crossed: 'The last mating is before the first.',
  taken: 'That does not go with what is written.',
  backToLitters: 'Back to the litters',
};
