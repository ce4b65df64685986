/**
 * Which portions of one food to take out, and for which meal.
 *
 * **The problem.** Meals with a time and grams; portions in the freezer, the oldest first; each takes its time to thaw, may be moved only at
 * given times of day, and may be fed for a given time after that. Wanted, in this order: no meal goes short while a portion could be thawed
 * for it; as little as possible is short in all; as little as possible is thawed and not eaten; the oldest is taken where that costs nothing.
 *
 * **What makes it small.** Nothing is gained by taking a portion out before it is needed: later it has the same grams and a later end. So a
 * portion is opened only when what is thawed does not cover a meal, everything thawed before is then eaten up, and all that is left over
 * comes from the portion opened last. A plan is a walk over states (meal, grams it lacks, how many of each size are gone). Portions of one
 * size differ only in age, so within a size the oldest goes first.
 *
 * **The search.** Oldest-first is walked straight through. If it throws away no more than a bound that ignores how much there is of each size,
 * it is the answer: that is so in nearly every kitchen, in time that grows with the meals. Otherwise the states are searched best first (A*)
 * with that bound, which never says more than must be wasted, so the first walk that reaches the end is the best there is.
 *
 * **Limits.** With portions of every size and keeping times shorter than the gaps between meals, the problem is that of filling bins
 * (3-partition), for which no method is exact and quick always. Therefore the search has a limit of work; beyond it a narrow search meal by
 * meal takes over, and the best plan found is returned with `exact: false` and the least waste that is still possible. It never wastes more
 * than oldest-first.
 *
 * Times are minutes, masses tenths of a gram, all whole numbers.
 */
import { at, type Batch, type Need, type Served, serve } from './serve.ts';

export interface Portion {
  readonly id: string;
  readonly tenths: number;
  /** Last day (day number) on which it may come to its first meal; null for any. */
  readonly lastDay: number | null;
}

export interface SolveInput {
  readonly now: number;
  /** In order of time; those before `now` only eat from what is thawed. */
  readonly needs: readonly Need[];
  /** Thawed or thawing already. */
  readonly thawed: readonly Batch[];
  /** Oldest first. */
  readonly portions: readonly Portion[];
  /** Minutes from freezer to fed, by mass. */
  readonly aheadOf: (tenths: number) => number;
  readonly keepMinutes: number;
  /** Minutes of the day at which packs are moved, rising, at least one. */
  readonly moveAt: readonly number[];
  /** End of what is looked at. What is left over then and still good is not counted as waste. */
  readonly until: number;
}

/** A portion taken out for a meal. */
export interface Opening {
  /** Place in the list of portions. */
  readonly portion: number;
  /** Place in the list of needs: the meal it is needed for. */
  readonly need: number;
  readonly moved: number;
  readonly ready: number;
  readonly useBy: number;
}

export interface Short {
  readonly need: number;
  readonly tenths: number;
  /** There is some, but it can't be thawed in time; or there is none left. */
  readonly why: 'too-late' | 'none-left';
}

export interface Solution {
  readonly openings: readonly Opening[];
  /** Who eats what: first the batches that were thawed already, then the openings, in their order. */
  readonly served: Served;
  readonly short: readonly Short[];
  readonly shortTenths: number;
  /** Thawed and not eaten in its time, what was thawed already included. */
  readonly wasteTenths: number;
  /** Whether no plan of this kind wastes less. */
  readonly exact: boolean;
  /** The least waste that could still be possible; equal to `wasteTenths` when exact. */
  readonly atLeastTenths: number;
}

const DAY = 1440;
/** Ways on that are looked at before the search gives up proving, and before the bound stops being made tighter. */
const MOST_WAYS = 4_000;
const MOST_BOUND_WAYS = 8_000;
/** Where proving was given up: so many states are kept at each meal, and so many of the oldest sizes are tried from each. */
const KEPT = 6;
const TRIED = 6;
/** With more sizes than this the best-first search has no hope, so it isn't begun. */
const MOST_SIZES = 12;
/** More than all that is ever wasted, so that a tenth of a gram short counts more than any waste. */
const SHORT_COUNTS = 1e7;

export function solve(input: SolveInput): Solution {
  const before = serve(input.needs, input.thawed);
  const task = taskOf(input, before.lacking);
  const plain = walkOldestFirst(task);
  const promise = promiseOf(task, plain);
  const isLeast = plain.cost <= promise(plain.start);
  return solutionOf(input, task, isLeast ? { end: plain.end, exact: true, atLeast: plain.cost } : search(task, plain, promise));
}

