/** A value out of a wriggling puppy: the published rule's vector, made traces, and what must never happen. */
import { describe, expect, test } from 'vitest';
import { likelierPuppy } from '../../../../core/growth/doubt.ts';
import { afresh, type Capture, hear, NOTHING_HEARD, pass, take } from '../../../../core/growth/scale/capture.ts';
import { decodeReport } from '../../../../core/growth/scale/hid-report.ts';
import { figureOf, quantile, sift, steadyBand } from '../../../../core/growth/scale/steady.ts';
import { calm, type Load, restless, traceOf } from '../../../fixtures/scale-traces.ts';
import { make, SIX } from '../make.ts';

/** Plays a trace; each steady value is used at once, as the weigh-in does. */
function play(loads: readonly Load[], step = 1): { taken: number[]; offered: number[]; last: Capture; after: number[] } {
  let c = NOTHING_HEARD;
  const taken: number[] = [];
  const offered: number[] = [];
  const after: number[] = [];
  let laid = 0;
  for (const { at, data } of traceOf(loads, step)) {
    const was = c;
    c = hear(c, decodeReport(Uint8Array.from(data)), at, step);
    if (c.loaded && !was.loaded) laid = at;
    if (c.outcome?.steady === true) {
      taken.push(c.outcome.grams);
      after.push(at - laid);
      c = take(c);
    } else if (c.outcome !== null && c.outcome !== was.outcome) offered.push(c.outcome.grams);
  }
  return { taken, offered, last: c, after };
}

describe('the figure', () => {
  // Computed by hand from the Hampel rule: median 511, MAD 3, limit 13.34, only 640 goes.
  const values = [512, 508, 640, 515, 509, 511, 498, 514, 510];
  test('rejects the kick and keeps the rest', () => {
    const { median: middle, limit, rejected } = sift(values);
    expect([middle, rejected]).toEqual([511, [640]]);
    expect(limit).toBeCloseTo(13.34, 2);
  });
  test('is near the trimmed mean of the same values (511.29, computed), and one that the scale did show', () => {
    const { grams } = figureOf(values);
    expect(values).toContain(grams);
    expect(Math.abs(grams - 511.29)).toBeLessThan(1.5);
  });
  test('quantiles lie between two values by parts, as R does by default (type 7)', () => {
    expect(quantile([1, 2, 3, 4], 0.9)).toBeCloseTo(3.7, 12);
    expect(quantile([5], 0.1)).toBe(5);
  });
  test('the band is two steps, or one per cent', () => {
    expect([steadyBand(150, 1), steadyBand(4000, 1), steadyBand(300, 5)]).toEqual([2, 40, 10]);
  });
});

describe('one puppy after another', () => {
  test('a calm one is taken once, within the step and four seconds', () => {
    const { taken, after } = play([calm(412)]);
    expect(taken).toHaveLength(1);
    expect(Math.abs((taken[0] ?? 0) - 412)).toBeLessThanOrEqual(2);
    expect(after[0]).toBeLessThanOrEqual(4500);
  });

  test('ten in a row are ten weights in order, however long each lies there', () => {
    const weights = [412, 398, 405, 421, 388, 430, 402, 415, 409, 396];
    const { taken } = play(weights.map((g, i) => calm(g, 5000 + 700 * i)));
    expect(taken).toHaveLength(10);
    for (const [i, g] of taken.entries()) expect(Math.abs(g - (weights[i] ?? 0))).toBeLessThanOrEqual(3);
  });

  test('a restless one is never taken by itself, but its median is offered, within two per cent', () => {
    const { taken, offered } = play([restless(2400)]);
    expect(taken).toEqual([]);
    expect(offered.length).toBeGreaterThan(0);
    for (const g of offered) expect(Math.abs(g / 2400 - 1)).toBeLessThan(0.02);
  });

  test('a kick after the value changes nothing, and a hop off the scale does not make another puppy of it', () => {
    const hop: Load = {
      ...calm(412, 9000),
      kicks: [
        [6000, -412],
        [6100, -412],
        [6200, -412],
      ],
    };
    expect(play([hop]).taken).toHaveLength(1);
  });

  test('an offer may be answered with the puppy back in the box, and goes when the next one is laid down', () => {
    const { last } = play([restless(2400, 7000)]);
    expect(last.loaded).toBe(false);
    expect(last.outcome?.steady).toBe(false);
    const next = hear(last, { kind: 'weight', grams: 500, stepGrams: 1, stable: false, basis: null }, 1e6, 1);
    expect(next.outcome).toBeNull();
  });

  test('begun afresh, what was heard before is gone, and a used weight stays used', () => {
    const { last } = play([restless(2400, 7000)]);
    expect(afresh(last).outcome).toBeNull();
    const on = hear(NOTHING_HEARD, { kind: 'weight', grams: 500, stepGrams: 1, stable: true, basis: null }, 0, 1);
    expect(afresh(take(on))).toMatchObject({ loaded: true, taken: true, samples: [] });
    expect(afresh(on)).toMatchObject({ loaded: true, taken: false, outcome: null });
  });

  test('a towel is no puppy, a fault is said and nothing is taken', () => {
    expect(play([{ ...calm(24), wriggle: 0, kicks: [] }]).last.loaded).toBe(false);
    const c = hear(NOTHING_HEARD, { kind: 'fault', fault: 'over-limit' }, 0, 1);
    expect([c.fault, c.outcome]).toEqual(['over-limit', null]);
    expect(hear(c, { kind: 'zero' }, 100, 1).fault).toBeNull();
  });

  test('the scale’s own "in motion" holds a value back however level it looks', () => {
    let c = NOTHING_HEARD;
    for (let at = 0; at <= 4000; at += 100)
      c = hear(c, { kind: 'weight', grams: 500, stepGrams: 1, stable: false, basis: null }, at, 1);
    expect(c.outcome).toBeNull();
    c = hear(c, { kind: 'weight', grams: 500, stepGrams: 1, stable: true, basis: null }, 4100, 1);
    expect(c.outcome).toEqual({ grams: 500, spread: 0, steady: true });
  });
});

