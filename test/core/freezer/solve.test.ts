import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SolveInput } from '../../../core/freezer/problem.ts';
import { oldestFirstPlan, solve } from '../../../core/freezer/solve.ts';
import { largeFreezer, MEALS, smallFreezer } from './arbitrary.ts';
import { leastOf } from './brute.ts';

const DAY = 1440;
const canBeThawed = (input: SolveInput, need: number) =>
  input.portions.some((p) => (input.needs[need]?.at ?? 0) - input.aheadOf(p.tenths) >= input.now);

function shortWhereHelpWasPossible(input: SolveInput, plan: ReturnType<typeof solve>): number {
  return plan.short.filter((s) => canBeThawed(input, s.need)).reduce((sum, s) => sum + s.tenths, 0);
}

describe('the solver', () => {
  it('is as good as trying every plan there is', () => {
    fc.assert(
      fc.property(smallFreezer, (input) => {
        const plan = solve(input);
        expect(plan.exact).toBe(true);
        expect({ shortTenths: shortWhereHelpWasPossible(input, plan), wasteTenths: plan.wasteTenths }).toEqual(leastOf(input));
      }),
      { numRuns: 400 },
    );
  });

  it('is never worse than oldest first, and says truly how much better it could be', () => {
    fc.assert(
      fc.property(largeFreezer({ days: 30, packs: 60 }), (input) => {
        const [plan, plain] = [solve(input), oldestFirstPlan(input)];
        expect(plan.shortTenths).toBeLessThanOrEqual(plain.shortTenths);
        if (plan.shortTenths === plain.shortTenths) expect(plan.wasteTenths).toBeLessThanOrEqual(plain.wasteTenths);
        expect(plan.atLeastTenths).toBeLessThanOrEqual(plan.wasteTenths);
      }),
      { numRuns: 60 },
    );
  });

  it('opens nothing twice, everything in time, and feeds nothing over its time', () => {
    fc.assert(
      fc.property(fc.oneof(smallFreezer, largeFreezer({ days: 20, packs: 40 })), (input) => {
        const plan = solve(input);
        expect(new Set(plan.openings.map((o) => o.portion)).size).toBe(plan.openings.length);
        for (const [i, o] of plan.openings.entries()) {
          const portion = input.portions[o.portion];
          if (portion === undefined) throw new Error('no such portion');
          expect(o.moved).toBeGreaterThanOrEqual(input.now);
          expect(o.ready - o.moved).toBe(input.aheadOf(portion.tenths));
          const uses = plan.served.uses[input.thawed.length + i] ?? [];
          // Of two portions opened for one meal the heavier may be ready, and so eaten, before the other.
          if (input.aheadOf(1) === input.aheadOf(9999)) expect(uses[0]?.need ?? Number.NaN).toBeLessThanOrEqual(o.need);
          for (const u of uses) {
            const { at } = input.needs[u.need] ?? { at: 0 };
            expect(at >= o.ready && at <= o.useBy).toBe(true);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  it('takes the older of two equal portions first', () => {
    fc.assert(
      fc.property(largeFreezer({ days: 20, packs: 40 }), (input) => {
        const taken = solve(input).openings.map((o) => o.portion);
        const bySize = Map.groupBy(taken, (p) => input.portions[p]?.tenths ?? 0);
        for (const portions of bySize.values()) expect(portions).toEqual([...portions].sort((a, b) => a - b));
      }),
      { numRuns: 60 },
    );
  });

  it('takes the oldest of all where that costs nothing', () => {
    fc.assert(
      fc.property(largeFreezer({ days: 20, packs: 40 }), (input) => {
        const [plan, plain] = [solve(input), oldestFirstPlan(input)];
        if (plan.exact && plain.wasteTenths === plan.wasteTenths && plain.shortTenths === plan.shortTenths)
          expect(plan.openings).toEqual(plain.openings);
      }),
      { numRuns: 60 },
    );
  });

  it('never brings a portion to its first meal after its last day', () => {
    fc.assert(
      fc.property(
        largeFreezer({ days: 20, packs: 40 }),
        fc.array(fc.nat({ max: 25 }), { minLength: 40, maxLength: 40 }),
        (input, days) => {
          const lastDays = days.sort((a, b) => a - b);
          const portions = input.portions.map((p, i) => ({ ...p, lastDay: 100 + (lastDays[i] ?? 0) }));
          const plan = solve({ ...input, portions });
          for (const o of plan.openings)
            expect(portions[o.portion]?.lastDay).toBeGreaterThanOrEqual(Math.floor((input.needs[o.need]?.at ?? 0) / DAY));
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a small dog and a pound block', () => {
  const kitchen = (portions: number): SolveInput => ({
    now: 100 * DAY + 8 * 60,
    needs: Array.from({ length: 12 }, (_, i) => ({ at: (102 + Math.floor(i / 3)) * DAY + (MEALS[i % 3] ?? 0), tenths: 400 })),
    thawed: [],
    portions: Array.from({ length: 3 * portions }, (_, i) => ({
      id: `pack-${Math.floor(i / portions)}`,
      tenths: Math.floor(4540 / portions),
      lastDay: null,
    })),
    aheadOf: () => DAY,
    keepMinutes: DAY,
    moveAt: MEALS,
    until: 120 * DAY,
  });

  it('throws most of it away whole', () => {
    // 120 g a day: a block that keeps a day feeds four meals of 40 g, and 294 g of it are thrown away.
    expect(solve(kitchen(1)).wasteTenths).toBe(3 * 4540 - 4800);
  });

  it('throws nothing away cut in four', () => {
    const plan = solve(kitchen(4));
    expect(plan.shortTenths).toBe(0);
    expect(plan.served.over.every((over, i) => over === 0 || i === plan.openings.length - 1)).toBe(true);
  });
});
