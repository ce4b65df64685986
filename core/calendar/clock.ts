/** Local clock times: what the kitchen clock says, `YYYY-MM-DDThh:mm`, without a zone. */

import { type CivilDate, dayNumber, fromDayNumber, parseDate } from './day.ts';
import { DAY_MINUTES } from './durations.ts';

/** A local date and time written `YYYY-MM-DDThh:mm`. Readings carry an instant beside it, for elapsed time. */
export type LocalTime = string & { readonly __brand: 'LocalTime' };

/** The local time if the text is a real one, else null. */
export function parseLocalTime(text: string): LocalTime | null {
  const m = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})$/.exec(text);
  if (!m || parseDate(m[1] ?? '') === null) return null;
  return Number(m[2]) < 24 && Number(m[3]) < 60 ? (text as LocalTime) : null;
}

/** The local time, or a RangeError naming the text. */
export function localTime(text: string): LocalTime {
  const parsed = parseLocalTime(text);
  if (parsed === null) throw new RangeError(`${text} is not a date and time`);
  return parsed;
}

/** Its calendar date. */
export function dateOf(t: LocalTime): CivilDate {
  return t.slice(0, 10) as CivilDate;
}

/** Its clock time `hh:mm`. */
export function clockOf(t: LocalTime): string {
  return t.slice(11, 16);
}

/** Minutes since local midnight of 1970-01-01, as if no clock were ever changed. */
export function localMinutes(t: LocalTime): number {
  return dayNumber(dateOf(t)) * DAY_MINUTES + Number(t.slice(11, 13)) * 60 + Number(t.slice(14, 16));
}

/** The local time of `localMinutes`. */
export function fromLocalMinutes(minutes: number): LocalTime {
  const day = Math.floor(minutes / DAY_MINUTES);
  const rest = minutes - day * DAY_MINUTES;
  const hh = String(Math.floor(rest / 60)).padStart(2, '0');
  const mm = String(Math.floor(rest % 60)).padStart(2, '0');
  return `${fromDayNumber(day)}T${hh}:${mm}` as LocalTime;
}
