/** What a plan needs to know of the weights: the puppy's own, the one it starts from, and the forecast. */
import type { CivilDate } from '../calendar/day.ts';
import { assessLitter, type Level } from '../growth/assess.ts';
import { type GrowthFacts, type GrowthInput, growthInputOf } from '../growth/input.ts';
import type { PuppyFinding } from '../growth/puppy-findings.ts';
import { type LastWeight, type PuppyWeights, puppyWeights } from '../growth/puppy-weights.ts';
import type { Litter, Puppy } from '../litter/litter.ts';

export interface PlanWeights extends Omit<PuppyWeights, 'last'> {
  /** What was weighed until the day of the plan. */
  readonly growth: GrowthInput;
  /** The weight that the plan starts from. */
  readonly anchor: LastWeight | null;
  readonly level: Level;
  /** What the assessment found, for the breeder; null without one. */
  readonly finding: PuppyFinding | null;
  /** ln(weight / littermates' middle) at the last weigh-in, null in a litter of one. */
  readonly standing: number | null;
  readonly littermates: number;
}

/** Reads only what was weighed until the day of the plan. A puppy that has left may be weighed on by its new owner. */
export function planWeights(facts: GrowthFacts & { litter: Litter; puppy: Puppy; on: CivilDate }): PlanWeights {
  const { litter, puppy, on } = facts;
  const growth = growthInputOf(facts, { until: on, atHomeToo: puppy.id });
  const { last, ...weights } = puppyWeights(litter, puppy, growth, on);
  const assessed = assessLitter(growth).puppies.get(puppy.id);
  return {
    ...weights,
    growth,
    anchor: last,
    level: assessed?.level ?? 'steady',
    finding: assessed?.finding ?? null,
    standing: assessed?.standing ?? null,
    littermates: facts.puppies.length - 1,
  };
}
