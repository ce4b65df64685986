/**
 * How long the assessment takes, beside the simplest thing that answers the same question (a loss against yesterday of 3 %).
 * A litter of fourteen through nine weeks; medians of several runs. Measured, never asserted.
 */
import { assessLitter } from '../../../core/growth/assess.ts';
import { doubtAbout } from '../../../core/growth/doubt.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { sessionsOf } from '../../../core/growth/sessions.ts';
import { median } from '../../../core/statistics/median.ts';
import { HAND_RULES } from '../../growth-sim/rules.ts';
import { simulate } from '../../growth-sim/simulate.ts';

const RUNS = 7;
const { input } = simulate('healthy', 9, { puppies: 14, days: 63 });
const sessions = sessionsOf(input);
const [puppy] = input.puppies;
const last = sessions.at(-1)?.rows.at(-1)?.reading;
if (puppy === undefined || last === undefined) throw new Error('the litter is empty');

function medianTime(what: (run: number) => unknown): string {
  const times = Array.from({ length: RUNS }, (_, run) => {
    const started = performance.now();
    what(run);
    return performance.now() - started;
  });
  return `${median(times).toFixed(2)} ms`.padStart(12);
}

/** Other facts each time, so that nothing is remembered. */
const fresh = (run: number): GrowthInput => ({ ...input, breed: `breed ${run} ${Math.floor(performance.now())}` });
const oneMore = (run: number): GrowthInput => ({
  ...input,
  readings: [...input.readings, { ...last, id: `more-${run}`, instant: last.instant + 3 * 3_600_000, grams: last.grams + run }],
});

console.log(`${input.puppies.length} puppies, ${sessions.length} sessions, ${input.readings.length} weights`);
console.log(`  loss against yesterday, all weights   ${medianTime(() => HAND_RULES['less than yesterday by 3 %']?.(input))}`);
console.log(`  assessment, nothing remembered        ${medianTime((run) => assessLitter(fresh(run)))}`);
console.log(`  assessment after one more weight      ${medianTime((run) => assessLitter(oneMore(run)))}`);
const [only] = input.puppies;
const [birth] = input.readings;
/** Ten thousand weights of one puppy in eight weeks. */
const dense = (run: number): GrowthInput => ({
  ...fresh(run),
  puppies: only === undefined ? [] : [only],
  readings: Array.from({ length: 10_000 }, (_, i) => {
    const instant = (birth?.instant ?? 0) + i * 484_000;
    const like = input.readings.findLast((r) => r.puppyId === only?.id && r.instant <= instant) ?? last;
    return { ...like, id: `dense-${String(i).padStart(5, '0')}`, instant };
  }),
});
const dense10 = Array.from({ length: RUNS }, (_, run) => dense(run));
console.log(`  10,000 weights of one puppy           ${medianTime((run) => assessLitter(dense10[run] ?? input))}`);
console.log(
  `  doubt at a key press                  ${medianTime((run) => doubtAbout(input, puppy.id, last.instant + 3 * 3_600_000, last.at, 100 * (run + 1)))}`,
);
