/**
 * One puppy after another on the scale: a weight is taken once for each time the scale is loaded, and never again before
 * it was empty. Pure: what is heard and when goes in, what is known comes out. Times are milliseconds of any steady clock.
 */
import { figureOf, steadyBand } from './steady.ts';
import type { ScaleFault, ScaleValue } from './value.ts';

/** The last three seconds count. */
const WINDOW_MS = 3000;
/** Steady for a second: the setting with the smallest error in Kansas Agric. Exp. Stn Res. Reports 9(7) art. 40, seen. */
const STEADY_MS = 1000;
/** After this long without a steady second the median is offered. Our own choice, as are those below. */
const OFFER_MS = 5000;
const FEWEST = 3;
/** Nothing lighter is a puppy: the scale counts as empty. */
const PUPPY_FROM = 30;
/** A puppy that jumps is off the scale for less. */
const EMPTY_MS = 500;
/** A scale that lets more pass between two weights sends one at the press of a key, not a stream. */
const STREAM_MS = 2000;

interface Sample {
  readonly at: number;
  readonly grams: number;
  readonly stable: boolean | null;
}

/** What a load came to. `steady` false: a median offered with its spread. Grams. */
export interface Outcome {
  readonly grams: number;
  readonly spread: number;
  readonly steady: boolean;
}

export interface Capture {
  readonly loaded: boolean;
  readonly outcome: Outcome | null;
  /** The weight of this load was used: take the puppy off. */
  readonly taken: boolean;
  readonly fault: ScaleFault | null;
  /** Of this load, within the window. */
  readonly samples: readonly Sample[];
  readonly loadedAt: number;
  readonly steadySince: number | null;
  readonly emptySince: number | null;
  readonly lastAt: number | null;
  readonly stepGrams: number;
  /** Whether weights come one after another. */
  readonly streams: boolean;
}

export const NOTHING_HEARD: Capture = {
  loaded: false,
  outcome: null,
  taken: false,
  fault: null,
  samples: [],
  loadedAt: 0,
  steadySince: null,
  emptySince: null,
  lastAt: null,
  stepGrams: 0,
  streams: false,
};

/** After a word of the scale. `stepGrams` is what she said that it moves by; null when she did not. */
export function hear(before: Capture, value: ScaleValue, at: number, stepGrams: number | null): Capture {
  const gap = before.lastAt === null ? Number.POSITIVE_INFINITY : at - before.lastAt;
  const c: Capture = { ...before, lastAt: at, streams: before.streams || gap < STREAM_MS, fault: null };
  if (value.kind === 'fault') {
    const heard = { ...c, fault: value.fault };
    return value.fault === 'under-zero' ? light(heard, at, false) : heard;
  }
  if (value.kind === 'zero') return light(c, at, true);
  if (value.grams < PUPPY_FROM) return light(c, at, false);
  const anew = !c.loaded || (!c.streams && gap >= STREAM_MS);
  const on: Capture = anew
    ? { ...c, loaded: true, outcome: null, taken: false, samples: [], loadedAt: at, steadySince: null }
    : c;
  const samples = [...on.samples.filter((s) => s.at > at - WINDOW_MS), { at, grams: value.grams, stable: value.stable }];
  return judged({ ...on, samples, emptySince: null, stepGrams: Math.max(stepGrams ?? 0, value.stepGrams) }, at);
}

/** After a while without a word: a scale that only speaks when something changes has said its last one. */
export function pass(c: Capture, now: number): Capture {
  const last = c.samples.at(-1);
  if (c.emptySince !== null) return now - c.emptySince >= EMPTY_MS && c.loaded ? emptied(c) : c;
  if (!c.loaded || c.taken || c.outcome?.steady === true || last === undefined || c.lastAt === null) return c;
  const silent = now - c.lastAt;
  if (last.stable === true && silent >= STEADY_MS) return { ...c, outcome: { grams: last.grams, spread: 0, steady: true } };
  if (last.stable === null && !c.streams && silent >= STREAM_MS)
    return { ...c, outcome: { grams: last.grams, spread: 0, steady: true } };
  return c.outcome === null && now - c.loadedAt >= OFFER_MS ? offered(c) : c;
}

/** The weight was used: nothing more of this load. */
export function take(c: Capture): Capture {
  return { ...c, outcome: null, taken: c.loaded };
}

/** From now on only: what was heard before nobody was weighing is let go. A weight that was used stays used. */
export function afresh(c: Capture): Capture {
  return { ...c, outcome: null, samples: [], steadySince: null, loadedAt: c.lastAt ?? 0 };
}

function judged(c: Capture, now: number): Capture {
  if (c.taken || c.outcome?.steady === true) return c;
  const first = c.samples[0];
  if (first === undefined || c.samples.length < FEWEST) return c;
  const figure = figureOf(c.samples.map((s) => s.grams));
  const holds = figure.spread <= steadyBand(figure.grams, c.stepGrams);
  const steadySince = holds ? (c.steadySince ?? now) : null;
  const moving = c.samples.at(-1)?.stable === false;
  if (steadySince !== null && !moving && now - steadySince >= STEADY_MS) {
    return { ...c, steadySince, outcome: { ...figure, steady: true } };
  }
  const waiting = { ...c, steadySince };
  if (c.outcome === null) return now - c.loadedAt >= OFFER_MS ? offered(waiting) : waiting;
  // An offer stands still to be read until the puppy has clearly moved away from it.
  return Math.abs(figure.grams - c.outcome.grams) > steadyBand(figure.grams, c.stepGrams) ? offered(waiting) : waiting;
}

function offered(c: Capture): Capture {
  return c.samples.length === 0 ? c : { ...c, outcome: { ...figureOf(c.samples.map((s) => s.grams)), steady: false } };
}

/** Less than a puppy on it. At the centre of zero it is empty at once, else after a moment. */
function light(c: Capture, at: number, certain: boolean): Capture {
  const emptySince = c.emptySince ?? at;
  const heard = { ...c, emptySince };
  return c.loaded && (certain || at - emptySince >= EMPTY_MS) ? emptied(heard) : heard;
}

/** What was offered or settled and not used yet may still be answered with the puppy back in the box. */
function emptied(c: Capture): Capture {
  return { ...c, loaded: false, taken: false, samples: [], steadySince: null };
}
