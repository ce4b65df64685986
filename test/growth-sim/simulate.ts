/**
 * Invented litters with a known truth, built from published numbers: birth weights and their spread within a litter
 * (Mugnier et al 2020), gains of 5-10 % a day in week one and 3.5-6 % in weeks two to four (Small Animal Clinical Nutrition,
 * 5th edition, table 16-1), one feed of 1.5-5 % of body weight (computed there), residual noise 1.8 % then 1.0 % in one open
 * litter of six, of which its scale's step of 28 g is the larger part. What no source gives (how a fading puppy loses, how often people mistype) is our own choice and marked so.
 * Nearly half of the litters start strongly: open real litters gain 11-16 % on the first day and double by day 4.5-6.5, which
 * the published gains alone never do (measured by the project on open data; `STRONG`).
 */

import { fromLocalMinutes, localMinutes, localTime } from '../../core/calendar/clock.ts';
import type { GrowthInput, GrowthPuppy, GrowthReading } from '../../core/growth/input.ts';
import type { SizeClass } from '../../core/reference/classes.ts';
import { type Random, random } from './random.ts';

export const KINDS = [
  'healthy',
  'small-steady',
  'late-starter',
  'acute',
  'slow',
  'several',
  'weaning-stall',
  'slow-litter',
  'singleton',
] as const;
export type Kind = (typeof KINDS)[number];

export interface Trouble {
  /** null: the whole litter. */
  readonly puppyId: string | null;
  readonly kind: 'acute' | 'slow' | 'litter';
  /** Age in days. */
  readonly onset: number;
  readonly until: number;
}

export interface SimLitter {
  readonly kind: Kind;
  readonly input: GrowthInput;
  readonly troubles: readonly Trouble[];
  readonly smallSteady: readonly string[];
  readonly lateStarters: readonly string[];
  /** Gains a tenth and more on its first day, and fast in its first week. */
  readonly strongStart: boolean;
  /** Readings that were mistyped, with typed / true. */
  readonly typos: ReadonlyMap<string, number>;
  /** Pairs of readings that changed places, with |ln| of their true weights' ratio. */
  readonly swaps: readonly { readonly a: string; readonly b: string; readonly apart: number }[];
  /** Readings of sessions at which the scale was wrong. */
  readonly scaleFaults: ReadonlySet<string>;
  /** One more weight of a puppy, alone, on the same scale at that instant; null once it is lost. */
  readonly weighAgain: (puppyId: string, instant: number) => GrowthReading | null;
}

export interface Wishes {
  /** Mistyped figures, exchanges and scale faults as well; on by default. */
  readonly slips?: boolean;
  readonly puppies?: number;
  readonly days?: number;
  /** Weighing noise and day-to-day growth times this: 1 by default. */
  readonly noise?: number;
  /** Fading begins in full at its onset; by default it takes 5 to 36 hours to. */
  readonly sudden?: boolean;
  /** A strong start, or none; by default `STRONG.share` of the litters have one. */
  readonly strongStart?: boolean;
  /** What the scale moves by, in grams; by default mostly 1 or 2, sometimes 5 or 10. */
  readonly step?: number;
}

const DAY = 86_400_000;
const BIRTH: Readonly<Record<SizeClass, number>> = { toy: 155, small: 190, medium: 290, large: 420, giant: 560 };
/** First day, and the factor exp(early x exp(-age / fades)) on the rate of the first days. */
const STRONG = { share: 0.45, firstDay: 0.12, firstDaySd: 0.06, early: 0.45, earlySd: 0.2, fades: 4 } as const;
const BORN = localTime('2026-03-02T04:10');
/** One hour ahead of universal time; no change of clocks within the litter. */
const OFFSET = 3_600_000;

