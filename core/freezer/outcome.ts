/** What a solved food says: what to take out, what lies there, what is not covered, and how long it lasts. */
import { fromLocalMinutes, localMinutes } from '../calendar/clock.ts';
import { portionGrams } from '../food/portion.ts';
import { addEater, endOfPlan, gapOf, type Planned, takesOf } from './kitchen.ts';
import type { FoodOutlook, Gap, MealShare, OutNow, Shortage, ThawRow } from './plan-shape.ts';
import { at } from './serve.ts';
import { thawClock } from './thawing.ts';

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
export function rowsOf(planned: Planned): ThawRow[] {
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
  const until = endOfPlan(kitchen.input);
  const lastTime = (b: number) =>
    b < kitchen.thaws.length ? at(kitchen.thaws, b).batch.useBy : at(solution.openings, b - kitchen.thaws.length).useBy;
  return batches.reduce((sum, b) => sum + (lastTime(b) > until ? 0 : at(solution.served.over, b)), 0) / 10;
}

export function outOf(planned: Planned): OutNow[] {
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

export function gapsOf({ kitchen, solution, gaps }: Planned): Gap[] {
  const none = solution.short.find((s) => s.why === 'none-left');
  return none === undefined ? [...gaps] : [...gaps, gapOf(kitchen, at(kitchen.meals, none.need), none.tenths, 'none-left')];
}

export function shortagesOf({ kitchen, solution }: Planned): Shortage[] {
  return solution.short
    .filter((s) => s.why === 'none-left')
    .map((s) => ({ foodId: kitchen.foodId, at: fromLocalMinutes(at(kitchen.meals, s.need).at), grams: s.tenths / 10 }));
}

export function outlookOf({ kitchen, solution }: Planned): FoodOutlook {
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
