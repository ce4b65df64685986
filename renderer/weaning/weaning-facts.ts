/** What the weaning screens show of a plan: the ages of its steps, who holds, what a day comes to. */

import { daysBetween } from '../../core/calendar/day.ts';
import { GROWTH_SOURCES } from '../../core/feeding/energy.ts';
import type { MealName } from '../../core/food/bowls.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { type WeaningDay, type WeaningInput, weaningDays } from '../../core/weaning/weaning.ts';
import type { Explanation } from '../state/window.ts';
import { words } from '../state/words.ts';
import type { Holding } from './WeaningSteps.tsx';

/** Ages in days that each step runs from and to, with the rests there were. A step that rests keep away follows the one before it. */
export function stepSpans(input: WeaningInput): { from: number; to: number }[] {
  const { plan } = input;
  const startAge = daysBetween(input.puppies[0]?.born ?? plan.starts, plan.starts);
  const planned = plan.steps.reduce((all, s) => all + s.days, 0);
  const rested = Math.max(0, daysBetween(plan.starts, input.today));
  const days = weaningDays({ ...input, puppies: [] }, plan.starts, planned + rested + 7);
  const spans: { from: number; to: number }[] = [];
  for (const [i, step] of plan.steps.entries()) {
    const before = spans.at(-1);
    const first = days.findIndex((d) => d.step === i);
    const from = first === -1 ? (before?.to ?? startAge) : startAge + first;
    if (before !== undefined) before.to = from;
    spans.push({ from, to: from + step.days });
  }
  return spans;
}

/** Puppies that stay behind the litter on a day. */
export function holdingOn(day: WeaningDay, order: readonly Puppy[]): (Holding & { puppy: Puppy })[] {
  return day.puppies.flatMap((d) => {
    const puppy = order.find((p) => p.id === d.puppyId);
    return d.holds && puppy !== undefined
      ? [{ puppyId: puppy.id, name: puppyName(puppy), collar: puppy.collar, share: d.share, puppy }]
      : [];
  });
}

/** The first meal of today that nothing is noted about, if its time has come or it is the next; null when all are noted. */
export function presentMeal(meals: readonly MealName[], noted: ReadonlySet<MealName>): MealName | null {
  return meals.find((m) => !noted.has(m)) ?? null;
}

/** The day's sum, line by line. */
export function explainDay(input: WeaningInput, day: WeaningDay, unit: MassUnit, figure: string): Explanation {
  const fed = day.puppies.filter((p) => p.grams !== null);
  const weight = fed.reduce((all, p) => all + (p.grams ?? 0), 0);
  const shares = [...new Set(fed.map((p) => words.weaning.percent(p.share)))].join(', ');
  const kg = words.weaning.weightOfAll(weight / 1000);
  const rule = `${Number((input.rules.shareYoung * 100).toFixed(1))}\u00a0%`;
  const kcal = (day.dayGrams * input.food.kcalPer100g) / 100;
  const need = fed.reduce((all, p) => all + (p.estimateKcal ?? 0), 0);
  const estimate = GROWTH_SOURCES[input.rules.growthMethod];
  const from = words.weaning.sumSources;
  return {
    figure,
    how: words.weaning.how(kg, rule, shares),
    sum: [
      { what: words.weaning.sumWeight, figure: kg, source: from.weights },
      { what: words.weaning.sumRule, figure: rule, source: from.rules },
      { what: words.weaning.sumStep, figure: shares, source: from.plan },
      ...(day.cut < 1 ? [{ what: words.weaning.sumCut, figure: `× ${Number(day.cut.toFixed(3))}`, source: from.rules }] : []),
      { what: words.weaning.sumDay, figure: words.foodText(day.dayGrams, unit), source: from.computed },
      {
        what: words.weaning.sumKcal,
        figure: words.kcalText(kcal),
        source: `${words.foods.nameOf(input.food)}: ${words.foods.sourceOf(input.food.source)}`,
      },
      ...(need > 0
        ? [
            {
              what: words.weaning.sumEstimate,
              figure: words.kcalText(need),
              source: words.weaning.source(estimate.source, estimate.known),
            },
          ]
        : []),
    ],
  };
}

/** The next day after today on which the step changes, looking two months ahead. */
export function daysAhead(input: WeaningInput): WeaningDay[] {
  const { plan, today } = input;
  const begun = daysBetween(plan.starts, today) >= 0;
  return weaningDays({ ...input, puppies: [] }, begun ? today : plan.starts, 62);
}