/** One litter of a kind. The same seed and wishes give the same litter. */
export function simulate(kind: Kind, seed: number, wishes: Wishes = {}): SimLitter {
  const r = random(seed);
  const sizeClass = r.pick(['toy', 'small', 'medium', 'large', 'giant'] as const);
  const n = wishes.puppies ?? litterSize(kind, r);
  const days = wishes.days ?? 56;
  const ids = Array.from({ length: n }, (_, i) => `puppy-${String(i + 1).padStart(3, '0')}`);
  const plan = planFor(kind, ids, r, wishes.sudden ?? false);
  const strongStart = r.chance(STRONG.share);
  const start = startOf(r, wishes.strongStart ?? strongStart);
  const truth = trueWeights(r, sizeClass, ids, plan, days, wishes.noise ?? 1, start);
  const bornInstant = localMinutes(BORN) * 60_000 - OFFSET;
  const puppies = ids.map(
    (id, i): GrowthPuppy => ({
      id,
      name: `P${i + 1}`,
      sex: i % 2 === 0 ? 'bitch' : 'dog',
      bornInstant,
      endsInstant: null,
      state: 'litter',
    }),
  );
  const weighed = weigh(r, truth, ids, bornInstant, days, plan.deaths, wishes.noise ?? 1, wishes.step ?? null);
  const slips =
    wishes.slips === false
      ? { typos: new Map<string, number>(), swaps: [], scaleFaults: new Set<string>() }
      : makeSlips(r, weighed.sessions);
  return {
    kind,
    input: { puppies, readings: weighed.sessions.flat(), scaleStepGrams: weighed.step, sizeClass, unit: 'g' },
    troubles: plan.troubles,
    smallSteady: plan.small,
    lateStarters: plan.late,
    strongStart: wishes.strongStart ?? strongStart,
    weighAgain: (id, instant) =>
      weighed.again(random(seed * 100_003 + Math.floor(instant / 60_000) + ids.indexOf(id)), id, instant),
    ...slips,
  };
}

interface Start {
  /** Log gain of the first day. */
  readonly firstDay: number;
  /** Factor on the rate after it. */
  readonly factor: (age: number) => number;
}

function startOf(r: Random, strong: boolean): Start {
  const firstDay = STRONG.firstDay + r.normal(STRONG.firstDaySd);
  const early = STRONG.early + r.normal(STRONG.earlySd);
  return strong
    ? { firstDay, factor: (age) => Math.exp(early * Math.exp(-age / STRONG.fades)) }
    : { firstDay: -0.02, factor: () => 1 };
}

/** A quarter are singletons, pairs and litters of ten to fourteen. */
function litterSize(kind: Kind, r: Random): number {
  if (kind === 'singleton') return 1;
  const odd = r.chance(0.25);
  if (!odd) return r.whole(3, 9);
  const single = kind === 'healthy' || kind === 'acute' || kind === 'slow';
  const kinds = kind === 'several' ? ['large'] : single ? ['one', 'two', 'large'] : ['two', 'large'];
  const which = r.pick(kinds);
  if (which === 'one') return 1;
  return which === 'two' ? 2 : r.whole(10, 14);
}

interface Plan {
  readonly troubles: readonly Trouble[];
  readonly small: readonly string[];
  readonly late: readonly string[];
  /** Share of gain that is missing, by puppy and age. */
  readonly missing: (id: string, age: number) => number;
  /** Age at which a puppy that is lost leaves the record. */
  readonly deaths: ReadonlyMap<string, number>;
}

