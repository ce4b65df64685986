/** The search for the plan that wastes least, from the plain one as the one to beat. */

import { DAY_MINUTES } from '../calendar/durations.ts';
import { at } from './serve.ts';
import { StateHeap } from './state-heap.ts';
import { VisitedStates } from './visited-states.ts';
import { goOn, leaveShort, oldestOf, open, SHORT_COUNTS, type State, type Task, type Walk } from './walk.ts';

/** Ways on that are looked at before the search gives up proving, and before the bound stops being made tighter. */
const MOST_WAYS = 4_000;
const MOST_BOUND_WAYS = 8_000;
/** Where proving was given up: so many states are kept at each meal, and so many of the oldest sizes are tried from each. */
const KEPT = 6;
const TRIED = 6;
/** With more sizes than this the best-first search has no hope, so it isn't begun. */
const MOST_SIZES = 12;

/** Least waste from a meal on, until the meal `until`, if there were any number of each size. */
function boundOf(task: Task, until: number): (need: number, lacks: number) => number {
  const known = new Map<number, number>();
  let ways = 0;
  const bound = (need: number, lacks: number): number => {
    if (need >= until) return 0;
    const key = need * 4_194_304 + lacks;
    const before = known.get(key);
    if (before !== undefined) return before;
    // Giving up makes the bound looser, never wrong.
    if (ways >= MOST_BOUND_WAYS) return 0;
    known.set(key, 0);
    let least = Number.POSITIVE_INFINITY;
    for (const size of task.sizes) {
      ways += 1;
      if (size.firstNeed > need) continue;
      const then =
        size.tenths < lacks ? { need, lacks: lacks - size.tenths, waste: 0 } : goOn(task, need, size.tenths - lacks, size);
      if (then.waste >= least) continue;
      least = Math.min(least, then.waste + bound(then.need, then.lacks));
      if (least === 0) break;
    }
    if (!Number.isFinite(least)) least = 0;
    known.set(key, least);
    return least;
  };
  return bound;
}

/**
 * What a state promises: its cost so far and the least that can still come. Where there is less than is wanted, every tenth wasted is a tenth
 * short as well; and a plan that is better than the plain one eats all but what the plain one wastes, so the bound on waste holds that far.
 * It holds nowhere when some portions can't come to every meal: then a meal may go short with something left.
 */
export function promiseOf(task: Task, plain: Walk): (state: State) => number {
  const { supply } = plain.start;
  const plainWaste = plain.cost % SHORT_COUNTS;
  let until = task.lacks.length;
  const lacksSome = shortBound(task, plain.start) > 0;
  if (lacksSome) {
    if (!isAllForAll(task)) until = 0;
    while (until > 0 && at(task.sums, until) > supply - plainWaste) until -= 1;
  }
  const bound = boundOf(task, until);
  return (state) => {
    const short = shortBound(task, state);
    // Where enough was there at first and waste has made it too little, the bound knows nothing of the meals that go short.
    const waste = short > 0 && !lacksSome ? 0 : bound(state.need, state.lacks);
    return state.cost + waste + (short > 0 ? (short + waste) * SHORT_COUNTS : 0);
  };
}

/** Whether every portion could come to every meal that lacks something. */
function isAllForAll({ input, sizes, lacks }: Task): boolean {
  const lastDay = Math.floor((input.needs.at(-1)?.at ?? 0) / DAY_MINUTES);
  const first = lacks.findIndex((tenths) => tenths > 0);
  return sizes.every((s) => s.firstNeed <= first) && input.portions.every((p) => p.lastDay === null || p.lastDay >= lastDay);
}

/** Tenths that must stay short from a state on: more is wanted than there is. */
function shortBound(task: Task, state: State): number {
  if (state.need >= task.lacks.length) return 0;
  const wanted = state.lacks + at(task.sums, task.sums.length - 1) - at(task.sums, state.need + 1);
  return Math.max(0, wanted - state.supply);
}

export interface Found {
  readonly end: State;
  readonly exact: boolean;
  readonly atLeast: number;
}

/** Best first, from the plain plan as the one to beat. Of states that promise the same, the one reached last with the oldest portion is next. */
export function search(task: Task, plain: Walk, promise: (state: State) => number): Found {
  const heap = new StateHeap();
  const visited = new VisitedStates(task);
  heap.push(plain.start, promise(plain.start));
  for (let ways = 0; ways < MOST_WAYS && task.sizes.length <= MOST_SIZES; ) {
    const top = heap.pop();
    if (top === null || top.promise >= plain.cost) return { end: plain.end, exact: true, atLeast: plain.cost };
    if (top.state.need >= task.lacks.length) return { end: top.state, exact: true, atLeast: top.state.cost };
    const next = onward(task, top.state);
    ways += next.length;
    for (const s of next) {
      if (visited.isNoBetter(s)) continue;
      const p = promise(s);
      if (p < plain.cost) heap.push(s, p);
    }
  }
  const atLeast = Math.min(heap.pop()?.promise ?? plain.cost, plain.cost);
  const end = narrowSearch(task, plain);
  return { end, exact: end.cost <= atLeast, atLeast };
}

/** Meal by meal with the few best states only, and from each the few oldest sizes and those that fit the meal best. */
function narrowSearch(task: Task, plain: Walk): State {
  const waiting: State[][] = task.lacks.map(() => []);
  let best = plain.end;
  const put = (s: State) => {
    if (s.need < task.lacks.length) at(waiting, s.need).push(s);
    else if (s.cost < best.cost) best = s;
  };
  put(plain.start);
  for (const here of waiting) {
    while (here.length > 0) {
      const few = here.splice(0).filter((s) => s.cost < best.cost);
      few.sort((a, b) => a.cost - b.cost || b.lacks - a.lacks);
      for (const s of few.slice(0, KEPT)) for (const way of fewOnward(task, s)) put(way);
    }
  }
  return best;
}

function fewOnward(task: Task, state: State): State[] {
  const all: { size: number; i: number; place: number }[] = [];
  let fits: (typeof all)[number] | null = null;
  let largest: (typeof all)[number] | null = null;
  for (const [size, { tenths, places }] of task.sizes.entries()) {
    const i = oldestOf(task, state, size);
    if (i === null) continue;
    const way = { size, i, place: at(places, i) };
    all.push(way);
    const sizeOf = (w: typeof way | null) => (w === null ? null : at(task.sizes, w.size).tenths);
    if (tenths >= state.lacks && tenths < (sizeOf(fits) ?? Number.POSITIVE_INFINITY)) fits = way;
    if (tenths > (sizeOf(largest) ?? 0)) largest = way;
  }
  if (all.length === 0) return [leaveShort(task, state)];
  const tried = new Set(all.sort((a, b) => a.place - b.place).slice(0, TRIED));
  for (const way of [fits, largest]) if (way !== null) tried.add(way);
  return [...tried].map((w) => open(task, state, w.size, w.i));
}

/** All ways on from a state, the oldest portion last, so that it is looked at first. */
function onward(task: Task, state: State): State[] {
  const ways: { place: number; state: State }[] = [];
  for (let size = 0; size < task.sizes.length; size += 1) {
    const i = oldestOf(task, state, size);
    if (i !== null) ways.push({ place: at(at(task.sizes, size).places, i), state: open(task, state, size, i) });
  }
  if (ways.length === 0) return [leaveShort(task, state)];
  return ways.sort((a, b) => b.place - a.place).map((w) => w.state);
}
