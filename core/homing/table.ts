/** The two tables of the plan: week by week and month by month, and by the weight that the scale really shows. */

import { ageInMonths } from '../calendar/age.ts';
import { addDays, addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import { amountByWeight, type LadderInput, type LadderStep, mealLadder, treadAmounts } from '../feeding/ladder.ts';
import { mealsOn } from '../feeding/meals.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { shareOfWeight } from '../feeding/share.ts';
import { MEAL_NAMES, type MealName, type Meals, mealCount } from '../food/bowls.ts';
import type { Food } from '../food/food.ts';
import type { Band } from '../growth/forecast.ts';
import { GRAMS_PER_POUND, grownUnit, type MassUnit } from '../units/mass.ts';

const DAYS_A_WEEK = 7;
const WEEKLY_UNTIL_DAY = 26 * DAYS_A_WEEK;
const UNTIL_MONTHS = 12;

export interface TableFacts {
  readonly rules: HouseRules;
  readonly food: Food;
  readonly born: CivilDate;
  /** Age in days on which the plan starts. */
  readonly start: number;
  readonly adultKg: number | null;
  readonly at: (ageDays: number) => Band | null;
  readonly unit: MassUnit;
}

export interface Tread extends LadderStep {
  /** Part of the body weight a day, before the bowls are rounded. */
  readonly share: number;
}

/** The treads of the ladder with the share each of them is of the expected weight. */
export function planTreads(input: LadderInput): Tread[] {
  const amounts = treadAmounts(input);
  return mealLadder(input).map((step, i) => ({
    ...step,
    share: (amounts[i]?.grams ?? step.dayGrams) / (input.forecast(step.fromDay) ?? Number.NaN),
  }));
}

/** Age at which a row begins: whole weeks, or months on a birthday in months. */
export interface RowAge {
  readonly unit: 'week' | 'month';
  readonly n: number;
}

/** From a day on: what to expect on the scale and what to feed. */
export interface Row {
  readonly age: RowAge;
  readonly from: CivilDate;
  /** Age in days on which the row begins. */
  readonly fromDay: number;
  /** Expected weight in grams; null when it cannot be known. */
  readonly weight: Pick<Band, 'low' | 'high'> | null;
  /** Part of the body weight a day; null when the amount does not come from a share. */
  readonly share: number | null;
  /** Null when no weight can be expected that far ahead; the table by weight holds then. */
  readonly dayGrams: number | null;
  readonly meals: Meals;
  readonly mark: 'none' | 'now' | 'changing';
}

/** Rows of equal meals: so many a day, or the weeks in which midday shrinks from three to two. */
export type GroupKey = { readonly code: 'changing' } | { readonly code: 'meals'; readonly meals: number };

export interface Group {
  readonly key: GroupKey;
  readonly rows: Row[];
}

export interface PlanTable {
  readonly columns: readonly MealName[];
  readonly groups: readonly Group[];
}

interface Unplaced extends Omit<Row, 'mark' | 'age'> {
  readonly fed: Meals;
  readonly changing: boolean;
}

/** Rows in groups of equal meals. The first row is the one that holds now. */
export function planTable(facts: TableFacts, treads: readonly Tread[]): PlanTable {
  const rows = [
    ...treads.map((t) => rowOf(facts, t.fromDay, t)),
    ...daysAfter(facts, treads).map((day) => rowOf(facts, day, null)),
  ];
  const groups: Group[] = [];
  for (const [i, row] of rows.entries()) {
    const { fed, changing, ...shown } = row;
    const key: GroupKey = changing ? { code: 'changing' } : { code: 'meals', meals: mealCount(fed) };
    const last = groups.at(-1)?.key;
    if (last === undefined || !isSameGroup(last, key)) groups.push({ key, rows: [] });
    groups.at(-1)?.rows.push({
      ...shown,
      age: rowAge(facts.born, row.fromDay, i === 0, rows[1]?.fromDay ?? null),
      mark: i === 0 ? 'now' : changing ? 'changing' : 'none',
    });
  }
  return { columns: MEAL_NAMES.filter((name) => rows.some((r) => r.fed[name] !== undefined)), groups };
}

function isSameGroup(a: GroupKey, b: GroupKey): boolean {
  return a.code === 'meals' && b.code === 'meals' ? a.meals === b.meals : a.code === b.code;
}

function rowOf(facts: TableFacts, fromDay: number, tread: Tread | null): Unplaced {
  const day = addDays(facts.born, fromDay);
  const { shares, changing } = mealsOn(facts.rules, facts.born, day, facts.adultKg);
  const byShare = facts.rules.basis === 'share';
  return {
    from: day,
    fromDay,
    weight: tread === null ? null : facts.at(fromDay),
    share: tread === null ? (byShare ? shareOfWeight(facts.rules, facts.born, day) : null) : tread.share,
    dayGrams: tread?.dayGrams ?? null,
    meals: tread?.meals ?? {},
    fed: shares,
    changing,
  };
}

/** Where the ladder ends early for want of a forecast, the plain weeks and months go on. */
function daysAfter({ born, start }: TableFacts, treads: readonly Tread[]): number[] {
  const first = treads.at(-1)?.untilDay ?? start;
  const monthDay = (months: number) => ageInDays(born, addMonths(born, months));
  const days: number[] = [];
  if (first <= monthDay(UNTIL_MONTHS)) days.push(first);
  else if (treads.length === 0) return [start];
  for (let day = DAYS_A_WEEK; day <= WEEKLY_UNTIL_DAY; day += DAYS_A_WEEK) if (day > first) days.push(day);
  for (let months = 7; months <= UNTIL_MONTHS; months += 1) if (monthDay(months) > first) days.push(monthDay(months));
  return days;
}

/** Weeks to 26, months on a birthday in months, else the nearest week. The first row is as old as it is. */
function rowAge(born: CivilDate, day: number, first: boolean, second: number | null): RowAge {
  const on = addDays(born, day);
  const months = ageInMonths(born, on);
  if (day > WEEKLY_UNTIL_DAY + 3 && (first || addMonths(born, months) === on)) return { unit: 'month', n: months };
  const week = Math.round(day / DAYS_A_WEEK);
  const sameAsSecond = first && second !== null && Math.round(second / DAYS_A_WEEK) === week;
  return { unit: 'week', n: sameAsSecond ? week - 1 : week };
}

function inTableUnit(grams: number, unit: MassUnit): number {
  return grams / (grownUnit(unit) === 'kg' ? 1000 : GRAMS_PER_POUND);
}

const MOST_COLUMNS = 12;
/** Round weights in the unit of the heading, from close to wide: the closest that gives no more columns than fit. */
const ROUND_WEIGHTS: readonly (readonly number[])[] = [
  [
    0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28,
    32, 36, 40, 45, 50, 60, 70, 80,
  ],
  [
    0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 50, 60, 70, 80, 100, 120,
    140, 160, 180, 200, 240,
  ],
  [0.4, 0.6, 0.8, 1, 1.5, 2, 3, 4, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250],
];
/** Weights that are likely enough for the age: the expected band and so much more on both sides. Our own choice. */
const BELOW = 0.8;
const ABOVE = 1.2;
/** Without an expected weight: what dogs of every size may weigh, in kg. */
const ANY_KG = [1, 2, 3, 4, 6, 8, 10, 15, 20, 30, 40, 50] as const;
const ANY_LB = [2, 4, 6, 8, 12, 16, 20, 30, 40, 60, 80, 100] as const;

export interface ByWeight {
  /** Weights in the unit for grown dogs. */
  readonly columns: readonly number[];
  /** Grams a day for each column; null where no puppy of that age is likely to weigh that. */
  readonly rows: readonly {
    readonly age: { readonly code: 'up-to' | 'at'; readonly months: number };
    readonly grams: (number | null)[];
  }[];
}

/** Grams a day for the weight that the scale shows, at four ages; cells that are unlikely for the age stay empty. */
export function byWeightTable(facts: TableFacts): ByWeight {
  const { rules, born, start, unit } = facts;
  const now = ageInMonths(born, addDays(born, start));
  const ages = byWeightAges(rules).filter((a, i, all) => a.until > now || i === all.length - 1);
  const ranges = ages.map((a) => likely(facts, a.from, a.until));
  const columns = weightColumns(ranges, unit);
  const kgOf = (column: number) => (grownUnit(unit) === 'kg' ? column : (column * GRAMS_PER_POUND) / 1000);
  const rows = ages.map((a, i) => ({
    age: { code: a.from === 0 ? ('up-to' as const) : ('at' as const), months: a.months },
    grams: columns.map((column) => {
      const range = ranges[i] ?? null;
      const kg = kgOf(column);
      if (range !== null && (kg * 1000 < range.low || kg * 1000 > range.high)) return null;
      return amountByWeight(rules, a.months, kg, { food: facts.food, adultKg: adultOf(facts, a, kg) }, unit);
    }),
  }));
  return { columns, rows };
}

/**
 * Grown weight for a basis that needs it. Up to the first age the weight says how old the puppy is; at one age a heavier
 * puppy is taken to be a heavier dog, so that it is as near to grown as it is expected to be.
 */
function adultOf({ born, start, adultKg, at }: TableFacts, age: Age, kg: number): number | null {
  if (adultKg === null || age.from === 0) return adultKg;
  const expected = at(Math.max(start, ageInDays(born, addMonths(born, age.months))));
  return expected === null ? adultKg : (adultKg * kg * 1000) / expected.mid;
}

interface Age {
  /** The age in months whose share is used. */
  readonly months: number;
  /** Ages in months between which a weight is likely. */
  readonly from: number;
  readonly until: number;
}

function byWeightAges({ youngUntilMonths: young, middleMonths: middle, adultMonths: adult }: HouseRules): Age[] {
  const between = Math.round((middle + adult) / 2);
  const at = (months: number): Age => ({ months, from: months, until: months });
  return [
    { months: young, from: 0, until: young },
    at(middle),
    ...(between > middle && between < adult ? [at(between)] : []),
    { ...at(adult), until: Number.POSITIVE_INFINITY },
  ];
}

/** Grams; null when nothing can be expected at that age. */
function likely({ born, start, at }: TableFacts, fromMonths: number, untilMonths: number): { low: number; high: number } | null {
  const dayOf = (months: number) => Math.max(start, ageInDays(born, addMonths(born, months)));
  const low = at(dayOf(fromMonths));
  const high = at(dayOf(Number.isFinite(untilMonths) ? untilMonths : Math.max(fromMonths, 24)));
  return low === null || high === null ? null : { low: low.low * BELOW, high: high.high * ABOVE };
}

function weightColumns(ranges: readonly ({ low: number; high: number } | null)[], unit: MassUnit): number[] {
  const metric = grownUnit(unit) === 'kg';
  const found = ranges.filter((r) => r !== null);
  if (found.length < ranges.length) return [...(metric ? ANY_KG : ANY_LB)];
  const low = inTableUnit(Math.min(...found.map((r) => r.low)), unit);
  const high = inTableUnit(Math.max(...found.map((r) => r.high)), unit);
  for (const weights of ROUND_WEIGHTS) {
    const round = weights.filter((w) => w >= low && w <= high);
    if (round.length > 0 && round.length <= MOST_COLUMNS && high <= Math.max(...weights) * 1.2) return round;
  }
  return [...(metric ? ANY_KG : ANY_LB)];
}
