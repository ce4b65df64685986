/** Sentences of weaning, the meals of the day, the dam, and milk by bottle. What the amounts mean is worded in core. */

import { ageInDays, type CivilDate } from '../../calendar/day.ts';
import type { Keeping } from '../../feeding/keeping.ts';
import type { MealName } from '../../food/bowls.ts';
import type { Ate, Stool, SuggestionCode } from '../../weaning/eaten.ts';
import type { Texture } from '../../weaning/texture.ts';
import { fullDate, longDate, weekdayName } from './dates.ts';
import { OFFICIAL_PLACES } from './feeding-findings.ts';
import { capital, listed, numberWord, percentText, placeWord } from './figures.ts';
import { mealWords } from './meals.ts';
import { hold, STOOL_HINTS, suggestionText, weaningFindingText } from './weaning-findings.ts';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

const TEXTURES: Record<Texture, string> = {
  gruel: 'gruel',
  'thick gruel': 'thick gruel',
  'fine mince': 'fine mince',
  mince: 'mince',
  'mince with soft bone': 'mince with soft bone',
};
const ATE: Record<Ate, string> = { clean: 'cleaned up', left: 'left some', refused: 'refused' };
const STOOLS: Record<Stool, string> = { normal: 'normal', soft: 'soft', loose: 'loose', crumbly: 'grey, white or crumbly' };
const ANSWERS: Record<SuggestionCode, readonly [yes: string, no: string]> = {
  'offer-again': ['Offer it again', 'Not now'],
  cut: ['Weigh out less', 'Leave it as it is'],
  'miss-meal': ['Leave the meal out', 'Feed it'],
  restore: ['Full amount again', 'Stay with less'],
};
const MEALS = mealWords.names;