function planFor(kind: Kind, ids: readonly string[], r: Random, sudden: boolean): Plan {
  const first = r.pick(ids);
  const none: Plan = { troubles: [], small: [], late: [], missing: () => 0, deaths: new Map() };
  const acute = (id: string, onset: number): { trouble: Trouble; missing: (age: number) => number; death: number } => {
    const full = r.between(0.75, 1.7);
    const onsetDays = r.between(0.2, 1.5);
    const lasts = r.between(4, 7);
    return {
      trouble: { puppyId: id, kind: 'acute', onset, until: onset + lasts },
      missing: (age) => (age < onset || age > onset + lasts ? 0 : full * (sudden ? 1 : Math.min(1, (age - onset) / onsetDays))),
      death: onset + lasts,
    };
  };
  switch (kind) {
    case 'healthy':
      return none;
    case 'small-steady':
      return { ...none, small: [first] };
    case 'late-starter': {
      const until = r.between(2.5, 4.5);
      const less = r.between(0.35, 0.7);
      return {
        ...none,
        late: [first],
        missing: (id, age) => (id !== first ? 0 : age < until ? less : age < until + 8 ? -0.18 : 0),
      };
    }
    case 'acute':
    case 'singleton': {
      const a = acute(first, r.between(1, 20));
      return {
        ...none,
        troubles: [a.trouble],
        missing: (id, age) => (id === first ? a.missing(age) : 0),
        deaths: new Map([[first, a.death]]),
      };
    }
    case 'several': {
      const count = Math.min(ids.length, r.whole(2, Math.max(2, Math.min(4, ids.length - 1))));
      const onset = r.between(1, 18);
      const sick = new Map(
        [...ids]
          .sort(() => r.unit() - 0.5)
          .slice(0, count)
          .map((id) => [id, acute(id, onset + r.between(0, 1))]),
      );
      return {
        ...none,
        troubles: [...sick.values()].map((s) => s.trouble),
        missing: (id, age) => sick.get(id)?.missing(age) ?? 0,
        deaths: new Map([...sick].map(([id, s]) => [id, s.death])),
      };
    }
    case 'slow': {
      const onset = r.between(2, 26);
      const less = r.between(0.3, 0.6);
      return {
        ...none,
        troubles: [{ puppyId: first, kind: 'slow', onset, until: onset + 21 }],
        missing: (id, age) => (id === first && age >= onset && age < onset + 21 ? less * Math.min(1, (age - onset) / 2) : 0),
      };
    }
    case 'weaning-stall': {
      const onset = r.between(23, 30);
      const lasts = r.between(2, 5);
      const less = r.between(0.3, 0.7);
      return {
        ...none,
        missing: (_id, age) => (age < onset ? 0 : age < onset + lasts ? less : age < onset + lasts + 4 ? -0.25 * less : 0),
      };
    }
    case 'slow-litter': {
      const onset = r.between(1.5, 18);
      const less = r.between(0.4, 0.8);
      const lasts = r.between(6, 12);
      return {
        ...none,
        troubles: [{ puppyId: null, kind: 'litter', onset, until: onset + lasts }],
        missing: (_id, age) => (age >= onset && age < onset + lasts ? less : 0),
      };
    }
  }
}

/** ln true weight by puppy and age, in steps of an hour. */
function trueWeights(
  r: Random,
  sizeClass: SizeClass,
  ids: readonly string[],
  plan: Plan,
  days: number,
  noise: number,
  strength: Start,
): (id: string, age: number) => number {
  const middle = BIRTH[sizeClass] * Math.exp(r.normal(0.1));
  const start = 0.095 * Math.exp(r.normal(0.05));
  const fade = (0.04 - 0.014 * Math.log(middle / 150)) * Math.exp(r.normal(0.08));
  const pace = (age: number) => start * Math.exp(-Math.max(0.012, fade) * age) * strength.factor(age);
  const litterLasting = r.normal(0.13);
  const hours = Math.ceil(days * 24) + 24;
  const shared = dailyRates(r, hours, 0.08 * noise);
  const weaningShared = dailyRates(r, hours, 1);
  const tables = new Map<string, Float64Array>();
  for (const id of ids) {
    const small = plan.small.includes(id);
    const lasting = r.normal(0.07);
    const own = dailyRates(r, hours, 0.165 * noise);
    const firstDay = r.normal(0.018);
    const table = new Float64Array(hours + 1);
    table[0] = Math.log(middle) + (small ? -r.between(0.22, 0.4) : r.normal(0.085));
    for (let h = 0; h < hours; h += 1) {
      const age = h / 24;
      const usual = age < 1 ? strength.firstDay + firstDay : pace(age) * (age < 2 ? 0.75 : 1);
      const wander = age < 1 ? 0 : pace(age) * (litterLasting + lasting + (shared[h] ?? 0) + (own[h] ?? 0));
      const weaning = age > 21 && age < 42 ? 0.012 * (weaningShared[h] ?? 0) : 0;
      const lost = plan.missing(id, age) * (age < 1 ? 0.5 * pace(age) : pace(age) * (age < 2 ? 0.75 : 1) * (1 + litterLasting));
      table[h + 1] = (table[h] ?? 0) + (usual + wander + weaning - lost) / 24;
    }
    tables.set(id, table);
  }
  return (id, age) => {
    const table = tables.get(id) ?? new Float64Array(2);
    const at = Math.max(0, age * 24);
    const h = Math.min(table.length - 2, Math.floor(at));
    return (table[h] ?? 0) + (at - h) * ((table[h + 1] ?? 0) - (table[h] ?? 0));
  };
}

