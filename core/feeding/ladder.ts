/** The meal ladder: what a puppy will get, tread by tread, on its forecast weight. */

import { z } from 'zod';
import { addDays, addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import { bowlStep, fillBowls, MEAL_NAMES, type Meals, type Rounding } from '../food/bowls.ts';
import type { Food } from '../food/food.ts';
import type { MassUnit } from '../units/mass.ts';
import { amountFor, amountOn } from './amount.ts';
import { mealAges, mealsOn, stepToTwo, THREE_MEALS, TWO_MEALS } from './meals.ts';
import type { HouseRules } from './rules.ts';
import { shareAtMonths } from './share.ts';

/** One tread of the meal ladder: constant amounts from `fromDay` (age in days) until `untilDay` (not included). */
export const ladderStepSchema = z.strictObject({
  fromDay: z.number().int(),
  untilDay: z.number().int(),
  dayGrams: z.number(),
  /** Grams of each meal fed; a meal that is not fed is absent. */
  meals: z.partialRecord(z.enum(MEAL_NAMES), z.number()),
  /** Inside the two weeks in which a meal is left off. */
  changing: z.boolean(),
});
export type LadderStep = z.infer<typeof ladderStepSchema>;

export interface LadderInput {
  readonly rules: HouseRules;
  readonly food: Food;
  readonly born: CivilDate;
  /** First day of the ladder. */
  readonly from: CivilDate;
  readonly adultKg: number | null;
  /** Forecast weight in grams at an age in days; null where there is none, and the ladder ends there. */
  readonly forecast: (ageDays: number) => number | null;
  /** How bowls are weighed; grams when left out. */
  readonly unit?: MassUnit;
}

/** One tread before its bowls are filled. */
export interface Tread {
  readonly fromDay: number;
  readonly untilDay: number;
  /** Grams a day, not rounded. */
  readonly grams: number;
}

/** From one week to the next the day's food falls at most to this part of it. */
const MOST_FALL = 0.9;
const DAYS_A_WEEK = 7;
const WEEKLY_UNTIL_DAY = 26 * DAYS_A_WEEK;
const LADDER_MONTHS = 12;
/** A birthday in weeks or months this near to a day on which the meals change gives way to it. */
const GIVES_WAY_DAYS = 3;
/** A first tread shorter than this runs on through the next one. */
const SHORTEST_FIRST_DAYS = 3;

/**
 * The ladder from a day: weekly treads to 26 weeks of age, then monthly to 12 months (the last lasts a month), with treads that change exactly
 * where the meals do. Amounts are those of {@link treadAmounts}; the bowls are rounded, each day is the sum of its bowls, and rounding never
 * adds a second hump. Empty when there is no forecast for the first day.
 */
export function mealLadder(input: LadderInput): LadderStep[] {
  return ladder(input).map(({ fed, changing, tread: { fromDay, untilDay } }) => ({ fromDay, untilDay, changing, ...fed }));
}

interface Rung {
  readonly tread: Tread;
  readonly changing: boolean;
  readonly fed: { dayGrams: number; meals: Meals };
}

/** Treads with their bowls. Where the day falls it is held to what was weighed out the week before: rounding too must not take a tenth more. */
function ladder(input: LadderInput): Rung[] {
  const treads = limitFalls(fillDips(ruleTreads(input)));
  const top = highest(treads);
  const unit = input.unit ?? 'g';
  const rungs: Rung[] = [];
  for (const [i, plain] of treads.entries()) {
    const { shares, changing } = mealsOn(input.rules, input.born, addDays(input.born, plain.fromDay), input.adultKg);
    const before = rungs[i - 1];
    const week = i > top ? rungs.filter((r) => r.tread.untilDay > plain.fromDay - DAYS_A_WEEK) : [];
    const least = MOST_FALL * Math.max(0, ...week.map((r) => r.fed.dayGrams));
    const held = Math.max(least, MOST_FALL * Math.max(0, ...week.map((r) => r.tread.grams)));
    const grams = before === undefined || i <= top ? plain.grams : Math.min(before.tread.grams, Math.max(plain.grams, held));
    const tread = { ...plain, grams };
    rungs.push({ tread, changing, fed: filledOn(tread, shares, unit, before?.fed.dayGrams ?? null, i <= top, least) });
  }
  return rungs;
}

/** Bowls of a tread that keep to one hump: rising never under the day before, falling never over it, nor under the least. */
function filledOn(
  { grams }: Tread,
  shares: Meals,
  unit: MassUnit,
  before: number | null,
  rising: boolean,
  least: number,
): Rung['fed'] {
  const fill = (of: number, rounding?: Rounding) => fillBowls(of, shares, unit, rounding);
  const fed = fill(grams);
  if (before === null) return fed;
  if (rising) return fed.dayGrams < before ? fill(Math.max(before, grams), 'up') : fed;
  const isBetween = ({ dayGrams }: Rung['fed']) => dayGrams >= least - 1e-9 && dayGrams <= before + 1e-9;
  const most = Math.min(before, grams);
  const held = withRest(fill(before, 'fine'), before);
  // Bowls of a few grams can't follow a tenth at a time; then they follow the rule.
  const isNear = before - grams <= Object.values(fed.meals).reduce((sum, bowl) => sum + bowlStep(bowl, unit), 0);
  const found = [fed, fill(most, 'fine'), ...(isNear ? [held] : []), fill(least, 'up')].find(isBetween);
  return found ?? fill(most, 'down');
}

/** The bowl that is smaller than the others takes what rounding has left over. */
function withRest({ dayGrams, meals }: Rung['fed'], wanted: number): Rung['fed'] {
  const midday = (meals.midday ?? 0) + wanted - dayGrams;
  return meals.midday === undefined || midday <= 0 ? { dayGrams, meals } : { dayGrams: wanted, meals: { ...meals, midday } };
}

/**
 * Grams a day on each tread, not rounded. The first is the rule at the weight of that day, so it is the ration of that day. From there on they
 * are the **least** amounts that
 * 1. are never under the rule (share, energy or both, {@link amountOn}) at the forecast weight on the tread's first day;
 * 2. have one hump: a dip between two heights is filled to the lower of them, so that an amount that has begun to fall doesn't rise again;
 * 3. never fall by more than a tenth within a week, in bowls as they are weighed out: where the rule falls faster, the ladder follows later. A
 *    month in which the rule falls by more than a tenth is divided, so that the ladder need not lag behind for months.
 * Raising, never lowering, is on purpose: under the defaults the rule is on the low side of the published energy estimate where the dip is.
 * With weights that never fall, no tread is above {@link MOST_SHARE} of the weight.
 */
export function treadAmounts(input: LadderInput): Tread[] {
  return ladder(input).map((rung) => rung.tread);
}

/** The rule at the weight of each tread's first day; ends where the forecast does. */
function ruleTreads(input: LadderInput): Tread[] {
  const rule = (ageDays: number): number | null => {
    const weightGrams = input.forecast(ageDays);
    return weightGrams === null ? null : amountOn({ ...input, day: addDays(input.born, ageDays), weightGrams }).grams;
  };
  const days = divideSteepMonths(treadDays(input), rule);
  const known: Tread[] = [];
  for (const [i, fromDay] of days.slice(0, -1).entries()) {
    const grams = rule(fromDay);
    if (grams === null) break;
    known.push({ fromDay, untilDay: days[i + 1] as number, grams });
  }
  return known;
}

/** First days of the treads as ages in days, and the day after the last tread. */
function treadDays({ rules, born, from, adultKg }: LadderInput): number[] {
  const first = ageInDays(born, from);
  const monthDay = (months: number) => ageInDays(born, addMonths(born, months));
  const end = Math.max(monthDay(LADDER_MONTHS + 1), first + 28);
  const step = stepToTwo(rules, born, adultKg);
  const changes = [step.start, step.half, step.end, ...fourMealsEnd(mealAges(rules, adultKg).fourUntilWeeks, step.start)];
  const birthdays: number[] = [];
  for (let day = 7; day <= WEEKLY_UNTIL_DAY; day += 7) birthdays.push(day);
  for (let months = 7; months <= LADDER_MONTHS; months += 1) birthdays.push(monthDay(months));
  const standing = birthdays.filter(
    (day) => changes.every((c) => Math.abs(c - day) > GIVES_WAY_DAYS) && day - first >= SHORTEST_FIRST_DAYS,
  );
  const inside = [...new Set([...changes, ...standing])].filter((day) => day > first && day < end);
  return [first, ...inside.sort((a, b) => a - b), end];
}

function fourMealsEnd(untilWeeks: number, stepStart: number): number[] {
  const end = untilWeeks * DAYS_A_WEEK;
  return end > 0 && end < stepStart ? [end] : [];
}

/** Puts treads of at least a week into a month in which the rule falls by more than the ladder may in one tread. */
function divideSteepMonths(days: readonly number[], rule: (ageDays: number) => number | null): number[] {
  const all: number[] = [];
  let level = 0;
  for (const [i, day] of days.entries()) {
    const next = days[i + 1];
    all.push(day);
    level = Math.max(level, rule(day) ?? 0);
    const target = next === undefined ? null : rule(next);
    if (next === undefined || target === null || target <= 0) continue;
    const needed = Math.ceil(Math.log(level / target) / -Math.log(MOST_FALL) - 1e-9);
    const parts = Math.max(1, Math.min(needed, Math.floor((next - day) / 7)));
    for (let k = 1; k < parts; k += 1) all.push(day + Math.round((k * (next - day)) / parts));
    level = Math.max(target, level * MOST_FALL ** parts);
  }
  return all;
}

/** Fills dips like standing water: up to the lower of the highest amounts before and after. */
function fillDips(treads: readonly Tread[]): Tread[] {
  const before = runningMost(treads.map((t) => t.grams));
  const after = runningMost(treads.map((t) => t.grams).reverse()).reverse();
  return treads.map((t, i) => ({ ...t, grams: Math.min(before[i] as number, after[i] as number) }));
}

function runningMost(values: readonly number[]): number[] {
  let highest = 0;
  return values.map((v) => {
    highest = Math.max(highest, v);
    return highest;
  });
}

/** Keeps each tread at nine tenths or more of everything that was fed in the week before it. */
function limitFalls(treads: readonly Tread[]): Tread[] {
  const limited: Tread[] = [];
  for (const tread of treads) {
    const weekBefore = limited.filter((t) => t.untilDay > tread.fromDay - DAYS_A_WEEK).map((t) => t.grams);
    limited.push({ ...tread, grams: Math.max(tread.grams, MOST_FALL * Math.max(0, ...weekBefore)) });
  }
  return limited;
}

/** Place of the highest tread, the first if several are. */
function highest(treads: readonly Tread[]): number {
  let top = 0;
  for (const [i, t] of treads.entries()) if (t.grams > (treads[top] as Tread).grams) top = i;
  return top;
}

/**
 * Grams a day at an age in calendar months for a real weight in kg: a cell of the table by weight. By the plain rule, in bowls of that age; with
 * `energy` (food and adult weight) by the rules' basis, without it by share alone.
 */
export function amountByWeight(
  rules: HouseRules,
  ageMonths: number,
  kg: number,
  energy: { readonly food: Food; readonly adultKg: number | null } | null = null,
  unit: MassUnit = 'g',
): number {
  const share = shareAtMonths(rules, ageMonths);
  const grams = energy === null ? share * kg * 1000 : amountFor(rules, energy.food, share, kg * 1000, energy.adultKg).grams;
  const { twoFromMonths } = mealAges(rules, energy?.adultKg ?? null);
  return fillBowls(grams, ageMonths > twoFromMonths ? TWO_MEALS : THREE_MEALS, unit).dayGrams;
}