export const weaningWords = {
  title: 'Weaning',
  hold,
  finding: weaningFindingText,
  suggestion: suggestionText,
  suggestionSource: 'house rules; common practice, no source',
  stoolHints: STOOL_HINTS,
  textures: TEXTURES,
  percent: (share: number) => `${Math.round(share * 100)}\u00a0%`,

  /* before there is a plan */
  beginLead: (litter: string, age: string) => `${litter}, ${age}. They live on milk.`,
  beginLate: (litter: string, age: string) =>
    `${litter}, ${age}. Without a plan they count as weaned: everything comes from the bowl.`,
  beginLateHeading: 'If they still nurse',
  firstBowl: 'first bowl on',
  firstBowlHint: 'between three and four weeks; you know your dam and her milk',
  preview: 'The steps that would begin that day. They can be changed at any time.',
  curveNote:
    'The shares are a planning curve inferred from guidance by age; no published table of them was found. The scale decides: a puppy whose gain stalls stays on its step.',
  begin: 'Begin weaning',
  firstBowlFault: 'The first bowl is after the birth and within half a year of it.',

  /* head */
  lead: (day: number, since: number) => `Day ${day}; bowls since day ${since}.`,
  leadBefore: (day: number, first: CivilDate, at: number) => `Day ${day}; the first bowl is on ${longDate(first)}, day ${at}.`,
  next: (at: number, day: CivilDate, what: string) => `Next step on day ${at}, ${weekdayName(day)}: ${what}.`,
  lastStep: 'This is the last step.',
  weaned: 'Everyone is weaned: nothing but bowls for three days.',
  goHome: (day: CivilDate) =>
    `Day 56 is ${longDate(day)}; many places let no puppy go before it, some only after. Check your local rule.`,
  todayForLitter: 'today for the litter,',
  fromBowl: (share: string) => `${share} from the bowl`,
  tomorrow: (mass: string) => `${mass} tomorrow.`,
  how: (kg: string, share: string, steps: string) =>
    `Each puppy’s expected weight (${kg} in all) × ${share} × its step (${steps}), rounded to what can be weighed, so that bowls, meals and day agree.`,
  /** Kilograms of all puppies that are fed together. */
  weightOfAll: (kg: number) => `${kg.toFixed(1)}\u00a0kg`,
  sumSources: {
    weights: 'your weights and their forecast',
    rules: 'house rules; common practice, no source',
    plan: 'your plan; planning curve, inferred',
    computed: 'computed',
  },
  sumWeight: 'Expected weight of all',
  sumRule: 'House rule, share of the weight',
  sumStep: 'Step: part that comes from the bowl',
  sumCut: 'Less, because food was left',
  sumDay: 'The day, the sum of its bowls',
  sumKcal: 'Energy of the day’s bowls',
  sumEstimate: 'Published need in all, milk and bowls',

  /* the picture */
  pictureLead: (dam: string) => `share of the food that comes from the bowl; the rest is ${dam}’s milk`,
  picture: (share: string, day: number, allOn: number, holds: string) =>
    `Weaning: ${share} from the bowl on day ${day}, all of it from day ${allOn}${holds === '' ? '' : `; ${holds}`}.`,
  pictureHold: (name: string, share: string) => `${name} holds at ${share}`,
  dayTick: (day: number) => `day ${day}`,
  todayTick: (day: number) => `${day}, today`,
  stepsTable: 'Steps of weaning',
  stepColumns: { from: 'from day', share: 'from the bowl', texture: 'how it is made' },

  /* holding and resting */
  restsPaused: 'You paused the steps. They stand still until you go on.',
  restsLoose: 'The steps stand still: a loose stool was noted. They go on after two days, or once a normal one is noted.',
  pause: 'Pause the steps',
  goOn: 'Go on with the steps',

  /* tomorrow */
  tomorrowEach: 'Tomorrow, each puppy',
  puppy: 'puppy',
  dayColumn: (unit: string) => `day, ${unit}`,
  holds: 'holds',
  bowlName: (n: number) => `${ORDINALS[n] ?? String(n + 1)} bowl`,
  bowlOf: (n: number, texture: string) => `${ORDINALS[n] ?? String(n + 1)} bowl, ${texture}`,
  weighOut: 'Weigh out for the litter',
  print: 'Print the prep sheet',
  food: (name: string, unit: string) => `${name}, ${unit}`,
  water: (unit: string) => `warm water, ${unit}`,
  theDay: 'the day',
  waterDown: 'Clean water stays down beside the bowls from the first bowl on.',
  thawed:
    'Thaw in the refrigerator; the mix stays at 4 °C or colder until it is weighed out. Wash hands, bowls and boards after it.',
  noBowls: 'Nobody has a weight yet, so nothing can be weighed out. Weigh them first.',

  /* settings */
  plan: 'The plan',
  step: 'step',
  share: 'from the bowl',
  texture: 'how it is made',
  days: 'days',
  fromDay: 'from day',
  curve: 'planning curve',
  onwards: 'and on',
  liftMinutes: 'lift what is left after, minutes',
  liftNote: (house: number) => `house rule ${house}; published at weaning: 20 (a home veterinary handbook, second-hand)`,
  atOneBowl: 'puppies at one bowl, at most',
  curveFigure: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
  addStep: 'Add a step',
  removeStep: (n: number) => `Remove step ${n}`,
  stepOf: (n: number, what: string) => `step ${n}, ${what}`,
  usual: 'Back to the usual steps',
  drop: 'Take the plan away',
  stepsCross: 'The shares have to rise from step to step, and the last is 100 %.',
  shareExample: '45',
  daysExample: '4',

  /* findings */
  findings: 'Beside the plan',
  source: (source: string, known: string) => `${source} (${known})`,

  /* the day's meals */
  mealsToday: 'Meals today',
  at: 'at',
  what: 'what',
  wholeLitter: 'whole litter',
  each: 'each, about',
  howEaten: 'how it went',
  bowls: (bowls: number, most: number) =>
    bowls === 1 ? 'one bowl' : `${numberWord(bowls)} bowls, up to ${numberWord(most)} puppies each`,
  meals: MEALS,
  mealOf: (meal: MealName, food: string) => `${MEALS[meal]}, ${food}`,
  weaningMeal: (texture: string, food: string) => `${texture}, ${food}`,
  bones: (pieces: number, name: string) =>
    `${pieces === 1 ? 'one piece' : `${numberWord(pieces)} pieces`} of ${name} each, raw, watched all the time`,
  part: (mass: string, name: string) => `${mass} ${name}`,
  leftOut: 'left out',
  ate: ATE,
  /** The keys, in the order clean, left, refused. */
  keys: { clean: 'C', left: 'L', refused: 'R' } satisfies Record<Ate, string>,
  record: (meal: MealName, ate: string) => `${MEALS[meal]} meal: ${ate}`,
  keysNote: 'With a meal in focus: C cleaned up, L left some, R refused; up and down move.',
  recorded: (meal: MealName, ate: string) => `${MEALS[meal]} meal: ${ate}.`,
  takeBack: 'take back',
  answers: ANSWERS,
  answered: (yes: boolean) => (yes ? 'You took this.' : 'You did not take this.'),
  cutNow: (percent: string) => `Amounts are ${percent} of the rule, because food was left.`,
  beforeWeaning: (first: CivilDate, day: number) =>
    `They live on milk. The first bowl is usually between three and four weeks; three weeks is ${longDate(first)}, day ${day}.`,
  setDay: 'Choose the day',
  begins: (first: CivilDate) => `The first bowl is on ${longDate(first)}.`,
  noPlan: 'No first bowl is written down.',
  toWeaning: 'To Weaning',
  olderWeights: 'Weights older than four days: weigh before you rely on these.',

  /* stools */
  stools: 'Stools',
  stoolNote: 'Note what you saw; the last note holds.',
  stoolOf: 'whose',
  everyone: 'the litter',
  stool: STOOLS,
  noteStool: (stool: string) => `note a stool: ${stool}`,
  whose: (name: string) => `${name}: `,
  callVet: (name: string, phone: string) =>
    phone === ''
      ? 'Your vet’s number is not written down yet; write it under Your house.'
      : `Your vet${name === '' ? '' : `, ${name}`}: ${phone}`,

  /* diary */
  diary: 'Written down',
  diaryNone: 'Nothing yet.',
  diaryMeal: (meal: MealName, ate: Ate) => `${MEALS[meal]} meal ${ATE[ate]}`,
  diaryStool: (stool: Stool) => `stool ${STOOLS[stool]}`,
  diaryPause: (paused: boolean) => (paused ? 'steps paused' : 'steps go on'),
  diaryAnswer: (code: SuggestionCode, accepted: boolean) => ANSWERS[code][accepted ? 0 : 1].toLowerCase(),
};

