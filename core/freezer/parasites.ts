/** Which note about freezing goes with a food: told by the words in its name and recipe. */
import type { CivilDate } from '../calendar/day.ts';
import { daysBetween } from '../calendar/day.ts';
import { type MeatKind, PARASITE_FREEZING, type ParasiteFreezing, PORK_RULE } from '../reference/freezer/parasites.ts';

const WORDS: readonly (readonly [MeatKind, RegExp])[] = [
  ['game', /\b(game|venison|deer|elk|moose|reindeer|bear|boar|wild|hare|horse)\b/i],
  ['pork', /\b(pork|pig|pig’s|hog|ham|bacon|trotters?|gammon)\b/i],
  ['fish', /\b(fish|salmon|trout|herring|mackerel|sardines?|sprats?|cod|anchov(y|ies)|pilchards?)\b/i],
];

/** Pork, game or fish in a food's words, each once; wild boar is game, not pork. */
export function meatKinds(words: readonly string[]): MeatKind[] {
  return WORDS.filter(([, pattern]) => words.some((w) => pattern.test(w))).map(([kind]) => kind);
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
