import type { CivilDate } from '../../core/calendar/day.ts';
import type { FindingsInput } from '../../core/feeding/findings.ts';
import { rationInputOf } from '../../core/feeding/ration-input.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { Food } from '../../core/food/food.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import type { LitterGrowthFacts } from './useLitterGrowth.ts';

/** What one puppy of a litter is fed today, or when it is eight weeks old; null without a weight, or before the facts are there. */
export function rationOf(
  { litter, input }: LitterGrowthFacts,
  puppy: Puppy,
  rules: HouseRules,
  food: Food,
  today: CivilDate,
): FindingsInput | null {
  return litter === null || input === null ? null : rationInputOf({ litter, puppy, growth: input, rules, food, on: today });
}
