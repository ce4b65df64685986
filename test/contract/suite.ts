/**
 * The contract, walked operation by operation through any dispatch: the service itself, the loopback host by fetch, the
 * desktop wrapper. It leans on no host: only on the list of operations.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type InputOf, OPERATIONS, type OperationName } from '../../core/contract/operations.ts';
import type { ErrorCode, Result, Tag } from '../../core/contract/result.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { usualPlan } from '../../core/weaning/weaning-plan.ts';
import { oneActSuite, togetherSuite } from './together.ts';
import {
  allFacts,
  before,
  call,
  chipCode,
  type Dispatch,
  damFields,
  damWeight,
  dayBefore,
  dogFields,
  foodFields,
  litterFields,
  makeWorld,
  mealNote,
  packFields,
  puppyFields,
  readingFields,
  recipeFields,
  starterFields,
  type World,
  weekOf,
} from './world.ts';

/** Makes a dispatch on an empty data folder. */
export type MakeDispatch = () => Promise<{ dispatch: Dispatch; close(): Promise<void> }>;

/** The world, and what the operations on files need. */
export interface Filed extends World {
  /** A copy among the data folder's own. */
  readonly backup: string;
  /** Another folder on this computer, as a stick would be. */
  readonly otherFolder: string;
}

interface Case<N extends OperationName> {
  /** Input that must be taken, in a world where nothing else was done since. */
  readonly good: (world: Filed) => InputOf<N>;
  /** Errors that a host without the means may answer instead. */
  readonly may?: readonly ErrorCode[];
  /** Done before the good input. */
  readonly first?: (world: Filed) => Promise<unknown>;
  /** Input that fits the schema and must be refused with the code. */
  readonly refused?: readonly (readonly [why: string, code: ErrorCode, input: (world: Filed) => InputOf<N>])[];
  /** Lists of the input that may be empty, as `input.puppies`. */
  readonly mayBeEmpty?: readonly string[];
  /** False for commands that the journal leaves out. */
  readonly undoable?: boolean;
}

type Cases = { readonly [N in OperationName]: Case<N> };

let whole = '';
let grownId = '00000000-0000-4000-8000-000000000001';
const NO_ID = '00000000-0000-4000-8000-000000000000';
const weighed = (w: World) => w.puppies[0]?.id ?? '';
const other = (w: World) => w.puppies[1]?.id ?? '';
const now = (w: World) => readingFields(before(w.clock, 0, 1), 1010.5);
const early = (w: World) => readingFields(before(w.clock, 22), 300);
const late = (w: World) => readingFields(before(w.clock, -2), 1100);
const weaningPlan = (w: World) => usualPlan(dayBefore(w.clock, 20), dayBefore(w.clock, -1));
const birth = (w: World, puppyId: string, days: number) => {
  const { local, instant } = before(w.clock, days);
  return { puppyId, bornAt: local, bornInstant: instant };
};
const twisted = (w: World) => ({ ...now(w), at: before(w.clock, 2).local });

