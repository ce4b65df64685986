/** What a method saw in invented litters, beside the truth. */
import type { GrowthInput } from '../../core/growth/input.ts';
import type { SimLitter } from './simulate.ts';

const DAY = 86_400_000;

export type Level = 'steady' | 'watch' | 'act';

/** A method's answers: one entry a session, as known then. */
export interface Seen {
  readonly instant: number;
  /** Level of each puppy that was weighed, by id. */
  readonly puppies: ReadonlyMap<string, Level>;
  readonly litter: Level;
  /** Readings flagged at this session, with the other reading of an exchange. */
  readonly flagged: readonly { readonly readingId: string; readonly withReadingId: string | null; readonly kind: string }[];
}

export type Method = (input: GrowthInput) => readonly Seen[];

/** Sums over litters; `table` makes rates and medians of them. */
export interface Tally {
  litters: number;
  weeks8: number;
  falseAct: number;
  falseAny: number;
  litterFalseAct: number;
  litterFalseAny: number;
  healthyDays: number;
  healthyFlaggedDays: number;
  smallWeeks: number;
  smallFlags: number;
  slowLitterPuppies: number;
  slowLitterActs: number;
  delays: Record<string, { watch: (number | null)[]; act: (number | null)[] }>;
  typo20: boolean[];
  typo8: boolean[];
  swaps: boolean[];
  named: boolean[];
  /** Of the readings flagged for any reason, and of those flagged alone: whether they are wrong. */
  flagged: boolean[];
  single: boolean[];
  sessions: number;
  /** Sessions called a fault of the scale that were none, in litters with a strong start and all. */
  falseFaults: number;
  litterFalseActs: number[];
}

export function emptyTally(): Tally {
  return {
    litters: 0,
    weeks8: 0,
    falseAct: 0,
    falseAny: 0,
    litterFalseAct: 0,
    litterFalseAny: 0,
    healthyDays: 0,
    healthyFlaggedDays: 0,
    smallWeeks: 0,
    smallFlags: 0,
    slowLitterPuppies: 0,
    slowLitterActs: 0,
    delays: {},
    typo20: [],
    typo8: [],
    swaps: [],
    named: [],
    flagged: [],
    single: [],
    sessions: 0,
    falseFaults: 0,
    litterFalseActs: [],
  };
}

/** How long after its onset a trouble may be found. */
const WITHIN: Record<string, number> = { acute: 7, several: 7, singleton: 7, slow: 14, litter: 10 };

export function addLitter(tally: Tally, sim: SimLitter, seen: readonly Seen[]): void {
  const born = sim.input.puppies[0]?.bornInstant ?? 0;
  const sick = new Set(sim.troubles.map((t) => t.puppyId));
  const wholeSlow = sick.has(null);
  countHealthy(tally, sim, seen, born, sick, wholeSlow);
  for (const trouble of sim.troubles) {
    const name =
      trouble.kind === 'litter' ? 'litter' : sim.kind === 'several' || sim.kind === 'singleton' ? sim.kind : trouble.kind;
    tally.delays[name] ??= { watch: [], act: [] };
    const record = tally.delays[name];
    const within = Math.min(WITHIN[name] ?? 7, trouble.until - trouble.onset + 1);
    const levelOf = (s: Seen): Level => (trouble.puppyId === null ? s.litter : (s.puppies.get(trouble.puppyId) ?? 'steady'));
    const first = (bad: (l: Level) => boolean): number | null => {
      for (const s of seen) {
        const days = (s.instant - born) / DAY - trouble.onset;
        if (days > 0 && days <= within && bad(levelOf(s))) return days;
      }
      return null;
    };
    record.watch.push(first((l) => l !== 'steady'));
    record.act.push(first((l) => l === 'act'));
  }
  countReadings(tally, sim, seen);
}

