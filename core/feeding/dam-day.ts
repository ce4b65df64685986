/**
 * The dam through pregnancy, milk and the weeks in which her puppies leave it: kcal a day, and grams, meals and water from it. Weights in kg, energy
 * in kcal of metabolisable energy a day. Estimates of groups: her own weight and condition are the judge.
 */
import { dateOf } from '../calendar/clock.ts';
import { type CivilDate, daysBetween } from '../calendar/day.ts';
import type { Dam, DamFields } from '../dogs/dam.ts';
import { dueWindows } from '../dogs/gestation.ts';
import { EIGHT_WEEKS } from '../litter/ages.ts';
import { inTheHouse } from '../litter/in-the-house.ts';
import type { Litter, Puppy } from '../litter/litter.ts';
import type { Known } from '../reference/feeding/known.ts';
import {
  GESTATION_NEED,
  LACTATION_MULTIPLES,
  LACTATION_NEED,
  LACTATION_SHORTCUT,
  LATE_GESTATION_DAYS,
  LITTER_OF_DAM,
  MILK_TOTAL,
} from '../reference/feeding/nursing.ts';
import { clamp } from '../statistics/clamp.ts';
import { restingEnergy } from './energy.ts';

/** Pregnancy: factor × kg^0.75, and 26 kcal a kg more in the last five weeks. NRC 2006 (second-hand); FEDIAF 132 (from memory). */
export function gestationEnergy(kg: number, late: boolean, by: 'nrc' | 'fediaf' = 'nrc'): number {
  const { factor, more } = GESTATION_NEED[by];
  return factor * kg ** 0.75 + (late ? more * kg : 0);
}

/** Milk: 145 × kg^0.75 + kg × (24 n + 12 m) × L, week 1 to 4 and the fourth after it. NRC 2006 (second-hand). */
export function lactationEnergy(kg: number, puppies: number, week: number): number {
  return LACTATION_NEED.factor * kg ** 0.75 + milkEnergy(kg, puppies, week);
}

/** The part of it that goes into milk. */
function milkEnergy(kg: number, puppies: number, week: number): number {
  const { firstFour, nextFour, byWeek } = LACTATION_NEED;
  const n = clamp(puppies, 0, 4);
  const m = clamp(puppies - 4, 0, 4);
  return kg * (firstFour * n + nextFour * m) * (byWeek[clamp(week, 1, 4) - 1] as number);
}

/** The textbook's shortcut at the peak: a multiple of resting energy and a quarter of it for each puppy. Hand et al. 2010 (seen). */
export function lactationShortcut(kg: number, puppies: number, multiple: number = LACTATION_SHORTCUT.multiple): number {
  return restingEnergy(kg) * multiple * (1 + LACTATION_SHORTCUT.perPuppy * puppies);
}

/** Lactation as multiples of resting energy, low to high. Hand et al. 2010, tables 5-2 and 15-10 (seen). */
export function lactationRange(kg: number, puppies: number): { low: number; high: number } {
  const { one, two, threeOrFour, more } = LACTATION_MULTIPLES;
  const times =
    puppies <= 1
      ? { low: one, high: one }
      : puppies === 2
        ? { low: two, high: two }
        : puppies <= 4
          ? { low: threeOrFour, high: threeOrFour }
          : more;
  return { low: restingEnergy(kg) * times.low, high: restingEnergy(kg) * times.high };
}

/** Milk of the whole lactation and of the peak day, litres. Hand et al. 2010, table 15-8 (seen). */
export function milkYield(kg: number, puppies: number): { total: number; peakDay: number } {
  const k = MILK_TOTAL.k.find((row) => (row.upToKg === 25 ? kg < 25 : kg <= row.upToKg))?.k ?? 2;
  const total = Math.max(0, kg * k + (puppies - 4) * MILK_TOTAL.perPuppyOverFour * kg);
  return { total, peakDay: total * MILK_TOTAL.peakPart };
}

/** Water in mL a day is about the kcal. Hand et al. 2010 (seen). */
export function waterMl(kcal: number): number {
  return kcal;
}

/** The litter's weight at birth as a part of hers, and whether that is usual. A small litter weighs less, and nothing is wrong with it. */
export function litterOfDam(litterGrams: number, damGrams: number): { part: number; is: 'under' | 'usual' | 'over' } {
  const part = litterGrams / damGrams;
  return { part, is: part < LITTER_OF_DAM.low ? 'under' : part > LITTER_OF_DAM.high ? 'over' : 'usual' };
}

export type DamPhase = 'before' | 'early' | 'late' | 'milk' | 'drying' | 'dry';

export interface DamDayInput {
  readonly fields: DamFields;
  readonly kg: number;
  readonly day: CivilDate;
  /** Day of whelping; null while she carries. */
  readonly whelped: CivilDate | null;
  /** Puppies that nurse. */
  readonly nursing: number;
  /** Part of the litter's food that comes from bowls, 0 to 1. */
  readonly solids: number;
}

