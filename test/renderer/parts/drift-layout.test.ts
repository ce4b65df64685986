import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DriftItem,
  type DriftLayout,
  driftLayout,
  LEAD_GAP,
  LEAD_WEIGHT,
  percentOf,
  REMARK_SIZE,
  scaleLimit,
} from '../../../renderer/parts/drift-layout.ts';
import { roughMeasure } from '../../../renderer/parts/measure.ts';

const item = (n: number, percent: number, more: Partial<DriftItem> = {}): DriftItem => ({
  id: `puppy-${String(n).padStart(2, '0')}`,
  percent,
  before: null,
  flagged: false,
  weighedNow: true,
  remark: { lead: 'watch', text: '6 % under the middle; 2 % under on Tuesday.' },
  ...more,
});

const percent = fc.double({ min: -75, max: 190, noNaN: true });
const litter = fc
  .array(
    fc.record({
      percent: fc.oneof(fc.constantFrom(0, 1, -6), fc.double({ min: -12, max: 12, noNaN: true }), percent),
      before: fc.option(percent),
      flagged: fc.boolean(),
      weighedNow: fc.boolean(),
      sentence: fc.constantFrom('6 % under.', 'Since Tuesday about 60 % less gain than expected: 16 g a day instead of 41.'),
    }),
    { minLength: 1, maxLength: 16 },
  )
  .map((all) =>
    all.map(({ sentence, ...rest }, n) =>
      item(n, rest.percent, { ...rest, remark: { lead: rest.flagged ? 'watch' : 'steady', text: sentence } }),
    ),
  );
const width = fc.integer({ min: 320, max: 1400 });

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
const meet = (a: Box, b: Box) =>
  a.left < b.right - 0.01 && b.left < a.right - 0.01 && a.top < b.bottom - 0.01 && b.top < a.bottom - 0.01;

function bandBoxes(layout: DriftLayout): Box[] {
  return layout.bands.map((b) => ({
    left: Math.min(b.left, b.tail?.from ?? b.left),
    right: Math.max(b.left + b.width, b.tail?.from ?? 0),
    top: b.top,
    bottom: b.top + b.height,
  }));
}

function textBoxes(layout: DriftLayout): Box[] {
  return layout.bands.flatMap((b) =>
    b.texts.map((t) => {
      const lead = t.bold === '' ? 0 : roughMeasure(t.bold, REMARK_SIZE, LEAD_WEIGHT) + (t.text === '' ? 0 : LEAD_GAP);
      return { left: t.x, right: t.x + lead + roughMeasure(t.text, REMARK_SIZE), top: t.y - 12, bottom: t.y + 4 };
    }),
  );
}

const noneMeet = (boxes: readonly Box[]) => boxes.every((a, i) => boxes.slice(i + 1).every((b) => !meet(a, b)));

