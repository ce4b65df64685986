import { useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { type HouseRules, rulesOn } from '../../core/feeding/rules.ts';
import { type FoodCatalogue, foodOrDefault } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type Feeding, feedingOf } from '../../core/food/rotation.ts';
import { weighInOrder } from '../../core/litter/in-the-house.ts';
import type { Litter, Puppy } from '../../core/litter/litter.ts';
import type { WeaningEvent } from '../../core/weaning/eaten.ts';
import type { WeaningInput } from '../../core/weaning/weaning.ts';
import { type WeaningFacts, weaningInputOf } from '../../core/weaning/weaning-input.ts';
import type { WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { useFeedings, useFoodCatalogue } from './useFoods.ts';
import { type LitterGrowthFacts, useLitterGrowth } from './useLitterGrowth.ts';

export interface Weaning {
  readonly facts: LitterGrowthFacts;
  /** What the input of any day is put together from. */
  readonly reckoned: WeaningFacts;
  readonly litter: Litter;
  readonly born: CivilDate;
  readonly today: CivilDate;
  readonly age: number;
  /** Those in the house, in the order of the weigh-in. */
  readonly order: readonly Puppy[];
  /** Hers, null before there is one. */
  readonly plan: WeaningPlan | null;
  readonly events: readonly WeaningEvent[];
  readonly rules: HouseRules;
  readonly catalogue: FoodCatalogue;
  readonly food: Food;
  readonly fed: Pick<Feeding, 'foodId' | 'week'>;
  /** Of today: by her plan; a litter past eight weeks without one gets everything from the bowl; null before. */
  readonly input: WeaningInput | null;
}

/** What weaning is reckoned from: the litter's weights, its plan and diary, its rules and its food. Null while it is fetched. */
export function useWeaning(litterId: string): Weaning | null {
  const facts = useLitterGrowth(litterId);
  const today = useToday();
  const asked = useQuery('weaning.plan', { litterId }).value;
  const rules = useQuery('feeding.rules', {}).value;
  const catalogue = useFoodCatalogue();
  const feedings = useFeedings();
  const { litter, puppies, input: growth } = facts;
  const reckoned = useMemo<WeaningFacts | null>(
    () =>
      litter === null || growth === null || rules === null || asked === null
        ? null
        : { litter, puppies, growth, rules, catalogue, feedings, plan: asked.plan, events: asked.events, today },
    [litter, puppies, growth, rules, catalogue, feedings, asked, today],
  );
  const input = useMemo(() => (reckoned === null ? null : weaningInputOf(reckoned, today)), [reckoned, today]);
  const order = useMemo(() => weighInOrder(puppies, today), [puppies, today]);
  if (reckoned === null) return null;
  const born = dateOf(reckoned.litter.whelpedAt);
  const fed = feedingOf(feedings, litterId);
  return {
    facts,
    reckoned,
    litter: reckoned.litter,
    born,
    today,
    age: daysBetween(born, today),
    order,
    plan: reckoned.plan,
    events: reckoned.events,
    rules: rulesOn(reckoned.rules, litterId, today).rules,
    catalogue,
    food: foodOrDefault(catalogue, fed.foodId),
    fed,
    input,
  };
}