const CASES: Cases = {
  'litter.all': { good: () => ({}) },
  'litter.begin': {
    mayBeEmpty: ['input.puppies'],
    good: (w) => ({
      litter: { ...litterFields(w.clock, 'Bryony'), name: 'The “autumn” litter — ünïcode ✓' },
      puppies: [
        { fields: puppyFields(w.clock, 0), birthWeight: { grams: 341.5, typed: '341.5', unit: 'g', source: 'scale' } },
        { fields: puppyFields(w.clock, 1), birthWeight: null },
      ],
    }),
    refused: [
      [
        'whelped next week',
        'bad-input',
        (w) => {
          const later = before(w.clock, -7);
          const litter = { ...litterFields(w.clock, 'Bryony'), whelpedAt: later.local, whelpedInstant: later.instant };
          return { litter, puppies: [] };
        },
      ],
      [
        'a letter twice',
        'conflict',
        (w) => {
          const puppy = { fields: puppyFields(w.clock, 0), birthWeight: null };
          return { litter: litterFields(w.clock, 'Bryony'), puppies: [puppy, puppy] };
        },
      ],
      [
        'a puppy born a week before',
        'bad-input',
        (w) => {
          const born = before(w.clock, 27);
          const fields = { ...puppyFields(w.clock, 0), bornAt: born.local, bornInstant: born.instant };
          return { litter: litterFields(w.clock, 'Bryony'), puppies: [{ fields, birthWeight: null }] };
        },
      ],
    ],
  },
  'litter.change': {
    good: (w) => ({
      litterId: w.litter.id,
      change: { ...litterFields(w.clock, 'Yarrow'), name: 'First of the year', sizeClass: null, adultDogKg: null },
    }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, change: litterFields(w.clock, 'Yarrow') })],
      [
        'whelped after its weighings',
        'bad-input',
        (w) => {
          const later = before(w.clock, 1);
          return {
            litterId: w.litter.id,
            change: { ...litterFields(w.clock, 'Yarrow'), whelpedAt: later.local, whelpedInstant: later.instant },
          };
        },
      ],
    ],
  },
  'litter.remove': {
    good: (w) => ({ litterId: w.emptyLitter.id }),
    refused: [
      ['weighed', 'refused', (w) => ({ litterId: w.litter.id })],
      ['no such litter', 'not-found', () => ({ litterId: NO_ID })],
    ],
  },
  'litter.addPuppy': {
    good: (w) => ({
      litterId: w.litter.id,
      fields: puppyFields(w.clock, 4),
      birthWeight: { grams: 341.5, typed: '341.5', unit: 'g', source: 'scale' },
    }),
    refused: [
      ['letter taken', 'conflict', (w) => ({ litterId: w.litter.id, fields: puppyFields(w.clock, 1), birthWeight: null })],
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, fields: puppyFields(w.clock, 4), birthWeight: null })],
      [
        'born a week before the litter',
        'bad-input',
        (w) => {
          const born = before(w.clock, 27);
          return {
            litterId: w.litter.id,
            fields: { ...puppyFields(w.clock, 4), bornAt: born.local, bornInstant: born.instant },
            birthWeight: null,
          };
        },
      ],
    ],
  },
  'litter.changePuppy': {
    good: (w) => ({ puppyId: other(w), change: { ...puppyFields(w.clock, 5), callName: 'Mallow' } }),
    refused: [
      ['letter taken', 'conflict', (w) => ({ puppyId: other(w), change: puppyFields(w.clock, 0) })],
      [
        'letter alone taken',
        'conflict',
        (w) => ({ puppyId: other(w), change: { collar: { letter: w.puppies[0]?.collar.letter ?? 'A' } } }),
      ],
      ['a clock without its instant', 'bad-input', (w) => ({ puppyId: other(w), change: { bornAt: before(w.clock, 18).local } })],
      ['no such puppy', 'not-found', (w) => ({ puppyId: NO_ID, change: puppyFields(w.clock, 5) })],
    ],
  },
  'litter.moveBirths': {
    good: (w) => ({
      litterId: w.litter.id,
      births: [...w.puppies, w.unweighed].map((p, i) => {
        const born = before(w.clock, 19, -i);
        return { puppyId: p.id, bornAt: born.local, bornInstant: born.instant };
      }),
    }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, births: [birth(w, other(w), 19)] })],
      ['no such puppy', 'not-found', (w) => ({ litterId: w.litter.id, births: [birth(w, other(w), 19), birth(w, NO_ID, 19)] })],
      ['a puppy of another litter', 'bad-input', (w) => ({ litterId: w.emptyLitter.id, births: [birth(w, other(w), 19)] })],
      [
        'one named twice',
        'bad-input',
        (w) => ({ litterId: w.litter.id, births: [birth(w, other(w), 19), birth(w, other(w), 19)] }),
      ],
      [
        'one a week before the litter',
        'bad-input',
        (w) => ({ litterId: w.litter.id, births: [birth(w, weighed(w), 19), birth(w, other(w), 27)] }),
      ],
    ],
  },
  'litter.removePuppy': {
    good: (w) => ({ puppyId: w.unweighed.id }),
    refused: [
      ['weighed', 'refused', (w) => ({ puppyId: other(w) })],
      ['no such puppy', 'not-found', () => ({ puppyId: NO_ID })],
    ],
  },
  'litter.setState': {
    good: (w) => ({ puppyId: other(w), state: 'kept', on: dayBefore(w.clock, 1) }),
    refused: [
      ['before birth', 'bad-input', (w) => ({ puppyId: other(w), state: 'died', on: dayBefore(w.clock, 30) })],
      ['gone home on no day', 'bad-input', (w) => ({ puppyId: other(w), state: 'home', on: null })],
      ['no such puppy', 'not-found', () => ({ puppyId: NO_ID, state: 'litter', on: null })],
    ],
  },
  'litter.arrange': {
    good: (w) => ({ litterId: w.litter.id, puppyIds: [w.unweighed.id, ...w.puppies.map((p) => p.id).reverse()] }),
    refused: [
      ['one is missing', 'conflict', (w) => ({ litterId: w.litter.id, puppyIds: w.puppies.map((p) => p.id) })],
      [
        'one is named twice',
        'bad-input',
        (w) => ({ litterId: w.litter.id, puppyIds: [...w.puppies.map((p) => p.id), other(w)] }),
      ],
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, puppyIds: [other(w)] })],
    ],
  },

  'growth.readings': {
    good: (w) => ({ litterId: w.litter.id }),
    refused: [['no such litter', 'not-found', () => ({ litterId: NO_ID })]],
  },
  'growth.line': {
    good: (w) => ({ litterId: w.litter.id }),
    refused: [['no such litter', 'not-found', () => ({ litterId: NO_ID })]],
  },
  'growth.record': {
    good: (w) => ({ puppyId: other(w), reading: now(w) }),
    refused: [
      ['no such puppy', 'not-found', (w) => ({ puppyId: NO_ID, reading: now(w) })],
      ['before the birth', 'bad-input', (w) => ({ puppyId: other(w), reading: early(w) })],
      ['in the future', 'bad-input', (w) => ({ puppyId: other(w), reading: late(w) })],
      ['clock and instant apart', 'bad-input', (w) => ({ puppyId: other(w), reading: twisted(w) })],
    ],
  },
  'growth.correct': {
    good: (w) => ({ readingId: w.reading.id, reading: { ...now(w), typed: '1 010,5', grams: 1010.5 } }),
    refused: [
      ['no such reading', 'not-found', (w) => ({ readingId: NO_ID, reading: now(w) })],
      ['before the birth', 'bad-input', (w) => ({ readingId: w.reading.id, reading: early(w) })],
    ],
  },
  'growth.withdraw': {
    good: (w) => ({ readingId: w.reading.id }),
    refused: [['no such reading', 'not-found', () => ({ readingId: NO_ID })]],
  },
  'growth.recordWeighing': {
    good: (w) => ({
      litterId: w.litter.id,
      readings: [...w.puppies, w.unweighed].map((p, i) => ({
        puppyId: p.id,
        reading: readingFields(before(w.clock, 0, 9), 1000 + i),
      })),
    }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, readings: [{ puppyId: other(w), reading: now(w) }] })],
      [
        'no such puppy',
        'not-found',
        (w) => ({
          litterId: w.litter.id,
          readings: [
            { puppyId: other(w), reading: now(w) },
            { puppyId: NO_ID, reading: now(w) },
          ],
        }),
      ],
      [
        'a puppy of another litter',
        'bad-input',
        (w) => ({ litterId: w.emptyLitter.id, readings: [{ puppyId: other(w), reading: now(w) }] }),
      ],
      [
        'one weight before the birth',
        'bad-input',
        (w) => ({
          litterId: w.litter.id,
          readings: [
            { puppyId: other(w), reading: now(w) },
            { puppyId: weighed(w), reading: early(w) },
          ],
        }),
      ],
    ],
  },
  'growth.correctWeighing': {
    good: (w) => ({
      litterId: w.litter.id,
      corrections: [
        { readingId: w.reading.id, change: { at: before(w.clock, 2).local, instant: before(w.clock, 2).instant } },
        { readingId: w.held.id, change: { grams: 1012.5, typed: '1 012,5', held: false } },
      ],
    }),
    refused: [
      [
        'no such litter',
        'not-found',
        (w) => ({ litterId: NO_ID, corrections: [{ readingId: w.reading.id, change: { grams: 900 } }] }),
      ],
      [
        'no such reading',
        'not-found',
        (w) => ({ litterId: w.litter.id, corrections: [{ readingId: NO_ID, change: { grams: 900 } }] }),
      ],
      [
        'a reading of another litter',
        'bad-input',
        (w) => ({ litterId: w.emptyLitter.id, corrections: [{ readingId: w.reading.id, change: { grams: 900 } }] }),
      ],
      [
        'one named twice',
        'bad-input',
        (w) => ({
          litterId: w.litter.id,
          corrections: [
            { readingId: w.reading.id, change: { grams: 900 } },
            { readingId: w.reading.id, change: { grams: 901 } },
          ],
        }),
      ],
      [
        'one before the birth',
        'bad-input',
        (w) => ({
          litterId: w.litter.id,
          corrections: [
            { readingId: w.held.id, change: { grams: 900 } },
            { readingId: w.reading.id, change: { at: before(w.clock, 22).local, instant: before(w.clock, 22).instant } },
          ],
        }),
      ],
      [
        'a clock without its instant',
        'bad-input',
        (w) => ({
          litterId: w.litter.id,
          corrections: [{ readingId: w.reading.id, change: { at: before(w.clock, 4).local } }],
        }),
      ],
    ],
  },
  'growth.keep': {
    good: (w) => ({ readingIds: [w.held.id, w.reading.id] }),
    refused: [
      ['no such reading', 'not-found', () => ({ readingIds: [NO_ID] })],
      ['one of them is not there', 'not-found', (w) => ({ readingIds: [w.held.id, NO_ID] })],
      ['one named twice', 'bad-input', (w) => ({ readingIds: [w.held.id, w.held.id] })],
    ],
  },
  'growth.give': {
    good: (w) => ({ readingId: w.held.id, puppyId: w.unweighed.id }),
    refused: [
      ['no such reading', 'not-found', (w) => ({ readingId: NO_ID, puppyId: w.unweighed.id })],
      ['no such puppy', 'not-found', (w) => ({ readingId: w.held.id, puppyId: NO_ID })],
      ['to the puppy whose it is', 'bad-input', (w) => ({ readingId: w.held.id, puppyId: w.held.puppyId })],
    ],
  },
  'growth.exchange': {
    good: (w) => ({ readingId: w.reading.id, withReadingId: w.held.id }),
    refused: [
      ['no such reading', 'not-found', (w) => ({ readingId: NO_ID, withReadingId: w.held.id })],
      ['with itself', 'bad-input', (w) => ({ readingId: w.reading.id, withReadingId: w.reading.id })],
    ],
  },

  'feeding.rules': { good: () => ({}) },
  'feeding.setRules': {
    good: (w) => ({ from: dayBefore(w.clock, 0), change: { ...DEFAULT_RULES, shareYoung: 0.06, stepDays: 10 } }),
    refused: [
      ['shares that rise', 'bad-input', (w) => ({ from: dayBefore(w.clock, 0), change: { ...DEFAULT_RULES, shareAdult: 0.05 } })],
    ],
  },

  'feeding.setLitterRules': {
    good: (w) => ({ litterId: w.litter.id, from: dayBefore(w.clock, 0), change: { ...DEFAULT_RULES, shareYoung: 0.07 } }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, from: dayBefore(w.clock, 0), change: null })],
      [
        'ages that fall',
        'bad-input',
        (w) => ({ litterId: w.litter.id, from: dayBefore(w.clock, 0), change: { ...DEFAULT_RULES, middleMonths: 4 } }),
      ],
    ],
  },
  'food.all': { good: () => ({}) },
  'food.add': {
    good: () => ({ fields: foodFields('Chest mix') }),
    refused: [
      ['parts over a hundred', 'bad-input', () => ({ fields: foodFields('Too much', { water: 80, protein: 30 }) })],
      ['a recipe that leaves half out', 'bad-input', (w) => ({ fields: recipeFields([[w.foodId, 0.5]]) })],
      ['a recipe of nothing there', 'bad-input', () => ({ fields: recipeFields([[NO_ID, 1]]) })],
    ],
  },
  'food.change': {
    good: (w) => ({ foodId: w.foodId, change: foodFields('Lean mix, changed') }),
    refused: [
      ['no such food', 'not-found', () => ({ foodId: NO_ID, change: foodFields('Nothing') })],
      [
        'parts over a hundred',
        'bad-input',
        (w) => ({ foodId: w.foodId, change: foodFields('Too much', { water: 80, protein: 30 }) }),
      ],
      ['a recipe of itself', 'bad-input', (w) => ({ foodId: w.foodId, change: recipeFields([[w.foodId, 1]]) })],
      [
        'a recipe of itself alone',
        'bad-input',
        (w) => ({ foodId: w.foodId, change: { made: recipeFields([[w.foodId, 1]]).made } }),
      ],
    ],
  },
  'food.retire': {
    good: (w) => ({ foodId: w.foodId, retired: true }),
    refused: [['no such food', 'not-found', () => ({ foodId: NO_ID, retired: true })]],
  },
  'food.feedings': { good: () => ({}) },
  'food.choose': {
    good: (w) => ({ litterId: w.litter.id, foodId: w.foodId }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, foodId: w.foodId })],
      ['no such food', 'not-found', (w) => ({ litterId: w.litter.id, foodId: NO_ID })],
    ],
  },
  'food.setWeek': {
    good: (w) => ({ litterId: w.litter.id, week: weekOf(w.foodId) }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, week: weekOf(w.foodId) })],
      ['no such food', 'not-found', (w) => ({ litterId: w.litter.id, week: weekOf(NO_ID) })],
      ['shares that leave half out', 'bad-input', (w) => ({ litterId: null, week: weekOf(w.foodId, 0.5) })],
    ],
  },
  'food.changeWeek': {
    good: (w) => ({
      litterId: w.litter.id,
      bowls: [
        { day: 2, meal: 'midday', bowl: { kind: 'foods', parts: [{ foodId: w.foodId, share: 1 }] } },
        { day: 6, meal: 'evening', bowl: null },
      ],
    }),
    refused: [
      ['no such litter', 'not-found', () => ({ litterId: NO_ID, bowls: [{ day: 0, meal: 'morning', bowl: null }] })],
      [
        'no such food',
        'not-found',
        (w) => ({
          litterId: w.litter.id,
          bowls: [{ day: 0, meal: 'morning', bowl: { kind: 'bone', foodId: NO_ID, pieces: 2, pieceGrams: 90 } }],
        }),
      ],
    ],
  },
  'dogs.all': { good: () => ({}) },
  'dogs.addGrown': { good: () => ({ dog: { name: 'Comfrey', kg: 22.5 } }) },
  'dogs.removeGrown': {
    good: () => ({ dogId: grownId }),
    first: async (w) => {
      const { dog } = await call(w.dispatch, 'dogs.addGrown', { dog: { name: 'Comfrey', kg: 22.5 } });
      grownId = dog.id;
    },
    refused: [['no such dog', 'not-found', () => ({ dogId: NO_ID })]],
  },

  'care.chips': {
    good: (w) => ({ litterId: w.litter.id }),
    refused: [['no such litter', 'not-found', () => ({ litterId: NO_ID })]],
  },
  'care.setChip': {
    good: (w) => ({ puppyId: weighed(w), change: { code: chipCode(), day: dayBefore(w.clock, 1), by: 'the vet' } }),
    refused: [
      ['no such puppy', 'not-found', () => ({ puppyId: NO_ID, change: { code: chipCode() } })],
      ['no number yet', 'bad-input', (w) => ({ puppyId: weighed(w), change: { by: 'the vet' } })],
      ['a number that another puppy has', 'conflict', (w) => ({ puppyId: weighed(w), change: { code: w.chip.code } })],
      ['a number for tests', 'refused', (w) => ({ puppyId: weighed(w), change: { code: '999000000000001' } })],
      [
        'before the birth',
        'bad-input',
        (w) => ({ puppyId: weighed(w), change: { code: chipCode(), day: dayBefore(w.clock, 400) } }),
      ],
      ['a day to come', 'bad-input', (w) => ({ puppyId: weighed(w), change: { code: chipCode(), day: dayBefore(w.clock, -2) } })],
    ],
  },
  'care.removeChip': {
    good: (w) => ({ puppyId: w.chip.id }),
    refused: [
      ['no such puppy', 'not-found', () => ({ puppyId: NO_ID })],
      ['it has none', 'not-found', (w) => ({ puppyId: weighed(w) })],
    ],
  },
  'weaning.plan': {
    good: (w) => ({ litterId: w.litter.id }),
    refused: [['no such litter', 'not-found', () => ({ litterId: NO_ID })]],
  },
  'weaning.setPlan': {
    good: (w) => ({ litterId: w.litter.id, plan: usualPlan(dayBefore(w.clock, 20), dayBefore(w.clock, -2)) }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ litterId: NO_ID, plan: weaningPlan(w) })],
      [
        'before the birth',
        'bad-input',
        (w) => ({ litterId: w.litter.id, plan: { ...weaningPlan(w), starts: dayBefore(w.clock, 30) } }),
      ],
      [
        'a year later',
        'bad-input',
        (w) => ({ litterId: w.litter.id, plan: { ...weaningPlan(w), starts: dayBefore(w.clock, -300) } }),
      ],
      [
        'shares that fall',
        'bad-input',
        (w) => ({ litterId: w.litter.id, plan: { ...weaningPlan(w), steps: [...weaningPlan(w).steps].reverse() } }),
      ],
    ],
  },
  'weaning.changePlan': {
    good: (w) => ({ litterId: w.litter.id, change: { starts: dayBefore(w.clock, -4), liftMinutes: 25, atOneBowl: 3 } }),
    first: (w) => call(w.dispatch, 'weaning.setPlan', { litterId: w.litter.id, plan: weaningPlan(w) }),
    refused: [
      ['no such litter', 'not-found', () => ({ litterId: NO_ID, change: { atOneBowl: 3 } })],
      ['no plan', 'not-found', (w) => ({ litterId: w.emptyLitter.id, change: { atOneBowl: 3 } })],
    ],
  },
  'weaning.changeSteps': {
    good: (w) => ({
      litterId: w.litter.id,
      to: { kind: 'change', place: 0, step: { share: 0.02, texture: 'thick gruel', days: 5 } },
    }),
    first: (w) => call(w.dispatch, 'weaning.setPlan', { litterId: w.litter.id, plan: weaningPlan(w) }),
    refused: [
      ['no such litter', 'not-found', () => ({ litterId: NO_ID, to: { kind: 'add' } })],
      ['no plan', 'not-found', (w) => ({ litterId: w.emptyLitter.id, to: { kind: 'usual' } })],
    ],
  },
  'weaning.dropPlan': {
    good: (w) => ({ litterId: w.litter.id }),
    first: (w) => call(w.dispatch, 'weaning.setPlan', { litterId: w.litter.id, plan: weaningPlan(w) }),
    refused: [['no plan', 'not-found', (w) => ({ litterId: w.emptyLitter.id })]],
  },
  'weaning.note': {
    good: (w) => mealNote(w),
    refused: [
      ['no such litter', 'not-found', (w) => ({ ...mealNote(w), litterId: NO_ID })],
      ['no such puppy', 'not-found', (w) => ({ ...mealNote(w), puppyId: NO_ID })],
      ['a puppy of another litter', 'bad-input', (w) => ({ ...mealNote(w), litterId: w.emptyLitter.id, puppyId: other(w) })],
      ['before the birth', 'bad-input', (w) => ({ ...mealNote(w), day: dayBefore(w.clock, 40) })],
      ['clock and instant apart', 'bad-input', (w) => ({ ...mealNote(w), at: before(w.clock, 2).local })],
    ],
  },
  'weaning.takeBack': {
    good: (w) => ({ eventId: w.eventId }),
    refused: [['no such note', 'not-found', () => ({ eventId: NO_ID })]],
  },
  'dogs.dams': { good: () => ({}) },
  'dogs.damBegin': {
    good: (w) => damFields(w, 'Bryony'),
    refused: [
      ['no such litter', 'not-found', (w) => ({ ...damFields(w, 'Bryony'), litterId: NO_ID })],
      ['the litter has its dam', 'conflict', (w) => ({ ...damFields(w, 'Bryony'), litterId: w.litter.id })],
      ['mated tomorrow', 'bad-input', (w) => ({ ...damFields(w, 'Bryony'), firstMating: dayBefore(w.clock, -1) })],
      [
        'mated backwards',
        'bad-input',
        (w) => ({ ...damFields(w, 'Bryony'), firstMating: dayBefore(w.clock, 10), lastMating: dayBefore(w.clock, 12) }),
      ],
      [
        'mated after whelping',
        'bad-input',
        (w) => ({ ...damFields(w, 'Bryony'), litterId: w.emptyLitter.id, firstMating: dayBefore(w.clock, 3) }),
      ],
    ],
  },
  'dogs.damChange': {
    good: (w) => ({ damId: w.damId, change: { ...damFields(w, 'Yarrow'), litterId: w.litter.id, foodKcalPer100g: 210.5 } }),
    refused: [
      ['no such dam', 'not-found', (w) => ({ damId: NO_ID, change: damFields(w, 'Yarrow') })],
      ['no such litter', 'not-found', (w) => ({ damId: w.damId, change: { ...damFields(w, 'Yarrow'), litterId: NO_ID } })],
    ],
  },
  'dogs.damRemove': {
    good: (w) => ({ damId: w.damId }),
    refused: [['no such dam', 'not-found', () => ({ damId: NO_ID })]],
  },
  'dogs.damWeigh': {
    good: (w) => ({ damId: w.damId, weight: damWeight(w, 21_400) }),
    refused: [
      ['no such dam', 'not-found', (w) => ({ damId: NO_ID, weight: damWeight(w, 21_400) })],
      [
        'clock and instant apart',
        'bad-input',
        (w) => ({ damId: w.damId, weight: { ...damWeight(w, 21_400), at: before(w.clock, 2).local } }),
      ],
    ],
  },
  'dogs.damWithdraw': {
    good: (w) => ({ weightId: w.damWeightId }),
    refused: [['no such weight', 'not-found', () => ({ weightId: NO_ID })]],
  },

  'freezer.stock': { good: (w) => ({ since: dayBefore(w.clock, 30) }) },
  'freezer.demand': {
    good: (w) => ({ from: dayBefore(w.clock, 30), until: dayBefore(w.clock, -60) }),
    refused: [['two years', 'bad-input', (w) => ({ from: dayBefore(w.clock, 700), until: dayBefore(w.clock, 0) })]],
  },
  'freezer.add': {
    good: (w) => ({ count: 10, pack: { ...packFields(w.clock), place: 'Türfach “unten”' } }),
    refused: [
      ['no such food', 'not-found', (w) => ({ count: 1, pack: { ...packFields(w.clock), foodId: NO_ID } })],
      ['frozen tomorrow', 'bad-input', (w) => ({ count: 1, pack: { ...packFields(w.clock), frozenOn: dayBefore(w.clock, -3) } })],
      [
        'best before it was frozen',
        'bad-input',
        (w) => ({ count: 1, pack: { ...packFields(w.clock), bestBefore: dayBefore(w.clock, 20) } }),
      ],
    ],
  },
  'freezer.changePacks': {
    good: (w) => ({
      packIds: [...w.packIds],
      change: { frozenOn: dayBefore(w.clock, 12), bestBefore: null, price: null, place: 'chest' },
    }),
    refused: [
      ['frozen tomorrow', 'bad-input', (w) => ({ packIds: [...w.packIds], change: { frozenOn: dayBefore(w.clock, -3) } })],
      [
        'best before it was frozen',
        'bad-input',
        (w) => ({ packIds: [...w.packIds], change: { bestBefore: dayBefore(w.clock, 20) } }),
      ],
      [
        'no such pack',
        'not-found',
        (w) => ({ packIds: [NO_ID], change: { frozenOn: dayBefore(w.clock, 12), bestBefore: null, price: 1, place: '' } }),
      ],
    ],
  },
  'freezer.count': {
    good: (w) => ({
      on: dayBefore(w.clock, 0),
      counts: [
        { packIds: [w.packIds[0]], there: 3 },
        { packIds: [w.packIds[1]], there: 0 },
      ],
    }),
    refused: [
      ['no such pack', 'not-found', (w) => ({ on: dayBefore(w.clock, 0), counts: [{ packIds: [NO_ID], there: 3 }] })],
      [
        'counted twice',
        'bad-input',
        (w) => ({ on: dayBefore(w.clock, 0), counts: [{ packIds: [w.packIds[0], w.packIds[0]], there: 1 }] }),
      ],
    ],
  },
  'freezer.takeOut': {
    good: (w) => ({ packIds: [...w.packIds], way: 'given', on: dayBefore(w.clock, 0) }),
    refused: [['no such pack', 'not-found', (w) => ({ packIds: [NO_ID], way: 'used', on: dayBefore(w.clock, 0) })]],
  },
  'freezer.thaw': {
    good: (w) => ({
      takes: [
        { packId: w.packIds[0], portions: 4 },
        { packId: w.packIds[1], portions: 2 },
      ],
      at: w.clock.local,
      instant: w.clock.instant,
      way: 'refrigerator',
    }),
    refused: [
      [
        'no such pack',
        'not-found',
        (w) => ({ takes: [{ packId: NO_ID, portions: 1 }], at: w.clock.local, instant: w.clock.instant, way: 'counter' }),
      ],
      [
        'more than is left',
        'conflict',
        (w) => ({
          takes: [{ packId: w.packIds[1], portions: 4 }],
          at: w.clock.local,
          instant: w.clock.instant,
          way: 'refrigerator',
        }),
      ],
      [
        'planned on the counter',
        'refused',
        (w) => {
          const later = before(w.clock, 0, -60);
          return { takes: [{ packId: w.packIds[0], portions: 1 }], at: later.local, instant: later.instant, way: 'counter' };
        },
      ],
      [
        'later today',
        'bad-input',
        (w) => {
          const later = before(w.clock, 0, -60);
          return { takes: [{ packId: w.packIds[0], portions: 1 }], at: later.local, instant: later.instant, way: 'refrigerator' };
        },
      ],
      [
        'before it was frozen',
        'bad-input',
        (w) => {
          const then = before(w.clock, 30);
          return { takes: [{ packId: w.packIds[0], portions: 1 }], at: then.local, instant: then.instant, way: 'refrigerator' };
        },
      ],
    ],
  },
  'freezer.endThaw': {
    good: (w) => ({ thawIds: [w.thawId], ended: 'thrown', at: w.clock.local, instant: w.clock.instant }),
    refused: [
      ['no such pack', 'not-found', (w) => ({ thawIds: [NO_ID], ended: 'used', at: w.clock.local, instant: w.clock.instant })],
      [
        'before it was taken out',
        'bad-input',
        (w) => {
          const then = before(w.clock, 2);
          return { thawIds: [w.thawId], ended: 'used', at: then.local, instant: then.instant };
        },
      ],
    ],
  },
  'freezer.addDog': {
    good: (w) => ({ fields: { ...dogFields(w.clock, 'Campion'), damId: w.damId } }),
    refused: [
      ['no such food', 'not-found', (w) => ({ fields: { ...dogFields(w.clock, 'Sorrel'), foodId: NO_ID } })],
      ['no such dam', 'not-found', (w) => ({ fields: { ...dogFields(w.clock, 'Sorrel'), damId: NO_ID } })],
      [
        'ends before it begins',
        'bad-input',
        (w) => ({ fields: { ...dogFields(w.clock, 'Sorrel'), untilDay: dayBefore(w.clock, 3) } }),
      ],
    ],
  },
  'freezer.changeDog': {
    good: (w) => ({ dogId: w.dogId, change: { ...dogFields(w.clock, 'Sorrel'), gramsADay: 620.5, damId: w.damId } }),
    refused: [
      ['no such dog', 'not-found', (w) => ({ dogId: NO_ID, change: dogFields(w.clock, 'Sorrel') })],
      ['no such food', 'not-found', (w) => ({ dogId: w.dogId, change: { foodId: NO_ID } })],
      ['no such dam', 'not-found', (w) => ({ dogId: w.dogId, change: { damId: NO_ID } })],
      ['ends before it begins', 'bad-input', (w) => ({ dogId: w.dogId, change: { untilDay: dayBefore(w.clock, 3) } })],
    ],
  },
  'freezer.removeDog': {
    good: (w) => ({ dogId: w.dogId }),
    refused: [['no such dog', 'not-found', () => ({ dogId: NO_ID })]],
  },
  'freezer.addStarter': {
    good: (w) => ({ fields: { ...starterFields(w.clock), who: 'Puppy B' } }),
    refused: [['no such food', 'not-found', (w) => ({ fields: { ...starterFields(w.clock), foodId: NO_ID } })]],
  },
  'freezer.changeStarter': {
    good: (w) => ({ starterId: w.starterId, change: { ...starterFields(w.clock), who: 'Puppy B' } }),
    refused: [
      ['no such starter pack', 'not-found', (w) => ({ starterId: NO_ID, change: starterFields(w.clock) })],
      ['no such food', 'not-found', (w) => ({ starterId: w.starterId, change: { foodId: NO_ID } })],
    ],
  },
  'freezer.removeStarter': {
    good: (w) => ({ starterId: w.starterId }),
    refused: [['no such starter pack', 'not-found', () => ({ starterId: NO_ID })]],
  },
  'freezer.setSettings': { good: () => ({ change: { moveAt: 'evening', roomGrams: 12_000, money: '€' } }) },

  'homing.handOver': {
    good: (w) => ({ puppyId: other(w), on: dayBefore(w.clock, 0), leaves: true }),
    refused: [
      ['no such puppy', 'not-found', (w) => ({ puppyId: NO_ID, on: dayBefore(w.clock, 0), leaves: false })],
      ['before birth', 'bad-input', (w) => ({ puppyId: other(w), on: dayBefore(w.clock, 30), leaves: false })],
    ],
  },
  'homing.handedOver': {
    good: (w) => ({ litterId: w.litter.id }),
    refused: [['no such litter', 'not-found', () => ({ litterId: NO_ID })]],
  },
  'records.paper': {
    good: (w) => ({ of: { kind: 'prep', litterId: w.litter.id, day: dayBefore(w.clock, -3) } }),
    first: (w) => call(w.dispatch, 'weaning.setPlan', { litterId: w.litter.id, plan: weaningPlan(w) }),
    refused: [
      ['no such litter', 'not-found', (w) => ({ of: { kind: 'prep', litterId: NO_ID, day: dayBefore(w.clock, 0) } })],
      ['no such plan', 'not-found', () => ({ of: { kind: 'handed-over', planId: NO_ID } })],
      ['no such puppy', 'not-found', (w) => ({ of: { kind: 'puppy', puppyId: NO_ID, on: dayBefore(w.clock, 0) } })],
      ['before birth', 'bad-input', (w) => ({ of: { kind: 'puppy', puppyId: weighed(w), on: dayBefore(w.clock, 30) } })],
    ],
  },
  'records.savePaper': {
    good: (w) => ({ of: { kind: 'prep', litterId: w.litter.id, day: dayBefore(w.clock, -3) }, paper: 'a4' }),
    may: ['no-printer'],
    first: (w) => call(w.dispatch, 'weaning.setPlan', { litterId: w.litter.id, plan: weaningPlan(w) }),
    refused: [
      [
        'no such litter',
        'not-found',
        (w) => ({ of: { kind: 'prep', litterId: NO_ID, day: dayBefore(w.clock, 0) }, paper: 'letter' }),
      ],
      [
        'no plan',
        'refused',
        (w) => ({ of: { kind: 'prep', litterId: w.emptyLitter.id, day: dayBefore(w.clock, 0) }, paper: 'letter' }),
      ],
      ['no such plan', 'not-found', () => ({ of: { kind: 'handed-over', planId: NO_ID }, paper: 'letter' })],
      ['no such puppy', 'not-found', (w) => ({ of: { kind: 'puppy', puppyId: NO_ID, on: dayBefore(w.clock, 0) }, paper: 'a4' })],
    ],
  },
  'records.paperFile': {
    // Where no PDF can be made there is none to read.
    good: () => ({ file: 'Vetch.pdf' }),
    may: ['not-found'],
    refused: [
      ['up and out', 'bad-input', () => ({ file: '../whelpside.sqlite' })],
      ['up and out of a PDF', 'bad-input', () => ({ file: '..\\..\\x.pdf' })],
      ['absolute', 'bad-input', () => ({ file: '/etc/passwd.pdf' })],
      ['encoded', 'bad-input', () => ({ file: '..%2Fx.pdf' })],
      ['hidden', 'bad-input', () => ({ file: '.pdf' })],
      ['not there', 'not-found', () => ({ file: 'nobody.pdf' })],
    ],
  },

  'people.house': { good: () => ({}) },
  'people.setHouse': {
    good: () => ({
      change: { ...DEFAULT_HOUSE, breederName: 'A. Breeder', massUnit: 'lboz', theme: 'night', scaleStepGrams: 2 },
    }),
  },
  'records.status': { good: () => ({}) },
  'records.done': { good: () => ({ limit: 500 }) },
  'records.undo': { good: () => ({}), undoable: false },
  'records.redo': { good: () => ({}), undoable: false, first: (w) => call(w.dispatch, 'records.undo', {}) },
  'records.backUp': { good: () => ({}) },
  'records.backUpTo': {
    good: (w) => ({ folder: w.otherFolder }),
    refused: [
      ['a folder that is not there', 'not-found', (w) => ({ folder: join(w.otherFolder, 'none') })],
      ['not a whole path', 'bad-input', () => ({ folder: 'backups' })],
      ['up from somewhere', 'bad-input', () => ({ folder: '../..' })],
    ],
  },
  'records.backupsIn': {
    good: (w) => ({ folder: w.otherFolder }),
    refused: [
      ['a folder that is not there', 'not-found', (w) => ({ folder: join(w.otherFolder, 'none') })],
      ['not a whole path', 'bad-input', () => ({ folder: '.' })],
    ],
  },
  'records.chooseFolder': { good: () => ({}), may: ['refused'] },
  'records.restore': {
    good: (w) => ({ folder: null, file: w.backup }),
    refused: [
      ['a copy that is not there', 'not-found', () => ({ folder: null, file: 'whelpside-2020-01-01-daily.sqlite' })],
      ['the data file itself', 'not-found', () => ({ folder: null, file: '../whelpside.sqlite' })],
      ['a file that is no copy', 'not-found', (w) => ({ folder: w.otherFolder, file: 'passwd' })],
      ['a folder that is not there', 'not-found', (w) => ({ folder: join(w.otherFolder, 'none'), file: w.backup })],
    ],
  },
  'records.rescue': { good: () => ({}) },
  'records.beginAnew': { good: () => ({}), may: ['refused'], refused: [['a file that is in order', 'refused', () => ({})]] },
  'records.tryAgain': { good: () => ({}), may: ['refused'], refused: [['a file that is in order', 'refused', () => ({})]] },
  'records.elsewhere': {
    good: (w) => ({ folder: w.otherFolder, takeAlong: false }),
    may: ['refused'],
    refused: [['a file that is in order', 'refused', (w) => ({ folder: w.otherFolder, takeAlong: true })]],
  },
  'records.faults': { good: () => ({}) },
  'records.salvage': { good: () => ({}), may: ['refused'], refused: [['a file that is in order', 'refused', () => ({})]] },
  'records.takeAsItIs': { good: () => ({}), may: ['refused'], refused: [['a file that is in order', 'refused', () => ({})]] },
  'people.all': { good: () => ({}) },
  'people.export': {
    good: () => ({ personId: 'person-breeder' }),
    first: (w) => call(w.dispatch, 'people.setHouse', { change: { ...DEFAULT_HOUSE, breederName: 'A. Breeder' } }),
    refused: [['nobody', 'not-found', () => ({ personId: NO_ID })]],
  },
  'people.erase': {
    good: () => ({ personId: 'person-breeder', papers: true }),
    undoable: false,
    first: (w) => call(w.dispatch, 'people.setHouse', { change: { ...DEFAULT_HOUSE, breederName: 'A. Breeder' } }),
    refused: [['nobody', 'not-found', () => ({ personId: NO_ID, papers: false })]],
  },
  'records.import': {
    good: (w) => ({
      into: { kind: 'litter', litterId: w.litter.id },
      puppies: [{ key: 'new:e', fields: puppyFields(w.clock, 5) }],
      readings: [
        { puppy: other(w), reading: { ...readingFields(before(w.clock, 5), 700), source: 'file' } },
        { puppy: 'new:e', reading: { ...readingFields(before(w.clock, 5), 640), source: 'file' } },
      ],
    }),
    refused: [
      [
        'no such litter',
        'not-found',
        (w) => ({
          into: { kind: 'litter', litterId: NO_ID },
          puppies: [],
          readings: [{ puppy: other(w), reading: now(w) }],
        }),
      ],
      [
        'no such puppy',
        'not-found',
        (w) => ({
          into: { kind: 'litter', litterId: w.litter.id },
          puppies: [],
          readings: [{ puppy: NO_ID, reading: now(w) }],
        }),
      ],
      [
        'letter taken',
        'conflict',
        (w) => ({
          into: { kind: 'litter', litterId: w.litter.id },
          puppies: [{ key: 'x', fields: puppyFields(w.clock, 0) }],
          readings: [{ puppy: other(w), reading: now(w) }],
        }),
      ],
      [
        'one weight before the birth',
        'bad-input',
        (w) => ({
          into: { kind: 'litter', litterId: w.litter.id },
          puppies: [],
          readings: [
            { puppy: other(w), reading: now(w) },
            { puppy: other(w), reading: early(w) },
          ],
        }),
      ],
      [
        'the same weight twice',
        'bad-input',
        (w) => ({
          into: { kind: 'new', litter: litterFields(w.clock, 'Sorrel') },
          puppies: [{ key: 'x', fields: puppyFields(w.clock, 0) }],
          readings: [
            { puppy: 'x', reading: now(w) },
            { puppy: 'x', reading: now(w) },
          ],
        }),
      ],
    ],
  },
  'records.takeIn': {
    // This world is not empty: that it may be taken in is tested with the service.
    first: async (w) => {
      const { files } = await call(w.dispatch, 'records.export', { as: 'json' });
      const { base64 } = await call(w.dispatch, 'records.exportFile', { file: files[0]?.file ?? '' });
      whole = new TextDecoder().decode(Uint8Array.from(atob(base64), (c) => c.codePointAt(0) ?? 0));
    },
    good: () => ({ text: whole }),
    may: ['conflict'],
    refused: [
      ['not JSON', 'bad-input', () => ({ text: '{"format": "whelpside"' })],
      ['JSON of another kind', 'bad-input', () => ({ text: '{"format":"other","tables":{}}' })],
      ['of a newer program', 'refused', () => ({ text: '{"format":"whelpside","version":1,"shape":900000,"tables":{}}' })],
    ],
  },
  'records.export': { good: () => ({ as: 'weights' }) },
  'records.exportFile': {
    good: () => ({ file: 'whelpside weights.csv' }),
    may: ['not-found'],
    refused: [
      ['up and out', 'bad-input', () => ({ file: '../whelpside.sqlite' })],
      ['another folder', 'bad-input', () => ({ file: 'whelpside/../../x.csv' })],
      ['not there', 'not-found', () => ({ file: 'whelpside nobody.csv' })],
    ],
  },
  'records.addDemo': { good: (w) => ({ now: w.clock.local, utcOffsetMinutes: 60 }), undoable: false },
  'records.removeDemo': {
    good: () => ({}),
    undoable: false,
    first: (w) => call(w.dispatch, 'records.addDemo', { now: w.clock.local, utcOffsetMinutes: -480 }),
  },
};

