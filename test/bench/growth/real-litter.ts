/**
 * The whole real litter (test/fixtures/open-data) with troubles laid into its own weights: from the onset on a puppy gains a part
 * less than it did. Every puppy, an onset every other day; what is said of its weights without any trouble stands beside it. The
 * same for the rules used by hand and the control charts: with the limits that give as many false alarms as the program has on
 * invented litters, and with limits set on this very litter to as many flags of it, which flatters them.
 */
import { historyOf } from '../../../core/growth/history.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { GRAMS_PER_OUNCE } from '../../../core/units/mass.ts';
import { TYHURST, tyhurst } from '../../fixtures/tyhurst-litter.ts';
import { found, type Method, type Seen } from '../../growth-sim/measure.ts';
import { program } from '../../growth-sim/methods.ts';
import { CHARTS, HAND_RULES, limited, type Statistic } from '../../growth-sim/rules.ts';

const DAY = 86_400_000;
const LAID = [
  { less: 1, days: 2, within: 4 },
  { less: 0.5, days: 5, within: 7 },
  { less: 0.25, days: 10, within: 12 },
  { less: 0.5, days: 14, within: 14 },
] as const;
type Laid = (typeof LAID)[number];
const ONSETS = Array.from({ length: 15 }, (_, i) => 5 + 2 * i);

/** The weights of one puppy when it gains so much less between two days; the scale's steps stay. */
function withTrouble(name: string, onset: number, { less, days }: Laid): GrowthInput {
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

/** How often a puppy is flagged anew in the litter as it is. */
function flagsOf(seen: readonly Seen[]): number {
  const before = new Map<string, string>();
  let flags = 0;
  for (const s of seen) {
    for (const [id, level] of s.puppies) {
      if (level !== 'steady' && (before.get(id) ?? 'steady') === 'steady') flags += 1;
      before.set(id, level);
    }
  }
  return flags;
}

interface Delays {
  readonly watch: (number | null)[];
  readonly act: (number | null)[];
}

function delaysOf(method: Method, trouble: Laid): Delays {
  const delays: Delays = { watch: [], act: [] };
  for (const name of TYHURST.names) {
    for (const onset of ONSETS) {
      const input = withTrouble(name, onset, trouble);
      const born = input.puppies.find((p) => p.id === name)?.bornInstant ?? 0;
      // One that stood so before the onset has not been found.
      const told = method(input).map((s) => ({ after: (s.instant - born) / DAY - onset, level: s.puppies.get(name) ?? null }));
      const first = (is: (level: string) => boolean) =>
        told.find((t) => t.level !== null && t.after > 0 && t.after <= trouble.within && is(t.level))?.after ?? null;
      delays.watch.push(first((level) => level !== 'steady'));
      delays.act.push(first((level) => level === 'act'));
    }
  }
  return delays;
}

function told(list: readonly (number | null)[]): string {
  const { share, median } = found(list);
  return `${(100 * share).toFixed(0)} %${Number.isFinite(median) ? `, ${median.toFixed(1)} d` : ''}`;
}

/** The least limit at which a statistic flags the untroubled litter no oftener. */
function limitFor(statistic: Statistic, flags: number): number {
  const input = tyhurst();
  const values = [...statistic(input).values()].flat().map((v) => v.value);
  let [low, high] = [Math.min(...values), Math.max(...values)];
  for (let i = 0; i < 20; i += 1) {
    const limit = (low + high) / 2;
    if (flagsOf(limited(statistic, limit)(input)) > flags) low = limit;
    else high = limit;
  }
  return high;
}

function line(name: string, method: Method, flags: number): void {
  const cells = LAID.map((trouble) => told(delaysOf(method, trouble).watch));
  console.log(`  ${name.padEnd(30)}${String(flags).padStart(14)}${cells.map((c) => c.padStart(14)).join('')}`);
}

/** `limits` of the charts, by their name, as set on invented litters. */
export function printRealLitter(limits: ReadonlyMap<string, number>): void {
  const held = new Set(
    historyOf(tyhurst())
      .at(-1)
      ?.cleaned.sessions.flatMap((s) => s.rows.flatMap((r) => (r.verdict === 'scale' ? [Math.floor(r.ageDays)] : []))),
  );
  const flags = flagsOf(program(tyhurst()));
  console.log('\n  a whole real litter of six, in ounces (codesamplerr, weights-2019), as it is');
  console.log(
    `  puppies flagged anew in 55 days: ${flags}; days held out for the scale: ${[...held].join(' ')} (its author: 38)`,
  );
  console.log('  the same with troubles laid into its own noise, every puppy, an onset every other day from 5 to 33');
  for (const trouble of LAID) {
    const { less, days, within } = trouble;
    const { watch, act } = delaysOf(program, trouble);
    console.log(
      `  ${`${100 * less} % less gain for ${days} d, within ${within} d`.padEnd(52)}watch ${told(watch).padEnd(14)}act ${told(act)}`,
    );
  }
  const headings = ['flags as it is', ...LAID.map(({ less, days }) => `${100 * less} %, ${days} d`)];
  console.log(`\n  ${'first flag on that litter'.padEnd(30)}${headings.map((h) => h.padStart(14)).join('')}`);
  line('this program', program, flags);
  for (const [name, rule] of Object.entries(HAND_RULES)) {
    const method = limited(rule, 0.5);
    line(name, method, flagsOf(method(tyhurst())));
  }
  for (const [name, chart] of Object.entries(CHARTS)) {
    for (const [how, limit] of [
      ['', limits.get(name) ?? limitFor(chart, flags)],
      [', set on it', limitFor(chart, flags)],
    ] as const) {
      const method = limited(chart, limit);
      line(`${name}${how}`, method, flagsOf(method(tyhurst())));
    }
  }
}
