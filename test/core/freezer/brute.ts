/**
 * All plans there are, tried one by one: each portion is opened for any meal, needed or not, or for none. Knows nothing of the solver's
 * shortcuts (nothing is opened early, equal sizes are alike, one leftover at a time); shares with it only the feeding from what is thawed.
 */
import type { SolveInput } from '../../../core/freezer/problem.ts';
import { type Batch, serve } from '../../../core/freezer/serve.ts';

export interface Least {
  readonly shortTenths: number;
  readonly wasteTenths: number;
}

export function leastOf(input: SolveInput): Least {
  let best: Least | null = null;
  const opened: (number | null)[] = [];
  const goOn = () => {
    if (opened.length === input.portions.length) {
      const outcome = outcomeOf(input, opened);
      if (outcome !== null && (best === null || better(outcome, best))) best = outcome;
      return;
    }
    const portion = input.portions[opened.length];
    if (portion === undefined) return;
    for (const choice of [null, ...input.needs.keys()]) {
      if (choice !== null && !canBe(input, portion.tenths, choice)) continue;
      opened.push(choice);
      goOn();
      opened.pop();
    }
  };
  goOn();
  if (best === null) throw new Error('there is always the plan that opens everything in time');
  return best;
}

function better(a: Least, b: Least): boolean {
  return a.shortTenths < b.shortTenths || (a.shortTenths === b.shortTenths && a.wasteTenths < b.wasteTenths);
}

function canBe(input: SolveInput, tenths: number, need: number): boolean {
  return (input.needs[need]?.at ?? 0) - input.aheadOf(tenths) >= input.now;
}

/** Null when a meal goes short although a portion that is never opened, or opened later, could have been thawed for it. */
function outcomeOf(input: SolveInput, opened: readonly (number | null)[]): Least | null {
  const batches: Batch[] = [...input.thawed];
  for (const [i, need] of opened.entries()) {
    const portion = input.portions[i];
    const at = need === null ? undefined : input.needs[need]?.at;
    if (portion === undefined || at === undefined) continue;
    const ahead = input.aheadOf(portion.tenths);
    const latest = at - ahead;
    let moved = Math.min(input.now, latest);
    for (let day = Math.floor(latest / 1440) - 2; day * 1440 <= latest; day += 1)
      for (const clock of input.moveAt) if (day * 1440 + clock <= latest) moved = Math.max(moved, day * 1440 + clock);
    if (moved + ahead + input.keepMinutes < at) moved = latest;
    batches.push({ tenths: portion.tenths, ready: moved + ahead, useBy: moved + ahead + input.keepMinutes });
  }
  const served = serve(input.needs, batches);
  let shortTenths = 0;
  for (const [n, lacking] of served.lacking.entries()) {
    const need = input.needs[n];
    if (lacking === 0 || need === undefined || need.at < input.now) continue;
    const first = input.portions.some((p) => canBe(input, p.tenths, n));
    if (first) shortTenths += lacking;
    const spare = opened.some((o, i) => (o === null || o > n) && canBe(input, input.portions[i]?.tenths ?? 0, n));
    if (spare) return null;
  }
  let wasteTenths = 0;
  for (const [i, over] of served.over.entries()) if ((batches[i]?.useBy ?? 0) <= input.until) wasteTenths += over;
  return { shortTenths, wasteTenths };
}