/** Input that the operation takes in a world where nothing else was done since. */
export function goodInput(name: OperationName, world: Filed): unknown {
  return CASES[name].good(world);
}

const NAMES = Object.keys(OPERATIONS) as OperationName[];
const BAD: readonly ErrorCode[] = ['bad-input', 'too-large'];

/** Declares the tests of the whole contract for one way of carrying it. */
export function contractSuite(name: string, makeDispatch: MakeDispatch): void {
  describe(`contract: ${name}`, () => {
    it('walks every operation', () => {
      expect(Object.keys(CASES).sort()).toEqual([...NAMES].sort());
    });

    describe.each(NAMES)('%s', (operation) => operationSuite(operation, makeDispatch));
    describe('names', () => namesSuite(makeDispatch));
    describe('undo and redo', () => undoSuite(makeDispatch));
    describe('two windows', () => togetherSuite(withWorld(makeDispatch).world));
    describe('one act, one undo', () => oneActSuite(withWorld(makeDispatch).world));
    describe('earlier litters of a breed', () => lineSuite(makeDispatch));
    describe('the demo', () => demoSuite(makeDispatch));
    describe('papers', () => papersSuite(makeDispatch));
  });
}

interface Open {
  world: Filed;
  close(): Promise<void>;
}

function withWorld(makeDispatch: MakeDispatch): { readonly world: () => Filed } {
  let open: Open | null = null;
  beforeAll(async () => {
    const { dispatch, close } = await makeDispatch();
    const world = await makeWorld(dispatch);
    const { backup } = await call(dispatch, 'records.backUp', {});
    open = { world: { ...world, backup: backup.file, otherFolder: mkdtempSync(join(tmpdir(), 'whelpside-other-')) }, close };
  });
  afterAll(async () => {
    await open?.close();
    if (open !== null) rmSync(open.world.otherFolder, { recursive: true, force: true });
  });
  return {
    world: () => {
      if (open === null) throw new Error('no world');
      return open.world;
    },
  };
}

