/** What a thaw plan is made from, and what it says. */
import type { LocalTime } from '../calendar/clock.ts';
import type { CivilDate } from '../calendar/day.ts';
import type { HouseRules } from '../feeding/rules.ts';
import type { Demand } from './demand.ts';
import type { FreezerSettings, Pack, Starter, Thaw } from './pack.ts';
import type { ThawClock } from './thawing.ts';

export interface FreezerFacts {
  readonly rules: HouseRules;
  readonly settings: FreezerSettings;
  readonly packs: readonly Pack[];
  readonly thaws: readonly Thaw[];
  readonly starters: readonly Starter[];
}

export interface PlanInput extends FreezerFacts {
  readonly now: LocalTime;
  /** Last day that is planned. */
  readonly untilDay: CivilDate;
  /** From a few days before today, so that what was fed since a pack thawed is known. Any order. */
  readonly demand: readonly Demand[];
}

/** Portions of one pack. Grams of them together. */
export interface Take {
  readonly packId: string;
  readonly portions: number;
  /** Into how many the pack is cut. */
  readonly of: number;
  readonly grams: number;
}

export interface MealShare {
  readonly who: string;
  readonly grams: number;
}

/** One thing to do: at that time, these portions of one food go into the refrigerator. */
export interface ThawRow {
  readonly foodId: string;
  readonly out: LocalTime;
  readonly ready: LocalTime;
  readonly useBy: LocalTime;
  readonly officialUseBy: LocalTime;
  readonly takes: readonly Take[];
  readonly grams: number;
  readonly eaters: readonly MealShare[];
  readonly firstMeal: LocalTime;
  readonly lastMeal: LocalTime;
  readonly wasteGrams: number;
}

/** Something that was taken out and is not known to be gone. */
export interface OutNow {
  readonly thaw: Thaw;
  readonly foodId: string;
  readonly clock: ThawClock;
  readonly grams: number;
  /** Not eaten yet, by the meals since it was ready. */
  readonly leftGrams: number;
  readonly state: 'thawing' | 'ready' | 'eaten' | 'overdue';
  readonly eaters: readonly MealShare[];
  readonly wasteGrams: number;
}

/** A meal that can't be covered from the refrigerator. */
export interface Gap {
  readonly foodId: string;
  readonly at: LocalTime;
  readonly grams: number;
  readonly eaters: readonly MealShare[];
  readonly why: 'too-late' | 'none-left';
  /** What helps now, when there is a pack for it. */
  readonly coldWater: {
    readonly takes: readonly Take[];
    readonly hours: number;
    readonly startBy: LocalTime;
    readonly inTime: boolean;
    /** More than the meal needs: none of it is kept. */
    readonly wasteGrams: number;
  } | null;
}

export interface FoodOutlook {
  readonly foodId: string;
  /** In the freezer and not past their day; a pack that is partly gone counts as one. */
  readonly packs: number;
  readonly grams: number;
  /** Of it, put aside for starter packs. */
  readonly reservedGrams: number;
  readonly overdue: readonly Pack[];
  /** The last meal that is wholly covered; null when it lasts beyond the days planned, or when nothing is wanted. */
  readonly lastsTo: LocalTime | null;
  readonly wanted: boolean;
  readonly exact: boolean;
}

export interface Shortage {
  readonly foodId: string;
  readonly at: LocalTime;
  readonly grams: number;
}

export interface FreezerPlan {
  /** In order of time. */
  readonly rows: readonly ThawRow[];
  readonly out: readonly OutNow[];
  readonly gaps: readonly Gap[];
  readonly foods: readonly FoodOutlook[];
  /** Every meal for which there is none left, in order of time. */
  readonly shortages: readonly Shortage[];
  /** Starter packs that the stock doesn't cover. */
  readonly startersShort: readonly { readonly starter: Starter; readonly grams: number }[];
  /** The first time that the refrigerator has no room, null when it has or when nobody said how much there is. */
  readonly tooFull: { readonly at: LocalTime; readonly grams: number } | null;
}
