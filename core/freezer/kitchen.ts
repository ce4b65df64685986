/** One food of the house: its meals, what is thawed, what is frozen, solved on its own. */

import { dateOf, fromLocalMinutes, localMinutes } from '../calendar/clock.ts';
import { dayNumber } from '../calendar/day.ts';
import { DAY_MINUTES } from '../calendar/durations.ts';
import { moveAheadHours } from '../feeding/keeping.ts';
import { portionGrams } from '../food/portion.ts';
import { mealTime } from './demand.ts';
import { isOverdue, oldestFirst, type Pack, type Thaw } from './pack.ts';
import type { FreezerFacts, Gap, MealShare, PlanInput, Take } from './plan-shape.ts';
import type { Portion, Solution, SolveInput } from './problem.ts';
import { at, type Batch } from './serve.ts';
import { solve } from './solve.ts';
import { coldWaterHours, type ThawClock, thawClock } from './thawing.ts';

/** Clock times that a person is told are whole fives. */
const STEP = 5;

/** One food: its meals, what is thawed, what is frozen. */
interface Kitchen {
  readonly input: PlanInput;
  readonly foodId: string;
  readonly meals: readonly Meal[];
  readonly thaws: readonly { readonly thaw: Thaw; readonly clock: ThawClock; readonly grams: number; readonly batch: Batch }[];
  readonly packs: readonly Pack[];
  readonly overdue: readonly Pack[];
  readonly reservedGrams: number;
  readonly portions: readonly FrozenPortion[];
}

interface Meal {
  readonly at: number;
  readonly tenths: number;
  readonly eaters: readonly MealShare[];
}

interface FrozenPortion extends Portion {
  readonly pack: Pack;
}

export interface Planned {
  readonly kitchen: Kitchen;
  readonly portions: readonly FrozenPortion[];
  readonly solution: Solution;
  readonly gaps: readonly Gap[];
}

/** Days for which something that was taken out is still remembered. */
const REMEMBERED_DAYS = 6;

export function kitchenOf(input: PlanInput, foodId: string, reserved: ReadonlyMap<string, number>): Kitchen {
  const today = dateOf(input.now);
  const packs = input.packs.filter((p) => p.foodId === foodId && p.gone === null && p.left > 0);
  const overdue = packs.filter((p) => isOverdue(p, today));
  const good = packs.filter((p) => !overdue.includes(p)).sort(oldestFirst);
  const oldest = localMinutes(input.now) - REMEMBERED_DAYS * DAY_MINUTES;
  const thaws = input.thaws.flatMap((thaw) => {
    const pack = input.packs.find((p) => p.id === thaw.packId);
    if (pack === undefined || pack.foodId !== foodId || localMinutes(thaw.at) < oldest) return [];
    const grams = portionGrams(pack) * thaw.portions;
    const clock = thawClock(input.rules, thaw.way, thaw.at, portionGrams(pack) / 1000);
    const useBy = thaw.endedAt !== null && thaw.endedAt < clock.useBy ? thaw.endedAt : clock.useBy;
    return [
      { thaw, clock, grams, batch: { tenths: tenthsOf(grams), ready: localMinutes(clock.ready), useBy: localMinutes(useBy) } },
    ];
  });
  let reservedGrams = 0;
  for (const p of good) reservedGrams += (reserved.get(p.id) ?? 0) * portionGrams(p);
  return {
    input,
    foodId,
    meals: mealsOf(input, foodId),
    thaws,
    packs: good,
    overdue,
    reservedGrams,
    portions: good.flatMap((pack) => portionsOf(pack, pack.left - (reserved.get(pack.id) ?? 0))),
  };
}

function portionsOf(pack: Pack, count: number): FrozenPortion[] {
  const tenths = tenthsOf(portionGrams(pack));
  const lastDay = pack.bestBefore === null ? null : dayNumber(pack.bestBefore);
  return Array.from({ length: Math.max(0, count) }, () => ({ id: pack.id, tenths, lastDay, pack }));
}

function mealsOf(input: PlanInput, foodId: string): Meal[] {
  const byTime = new Map<number, { tenths: number; eaters: MealShare[] }>();
  for (const d of input.demand) {
    if (d.foodId !== foodId || d.day > input.untilDay || d.grams <= 0) continue;
    const time = localMinutes(mealTime(d));
    const meal = byTime.get(time) ?? { tenths: 0, eaters: [] };
    meal.tenths += tenthsOf(d.grams);
    addEater(meal.eaters, d.who, d.grams);
    byTime.set(time, meal);
  }
  return [...byTime].map(([time, meal]) => ({ at: time, ...meal })).sort((a, b) => a.at - b.at);
}

