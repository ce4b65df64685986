/** A puppy's weights in order and what is read off them. Held-out readings are left out; exchanged ones count as exchanged. */

import type { LocalTime } from '../calendar/clock.ts';
import { DAY_MS } from '../calendar/durations.ts';
import { median } from '../statistics/median.ts';
import { cleanedOf } from './history.ts';
import type { GrowthInput, GrowthPuppy } from './input.ts';
import type { CleanSession } from './outliers/draft.ts';
import type { Cleaned } from './outliers/reading-outliers.ts';

/** Shorter than this a gain says nothing: one feed is as much. */
const SHORTEST_GAIN_DAYS = 0.2;

/** Age in days with fractions; grams as they count. */
export interface SeriesPoint {
  readonly instant: number;
  readonly at: LocalTime;
  readonly ageDays: number;
  readonly grams: number;
  readonly readingId: string;
}

/** The weights that count, oldest first. */
export function seriesOf(input: GrowthInput, puppyId: string): SeriesPoint[] {
  return pointsOf(cleanedOf(input).sessions, puppyId);
}

/** Gain between one weight and the next, per day of 24 hours; gaps under five hours are joined to the next. */
export function gainsOf(
  series: readonly SeriesPoint[],
): { ageDays: number; at: LocalTime; gramsPerDay: number; percentPerDay: number }[] {
  const gains: { ageDays: number; at: LocalTime; gramsPerDay: number; percentPerDay: number }[] = [];
  let from = series[0];
  if (from === undefined) return gains;
  for (const to of series.slice(1)) {
    const days = (to.instant - from.instant) / DAY_MS;
    if (days < SHORTEST_GAIN_DAYS) continue;
    gains.push({
      ageDays: to.ageDays,
      at: to.at,
      gramsPerDay: (to.grams - from.grams) / days,
      percentPerDay: 100 * ((to.grams / from.grams) ** (1 / days) - 1),
    });
    from = to;
  }
  return gains;
}

/** Lightest, middle and heaviest of the littermates at each session that weighed at least two, and half, of them. */
export function bandOf(
  input: GrowthInput,
  exceptPuppyId: string | null,
): { ageDays: number; low: number; median: number; high: number }[] {
  const band: { ageDays: number; low: number; median: number; high: number }[] = [];
  for (const session of cleanedOf(input).sessions) {
    const rows = counted(session).filter((r) => r.puppyId !== exceptPuppyId);
    const there = input.puppies.filter(
      (p) => p.id !== exceptPuppyId && (p.endsInstant === null || p.endsInstant >= session.instant),
    );
    if (rows.length < 2 || rows.length * 2 < there.length) continue;
    const grams = rows.map((r) => r.grams);
    band.push({
      ageDays: median(rows.map((r) => r.ageDays)),
      low: Math.min(...grams),
      median: median(grams),
      high: Math.max(...grams),
    });
  }
  return band;
}

export interface Standing {
  readonly ageDays: number;
  readonly at: LocalTime;
  readonly instant: number;
  /** ln(weight / littermates' middle). */
  readonly standing: number;
}

/** Where the puppy stood beside its littermates at each weight that counts; none without littermates. */
export function standingsOf(input: GrowthInput, puppyId: string): Standing[] {
  return standingsIn(cleanedOf(input), input.puppies, puppyId);
}

/** A littermate that was not weighed for longer is no measure. */
const LONGEST_UNSEEN = 3 * DAY_MS;

/** As `standingsOf`, from sessions already cleaned. Littermates not weighed in a session stand where they were expected. */
export function standingsIn(cleaned: Cleaned, puppies: readonly GrowthPuppy[], puppyId: string): Standing[] {
  const standings: Standing[] = [];
  const seen = new Map<number, number>();
  cleaned.sessions.forEach((session, k) => {
    const weighed = new Map(session.rows.map((r) => [r.index, r]));
    for (const r of session.rows) seen.set(r.index, session.instant);
    const own = session.rows.find((r) => r.puppy.id === puppyId);
    if (own === undefined || own.used === null) return;
    const others = puppies.flatMap((p, i) => {
      const row = weighed.get(i);
      if (p.id === puppyId) return [];
      if (row !== undefined && row.used !== null) return [Math.log(row.used)];
      const level = cleaned.steps[k]?.after[i] ?? null;
      const gone =
        (p.endsInstant !== null && p.endsInstant < session.instant) || session.instant - (seen.get(i) ?? 0) > LONGEST_UNSEEN;
      return level === null || gone ? [] : [level.level];
    });
    if (others.length > 0) {
      standings.push({
        ageDays: own.ageDays,
        at: own.reading.at,
        instant: own.reading.instant,
        standing: Math.log(own.used) - median(others),
      });
    }
  });
  return standings;
}

/** As `seriesOf`, from sessions already cleaned. */
export function pointsOf(sessions: readonly CleanSession[], puppyId: string): SeriesPoint[] {
  const points: SeriesPoint[] = [];
  for (const session of sessions) {
    for (const r of counted(session)) {
      if (r.puppyId === puppyId)
        points.push({ instant: r.instant, at: r.at, ageDays: r.ageDays, grams: r.grams, readingId: r.readingId });
    }
  }
  return points;
}

function counted(session: CleanSession) {
  return session.rows.flatMap((row) =>
    row.used === null
      ? []
      : [
          {
            puppyId: row.reading.puppyId,
            grams: row.used,
            ageDays: row.ageDays,
            at: row.reading.at,
            instant: row.reading.instant,
            readingId: row.reading.id,
          },
        ],
  );
}

/** Gain per day over about the last 24 hours: from the weight nearest to a day before, at least 10 hours and at most 4 days; null without one. */
export function gainsBack(points: readonly SeriesPoint[]): { grams: number; percent: number; hours: number } | null {
  const last = points.at(-1);
  if (last === undefined) return null;
  let from: SeriesPoint | null = null;
  const off = (p: SeriesPoint) => Math.abs(last.instant - p.instant - DAY_MS);
  for (const p of points) {
    const days = (last.instant - p.instant) / DAY_MS;
    if (days >= 0.41 && days <= 4 && (from === null || off(p) < off(from))) from = p;
  }
  if (from === null) return null;
  const days = (last.instant - from.instant) / DAY_MS;
  return {
    grams: (last.grams - from.grams) / days,
    percent: 100 * ((last.grams / from.grams) ** (1 / days) - 1),
    hours: days * 24,
  };
}
