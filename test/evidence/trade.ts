/** Facts of the trade, as check values of the house-rule arithmetic. Common practice: none of them is a published standard. */

import { addMonths, type CivilDate, date } from '../../core/calendar/day.ts';
import { amountOn } from '../../core/feeding/amount.ts';
import { rulesFindings } from '../../core/feeding/findings.ts';
import { mealsOn } from '../../core/feeding/meals.ts';
import { rationOn } from '../../core/feeding/ration.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { vegetableSpoons } from '../../core/feeding/vegetables.ts';
import { mealCount } from '../../core/food/bowls.ts';
import { DEFAULT_FOOD } from '../../core/food/food.ts';
import { GRAMS_PER_POUND } from '../../core/units/mass.ts';
import { afterCuts } from '../../core/weaning/food-left.ts';
import { type EvidenceRow, row } from './row.ts';

const TRADE = { source: 'common practice, no source', known: 'common practice' } as const;
const born = date('2026-01-01');
const at = (months: number): CivilDate => addMonths(born, months);

/** The day by the house rule and its first meal, not rounded; share of the young puppy as given. */
function dayAndMeal(weightGrams: number, months: number, shareYoung: number): [number, number] {
  const rules = { ...DEFAULT_RULES, shareYoung };
  const day = at(months);
  const { grams } = amountOn({ rules, food: DEFAULT_FOOD, born, day, weightGrams, adultKg: null });
  return [grams, grams * (mealsOn(rules, born, day, null).shares.morning ?? 0)];
}

export const tradeRows: readonly EvidenceRow[] = [
  row({
    id: 'trade 1',
    quantity: '10 lb at 6 %, day and meal, g',
    inputs: 10,
    expected: [272, 90.7],
    tolerance: 0.2,
    ...TRADE,
    run: (lb) => dayAndMeal(lb * GRAMS_PER_POUND, 3, 0.06),
  }),
  row({
    id: 'trade 1b',
    quantity: '5 kg at 5.5 %, day and meal, g',
    inputs: 5000,
    expected: [275, 91.7],
    tolerance: 0.1,
    ...TRADE,
    run: (g) => dayAndMeal(g, 3, DEFAULT_RULES.shareYoung),
  }),
  row({
    id: 'trade 2',
    quantity: 'meals a day at 4 months, 7 months, 3 years',
    inputs: [4, 7, 36],
    expected: [3, 2, 2],
    tolerance: 'exact',
    ...TRADE,
    run: (months) => months.map((m) => mealCount(mealsOn(DEFAULT_RULES, born, at(m), null).shares)),
  }),
  row({
    id: 'trade 3',
    quantity: '15 kg at six months, g',
    inputs: 15_000,
    expected: 525,
    tolerance: 1e-9,
    ...TRADE,
    run: (g) => dayAndMeal(g, 6, 0.055)[0],
  }),
  row({
    id: 'trade 4',
    quantity: '25 kg from a year, day and bowls, g',
    inputs: 25_000,
    expected: [500, 250, 250],
    tolerance: 0,
    ...TRADE,
    run: (weightGrams) => {
      const ration = rationOn({ rules: DEFAULT_RULES, food: DEFAULT_FOOD, born, day: at(12), weightGrams, adultKg: null });
      return [ration.dayGrams, ration.meals.morning ?? 0, ration.meals.evening ?? 0];
    },
  }),
  row({
    id: 'trade 5',
    quantity: 'one meal of 5.67 kg at 6 %: a quarter pound, g',
    inputs: 5670,
    expected: 113.4,
    tolerance: 0.05,
    ...TRADE,
    run: (g) => dayAndMeal(g, 3, 0.06)[1],
  }),
  row({
    id: 'trade 16',
    quantity: 'bone beside a ground mix that holds 10 %, when a quarter is aimed at; and what is found about it',
    inputs: 0.25,
    expected: [0.15, 'bone-aim'],
    tolerance: 0.005,
    ...TRADE,
    run: (boneShare) => {
      const found = rulesFindings({ ...DEFAULT_RULES, boneShare }, DEFAULT_FOOD).find((f) => f.code === 'bone-aim');
      return [(found?.numbers['boneShare'] ?? 0) - (found?.numbers['inFood'] ?? 0), found?.code ?? 'none'];
    },
  }),
  row({
    id: 'trade 18',
    quantity: '275 g after food was left again, and again, g',
    inputs: 275,
    expected: [247.5, 222.75],
    tolerance: 1e-9,
    ...TRADE,
    run: (g) => [1, 2].map((times) => afterCuts(g, DEFAULT_RULES.cutShare, times)),
  }),
  row({
    id: 'trade 19',
    quantity: 'spoons of greens to 454 g and 227 g',
    inputs: [454, 227],
    expected: [2, 1],
    tolerance: 'exact',
    ...TRADE,
    run: (all) => all.map((g) => vegetableSpoons(DEFAULT_RULES, g)),
  }),
];