function operationSuite(name: OperationName, makeDispatch: MakeDispatch): void {
  const one: Case<OperationName> = CASES[name] as Case<OperationName>;
  const contract = OPERATIONS[name];
  const { kind, output } = contract;
  const { world } = withWorld(makeDispatch);

  it('refuses what does not fit, and changes nothing by it', async () => {
    const facts = await allFacts(world());
    for (const [why, input] of misfits(one.good(world()), one.mayBeEmpty ?? [])) {
      const result = await world().dispatch(name, input);
      expect(BAD, `${why}: ${JSON.stringify(result).slice(0, 300)}`).toContain(codeOf(result));
      if (!result.ok) expect(result.error.message, why).not.toMatch(/[/\\](home|root|tmp|work|users)\b/i);
    }
    expect(await allFacts(world())).toEqual(facts);
  });

  for (const [why, code, input] of one.refused ?? []) {
    it(`refuses: ${why}`, async () => {
      const facts = await allFacts(world());
      expect(codeOf(await world().dispatch(name, input(world())))).toBe(code);
      expect(await allFacts(world())).toEqual(facts);
    });
  }

  it('takes good input, answers by its schema and names what changed', async () => {
    await one.first?.(world());
    const before = await allFacts(world());
    const answered = await answers(world());
    const result = await world().dispatch(name, one.good(world()));
    if (!result.ok && one.may?.includes(result.error.code)) return;
    expect(result).toMatchObject({ ok: true });
    if (!result.ok) return;
    if (contract.kind !== 'command') expect(result.changed).toEqual(contract.kind === 'query' ? [] : contract.tags);
    expect(stale(answered, await answers(world()), result.changed), 'answers that the window would not fetch again').toEqual([]);
    output.parse(result.value);
    if (kind !== 'command' || one.undoable === false) return;

    const after = await allFacts(world());
    expect(after, 'the command changed something').not.toEqual(before);
    const { canUndo } = await call(world().dispatch, 'records.status', {});
    expect(canUndo).toMatchObject({ operation: name, undone: false });
    expect(unknownIn(canUndo?.about, [before, after]), 'texts of the journal that are neither names nor codes').toEqual([]);
    expect((await call(world().dispatch, 'records.undo', {})).done).toMatchObject({ operation: name, undone: true });
    expect(await allFacts(world()), 'undone').toEqual(before);
    expect((await call(world().dispatch, 'records.redo', {})).done).toMatchObject({ operation: name, undone: false });
    expect(await allFacts(world()), 'done again').toEqual(after);
  });
}