/** A rate that changes from day to day: its sum over a day has the given spread, days are a little alike. */
function dailyRates(r: Random, hours: number, sd: number): Float64Array {
  const rates = new Float64Array(hours + 1);
  let today = r.normal(sd);
  for (let h = 0; h <= hours; h += 1) {
    if (h % 24 === 0) today = 0.25 * today + r.normal(sd * Math.sqrt(1 - 0.25 ** 2));
    rates[h] = today;
  }
  return rates;
}

function weigh(
  r: Random,
  truth: (id: string, age: number) => number,
  ids: readonly string[],
  bornInstant: number,
  days: number,
  deaths: ReadonlyMap<string, number>,
  noise: number,
  asked: number | null,
): { sessions: GrowthReading[][]; step: number; again: (r: Random, id: string, instant: number) => GrowthReading | null } {
  const birth = Math.exp(truth(ids[0] ?? '', 0));
  const usual = r.chance(0.15) ? (birth > 300 ? r.pick([5, 10]) : 5) : r.pick([1, 1, 1, 2]);
  const step = asked ?? usual;
  const feed = noise * r.between(0.007, 0.0115);
  const twiceUntil = r.pick([0, 14, 14, 14, 21]);
  const wriggle = (by: Random, age: number): number => by.normal((by.chance(0.02) ? 2 : 1) * (age > 24 ? feed * 1.25 : feed));
  const shown = (id: string, age: number, noise: number) =>
    Math.max(step, Math.round(Math.exp(truth(id, age) + noise) / step) * step);
  const sessions: GrowthReading[][] = [];
  let number = 0;
  const round = (day: number, minuteOfDay: number, session: GrowthReading['session']): void => {
    const rows: GrowthReading[] = [];
    const common = r.normal(0.005);
    ids.forEach((id, i) => {
      const minutes =
        Math.floor(localMinutes(BORN) / 1440) * 1440 + day * 1440 + minuteOfDay + i * (session === 'birth' ? 25 : 1);
      const at = fromLocalMinutes(minutes);
      const instant = minutes * 60_000 - OFFSET;
      const age = (instant - bornInstant) / DAY;
      if (age < 0 || age > (deaths.get(id) ?? Number.POSITIVE_INFINITY)) return;
      const noise = session === 'birth' ? r.normal(0.006) : common + wriggle(r, age);
      if (session !== 'birth' && r.chance(0.01)) return;
      number += 1;
      const grams = shown(id, session === 'birth' ? 0 : age, noise);
      rows.push({
        id: `reading-${String(number).padStart(5, '0')}`,
        puppyId: id,
        at,
        instant,
        grams,
        session,
        held: false,
        kept: false,
      });
    });
    if (rows.length > 0) sessions.push(rows);
  };
  round(0, 4 * 60 + 10, 'birth');
  for (let day = 0; day < days; day += 1) {
    const morning = 7 * 60 + r.whole(-25, 40);
    const evening = 19 * 60 + r.whole(-60, 60);
    if (day > 0 && !r.chance(0.03)) round(day, morning, 'morning');
    const twice = day < twiceUntil || r.chance(0.04);
    if (twice && !r.chance(0.05)) round(day, evening, 'evening');
  }
  const again = (by: Random, id: string, instant: number): GrowthReading | null => {
    const age = (instant - bornInstant) / DAY;
    if (age > (deaths.get(id) ?? Number.POSITIVE_INFINITY)) return null;
    const grams = shown(id, age, by.normal(0.005) + wriggle(by, age));
    const at = fromLocalMinutes((instant + OFFSET) / 60_000);
    return {
      id: `again-${at}-${id}`,
      puppyId: id,
      at,
      instant,
      grams,
      session: Number(at.slice(11, 13)) < 13 ? 'morning' : 'evening',
      held: false,
      kept: false,
    };
  };
  return { sessions, step, again };
}

