/** The facts of a plan, and what every part of it is worked out from. */
import type { CivilDate } from '../calendar/day.ts';
import type { FindingsInput } from '../feeding/findings.ts';
import type { LadderStep } from '../feeding/ladder.ts';
import type { RulesVersion } from '../feeding/rules.ts';
import type { Food } from '../food/food.ts';
import type { Litter, Puppy, Reading } from '../litter/litter.ts';
import type { House } from '../people/house.ts';
import type { PlanWeights } from './weights.ts';

export interface PlanFacts {
  readonly litter: Litter;
  /** The whole litter. */
  readonly puppies: readonly Puppy[];
  readonly puppy: Puppy;
  /** Of the whole litter, superseded ones included. */
  readonly readings: readonly Reading[];
  /** The version in force on the day of the plan. */
  readonly rules: RulesVersion;
  readonly house: House;
  /** What amounts and energy are reckoned with; the shipped generic mix when it is left out. */
  readonly food?: Food;
  readonly on: CivilDate;
  /** Why it is printed though a warning stands; empty or left out where nobody was asked. */
  readonly why?: string;
}

/** What every part of the plan is worked out from. */
export interface PlanBasis extends PlanFacts {
  readonly food: Food;
  /** What it is called on paper. */
  readonly name: string;
  readonly born: CivilDate;
  readonly age: number;
  /** Age in days on which the plan starts: the day it is made, or the go-home day when that is still to come. */
  readonly start: number;
  readonly weights: PlanWeights;
  /** What is fed on the first day, and what is found about it; null without a weight. */
  readonly ration: FindingsInput | null;
  /** Empty where the weights do not let an amount be given with confidence. */
  readonly treads: readonly LadderStep[];
}
