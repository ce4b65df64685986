/** Facts of the trade about foods, packs and the week of bowls, as check values. Common practice: none of them is a published standard. */

import { addMonths, date } from '../../core/calendar/day.ts';
import { moveAheadHours } from '../../core/feeding/keeping.ts';
import { rationOn } from '../../core/feeding/ration.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { weekFindings } from '../../core/feeding/week-findings.ts';
import { foodCatalogue } from '../../core/food/catalogue.ts';
import { calciumPer1000Kcal, DEFAULT_FOOD, ingredientFood, PLAIN_FOOD, per1000Kcal } from '../../core/food/food.ts';
import { type FoodFields, foodOf, type StoredFood } from '../../core/food/own-food.ts';
import { portionGrams } from '../../core/food/portion.ts';
import { type Bowl, EMPTY_WEEK, fillBowl, type Week, weekSummary } from '../../core/food/rotation.ts';
import { ingredient } from '../../core/reference/feeding/usda.ts';
import { GRAMS_PER_POUND, toGrams } from '../../core/units/mass.ts';
import { foodFields } from '../contract/world.ts';
import { type EvidenceRow, row } from './row.ts';

const TRADE = { source: 'common practice, no source', known: 'common practice' } as const;

function stored(id: string, form: FoodFields['form'], kcalPer100g: number): StoredFood {
  const fields = foodFields(id, { water: 6, protein: 40, fat: 30, ash: 8, kcalPer100g });
  return { id, fields: { ...fields, form, bone: null }, retired: false };
}

const catalogue = foodCatalogue([
  stored('food-freeze', 'freeze-dried', 500),
  stored('food-dehyd', 'dehydrated', 420),
  stored('food-dry-1', 'dry', 380),
]);
const meals = { morning: 90, midday: 90, evening: 90 };
const bowl = (...parts: readonly (readonly [string, number])[]): Bowl => ({
  kind: 'foods',
  parts: parts.map(([foodId, share]) => ({ foodId, share })),
});
const every = (b: Bowl): Week => EMPTY_WEEK.map(() => ({ morning: b, midday: b, evening: b }));

function found(week: Week): string[] {
  const summary = weekSummary(week, { count: 1, meals }, catalogue, DEFAULT_FOOD);
  return summary === null ? [] : weekFindings({ summary, rules: DEFAULT_RULES, energy: null, growth: null }).map((f) => f.code);
}

