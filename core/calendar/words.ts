/** Days, months and small numbers in English words, as the paper and the window say them. */
import { type CivilDate, dateParts, weekday } from './day.ts';

/** From Monday, as `weekday` counts. */
export const WEEKDAY_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
] as const;

/** "Tuesday" */
export function weekdayName(d: CivilDate): string {
  return WEEKDAY_NAMES[weekday(d)] ?? '';
}

/** "November" */
export function monthName(d: CivilDate): string {
  return MONTH_NAMES[dateParts(d).month - 1] ?? '';
}

/** "26 November" */
export function dayAndMonth(d: CivilDate): string {
  return `${dateParts(d).day} ${monthName(d)}`;
}

/** "26 Nov", not broken at the end of a line */
export function dateShort(d: CivilDate): string {
  return `${dateParts(d).day}\u00a0${monthName(d).slice(0, 3)}`;
}

/** "26 November 2026" */
export function fullDate(d: CivilDate): string {
  return `${dayAndMonth(d)} ${dateParts(d).year}`;
}

/** "Thursday 26 November" */
export function longDate(d: CivilDate): string {
  return `${weekdayName(d)} ${dayAndMonth(d)}`;
}

/** "no" for none, "seven"; figures from thirteen on. `n` is a whole number, not negative. */
export function numberWord(n: number): string {
  return NUMBERS[n] ?? String(n);
}

/** The text with a capital at its start. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
