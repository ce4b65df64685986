/** Foods from a pack and as recipes: what the figures are, and which can't be. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growthOf, nutrientFindings, vitaminAFinding } from '../../../core/feeding/nutrient-findings.ts';
import { foodCatalogue, foodOrDefault, SHIPPED_FOODS } from '../../../core/food/catalogue.ts';
import {
  boneShareOf,
  calciumPer1000Kcal,
  calciumToPhosphorus,
  DEFAULT_FOOD,
  equivalentGrams,
  type Food,
  ingredientFood,
  LABEL_BASES,
  mixFoods,
  PLAIN_FOOD,
} from '../../../core/food/food.ts';
import { asFed, type Label, labelChecks, labelEnergies } from '../../../core/food/label.ts';
import { type FoodCheck, type FoodFields, foodChecks, foodOf, type StoredFood } from '../../../core/food/own-food.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';
import { foodFields, recipeFields } from '../../contract/world.ts';

const PACK: Label = {
  basis: 'as fed',
  water: 8,
  protein: 26,
  fat: 15,
  fibre: 3,
  ash: 7,
  calcium: 1.2,
  phosphorus: 1,
  vitaminAPerKg: null,
  kcalPer100g: null,
  method: 'NRC four-step',
};
const dry = (change: Partial<Label> = {}) => labelChecks({ ...PACK, ...change }, 'dry');
const codes = (checks: readonly { code: string; severity: string }[]) => checks.map((c) => `${c.severity} ${c.code}`);
const sentenceOf = (check: FoodCheck | undefined) => (check === undefined ? null : ENGLISH.food.check(check));
const own = (id: string, fields: FoodFields, retired = false): StoredFood => ({ id, fields, retired });
const catalogue = (...stored: StoredFood[]) => foodCatalogue(stored);

describe('a pack', () => {
  it('says the same as fed, in dry matter and per 1000 kcal', () => {
    const kcal = 379.3;
    const inDry = (n: number) => n / 0.92;
    const perKcal = (n: number) => (n / kcal) * 1000;
    const same = [
      PACK,
      {
        ...PACK,
        basis: 'dry matter',
        protein: inDry(26),
        fat: inDry(15),
        fibre: inDry(3),
        ash: inDry(7),
        calcium: inDry(1.2),
        phosphorus: inDry(1),
      },
      {
        ...PACK,
        basis: 'per 1000 kcal',
        kcalPer100g: kcal,
        protein: perKcal(26),
        fat: perKcal(15),
        fibre: perKcal(3),
        ash: perKcal(7),
        calcium: perKcal(1.2),
        phosphorus: perKcal(1),
      },
    ] satisfies Label[];
    for (const label of same) {
      const a = asFed(label);
      expect(a?.protein).toBeCloseTo(26, 6);
      expect(a?.calciumMg).toBeCloseTo(1200, 6);
      expect(labelEnergies(label)['NRC four-step']).toBeCloseTo(379.3, 1);
      expect(labelChecks(label, 'dry')).toEqual([]);
    }
  });

  it.each([
    ['parts over a hundred', { water: 80 }, 'stop parts-over', /come to 131 g in 100 g/],
    ['dry matter without its water', { basis: 'dry matter', water: null }, 'stop no-water', /need the water/],
    ['dry matter that is all water', { basis: 'dry matter', water: 100 }, 'stop only-water', /100 % water/],
    ['1000 kcal without its energy', { basis: 'per 1000 kcal' }, 'stop no-energy', /need the energy/],
    ['the pack’s energy, which is not there', { method: 'label' }, 'stop method-without-energy', /Write the energy/],
    ['more than pure fat', { kcalPer100g: 3800 }, 'stop too-rich', /write 380/],
    ['nothing in it', { protein: 0, fat: 0 }, 'stop nothing-in-it', /no energy can be reckoned/],
    ['calcium in milligrams', { calcium: 12 }, 'stop calcium-much', /milligrams/],
    ['a dry food without its water', { water: null }, 'stop water-guessed', /needs its water/],
    ['minerals over the ash', { calcium: 5, phosphorus: 3 }, 'doubt minerals-over-ash', /part of the ash/],
  ] as const)('%s', (_why, change, code, sentence) => {
    const found = dry(change);
    expect(codes(found)).toContain(code);
    expect(sentenceOf(found.find((c) => codes([c])[0] === code))).toMatch(sentence);
  });

  it('knows kilojoules and a kilogram’s energy when it sees them', () => {
    const raw = { ...PACK, water: 70, protein: 15, fat: 12, fibre: 0, ash: 3, calcium: null, phosphorus: null };
    const said = (kcalPer100g: number) => sentenceOf(labelChecks({ ...raw, kcalPer100g }, 'complete mix')[0]);
    expect(said(703)).toMatch(/318 % over the 168 .* kilojoules: 703 kJ is 168 kcal/);
    expect(sentenceOf(labelChecks({ ...raw, fat: 2, protein: 8, water: 87, kcalPer100g: 540 }, 'complete mix')[0])).toMatch(
      /kilogram’s: write 54/,
    );
  });

  it('asks from fifteen per cent on when the energy on the pack is not that of its analysis', () => {
    const reckoned = labelEnergies(PACK)['NRC four-step'] ?? 0;
    expect(dry({ kcalPer100g: reckoned * 1.14 })).toEqual([]);
    expect(dry({ kcalPer100g: reckoned * 0.86 })).toEqual([]);
    expect(codes(dry({ kcalPer100g: reckoned * 1.16 }))).toEqual(['doubt energy-off']);
    expect(codes(dry({ kcalPer100g: reckoned * 0.84 }))).toEqual(['doubt energy-off']);
  });

  it('never gives parts below nothing or a food of more than 900 kcal, whatever is taken', () => {
    const figure = fc.double({ min: 0, max: 100, noNaN: true });
    const maybe = fc.option(figure, { nil: null });
    const label = fc.record({
      basis: fc.constantFrom(...LABEL_BASES),
      water: maybe,
      protein: figure,
      fat: figure,
      fibre: maybe,
      ash: maybe,
      calcium: maybe,
      phosphorus: maybe,
      vitaminAPerKg: maybe,
      kcalPer100g: fc.option(fc.double({ min: 1, max: 10_000, noNaN: true }), { nil: null }),
      method: fc.constantFrom('label', 'raw 4/9/4', 'modified Atwater', 'NRC four-step'),
    });
    fc.assert(
      fc.property(label, fc.constantFrom('complete mix', 'dry', 'other'), (l, form) => {
        const fields = { ...foodFields('Any'), form, made: { by: 'label', label: l }, bone: null } satisfies FoodFields;
        if (
          foodChecks(
            null,
            fields,
            () => null,
            () => false,
          ).some((c) => c.severity === 'stop')
        )
          return;
        const food = foodOf('any-food', fields, () => null);
        if (food === null) return;
        expect(food.kcalPer100g).toBeGreaterThan(0);
        expect(food.kcalPer100g).toBeLessThanOrEqual(910);
        for (const part of [food.analysis.water, food.analysis.protein, food.analysis.fat])
          expect(part).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('calcium', () => {
  const silent = foodFields('Silent', { calcium: null });
  it('is the pack’s, else a range from its bone, else not known', () => {
    expect(foodOf('f', foodFields('Said'), () => null)?.analysis.calciumMg).toEqual({ low: 600, high: 600 });
    const wet = foodOf('f', silent, () => null)?.analysis.calciumMg;
    expect([wet?.low, wet?.high].map(Math.round as (n?: number) => number)).toEqual([400, 600]);
    const unknown = foodOf('f', { ...silent, bone: { share: 0.1, basis: 'unknown' } }, () => null);
    expect((unknown?.analysis.calciumMg.high ?? 0) / (unknown?.analysis.calciumMg.low ?? 1)).toBeGreaterThan(6);
    const nothing = foodOf('f', { ...silent, bone: null }, () => null) as Food;
    expect(calciumPer1000Kcal(nothing)).toEqual({ low: 0, high: Number.POSITIVE_INFINITY });
    expect(calciumToPhosphorus(nothing).high).toBe(Number.POSITIVE_INFINITY);
    expect(nutrientFindings(nothing, growthOf(20, 60)).filter((f) => /calcium|ratio/.test(f.code))).toMatchObject([
      { code: 'calcium-unknown', severity: 'caution' },
    ]);
    expect(boneShareOf(nothing)).toEqual({ low: 0, high: 1 });
  });

  it('that such bone can’t give is asked about', () => {
    const checks = foodChecks(
      null,
      foodFields('Odd', { calcium: 2.5, ash: 5 }),
      () => null,
      () => false,
    );
    expect(codes(checks)).toContain('doubt bone-off');
  });
});

describe('a recipe', () => {
  it('is the sum of its parts', () => {
    const half = foodOf(
      'mine',
      recipeFields([
        [DEFAULT_FOOD.id, 0.5],
        ['usda-13325', 0.5],
      ]),
      catalogue().find,
    );
    const liver = ingredientFood('13325');
    expect(half?.kcalPer100g).toBeCloseTo((DEFAULT_FOOD.kcalPer100g + liver.kcalPer100g) / 2, 9);
    expect(half?.analysis.vitaminAIu).toBeCloseTo((16898 + (DEFAULT_FOOD.analysis.vitaminAIu ?? 0)) / 2, 6);
    const liverFinding = vitaminAFinding(half as Food, 'growing');
    expect(liverFinding === null ? null : ENGLISH.finding.say(liverFinding, 'g').mend).toMatch(/Less liver/);
    expect(half?.bone?.share).toBeCloseTo((DEFAULT_FOOD.bone?.share ?? 0) / 2, 9);
  });

  it('may hold a recipe, but no circle; one that was made anyway has no figures and stops nothing', () => {
    const a = own('food-aaaa', recipeFields([[DEFAULT_FOOD.id, 1]]));
    const b = own(
      'food-bbbb',
      recipeFields([
        ['food-aaaa', 0.6],
        [PLAIN_FOOD.id, 0.4],
      ]),
    );
    expect(catalogue(a, b).find('food-bbbb')?.kcalPer100g).toBeGreaterThan(100);
    const circle = recipeFields([['food-bbbb', 1]]);
    const { find, uses } = catalogue(a, b);
    expect(codes(foodChecks('food-aaaa', circle, find, uses))).toContain('stop part-itself');
    expect(codes(foodChecks('food-aaaa', recipeFields([['food-aaaa', 1]]), find, uses))).toContain('stop part-itself');
    const broken = catalogue(own('food-aaaa', circle), b);
    expect(broken.find('food-bbbb')).toBeNull();
    expect(foodOrDefault(broken, 'food-bbbb')).toBe(DEFAULT_FOOD);
  });

  it.each([
    [[[DEFAULT_FOOD.id, 0.5]], 'stop shares-off', /come to 50 %, not 100\. Put in 50 %/],
    [
      [
        [DEFAULT_FOOD.id, 0.8],
        [PLAIN_FOOD.id, 0.4],
      ],
      'stop shares-off',
      /Take off 20 %/,
    ],
    [
      [
        [DEFAULT_FOOD.id, 0.5],
        [DEFAULT_FOOD.id, 0.5],
      ],
      'stop part-twice',
      /twice/,
    ],
    [[['food-none', 1]], 'stop part-gone', /not among/],
  ] as const)('%j is %s', (parts, code, sentence) => {
    const { find, uses } = catalogue();
    const checks = foodChecks(null, recipeFields(parts), find, uses);
    expect(codes(checks)).toContain(code);
    expect(checks.map((c) => sentenceOf(c)?.replaceAll('\u00a0', ' ')).join(' ')).toMatch(sentence);
  });
});

describe('the shipped foods', () => {
  it('have figures that hold together, and ids that the contract takes', () => {
    expect(SHIPPED_FOODS).toHaveLength(27);
    for (const food of SHIPPED_FOODS) {
      expect(food.id).toMatch(/^[a-z0-9-]{8,40}$/);
      expect(food.kcalPer100g, food.name).toBeGreaterThan(20);
      const { water, protein, fat } = food.analysis;
      expect(water + protein + fat + 100 * (food.bone?.share ?? 0), food.name).toBeLessThanOrEqual(101.5);
    }
  });

  it('the plain mix is the complete one without vegetables', () => {
    expect(PLAIN_FOOD.holdsVegetables).toBe(false);
    expect(DEFAULT_FOOD.holdsVegetables).toBe(true);
    expect(PLAIN_FOOD.bone?.share).toBeCloseTo(0.1, 2);
  });
});

describe('equivalents', () => {
  it('hold as much energy, and turn back into what they came from', () => {
    const foods = fc.constantFrom(...SHIPPED_FOODS);
    fc.assert(
      fc.property(foods, foods, fc.double({ min: 1, max: 2000, noNaN: true }), (of, as, grams) => {
        const other = equivalentGrams(grams, of, as);
        expect(other * as.kcalPer100g).toBeCloseTo(grams * of.kcalPer100g, 4);
        expect(equivalentGrams(other, as, of)).toBeCloseTo(grams, 6);
      }),
    );
  });
});

describe('a mix', () => {
  it('lies between its parts, and is the same whatever the parts are counted in', () => {
    const foods = fc.constantFrom(...SHIPPED_FOODS);
    const share = fc.double({ min: 0.01, max: 50, noNaN: true });
    const head = { id: 'mix-mix-mix', name: 'mix', form: 'other', source: { by: 'week-mean' }, known: 'computed' } as const;
    fc.assert(
      fc.property(foods, foods, share, share, (a, b, m, n) => {
        const mix = mixFoods(head, [
          { food: a, share: m },
          { food: b, share: n },
        ]);
        const twice = mixFoods(head, [
          { food: a, share: 2 * m },
          { food: b, share: 2 * n },
        ]);
        expect(mix.kcalPer100g).toBeCloseTo(twice.kcalPer100g, 9);
        expect(mix.kcalPer100g).toBeGreaterThanOrEqual(Math.min(a.kcalPer100g, b.kcalPer100g) - 1e-9);
        expect(mix.kcalPer100g).toBeLessThanOrEqual(Math.max(a.kcalPer100g, b.kcalPer100g) + 1e-9);
      }),
    );
    expect(() => mixFoods(head, [])).toThrow(RangeError);
  });
});