/** The texts of what was done that stand nowhere among the facts: a name or a code stands there, a sentence does not. */
function unknownIn(about: unknown, facts: unknown): string[] {
  const known = JSON.stringify(facts);
  return Object.entries(about ?? {}).flatMap(([key, value]) => {
    if (key === 'of' || value === '') return [];
    if (typeof value === 'string') return known.includes(JSON.stringify(value)) ? [] : [value];
    return typeof value === 'object' ? unknownIn(value, facts) : [];
  });
}

/** What every query answers to its good input now, as text. */
async function answers(world: Filed): Promise<ReadonlyMap<OperationName, string>> {
  const all = new Map<OperationName, string>();
  for (const name of NAMES.filter((n) => OPERATIONS[n].kind === 'query'))
    all.set(name, JSON.stringify(await world.dispatch(name, goodInput(name, world))));
  return all;
}

/** The queries that answer something else than before, and carry none of the tags of what changed. */
function stale(
  before: ReadonlyMap<OperationName, string>,
  after: ReadonlyMap<OperationName, string>,
  changed: readonly Tag[],
): string[] {
  return [...after].flatMap(([name, answer]) => {
    const query = OPERATIONS[name];
    const isTold = query.kind === 'query' && query.tags.some((tag) => changed.includes(tag));
    return answer === before.get(name) || isTold ? [] : [name];
  });
}