export const tradeFoodRows: readonly EvidenceRow[] = [
  row({
    id: 'trade 6',
    quantity: 'hours ahead for a pound that the house thaws in two days, and by the program’s own rule',
    inputs: [48, DEFAULT_RULES.thawHours],
    expected: [48, 24],
    tolerance: 0,
    ...TRADE,
    run: (hours) => hours.map((thawHours) => moveAheadHours({ ...DEFAULT_RULES, thawHours }, 0.454)),
  }),
  row({
    id: 'trade 8',
    quantity: 'a pound half thawed and cut in four, g a portion',
    inputs: 4,
    expected: 113.4,
    tolerance: 0.05,
    ...TRADE,
    run: (portionsPerPack) => portionGrams({ grams: toGrams(GRAMS_PER_POUND), portions: portionsPerPack }),
  }),
  row({
    id: 'trade 9',
    quantity: 'rich fish by the eighth of a pound: g a portion, and weighed out beside a complete mix in a bowl of a pound',
    inputs: 8,
    expected: [56.7, 55],
    tolerance: 0.05,
    ...TRADE,
    run: (portionsPerPack) => {
      const portion = portionGrams({ grams: toGrams(GRAMS_PER_POUND), portions: portionsPerPack });
      const fish = bowl([DEFAULT_FOOD.id, 1 - 1 / portionsPerPack], ['usda-10219', 1 / portionsPerPack]);
      return [portion, fillBowl(fish, 450, 1, catalogue, DEFAULT_FOOD, 'g')[1]?.grams ?? 0];
    },
  }),
  row({
    id: 'trade 11',
    quantity: 'freeze-dried food is flagged above a tenth of the energy',
    inputs: [0.03, 0.06],
    expected: [false, true],
    tolerance: 'exact',
    ...TRADE,
    run: (shares) => shares.map((s) => found(every(bowl([DEFAULT_FOOD.id, 1 - s], ['food-freeze', s]))).includes('freeze-dried')),
  }),
  row({
    id: 'trade 13',
    quantity: 'more water whenever freeze-dried, dehydrated or dry food is in the day; none with raw food alone',
    inputs: ['food-freeze', 'food-dehyd', 'food-dry-1', PLAIN_FOOD.id],
    expected: [true, true, true, false],
    tolerance: 'exact',
    ...TRADE,
    run: (ids) => ids.map((id) => found(every(bowl([DEFAULT_FOOD.id, 0.98], [id, 0.02]))).includes('extra-water')),
  }),
  row({
    id: 'trade 14',
    quantity: 'three wing tips in place of one meal: meals of the week, meals of bones, pieces for three puppies in grams',
    inputs: { pieces: 3, grams: 25, puppies: 3 },
    expected: [21, 1, 225],
    tolerance: 'exact',
    ...TRADE,
    run: ({ pieces, grams, puppies }) => {
      const tips: Bowl = { kind: 'bone', foodId: 'usda-05100', pieces, pieceGrams: grams };
      const week = EMPTY_WEEK.map((_, d): Week[number] => (d === 0 ? { evening: tips } : {}));
      const sum = weekSummary(week, { count: puppies, meals }, catalogue, DEFAULT_FOOD);
      return [
        sum?.meals.all ?? 0,
        sum?.meals.bones ?? 0,
        fillBowl(tips, meals.evening, puppies, catalogue, DEFAULT_FOOD, 'g')[0]?.grams ?? 0,
      ];
    },
  }),
  row({
    id: 'trade 19b',
    quantity: 'greens are asked for with mixes that hold none, and only with those',
    inputs: [PLAIN_FOOD.id, DEFAULT_FOOD.id],
    expected: [true, false],
    tolerance: 'exact',
    ...TRADE,
    run: (ids) => ids.map((id) => found(every(bowl([id, 1]))).includes('greens')),
  }),
  row({
    id: 'trade 20',
    quantity: 'complete and plain mixes on alternate days: parts of the energy, and whether anything is found',
    inputs: [DEFAULT_FOOD.id, PLAIN_FOOD.id],
    expected: [0.5, 0.5, false],
    tolerance: 0.06,
    ...TRADE,
    run: ([complete, plain]) => {
      const days = EMPTY_WEEK.map((_, d): Week[number] => every(bowl([d % 2 === 0 ? complete : plain, 1]))[0] ?? {});
      const even = days.map((day, d): Week[number] =>
        d === 6 ? { morning: bowl([complete, 1]), midday: bowl([plain, 1]), evening: bowl([plain, 1]) } : day,
      );
      const sum = weekSummary(even, { count: 1, meals }, catalogue, DEFAULT_FOOD);
      return [sum?.complete ?? 0, sum?.plain ?? 0, found(even).includes('mixes-apart')];
    },
  }),
  row({
    id: 'trade 21',
    quantity: 'training treats of 20 g as rich as the food come off 275 g, g',
    inputs: 20,
    expected: 255,
    tolerance: 5,
    ...TRADE,
    run: (grams) => {
      const born = date('2026-01-01');
      const treats = { grams, kcalPer100g: DEFAULT_FOOD.kcalPer100g };
      return rationOn({
        rules: DEFAULT_RULES,
        food: DEFAULT_FOOD,
        born,
        day: addMonths(born, 3),
        weightGrams: 5000,
        adultKg: null,
        treats,
      }).dayGrams;
    },
  }),
  ...(
    [
      ['beef', '13325', 5633],
      ['lamb', '17199', 8204],
      ['pork', '10110', 7217],
      ['chicken', '05027', 3693],
    ] as const
  ).map(([animal, ndb, iu], i) =>
    row({
      id: `feeding liver ${i + 1}`,
      quantity: `vitamin A of 5 % ${animal} liver in a mix of 150 kcal per 100 g, IU per 1000 kcal`,
      inputs: { ndb, share: 0.05, kcal: 150 },
      expected: iu,
      tolerance: 1,
      source: 'USDA National Nutrient Database, release 26: vitamin A of the liver',
      known: 'computed',
      run: (i) => per1000Kcal(i.share * (ingredient(i.ndb).vitaminAIu ?? 0), i.kcal),
    }),
  ),
  row({
    id: 'feeding label',
    quantity: 'a pack of 1.2 % calcium and 22.5 % protein in dry matter at 4.0 kcal per g of it: g per 1000 kcal',
    inputs: { calcium: 1.2, protein: 22.5, water: 10 },
    expected: [3, 3, 56.25],
    tolerance: 0.001,
    source: 'AAFCO profiles: per cent of dry matter × 2.5 is g per 1000 kcal at 4.0 kcal per g (from memory)',
    known: 'from memory',
    run: ({ calcium, protein, water }) => {
      const kcalPer100g = 400 * (1 - water / 100);
      const label = {
        basis: 'dry matter',
        water,
        protein,
        fat: 8.5,
        fibre: 3,
        ash: 7,
        calcium,
        phosphorus: 1,
        kcalPer100g,
      } as const;
      const food = foodOf('food-label', { ...foodFields('Dry', label), form: 'dry', bone: null }, () => null);
      if (food === null) return 'none';
      const ca = calciumPer1000Kcal(food);
      return [ca.low, ca.high, per1000Kcal(food.analysis.protein, food.kcalPer100g)];
    },
  }),
  row({
    id: 'feeding bought',
    quantity: 'broiler, drumstick, pork ribs and feet as bought, as foods, kcal per 100 g by 4/9/4',
    inputs: ['05001', '05066', '10088', '10102'],
    expected: [207.3 * 0.69, 155.1 * 0.67, 272.5 * 0.7, 206.0 * 0.71],
    // The table's own column counts the half gram that water, protein and fat leave of a broiler.
    tolerance: 0.4,
    source: 'USDA National Nutrient Database, release 26: protein, fat and refuse; 4/9/4 of the FEDIAF annex',
    known: 'computed',
    run: (all) => all.map((ndb) => ingredientFood(ndb).kcalPer100g),
  }),
];
