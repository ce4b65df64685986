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
import type { Opening, Short, Solution, SolveInput } from './problem.ts';
import { type Found, promiseOf, search } from './search.ts';
import { at, type Batch, type Served, serve } from './serve.ts';
import { movedFor, SHORT_COUNTS, type State, type Task, taskOf, walkOldestFirst } from './walk.ts';

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