/** Oldest first and nothing else: what a careful person does without reckoning. For comparison. */
export function oldestFirstPlan(input: SolveInput): Solution {
  const task = taskOf(input, serve(input.needs, input.thawed).lacking);
  const { end, cost } = walkOldestFirst(task);
  return solutionOf(input, task, { end, exact: false, atLeast: Math.min(cost, 0) });
}

/** Portions of one size, the oldest first. */
interface Size {
  readonly tenths: number;
  readonly ahead: number;
  /** Places in the list of portions. */
  readonly places: readonly number[];
  /** First meal that can be thawed for from now on. */
  readonly firstNeed: number;
  /** For each meal from there on: until when a portion taken out for it may be fed. */
  readonly useBy: Float64Array;
}

interface Task {
  readonly input: SolveInput;
  /** What the meals lack once all that was thawed before is eaten; nothing for meals that can't be helped. */
  readonly lacks: readonly number[];
  /** Sum of `lacks` before each meal. */
  readonly sums: readonly number[];
  readonly sizes: readonly Size[];
}

/** A place on the walk: the meal that lacks something, and how much of each size is gone. */
interface State {
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

function taskOf(input: SolveInput, lacking: readonly number[]): Task {
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
function movedFor(input: SolveInput, need: number, ahead: number): number {
  const latest = at(input.needs, need).at - ahead;
  const midnight = Math.floor(latest / DAY) * DAY;
  let best = midnight - DAY + at(input.moveAt, input.moveAt.length - 1);
  for (const clock of input.moveAt) if (midnight + clock <= latest) best = midnight + clock;
  if (best + ahead + input.keepMinutes < at(input.needs, need).at) return latest;
  return Math.max(best, input.now);
}

/** Where the walk goes on once a portion is opened for a meal and is more than it lacks: the next meal that lacks something, and the waste. */
function goOn(task: Task, need: number, over: number, size: Size) {
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

function firstLacking(task: Pick<Task, 'lacks'>, from: number): { need: number; lacks: number } {
  for (let i = from; i < task.lacks.length; i += 1) if (at(task.lacks, i) > 0) return { need: i, lacks: at(task.lacks, i) };
  return { need: task.lacks.length, lacks: 0 };
}

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

interface Walk {
  readonly start: State;
  readonly end: State;
  readonly cost: number;
}

/**
 * What a state promises: its cost so far and the least that can still come. Where there is less than is wanted, every tenth wasted is a tenth
 * short as well; and a plan that is better than the plain one eats all but what the plain one wastes, so the bound on waste holds that far.
 * It holds nowhere when some portions can't come to every meal: then a meal may go short with something left.
 */
function promiseOf(task: Task, plain: Walk): (state: State) => number {
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
  const lastDay = Math.floor((input.needs.at(-1)?.at ?? 0) / DAY);
  const first = lacks.findIndex((tenths) => tenths > 0);
  return sizes.every((s) => s.firstNeed <= first) && input.portions.every((p) => p.lastDay === null || p.lastDay >= lastDay);
}

/** Tenths that must stay short from a state on: more is wanted than there is. */
function shortBound(task: Task, state: State): number {
  if (state.need >= task.lacks.length) return 0;
  const wanted = state.lacks + at(task.sums, task.sums.length - 1) - at(task.sums, state.need + 1);
  return Math.max(0, wanted - state.supply);
}

/** The oldest portion of a size that may still come to a meal; null when there is none. */
function oldestOf(task: Task, state: State, size: number): number | null {
  const { firstNeed, places } = at(task.sizes, size);
  if (firstNeed > state.need) return null;
  const day = Math.floor(at(task.input.needs, state.need).at / DAY);
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
function open(task: Task, state: State, size: number, i: number): State {
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
function leaveShort(task: Task, state: State): State {
  const then = firstLacking(task, state.need + 1);
  return { ...state, ...then, cost: state.cost + state.lacks * SHORT_COUNTS, from: state, opened: -1, openedFor: state.need };
}

function walkOldestFirst(task: Task): Walk {
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

interface Found {
  readonly end: State;
  readonly exact: boolean;
  readonly atLeast: number;
}

/** Best first, from the plain plan as the one to beat. Of states that promise the same, the one reached last with the oldest portion is next. */
function search(task: Task, plain: Walk, promise: (state: State) => number): Found {
  const heap = new Heap();
  const seen = new Seen(task);
  heap.push(plain.start, promise(plain.start));
  for (let ways = 0; ways < MOST_WAYS && task.sizes.length <= MOST_SIZES; ) {
    const top = heap.pop();
    if (top === null || top.promise >= plain.cost) return { end: plain.end, exact: true, atLeast: plain.cost };
    if (top.state.need >= task.lacks.length) return { end: top.state, exact: true, atLeast: top.state.cost };
    const next = onward(task, top.state);
    ways += next.length;
    for (const s of next) {
      if (seen.isNoBetter(s)) continue;
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

function solutionOf(input: SolveInput, task: Task, { end, exact, atLeast }: Found): Solution {
  const openings: Opening[] = [];
  for (let s: State | null = end; s !== null; s = s.from) {
    if (s.opened < 0) continue;
    const ahead = input.aheadOf(at(input.portions, s.opened).tenths);
    const moved = movedFor(input, s.openedFor, ahead);
    const ready = moved + ahead;
    openings.push({ portion: s.opened, need: s.openedFor, moved, ready, useBy: ready + input.keepMinutes });
  }
  openings.reverse();
  const batches = openings.map((o) => ({ tenths: at(input.portions, o.portion).tenths, ready: o.ready, useBy: o.useBy }));
  const all: readonly Batch[] = [...input.thawed, ...batches];
  const served = serve(input.needs, all);
  const short = shortOf(input, task, served);
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  const wasted = served.over.map((tenths, i) => (at(all, i).useBy > input.until ? 0 : tenths));
  const waste = sum(wasted);
  return {
    openings,
    served,
    short,
    shortTenths: sum(short.map((s) => s.tenths)),
    wasteTenths: waste,
    exact,
    atLeastTenths: exact ? waste : Math.min(waste, sum(wasted.slice(0, input.thawed.length)) + (atLeast % SHORT_COUNTS)),
  };
}

function shortOf(input: SolveInput, task: Task, served: Served): Short[] {
  const any = input.portions.length > 0;
  return served.lacking.flatMap((tenths, need): Short[] => {
    if (tenths === 0 || at(input.needs, need).at < input.now) return [];
    const first = Math.min(...task.sizes.map((s) => s.firstNeed));
    return [{ need, tenths, why: any && need < first ? 'too-late' : 'none-left' }];
  });
}

/**
 * States that were reached before. Of two that are at the same meal with the same portions gone, the one that wasted less also lacks that much
 * less, and can do all that the other can: it is no worse.
 */
class Seen {
  private readonly byNeed: Map<number | string, number>[];
  private readonly radix: readonly number[];
  private readonly isSmall: boolean;

  constructor(task: Task) {
    this.byNeed = task.lacks.map(() => new Map());
    this.radix = task.sizes.map((s) => s.places.length + 1);
    this.isSmall = this.radix.reduce((product, r) => product * r, 1) < Number.MAX_SAFE_INTEGER;
  }

  /** Whether such a state was reached at no greater cost. Remembers it when not. */
  isNoBetter(s: State): boolean {
    const known = this.byNeed[s.need];
    if (known === undefined) return false;
    const key = this.keyOf(s);
    const before = known.get(key);
    if (before !== undefined && before <= s.cost) return true;
    known.set(key, s.cost);
    return false;
  }

  private keyOf(s: State): number | string {
    // After a meal that went short the argument doesn't hold.
    if (!this.isSmall || s.cost >= SHORT_COUNTS) return `${s.lacks},${s.gone.join()}`;
    let code = 0;
    for (const [size, r] of this.radix.entries()) code = code * r + (s.gone[size] ?? 0);
    return code;
  }
}

/** States by what they promise, and of equal ones the latest put in. */
class Heap {
  private readonly items: { state: State; promise: number; turn: number }[] = [];
  private turn = 0;

  push(state: State, promise: number): void {
    this.turn += 1;
    this.items.push({ state, promise, turn: this.turn });
    let i = this.items.length - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!this.before(i, up)) break;
      this.swap(i, up);
      i = up;
    }
  }

  pop(): { state: State; promise: number } | null {
    const [top] = this.items;
    const last = this.items.pop();
    if (top === undefined || last === undefined) return null;
    if (this.items.length === 0) return top;
    this.items[0] = last;
    let i = 0;
    for (;;) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < this.items.length && this.before(child, least)) least = child;
      if (least === i) return top;
      this.swap(i, least);
      i = least;
    }
  }

  private before(a: number, b: number): boolean {
    const [x, y] = [at(this.items, a), at(this.items, b)];
    return x.promise === y.promise ? x.turn > y.turn : x.promise < y.promise;
  }

  private swap(a: number, b: number): void {
    const [x, y] = [at(this.items, a), at(this.items, b)];
    this.items[a] = y;
    this.items[b] = x;
  }
}
