/**
 * What to feed by the weight that the scale really shows. One way only: up to the middle of what is expected the amount for the age, above it
 * by weight, and never more than at the top of the range; so a light puppy is never fed less, and a heavy one never more and more.
 */

import { ageInMonths } from '../calendar/age.ts';
import { addDays, addMonths, ageInDays } from '../calendar/day.ts';
import { amountFor } from '../feeding/amount.ts';
import { amountByWeight, type LadderStep } from '../feeding/ladder.ts';
import { mealsOn } from '../feeding/meals.ts';
import { shareOfWeight } from '../feeding/share.ts';
import { fillBowls } from '../food/bowls.ts';
import type { Band } from '../growth/forecast.ts';
import { GRAMS_PER_POUND, grownUnit, type MassUnit } from '../units/mass.ts';
import type { TableFacts } from './table.ts';

/** `at` in grams; grams a day; null where no puppy of that age is likely to weigh that. */
export interface WeightCell {
  readonly at: number;
  readonly grams: number | null;
  /** Whether the amount is that for the age, or goes by the weight. */
  readonly as: 'age' | 'weight';
}

export interface WeightRow {
  /** Age in days, and as weeks or months. */
  readonly day: number;
  readonly age: { readonly unit: 'week' | 'month'; readonly n: number };
  /** With so many decimals the weights of the row are told apart. */
  readonly decimals: 0 | 1 | 2;
  readonly cells: readonly WeightCell[];
}

/** With a range for each age: its first cell is the middle, its last the top. Without: the same weights for every age. */
export interface ByWeight {
  readonly ranges: boolean;
  /** Grams, without ranges only. */
  readonly columns: readonly number[];
  readonly rows: readonly WeightRow[];
}

const DAYS_A_WEEK = 7;
/** Ages of the rows: every second week to 22, then months. */
const WEEKS = [8, 10, 12, 14, 16, 18, 20, 22] as const;
const MONTHS = [6, 7, 8, 9, 10, 12] as const;
/** Without a range a row takes as little room as the age in months. */
const MONTHS_WITHOUT = [2, 3, 4, 5, 6, 9, 12] as const;
/** Cells between the middle and the top, at the most. */
const MOST_STEPS = 5;
/** Steps that are easily read off, in the unit of the heading. */
const EASY_STEPS = [
  { step: 0.01, decimals: 2 },
  { step: 0.02, decimals: 2 },
  { step: 0.05, decimals: 2 },
  { step: 0.1, decimals: 1 },
  { step: 0.2, decimals: 1 },
  { step: 0.5, decimals: 1 },
  { step: 1, decimals: 0 },
  { step: 2, decimals: 0 },
  { step: 5, decimals: 0 },
] as const;
/** What dogs of every size may weigh, in the unit of the heading. */
const ANY_KG = [1, 2, 3, 4, 6, 8, 10, 15, 20, 30, 40, 50] as const;
const ANY_LB = [2, 4, 6, 8, 12, 16, 20, 30, 40, 60, 80, 100] as const;

interface Age {
  readonly day: number;
  readonly age: WeightRow['age'];
}

/** Rows from the age of the plan to twelve months; with amounts of the treads where there are some. */
export function byWeightTable(facts: TableFacts, treads: readonly LadderStep[]): ByWeight {
  if (treads.length > 0 && facts.adultKg !== null) {
    const rows = agesOf(facts, WEEKS, MONTHS).flatMap((a) => rowInRange(facts, treads, a));
    return { ranges: true, columns: [], rows };
  }
  const columns = (grownUnit(facts.unit) === 'kg' ? ANY_KG : ANY_LB).map((value) => value * gramsOf(facts.unit));
  const rows = agesOf(facts, [], MONTHS_WITHOUT).map(
    (a): WeightRow => ({
      ...a,
      decimals: 2,
      cells: columns.map(
        (at): WeightCell => ({ at, grams: amountByWeight(facts.rules, a.age.n, at / 1000, null, facts.unit), as: 'weight' }),
      ),
    }),
  );
  return { ranges: false, columns, rows };
}