/** Slips of the finger, puppies exchanged and a scale that was not level: how often is our own choice. */
function makeSlips(r: Random, sessions: GrowthReading[][]): Pick<SimLitter, 'typos' | 'swaps' | 'scaleFaults'> {
  const typos = new Map<string, number>();
  const swaps: { a: string; b: string; apart: number }[] = [];
  const scaleFaults = new Set<string>();
  const used = new Set<number>([0]);
  const free = (): number => {
    for (let i = 0; i < 50; i += 1) {
      const k = r.whole(1, sessions.length - 2);
      if ([k - 1, k, k + 1].every((j) => !used.has(j) || j === 0)) {
        used.add(k);
        return k;
      }
    }
    return -1;
  };
  for (let i = 0; i < 2; i += 1) {
    const rows = sessions[free()];
    if (rows === undefined || rows.length === 0) continue;
    const at = r.whole(0, rows.length - 1);
    const row = rows[at];
    if (row === undefined) continue;
    const wrong = mistype(r, row.grams);
    if (wrong === row.grams) continue;
    typos.set(row.id, wrong / row.grams);
    rows[at] = { ...row, grams: wrong };
  }
  if (r.chance(0.7)) {
    const rows = sessions[free()];
    const i = rows === undefined ? 0 : r.whole(0, rows.length - 1);
    const j = rows === undefined ? 0 : r.whole(0, rows.length - 1);
    const [a, b] = [rows?.[i], rows?.[j]];
    if (rows !== undefined && a !== undefined && b !== undefined && i !== j) {
      rows[i] = { ...a, grams: b.grams };
      rows[j] = { ...b, grams: a.grams };
      swaps.push({ a: a.id, b: b.id, apart: Math.abs(Math.log(a.grams / b.grams)) });
    }
  }
  if (r.chance(0.25)) {
    const k = free();
    const rows = sessions[k];
    const factor = 1 + r.pick([-1, 1]) * r.between(0.07, 0.2);
    if (rows !== undefined && rows.length >= 3) {
      sessions[k] = rows.map((row) => ({ ...row, grams: Math.round(row.grams * factor) }));
      for (const row of rows) scaleFaults.add(row.id);
    }
  }
  return { typos, swaps, scaleFaults };
}

function mistype(r: Random, grams: number): number {
  const text = String(Math.round(grams));
  const kind = r.pick(['figure', 'figure', 'places', 'ten', 'drop'] as const);
  if (kind === 'ten') return r.chance(0.5) ? grams * 10 : Math.round(grams) / 10;
  const i = r.whole(0, text.length - 2);
  if (kind === 'places') return Number(text.slice(0, i) + text.charAt(i + 1) + text.charAt(i) + text.slice(i + 2)) || grams;
  if (kind === 'drop') return Number(text.slice(0, i + 1) + text.slice(i + 2)) || grams;
  const figure = (Number(text.charAt(i)) + r.whole(1, 9)) % 10;
  return Number(text.slice(0, i) + String(i === 0 && figure === 0 ? 1 : figure) + text.slice(i + 1));
}
