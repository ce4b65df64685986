/** Where things stand on the second sheet, and round figures for the axes. */

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EarlierPlan, type EarlierRow, earlierPlanSchema } from '../../../core/homing/earlier-plan.ts';
import { evenSplit, halves, type NoteSplit, noteColumns, noteSplit } from '../../../renderer/print/earlier/arrange.ts';
import { niceTop, weekTicks } from '../../../renderer/print/earlier/picture-axes.ts';

const KEPT = earlierPlanSchema.parse(
  JSON.parse(readFileSync(new URL('../../fixtures/plans/eight-weeks.json', import.meta.url), 'utf8')),
);
type Group = EarlierPlan['table']['groups'][number];

const row = (fromDay: number): EarlierRow => ({
  age: '',
  from: '',
  fromDay,
  weight: '',
  share: '',
  dayGrams: 1,
  meals: {},
  mark: 'none',
});
const group = (heading: string, rows: number, first: number): Group => ({
  heading,
  rows: Array.from({ length: rows }, (_, i) => row(first + i)),
});

describe('the halves of the table', () => {
  it('part where the meals change when that is even enough', () => {
    const groups = KEPT.table.groups;
    const [left, right] = halves(groups);
    expect(left.map((g) => g.heading)).toEqual(['Three meals a day']);
    expect(right[0]?.heading).toBe('Three become two: midday shrinks');
  });

  it('keep every row once and in order, whatever the groups', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 6 }), (sizes) => {
        const groups = sizes.map((n, i) => group(`g${i}`, n, i * 100));
        const [left, right] = halves(groups);
        expect([...left, ...right].flatMap((g) => g.rows)).toEqual(groups.flatMap((g) => g.rows));
        const lines = (some: readonly Group[]) => some.reduce((n, g) => n + g.rows.length + 1, 0);
        const all = lines(groups);
        if (all > 10) expect(Math.max(lines(left), lines(right))).toBeLessThanOrEqual(Math.ceil(all / 2) + 4);
        expect([...left, ...right].every((g) => g.rows.length > 0)).toBe(true);
      }),
    );
  });
});

describe('the columns of the notes', () => {
  it('hold every note once, in order, in three columns', () => {
    const { notes } = KEPT;
    for (const split of [
      evenSplit(notes.length),
      noteSplit(
        notes.map(() => 40),
        90,
        6,
      ),
    ]) {
      const columns = noteColumns(notes, split);
      expect(columns).toHaveLength(3);
      expect(columns.flat()).toEqual(notes);
    }
  });

  it('are as even as can be, whatever the heights: no other division has a lower highest column', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 10, max: 300 }), { minLength: 3, maxLength: 9 }),
        fc.integer({ min: 50, max: 300 }),
        (heights, vet) => {
          const high = ({ first, second }: NoteSplit) =>
            Math.max(
              ...[heights.slice(0, first), heights.slice(first, second), [...heights.slice(second), vet]].map(
                (blocks) => blocks.reduce((a, b) => a + b, 0) + 6 * Math.max(0, blocks.length - 1),
              ),
            );
          const found = high(noteSplit(heights, vet, 6));
          for (let first = 1; first < heights.length; first += 1)
            for (let second = first; second <= heights.length; second += 1)
              expect(found).toBeLessThanOrEqual(high({ first, second }));
        },
      ),
    );
  });
});

describe('axes', () => {
  it('hold the highest weight in at most five even steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 200, noNaN: true }), (most) => {
        const { top, step } = niceTop(most);
        expect(top).toBeGreaterThanOrEqual(most - 1e-9);
        expect(Math.round(top / step)).toBeLessThanOrEqual(5);
        expect(Math.abs(top / step - Math.round(top / step))).toBeLessThan(1e-6);
      }),
    );
  });

  it('tick every week at first, then wider, from birth', () => {
    expect(weekTicks(56).map((t) => t.text)).toEqual(['birth', '1', '2', '3', '4', '5', '6', '7', '8 weeks']);
    expect(weekTicks(120).map((t) => t.day / 7)).toEqual([0, 2, 4, 6, 8, 10, 12, 14, 16]);
    for (const days of [1, 200, 900, 4000]) expect(weekTicks(days).length).toBeLessThanOrEqual(10);
  });
});
