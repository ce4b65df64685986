/**
 * `npm run bench:growth`: the growth method on invented litters that it was not tuned on, beside rules used by hand and two
 * control charts. The charts' limits are set on other litters, to as many false alarms as the method has. An argument
 * gives the first seed, a second one how many times as many litters (.1: a tenth).
 */
import { addLitter, emptyTally, found, type Method, share, type Tally } from '../../growth-sim/measure.ts';
import { program } from '../../growth-sim/methods.ts';
import { CHARTS, HAND_RULES, limited, type Statistic } from '../../growth-sim/rules.ts';
import { type Kind, type SimLitter, simulate, type Wishes } from '../../growth-sim/simulate.ts';
import { asWished } from '../../growth-sim/wishes.ts';
import { printForecastBackTest } from './forecast.ts';
import { printRealLitter } from './real-litter.ts';

const MIX: readonly (readonly [Kind, number])[] = [
  ['healthy', 60],
  ['small-steady', 48],
  ['late-starter', 12],
  ['acute', 40],
  ['slow', 36],
  ['several', 12],
  ['weaning-stall', 12],
  ['slow-litter', 24],
  ['singleton', 20],
];
const REPORT_SEED = 50_000;
const TRAIN_SEED = 20_000;

function measure(
  method: Method,
  firstSeed: number,
  times: number,
  kinds: readonly Kind[] | null = null,
  breeder: (sim: SimLitter) => SimLitter = (sim) => sim,
  wishes: Wishes = {},
): Tally {
  const tally = emptyTally();
  let seed = firstSeed;
  for (const [kind, count] of MIX) {
    for (let i = 0; i < Math.round(count * times); i += 1) {
      seed += 1;
      if (kinds !== null && !kinds.includes(kind)) continue;
      const sim = breeder(simulate(kind, seed, wishes));
      addLitter(tally, sim, method(sim.input));
    }
  }
  return tally;
}

const percent = (x: number) => (Number.isNaN(x) ? '-' : `${(100 * x).toFixed(0)} %`);
const figure = (x: number) => (Number.isNaN(x) ? '-' : x.toFixed(2));

function delay(t: Tally, kind: string, level: 'watch' | 'act'): string {
  const { share: part, median } = found(t.delays[kind]?.[level] ?? []);
  return `${percent(part)}, ${Number.isFinite(median) ? `${median.toFixed(1)} d` : 'never'}`;
}

/**
 * The usual rounds alone, with the weights that the flags ask for, and where weights and days wander by half more than in the
 * real litter that the noise was taken from. Delays are days from the very start of less gain.
 */
function report(usual: Tally, wished: Tally, noisy: Tally): void {
  const others = [figures(wished), figures(noisy)];
  console.log(`  ${''.padEnd(58)}${'usual rounds'.padEnd(18)}${'weighed again'.padEnd(18)}half more noise`);
  figures(usual).forEach(([name, value], i) => {
    const row = [value, ...others.map((o) => o[i]?.[1] ?? '')];
    console.log(
      `  ${name.padEnd(58)}${row
        .map((v) => v.padEnd(18))
        .join('')
        .trimEnd()}`,
    );
  });
}

