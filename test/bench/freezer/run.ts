/**
 * `npm run bench:freezer`: the thaw list solved. Waste beside every plan there is (small kitchens) and beside oldest-first (large ones), and the time it takes.
 * Arguments: seed, small kitchens, large kitchens.
 */
import fc from 'fast-check';
import { localTime } from '../../../core/calendar/clock.ts';
import { addDays, date } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FREEZER, type Pack, packSchema } from '../../../core/freezer/pack.ts';
import { planFreezer } from '../../../core/freezer/plan.ts';
import type { PlanInput } from '../../../core/freezer/plan-shape.ts';
import { oldestFirstPlan, solve } from '../../../core/freezer/solve.ts';
import { largeFreezer, smallFreezer } from '../../core/freezer/arbitrary.ts';
import { leastOf } from '../../core/freezer/brute.ts';

const seed = Number(process.argv[2] ?? 2026);
const smallCount = Number(process.argv[3] ?? 1000);
const largeCount = Number(process.argv[4] ?? 1000);
const line = (what: string, figure: string) => console.log(`${what.padEnd(66)} ${figure}`);
const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / Math.max(1, list.length);
const grams = (tenths: readonly number[]) => `${(mean(tenths) / 10).toFixed(1)} g`;

function small(): void {
  const ours: number[] = [];
  const least: number[] = [];
  const plain: number[] = [];
  let differ = 0;
  let notExact = 0;
  for (const input of fc.sample(smallFreezer, { numRuns: smallCount, seed })) {
    const plan = solve(input);
    const best = leastOf(input);
    ours.push(plan.wasteTenths);
    least.push(best.wasteTenths);
    plain.push(oldestFirstPlan(input).wasteTenths);
    if (plan.wasteTenths !== best.wasteTenths) differ += 1;
    if (!plan.exact) notExact += 1;
  }
  line(`small kitchens: waste differs from trying every plan, of ${smallCount} (0)`, String(differ));
  line('small kitchens: not proved (0)', String(notExact));
  line('small kitchens: mean waste, ours / every plan / oldest first', `${grams(ours)} / ${grams(least)} / ${grams(plain)}`);
}

function large(): void {
  const ours: number[] = [];
  const plain: number[] = [];
  const times: number[] = [];
  let worse = 0;
  let better = 0;
  let proved = 0;
  for (const input of fc.sample(largeFreezer({ days: 60, packs: 200 }), { numRuns: largeCount, seed })) {
    const started = process.cpuUsage();
    const plan = solve(input);
    times.push(process.cpuUsage(started).user / 1000);
    const hand = oldestFirstPlan(input);
    ours.push(plan.wasteTenths);
    plain.push(hand.wasteTenths);
    if (plan.exact) proved += 1;
    if (plan.shortTenths > hand.shortTenths) worse += 1;
    else if (plan.shortTenths === hand.shortTenths) {
      if (plan.wasteTenths > hand.wasteTenths) worse += 1;
      if (plan.wasteTenths < hand.wasteTenths) better += 1;
    } else better += 1;
  }
  line(`large kitchens: worse than oldest first, of ${largeCount} (0)`, String(worse));
  line('large kitchens: better than oldest first', String(better));
  line('large kitchens: proved the least', String(proved));
  line('large kitchens: mean waste, ours / oldest first', `${grams(ours)} / ${grams(plain)}`);
  line(
    'large kitchens: one food, 200 portions, 60 days: mean / slowest',
    `${mean(times).toFixed(1)} ms / ${Math.max(...times).toFixed(0)} ms`,
  );
}

const TODAY = date('2026-11-26');

/** A house with so many foods and packs, each food eaten by one litter or dog in three meals. Sizes and amounts differ, and are the same every time. */
function house(days: number, foods: number, packCount: number): PlanInput {
  const sizes = [[500], [454, 1000], [250, 500], [1000]];
  const ids = Array.from({ length: foods }, (_, f) => `food-number-${String(f).padStart(2, '0')}`);
  const packs = Array.from({ length: packCount }, (_, i): Pack => {
    const own = sizes[(i % foods) % sizes.length] ?? [500];
    const portions = i % 3 === 0 ? 4 : 1;
    return packSchema.parse({
      id: `pack-${String(i).padStart(8, '0')}`,
      foodId: ids[i % foods],
      grams: own[Math.floor(i / foods) % own.length],
      portions,
      frozenOn: addDays(TODAY, -(i % 60)),
      bestBefore: null,
      price: 4,
      place: '',
      addedInstant: i,
      left: portions,
      gone: null,
      goneOn: null,
    });
  });
  const demand = ids.flatMap((foodId, f) =>
    Array.from({ length: days + 4 }, (_, d) => {
      const meal = 15 + ((f * 37 + d * 3) % 90);
      const day = addDays(TODAY, d - 3);
      return ['07:00', '12:30', '18:00'].map((clock) => ({ foodId, day, clock, grams: meal, who: `eater ${f}`, litterId: null }));
    }).flat(),
  );
  return {
    now: localTime('2026-11-26T08:10'),
    untilDay: addDays(TODAY, days - 1),
    rules: DEFAULT_RULES,
    settings: DEFAULT_FREEZER,
    packs,
    thaws: [],
    starters: [],
    demand,
  };
}

/** Time of the processor, so that other programs at work on the machine don't count; the fastest of seven. */
function fastest(input: PlanInput): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 7; i += 1) {
    const started = process.cpuUsage();
    planFreezer(input);
    best = Math.min(best, process.cpuUsage(started).user / 1000);
  }
  return best;
}

function speed(): void {
  line('60 days × 20 foods × 200 packs, whole plan (< 100 ms)', `${fastest(house(60, 20, 200)).toFixed(0)} ms`);
  line('60 days × 20 foods × 4 000 packs', `${fastest(house(60, 20, 4000)).toFixed(0)} ms`);
  const steps = [15, 30, 60, 120];
  const times = steps.map((days) => fastest(house(days, 20, 200)));
  for (const [i, days] of steps.entries()) line(`  ${days} days × 20 foods × 200 packs`, `${(times[i] ?? 0).toFixed(1)} ms`);
  const plenty = steps.map((days) => fastest(house(days, 20, days * 20)));
  for (const [i, days] of steps.entries())
    line(`  ${days} days × 20 foods, packs for all of them`, `${(plenty[i] ?? 0).toFixed(1)} ms`);
  line('  growth from 60 to 120 days (≤ 2 is linear)', ((plenty[3] ?? 0) / (plenty[2] ?? 1)).toFixed(2));
}

small();
large();
speed();
