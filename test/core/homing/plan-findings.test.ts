/** The window and the plan say the same of a puppy on the same day: one assembly. */
import { describe, expect, it } from 'vitest';
import { findings } from '../../../core/feeding/findings.ts';
import { mealLadder } from '../../../core/feeding/ladder.ts';
import { rationOn } from '../../../core/feeding/ration.ts';
import { ladderInputOf, rationInputOf } from '../../../core/feeding/ration-input.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { growthInputOf } from '../../../core/growth/input.ts';
import { OLD_WEIGHT_DAYS } from '../../../core/growth/puppy-weights.ts';
import { goHomePlan } from '../../../core/homing/plan.ts';
import { type Choices, planFacts } from './facts.ts';

/** As the window puts it together: all the readings there are. */
function inWindow(choices: Choices) {
  const facts = planFacts(choices);
  return { ...facts, growth: growthInputOf(facts), rules: facts.rules.rules, food: DEFAULT_FOOD };
}

const CASES: [string, Choices][] = [
  ['weighed today', { age: 60, weighed: 60 }],
  ['weighed yesterday', { age: 60, weighed: 59 }],
  ['weighed six days ago', { age: 60, weighed: 54 }],
  ['not yet eight weeks old', { age: 45, weighed: 45 }],
  ['half a year old', { age: 180, weighed: 60 }],
  ['in an ounce house', { age: 60, weighed: 60, house: { massUnit: 'oz' } }],
  ['of a litter of one', { age: 60, weighed: 59, count: 1, place: 0 }],
  ['without a grown weight', { age: 60, weighed: 58, litter: { sizeClass: null, adultDogKg: null, adultBitchKg: null } }],
  [
    'without a grown weight, weighed long ago',
    { age: 80, weighed: 60, litter: { sizeClass: null, adultDogKg: null, adultBitchKg: null } },
  ],
  ['never weighed', { age: 60, weighed: -1 }],
];

describe('the plan and the window', () => {
  it.each(CASES)('feed the same and find the same for a puppy %s', (_what, choices) => {
    const plan = goHomePlan(planFacts(choices), 'Tansy');
    const facts = inWindow(choices);
    const input = rationInputOf(facts);
    // From an old weight the window still reckons; paper that goes out of the house does not.
    const isOld = plan.missing?.code === 'old';
    expect(plan.treads[0]?.dayGrams ?? null).toBe(isOld || input === null ? null : rationOn(input).dayGrams);
    expect(plan.treads).toEqual(isOld ? [] : mealLadder(ladderInputOf(facts)));
    expect(isOld).toBe((plan.weights.anchor?.daysAgo ?? 0) > OLD_WEIGHT_DAYS);
    expect(plan.remarks.flatMap((r) => (r.code === 'feeding' ? [r.finding] : []))).toEqual(input === null ? [] : findings(input));
  });
});
