/** Green vegetables with mixes that hold none. */
import { GRAMS_PER_POUND } from '../units/mass.ts';
import type { HouseRules } from './rules.ts';

/** Tablespoons of green blend for so much food, to the half spoon; common practice, no source: one to half a pound. */
export function vegetableSpoons(rules: HouseRules, grams: number): number {
  return Math.round((grams / (GRAMS_PER_POUND / 2)) * rules.vegetableSpoonsPerHalfPound * 2) / 2;
}
