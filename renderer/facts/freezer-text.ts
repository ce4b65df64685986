/** What is taken out and for whom, in words. */
import { dateOf } from '../../core/calendar/clock.ts';
import { addDays } from '../../core/calendar/day.ts';
import type { Pack } from '../../core/freezer/pack.ts';
import type { Eater, Take, ThawRow } from '../../core/freezer/plan.ts';
import { GRAMS_PER_POUND, isMetric, type MassUnit } from '../../core/units/mass.ts';
import { words } from '../state/words.ts';
import { type Freezer, WEEK_DAYS } from './useFreezer.ts';

type Said = Pick<Freezer, 'nameOf' | 'house' | 'today'> & { readonly stock: { readonly packs: readonly Pack[] } };

/** "2 packs plain mix, 500 g; a quarter of a pack plain mix, 454 g" */
export function takesText(f: Said, takes: readonly Take[]): string {
  const whole = new Map<string, { count: number; food: string; each: string }>();
  const parts: string[] = [];
  for (const take of takes) {
    const pack = f.stock.packs.find((p) => p.id === take.packId);
    if (pack === undefined) continue;
    const [food, each] = [f.nameOf(pack.foodId), words.foodText(pack.grams, f.house.massUnit)];
    if (take.portions < take.of) {
      parts.push(words.freezer.partOf(take.portions, take.of, food, each));
      continue;
    }
    const key = `${food} ${each}`;
    whole.set(key, { count: (whole.get(key)?.count ?? 0) + 1, food, each });
  }
  return [...[...whole.values()].map((p) => words.freezer.packs(p.count, p.food, p.each)), ...parts].join('; ');
}

/** "Hazel’s litter 420 g; the rest Sorrel" for more than one, the name alone for one. */
export function eatersText(eaters: readonly Eater[], unit: MassUnit): string {
  const order = eaters.toSorted((a, b) => b.grams - a.grams);
  const [first, ...others] = order;
  if (first === undefined) return '';
  if (others.length === 0) return first.who;
  const last = others.at(-1)?.who ?? '';
  const named = order.slice(0, -1).map((e) => words.freezer.eats(e.who, words.foodText(e.grams, unit)));
  return [...named, words.freezer.rest(last)].join('; ');
}

/** Whom it is for and when, whether a pack has to be cut, what is left over, and the official time where it is the earlier one. */
export function reasonText(f: Said, row: ThawRow): string {
  const unit = f.house.massUnit;
  const when = words.freezer.until(words.timeNear(row.firstMeal, f.today), words.timeNear(row.lastMeal, f.today));
  const cut = row.takes.find((t) => t.portions < t.of && f.stock.packs.find((p) => p.id === t.packId)?.left === t.of);
  return [
    `${eatersText(row.eaters, unit)}, ${when}`,
    cut === undefined ? '' : words.freezer.cut(cut.of),
    row.wasteGrams >= 1 ? words.freezer.waste(words.foodText(row.wasteGrams, unit)) : '',
    row.officialUseBy < row.useBy ? words.freezer.officialUseBy(words.timeNear(row.officialUseBy, f.today)) : '',
  ]
    .filter((t) => t !== '')
    .join('; ');
}

/** "Hazel’s litter and Sorrel" */
export function namesText(eaters: readonly Eater[]): string {
  return words.freezer.and(eaters.map((e) => e.who));
}

/** A line of the list. Later days are one line a food: nobody wants to read on Monday what time it is on Friday. */
export interface ListRow extends ThawRow {
  /** Several times of one day in one line. */
  readonly manyTimes: boolean;
  /** The last of them is used by then; `useBy` is the first. */
  readonly lastUseBy: ThawRow['useBy'];
}

/** The rows of the week, today's first: today and tomorrow time by time, then each food once a day. */
export function weekRows(f: Freezer): ListRow[] {
  const [tomorrow, last] = [addDays(f.today, 1), addDays(f.today, WEEK_DAYS - 1)];
  const week = f.plan.rows.filter((r) => dateOf(r.out) <= last);
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

export function moneyText(amount: number, money: string): string {
  return `${money}${amount.toFixed(2)}`;
}

/** "20.9 kg", or pounds for who weighs in pounds or ounces. */
export function heavyText(grams: number, unit: MassUnit): string {
  return isMetric(unit) ? `${(grams / 1000).toFixed(1)}\u00a0kg` : `${(grams / GRAMS_PER_POUND).toFixed(1)}\u00a0lb`;
}