function namesSuite(makeDispatch: MakeDispatch): void {
  const { world } = withWorld(makeDispatch);
  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty', 'litter.none', 'LITTER.ALL', 'litter'])(
    'knows no %s',
    async (name) => {
      expect(codeOf(await world().dispatch(name, {}))).toBe('unknown-operation');
    },
  );
}

function undoSuite(makeDispatch: MakeDispatch): void {
  const { world } = withWorld(makeDispatch);
  const back = () => world().dispatch('records.undo', {});
  const again = () => world().dispatch('records.redo', {});

  it('goes back to an empty house and forward to everything', async () => {
    const full = await allFacts(world());
    let steps = 0;
    while ((await back()).ok) steps += 1;
    expect(codeOf(await back())).toBe('nothing-to-undo');
    expect(await call(world().dispatch, 'litter.all', {})).toEqual({ litters: [] });
    for (let n = 0; n < steps; n += 1) expect((await again()).ok).toBe(true);
    expect(codeOf(await again())).toBe('nothing-to-redo');
    expect(await allFacts(world())).toEqual(full);
  });

  it('lets go of what was undone at the next command', async () => {
    await back();
    await call(world().dispatch, 'growth.record', { puppyId: other(world()), reading: now(world()) });
    expect(codeOf(await again())).toBe('nothing-to-redo');
    const { done } = await call(world().dispatch, 'records.done', { limit: 2 });
    expect(done.map((d) => [d.operation, d.undone])).toEqual([
      ['growth.record', false],
      ['homing.handOver', true],
    ]);
    expect(done[0]).toMatchObject({
      grams: 1010.5,
      puppyId: other(world()),
      litterId: world().litter.id,
      about: { of: 'puppies', names: ['B'] },
    });
  });

  it('never deletes a reading: undo withdraws it', async () => {
    const { reading } = await call(world().dispatch, 'growth.record', { puppyId: other(world()), reading: now(world()) });
    const find = async () =>
      (await call(world().dispatch, 'growth.readings', { litterId: world().litter.id })).readings.find(
        (r) => r.id === reading.id,
      );
    await back();
    expect(await find()).toMatchObject({ withdrawn: true, grams: 1010.5 });
    await again();
    expect(await find()).toEqual(reading);
  });

  it('replaces a reading once, and keeps both', async () => {
    const { reading: old } = await call(world().dispatch, 'growth.record', { puppyId: other(world()), reading: now(world()) });
    const { reading } = await call(world().dispatch, 'growth.correct', {
      readingId: old.id,
      reading: { ...now(world()), grams: 1001, typed: '1001' },
    });
    expect(reading).toMatchObject({ supersedes: old.id, supersededBy: null, puppyId: old.puppyId });
    expect(codeOf(await world().dispatch('growth.withdraw', { readingId: old.id }))).toBe('conflict');
    expect(codeOf(await world().dispatch('growth.keep', { readingIds: [old.id] }))).toBe('conflict');
    expect(
      codeOf(
        await world().dispatch('growth.correctWeighing', {
          litterId: world().litter.id,
          corrections: [{ readingId: old.id, change: { grams: 1002, typed: '1002' } }],
        }),
      ),
    ).toBe('conflict');
    expect(codeOf(await world().dispatch('growth.correct', { readingId: old.id, reading: now(world()) }))).toBe('conflict');
    await call(world().dispatch, 'growth.withdraw', { readingId: reading.id });
    expect(codeOf(await world().dispatch('growth.withdraw', { readingId: reading.id }))).toBe('conflict');
    const { readings } = await call(world().dispatch, 'growth.readings', { litterId: world().litter.id });
    expect(readings.find((r) => r.id === old.id)).toMatchObject({ supersededBy: reading.id, withdrawn: false, grams: 1010.5 });
    expect(readings.find((r) => r.id === reading.id)).toMatchObject({ withdrawn: true });
  });

  it('takes several weighings of a puppy in one session', async () => {
    const count = async () => (await call(world().dispatch, 'growth.readings', { litterId: world().litter.id })).readings.length;
    const start = await count();
    for (let n = 0; n < 3; n += 1)
      await call(world().dispatch, 'growth.record', { puppyId: other(world()), reading: now(world()) });
    expect(await count()).toBe(start + 3);
  });
}