/** Those that are still to come; the age of the plan itself stands for those that are over. */
function agesOf({ born, start }: TableFacts, weeks: readonly number[], months: readonly number[]): Age[] {
  const monthDay = (n: number) => Math.ceil(ageInDays(born, addMonths(born, n)) / DAYS_A_WEEK) * DAYS_A_WEEK;
  const all: Age[] = [
    ...weeks.map((n): Age => ({ day: n * DAYS_A_WEEK, age: { unit: 'week', n } })),
    ...months.map((n): Age => ({ day: monthDay(n), age: { unit: 'month', n } })),
  ];
  const coming = all.filter((a) => a.day > start);
  const isNow = all.some((a) => a.day === start);
  const now = weeks.length > 0 && start < (WEEKS.at(-1) ?? 0) * DAYS_A_WEEK;
  const first: Age = {
    day: start,
    age: now
      ? { unit: 'week', n: Math.floor(start / DAYS_A_WEEK) }
      : { unit: 'month', n: ageInMonths(born, addDays(born, start)) },
  };
  return [isNow ? (all.find((a) => a.day === start) ?? first) : first, ...coming].filter(
    (a, i, rows) => i === 0 || a.age.n !== rows[0]?.age.n || a.age.unit !== rows[0]?.age.unit,
  );
}

function gramsOf(unit: MassUnit): number {
  return grownUnit(unit) === 'kg' ? 1000 : GRAMS_PER_POUND;
}

function rowInRange(facts: TableFacts, treads: readonly LadderStep[], { day, age }: Age): WeightRow[] {
  const tread = treads.find((t) => t.fromDay <= day && day < t.untilDay);
  const band = facts.at(day);
  if (tread === undefined || band === null) return [];
  const { weights, decimals } = stepsAbove(band, facts.unit);
  const above = weights.map((at): WeightCell => ({ at, grams: amountAbove(facts, tread, band, day, at), as: 'weight' }));
  // In a range so narrow that one amount holds, the middle and the top are enough.
  const told = above.every((cell) => cell.grams === tread.dayGrams) ? above.slice(-1) : above;
  return [{ day, age, decimals, cells: [{ at: band.mid, grams: tread.dayGrams, as: 'age' }, ...told] }];
}

/** Easily read weights over the middle, as close as a row takes them, and the top of the range itself; none that reads like another. */
function stepsAbove({ mid, high }: Band, unit: MassUnit): { weights: number[]; decimals: WeightRow['decimals'] } {
  const one = gramsOf(unit);
  for (const { step: easy, decimals } of EASY_STEPS) {
    const reads = (grams: number) => (grams / one).toFixed(decimals);
    const step = easy * one;
    const first = Math.floor(mid / step) + 1;
    const between = Array.from({ length: Math.max(0, Math.ceil(high / step) - first) }, (_, i) => (first + i) * step).filter(
      (at) => reads(at) !== reads(mid) && reads(at) !== reads(high),
    );
    if (between.length < MOST_STEPS) return { weights: [...between, high], decimals };
  }
  return { weights: [high], decimals: 0 };
}

/** As much more than at the middle as the rule gives for the weight; whole bowls, never less than for the age. */
function amountAbove(facts: TableFacts, tread: LadderStep, band: Band, day: number, at: number): number {
  const grams = (tread.dayGrams * plainRule(facts, day, at, band.mid)) / plainRule(facts, day, band.mid, band.mid);
  return Math.max(tread.dayGrams, bowlsOf(facts, day, grams));
}

/** A heavier puppy of an age is taken to be a heavier dog, as near to grown as it is expected to be. */
function plainRule({ rules, food, born, adultKg }: TableFacts, day: number, at: number, mid: number): number {
  const share = shareOfWeight(rules, born, addDays(born, day));
  return amountFor(rules, food, share, at, adultKg === null ? null : (adultKg * at) / mid).grams;
}

function bowlsOf({ rules, born, unit, adultKg }: TableFacts, day: number, grams: number): number {
  return fillBowls(grams, mealsOn(rules, born, addDays(born, day), adultKg).shares, unit).dayGrams;
}
