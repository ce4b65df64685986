/** Dates and times as they are said. */
import { clockOf, dateOf, type LocalTime } from '../../calendar/clock.ts';
import { type CivilDate, dateParts, daysBetween } from '../../calendar/day.ts';
import { dayAndMonth, fullDate, monthName, weekdayName } from '../../calendar/words.ts';

/** "26 November", with the year when it is not this one. */
export function shortDate(d: CivilDate, today: CivilDate): string {
  return dateParts(d).year === dateParts(today).year ? dayAndMonth(d) : fullDate(d);
}

/** "Thu" */
export function shortDay(d: CivilDate): string {
  return weekdayName(d).slice(0, 3);
}

/** "Nov" */
export function shortMonth(d: CivilDate): string {
  return monthName(d).slice(0, 3);
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
