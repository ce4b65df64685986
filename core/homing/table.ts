/** The table of the plan: week by week to 26 weeks, then month by month. */

import { ageInMonths } from '../calendar/age.ts';
import { addDays, addMonths, ageInDays, type CivilDate } from '../calendar/day.ts';
import type { LadderStep } from '../feeding/ladder.ts';
import { mealsOn } from '../feeding/meals.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { shareOfWeight } from '../feeding/share.ts';
import { MEAL_NAMES, type MealName, type Meals, mealCount } from '../food/bowls.ts';
import type { Food } from '../food/food.ts';
import type { Band } from '../growth/forecast.ts';
import type { MassUnit } from '../units/mass.ts';

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

/** Age at which a row begins: whole weeks and the days over them, and the months that are full since the row before; null when none is. */
export interface RowAge {
  readonly weeks: number;
  readonly days: number;
  readonly months: number | null;
}

/** From a day on: what to expect on the scale and what to feed. */
export interface Row {
  readonly age: RowAge;
  readonly from: CivilDate;
  /** Age in days on which the row begins. */
  readonly fromDay: number;
  /** Expected weight in grams; null when it cannot be known. */
  readonly weight: Pick<Band, 'low' | 'high'> | null;
  /** Part of the body weight a day by the rule for the age; null where there is an amount, and where no share is the rule. */
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
  /** Those that are fed, in their order. */
  readonly meals: readonly MealName[];
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
export function planTable(facts: TableFacts, treads: readonly LadderStep[]): PlanTable {
  const rows = [
    ...treads.map((t) => rowOf(facts, t.fromDay, t)),
    ...daysAfter(facts, treads).map((day) => rowOf(facts, day, null)),
  ];
  const groups: Group[] = [];
  for (const [i, row] of rows.entries()) {
    const { fed, changing, ...shown } = row;
    const key: GroupKey = changing ? { code: 'changing' } : { code: 'meals', meals: mealCount(fed) };
    const last = groups.at(-1)?.key;
    if (last === undefined || !isSameGroup(last, key))
      groups.push({ key, meals: MEAL_NAMES.filter((name) => fed[name] !== undefined), rows: [] });
    groups.at(-1)?.rows.push({
      ...shown,
      age: rowAge(facts.born, row.fromDay, rows[i - 1]?.fromDay ?? null),
      mark: i === 0 ? 'now' : changing ? 'changing' : 'none',
    });
  }
  return { columns: MEAL_NAMES.filter((name) => rows.some((r) => r.fed[name] !== undefined)), groups };
}

function isSameGroup(a: GroupKey, b: GroupKey): boolean {
  return a.code === 'meals' && b.code === 'meals' ? a.meals === b.meals : a.code === b.code;
}

function rowOf(facts: TableFacts, fromDay: number, tread: LadderStep | null): Unplaced {
  const day = addDays(facts.born, fromDay);
  const { shares, changing } = mealsOn(facts.rules, facts.born, day, facts.adultKg);
  const noShare = tread !== null || facts.rules.basis === 'energy';
  return {
    from: day,
    fromDay,
    weight: tread === null ? null : facts.at(fromDay),
    share: noShare ? null : shareOfWeight(facts.rules, facts.born, day),
    dayGrams: tread?.dayGrams ?? null,
    meals: tread?.meals ?? {},
    fed: shares,
    changing,
  };
}

/** Where the ladder ends early for want of a forecast, the plain weeks and months go on, each month on the first whole week after it. */
function daysAfter({ born, start }: TableFacts, treads: readonly LadderStep[]): number[] {
  const first = treads.at(-1)?.untilDay ?? start;
  const monthDay = (months: number) => Math.ceil(ageInDays(born, addMonths(born, months)) / DAYS_A_WEEK) * DAYS_A_WEEK;
  const days: number[] = [];
  if (first <= monthDay(UNTIL_MONTHS)) days.push(first);
  else if (treads.length === 0) return [start];
  for (let day = DAYS_A_WEEK; day <= WEEKLY_UNTIL_DAY; day += DAYS_A_WEEK) if (day > first) days.push(day);
  for (let months = 7; months <= UNTIL_MONTHS; months += 1) if (monthDay(months) > first) days.push(monthDay(months));
  return days;
}

/** From five months on they are said too, in the first row that holds them. */
const MONTHS_FROM = 5;

/** 22 weeks is 154 days: nothing is rounded. */
function rowAge(born: CivilDate, day: number, before: number | null): RowAge {
  const months = ageInMonths(born, addDays(born, day));
  const isNew = before === null || ageInMonths(born, addDays(born, before)) < months;
  return {
    weeks: Math.floor(day / DAYS_A_WEEK),
    days: day % DAYS_A_WEEK,
    months: months >= MONTHS_FROM && isNew ? months : null,
  };
}
