/** The plan of a litter of 12 for 60 days, beside the simplest thing that could work: each day asked for alone, from the first bowl on. */
import { addDays } from '../../../core/calendar/day.ts';
import { type WeaningDay, weaningDay, weaningDays } from '../../../core/weaning/weaning.ts';
import { age, litterOf } from '../../core/weaning/weaning-litter.ts';

const DAYS = 60;
const ROUNDS = 40;
const stalls = [
  { place: 3, from: 29, until: 34 },
  { place: 9, from: 36, until: 39 },
];
const input = litterOf({ sizeClass: 'large', puppies: 12, until: 45, stalls, knowsAdult: true });

function simplest(): WeaningDay[] {
  return Array.from({ length: DAYS }, (_, n) => weaningDay(input, addDays(age(21), n)));
}

/** Milliseconds of the middle round, and of the slowest. */
function measure(work: () => unknown): { middle: number; slowest: number } {
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now();
    work();
    times.push(performance.now() - started);
  }
  times.sort((a, b) => a - b);
  return { middle: times[ROUNDS / 2] ?? 0, slowest: times.at(-1) ?? 0 };
}

const all = measure(() => weaningDays(input, age(21), DAYS));
const alone = measure(simplest);
const ms = (n: number) => `${n.toFixed(2)} ms`;
console.log('weaning plan, 12 puppies, 60 days (middle of 40, slowest; aim under 20 ms)');
console.log(`  all days at once                 ${ms(all.middle)}  ${ms(all.slowest)}`);
console.log(`  each day alone, from the start   ${ms(alone.middle)}  ${ms(alone.slowest)}`);
console.log(`  the same days: ${JSON.stringify(weaningDays(input, age(21), DAYS)) === JSON.stringify(simplest())}`);
