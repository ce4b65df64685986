import { useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, daysBetween } from '../../core/calendar/day.ts';
import { mealLadder } from '../../core/feeding/ladder.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import { expectedAdultKg, forecastWeight } from '../../core/growth/forecast.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import { WEANED_DAYS } from '../../core/weaning/weaning-plan.ts';
import { useToday } from '../data/now.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { useRules } from '../facts/useRules.ts';
import { MealLadder } from '../parts/MealLadder.tsx';
import { words } from '../state/words.ts';
import { PuppyBeside } from './Beside.tsx';

/** The months ahead as a ladder, and what the puppy is fed now. */
export function PuppyFeeding({
  facts,
  puppy,
  assessment,
}: {
  facts: LitterGrowthFacts;
  puppy: Puppy;
  assessment: Assessment | null;
}) {
  const today = useToday();
  const rules = useRules(today, puppy.litterId);
  const food = useFoodOn(puppy.litterId, rules, dateOf(puppy.bornAt), today);
  const { litter, house } = facts;
  const steps = useMemo(() => {
    if (litter === null || assessment?.grams == null || assessment.at === null) return [];
    const adult = expectedAdultKg(litter, puppy.sex);
    const adultKg = adult?.kg ?? null;
    const born = dateOf(puppy.bornAt);
    const anchorAgeDays = daysBetween(born, dateOf(assessment.at));
    const forecast = forecastWeight({
      adultKg,
      adultFrom: adult?.from,
      sizeClass: litter.sizeClass,
      anchorAgeDays,
      anchorGrams: assessment.grams,
    });
    const age = daysBetween(born, today);
    const from = Math.max(age, WEANED_DAYS);
    return mealLadder({
      rules,
      food,
      born,
      from: addDays(born, from),
      adultKg,
      forecast: (day) => forecast.at(day)?.mid ?? null,
      unit: house.massUnit,
    });
  }, [litter, assessment, puppy, today, rules, food, house.massUnit]);
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
      <PuppyBeside facts={facts} puppy={puppy} rules={rules} food={food} today={today} />
    </>
  );
}
