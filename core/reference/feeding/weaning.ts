/** What is published, and what is custom, about the way from milk to bowl. */
import type { Known } from './known.ts';

/**
 * Share of the food that comes from the bowl by completed week of age, lowest and highest. A planning curve: an **inference** from guidance
 * by age (first semisolid food at 3 to 4 weeks, weaned at 6 to 7, at 7 to 8 weeks 80 to 90 % from solids); no primary table was found.
 * It is a plan to begin with; the scale decides.
 */
export const SOLIDS_BY_WEEK: readonly { readonly week: number; readonly low: number; readonly high: number }[] = [
  { week: 3, low: 0, high: 0.05 },
  { week: 4, low: 0.15, high: 0.25 },
  { week: 5, low: 0.35, high: 0.5 },
  { week: 6, low: 0.6, high: 0.75 },
  { week: 7, low: 0.8, high: 0.9 },
  { week: 8, low: 1, high: 1 },
];
export const SOLIDS_SOURCE: { readonly source: string; readonly known: Known } = {
  source:
    'a planning curve inferred from guidance by age (Hand et al. 2010, tables 16-6 and 17-3; veterinary texts); no table of it was found',
  known: 'computed',
};

/** Age in days at which the first bowl is offered. Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 16-6 (seen). */
export const FIRST_BOWL = {
  earliestDay: 21,
  latestDay: 28,
  source: 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, table 16-6: first semisolid food at 3 to 4 weeks',
  known: 'seen',
} as const satisfies { earliestDay: number; latestDay: number; source: string; known: Known };

/** Minutes that a weaning bowl stands before it is lifted. */
export const LIFT_AT_WEANING = {
  minutes: 20,
  source: 'a home veterinary handbook: gruel 3 to 4 times a day, offered for 20 minutes',
  known: 'second-hand',
} as const satisfies { minutes: number; source: string; known: Known };

/** Water in a gruel, grams to a gram of food: two parts of wet food to one of water, one part of dry food to three. */
export const GRUEL_WATER = {
  wet: 0.5,
  dry: 3,
  source: 'a home veterinary handbook: 1 dry to 3 water, or 2 canned to 1 water; no water added by 5 to 7 weeks',
  known: 'second-hand',
} as const satisfies { wet: number; dry: number; source: string; known: Known };
