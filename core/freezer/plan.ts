/**
 * The thaw list: what to take out when and why, for all foods of the house. Each food is solved on its own (`solve.ts`); they share only the
 * room in the refrigerator. That is looked at last: where the packs would not fit, plans with smaller portions and no more waste are tried,
 * and what still doesn't fit is said. That last step is a remedy, not a proof that nothing else would fit.
 */

import { dateOf, fromLocalMinutes, type LocalTime, localMinutes } from '../calendar/clock.ts';
import { addDays, type CivilDate } from '../calendar/day.ts';
import { DAY_MINUTES } from '../calendar/durations.ts';
import { kitchenOf, planKitchen } from './kitchen.ts';
import { gapsOf, outlookOf, outOf, rowsOf, shortagesOf } from './outcome.ts';
import type { FreezerPlan, PlanInput } from './plan-shape.ts';
import { makeRoom, tooFullOf } from './room.ts';
import { reserveStarters } from './starters.ts';

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

/** Grams that the plan expects to be thrown away over some days from now, what lies overdue already not counted. */
export function wasteWithin(plan: FreezerPlan, now: LocalTime, days: number): number {
  const until = fromLocalMinutes(localMinutes(now) + days * DAY_MINUTES);
  const rows = plan.rows.filter((r) => r.useBy <= until).reduce((sum, r) => sum + r.wasteGrams, 0);
  const out = plan.out.filter((o) => o.state !== 'overdue' && o.clock.useBy <= until).reduce((sum, o) => sum + o.wasteGrams, 0);
  const cold = plan.gaps.reduce((sum, g) => sum + (g.coldWater?.inTime === true ? g.coldWater.wasteGrams : 0), 0);
  return Math.round((rows + out + cold) * 10) / 10;
}

/** The days from today, so many of them: the heads of the week's columns. */
export function daysFrom(today: CivilDate, count: number): CivilDate[] {
  return Array.from({ length: count }, (_, i) => addDays(today, i));
}