function lineSuite(makeDispatch: MakeDispatch): void {
  const { world } = withWorld(makeDispatch);
  const lineOf = async (litterId: string) => (await call(world().dispatch, 'growth.line', { litterId })).litters;

  /** A litter of a year before, with one puppy weighed at birth. */
  async function older(dam: string, breed: string) {
    const { dispatch, clock } = world();
    const at = before(clock, 365);
    const fields = { ...litterFields(clock, dam), breed, whelpedAt: at.local, whelpedInstant: at.instant };
    const { litter } = await call(dispatch, 'litter.begin', { litter: fields, puppies: [] });
    const birthWeight = { grams: 390, typed: '390', unit: 'g', source: 'keyboard' } as const;
    const puppy = { ...puppyFields(clock, 0), bornAt: at.local, bornInstant: at.instant };
    const added = await call(dispatch, 'litter.addPuppy', { litterId: litter.id, fields: puppy, birthWeight });
    return { litter, puppy: added.puppy };
  }

  it('gives the earlier litters of the breed, in any spelling, with the weights of their first weeks that count', async () => {
    const { dispatch, clock, litter } = world();
    await call(dispatch, 'litter.change', {
      litterId: litter.id,
      change: { breed: 'Field Spaniel' },
    });
    const same = await older('Sedge', ' field  SPANIEL');
    await older('Sorrel', 'Field Setter');
    const weigh = (days: number, grams: number) =>
      call(dispatch, 'growth.record', { puppyId: same.puppy.id, reading: readingFields(before(clock, 365 - days), grams) });
    await weigh(10, 800);
    const { reading: wrong } = await weigh(11, 8000);
    await call(dispatch, 'growth.withdraw', { readingId: wrong.id });
    await weigh(90, 9000);
    const line = await lineOf(litter.id);
    expect(line.map((l) => [l.litter.dam, l.puppies.map((p) => p.id)])).toEqual([['Sedge', [same.puppy.id]]]);
    expect(line[0]?.readings.map((r) => [r.puppyId, r.grams])).toEqual([390, 800].map((grams) => [same.puppy.id, grams]));
    // What came later is no earlier litter.
    expect(await lineOf(same.litter.id)).toEqual([]);
  });

  it('gives none when no breed is written', async () => {
    const { emptyLitter } = world();
    await older('Sedge', '');
    expect(emptyLitter.breed).toBe('');
    expect(await lineOf(emptyLitter.id)).toEqual([]);
  });
}

