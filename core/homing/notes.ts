/**
 * What the notes of the second sheet hold, as codes and numbers. Safety notes are always there, whatever the rules; an
 * official time stands beside a longer house rule. Sources: feeding.md sections 5 and 6 of the project's reference.
 */

import { keepingOf, OFFICIAL_KEEPING, thawHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { LARGE_ADULT_KG } from '../reference/feeding/limits.ts';
import { foodUnit } from '../units/food.ts';
import type { MassUnit } from '../units/mass.ts';
import { roundedDown } from './amounts.ts';

export interface NoteFacts {
  readonly rules: HouseRules;
  readonly unit: MassUnit;
  /** Grams a day this week, null when it is not known. */
  readonly dayGrams: number | null;
  readonly adultKg: number | null;
}

/** A grown dog at most this heavy is a toy: a missed meal can bring its blood sugar down (textbooks, from memory). */
const TOY_KG = 5;
/** Published ceiling for treats: at most 10 % of the food (SACN5 p. 315, seen). */
const PUBLISHED_TREAT_SHARE = 0.1;

export type NoteFinding =
  | { readonly code: 'left'; readonly liftMinutes: number; readonly cutShare: number; readonly toy: boolean }
  | { readonly code: 'bones'; readonly minutes: number }
  | { readonly code: 'first-week' }
  /** Hours; `short` when the house thaws quicker than the official time allows, `longer` when it keeps longer. */
  | {
      readonly code: 'thawing';
      readonly thawHours: number;
      readonly short: boolean;
      readonly houseHours: number;
      readonly longer: boolean;
      readonly ukIeHours: number;
      readonly usHours: number;
      readonly unit: MassUnit;
    }
  /** `grams` a day now, null when not known or nothing that can be weighed; `over` the published limit. */
  | {
      readonly code: 'treats';
      readonly share: number;
      readonly grams: number | null;
      readonly over: boolean;
      readonly unit: MassUnit;
    }
  /** Tablespoons of vegetables for each 225 g or half pound of a mix without them. */
  | { readonly code: 'water'; readonly spoons: number; readonly unit: MassUnit }
  | { readonly code: 'growth'; readonly large: boolean }
  | { readonly code: 'hygiene' };

/** The notes in the order in which they are read. */
export function planNotes({ rules, unit, dayGrams, adultKg }: NoteFacts): NoteFinding[] {
  const { houseHours, longer } = keepingOf(rules);
  const treats = dayGrams === null ? 0 : roundedDown(dayGrams * rules.treatShare, foodUnit(unit));
  return [
    { code: 'left', liftMinutes: rules.liftAfterMinutes, cutShare: rules.cutShare, toy: adultKg !== null && adultKg <= TOY_KG },
    { code: 'bones', minutes: rules.boneMinutes },
    { code: 'first-week' },
    {
      code: 'thawing',
      thawHours: rules.thawHours,
      short: rules.thawHours < thawHours(1),
      houseHours,
      longer,
      ukIeHours: OFFICIAL_KEEPING['uk-ie'].hours,
      usHours: OFFICIAL_KEEPING.us.hours,
      unit,
    },
    {
      code: 'treats',
      share: rules.treatShare,
      grams: treats > 0 ? treats : null,
      over: rules.treatShare > PUBLISHED_TREAT_SHARE,
      unit,
    },
    { code: 'water', spoons: rules.vegetableSpoonsPerHalfPound, unit },
    { code: 'growth', large: adultKg !== null && adultKg > LARGE_ADULT_KG },
    { code: 'hygiene' },
  ];
}