function figures(t: Tally): readonly (readonly [string, string])[] {
  return [
    ['false act per litter in 8 weeks (bar .42)', figure(t.falseAct / t.weeks8)],
    ['false watch or act (bar 1.3)', figure(t.falseAny / t.weeks8)],
    [
      'false whole-litter act / any (bar .20 / .45)',
      `${figure(t.litterFalseAct / t.weeks8)} / ${figure(t.litterFalseAny / t.weeks8)}`,
    ],
    ['healthy puppy-weighings flagged (bar 2 %)', `${((100 * t.healthyFlaggedDays) / t.healthyDays).toFixed(1)} %`],
    ['acute fading: watch (bar 93 %, 1.6 d)', delay(t, 'acute', 'watch')],
    ['acute fading: act (bar 92 %, 1.8 d)', delay(t, 'acute', 'act')],
    ['several fading: act (bar 85 %, 2.0 d)', delay(t, 'several', 'act')],
    ['singleton fading: act (bar 85 %, 1.8 d)', delay(t, 'singleton', 'act')],
    ['slow slipping: watch (bar 86 %, 7 d)', delay(t, 'slow', 'watch')],
    ['slow slipping: act (bar 74 %)', delay(t, 'slow', 'act')],
    ['whole litter slow: watch (bar 88 %, 2.8 d)', delay(t, 'litter', 'watch')],
    ['whole litter slow: act (bar 80 %)', delay(t, 'litter', 'act')],
    ['small but steady: flags per puppy-week (bar .04)', figure(t.smallFlags / t.smallWeeks)],
    ['act per puppy of a slow litter (bar .15)', figure(t.slowLitterActs / t.slowLitterPuppies)],
    ['mistyped by over 20 % (bar 97 %)', percent(share(t.typo20))],
    ['mistyped by over 8 % (bar 82 %)', percent(share(t.typo8))],
    ['flagged readings that are wrong (bar 75 %)', percent(share(t.flagged))],
    ['the same of single ones (bar 60 %)', percent(share(t.single))],
    ['sessions called a scale fault that were none (1 in 500)', `1 in ${(t.sessions / Math.max(1, t.falseFaults)).toFixed(0)}`],
    ['exchanged, over 8 % apart (bar 90 %)', percent(share(t.swaps))],
    ['named pairs that are right (bar 60 %)', percent(share(t.named))],
  ];
}

function line(name: string, t: Tally): void {
  const cells = [
    figure(t.falseAny / t.weeks8),
    delay(t, 'acute', 'watch'),
    delay(t, 'several', 'watch'),
    delay(t, 'singleton', 'watch'),
    delay(t, 'slow', 'watch'),
    figure(t.smallFlags / t.smallWeeks),
  ];
  console.log(`  ${name.padEnd(30)}${cells.map((c) => c.padStart(14)).join('')}`);
}

const FADING: readonly Kind[] = ['acute', 'several', 'singleton'];
const HEALTHY: readonly Kind[] = ['healthy', 'small-steady', 'weaning-stall'];

/** The limit at which a statistic has so many false alarms on the training litters. */
function limitFor(statistic: Statistic, falseAny: number, firstSeed: number): number {
  const values = HEALTHY.flatMap((kind) =>
    [...statistic(simulate(kind, firstSeed + 1).input).values()].flat().map((v) => v.value),
  );
  let [low, high] = [Math.min(...values), 4 * Math.max(...values)];
  for (let i = 0; i < 10; i += 1) {
    const limit = (low + high) / 2;
    const t = measure(limited(statistic, limit), firstSeed, 1, HEALTHY);
    if (t.falseAny / t.weeks8 > falseAny) low = limit;
    else high = limit;
  }
  return high;
}

const seed = Number(process.argv[2] ?? REPORT_SEED);
const times = Number(process.argv[3] ?? 1);
const started = performance.now();
console.log('Invented litters, built from published numbers; see test/growth-sim/simulate.ts');
const own = measure(program, seed, times);
const wished = measure(program, seed, times, null, asWished);
const noisy = measure(program, seed, times, null, (sim) => sim, { noise: 1.5 });
report(own, wished, noisy);
const sudden = measure(program, seed, times, FADING, (sim) => sim, { sudden: true });
console.log('\n  the same where fading does not begin by degrees but all at once');
for (const [kind, level] of [
  ['acute', 'watch'],
  ['acute', 'act'],
  ['several', 'act'],
  ['singleton', 'act'],
] as const)
  console.log(`  ${`${kind}: ${level}`.padEnd(58)}${delay(sudden, kind, level)}`);
const trained = measure(program, TRAIN_SEED, 1, HEALTHY);
const allowed = trained.falseAny / trained.weeks8;
console.log(
  `\n  ${'first flag of any kind'.padEnd(30)}${['false', 'acute', 'several', 'singleton', 'slow', 'small steady'].map((h) => h.padStart(14)).join('')}`,
);
line('this program', own);
for (const [name, rule] of Object.entries(HAND_RULES)) line(name, measure(limited(rule, 0.5), seed, times));
const limits = new Map(Object.entries(CHARTS).map(([name, chart]) => [name, limitFor(chart, allowed, TRAIN_SEED)]));
for (const [name, chart] of Object.entries(CHARTS)) line(name, measure(limited(chart, limits.get(name) ?? 0), seed, times));
printRealLitter(limits);
printForecastBackTest();
console.log(`\n  ${((performance.now() - started) / 1000).toFixed(0)} s`);