export function addEater(eaters: MealShare[], who: string, grams: number): void {
  const known = eaters.findIndex((e) => e.who === who);
  if (known < 0) eaters.push({ who, grams });
  else eaters[known] = { who, grams: at(eaters, known).grams + grams };
}

function tenthsOf(grams: number): number {
  return Math.round(grams * 10);
}

function moveTimes({ settings, rules }: FreezerFacts): number[] {
  const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
  const { morning, midday, evening } = rules.mealTimes;
  const clocks = settings.moveAt === 'evening' ? [evening] : [morning, midday, evening];
  return [...new Set(clocks.map(minutes))].sort((a, b) => a - b);
}

export function solveInput(kitchen: Kitchen, portions: readonly FrozenPortion[], meals: readonly Meal[]): SolveInput {
  const { input } = kitchen;
  return {
    now: localMinutes(input.now),
    needs: meals,
    thawed: kitchen.thaws.map((t) => t.batch),
    portions,
    aheadOf: (tenths) => Math.ceil(moveAheadHours(input.rules, tenths / 10_000) * 60 - 1e-6),
    keepMinutes: input.rules.keepHours * 60,
    moveAt: moveTimes(input),
    until: endOfPlan(input),
  };
}

/** Meals that come too soon for the refrigerator get cold water first; the packs for it are no longer there for the plan. */
export function planKitchen(kitchen: Kitchen): Planned {
  const first = solve(solveInput(kitchen, kitchen.portions, kitchen.meals));
  const tooLate = first.short.filter((s) => s.why === 'too-late');
  if (tooLate.length === 0) return { kitchen, portions: kitchen.portions, solution: first, gaps: [] };
  const free = [...kitchen.portions];
  const gaps: Gap[] = [];
  const meals = [...kitchen.meals];
  for (const { need, tenths } of tooLate) {
    const meal = at(meals, need);
    gaps.push({ ...gapOf(kitchen, meal, tenths, 'too-late'), coldWater: coldWaterFor(kitchen, free, meal.at, tenths) });
    meals[need] = { ...meal, tenths: meal.tenths - tenths };
  }
  return { kitchen: { ...kitchen, meals }, portions: free, solution: solve(solveInput(kitchen, free, meals)), gaps };
}

export function gapOf(kitchen: Kitchen, meal: Meal, tenths: number, why: Gap['why']): Gap {
  return { foodId: kitchen.foodId, at: fromLocalMinutes(meal.at), grams: tenths / 10, eaters: meal.eaters, why, coldWater: null };
}

/**
 * Whole packs, since none can be cut before it is half thawed: the smallest that is enough, else the oldest until it is. Takes them out of what
 * is free.
 */
function coldWaterFor(kitchen: Kitchen, free: FrozenPortion[], mealAt: number, tenths: number): Gap['coldWater'] {
  const chosen: FrozenPortion[] = [];
  let heaviest = 0;
  let lacks = tenths;
  while (lacks > 0 && free.length > 0) {
    const packs = [...Map.groupBy(free, (p) => p.id).values()].map((portions) => ({
      portions,
      tenths: portions.reduce((sum, p) => sum + p.tenths, 0),
    }));
    const enough = packs.filter((p) => p.tenths >= lacks).sort((a, b) => a.tenths - b.tenths)[0];
    const { portions, tenths: taken } = enough ?? at(packs, 0);
    free.splice(0, free.length, ...free.filter((p) => !portions.includes(p)));
    chosen.push(...portions);
    heaviest = Math.max(heaviest, taken);
    lacks -= taken;
  }
  if (chosen.length === 0) return null;
  const hours = coldWaterHours(heaviest / 10_000);
  const startBy = Math.floor((mealAt - hours * 60) / STEP) * STEP;
  return {
    takes: takesOf(chosen),
    hours,
    startBy: fromLocalMinutes(startBy),
    inTime: startBy >= localMinutes(kitchen.input.now),
    wasteGrams: Math.max(0, -lacks) / 10,
  };
}

export function takesOf(portions: readonly FrozenPortion[]): Take[] {
  const takes = new Map<string, Take>();
  for (const { pack } of portions) {
    const n = (takes.get(pack.id)?.portions ?? 0) + 1;
    const grams = n === pack.portions ? pack.grams : Math.round(portionGrams(pack) * n * 10) / 10;
    takes.set(pack.id, { packId: pack.id, portions: n, of: pack.portions, grams });
  }
  return [...takes.values()];
}

/** Minutes at which the last day planned is over. */
export function endOfPlan(input: PlanInput): number {
  return (dayNumber(input.untilDay) + 1) * DAY_MINUTES;
}
