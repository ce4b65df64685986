/** Starter packs for new homes: whole packs put aside from the newest end, so that the oldest are eaten at home. */

import type { CivilDate } from '../calendar/day.ts';
import { portionGrams } from '../food/portion.ts';
import { isOverdue, oldestFirst, type Pack, type Starter } from './pack.ts';

export interface Reserved {
  /** Portions put aside, by pack. */
  readonly reserved: ReadonlyMap<string, number>;
  readonly short: readonly { readonly starter: Starter; readonly grams: number }[];
}

/** Starters of days that are over are left out. The earliest takes first. */
export function reserveStarters(starters: readonly Starter[], packs: readonly Pack[], today: CivilDate): Reserved {
  const reserved = new Map<string, number>();
  const short: { starter: Starter; grams: number }[] = [];
  const due = starters.filter((s) => s.day >= today).sort((a, b) => (a.day < b.day ? -1 : Number(a.day > b.day)));
  for (const starter of due) {
    let lacks: number = starter.grams;
    for (const pack of givable(packs, starter, today).filter((p) => !reserved.has(p.id))) {
      if (lacks <= 0) break;
      reserved.set(pack.id, pack.left);
      lacks -= pack.grams;
    }
    if (lacks > 0) short.push({ starter, grams: Math.round(lacks * 10) / 10 });
  }
  return { reserved, short };
}

/** Whole packs that will still be good on the day, the newest first; of equally new ones the smallest. */
function givable(packs: readonly Pack[], starter: Starter, today: CivilDate): Pack[] {
  return packs
    .filter((p) => p.foodId === starter.foodId && p.gone === null && p.left === p.portions && !isOverdue(p, today))
    .filter((p) => p.bestBefore === null || p.bestBefore >= starter.day)
    .sort((a, b) => oldestFirst(b, a) || portionGrams(a) - portionGrams(b));
}
