/** What the weigh-in page works on: whose row is next, which reading belongs to this session, when a typed weight was taken. */

import { clockOf, dateOf, type LocalTime, localTime } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { HOUR_MS } from '../../core/calendar/durations.ts';
import { isCurrent, type Puppy, type Reading, type Session } from '../../core/litter/litter.ts';

export type WeighingSession = Exclude<Session, 'birth'>;

/** Weighed again within this time, the later number mends the earlier; after it, it is another weighing. */
const MENDING_MS = HOUR_MS;

/** Before two in the afternoon it is the morning's weigh-in. */
export function sessionAt(clock: string): WeighingSession {
  return clock < '14:00' ? 'morning' : 'evening';
}

/** The latest standing reading of a puppy in a session of a day. */
export function readingOf(
  readings: readonly Reading[],
  puppyId: string,
  day: CivilDate,
  session: WeighingSession,
): Reading | null {
  let latest: Reading | null = null;
  for (const r of readings) {
    if (r.puppyId !== puppyId || r.session !== session || dateOf(r.at) !== day || !isCurrent(r)) continue;
    if (latest === null || r.instant >= latest.instant) latest = r;
  }
  return latest;
}

/** The last counted reading before an instant. */
export function readingBefore(readings: readonly Reading[], puppyId: string, instant: number): Reading | null {
  let last: Reading | null = null;
  for (const r of readings) {
    if (r.puppyId !== puppyId || r.instant >= instant || !isCurrent(r) || r.held) continue;
    if (last === null || r.instant > last.instant) last = r;
  }
  return last;
}

/** A weigh-in: of which day and session, and whether it is the one that was begun at its own time. */
export interface WeighInTime {
  readonly day: CivilDate;
  readonly session: WeighingSession;
  /** Begun as the weigh-in of now: it goes on as such past two o'clock and past midnight. */
  readonly live: boolean;
}

/** The weigh-in of now. */
export function weighInNow(nowLocal: LocalTime): WeighInTime {
  return { day: dateOf(nowLocal), session: sessionAt(clockOf(nowLocal)), live: true };
}

const USUAL: Record<WeighingSession, string> = { morning: '07:00', evening: '19:00' };
const LAST: Record<WeighingSession, string> = { morning: '13:59', evening: '23:59' };

/** When a weight typed now was taken: now, as long as it is the day of a live weigh-in; at the usual hour of another. */
export function takenAt({ day, session, live }: WeighInTime, nowLocal: LocalTime): LocalTime {
  if (live) return dateOf(nowLocal) === day ? nowLocal : localTime(`${day}T23:59`);
  const usual = localTime(`${day}T${USUAL[session]}`);
  return usual < nowLocal ? usual : nowLocal;
}

/** The last minute of a session: what was weighed later is not known to it yet. */
export function endOf({ day, session, live }: WeighInTime): LocalTime {
  return localTime(`${day}T${live ? '23:59' : LAST[session]}`);
}

/** The first counted reading after an instant. */
export function readingAfter(readings: readonly Reading[], puppyId: string, instant: number): Reading | null {
  let next: Reading | null = null;
  for (const r of readings) {
    if (r.puppyId !== puppyId || r.instant <= instant || !isCurrent(r) || r.held) continue;
    if (next === null || r.instant < next.instant) next = r;
  }
  return next;
}

/** Whether a number typed now mends the reading that is there rather than being another weighing. */
export function mends(existing: Reading, day: CivilDate, nowLocal: LocalTime, nowInstant: number): boolean {
  return existing.held || day !== dateOf(nowLocal) || nowInstant - existing.recordedInstant < MENDING_MS;
}

/** The next puppy after this one that is not weighed yet, around the list; null when everyone is. */
export function nextToWeigh(
  order: readonly Puppy[],
  afterId: string | null,
  weighed: (puppyId: string) => boolean,
): string | null {
  const at = order.findIndex((p) => p.id === afterId);
  for (let step = 1; step <= order.length; step += 1) {
    const puppy = order[(at + step) % order.length];
    if (puppy !== undefined && puppy.id !== afterId && !weighed(puppy.id)) return puppy.id;
  }
  return null;
}
