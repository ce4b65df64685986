/** Which note about freezing goes with a food: told by what it and its parts are called. */
import type { CivilDate } from '../calendar/day.ts';
import { daysBetween } from '../calendar/day.ts';
import { type MeatKind, PARASITE_FREEZING, type ParasiteFreezing, PORK_RULE } from '../reference/freezer/parasites.ts';

/** Game first: wild boar is game, not pork. */
const TOLD = ['game', 'pork', 'fish'] as const satisfies readonly MeatKind[];
export type ToldMeat = (typeof TOLD)[number];

/** Pork, game or fish in what a food and its parts are called, each once; `isMeat` knows the words of a language. */
export function meatKinds(names: readonly string[], isMeat: (kind: ToldMeat, name: string) => boolean): ToldMeat[] {
  return TOLD.filter((kind) => names.some((name) => isMeat(kind, name)));
}

/** The published lines for a kind of meat. */
export function freezingFor(kind: MeatKind): ParasiteFreezing[] {
  return PARASITE_FREEZING.filter((p) => p.meat.includes(kind));
}

/** Days for which a colder-or-equal freezer makes a line of the table good; null when it never does. */
export function daysNeeded(line: ParasiteFreezing, celsius: number): number | null {
  const enough = line.freeze.filter((f) => celsius <= f.celsius).map((f) => f.days);
  return enough.length === 0 ? null : Math.min(...enough);
}

/** Days that pork still has to stay frozen by the house's plain rule; 0 when it has had them. */
export function porkDaysLeft(frozenOn: CivilDate, today: CivilDate): number {
  return Math.max(0, PORK_RULE.days - daysBetween(frozenOn, today));
}