/** Around the prep sheet; what stands on it is in its document. */
export const prepWords = {
  title: 'Prep sheet',
  titleOf: (litter: string, day: CivilDate) => `Prep sheet, ${litter}, ${longDate(day)}`,
  file: (litter: string, day: CivilDate) => `${litter} prep sheet ${day}`,
  sub: (litter: string, day: CivilDate, born: CivilDate) => `${litter}, ${longDate(day)}, day ${ageInDays(born, day)}`,
  textureOf: (texture: Texture, food: string) => `${TEXTURES[texture]} of ${food}`,
  fromBowl: (share: number) => `${percentText(share, 0)} from the bowl`,
  bowl: (n: number, texture: Texture | null) => `${placeWord(n)} bowl${texture === null ? '' : `, ${TEXTURES[texture]}`}`,
  holds: (share: number) => `holds at ${percentText(share, 0)}`,
  wholeLitter: (food: string) => `${capital(food)}, whole litter`,
  water: 'Warm water to stir in',
  bowlDown: (held: readonly string[], minutes: number, bone: boolean) => ({
    heading: 'Before the bowl goes down',
    text: [
      ...(held.length === 0 ? [] : [`${listed(held)} ${held.length === 1 ? 'nurses' : 'nurse'} first.`]),
      `Clean water stays down. Lift what is left after ${minutes} minutes, throw it away, and write it here:`,
      ...(bone ? ['Soft bone: raw only, watched all the time. The FDA calls bones of any size unsafe (second-hand).'] : []),
    ].join(' '),
  }),
  hands: ({ houseHours, official, longer }: Keeping) => ({
    heading: 'Hands and surfaces',
    text: `Wash hands for 20 seconds, bowls and boards in hot soapy water. The mix stays at 4 °C or colder until it is weighed out. ${
      longer
        ? `House rule: use it within ${houseHours} h of thawing. Official, ${OFFICIAL_PLACES[official.of]}: ${official.hours} h.`
        : `Use it within ${houseHours} h of thawing, then throw it away.`
    } Children under five, pregnant women, old people and people with weak defences should not handle it.`,
  }),
  foot: (made: CivilDate, rulesFrom: CivilDate | null) =>
    `Prep sheet · printed ${fullDate(made)} · ${rulesFrom === null ? 'house rules: common practice' : `house rules of ${fullDate(rulesFrom)}`}`,
  collar: 'collar',
  puppy: 'puppy',
  dayHead: 'day',
  sheet: 'one sheet',
  back: (litter: string) => `Back to Weaning, ${litter}`,
  day: 'Day',
  today: 'Today',
  tomorrow: 'Tomorrow',
};

export const topUpWords = {
  heading: 'Milk by bottle or tube, if your vet agrees',
  cautions: [
    'Warm first. Never feed a cold puppy: it cannot digest, and milk goes into the lungs.',
    'Only a puppy that swallows. If it is limp, does not suck, or milk comes out of its nose, stop and call your vet.',
    'Ask your vet before the first feed, and have the tube shown to you.',
  ],
  per: (low: string, high: string) => (low === high ? `${low} mL a feed` : `${low} to ${high} mL a feed`),
  feeds: (low: number, high: number, lowHours: number, highHours: number) =>
    low === high
      ? `${low} feeds a day, every ${lowHours} hours`
      : `${low} to ${high} feeds a day, every ${lowHours} to ${highHours} hours`,
  most: (ml: string) => `Never over ${ml} mL in one feed: that is 4 mL in 100 g, what the stomach holds.`,
  capped: 'So there are more feeds than one handbook has.',
  day: (low: number, high: number) =>
    `${low === high ? low : `${low} to ${high}`} mL a day for a puppy that gets nothing else. One that still nurses needs less: feed it after its dam.`,
  disagree:
    'Two handbooks, and where one gives half of the other neither is urged: ask your vet which to follow, and let the scale decide. In one feed a little too little harms less than too much.',
  milk: 'milk, kcal in a mL',
  milkHint: 'read it off the tin; 1 is what one handbook reckons with',
  milkExample: '0.9',
  need: (kcal: number) => `Published need of a newborn: ${kcal} kcal a day (25 kcal in 100 g, NRC 2006, second-hand).`,
  sources: (all: readonly string[]) => `Sources: ${all.join('; ')} (second-hand; seen).`,
  older:
    'From four weeks on the handbooks give no volumes: it eats from the bowl, alone and in peace. A puppy at act that will not eat needs your vet now.',
  noWeight: 'Weigh it first: the volume goes by weight.',
};