function countHealthy(
  tally: Tally,
  sim: SimLitter,
  seen: readonly Seen[],
  born: number,
  sick: ReadonlySet<string | null>,
  wholeSlow: boolean,
): void {
  const before = new Map<string, Level>();
  let litterBefore: Level = 'steady';
  const lastDay = ((seen.at(-1)?.instant ?? born) - born) / DAY;
  const clean = sim.troubles.length === 0 && sim.kind !== 'late-starter';
  let acts = 0;
  for (const s of seen) {
    for (const [id, level] of s.puppies) {
      const old = before.get(id) ?? 'steady';
      before.set(id, level);
      if (sick.has(id) || sim.lateStarters.includes(id)) continue;
      if (clean) {
        tally.healthyDays += 1;
        if (level !== 'steady') tally.healthyFlaggedDays += 1;
        if (level === 'act' && old !== 'act') acts += 1;
        if (level !== 'steady' && old === 'steady') tally.falseAny += 1;
      }
      if (wholeSlow && level === 'act' && old !== 'act') tally.slowLitterActs += 1;
      if (sim.smallSteady.includes(id) && level !== 'steady' && old === 'steady') tally.smallFlags += 1;
    }
    if (clean) {
      if (s.litter === 'act' && litterBefore !== 'act') tally.litterFalseAct += 1;
      if (s.litter !== 'steady' && litterBefore === 'steady') tally.litterFalseAny += 1;
    }
    litterBefore = s.litter;
  }
  if (clean) {
    tally.litters += 1;
    tally.weeks8 += lastDay / 56;
    tally.falseAct += acts;
    tally.litterFalseActs.push(acts);
  }
  tally.smallWeeks += (sim.smallSteady.length * lastDay) / 7;
  if (wholeSlow) tally.slowLitterPuppies += sim.input.puppies.length;
}

function countReadings(tally: Tally, sim: SimLitter, seen: readonly Seen[]): void {
  const flagged = new Set<string>();
  const pairs = new Map<string, string>();
  for (const s of seen) {
    for (const f of s.flagged) {
      flagged.add(f.readingId);
      if (f.withReadingId === null) continue;
      flagged.add(f.withReadingId);
      pairs.set(key(f.readingId, f.withReadingId), f.kind);
    }
  }
  for (const [id, factor] of sim.typos) {
    const off = Math.abs(factor - 1);
    if (off > 0.2) tally.typo20.push(flagged.has(id));
    if (off > 0.08) tally.typo8.push(flagged.has(id));
  }
  const wrong = new Set([...sim.typos.keys(), ...sim.swaps.flatMap((w) => [w.a, w.b]), ...sim.scaleFaults]);
  tally.sessions += seen.length;
  for (const { kind, readingId, withReadingId } of seen.flatMap((s) => s.flagged)) {
    tally.flagged.push(wrong.has(readingId));
    if (withReadingId !== null) tally.flagged.push(wrong.has(withReadingId));
    if (kind === 'mistyped') tally.single.push(wrong.has(readingId));
    if (kind === 'scale' && !sim.scaleFaults.has(readingId)) tally.falseFaults += 1;
  }
  const real = new Set(sim.swaps.map((s) => key(s.a, s.b)));
  for (const s of sim.swaps) if (s.apart > 0.08) tally.swaps.push(pairs.has(key(s.a, s.b)));
  for (const pair of pairs.keys()) tally.named.push(real.has(pair));
}

function key(a: string, b: string): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}

export function share(list: readonly boolean[]): number {
  return list.length === 0 ? Number.NaN : list.filter(Boolean).length / list.length;
}

/** Share found and the median delay of all, those never found counting as late. */
export function found(list: readonly (number | null)[]): { share: number; median: number } {
  const delays = list.map((d) => d ?? Number.POSITIVE_INFINITY).sort((a, b) => a - b);
  return { share: share(list.map((d) => d !== null)), median: delays[Math.floor((delays.length - 1) / 2)] ?? Number.NaN };
}