describe('scales that do not stream', () => {
  const line = (grams: number, stable: boolean | null) => ({ kind: 'weight', grams, stepGrams: 1, stable, basis: null }) as const;

  test('one that speaks only on a change has said its last word after a second', () => {
    let c = hear(NOTHING_HEARD, line(300, false), 0, null);
    c = hear(c, line(411, false), 300, null);
    c = hear(c, line(412, true), 600, null);
    expect(pass(c, 1500).outcome).toBeNull();
    expect(pass(c, 1600).outcome).toEqual({ grams: 412, spread: 0, steady: true });
  });

  test('one with a print key sends a puppy a line and never a zero', () => {
    let c = hear(NOTHING_HEARD, line(412, null), 0, null);
    c = pass(c, 2000);
    expect(c.outcome).toMatchObject({ grams: 412, steady: true });
    c = take(c);
    expect(pass(c, 9000).outcome).toBeNull();
    c = pass(hear(c, line(398, null), 12_000, null), 14_000);
    expect(c.outcome).toMatchObject({ grams: 398, steady: true });
  });

  test('one that falls silent while moving is only offered', () => {
    const c = hear(hear(NOTHING_HEARD, line(412, false), 0, null), line(430, false), 200, null);
    expect(pass(c, 4000).outcome).toBeNull();
    expect(pass(c, 5000).outcome).toMatchObject({ steady: false });
  });

  test('one that stops under a puppy’s weight is empty', () => {
    const c = hear(hear(NOTHING_HEARD, line(412, true), 0, null), line(3, true), 300, null);
    expect([c.loaded, pass(c, 900).loaded]).toEqual([true, false]);
  });
});

describe('who is on the scale', () => {
  const litter = make([...SIX.slice(0, 5), { name: 'Fern', birth: 240 }], { days: 8 });
  const next = (litter.readings.at(-1)?.instant ?? 0) + 86_400_000;

  test('the small one in the place of a big one is noticed, and only when it is the only one that fits', () => {
    const fern = litter.readings.filter((r) => r.puppyId === 'Fern').at(-1)?.grams ?? 0;
    const found = likelierPuppy(litter, 'Ash', next, Math.round(fern * 1.06));
    expect(found?.puppyId).toBe('Fern');
    expect(likelierPuppy(litter, 'Fern', next, Math.round(fern * 1.06))).toBeNull();
    const ash = litter.readings.filter((r) => r.puppyId === 'Ash').at(-1)?.grams ?? 0;
    // Five weigh about as much as Ash: nobody can say which.
    expect(likelierPuppy(litter, 'Fern', next, Math.round(ash * 1.06))).toBeNull();
    // All the others were weighed a minute ago.
    const now = litter.puppies.flatMap((p) => {
      const last = litter.readings.filter((r) => r.puppyId === p.id).at(-1);
      return last === undefined || p.id === 'Ash' ? [] : [{ ...last, id: `now-${p.id}`, instant: next - 60_000 }];
    });
    const weighed = { ...litter, readings: [...litter.readings, ...now] };
    expect(likelierPuppy(weighed, 'Ash', next, Math.round(fern * 1.06))).toBeNull();
  });
});
