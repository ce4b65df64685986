/**
 * What the notes of the third sheet hold, as codes and numbers. Safety notes are always there, whatever the rules; an
 * official time stands beside a longer house rule. Sources: feeding.md sections 5 and 6 of the project's reference.
 */

import { keepingOf, OFFICIAL_KEEPING, thawHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import type { Food } from '../food/food.ts';
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
  readonly food: Pick<Food, 'form' | 'kcalPer100g' | 'bone' | 'holdsVegetables'>;
}

/** A grown dog at most this heavy is a toy: a missed meal can bring its blood sugar down (textbooks, from memory). */
export const TOY_KG = 5;
/** Published ceiling for treats: at most 10 % of the energy (SACN5 p. 315, seen). */
const PUBLISHED_TREAT_SHARE = 0.1;

/** What the food holds of ground bone, as far as it is written down. */
export type GroundBone = 'some' | 'none' | 'unknown';

export type NoteFinding =
  | { readonly code: 'left'; readonly liftMinutes: number; readonly cutShare: number; readonly toy: boolean }
  | { readonly code: 'bones'; readonly minutes: number; readonly ground: GroundBone; readonly toy: boolean }
  /** `kcal` and `grams` of the food a day now, null when not known or nothing that can be weighed; `over` the published limit. */
  | {
      readonly code: 'treats';
      readonly share: number;
      readonly kcal: number | null;
      readonly grams: number | null;
      readonly over: boolean;
      readonly unit: MassUnit;
    }
  | { readonly code: 'droppings' }
  | { readonly code: 'growth'; readonly large: boolean }
  | { readonly code: 'poisons' }
  | { readonly code: 'choking' }
  /** Hours; `short` when the house thaws quicker than the official time allows, `longer` when it keeps longer. */
  | {
      readonly code: 'thawing';
      readonly thawHours: number;
      readonly short: boolean;
      readonly houseHours: number;
      readonly longer: boolean;
      readonly ukIeHours: number;
      readonly usHours: number;
      /** A food out of a bag, that is soaked and not thawed. */
      readonly dried: boolean;
      readonly unit: MassUnit;
    }
  /** Tablespoons of vegetables for each 225 g or half pound; 0 where the food holds them already. */
  | { readonly code: 'water'; readonly spoons: number; readonly unit: MassUnit }
  | { readonly code: 'hygiene' };

const DRIED: readonly Food['form'][] = ['freeze-dried', 'dehydrated', 'dry'];

/** The notes in the order in which they are read. */
export function planNotes({ rules, unit, dayGrams, adultKg, food }: NoteFacts): NoteFinding[] {
  const { houseHours, longer } = keepingOf(rules);
  const toy = adultKg !== null && adultKg <= TOY_KG;
  const treats = dayGrams === null ? 0 : roundedDown(dayGrams * rules.treatShare, foodUnit(unit));
  return [
    { code: 'left', liftMinutes: rules.liftAfterMinutes, cutShare: rules.cutShare, toy },
    { code: 'bones', minutes: rules.boneMinutes, ground: groundBone(food), toy },
    {
      code: 'treats',
      share: rules.treatShare,
      kcal: treats > 0 ? Math.floor((treats * food.kcalPer100g) / 100) : null,
      grams: treats > 0 ? treats : null,
      over: rules.treatShare > PUBLISHED_TREAT_SHARE,
      unit,
    },
    { code: 'droppings' },
    { code: 'growth', large: adultKg !== null && adultKg > LARGE_ADULT_KG },
    { code: 'poisons' },
    { code: 'choking' },
    {
      code: 'thawing',
      thawHours: rules.thawHours,
      short: rules.thawHours < thawHours(1),
      houseHours,
      longer,
      ukIeHours: OFFICIAL_KEEPING['uk-ie'].hours,
      usHours: OFFICIAL_KEEPING.us.hours,
      dried: DRIED.includes(food.form),
      unit,
    },
    { code: 'water', spoons: food.holdsVegetables || DRIED.includes(food.form) ? 0 : rules.vegetableSpoonsPerHalfPound, unit },
    { code: 'hygiene' },
  ];
}

function groundBone({ bone }: NoteFacts['food']): GroundBone {
  if (bone === null) return 'unknown';
  return bone.share > 0 ? 'some' : 'none';
}
