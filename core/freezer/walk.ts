/** The states of a thaw plan and the steps between them; oldest-first walked straight through. */
import { DAY_MINUTES } from '../calendar/durations.ts';
import type { SolveInput } from './problem.ts';
import { at } from './serve.ts';

/** More than all that is ever wasted, so that a tenth of a gram short counts more than any waste. */
export const SHORT_COUNTS = 1e7;

/** Portions of one size, the oldest first. */
export interface Size {
  readonly tenths: number;
  readonly ahead: number;
  /** Places in the list of portions. */
  readonly places: readonly number[];
  /** First meal that can be thawed for from now on. */
  readonly firstNeed: number;
  /** For each meal from there on: until when a portion taken out for it may be fed. */
  readonly useBy: Float64Array;
}

export interface Task {
  readonly input: SolveInput;
  /** What the meals lack once all that was thawed before is eaten; nothing for meals that can't be helped. */
  readonly lacks: readonly number[];
  /** Sum of `lacks` before each meal. */
  readonly sums: readonly number[];
  readonly sizes: readonly Size[];
}

/** A place on the walk: the meal that lacks something, and how much of each size is gone. */
export interface State {
  readonly need: number;
  readonly lacks: number;
  readonly gone: Uint16Array;
  readonly cost: number;
  readonly supply: number;
  readonly from: State | null;
  /** The portion that was opened to come here, and for which meal; -1 when a meal was left short. */
  readonly opened: number;
  readonly openedFor: number;
}

export function taskOf(input: SolveInput, lacking: readonly number[]): Task {
  const bySize = new Map<number, number[]>();
  for (const [place, p] of input.portions.entries()) {
    const places = bySize.get(p.tenths);
    if (places === undefined) bySize.set(p.tenths, [place]);
    else places.push(place);
  }
  const sizes = [...bySize].map(([tenths, places]): Size => {
    const ahead = input.aheadOf(tenths);
    const found = input.needs.findIndex((n) => n.at - ahead >= input.now);
    const firstNeed = found < 0 ? input.needs.length : found;
    const useBy = new Float64Array(input.needs.length);
    for (let n = firstNeed; n < useBy.length; n += 1) useBy[n] = movedFor(input, n, ahead) + ahead + input.keepMinutes;
    return { tenths, ahead, places, firstNeed, useBy };
  });
  const first = Math.min(input.needs.length, ...sizes.map((s) => s.firstNeed));
  const lacks = lacking.map((tenths, i) => (i < first ? 0 : tenths));
  const sums = [0];
  for (const tenths of lacks) sums.push(at(sums, sums.length - 1) + tenths);
  return { input, lacks, sums, sizes };
}

/**
 * When a portion has to be moved for a meal: at the last time of day for it; now if that time has just gone by; to the minute if it would be
 * over its time by the meal otherwise.
 */
export function movedFor(input: SolveInput, need: number, ahead: number): number {
  const latest = at(input.needs, need).at - ahead;
  const midnight = Math.floor(latest / DAY_MINUTES) * DAY_MINUTES;
  let best = midnight - DAY_MINUTES + at(input.moveAt, input.moveAt.length - 1);
  for (const clock of input.moveAt) if (midnight + clock <= latest) best = midnight + clock;
  if (best + ahead + input.keepMinutes < at(input.needs, need).at) return latest;
  return Math.max(best, input.now);
}

/** Where the walk goes on once a portion is opened for a meal and is more than it lacks: the next meal that lacks something, and the waste. */
export function goOn(task: Task, need: number, over: number, size: Size) {
  const { input, sums } = task;
  const useBy = at(size.useBy, need);
  const eatenUp = at(sums, need + 1) + over;
  let last = need;
  for (let i = need + 1; i < input.needs.length && at(input.needs, i).at <= useBy; i += 1) {
    if (at(sums, i + 1) > eatenUp) return { need: i, lacks: at(sums, i + 1) - eatenUp, waste: 0 };
    last = i;
  }
  const { need: next, lacks } = firstLacking(task, last + 1);
  return { need: next, lacks, waste: useBy > input.until ? 0 : eatenUp - at(sums, last + 1) };
}

export function firstLacking(task: Pick<Task, 'lacks'>, from: number): { need: number; lacks: number } {
  for (let i = from; i < task.lacks.length; i += 1) if (at(task.lacks, i) > 0) return { need: i, lacks: at(task.lacks, i) };
  return { need: task.lacks.length, lacks: 0 };
}

export interface Walk {
  readonly start: State;
  readonly end: State;
  readonly cost: number;
}

/** The oldest portion of a size that may still come to a meal; null when there is none. */
export function oldestOf(task: Task, state: State, size: number): number | null {
  const { firstNeed, places } = at(task.sizes, size);
  if (firstNeed > state.need) return null;
  const day = Math.floor(at(task.input.needs, state.need).at / DAY_MINUTES);
  for (let i = state.gone[size] ?? 0; i < places.length; i += 1) {
    const { lastDay } = at(task.input.portions, at(places, i));
    if (lastDay === null || lastDay >= day) return i;
  }
  return null;
}

function startOf(task: Task): State {
  const { need, lacks } = firstLacking(task, 0);
  const supply = task.input.portions.reduce((sum, p) => sum + p.tenths, 0);
  return { need, lacks, gone: new Uint16Array(task.sizes.length), cost: 0, supply, from: null, opened: -1, openedFor: -1 };
}

/** Opens the i-th portion of a size for the meal in hand. */
export function open(task: Task, state: State, size: number, i: number): State {
  const opened = at(task.sizes, size);
  const { tenths, places } = opened;
  const then =
    tenths < state.lacks
      ? { need: state.need, lacks: state.lacks - tenths, waste: 0 }
      : goOn(task, state.need, tenths - state.lacks, opened);
  const gone = state.gone.slice();
  gone[size] = i + 1;
  return {
    need: then.need,
    lacks: then.lacks,
    gone,
    cost: state.cost + then.waste,
    supply: state.supply - tenths,
    from: state,
    opened: at(places, i),
    openedFor: state.need,
  };
}

/** Nothing can be thawed for the meal in hand. */
export function leaveShort(task: Task, state: State): State {
  const then = firstLacking(task, state.need + 1);
  return { ...state, ...then, cost: state.cost + state.lacks * SHORT_COUNTS, from: state, opened: -1, openedFor: state.need };
}

export function walkOldestFirst(task: Task): Walk {
  const start = startOf(task);
  let state = start;
  while (state.need < task.lacks.length) {
    let best: { size: number; i: number; place: number } | null = null;
    for (let size = 0; size < task.sizes.length; size += 1) {
      const i = oldestOf(task, state, size);
      if (i === null) continue;
      const place = at(at(task.sizes, size).places, i);
      if (best === null || place < best.place) best = { size, i, place };
    }
    state = best === null ? leaveShort(task, state) : open(task, state, best.size, best.i);
  }
  return { start, end: state, cost: state.cost };
}
