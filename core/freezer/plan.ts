/**
 * The thaw list: what to take out when and why, for all foods of the house. Each food is solved on its own (`solve.ts`); they share only the
 * room in the refrigerator. That is looked at last: where the packs would not fit, plans with smaller portions and no more waste are tried,
 * and what still doesn't fit is said. That last step is a remedy, not a proof that nothing else would fit.
 */

import { dateOf, fromLocalMinutes, type LocalTime, localMinutes } from '../calendar/clock.ts';
import { addDays, type CivilDate, dayNumber } from '../calendar/day.ts';
import { moveAheadHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { MEAL_NAMES } from '../food/bowls.ts';
import { portionGrams } from '../food/portion.ts';
import { type Demand, mealTime } from './demand.ts';
import { type FreezerSettings, isOverdue, oldestFirst, type Pack, type Starter, type Thaw } from './pack.ts';
import type { Portion, Solution, SolveInput } from './problem.ts';
import { at, type Batch } from './serve.ts';
import { solve } from './solve.ts';
import { reserveStarters } from './starters.ts';
import { coldWaterHours, type ThawClock, thawClock } from './thawing.ts';

export interface FreezerFacts {
  readonly rules: HouseRules;
  readonly settings: FreezerSettings;
  readonly packs: readonly Pack[];
  readonly thaws: readonly Thaw[];
  readonly starters: readonly Starter[];
}

export interface PlanInput extends FreezerFacts {
  readonly now: LocalTime;
  /** Last day that is planned. */
  readonly untilDay: CivilDate;
  /** From a few days before today, so that what was fed since a pack thawed is known. Any order. */
  readonly demand: readonly Demand[];
}

/** Portions of one pack. Grams of them together. */
export interface Take {
  readonly packId: string;
  readonly portions: number;
  /** Into how many the pack is cut. */
  readonly of: number;
  readonly grams: number;
}

export interface MealShare {
  readonly who: string;
  readonly grams: number;
}

/** One thing to do: at that time, these portions of one food go into the refrigerator. */
export interface ThawRow {
  readonly foodId: string;
  readonly out: LocalTime;
  readonly ready: LocalTime;
  readonly useBy: LocalTime;
  readonly officialUseBy: LocalTime;
  readonly takes: readonly Take[];
  readonly grams: number;
  readonly eaters: readonly MealShare[];
  readonly firstMeal: LocalTime;
  readonly lastMeal: LocalTime;
  readonly wasteGrams: number;
}

/** Something that was taken out and is not known to be gone. */
export interface OutNow {
  readonly thaw: Thaw;
  readonly foodId: string;
  readonly clock: ThawClock;
  readonly grams: number;
  /** Not eaten yet, by the meals since it was ready. */
  readonly leftGrams: number;
  readonly state: 'thawing' | 'ready' | 'eaten' | 'overdue';
  readonly eaters: readonly MealShare[];
  readonly wasteGrams: number;
}

/** A meal that can't be covered from the refrigerator. */
export interface Gap {
  readonly foodId: string;
  readonly at: LocalTime;
  readonly grams: number;
  readonly eaters: readonly MealShare[];
  readonly why: 'too-late' | 'none-left';
  /** What helps now, when there is a pack for it. */
  readonly coldWater: {
    readonly takes: readonly Take[];
    readonly hours: number;
    readonly startBy: LocalTime;
    readonly inTime: boolean;
    /** More than the meal needs: none of it is kept. */
    readonly wasteGrams: number;
  } | null;
}

export interface FoodOutlook {
  readonly foodId: string;
  /** In the freezer and not past their day; a pack that is partly gone counts as one. */
  readonly packs: number;
  readonly grams: number;
  /** Of it, put aside for starter packs. */
  readonly reservedGrams: number;
  readonly overdue: readonly Pack[];
  /** The last meal that is wholly covered; null when it lasts beyond the days planned, or when nothing is wanted. */
  readonly lastsTo: LocalTime | null;
  readonly wanted: boolean;
  readonly exact: boolean;
}

export interface Shortage {
  readonly foodId: string;
  readonly at: LocalTime;
  readonly grams: number;
}

export interface FreezerPlan {
  /** In order of time. */
  readonly rows: readonly ThawRow[];
  readonly out: readonly OutNow[];
  readonly gaps: readonly Gap[];
  readonly foods: readonly FoodOutlook[];
  /** Every meal for which there is none left, in order of time. */
  readonly shortages: readonly Shortage[];
  /** Starter packs that the stock doesn't cover. */
  readonly startersShort: readonly { readonly starter: Starter; readonly grams: number }[];
  /** The first time that the refrigerator has no room, null when it has or when nobody said how much there is. */
  readonly tooFull: { readonly at: LocalTime; readonly grams: number } | null;
}

const DAY = 1440;
/** Clock times that a person is told are whole fives. */
const STEP = 5;

export function planFreezer(input: PlanInput): FreezerPlan {
  const today = dateOf(input.now);
  const { reserved, short } = reserveStarters(input.starters, input.packs, today);
  const ids = [...new Set([...input.demand.map((d) => d.foodId), ...input.packs.map((p) => p.foodId)])];
  const kitchens = ids.map((foodId) => kitchenOf(input, foodId, reserved));
  const solved = makeRoom(input, kitchens.map(planKitchen));
  const by =
    <T>(time: (t: T) => LocalTime) =>
    (a: T, b: T) =>
      time(a) < time(b) ? -1 : Number(time(a) > time(b));
  return {
    rows: solved.flatMap(rowsOf).sort(by((r) => r.out)),
    out: solved.flatMap(outOf).sort(by((o) => o.clock.useBy)),
    gaps: solved.flatMap(gapsOf).sort(by((g) => g.at)),
    foods: solved.map(outlookOf),
    shortages: solved.flatMap(shortagesOf).sort(by((s) => s.at)),
    startersShort: short,
    tooFull: tooFullOf(input, solved),
  };
}

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

interface Planned {
  readonly kitchen: Kitchen;
  readonly portions: readonly FrozenPortion[];
  readonly solution: Solution;
  readonly gaps: readonly Gap[];
}

/** Days for which something that was taken out is still remembered. */
const REMEMBERED_DAYS = 6;

function kitchenOf(input: PlanInput, foodId: string, reserved: ReadonlyMap<string, number>): Kitchen {
  const today = dateOf(input.now);
  const packs = input.packs.filter((p) => p.foodId === foodId && p.gone === null && p.left > 0);
  const overdue = packs.filter((p) => isOverdue(p, today));
  const good = packs.filter((p) => !overdue.includes(p)).sort(oldestFirst);
  const oldest = localMinutes(input.now) - REMEMBERED_DAYS * DAY;
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

function addEater(eaters: MealShare[], who: string, grams: number): void {
  const known = eaters.findIndex((e) => e.who === who);
  if (known < 0) eaters.push({ who, grams });
  else eaters[known] = { who, grams: at(eaters, known).grams + grams };
}

function tenthsOf(grams: number): number {
  return Math.round(grams * 10);
}

function moveTimes({ settings, rules }: FreezerFacts): number[] {
  const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
  const { mealTimes } = rules;
  const clocks =
    settings.moveAt === 'evening' ? [mealTimes.evening] : MEAL_NAMES.filter((m) => m !== 'afternoon').map((m) => mealTimes[m]);
  return [...new Set(clocks.map(minutes))].sort((a, b) => a - b);
}

function solveInput(kitchen: Kitchen, portions: readonly FrozenPortion[], meals: readonly Meal[]): SolveInput {
  const { input } = kitchen;
  return {
    now: localMinutes(input.now),
    needs: meals,
    thawed: kitchen.thaws.map((t) => t.batch),
    portions,
    aheadOf: (tenths) => Math.ceil(moveAheadHours(input.rules, tenths / 10_000) * 60 - 1e-6),
    keepMinutes: input.rules.keepHours * 60,
    moveAt: moveTimes(input),
    until: (dayNumber(input.untilDay) + 1) * DAY,
  };
}

/** Meals that come too soon for the refrigerator get cold water first; the packs for it are no longer there for the plan. */
function planKitchen(kitchen: Kitchen): Planned {
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

function gapOf(kitchen: Kitchen, meal: Meal, tenths: number, why: Gap['why']): Gap {
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

function takesOf(portions: readonly FrozenPortion[]): Take[] {
  const takes = new Map<string, Take>();
  for (const { pack } of portions) {
    const n = (takes.get(pack.id)?.portions ?? 0) + 1;
    const grams = n === pack.portions ? pack.grams : Math.round(portionGrams(pack) * n * 10) / 10;
    takes.set(pack.id, { packId: pack.id, portions: n, of: pack.portions, grams });
  }
  return [...takes.values()];
}

/** Who eats what of each batch: at a meal fed from two batches the first eaters get the first batch. */
function eatersOf({ kitchen, solution }: Planned): MealShare[][] {
  const waiting = kitchen.meals.map((m) => m.eaters.map((e) => ({ ...e })));
  return solution.served.uses.map((uses) => {
    const eaters: MealShare[] = [];
    for (const use of uses) {
      let grams = use.tenths / 10;
      for (const e of at(waiting, use.need)) {
        const eaten = Math.min(grams, e.grams);
        if (eaten <= 0) continue;
        addEater(eaters, e.who, eaten);
        e.grams -= eaten;
        grams -= eaten;
      }
    }
    return eaters;
  });
}

/** Openings of one moment are one row: she opens the freezer once. */
function rowsOf(planned: Planned): ThawRow[] {
  const { kitchen, solution, portions } = planned;
  const eaters = eatersOf(planned);
  const offset = kitchen.thaws.length;
  const rows: ThawRow[] = [];
  const byMoment = Map.groupBy(solution.openings.keys(), (i) => at(solution.openings, i).moved);
  for (const [moved, places] of byMoment) {
    const taken = places.map((i) => at(portions, at(solution.openings, i).portion));
    const needs = places.flatMap((i) => [
      at(solution.openings, i).need,
      ...at(solution.served.uses, offset + i).map((u) => u.need),
    ]);
    const all: MealShare[] = [];
    for (const i of places) for (const e of at(eaters, offset + i)) addEater(all, e.who, e.grams);
    const takes = takesOf(taken);
    const out = fromLocalMinutes(moved);
    const heaviest = Math.max(...taken.map((p) => p.tenths)) / 10_000;
    rows.push({
      foodId: kitchen.foodId,
      out,
      ready: fromLocalMinutes(Math.max(...places.map((i) => at(solution.openings, i).ready))),
      useBy: fromLocalMinutes(Math.min(...places.map((i) => at(solution.openings, i).useBy))),
      officialUseBy: thawClock(kitchen.input.rules, 'refrigerator', out, heaviest).officialUseBy,
      takes,
      grams: takes.reduce((sum, t) => sum + t.grams, 0),
      eaters: all,
      firstMeal: fromLocalMinutes(at(kitchen.meals, Math.min(...needs)).at),
      lastMeal: fromLocalMinutes(at(kitchen.meals, Math.max(...needs)).at),
      wasteGrams: wasteOf(
        planned,
        places.map((i) => offset + i),
      ),
    });
  }
  return rows;
}

/** Grams of these batches that no meal eats before they are over their time. */
function wasteOf({ kitchen, solution }: Planned, batches: readonly number[]): number {
  const until = (dayNumber(kitchen.input.untilDay) + 1) * DAY;
  const lastTime = (b: number) =>
    b < kitchen.thaws.length ? at(kitchen.thaws, b).batch.useBy : at(solution.openings, b - kitchen.thaws.length).useBy;
  return batches.reduce((sum, b) => sum + (lastTime(b) > until ? 0 : at(solution.served.over, b)), 0) / 10;
}

function outOf(planned: Planned): OutNow[] {
  const { kitchen, solution } = planned;
  const now = kitchen.input.now;
  const minutes = localMinutes(now);
  const eaters = eatersOf(planned);
  return kitchen.thaws.flatMap(({ thaw, clock, grams }, i): OutNow[] => {
    if (thaw.ended !== null) return [];
    const eaten =
      at(solution.served.uses, i).reduce((sum, u) => sum + (at(kitchen.meals, u.need).at < minutes ? u.tenths : 0), 0) / 10;
    const left = Math.max(0, Math.round((grams - eaten) * 10) / 10);
    const state = left === 0 ? 'eaten' : clock.useBy < now ? 'overdue' : clock.ready > now ? 'thawing' : 'ready';
    return [
      {
        thaw,
        foodId: kitchen.foodId,
        clock,
        grams,
        leftGrams: left,
        state,
        eaters: at(eaters, i),
        wasteGrams: wasteOf(planned, [i]),
      },
    ];
  });
}

function gapsOf({ kitchen, solution, gaps }: Planned): Gap[] {
  const none = solution.short.find((s) => s.why === 'none-left');
  return none === undefined ? [...gaps] : [...gaps, gapOf(kitchen, at(kitchen.meals, none.need), none.tenths, 'none-left')];
}

function shortagesOf({ kitchen, solution }: Planned): Shortage[] {
  return solution.short
    .filter((s) => s.why === 'none-left')
    .map((s) => ({ foodId: kitchen.foodId, at: fromLocalMinutes(at(kitchen.meals, s.need).at), grams: s.tenths / 10 }));
}

function outlookOf({ kitchen, solution }: Planned): FoodOutlook {
  const none = solution.short.find((s) => s.why === 'none-left');
  const covered = none === undefined ? undefined : kitchen.meals[none.need - 1];
  const grams = kitchen.packs.reduce((sum, p) => sum + (p.left === p.portions ? p.grams : portionGrams(p) * p.left), 0);
  const now = localMinutes(kitchen.input.now);
  return {
    foodId: kitchen.foodId,
    packs: kitchen.packs.length,
    grams: Math.round(grams * 10) / 10,
    reservedGrams: kitchen.reservedGrams,
    overdue: kitchen.overdue,
    lastsTo:
      none === undefined ? null : covered === undefined || covered.at < now ? kitchen.input.now : fromLocalMinutes(covered.at),
    wanted: kitchen.meals.some((m) => m.at >= now),
    exact: solution.exact,
  };
}

/** What lies in the refrigerator just after each move, of all foods together. */
function fullness(solved: readonly Planned[], now: number): { at: number; grams: number }[] {
  const moves = [...new Set([now, ...solved.flatMap((p) => p.solution.openings.map((o) => o.moved))])].sort((a, b) => a - b);
  return moves.map((time) => ({ at: time, grams: solved.reduce((sum, p) => sum + gramsInside(p, time), 0) }));
}

function gramsInside({ kitchen, solution, portions }: Planned, time: number): number {
  const eaten = (b: number) =>
    at(solution.served.uses, b).reduce((sum, u) => sum + (at(kitchen.meals, u.need).at <= time ? u.tenths : 0), 0);
  let tenths = 0;
  for (const [b, t] of kitchen.thaws.entries()) {
    if (t.thaw.ended === null && t.batch.useBy >= time && localMinutes(t.thaw.at) <= time) tenths += t.batch.tenths - eaten(b);
  }
  for (const [i, o] of solution.openings.entries()) {
    if (o.moved <= time && o.useBy >= time) tenths += at(portions, o.portion).tenths - eaten(kitchen.thaws.length + i);
  }
  return tenths / 10;
}

function tooFullOf(input: PlanInput, solved: readonly Planned[]): FreezerPlan['tooFull'] {
  const room = input.settings.roomGrams;
  if (room === null) return null;
  const first = fullness(solved, localMinutes(input.now)).find((f) => f.grams > room);
  return first === undefined ? null : { at: fromLocalMinutes(first.at), grams: first.grams };
}

/** Where it would not all fit, smaller portions first: less lies there that is not needed yet. Taken only where no more is thrown away. */
function makeRoom(input: PlanInput, solved: readonly Planned[]): Planned[] {
  const room = input.settings.roomGrams;
  let best = [...solved];
  if (room === null) return best;
  const now = localMinutes(input.now);
  const peak = (plans: readonly Planned[]) => Math.max(0, ...fullness(plans, now).map((f) => f.grams));
  for (const [i, plan] of solved.entries()) {
    const before = peak(best);
    if (before <= room) break;
    const portions = [...plan.portions].sort((a, b) => a.tenths - b.tenths);
    const solution = solve(solveInput(plan.kitchen, portions, plan.kitchen.meals));
    if (solution.wasteTenths > plan.solution.wasteTenths || solution.shortTenths > plan.solution.shortTenths) continue;
    const eased = best.with(i, { ...plan, portions, solution });
    if (peak(eased) < before) best = eased;
  }
  return best;
}

/** Grams that the plan expects to be thrown away over some days from now, what lies overdue already not counted. */
export function wasteWithin(plan: FreezerPlan, now: LocalTime, days: number): number {
  const until = fromLocalMinutes(localMinutes(now) + days * DAY);
  const rows = plan.rows.filter((r) => r.useBy <= until).reduce((sum, r) => sum + r.wasteGrams, 0);
  const out = plan.out.filter((o) => o.state !== 'overdue' && o.clock.useBy <= until).reduce((sum, o) => sum + o.wasteGrams, 0);
  const cold = plan.gaps.reduce((sum, g) => sum + (g.coldWater?.inTime === true ? g.coldWater.wasteGrams : 0), 0);
  return Math.round((rows + out + cold) * 10) / 10;
}

/** The days from today, so many of them: the heads of the week's columns. */
export function daysFrom(today: CivilDate, count: number): CivilDate[] {
  return Array.from({ length: count }, (_, i) => addDays(today, i));
}
