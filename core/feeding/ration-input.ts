/** The one place where facts become what a puppy's ration and its findings are reckoned from: for the window and the paper alike. */
import { dateOf } from '../calendar/clock.ts';
import { addDays, ageInDays, type CivilDate } from '../calendar/day.ts';
import type { Food } from '../food/food.ts';
import { assessLitter } from '../growth/assess.ts';
import type { GrowthInput } from '../growth/input.ts';
import { puppyWeights } from '../growth/puppy-weights.ts';
import { EIGHT_WEEKS, SEVEN_WEEKS } from '../litter/ages.ts';
import { type Litter, type Puppy, puppyName } from '../litter/litter.ts';
import type { FindingsInput } from './findings.ts';
import type { LadderInput } from './ladder.ts';
import type { HouseRules } from './rules.ts';

/** Fewer weights than these say nothing about gain. */
const FEWEST_WEIGHTS = 5;
/** What a puppy gained before it ate nothing but its bowls for three days says nothing of them. */
const ON_RATION_DAYS = 3;

export interface RationFacts {
  readonly litter: Litter;
  readonly puppy: Puppy;
  /** Of the whole litter, what was weighed until the day. */
  readonly growth: GrowthInput;
  /** In force for the litter on the day, or those that are tried out. */
  readonly rules: HouseRules;
  /** What amounts and energy are reckoned with. */
  readonly food: Food;
  readonly on: CivilDate;
}

/** The day that a ration is for, as an age: that day, or the day a puppy is eight weeks old when it is not yet seven. */
export function fedFromAge(born: CivilDate, on: CivilDate): number {
  const age = ageInDays(born, on);
  return age >= SEVEN_WEEKS ? age : EIGHT_WEEKS;
}

/** At the weight of that day, or the one to expect on it; null without a weight, and where none can be expected. */
export function rationInputOf({ litter, puppy, growth, rules, food, on }: RationFacts): FindingsInput | null {
  const born = dateOf(puppy.bornAt);
  const age = fedFromAge(born, on);
  const day = addDays(born, age);
  const { own, last, adult, at } = puppyWeights(litter, puppy, growth, on);
  const weight = at(age);
  if (last === null || weight === null) return null;
  const level = assessLitter(growth).puppies.get(puppy.id)?.level;
  return {
    rules,
    food,
    born,
    day,
    weightGrams: weight.mid,
    adultKg: adult?.kg ?? null,
    unit: growth.unit,
    name: puppyName(puppy),
    gainInBand: own.length < FEWEST_WEIGHTS || age < EIGHT_WEEKS + ON_RATION_DAYS ? null : level === 'steady',
    weighedOn: day > on ? null : last.on,
  };
}

/** The meal ladder from that day on; its first tread is the ration of {@link rationInputOf}. */
export function ladderInputOf({ litter, puppy, growth, rules, food, on }: RationFacts): LadderInput {
  const born = dateOf(puppy.bornAt);
  const { adult, at } = puppyWeights(litter, puppy, growth, on);
  return {
    rules,
    food,
    born,
    from: addDays(born, fedFromAge(born, on)),
    adultKg: adult?.kg ?? null,
    forecast: (age) => at(age)?.mid ?? null,
    unit: growth.unit,
  };
}