describe('the drift line', () => {
  it('lets no two bands or tails overlap, for 1 to 16 puppies wherever they stand', () => {
    fc.assert(
      fc.property(litter, width, (items, w) => noneMeet(bandBoxes(driftLayout(items, w, roughMeasure)))),
      { numRuns: 300 },
    );
  });

  it('keeps steady bands above the line and flagged ones below it', () => {
    fc.assert(
      fc.property(litter, width, (items, w) => {
        const layout = driftLayout(items, w, roughMeasure);
        return (
          layout.bands.every((b) => (b.flagged ? b.top > layout.lineY + 12 : b.top + b.height < layout.lineY)) &&
          layout.bands.length === items.length
        );
      }),
    );
  });

  it('keeps bands, ticks and sentences inside its width and height', () => {
    fc.assert(
      fc.property(litter, width, (items, w) => {
        const layout = driftLayout(items, w, roughMeasure);
        const boxes = [...bandBoxes(layout), ...textBoxes(layout)];
        return (
          boxes.every((b) => b.left >= -0.01 && b.right <= w + 0.01 && b.top >= 0 && b.bottom <= layout.height) &&
          layout.ticks.every((t) => t.x > 0 && t.x < w)
        );
      }),
      { numRuns: 300 },
    );
  });

  it('lets no sentence overlap a band or another sentence', () => {
    fc.assert(
      fc.property(litter, width, (items, w) => {
        const layout = driftLayout(items, w, roughMeasure);
        const [bands, texts] = [bandBoxes(layout), textBoxes(layout)];
        return noneMeet(texts) && texts.every((t) => bands.every((b) => !meet(t, b)));
      }),
      { numRuns: 300 },
    );
  });

  it('is the same picture in whatever order the puppies come', () => {
    const sorted = (layout: DriftLayout) => [...layout.bands].sort((a, b) => (a.id < b.id ? -1 : 1));
    fc.assert(
      fc.property(
        litter.chain((items) => fc.tuple(fc.constant(items), fc.shuffledSubarray(items, { minLength: items.length }))),
        width,
        ([items, mixed], w) => {
          expect(sorted(driftLayout(mixed, w, roughMeasure))).toEqual(sorted(driftLayout(items, w, roughMeasure)));
        },
      ),
    );
  });

  it('stacks equal standings one above the other', () => {
    const layout = driftLayout(
      [0, 1, 2, 3, 4].map((n) => item(n, 0)),
      1000,
      roughMeasure,
    );
    expect(layout.bands.map((b) => b.lane).sort()).toEqual([0, 1, 2, 3, 4]);
    expect(new Set(layout.bands.map((b) => b.left)).size).toBe(1);
  });

  it('gives the longest tail the lowest lane', () => {
    const layout = driftLayout([item(0, 1), item(1, 1, { before: 6 }), item(2, 1, { before: 3 })], 1000, roughMeasure);
    expect(layout.bands.map((b) => [b.id, b.lane])).toEqual([
      ['puppy-01', 0],
      ['puppy-02', 1],
      ['puppy-00', 2],
    ]);
  });

  it('hangs flagged ones rightmost first, so that no needle crosses the tail of one that slipped', () => {
    const items = [
      item(0, -9, { flagged: true, before: -3 }),
      item(1, -3, { flagged: true, before: -1 }),
      item(2, 4, { flagged: true, before: 9 }),
    ];
    const { bands } = driftLayout(items, 1000, roughMeasure);
    expect(bands.map((b) => b.id)).toEqual(['puppy-02', 'puppy-01', 'puppy-00']);
    for (const [i, low] of bands.entries()) {
      for (const high of bands.slice(0, i)) expect(low.x).toBeLessThan(Math.min(high.x, high.tail?.from ?? high.x));
    }
  });

  it('draws no tail shorter than 6 px and none for those not weighed yet', () => {
    const { bands } = driftLayout(
      [item(0, 0, { before: 0.1 }), item(1, 5, { before: 9, weighedNow: false }), item(2, -6, { before: -2 })],
      1000,
      roughMeasure,
    );
    expect(bands.filter((b) => b.tail !== null).map((b) => b.id)).toEqual(['puppy-02']);
  });

  it('grows its scale in fives when someone stands beyond 15 %', () => {
    expect(scaleLimit([item(0, 4)])).toBe(15);
    expect(scaleLimit([item(0, -15)])).toBe(15);
    expect(scaleLimit([item(0, -15.2)])).toBe(20);
    expect(scaleLimit([item(0, 3, { before: 22 })])).toBe(25);
  });

  it('has an end: one wrong weight stands there with its figure, and the others keep their room', () => {
    const items = [item(0, -98), item(1, 190, { flagged: true }), item(2, 6)];
    expect(scaleLimit(items)).toBe(40);
    const { bands, middleX, ticks } = driftLayout(items, 1000, roughMeasure);
    const of = (n: number) => bands.find((b) => b.id === item(n, 0).id);
    expect([of(0)?.beyond, of(1)?.beyond, of(2)?.beyond]).toEqual([-98, 190, null]);
    expect([of(0)?.x, of(1)?.x]).toEqual([ticks.find((t) => t.percent === -40)?.x, ticks.find((t) => t.percent === 40)?.x]);
    expect((of(2)?.x ?? 0) - middleX).toBeGreaterThan(60);
  });

  it('draws flagged bands a third larger', () => {
    const { bands } = driftLayout([item(0, 0), item(1, -6, { flagged: true })], 1000, roughMeasure);
    expect(bands.map((b) => b.height)).toEqual([20, (20 * 4) / 3]);
  });

  it('shows a log ratio as per cent of the middle', () => {
    expect(percentOf(Math.log(2164 / 2312))).toBeCloseTo(-6.4, 1);
    expect(percentOf(0)).toBe(0);
  });
});
