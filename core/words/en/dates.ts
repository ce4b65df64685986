/** Dates, times and ages as they are said. */

import { ageInMonths } from '../../calendar/age.ts';
import { clockOf, dateOf, type LocalTime } from '../../calendar/clock.ts';
import { ageInDays, type CivilDate, dateParts, dayNumber, daysBetween } from '../../calendar/day.ts';
import { DAY_MS } from '../../calendar/durations.ts';
import { counted } from './figures.ts';

/** A civil date is no instant: it is read as midnight of UTC, and said in UTC. Field by field, because engines put commas in between as they like. */
const format = (field: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-GB', { ...field, timeZone: 'UTC' });
const WEEKDAY = format({ weekday: 'long' });
const MONTH = format({ month: 'long' });

/** "Tuesday" */
export function weekdayName(d: CivilDate): string {
  return WEEKDAY.format(dayNumber(d) * DAY_MS);
}

/** From Monday, as `weekday` counts: 1970-01-05 was one. */
export const WEEKDAY_NAMES: readonly string[] = [4, 5, 6, 7, 8, 9, 10].map((day) => WEEKDAY.format(day * DAY_MS));

/** "November" */
export function monthName(d: CivilDate): string {
  return MONTH.format(dayNumber(d) * DAY_MS);
}

/** "Thu" */
export function shortDay(d: CivilDate): string {
  return weekdayName(d).slice(0, 3);
}

/** "Nov", and "Sep": three letters, where `Intl` would say "Sept". */
export function shortMonth(d: CivilDate): string {
  return monthName(d).slice(0, 3);
}

/** "26 November" */
export function dayAndMonth(d: CivilDate): string {
  return `${dateParts(d).day} ${monthName(d)}`;
}

/** "26 Nov", not broken at the end of a line */
export function dateShort(d: CivilDate): string {
  return `${dateParts(d).day}\u00a0${shortMonth(d)}`;
}

/** "26 November 2026" */
export function fullDate(d: CivilDate): string {
  return `${dayAndMonth(d)} ${dateParts(d).year}`;
}

/** "26 September 2026", the day not parted from its month at the end of a line */
export function dateInWords(d: CivilDate): string {
  return `${dateParts(d).day}\u00a0${monthName(d)} ${dateParts(d).year}`;
}

/** "21 to 27 November", "28 November to 4 December": both days included. */
export function dateSpan(from: CivilDate, to: CivilDate): string {
  const [a, b] = [dateParts(from), dateParts(to)];
  const first = a.month === b.month && a.year === b.year ? String(a.day) : `${a.day}\u00a0${monthName(from)}`;
  return `${first} to ${b.day}\u00a0${monthName(to)}`;
}

/** "Thursday 26 November" */
export function longDate(d: CivilDate): string {
  return `${weekdayName(d)} ${dayAndMonth(d)}`;
}

/** "26 November", with the year when it is not this one. */
export function shortDate(d: CivilDate, today: CivilDate): string {
  return dateParts(d).year === dateParts(today).year ? dayAndMonth(d) : fullDate(d);
}

/** "Thu 26 Nov" */
export function dayOfWeek(d: CivilDate): string {
  return `${shortDay(d)} ${dateParts(d).day} ${shortMonth(d)}`;
}

/** "today 06:40", "yesterday 19:10", "Tuesday 07:02" inside a week, else "12 November". */
export function when(t: LocalTime, today: CivilDate): string {
  const d = dateOf(t);
  const ago = daysBetween(d, today);
  if (ago === 0) return `today ${clockOf(t)}`;
  if (ago === 1) return `yesterday ${clockOf(t)}`;
  if (ago > 1 && ago < 7) return `${weekdayName(d)} ${clockOf(t)}`;
  return shortDate(d, today);
}

/** "9 days", "4 weeks 5 days", "8 weeks", "7 months": days under two weeks, weeks to 26, then calendar months. */
export function ageInWords(born: CivilDate, on: CivilDate): string {
  const days = ageInDays(born, on);
  if (days < 14) return counted(days, 'day');
  if (days < 182) {
    const weeks = Math.floor(days / 7);
    const rest = days - weeks * 7;
    return rest === 0 ? counted(weeks, 'week') : `${counted(weeks, 'week')} ${counted(rest, 'day')}`;
  }
  return counted(ageInMonths(born, on), 'month');
}
