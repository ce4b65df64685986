/**
 * How long the sum of a week takes, beside the simplest thing that could work: look every food up and add grams and kcal. Each week is another
 * one, so that nothing is remembered from the last. The bound of the project is 5 ms for one week with its findings.
 */

import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { weekFindings } from '../../../core/feeding/week-findings.ts';
import { MEAL_NAMES, type Meals } from '../../../core/food/bowls.ts';
import { foodCatalogue, SHIPPED_FOODS } from '../../../core/food/catalogue.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import type { RecipePart, StoredFood } from '../../../core/food/own-food.ts';
import { type Bowl, EMPTY_WEEK, type Week, weekSummary } from '../../../core/food/rotation.ts';
import { foodFields } from '../../contract/world.ts';

const MEALS: Meals = { morning: 90, midday: 90, afternoon: 90, evening: 90 };
const WEEKS = 500;
const OWN = 200;

/** A small generator of numbers with a fixed seed (Lehmer 1951, multiplier 48271). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function ownFoods(next: () => number): StoredFood[] {
  const foods: StoredFood[] = [];
  for (let n = 0; n < OWN; n += 1) {
    const id = `own-food-${n}`;
    const fields = foodFields(id, { protein: 10 + 10 * next(), fat: 5 + 12 * next() });
    const parts: RecipePart[] = [0, 1].map((i) => ({ foodId: foods[n - 1 - i]?.id ?? DEFAULT_FOOD.id, share: 0.5 }));
    const recipe = n > 2 && n % 3 === 0;
    foods.push({ id, retired: false, fields: recipe ? { ...fields, made: { by: 'recipe', parts }, bone: null } : fields });
  }
  return foods;
}

function anyWeek(ids: readonly string[], next: () => number): Week {
  const id = () => ids[Math.floor(next() * ids.length)] ?? DEFAULT_FOOD.id;
  const bowl = (): Bowl =>
    next() < 0.1
      ? { kind: 'bone', foodId: 'usda-05100', pieces: 2, pieceGrams: 60 }
      : { kind: 'foods', parts: [0.4, 0.3, 0.2, 0.1].map((share) => ({ foodId: id(), share })) };
  return EMPTY_WEEK.map(() => ({ morning: bowl(), midday: bowl(), afternoon: bowl(), evening: bowl() }));
}

/** The simplest thing: grams times kcal, nothing else. */
function simplest(week: Week, find: (id: string) => { kcalPer100g: number } | null): number {
  let kcal = 0;
  for (const day of week) {
    for (const meal of MEAL_NAMES) {
      const bowl = day[meal];
      if (bowl?.kind === 'bone') kcal += bowl.pieces * bowl.pieceGrams * ((find(bowl.foodId)?.kcalPer100g ?? 0) / 100);
      else for (const p of bowl?.parts ?? []) kcal += p.share * (MEALS[meal] ?? 0) * ((find(p.foodId)?.kcalPer100g ?? 0) / 100);
    }
  }
  return kcal / 7;
}

function timed(what: string, weeks: readonly Week[], work: (week: Week) => number): number {
  let sum = 0;
  const times: number[] = [];
  for (const week of weeks) {
    const started = performance.now();
    sum += work(week);
    times.push(performance.now() - started);
  }
  const sorted = times.toSorted((a, b) => a - b);
  const at = (part: number) => (sorted[Math.floor(part * (sorted.length - 1))] ?? 0).toFixed(3);
  console.log(`${what.padEnd(44)} median ${at(0.5)} ms   99 % ${at(0.99)} ms   most ${at(1)} ms`);
  return sum;
}

const next = numbers(20_261_125);
const stored = ownFoods(next);
const ids = [...SHIPPED_FOODS.map((f) => f.id), ...stored.map((f) => f.id)];
const weeks = Array.from({ length: WEEKS }, () => anyWeek(ids, next));
const catalogue = foodCatalogue(stored);
console.log(`${WEEKS} weeks of 28 bowls, ${ids.length} foods`);
const naive = timed('simplest: kcal alone', weeks, (week) => simplest(week, catalogue.find));
const ours = timed(
  'week summary',
  weeks,
  (week) => weekSummary(week, { count: 1, meals: MEALS }, catalogue, DEFAULT_FOOD)?.kcal ?? 0,
);
timed('week summary with findings, new catalogue of foods', weeks, (week) => {
  const summary = weekSummary(week, { count: 1, meals: MEALS }, foodCatalogue(stored), DEFAULT_FOOD);
  if (summary === null) return 0;
  return weekFindings({
    summary,
    rules: DEFAULT_RULES,
    energy: null,
    growth: { size: 'usual', stage: 'early', severity: 'caution' },
  }).length;
});
console.log(`kcal of all weeks agree to ${(Math.abs(naive - ours) / naive).toExponential(1)}`);
