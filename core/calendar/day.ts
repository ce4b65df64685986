/**
 * Civil dates by arithmetic on day numbers. A civil date is a date on the kitchen calendar: no time zone,
 * no instant, no clock. The proleptic Gregorian calendar of ISO 8601-1.
 */

/** A civil date written `YYYY-MM-DD`, years 0001 to 9999. */
export type CivilDate = string & { readonly __brand: 'CivilDate' };

/** Whole days since 1970-01-01, negative before it. */
type DayNumber = number;

const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Whether the Gregorian year is a leap year. */
export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days in a month; month is 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2 && isLeapYear(year)) return 29;
  const days = DAYS_IN_MONTH[month - 1];
  if (days === undefined) throw new RangeError(`month ${month} is not 1 to 12`);
  return days;
}

/** The date if the text is a real civil date `YYYY-MM-DD`, else null: `2026-02-29` is not one. */
export function parseDate(text: string): CivilDate | null {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!m) return null;
  const [year, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return text as CivilDate;
}

/** The date, or a RangeError naming the text: for dates that the caller has already checked. */
export function date(text: string): CivilDate {
  const parsed = parseDate(text);
  if (parsed === null) throw new RangeError(`${text} is not a date`);
  return parsed;
}

/** Year, month (1-12) and day of the month. */
export function dateParts(d: CivilDate): { year: number; month: number; day: number } {
  return { year: Number(d.slice(0, 4)), month: Number(d.slice(5, 7)), day: Number(d.slice(8, 10)) };
}

/** Days since 1970-01-01. Years begin in March here, so that the leap day is the last of its year. */
export function dayNumber(d: CivilDate): DayNumber {
  const { year, month, day } = dateParts(d);
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** The date of a day number; RangeError outside the years 0001 to 9999. */
export function fromDayNumber(n: DayNumber): CivilDate {
  const z = n + 719468;
  const era = Math.floor(z / 146097);
  const dayOfEra = z - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shifted = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * shifted + 2) / 5) + 1;
  const month = shifted < 10 ? shifted + 3 : shifted - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  if (year < 1 || year > 9999) throw new RangeError(`day ${n} is outside the calendar`);
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}` as CivilDate;
}

/** The date so many days later (or earlier, when negative). */
export function addDays(d: CivilDate, days: number): CivilDate {
  return fromDayNumber(dayNumber(d) + days);
}

/** Whole days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: CivilDate, to: CivilDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** So many calendar months later; a day that the month lacks becomes its last (31 January + 1 = 28 or 29 February). */
export function addMonths(d: CivilDate, months: number): CivilDate {
  const { year, month, day } = dateParts(d);
  const count = year * 12 + (month - 1) + months;
  const y = Math.floor(count / 12);
  const m = count - y * 12 + 1;
  return date(`${pad(y, 4)}-${pad(m, 2)}-${pad(Math.min(day, daysInMonth(y, m)), 2)}`);
}

/** 0 Monday to 6 Sunday (ISO 8601 weekday less one). */
export function weekday(d: CivilDate): number {
  return (((dayNumber(d) + 3) % 7) + 7) % 7;
}

/** Age in whole days on a date: 0 on the day of birth. Negative before birth. */
export function ageInDays(born: CivilDate, on: CivilDate): number {
  return daysBetween(born, on);
}

function pad(n: number, width: number): string {
  return String(n).padStart(width, '0');
}
