import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, date } from '../../../../core/calendar/day.ts';
import { type LadderStep, mealLadder } from '../../../../core/feeding/ladder.ts';
import { DEFAULT_RULES } from '../../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../../core/food/food.ts';
import { ladderLayout } from '../../../../renderer/parts/ladder/ladder-layout.ts';
import { type LadderLook, type LadderTexts, overlaps } from '../../../../renderer/parts/ladder/ladder-look.ts';
import { roughMeasure } from '../../../../renderer/parts/measure.ts';

const born = date('2026-09-26');
const grown = (adultKg: number) => (ageDays: number) =>
  (adultKg * 1000) / (1 + Math.exp((-Math.log(99) / 28) * (ageDays / 7 - 17)));
const ladder = (adultKg: number, fromDay: number, fourMealsUntilWeeks = 0): LadderStep[] =>
  mealLadder({
    rules: { ...DEFAULT_RULES, fourMealsUntilWeeks },
    food: DEFAULT_FOOD,
    born,
    from: addDays(born, fromDay),
    adultKg,
    forecast: grown(adultKg),
  });

const look = (width: number, paper = false): LadderLook => ({
  width,
  height: 260,
  pad: 8,
  figure: 16,
  bracket: 15,
  change: 14,
  layer: 14,
  age: 14,
  date: paper ? 14 : 0,
});
const texts: LadderTexts = {
  figure: (grams, first, now) => `${now ? 'now ' : ''}${grams}${first || now ? ' g' : ''}`,
  meals: (count) => [
    `${['', 'one', 'two', 'three', 'four'][count]} meals a day`,
    `${['', 'one', 'two', 'three', 'four'][count]} meals`,
  ],
  change: (days) => [`${days} days of change`, `${days} days`],
  layer: (meal) => meal,
  weeks: (weeks, first) => (first ? `${weeks} weeks` : String(weeks)),
  months: (months, first) => (first ? `${months} months` : String(months)),
  date: (day) => day.slice(5),
  now: 'now',
};
const draw = (steps: LadderStep[], width: number, nowDay: number | null = null, paper = false) =>
  ladderLayout(steps, born, nowDay, look(width, paper), texts, roughMeasure);

const anyLadder = fc.record({
  adultKg: fc.double({ min: 1.5, max: 80, noNaN: true }),
  fromDay: fc.integer({ min: 42, max: 330 }),
  four: fc.constantFrom(0, 0, 10, 12, 16),
  width: fc.integer({ min: 330, max: 1300 }),
  paper: fc.boolean(),
  now: fc.integer({ min: 0, max: 200 }),
});

describe('the meal ladder', () => {
  it('lets no two texts overlap and none run out of the picture', () => {
    fc.assert(
      fc.property(anyLadder, ({ adultKg, fromDay, four, width, paper, now }) => {
        const layout = draw(ladder(adultKg, fromDay, four), width, fromDay + now, paper);
        for (const [i, a] of layout.texts.entries()) {
          expect(a.x - a.width / 2).toBeGreaterThanOrEqual(-0.01);
          expect(a.x + a.width / 2).toBeLessThanOrEqual(width + 0.01);
          expect(a.y).toBeLessThanOrEqual(layout.height);
          for (const b of layout.texts.slice(i + 1)) expect(overlaps(a, b, 0), `${a.text} and ${b.text}`).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('never puts a figure across the outline of a tread', () => {
    fc.assert(
      fc.property(anyLadder, ({ adultKg, fromDay, four, width, now }) => {
        const layout = draw(ladder(adultKg, fromDay, four), width, fromDay + now);
        return layout.texts
          .filter((t) => t.kind === 'figure')
          .every((t) =>
            layout.treads.every(
              (tread) => tread.to <= t.x - t.width / 2 + 1 || tread.from >= t.x + t.width / 2 - 1 || tread.top > t.y,
            ),
          );
      }),
    );
  });

  it('stacks the meals from evening at the bottom to morning on top, as high as the day', () => {
    const { treads, base } = draw(ladder(24, 56, 12), 1000);
    for (const tread of treads) {
      const order = tread.layers.map((l) => l.meal);
      expect(order).toEqual(['evening', 'afternoon', 'midday', 'morning'].filter((m) => (order as string[]).includes(m)));
      expect(tread.layers[0]?.bottom).toBe(base);
      expect(tread.layers.at(-1)?.top).toBeCloseTo(tread.top, 6);
    }
  });

  it('draws heights in proportion to grams a day', () => {
    const { treads, base } = draw(ladder(24, 56), 1000);
    const perGram = treads.map((t) => (base - t.top) / t.step.dayGrams);
    for (const p of perGram) expect(p).toBeCloseTo(perGram[0] ?? 0, 9);
  });

  it('says three meals, the change and two meals, and names the layers in each', () => {
    const { texts: placed, changes, brackets } = draw(ladder(24, 56), 1000);
    const of = (kind: string) => placed.filter((t) => t.kind === kind).map((t) => t.text);
    expect(of('bracket')).toEqual(['three meals a day', 'two meals a day']);
    expect(of('change')).toEqual(['14 days of change']);
    expect(of('layer').sort()).toEqual(['evening', 'evening', 'midday', 'morning', 'morning']);
    expect(brackets).toHaveLength(2);
    expect(changes).toHaveLength(1);
  });

  it('always shows the first and the highest figure, and the present one', () => {
    const steps = ladder(24, 56);
    const most = Math.max(...steps.map((s) => s.dayGrams));
    for (const width of [340, 358, 600, 1000]) {
      const layout = draw(steps, width, 130);
      const figures = layout.texts.filter((t) => t.kind === 'figure').map((t) => t.text);
      expect(figures).toContain(`${steps[0]?.dayGrams} g`);
      expect(figures).toContain(String(most));
      expect(figures.some((f) => f.startsWith('now '))).toBe(true);
      expect(layout.now?.step.fromDay).toBeLessThanOrEqual(130);
    }
  });

  it('counts weeks up to five months, then calendar months', () => {
    const ages = draw(ladder(24, 56), 1000).texts.filter((t) => t.kind === 'age');
    expect(ages.sort((a, b) => a.x - b.x).map((t) => t.text)).toEqual([
      '8 weeks',
      '12',
      '16',
      '5 months',
      '6',
      '7',
      '8',
      '9',
      '10',
      '11',
      '12',
    ]);
  });

  it('writes "now" instead of the first date on paper', () => {
    const dates = draw(ladder(24, 56), 695, 57, true).texts.filter((t) => t.kind === 'date');
    const row = dates.sort((a, b) => a.x - b.x).map((t) => t.text);
    expect(row[0]).toBe('now');
    expect(row).toContain('02-26');
    expect(row).not.toContain('11-21');
  });
});
