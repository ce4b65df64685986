/** The go-home plan of one puppy as codes and numbers. What it says on paper is put together in `core/words`. */

import { clockOf, dateOf } from '../calendar/clock.ts';
import { addDays, ageInDays, type CivilDate } from '../calendar/day.ts';
import type { GrowthMethod } from '../feeding/energy.ts';
import { type LadderStep, mealLadder } from '../feeding/ladder.ts';
import { mealClock } from '../feeding/meals.ts';
import { rationOn } from '../feeding/ration.ts';
import { fedFromAge, ladderInputOf, rationInputOf } from '../feeding/ration-input.ts';
import { writtenFrom } from '../feeding/rules.ts';
import { MEAL_NAMES, type MealName, type Meals, mealCount } from '../food/bowls.ts';
import { DEFAULT_FOOD } from '../food/food.ts';
import { OLD_WEIGHT_DAYS } from '../growth/puppy-weights.ts';
import type { PlanBasis, PlanFacts } from './basis.ts';
import { type ByWeight, byWeightTable } from './by-weight.ts';
import { type NoteFinding, planNotes, TOY_KG } from './notes.ts';
import { type PlanRemark, planRemarks } from './plan-findings.ts';
import { type PlanTable, planTable, type TableFacts } from './table.ts';
import { type PlanWeights, planWeights } from './weights.ts';

const DAYS_A_WEEK = 7;
/** From this age on the table is too short to be called one to twelve months. */
const NEARLY_GROWN_DAYS = 330;
/** A first tread longer than this is a month, not a week. */
const LONGEST_WEEK = 10;
/** Weeks on the first sheet after this one. */
const NEXT_WEEKS = 6;
/** Of a dog that gains less than this part of its weight in a week nothing is said about the scale. */
const LEAST_GAIN = 0.005;

/** From which weight the amount was reckoned, in grams; a forecast says that it is one. */
export type WeekBasis =
  | { readonly code: 'weighed-today'; readonly grams: number }
  /** For the go-home day that is still to come. */
  | { readonly code: 'ahead'; readonly expected: number; readonly grams: number; readonly on: CivilDate }
  | { readonly code: 'recent'; readonly expected: number; readonly grams: number; readonly on: CivilDate };

/** What the bowls are of the published estimate, and what the scale should show for them. */
export interface Fair {
  /** Part of the estimate; null where there is none. */
  readonly part: number | null;
  readonly method: GrowthMethod;
  /** Grams to gain until a week later; null where so little is to be expected that it says nothing. */
  readonly gain: { readonly grams: number; readonly by: CivilDate } | null;
}

export interface Bowl {
  readonly name: MealName;
  readonly time: string;
  readonly grams: number;
}

export interface Week {
  readonly code: 'first-week' | 'week' | 'month';
  readonly from: CivilDate;
  /** Its last day. */
  readonly to: CivilDate;
  readonly dayGrams: number;
  readonly meals: readonly Bowl[];
  readonly basis: WeekBasis | null;
  readonly fair: Fair;
}

/** A week of the next six. */
export interface NextWeek {
  readonly from: CivilDate;
  readonly meals: readonly Bowl[];
  /** The number of bowls is another one than the week before, or is about to be. */
  readonly changes: boolean;
}

/** Why there is no amount. */
export type Missing =
  /** The weights say "act". */
  | { readonly code: 'act' }
  | { readonly code: 'no-weight' }
  | { readonly code: 'old'; readonly daysAgo: number }
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
  /** Empty without amounts. */
  readonly next: readonly NextWeek[];
  /** Set when there is no amount for now. */
  readonly missing: Missing | null;
  readonly ladderNote: 'needs-weight' | 'two-weeks' | 'how-to-read';
  /** Age in days; null while the plan is a forecast for the go-home day. */
  readonly nowDay: number | null;
  /** Grown, it will be so small that a missed meal can bring its blood sugar down. */
  readonly isToy: boolean;
  readonly standing: Standing | null;
  readonly isNearlyGrown: boolean;
  readonly table: PlanTable;
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
  const unsure = notSure(weights);
  const tableFacts: TableFacts = { rules: rules.rules, food, born, start, adultKg, at: weights.at, unit: house.massUnit };
  const treads = unsure === null ? mealLadder(ladderInputOf({ ...facts, growth: weights.growth, rules: rules.rules, food })) : [];
  const ration = rationInputOf({ ...facts, growth: weights.growth, rules: rules.rules, food });
  const basis: PlanBasis = { ...facts, food, name, born, age, start, weights, ration, treads };
  const isToy = adultKg !== null && adultKg <= TOY_KG;
  return {
    ...basis,
    bornAt: clockOf(puppy.bornAt),
    rulesFrom: writtenFrom(rules),
    week: weekOf(basis),
    next: nextWeeks(basis),
    missing: treads.length > 0 ? null : (unsure ?? missingOf(basis)),
    ladderNote: treads.length === 0 ? 'needs-weight' : weights.adult === null ? 'two-weeks' : 'how-to-read',
    nowDay: age < start ? null : start,
    isToy,
    standing: standingOf(weights),
    isNearlyGrown: start >= NEARLY_GROWN_DAYS,
    table: planTable(tableFacts, treads),
    byWeight: unsure?.code === 'act' ? { ranges: false, columns: [], rows: [] } : byWeightTable(tableFacts, treads),
    notes: planNotes({ rules: rules.rules, unit: house.massUnit, dayGrams: treads[0]?.dayGrams ?? null, adultKg, food }),
    remarks: planRemarks(basis),
  };
}

