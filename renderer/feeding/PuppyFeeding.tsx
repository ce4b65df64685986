import { useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { daysBetween } from '../../core/calendar/day.ts';
import { mealLadder } from '../../core/feeding/ladder.ts';
import { ladderInputOf } from '../../core/feeding/ration-input.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import { FIRST_BOWL } from '../../core/reference/feeding/weaning.ts';
import { useToday } from '../data/now.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { useRules } from '../facts/useRules.ts';
import { MealLadder } from '../parts/ladder/MealLadder.tsx';
import { words } from '../state/words.ts';
import { PuppyRation } from './RationFindings.tsx';

/** The months ahead as a ladder, and what the puppy is fed now. */
export function PuppyFeeding({ facts, puppy }: { facts: LitterGrowthFacts; puppy: Puppy }) {
  const today = useToday();
  const rules = useRules(today, puppy.litterId);
  const food = useFoodOn(puppy.litterId, rules, dateOf(puppy.bornAt), today);
  const { litter, input, house } = facts;
  const steps = useMemo(
    () =>
      litter === null || input === null
        ? []
        : mealLadder(ladderInputOf({ litter, puppy, growth: input, rules, food, on: today })),
    [litter, puppy, input, rules, food, today],
  );
  return (
    <>
      <section className="part">
        <h2>{words.growth.ladder}</h2>
        <p className="note">{steps.length === 0 ? words.growth.ladderNone : words.growth.ladderNote}</p>
        {steps.length > 0 && (
          <MealLadder
            steps={steps}
            born={dateOf(puppy.bornAt)}
            nowDay={daysBetween(dateOf(puppy.bornAt), today)}
            unit={house.massUnit}
          />
        )}
      </section>
      {daysBetween(dateOf(puppy.bornAt), today) >= FIRST_BOWL.earliestDay && (
        <PuppyRation facts={facts} puppy={puppy} rules={rules} food={food} today={today} />
      )}
    </>
  );
}