function demoSuite(makeDispatch: MakeDispatch): void {
  const { world } = withWorld(makeDispatch);

  it('comes, is weighed in, and goes without a trace', async () => {
    const { dispatch, clock } = world();
    const facts = await allFacts(world());
    const journal = await call(dispatch, 'records.done', { limit: 500 });
    const demo = { now: clock.local, utcOffsetMinutes: -new Date(clock.instant).getTimezoneOffset() };
    const { litterIds } = await call(dispatch, 'records.addDemo', demo);
    expect(litterIds).toHaveLength(3);
    expect(codeOf(await dispatch('records.addDemo', demo))).toBe('conflict');
    expect((await call(dispatch, 'records.status', {})).demo).toBe(true);
    const { litters } = await call(dispatch, 'litter.all', {});
    const demoLitter = litters.find((l) => l.litter.id === litterIds[0]);
    expect(demoLitter?.litter.demo).toBe(true);
    const puppyId = demoLitter?.puppies[0]?.id ?? '';
    await call(dispatch, 'growth.record', { puppyId, reading: now(world()) });
    await call(dispatch, 'homing.handOver', { puppyId, on: dayBefore(clock, 0), leaves: true });
    await call(dispatch, 'records.removeDemo', {});
    expect((await call(dispatch, 'records.status', {})).demo).toBe(false);
    expect(await allFacts(world())).toEqual(facts);
    expect(await call(dispatch, 'records.done', { limit: 500 })).toEqual(journal);
    expect((await call(dispatch, 'records.undo', {})).done.operation).toBe('homing.handOver');
    await call(dispatch, 'records.redo', {});
    expect(await allFacts(world())).toEqual(facts);
  });
}

function papersSuite(makeDispatch: MakeDispatch): void {
  const { world } = withWorld(makeDispatch);

  it('gives back the PDF that it made, or says that it can make none', async () => {
    const { dispatch, planId } = world();
    const saved = await dispatch('records.savePaper', { of: { kind: 'handed-over', planId }, paper: 'a4' });
    if (!saved.ok) return expect(saved.error.code).toBe('no-printer');
    const { file } = OPERATIONS['records.savePaper'].output.parse(saved.value);
    expect(file).toMatch(/^Vetch go-home plan \d{4}-\d{2}-\d{2}\.pdf$/);
    const { base64 } = await call(dispatch, 'records.paperFile', { file });
    expect(atob(base64).slice(0, 5)).toBe('%PDF-');
  }, 60_000);
}

function codeOf(result: Result<unknown>): ErrorCode | 'ok' {
  return result.ok ? 'ok' : result.error.code;
}

/** What holds only the fields that change: any of them may be missing, but not all. */
const CHANGES = /^input\.(change(\.(collar|mealTimes))?|to\.step)$/;

/** Inputs near the good one that do not fit its schema. */
function misfits(good: unknown, mayBeEmpty: readonly string[]): [why: string, input: unknown][] {
  const whole: [string, unknown][] = [
    ['null', null],
    ['a text', 'x'],
    ['a number', 7],
    ['a list', [good]],
    ['true', true],
  ];
  return [...whole, ...misfitsInside(good, 'input', (x) => x)].filter(
    ([why]) => !mayBeEmpty.some((list) => why === `${list} empty`),
  );
}

function misfitsInside(thing: unknown, path: string, wrap: (x: unknown) => unknown): [string, unknown][] {
  if (typeof thing === 'object' && thing !== null && !Array.isArray(thing)) {
    const found: [string, unknown][] = [
      [`${path} with a key too many`, wrap({ ...thing, surplus: 1 })],
      [`${path} with the key constructor`, wrap({ ...thing, constructor: 1 })],
    ];
    const isChange = CHANGES.test(path);
    if (isChange) found.push([`${path} with nothing in it`, wrap({})]);
    for (const [key, value] of Object.entries(thing)) {
      const at = `${path}.${key}`;
      const { [key]: _, ...rest } = thing as Record<string, unknown>;
      if (!isChange) found.push([`${at} missing`, wrap(rest)]);
      found.push([`${at} of a wrong kind`, wrap({ ...thing, [key]: { nope: true } })]);
      if (typeof value === 'string') found.push([`${at} huge`, wrap({ ...thing, [key]: 'x'.repeat(20_000) })]);
      if (typeof value === 'number')
        found.push([`${at} huge`, wrap({ ...thing, [key]: 1e300 })], [`${at} as text`, wrap({ ...thing, [key]: String(value) })]);
      found.push(...misfitsInside(value, at, (x) => wrap({ ...thing, [key]: x })));
    }
    return found;
  }
  if (Array.isArray(thing))
    return [
      [`${path} very long`, wrap(Array.from({ length: 1000 }, () => thing[0]))],
      [`${path} empty`, wrap([])],
    ];
  return [];
}
