/** No page says a thing and its opposite: every pair of findings, over foods, sizes and ages. */
import { expect, it } from 'vitest';
import { addDays } from '../../../core/calendar/day.ts';
import type { FindingCode } from '../../../core/feeding/finding.ts';
import { findings } from '../../../core/feeding/findings.ts';
import { growthOf } from '../../../core/feeding/nutrient-findings.ts';
import { DEFAULT_RULES, type HouseRules } from '../../../core/feeding/rules.ts';
import { weekFindings } from '../../../core/feeding/week-findings.ts';
import { foodCatalogue } from '../../../core/food/catalogue.ts';
import { DEFAULT_FOOD, type Food, PLAIN_FOOD } from '../../../core/food/food.ts';
import { weekSummary } from '../../../core/food/rotation.ts';
import { EXAMPLE } from './arbitrary.ts';

/** What a mend asks for; one page must not ask for both of a row. */
const OPPOSITES: readonly (readonly [readonly FindingCode[], readonly FindingCode[]])[] = [
  [
    ['energy-low', 'week-energy-low', 'minerals-day-low'],
    ['energy-high', 'week-energy-high'],
  ],
  [
    ['calcium-low', 'ratio-low', 'bone-under'],
    ['calcium-high', 'ratio-high', 'bone-over'],
  ],
  [['calcium-unknown'], ['calcium-low', 'calcium-high', 'ratio-low', 'ratio-high', 'minerals-day-low']],
  [['calcium-high'], ['minerals-day-low']],
  [['protein-low'], ['fat-low']],
  [['thaw-long'], ['thaw-short']],
];

const MINERALS = [20, 150, 330, 420, 650, 1400, Number.POSITIVE_INFINITY];
const FOODS: readonly Food[] = [DEFAULT_FOOD, PLAIN_FOOD].flatMap((food) =>
  [90, 130, 166, 240, 420].flatMap((kcalPer100g) =>
    MINERALS.flatMap((calcium) =>
      [80, 250, 700].flatMap((phosphorus) =>
        (
          [
            [17, 12],
            [4, 3],
            [25, 1],
          ] as const
        ).map(([protein, fat]) => ({
          ...food,
          kcalPer100g,
          analysis: {
            ...food.analysis,
            protein,
            fat,
            calciumMg: { low: Number.isFinite(calcium) ? calcium : 0, high: calcium },
            phosphorusMg: { low: phosphorus, high: phosphorus },
          },
        })),
      ),
    ),
  ),
);
const DOGS = [
  [1.8, 56, 0.5],
  [4, 182, 3.6],
  [10, 112, 5.4],
  [18, 84, 6.4],
  [32, 56, 5.2],
  [60, 84, 14.5],
  [75, 182, 42],
  [25, 500, 25],
] as const;
const RULES: readonly HouseRules[] = [
  DEFAULT_RULES,
  { ...DEFAULT_RULES, basis: 'share', boneShare: 0.25 },
  { ...DEFAULT_RULES, basis: 'energy', boneShare: 0, thawHours: 48, keepHours: 72 },
];

function contradictions(codes: readonly FindingCode[]): string[] {
  return OPPOSITES.flatMap(([one, other]) => {
    const [a, b] = [codes.find((c) => one.includes(c)), codes.find((c) => other.includes(c))];
    return a === undefined || b === undefined ? [] : [`${a} and ${b}`];
  });
}

it.each(DOGS)(
  'a dog of %s kg grown at %s days: no two findings point to both sides, and none is said twice',
  (adultKg, age, kg) => {
    const seen = new Set<FindingCode>();
    for (const rules of RULES) {
      for (const food of FOODS) {
        for (const gainInBand of [null, true, false]) {
          const codes = findings({
            rules,
            food,
            born: EXAMPLE.born,
            day: addDays(EXAMPLE.born, age),
            weightGrams: kg * 1000,
            adultKg,
            name: 'Poppy',
            gainInBand,
            weighedOn: null,
          }).map((f) => f.code);
          expect(contradictions(codes)).toEqual([]);
          expect(new Set(codes).size).toBe(codes.length);
          for (const code of codes) seen.add(code);
        }
      }
    }
    // The grid is wide enough to find both sides of what it looks for.
    if (age < 365)
      for (const code of ['calcium-low', 'calcium-high', 'ratio-low', 'ratio-high', 'calcium-unknown', 'protein-low'] as const)
        expect(seen).toContain(code);
  },
);

it.each(DOGS)('the week of a dog of %s kg grown at %s days: the same', (adultKg, age, kg) => {
  const catalogue = foodCatalogue([]);
  for (const rules of RULES) {
    for (const food of FOODS) {
      const summary = weekSummary(null, { count: 1, meals: { morning: kg * 25, evening: kg * 25 } }, catalogue, food);
      if (summary === null) throw new Error('nothing is eaten');
      const growth = age > 365 ? null : growthOf(adultKg, age);
      const codes = weekFindings({ summary, rules, energy: null, growth }).map((f) => f.code);
      expect(contradictions(codes)).toEqual([]);
    }
  }
});
