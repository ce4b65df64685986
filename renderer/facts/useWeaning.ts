import { useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { DEFAULT_RULES, type HouseRules, ownRulesOn } from '../../core/feeding/rules.ts';
import { type FoodBook, foodBook, foodOrDefault } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type Feeding, feedingOf } from '../../core/food/rotation.ts';
import type { Litter, Puppy } from '../../core/litter/litter.ts';
import type { WeaningEvent } from '../../core/weaning/eaten.ts';
import type { WeaningInput } from '../../core/weaning/weaning.ts';
import { allFromBowl, WEANED_DAYS, type WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import { weaningPuppies } from '../../core/weaning/weaning-puppies.ts';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { type LitterGrowthFacts, useLitterGrowth } from './useLitterGrowth.ts';
import { toWeigh } from './weigh-in.ts';

export interface Weaning {
  readonly facts: LitterGrowthFacts;
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
  /** Day from which they hold; null for those of the program. */
  readonly rulesFrom: CivilDate | null;
  readonly book: FoodBook;
  readonly food: Food;
  readonly fed: Pick<Feeding, 'foodId' | 'week'>;
  /** By her plan; a litter past eight weeks without one gets everything from the bowl; null before. */
  readonly input: WeaningInput | null;
}

const NO_EVENTS: readonly WeaningEvent[] = [];

/** What weaning is reckoned from: the litter's weights, its plan and diary, its rules and its food. Null while it is fetched. */
export function useWeaning(litterId: string): Weaning | null {
  const facts = useLitterGrowth(litterId);
  const today = useToday();
  const asked = useQuery('weaning.plan', { litterId }).value;
  const versions = useQuery('feeding.rules', {}).value;
  const foods = useQuery('food.all', {}).value;
  const feedings = useQuery('food.feedings', {}).value;
  const { litter, puppies, input: growth, house } = facts;
  const book = useMemo(() => foodBook(foods?.foods ?? []), [foods]);
  const version = useMemo(
    () =>
      versions === null
        ? null
        : (ownRulesOn(versions.ofLitters, litterId, today) ?? versions.versions.find((v) => v.from <= today) ?? null),
    [versions, litterId, today],
  );
  const rules = versions === null ? null : (version?.rules ?? DEFAULT_RULES);
  const rulesFrom = version === null || version.id === 'defaults' ? null : version.from;
  const fed = useMemo(() => feedingOf(feedings?.feedings ?? [], litterId), [feedings, litterId]);
  const order = useMemo(() => toWeigh(puppies), [puppies]);
  const weighed = useMemo(
    () => (litter === null || growth === null ? null : weaningPuppies(litter, order, growth)),
    [litter, growth, order],
  );
  const born = litter === null ? null : dateOf(litter.whelpedAt);
  const plan = asked?.plan ?? null;
  const events = asked?.events ?? NO_EVENTS;
  const food = foodOrDefault(book, fed.foodId);
  const input = useMemo<WeaningInput | null>(() => {
    if (litter === null || born === null || rules === null || weighed === null) return null;
    const used = plan ?? (daysBetween(born, today) >= WEANED_DAYS ? allFromBowl(born, rules) : null);
    if (used === null) return null;
    return { plan: used, events, rules, food, sizeClass: litter.sizeClass, puppies: weighed, today, unit: house.massUnit };
  }, [litter, born, rules, weighed, plan, today, events, food, house.massUnit]);
  if (litter === null || born === null || rules === null || asked === null) return null;
  return {
    facts,
    litter,
    born,
    today,
    age: daysBetween(born, today),
    order,
    plan,
    events,
    rules,
    rulesFrom,
    book,
    food,
    fed,
    input,
  };
}
