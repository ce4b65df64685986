/** What the shared parts say: collars, levels, drift line, meal ladder, charts. */

import type { CollarColour, CollarPattern } from '../../litter/collar.ts';
import { dateShort } from './dates.ts';
import { mealWords } from './meals.ts';

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

export const collarTextWords: {
  colours: Record<CollarColour, string>;
  patterns: Record<CollarPattern, string>;
  spoken(letter: string, name: string, collar: string): string;
} = {
  colours: {
    red: 'red',
    blue: 'blue',
    yellow: 'yellow',
    green: 'green',
    white: 'white',
    orange: 'orange',
    purple: 'purple',
    pink: 'pink',
    brown: 'brown',
    teal: 'teal',
    sand: 'sand',
    lime: 'lime',
    black: 'black',
    sky: 'sky',
  },
  patterns: {
    plain: 'plain',
    stripe: 'stripe',
    dots: 'dots',
    zigzag: 'zigzag',
    check: 'check',
    bars: 'bars',
    slant: 'slant',
    edges: 'edges',
  },
  spoken: (letter, name, collar) => (name === '' || name === letter ? `${letter}, ${collar}` : `${letter}, ${name}, ${collar}`),
};

export const levelWords = { steady: 'steady', watch: 'watch', act: 'act' } as const;

export const tallyWords = {
  weighed: (done: number, of: number) => `${done} of ${of} weighed`,
};

export const driftWords = {
  /** Ends and middle of the line; the second set is for one puppy against its own expected line. */
  litter: {
    under: 'under the middle',
    over: 'over the middle',
    underShort: 'under',
    overShort: 'over',
    middle: (mass: string) => `the middle, ${mass}`,
    middleAlone: 'the middle',
    caption: 'Where each puppy stands against its littermates',
    onIt: 'at the middle',
  },
  single: {
    under: 'under its line',
    over: 'over its line',
    underShort: 'under',
    overShort: 'over',
    middle: (mass: string) => `its expected line, ${mass}`,
    middleAlone: 'its expected line',
    caption: 'Where the puppy stands against its own expected line',
    onIt: 'on its line',
  },
  tick: (percent: number) => `${percent}\u00a0%`,
  /** "6 % under the middle", "at the middle". */
  place: (percent: number, ends: { under: string; over: string; onIt: string }) =>
    percent === 0 ? ends.onIt : `${Math.abs(percent)}\u00a0% ${percent < 0 ? ends.under : ends.over}`,
  /** The length of the tail in words: "6 % under, was 2 %". */
  moved: (percent: number, before: number) =>
    `${short(percent)}, was ${sameSide(percent, before) ? tickOf(before) : short(before)}`,
  stands: (percent: number) => short(percent),
  puppy: 'Puppy',
  level: 'Level',
  now: 'Stands',
  before: 'Two days ago',
  remark: 'Remark',
  notWeighed: 'not weighed yet; where it stood last',
  unknown: 'not known',
  nobody: 'Nobody can be placed yet: weigh the puppies first.',
};

const tickOf = (percent: number): string => `${Math.abs(percent)}\u00a0%`;
const sameSide = (a: number, b: number): boolean => b !== 0 && a !== 0 && a < 0 === b < 0;
const short = (percent: number): string => (percent === 0 ? 'level' : `${tickOf(percent)} ${percent < 0 ? 'under' : 'over'}`);

const MEAL_COUNTS = ['no meals', 'one meal', 'two meals', 'three meals', 'four meals'] as const;
const SPANS = ['no', 'one', 'two', 'three', 'four'] as const;

export const ladderWords = {
  meals: mealWords.names,
  mealsADay: (meals: number) => `${mealCountWords(meals)} a day`,
  mealsShort: (meals: number) => mealCountWords(meals),
  change: (days: number) => `${spanWords(days)} of change`,
  changeShort: (days: number) => spanWords(days),
  weeks: (weeks: number, first: boolean) => (first ? `${weeks} weeks` : String(weeks)),
  weeksPaper: (weeks: number) => `${weeks}\u00a0wk`,
  months: (months: number, first: boolean) => (first ? `${months} months` : String(months)),
  monthsPaper: (months: number) => `${months}\u00a0mo`,
  now: 'now',
  /** "26 Dec" */
  date: dateShort,
  how: 'Height: food for one day. Layers: its meals. A tread is a week, later a month.',
  table: 'Meal ladder: food for one day and for each meal, by age',
  age: 'Age',
  from: 'From',
  day: 'A day',
  notFed: 'none',
  picture: (from: string, meals: number, top: string, until: string) =>
    `Meal ladder: from ${from} a day in ${mealCountWords(meals)}, ${top} at the most, ${until} at the end`,
};

function mealCountWords(meals: number): string {
  return MEAL_COUNTS[meals] ?? `${meals} meals`;
}

function spanWords(days: number): string {
  const weeks = Math.round(days / 7);
  return days % 7 === 0 && weeks > 0 ? `${SPANS[weeks] ?? String(weeks)} week${weeks === 1 ? '' : 's'}` : count(days, 'day');
}

export const chartWords = {
  birth: 'birth',
  days: (days: number) => count(days, 'day'),
  weeks: (weeks: number) => count(weeks, 'week'),
  months: (months: number) => count(months, 'month'),
  weight: (unit: string) => `weight, ${unit}`,
  gain: (unit: string) => `gain, ${unit} a day`,
  standing: 'standing',
  middle: 'middle',
  heaviest: 'heaviest',
  lightest: 'lightest littermate',
  most: 'most a newborn grows',
  line: 'your own line',
  forecast: 'forecast',
  percent: (percent: number) => `${signed(percent)}\u00a0%`,
  percentADay: (percent: number) => `${signed(Math.round(percent * 10) / 10)}\u00a0% of its weight`,
  signedFigure: (figure: string, value: number) => (value < 0 ? `\u2212${figure}` : `+${figure}`),
  weightPicture: (name: string, last: string, unit: string) =>
    `Weight of ${name} by age, in ${unit}; last ${last}. The figures are in the table.`,
  weightPictureEmpty: (name: string) => `Weight of ${name} by age: nothing weighed yet.`,
  litterPicture: (names: string, unit: string) => `Weights by age, in ${unit}: ${names}. The figures are in the table.`,
  gainPicture: (name: string, unit: string) => `Gain of ${name} a day, in ${unit}, by age. The figures are in the table.`,
  standingPicture: (name: string) =>
    `Standing of ${name} against the littermates, in per cent, by age. The figures are in the table.`,
  forecastPicture: (name: string, unit: string) =>
    `Forecast of the weight of ${name} until grown, in ${unit}, as a band; weights so far as dots.`,
};

function signed(n: number): string {
  return n === 0 ? '0' : `${n < 0 ? '\u2212' : '+'}${Math.abs(n)}`;
}