/** No amounts are given with confidence to one that is in trouble, nor from a weight that is too old. */
function notSure({ level, anchor }: PlanWeights): Missing | null {
  if (level === 'act') return { code: 'act' };
  return anchor !== null && anchor.daysAgo > OLD_WEIGHT_DAYS ? { code: 'old', daysAgo: anchor.daysAgo } : null;
}

function weekOf(basis: PlanBasis): Week | null {
  const { treads, born, start, age } = basis;
  const tread = treads[0];
  if (tread === undefined) return null;
  return {
    code: age < start ? 'first-week' : tread.untilDay - start > LONGEST_WEEK ? 'month' : 'week',
    from: addDays(born, start),
    to: addDays(born, tread.untilDay - 1),
    dayGrams: tread.dayGrams,
    meals: bowlsOf(tread.meals, basis),
    basis: weekBasis(basis),
    fair: fairOf(basis),
  };
}

function bowlsOf(meals: Meals, { rules }: PlanBasis): Bowl[] {
  const count = mealCount(meals);
  return MEAL_NAMES.flatMap((name) => {
    const grams = meals[name];
    return grams === undefined ? [] : [{ name, time: mealClock(rules.rules, name, count), grams }];
  });
}

function fairOf({ weights, start, born, rules, ration: input }: PlanBasis): Fair {
  const ration = input === null ? null : rationOn(input);
  const [now, then] = [weights.at(start), weights.at(start + DAYS_A_WEEK)];
  const grams = now === null || then === null ? 0 : then.mid - now.mid;
  const isSeen = now !== null && grams >= LEAST_GAIN * now.mid;
  return {
    part: ration?.estimateKcal == null ? null : ration.kcal / ration.estimateKcal,
    method: rules.rules.growthMethod,
    gain: isSeen ? { grams, by: addDays(born, start + DAYS_A_WEEK) } : null,
  };
}

/** Weeks that begin on its weekday, after the week in hand; they end where the forecast does. */
function nextWeeks(basis: PlanBasis): NextWeek[] {
  const { treads, born } = basis;
  const first = Math.ceil((treads[0]?.untilDay ?? 0) / DAYS_A_WEEK) * DAYS_A_WEEK;
  const weeks: NextWeek[] = [];
  for (let i = 0; i < NEXT_WEEKS; i += 1) {
    const tread = treadOn(treads, first + i * DAYS_A_WEEK);
    const before = treadOn(treads, first + (i - 1) * DAYS_A_WEEK) ?? treads[0];
    if (tread === undefined || before === undefined) break;
    weeks.push({
      from: addDays(born, first + i * DAYS_A_WEEK),
      meals: bowlsOf(tread.meals, basis),
      changes: tread.changing || mealCount(tread.meals) !== mealCount(before.meals),
    });
  }
  return weeks;
}

function treadOn(treads: readonly LadderStep[], day: number): LadderStep | undefined {
  return treads.find((t) => t.fromDay <= day && day < t.untilDay);
}

function weekBasis({ weights, start, born, on }: PlanBasis): WeekBasis | null {
  const { anchor } = weights;
  const expected = weights.at(start)?.mid;
  if (anchor === null || expected === undefined) return null;
  const { grams } = anchor;
  if (start <= anchor.ageDays + 1 && anchor.on === on) return { code: 'weighed-today', grams };
  if (addDays(born, start) > on) return { code: 'ahead', expected, grams, on: anchor.on };
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
