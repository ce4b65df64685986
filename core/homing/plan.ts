/** The go-home plan of one puppy as codes and numbers. What it says on paper is put together in `core/words`. */

import { clockOf, dateOf } from '../calendar/clock.ts';
import { addDays, ageInDays, type CivilDate } from '../calendar/day.ts';
import { mealClock } from '../feeding/meals.ts';
import { fedFromAge, ladderInputOf } from '../feeding/ration-input.ts';
import { writtenFrom } from '../feeding/rules.ts';
import { MEAL_NAMES, type MealName, mealCount } from '../food/bowls.ts';
import { DEFAULT_FOOD } from '../food/food.ts';
import { OLD_WEIGHT_DAYS } from '../growth/puppy-weights.ts';
import type { PlanBasis, PlanFacts } from './basis.ts';
import { type NoteFinding, planNotes } from './notes.ts';
import { type PlanRemark, planRemarks } from './plan-findings.ts';
import { type ByWeight, byWeightTable, type PlanTable, planTable, planTreads, type TableFacts } from './table.ts';
import { type PlanWeights, planWeights } from './weights.ts';

/** From this age on the table is too short to be called one to twelve months. */
const NEARLY_GROWN_DAYS = 330;
/** A first tread longer than this is a month, not a week. */
const LONGEST_WEEK = 10;

/** From which weight the amount was reckoned, in grams; a forecast says that it is one. */
export type WeekBasis =
  | { readonly code: 'weighed-today'; readonly grams: number }
  /** For the go-home day that is still to come. */
  | { readonly code: 'ahead'; readonly expected: number; readonly grams: number; readonly on: CivilDate }
  | { readonly code: 'old'; readonly expected: number; readonly daysAgo: number }
  | { readonly code: 'recent'; readonly expected: number; readonly grams: number; readonly on: CivilDate };

export interface Week {
  readonly code: 'first-week' | 'week' | 'month';
  readonly from: CivilDate;
  /** Its last day. */
  readonly to: CivilDate;
  readonly dayGrams: number;
  readonly meals: readonly { readonly name: MealName; readonly time: string; readonly grams: number }[];
  readonly basis: WeekBasis | null;
}

/** Why there is no amount. */
export type Missing =
  | { readonly code: 'no-weight' }
  | { readonly code: 'no-grown-weight'; readonly ahead: boolean; readonly daysAgo: number };

export interface Standing {
  /** Whole per cent over (negative under) the middle of the littermates. */
  readonly percent: number;
  readonly littermates: number;
  /** Nobody is called steady for one weight. */
  readonly steady: boolean;
}

export interface GoHomePlan extends PlanBasis {
  readonly bornAt: string;
  /** Null where the rules are those that the program came with. */
  readonly rulesFrom: CivilDate | null;
  readonly week: Week | null;
  /** Set when there is no amount for now. */
  readonly missing: Missing | null;
  readonly ladderNote: 'needs-weight' | 'two-weeks' | 'how-to-read';
  /** Age in days; null while the plan is a forecast for the go-home day. */
  readonly nowDay: number | null;
  readonly birthGrams: number | null;
  readonly standing: Standing | null;
  readonly isNearlyGrown: boolean;
  readonly table: PlanTable;
  /** Whether a weight is expected for the ages, so that one can be outside of it. */
  readonly hasExpectation: boolean;
  readonly byWeight: ByWeight;
  readonly notes: readonly NoteFinding[];
  readonly remarks: readonly PlanRemark[];
}

/** Pure: the same facts give the same plan. Works with thin facts and says what is missing. `name` is what the puppy is called on paper. */
export function goHomePlan(facts: PlanFacts, name: string): GoHomePlan {
  const { puppy, rules, house, on } = facts;
  const born = dateOf(puppy.bornAt);
  const age = ageInDays(born, on);
  const start = fedFromAge(born, on);
  const weights = planWeights(facts);
  const adultKg = weights.adult?.kg ?? null;
  const food = facts.food ?? DEFAULT_FOOD;
  const tableFacts: TableFacts = { rules: rules.rules, food, born, start, adultKg, at: weights.at, unit: house.massUnit };
  const treads = planTreads(ladderInputOf({ ...facts, growth: weights.growth, rules: rules.rules, food }));
  const basis: PlanBasis = { ...facts, food, name, born, age, start, weights, treads };
  const first = weights.own[0];
  return {
    ...basis,
    bornAt: clockOf(puppy.bornAt),
    rulesFrom: writtenFrom(rules),
    week: weekOf(basis),
    missing: treads.length > 0 ? null : missingOf(basis),
    ladderNote: treads.length === 0 ? 'needs-weight' : weights.adult === null ? 'two-weeks' : 'how-to-read',
    nowDay: age < start ? null : start,
    birthGrams: first !== undefined && first.ageDays < 1 && weights.own.length > 1 ? first.grams : null,
    standing: standingOf(weights),
    isNearlyGrown: start >= NEARLY_GROWN_DAYS,
    table: planTable(tableFacts, treads),
    hasExpectation: adultKg !== null && weights.anchor !== null,
    byWeight: byWeightTable(tableFacts),
    notes: planNotes({ rules: rules.rules, unit: house.massUnit, dayGrams: treads[0]?.dayGrams ?? null, adultKg }),
    remarks: planRemarks(basis),
  };
}

function weekOf(basis: PlanBasis): Week | null {
  const { treads, born, start, age, rules } = basis;
  const tread = treads[0];
  if (tread === undefined) return null;
  const count = mealCount(tread.meals);
  const meals = MEAL_NAMES.flatMap((name) => {
    const grams = tread.meals[name];
    return grams === undefined ? [] : [{ name, time: mealClock(rules.rules, name, count), grams }];
  });
  return {
    code: age < start ? 'first-week' : tread.untilDay - start > LONGEST_WEEK ? 'month' : 'week',
    from: addDays(born, start),
    to: addDays(born, tread.untilDay - 1),
    dayGrams: tread.dayGrams,
    meals,
    basis: weekBasis(basis),
  };
}

function weekBasis({ weights, start, born, on }: PlanBasis): WeekBasis | null {
  const { anchor } = weights;
  const expected = weights.at(start)?.mid;
  if (anchor === null || expected === undefined) return null;
  const { grams, daysAgo } = anchor;
  if (start <= anchor.ageDays + 1 && anchor.on === on) return { code: 'weighed-today', grams };
  if (addDays(born, start) > on) return { code: 'ahead', expected, grams, on: anchor.on };
  if (daysAgo > OLD_WEIGHT_DAYS) return { code: 'old', expected, daysAgo };
  return { code: 'recent', expected, grams, on: anchor.on };
}

function missingOf({ weights, age, start }: PlanBasis): Missing {
  if (weights.anchor === null) return { code: 'no-weight' };
  return { code: 'no-grown-weight', ahead: age < start, daysAgo: weights.anchor.daysAgo };
}

function standingOf({ standing, littermates, level, own }: PlanWeights): Standing | null {
  if (standing === null || littermates < 1) return null;
  return { percent: Math.round((Math.exp(standing) - 1) * 100), littermates, steady: level === 'steady' && showsGain(own) };
}

/** Whether the weights say anything of the gain now: two within a week, or a row of them. */
function showsGain(own: PlanWeights['own']): boolean {
  const [before, last] = own.slice(-2);
  return own.length > 2 || (before !== undefined && last !== undefined && last.ageDays - before.ageDays <= 7);
}