/** How the kcal of a day came about: what is for herself, what goes into milk; `stillMilk` is the part of the milk that bowls do not replace. */
export type DamSum =
  | { readonly code: 'early' }
  | { readonly code: 'late'; readonly ownKcal: number }
  | {
      readonly code: 'milk';
      readonly ownKcal: number;
      readonly milkKcal: number;
      readonly puppies: number;
      readonly week: number;
      readonly stillMilk: number;
    };

export interface DamFacts {
  readonly dam: Pick<Dam, 'fields' | 'weights'>;
  /** Her litter, with the part of its food that comes from bowls on that day; null while she has none. */
  readonly nursed: {
    readonly litter: Pick<Litter, 'whelpedAt'>;
    readonly puppies: readonly Puppy[];
    readonly solids: number;
  } | null;
}

/** From the facts to her day: by her last weight until then, with the puppies in the house. Null while she was never weighed. */
export function damDayInputOf({ dam, nursed }: DamFacts, day: CivilDate): DamDayInput | null {
  const weight = dam.weights.findLast((w) => dateOf(w.at) <= day) ?? dam.weights[0];
  if (weight === undefined) return null;
  const born = nursed === null ? null : dateOf(nursed.litter.whelpedAt);
  return {
    fields: dam.fields,
    kg: weight.grams / 1000,
    day,
    whelped: born !== null && born <= day ? born : null,
    nursing: nursed?.puppies.filter((p) => inTheHouse(p, day)).length ?? 0,
    solids: nursed?.solids ?? 0,
  };
}

export interface DamDay {
  readonly phase: DamPhase;
  readonly kcal: number;
  /** Grams of her food; null when its energy is not written. */
  readonly foodGrams: number | null;
  readonly meals: { readonly low: number; readonly high: number };
  readonly waterMl: number;
  /** Week of lactation from 1; null while she carries. */
  readonly week: number | null;
  readonly how: DamSum;
  readonly source: string;
  readonly known: Known;
}

/** From this part of the litter's food in bowls on her milk is said to be going. Our own choice. */
const DRYING_FROM = 0.5;
/** After the last puppy has left her milk she goes back to her usual food. */
const DRY_AFTER_DAYS = 14;

/**
 * What she needs on a day. While her puppies move to bowls, what goes into milk falls in step with them; what she needs for herself stays.
 */
export function damDay(input: DamDayInput): DamDay {
  const { fields, kg, whelped } = input;
  const found = whelped === null ? carrying(input) : nursing(input, whelped);
  const food = fields.foodKcalPer100g;
  return {
    ...found,
    foodGrams: food === null ? null : roundFood((found.kcal / food) * 100),
    waterMl: Math.round(waterMl(found.kcal) / 50) * 50,
    meals: mealsOf(found.phase, kg),
  };
}

type Need = Pick<DamDay, 'phase' | 'kcal' | 'week' | 'how' | 'source' | 'known'>;

function carrying({ fields, kg, day: on }: DamDayInput): Need {
  const due = dueWindows(fields)[0];
  const { source, known } = GESTATION_NEED.nrc;
  const toGo = due === undefined ? null : daysBetween(on, due.due);
  const late = toGo !== null && toGo <= LATE_GESTATION_DAYS;
  return {
    phase: toGo === null ? 'before' : late ? 'late' : 'early',
    kcal: gestationEnergy(kg, late),
    week: null,
    how: late ? { code: 'late', ownKcal: gestationEnergy(kg, false) } : { code: 'early' },
    source,
    known,
  };
}

function nursing({ kg, day: on, nursing: puppies, solids }: DamDayInput, whelped: CivilDate): Need {
  const week = Math.floor(Math.max(0, daysBetween(whelped, on)) / 7) + 1;
  const { factor, source, known } = LACTATION_NEED;
  const own = factor * kg ** 0.75;
  const milk = milkEnergy(kg, puppies, week) * (1 - solids);
  const dry = puppies === 0 || solids >= 1;
  const phase: DamPhase = dry
    ? week * 7 > EIGHT_WEEKS + DRY_AFTER_DAYS
      ? 'dry'
      : 'drying'
    : solids >= DRYING_FROM
      ? 'drying'
      : 'milk';
  return {
    phase,
    kcal: own + milk,
    week,
    how: { code: 'milk', ownKcal: own, milkKcal: milk, puppies, week, stillMilk: 1 - solids },
    source,
    known,
  };
}

/** Common practice, no source: small meals often while she is heavy or in milk. */
function mealsOf(phase: DamPhase, kg: number): { low: number; high: number } {
  if (phase === 'late') return { low: 3, high: 4 };
  if (phase === 'milk') return kg < 8 ? { low: 4, high: 6 } : { low: 4, high: 5 };
  return phase === 'drying' ? { low: 2, high: 4 } : { low: 2, high: 2 };
}

function roundFood(grams: number): number {
  return Math.round(grams / 5) * 5;
}
