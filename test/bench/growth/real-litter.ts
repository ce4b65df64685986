/**
 * The whole real litter (test/fixtures/open-data) with troubles laid into its own weights: from the onset on a puppy gains a part
 * less than it did. Every puppy, an onset every other day; what its weights say without any trouble stands beside it.
 */
import { historyOf } from '../../../core/growth/history.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { GRAMS_PER_OUNCE } from '../../../core/units/mass.ts';
import { TYHURST, tyhurst } from '../../fixtures/tyhurst-litter.ts';
import { found } from '../../growth-sim/measure.ts';

const DAY = 86_400_000;
const LAID = [
  { less: 1, days: 2, within: 4 },
  { less: 0.5, days: 5, within: 7 },
  { less: 0.25, days: 10, within: 12 },
  { less: 0.5, days: 14, within: 14 },
] as const;
const ONSETS = Array.from({ length: 15 }, (_, i) => 5 + 2 * i);

/** The weights of one puppy when it gains so much less between two days; the scale's steps stay. */
function withTrouble(name: string, onset: number, less: number, days: number): GrowthInput {
  const weighed = TYHURST.ounces.map((d) => ({ day: d.day, oz: d.weights[TYHURST.names.indexOf(name)] ?? null }));
  let lost = 0;
  let before: { day: number; oz: number } | null = null;
  const factors = new Map<number, number>();
  for (const { day, oz } of weighed) {
    if (oz === null) continue;
    if (before !== null) {
      const part = Math.max(0, Math.min(day, onset + days) - Math.max(before.day, onset)) / (day - before.day);
      lost += part * less * Math.log(oz / before.oz);
    }
    before = { day, oz };
    factors.set(day, Math.exp(-lost));
  }
  return tyhurst(onset + days + 3, (who, day, grams) =>
    who === name ? Math.max(1, Math.round((grams * (factors.get(day) ?? 1)) / GRAMS_PER_OUNCE)) * GRAMS_PER_OUNCE : grams,
  );
}

export function printRealLitter(): void {
  const history = historyOf(tyhurst());
  const flags = history.flatMap((k) => k.puppies.filter((p) => p.level !== 'steady' && !p.wasFlagged)).length;
  const held = new Set(
    history
      .at(-1)
      ?.cleaned.sessions.flatMap((s) => s.rows.flatMap((r) => (r.verdict === 'scale' ? [Math.floor(r.ageDays)] : []))),
  );
  console.log('\n  a whole real litter of six, in ounces (codesamplerr, weights-2019), as it is');
  console.log(
    `  puppies flagged anew in 55 days: ${flags}; days held out for the scale: ${[...held].join(' ')} (its author: 38)`,
  );
  console.log('  the same with troubles laid into its own noise, every puppy, an onset every other day from 5 to 33');
  for (const { less, days, within } of LAID) {
    const delays = { watch: [] as (number | null)[], act: [] as (number | null)[] };
    for (const name of TYHURST.names) {
      for (const onset of ONSETS) {
        const input = withTrouble(name, onset, less, days);
        const index = TYHURST.names.indexOf(name);
        const born = input.puppies[index]?.bornInstant ?? 0;
        const seen = historyOf(input).map((k) => ({
          after: ((k.cleaned.sessions.at(-1)?.instant ?? 0) - born) / DAY - onset,
          level: k.puppies[index]?.level ?? 'steady',
        }));
        const first = (act: boolean) =>
          seen.find((s) => s.after > 0 && s.after <= within && (act ? s.level === 'act' : s.level !== 'steady'))?.after ?? null;
        delays.watch.push(first(false));
        delays.act.push(first(true));
      }
    }
    const told = (list: readonly (number | null)[]) => {
      const { share, median } = found(list);
      return `${(100 * share).toFixed(0)} %${Number.isFinite(median) ? `, ${median.toFixed(1)} d` : ''}`;
    };
    console.log(
      `  ${`${100 * less} % less gain for ${days} d, within ${within} d`.padEnd(52)}watch ${told(delays.watch).padEnd(14)}act ${told(delays.act)}`,
    );
  }
}
