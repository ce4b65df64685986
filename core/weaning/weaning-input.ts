/** The one place where facts become what weaning is reckoned from: for the window, the prep sheet, the freezer and the dam alike. */
import { dateOf } from '../calendar/clock.ts';
import { addDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import { type RulesFacts, rulesOn } from '../feeding/rules.ts';
import { type FoodCatalogue, foodOrDefault } from '../food/catalogue.ts';
import { type Feeding, feedingOf } from '../food/rotation.ts';
import type { GrowthInput } from '../growth/input.ts';
import { EIGHT_WEEKS } from '../litter/ages.ts';
import { weighInOrder } from '../litter/in-the-house.ts';
import type { Litter, Puppy } from '../litter/litter.ts';
import type { WeaningEvent } from './eaten.ts';
import { type WeaningDay, type WeaningInput, weaningDays } from './weaning.ts';
import { allFromBowl, type WeaningPlan } from './weaning-plan.ts';
import { weaningPuppies } from './weaning-puppies.ts';

/** What is the litter's own. */
export interface OwnWeaningFacts {
  readonly litter: Litter;
  /** The whole litter, those that left included. */
  readonly puppies: readonly Puppy[];
  readonly growth: GrowthInput;
  /** Hers, null before there is one. */
  readonly plan: WeaningPlan | null;
  readonly events: readonly WeaningEvent[];
}

export interface WeaningFacts extends OwnWeaningFacts {
  readonly rules: RulesFacts;
  readonly catalogue: FoodCatalogue;
  readonly feedings: readonly Feeding[];
  /** What is known is known until today. */
  readonly today: CivilDate;
}

/**
 * Of the puppies in the house on that day, by the rules and the plan of that day. A litter past eight weeks without a plan gets everything from
 * the bowl; null before that.
 */
export function weaningInputOf(facts: WeaningFacts, day: CivilDate): WeaningInput | null {
  const { litter, puppies, growth, events, today } = facts;
  const born = dateOf(litter.whelpedAt);
  const { rules } = rulesOn(facts.rules, litter.id, day);
  const plan = facts.plan ?? (daysBetween(born, day) >= EIGHT_WEEKS ? allFromBowl(born, rules) : null);
  if (plan === null) return null;
  return {
    plan,
    events,
    rules,
    food: foodOrDefault(facts.catalogue, feedingOf(facts.feedings, litter.id).foodId),
    sizeClass: litter.sizeClass,
    puppies: weaningPuppies(litter, weighInOrder(puppies, day), growth),
    today,
    unit: growth.unit,
  };
}

/** A day with what it was reckoned from. */
export interface WeaningOn {
  readonly input: WeaningInput;
  readonly day: WeaningDay;
}

/** Each day as `weaningInputOf` has it, both ends included; days without a plan are left out. Days of one assembly are reckoned in one go. */
export function weaningOn(facts: WeaningFacts, from: CivilDate, until: CivilDate): WeaningOn[] {
  const found: WeaningOn[] = [];
  let first = from;
  while (first <= until) {
    const key = assemblyOn(facts, first);
    let count = 1;
    while (addDays(first, count) <= until && assemblyOn(facts, addDays(first, count)) === key) count += 1;
    const input = weaningInputOf(facts, first);
    if (input !== null) found.push(...weaningDays(input, first, count).map((day) => ({ input, day })));
    first = addDays(first, count);
  }
  return found;
}

/** What changes the assembly from one day to the next: who is in the house, the rules, and whether a missing plan is made up for. */
function assemblyOn({ litter, puppies, rules }: WeaningFacts, day: CivilDate): string {
  const version = rulesOn(rules, litter.id, day);
  const weaned = daysBetween(dateOf(litter.whelpedAt), day) >= EIGHT_WEEKS;
  return JSON.stringify([version.id, version.from, weaned, weighInOrder(puppies, day).map((p) => p.id)]);
}
