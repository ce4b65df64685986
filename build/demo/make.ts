/**
 * Makes the demo litters: `node build/demo/make.ts` writes main/service/demo-litters.json (`npm run format` lays it out). Seeded, so the same script
 * makes the same file; a test proves it. Invented dogs in an invented house.
 *
 * Weights follow a gain per day that falls with age, g0·exp(-k·age) in log units, with 2 % lost over the first day and
 * a small dip at the change to solid food; the figures g0 and k are for a birth weight near 355 g. Then each puppy's own
 * pace, a wandering day-to-day rate, and the scatter of a wriggling puppy on a kitchen scale.
 */

import { writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { DAY_MINUTES } from '../../core/calendar/durations.ts';
import type { DemoLitter } from '../../main/service/demo.ts';

type DemoPuppy = DemoLitter['puppies'][number];
type DemoDam = NonNullable<DemoLitter['damRecord']>;
type DemoNote = NonNullable<DemoLitter['weaning']>['notes'][number];

const START_GAIN = 0.094;
const FALL = 0.0274;

/** Age in days to the part of the usual gain that a puppy has then: 1 is its usual pace, 0 stands still. */
type Trouble = (age: number) => number;

interface Plan {
  readonly collar: DemoPuppy['collar'];
  readonly callName: string;
  readonly sex: DemoPuppy['sex'];
  readonly markings: string;
  readonly bornMinute: number;
  readonly birthGrams: number;
  readonly trouble: Trouble;
}

const steady: Trouble = () => 1;
/** Slips from day 3, nearly stands still for two days, and makes up most of it by day 12. */
const slipsAndRecovers: Trouble = (age) => {
  if (age < 3 || age > 12) return 1;
  if (age < 4) return 0.55;
  return age < 6 ? 0.15 : 1.28;
};
/** Well until day 7, then first stands still and then loses. */
const fades: Trouble = (age) => {
  if (age < 6.8) return 1;
  return age < 7.8 ? 0.05 : -0.35;
};
/** Gains well until the last three days before day 33, then not half as well. */
const stalls: Trouble = (age) => (age < 30 ? 1 : 0.42);

/** A small known generator (mulberry32), so that the file does not depend on the machine. */
function generator(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A draw near the normal distribution: twelve even ones added up. */
function scatter(random: () => number, spread: number): number {
  let sum = -6;
  for (let i = 0; i < 12; i += 1) sum += random();
  return sum * spread;
}

/** Log units a day that a puppy of that age usually gains. */
function usualGain(age: number): number {
  if (age < 1) return -0.02;
  if (age < 2) return START_GAIN * 0.75;
  const weaning = age >= 23 && age < 26 ? 0.75 : 1;
  return START_GAIN * Math.exp(-FALL * age) * weaning;
}

/** When everyone is weighed: each morning from day 1, each evening in the first two weeks. Minutes. */
function weighInsOf(days: number, random: () => number): number[] {
  const weighIns: number[] = [];
  for (let day = 1; day <= days; day += 1) {
    weighIns.push(day * DAY_MINUTES + 7 * 60 + Math.floor(random() * 20));
    if (day <= 14 && day < days) weighIns.push(day * DAY_MINUTES + 19 * 60 + Math.floor(random() * 25));
  }
  return weighIns;
}

const HOURS = 24;

function weigh(
  plan: Plan,
  index: number,
  weighIns: readonly number[],
  shared: readonly number[],
  random: () => number,
): DemoPuppy {
  const { trouble, ...fields } = plan;
  const pace = 1 + scatter(random, 0.012);
  let wander = 0;
  let log = Math.log(plan.birthGrams);
  let hour = 0;
  const grams = weighIns.map((minute, n) => {
    const until = Math.round(((minute + index - plan.bornMinute) / DAY_MINUTES) * HOURS);
    for (; hour < until; hour += 1) {
      const age = hour / HOURS;
      const gain = usualGain(age);
      if (hour % HOURS === 0) wander = wander * 0.5 + scatter(random, 0.06);
      const part = trouble(age);
      log += (gain * (gain > 0 ? pace * part + wander * Math.min(1, Math.abs(part)) : 1)) / HOURS;
    }
    return Math.round(Math.exp(log + (shared[n] ?? 0) + scatter(random, 0.009)));
  });
  return { ...fields, grams };
}

function litter(seed: number, fields: Omit<DemoLitter, 'puppies' | 'weighIns'>, plans: readonly Plan[]): DemoLitter {
  const random = generator(seed);
  const weighIns = weighInsOf(fields.days, random);
  const shared = weighIns.map(() => scatter(random, 0.004));
  return { ...fields, weighIns, puppies: plans.map((plan, index) => weigh(plan, index, weighIns, shared, random)) };
}

const MEALS = [
  { meal: 'morning', minute: 7 * 60 + 38 },
  { meal: 'midday', minute: 12 * 60 + 46 },
  { meal: 'evening', minute: 18 * 60 + 13 },
] as const;

/** The meals of a day of the litter, noted when the bowls were lifted. `left`: the one that was not cleaned up. */
function mealsOf(day: number, left: (typeof MEALS)[number]['meal'] | null): DemoNote[] {
  return MEALS.map(({ meal, minute }, n) => ({
    puppy: null,
    minute: day * DAY_MINUTES + minute + ((day + n) % 4),
    note: { kind: 'meal', meal, ate: meal === left ? 'left' : 'clean' },
  }));
}

/** A dam's weights: a few before whelping, the evening after it, then once a week. Days count from the day of whelping. */
function weightsOf(weights: readonly (readonly [day: number, kg: number])[]): DemoDam['weights'] {
  return weights.map(([day, kg], n) => ({ minute: day * DAY_MINUTES + 20 * 60 + 7 * (n % 3), kg }));
}

/** Place of the puppy that stays on its step. */
const HELD = 3;

const grown = { breed: 'Upland retriever, our own line', sizeClass: 'medium', adultDogKg: 26, adultBitchKg: 22 } as const;

const yarrows = {
  name: '',
  dam: 'Yarrow',
  sire: 'Larch',
  days: 56,
  whelpedMinute: 130,
  weaning: null,
  damRecord: {
    firstMatingDay: -63,
    lastMatingDay: -61,
    foodKcalPer100g: 180,
    weights: weightsOf([
      [-63, 21.6],
      [-28, 23.2],
      [-3, 28.4],
      [0, 23.6],
      [6, 23.1],
      [14, 22.7],
      [21, 22.2],
      [28, 21.8],
      [35, 21.7],
      [42, 21.8],
      [49, 22],
      [55, 22.1],
    ]),
  },
} as const;
const comfreys = {
  name: '',
  dam: 'Comfrey',
  sire: 'Birch',
  days: 9,
  whelpedMinute: 1005,
  weaning: null,
  damRecord: null,
} as const;
const betonys = {
  name: '',
  dam: 'Betony',
  sire: 'Alder',
  days: 33,
  whelpedMinute: 265,
  weaning: {
    startsDay: 22,
    notes: [
      ...mealsOf(31, null),
      ...mealsOf(32, 'midday'),
      { puppy: HELD, minute: 32 * DAY_MINUTES + 19 * 60 + 5, note: { kind: 'stool', stool: 'soft' } },
      ...mealsOf(33, null).slice(0, 1),
    ],
  },
  damRecord: {
    firstMatingDay: -62,
    lastMatingDay: -60,
    foodKcalPer100g: 180,
    weights: weightsOf([
      [-62, 20.9],
      [-30, 22.1],
      [-2, 25.8],
      [0, 22.6],
      [7, 22.3],
      [14, 21.9],
      [21, 21.4],
      [28, 21.1],
      [32, 21.2],
    ]),
  },
} as const;

/** The demo litters, as the file holds them. */
export function makeDemo(): DemoLitter[] {
  return [
    litter(20_260, { ...grown, ...yarrows }, [
      {
        collar: { letter: 'A', colour: 'red', pattern: 'plain' },
        callName: 'Rowan',
        sex: 'dog',
        markings: 'white toes, left fore',
        bornMinute: 130,
        birthGrams: 372,
        trouble: steady,
      },
      {
        collar: { letter: 'B', colour: 'blue', pattern: 'stripe' },
        callName: 'Campion',
        sex: 'bitch',
        markings: '',
        bornMinute: 158,
        birthGrams: 351,
        trouble: steady,
      },
      {
        collar: { letter: 'C', colour: 'yellow', pattern: 'dots' },
        callName: 'Vetch',
        sex: 'bitch',
        markings: 'small star on the chest',
        bornMinute: 204,
        birthGrams: 344,
        trouble: slipsAndRecovers,
      },
      {
        collar: { letter: 'D', colour: 'green', pattern: 'zigzag' },
        callName: 'Bracken',
        sex: 'dog',
        markings: 'darkest of all',
        bornMinute: 231,
        birthGrams: 389,
        trouble: steady,
      },
      {
        collar: { letter: 'E', colour: 'white', pattern: 'check' },
        callName: 'Mallow',
        sex: 'bitch',
        markings: '',
        bornMinute: 262,
        birthGrams: 362,
        trouble: steady,
      },
      {
        collar: { letter: 'F', colour: 'orange', pattern: 'bars' },
        callName: 'Nettle',
        sex: 'bitch',
        markings: 'smallest, white tail tip',
        bornMinute: 318,
        birthGrams: 303,
        trouble: steady,
      },
      {
        collar: { letter: 'G', colour: 'purple', pattern: 'dots' },
        callName: 'Juniper',
        sex: 'dog',
        markings: 'broad head',
        bornMinute: 349,
        birthGrams: 401,
        trouble: steady,
      },
      {
        collar: { letter: 'H', colour: 'pink', pattern: 'zigzag' },
        callName: 'Teasel',
        sex: 'dog',
        markings: 'kink in the tail tip',
        bornMinute: 407,
        birthGrams: 357,
        trouble: steady,
      },
    ]),
    litter(20_261, { ...grown, ...comfreys }, [
      {
        collar: { letter: 'A', colour: 'red', pattern: 'plain' },
        callName: 'Linden',
        sex: 'dog',
        markings: '',
        bornMinute: 1005,
        birthGrams: 368,
        trouble: steady,
      },
      {
        collar: { letter: 'B', colour: 'blue', pattern: 'stripe' },
        callName: 'Sedge',
        sex: 'dog',
        markings: 'white chin',
        bornMinute: 1031,
        birthGrams: 383,
        trouble: steady,
      },
      {
        collar: { letter: 'C', colour: 'yellow', pattern: 'dots' },
        callName: 'Bryony',
        sex: 'bitch',
        markings: '',
        bornMinute: 1078,
        birthGrams: 349,
        trouble: steady,
      },
      {
        collar: { letter: 'D', colour: 'green', pattern: 'zigzag' },
        callName: 'Fennel',
        sex: 'bitch',
        markings: 'pale, white hind toe',
        bornMinute: 1104,
        birthGrams: 356,
        trouble: fades,
      },
      {
        collar: { letter: 'E', colour: 'white', pattern: 'check' },
        callName: 'Thyme',
        sex: 'bitch',
        markings: '',
        bornMinute: 1152,
        birthGrams: 337,
        trouble: steady,
      },
      {
        collar: { letter: 'F', colour: 'orange', pattern: 'bars' },
        callName: 'Burnet',
        sex: 'dog',
        markings: 'white chest',
        bornMinute: 1189,
        birthGrams: 374,
        trouble: steady,
      },
    ]),
    litter(20_263, { ...grown, ...betonys }, [
      {
        collar: { letter: 'A', colour: 'red', pattern: 'plain' },
        callName: 'Avens',
        sex: 'bitch',
        markings: 'white blaze',
        bornMinute: 265,
        birthGrams: 371,
        trouble: steady,
      },
      {
        collar: { letter: 'B', colour: 'blue', pattern: 'stripe' },
        callName: 'Medlar',
        sex: 'dog',
        markings: '',
        bornMinute: 293,
        birthGrams: 398,
        trouble: steady,
      },
      {
        collar: { letter: 'C', colour: 'yellow', pattern: 'dots' },
        callName: 'Lovage',
        sex: 'bitch',
        markings: '',
        bornMinute: 341,
        birthGrams: 352,
        trouble: steady,
      },
      {
        collar: { letter: 'D', colour: 'green', pattern: 'zigzag' },
        callName: 'Willow',
        sex: 'bitch',
        markings: 'grey about the muzzle',
        bornMinute: 372,
        birthGrams: 363,
        trouble: stalls,
      },
      {
        collar: { letter: 'E', colour: 'white', pattern: 'check' },
        callName: 'Spindle',
        sex: 'dog',
        markings: 'long ears',
        bornMinute: 425,
        birthGrams: 384,
        trouble: steady,
      },
    ]),
  ];
}

if (argv[1]?.endsWith('make.ts') === true) {
  writeFileSync(new URL('../../main/service/demo-litters.json', import.meta.url), `${JSON.stringify(makeDemo(), null, 2)}\n`);
}
