/** What a finding is: a code with its figures, how grave it is, the rule that mends it, and where the bound stands. */

import type { NamedFood } from '../food/food.ts';
import type { Known } from '../reference/feeding/known.ts';
import type { EnergyBand, GrowthMethod } from './energy.ts';
import type { HouseRules } from './rules.ts';

/** What each finding is made of; units in the names, shares and parts of 1, calcium, protein and fat in g per 1000 kcal. */
interface FindingFacts {
  'energy-low': EnergyFacts;
  'energy-high': EnergyFacts;
  'week-energy-low': { readonly numbers: WeekEnergy; readonly of: EnergyBand['of'] };
  'week-energy-high': { readonly numbers: WeekEnergy; readonly of: EnergyBand['of'] };
  /** `gramsAtMost` of these treats. */
  'treats-high': { readonly numbers: { readonly share: number; readonly most: number; readonly gramsAtMost: number } };
  'calcium-low': RangeFacts;
  'calcium-high': RangeFacts;
  'ratio-low': RangeFacts;
  'ratio-high': RangeFacts;
  /** The share that keeps inside the limit is `shareAtMost`. */
  'bone-aim': {
    readonly numbers: {
      readonly boneShare: number;
      readonly low: number;
      readonly high: number;
      readonly most: number;
      readonly shareAtMost: number;
      readonly inFood: number;
    };
  };
  'vitamin-a': {
    readonly numbers: { readonly iuPer1000Kcal: number; readonly most: number; readonly beefLiverShareAtMost: number };
    readonly food: NamedFood;
  };
  /** Nobody knows how much: the published range. */
  'calcium-unknown': { readonly numbers: { readonly least: number; readonly most: number }; readonly food: NamedFood };
  'phosphorus-low': LeastFacts;
  /** Grams a day that are in the bowls at most, and that are published as the least for the energy it needs. */
  'minerals-day-low': {
    readonly numbers: {
      readonly calcium: number;
      readonly leastCalcium: number;
      readonly phosphorus: number;
      readonly leastPhosphorus: number;
    };
    readonly puppy: string;
  };
  /** Hours from the last meal of a day to the first of the next. */
  'night-long': {
    readonly numbers: { readonly hours: number; readonly most: number; readonly untilWeeks: number };
    readonly puppy: string;
  };
  'protein-low': LeastFacts;
  'fat-low': LeastFacts;
  'freeze-dried': { readonly numbers: { readonly share: number; readonly most: number } };
  'extra-water': { readonly numbers: { readonly share: number } };
  /** Grams a week, and tablespoons of greens for them. */
  greens: { readonly numbers: { readonly spoons: number; readonly grams: number } };
  'bone-under': BoneFacts;
  'bone-over': BoneFacts;
  /** Meals a week. */
  'mixes-apart': { readonly numbers: { readonly complete: number; readonly plain: number; readonly bones: number } };
  'meals-few': {
    readonly numbers: { readonly meals: number; readonly weeks: number; readonly untilWeeks: number };
    readonly puppy: string;
  };
  'keeping-long': {
    readonly numbers: { readonly houseHours: number; readonly officialHours: number };
    readonly of: HouseRules['officialKeeping'];
  };
  'thaw-long': ThawFacts;
  'thaw-short': ThawFacts;
  'weight-old': { readonly numbers: { readonly days: number; readonly boundDays: number }; readonly puppy: string };
}

export interface EnergyNumbers {
  readonly part: number;
  readonly kcal: number;
  readonly estimateKcal: number;
  /** What is fed, and what would meet the aim: as a share of the weight, or by a mix of so many kcal per 100 g. */
  readonly share: number;
  readonly shareForAim: number;
  readonly densityForAim: number;
  /** The share that would meet the whole estimate. */
  readonly shareForEstimate: number;
}

export interface EnergyFacts {
  readonly numbers: EnergyNumbers;
  readonly puppy: string;
  /** Null when that can't be said. */
  readonly gainInBand: boolean | null;
  /** The food has little energy. */
  readonly leanMix: boolean;
  /** For a dog that will be big slow growth is safe. */
  readonly bigDog: boolean;
  /** The share to raise to, and whether that is a lot for a small stomach. */
  readonly raiseTo: { readonly share: number; readonly isBig: boolean };
  readonly method: GrowthMethod;
}
interface WeekEnergy {
  readonly kcal: number;
  readonly low: number;
  readonly high: number;
}
interface RangeFacts {
  readonly numbers: { readonly low: number; readonly high: number; readonly least: number; readonly most: number };
  readonly food: NamedFood;
}
interface LeastFacts {
  readonly numbers: { readonly has: number; readonly least: number };
  readonly food: NamedFood;
}
interface BoneFacts {
  readonly numbers: { readonly low: number; readonly high: number; readonly aim: number };
}
interface ThawFacts {
  readonly numbers: { readonly houseHours: number; readonly publishedHours: number; readonly upToKg: number };
}

export type FindingCode = keyof FindingFacts;

/** One rule set to another figure, or the floor under the share: what the one action writes. */
export type RuleChange = { readonly key: 'basis'; readonly value: 'share-with-floor' } | FigureChange;

export interface FigureChange {
  readonly key:
    | 'shareYoung'
    | 'shareMiddle'
    | 'shareAdult'
    | 'boneShare'
    | 'fourMealsUntilWeeks'
    | 'smallFourMealsUntilWeeks'
    | 'keepHours'
    | 'thawHours';
  readonly value: number;
}

interface AnyFinding<C extends FindingCode> {
  readonly code: C;
  readonly severity: 'note' | 'caution' | 'warning';
  /** The rule that mends it, where one does; the breeder takes it or not. */
  readonly change?: RuleChange;
  /** As it is cited; null for a bound of our own and for what is common practice. */
  readonly source: string | null;
  readonly known: Known;
}

/** One finding of a code, or of any. The words say it, and what mends it. */
export type Finding<C extends FindingCode = FindingCode> = { [K in C]: AnyFinding<K> & Readonly<FindingFacts[K]> }[C];
