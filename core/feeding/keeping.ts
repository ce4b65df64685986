/** Thawing in the refrigerator, and how long thawed food keeps. The official time always stands beside a longer house rule. */
import type { Known } from '../reference/feeding/known.ts';
import { MINCE_KEEPS_UK, MINCE_KEEPS_US } from '../reference/freezer/keeping.ts';
import type { HouseRules } from './rules.ts';

/** Kilograms that thaw in a day in the refrigerator: 4 to 5 lb a day. */
const KG_A_DAY = 2.25;

/**
 * Hours that a pack takes to thaw in the refrigerator: 24 for each 2.25 kg, never under 24.
 * Source: USDA Food Safety and Inspection Service, "The Big Thaw", 24 h for each 4 to 5 lb (second-hand); the lower bound is our caution.
 */
export function thawHours(kg: number): number {
  return Math.max(24, (24 * kg) / KG_A_DAY);
}

/** Hours before the meal at which a pack goes from freezer to refrigerator: the house rule, but never less than it takes to thaw. */
export function moveAheadHours(rules: HouseRules, kg: number): number {
  return Math.max(rules.thawHours, thawHours(kg));
}

export interface OfficialKeeping {
  /** Whose time it is. */
  readonly of: HouseRules['officialKeeping'];
  readonly hours: number;
  readonly source: string;
  readonly known: Known;
}

/** Keeping of thawed minced meat, poultry and offal in the refrigerator. */
export const OFFICIAL_KEEPING: Readonly<Record<HouseRules['officialKeeping'], OfficialKeeping>> = {
  'uk-ie': { of: 'uk-ie', hours: MINCE_KEEPS_UK.value, source: MINCE_KEEPS_UK.source, known: MINCE_KEEPS_UK.known },
  us: { of: 'us', hours: MINCE_KEEPS_US.value, source: MINCE_KEEPS_US.source, known: MINCE_KEEPS_US.known },
};

export interface Keeping {
  /** What the house rules say. */
  readonly houseHours: number;
  readonly official: OfficialKeeping;
  /** The house rule is longer than the official time, so both are shown. */
  readonly longer: boolean;
}

/** How long thawed food keeps: house rule and official time, side by side. */
export function keepingOf(rules: HouseRules): Keeping {
  const official = OFFICIAL_KEEPING[rules.officialKeeping];
  return { houseHours: rules.keepHours, official, longer: rules.keepHours > official.hours };
}
