/** The room in the refrigerator, which all foods share. */
import { fromLocalMinutes, localMinutes } from '../calendar/clock.ts';
import { type Planned, solveInput } from './kitchen.ts';
import type { FreezerPlan, PlanInput } from './plan-shape.ts';
import { at } from './serve.ts';
import { solve } from './solve.ts';

/** What lies in the refrigerator just after each move, of all foods together. */
function fullness(solved: readonly Planned[], now: number): { at: number; grams: number }[] {
  const moves = [...new Set([now, ...solved.flatMap((p) => p.solution.openings.map((o) => o.moved))])].sort((a, b) => a - b);
  return moves.map((time) => ({ at: time, grams: solved.reduce((sum, p) => sum + gramsInside(p, time), 0) }));
}

function gramsInside({ kitchen, solution, portions }: Planned, time: number): number {
  const eaten = (b: number) =>
    at(solution.served.uses, b).reduce((sum, u) => sum + (at(kitchen.meals, u.need).at <= time ? u.tenths : 0), 0);
  let tenths = 0;
  for (const [b, t] of kitchen.thaws.entries()) {
    if (t.thaw.ended === null && t.batch.useBy >= time && localMinutes(t.thaw.at) <= time) tenths += t.batch.tenths - eaten(b);
  }
  for (const [i, o] of solution.openings.entries()) {
    if (o.moved <= time && o.useBy >= time) tenths += at(portions, o.portion).tenths - eaten(kitchen.thaws.length + i);
  }
  return tenths / 10;
}

export function tooFullOf(input: PlanInput, solved: readonly Planned[]): FreezerPlan['tooFull'] {
  const room = input.settings.roomGrams;
  if (room === null) return null;
  const first = fullness(solved, localMinutes(input.now)).find((f) => f.grams > room);
  return first === undefined ? null : { at: fromLocalMinutes(first.at), grams: first.grams };
}

/** Where it would not all fit, smaller portions first: less lies there that is not needed yet. Taken only where no more is thrown away. */
export function makeRoom(input: PlanInput, solved: readonly Planned[]): Planned[] {
  const room = input.settings.roomGrams;
  let best = [...solved];
  if (room === null) return best;
  const now = localMinutes(input.now);
  const peak = (plans: readonly Planned[]) => Math.max(0, ...fullness(plans, now).map((f) => f.grams));
  for (const [i, plan] of solved.entries()) {
    const before = peak(best);
    if (before <= room) break;
    const portions = [...plan.portions].sort((a, b) => a.tenths - b.tenths);
    const solution = solve(solveInput(plan.kitchen, portions, plan.kitchen.meals));
    if (solution.wasteTenths > plan.solution.wasteTenths || solution.shortTenths > plan.solution.shortTenths) continue;
    const eased = best.with(i, { ...plan, portions, solution });
    if (peak(eased) < before) best = eased;
  }
  return best;
}
