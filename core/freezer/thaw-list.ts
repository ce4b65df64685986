/** What comes out of the freezer in a week, row by row, and what wants a label. */
import { dateOf, type LocalTime } from '../calendar/clock.ts';
import { addDays, type CivilDate } from '../calendar/day.ts';
import type { Pack } from './pack.ts';
import type { FreezerPlan, MealShare, Take, ThawRow } from './plan-shape.ts';

/** Four weeks ahead are planned; what came out in the days before is still remembered. */
export const PLANNED_DAYS = 28;
export const REMEMBERED_DAYS = 6;
/** Packs that went longer ago say nothing about what is thawing. */
export const GONE_DAYS = 40;
export const WEEK_DAYS = 7;

/** A line of the list. Later days are one line a food: nobody wants to read on Monday what time it is on Friday. */
export interface ListRow extends ThawRow {
  /** Several times of one day in one line. */
  readonly manyTimes: boolean;
  /** The last of them is used by then; `useBy` is the first. */
  readonly lastUseBy: ThawRow['useBy'];
}

/** The rows of the week, today's first: today and tomorrow time by time, then each food once a day. */
export function weekRows(plan: Pick<FreezerPlan, 'rows'>, today: CivilDate): ListRow[] {
  const [tomorrow, last] = [addDays(today, 1), addDays(today, WEEK_DAYS - 1)];
  const week = plan.rows.filter((r) => dateOf(r.out) <= last);
  const near = week.filter((r) => dateOf(r.out) <= tomorrow).map((r) => ({ ...r, manyTimes: false, lastUseBy: r.useBy }));
  const later = week.filter((r) => dateOf(r.out) > tomorrow);
  return [...near, ...[...Map.groupBy(later, (r) => `${dateOf(r.out)} ${r.foodId}`).values()].map(oneOf)];
}

function oneOf(rows: readonly ThawRow[]): ListRow {
  const [first, last] = [rows[0] as ThawRow, rows.at(-1) as ThawRow];
  return {
    ...first,
    lastUseBy: last.useBy,
    lastMeal:
      rows
        .map((r) => r.lastMeal)
        .sort()
        .at(-1) ?? last.lastMeal,
    takes: added(
      rows.flatMap((r) => r.takes),
      (t) => t.packId,
      (a, b) => ({ ...a, portions: a.portions + b.portions, grams: a.grams + b.grams }),
    ),
    grams: rows.reduce((sum, r) => sum + r.grams, 0),
    eaters: added(
      rows.flatMap((r) => r.eaters),
      (e) => e.who,
      (a, b) => ({ ...a, grams: a.grams + b.grams }),
    ),
    wasteGrams: rows.reduce((sum, r) => sum + r.wasteGrams, 0),
    manyTimes: rows.length > 1,
  };
}

function added<T>(all: readonly T[], keyOf: (t: T) => string, add: (a: T, b: T) => T): T[] {
  const sums = new Map<string, T>();
  for (const t of all) {
    const before = sums.get(keyOf(t));
    sums.set(keyOf(t), before === undefined ? t : add(before, t));
  }
  return [...sums.values()];
}

/** A pack or a lot of portions that thaws: whom it is for and its times. */
export interface Label {
  readonly foodId: string;
  readonly take: Take;
  readonly eaters: readonly MealShare[];
  readonly out: LocalTime;
  readonly ready: LocalTime;
  readonly useBy: LocalTime;
  readonly official: LocalTime;
}

/** One for each pack or lot of portions: what is thawing or to be used, then what comes out today. */
export function labelsOf(plan: Pick<FreezerPlan, 'rows' | 'out'>, packs: readonly Pack[], today: CivilDate): Label[] {
  const thawing = plan.out
    .filter((o) => o.state === 'thawing' || o.state === 'ready')
    .map(({ thaw, foodId, grams, eaters, clock }): Label => {
      const of = packs.find((p) => p.id === thaw.packId)?.portions ?? thaw.portions;
      const take = { packId: thaw.packId, portions: thaw.portions, of, grams };
      return { foodId, take, eaters, out: thaw.at, ready: clock.ready, useBy: clock.useBy, official: clock.officialUseBy };
    });
  const todays = plan.rows
    .filter((r) => dateOf(r.out) <= today)
    .flatMap(({ foodId, takes, eaters, out, ready, useBy, officialUseBy: official }) =>
      takes.map((take): Label => ({ foodId, take, eaters, out, ready, useBy, official })),
    );
  return [...thawing, ...todays];
}
