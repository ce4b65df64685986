/** What to buy and by when, and what the food costs. Money is a plain number in her own currency. */
import { dateOf, fromLocalMinutes, localMinutes, localTime } from '../calendar/clock.ts';
import { addDays, type CivilDate } from '../calendar/day.ts';
import { moveAheadHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import type { Pack } from './pack.ts';
import type { FreezerPlan } from './plan-shape.ts';

export interface Purchase {
  readonly foodId: string;
  /** It has to be in the freezer, or in the refrigerator thawing, on this day. */
  readonly by: CivilDate;
  /** The days that it feeds, both included. */
  readonly from: CivilDate;
  readonly to: CivilDate;
  readonly grams: number;
  /** In packs as they came last; null when none ever did. */
  readonly packs: { readonly count: number; readonly grams: number; readonly cost: number | null } | null;
}

const DAYS_AT_A_TIME = 7;

/** For each food that runs out within the days planned: enough for the week after, in whole packs, with starter packs that lack something. */
export function shoppingList(plan: FreezerPlan, packs: readonly Pack[], rules: HouseRules, today: CivilDate): Purchase[] {
  const wanted = [
    ...plan.shortages.map((s) => ({ foodId: s.foodId, at: s.at, day: dateOf(s.at), grams: s.grams, frozen: false })),
    ...plan.startersShort.map(({ starter: s, grams }) => ({
      foodId: s.foodId,
      at: localTime(`${s.day}T00:00`),
      day: s.day,
      grams,
      frozen: true,
    })),
  ];
  const purchases: Purchase[] = [];
  for (const [foodId, all] of Map.groupBy(wanted, (w) => w.foodId)) {
    const from = earliestOf(all.map((w) => w.day));
    const end = addDays(from, DAYS_AT_A_TIME - 1);
    const week = all.filter((w) => w.day <= end);
    const grams = Math.round(week.reduce((sum, w) => sum + w.grams, 0));
    const usual = usualPack(packs, foodId);
    const by = week.map((w) => (w.frozen ? w.day : dateOf(fromLocalMinutes(localMinutes(w.at) - aheadMinutes(rules, usual)))));
    const earliest = earliestOf(by);
    const days = week.map((w) => w.day).sort();
    purchases.push({
      foodId,
      by: [earliest, today].sort()[1] ?? today,
      from,
      to: days.at(-1) ?? from,
      grams,
      packs: usual === null ? null : packsFor(grams, usual),
    });
  }
  return purchases.sort((a, b) => (a.by < b.by ? -1 : Number(a.by > b.by)));
}

/** Dates compare as text; there is always one. */
function earliestOf(days: readonly CivilDate[]): CivilDate {
  const [first] = [...days].sort();
  if (first === undefined) throw new RangeError('no days');
  return first;
}

function aheadMinutes(rules: HouseRules, usual: Pack | null): number {
  return moveAheadHours(rules, (usual?.grams ?? 0) / 1000 / (usual?.portions ?? 1)) * 60;
}

function packsFor(grams: number, usual: Pack): NonNullable<Purchase['packs']> {
  const count = Math.ceil(grams / usual.grams - 1e-9);
  return { count, grams: usual.grams, cost: usual.price === null ? null : count * usual.price };
}

/** The pack of a food that was put in last, whether or not it is still there; null when there never was one. */
export function usualPack(packs: readonly Pack[], foodId: string): Pack | null {
  let last: Pack | null = null;
  for (const p of packs) if (p.foodId === foodId && (last === null || p.addedInstant >= last.addedInstant)) last = p;
  return last;
}

/** Price of a kilogram by the last pack of the food that had a price; null when none had. */
export function pricePerKg(packs: readonly Pack[], foodId: string): number | null {
  const priced = usualPack(
    packs.filter((p) => p.price !== null),
    foodId,
  );
  return priced === null || priced.price === null ? null : priced.price / (priced.grams / 1000);
}

/** Cost of grams by food; null when the price of one of them is not known. */
export function costOf(packs: readonly Pack[], gramsByFood: ReadonlyMap<string, number>): number | null {
  let cost = 0;
  for (const [foodId, grams] of gramsByFood) {
    const price = pricePerKg(packs, foodId);
    if (price === null) return null;
    cost += (price * grams) / 1000;
  }
  return cost;
}
