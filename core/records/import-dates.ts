/** Dates and times as people write them in tables. What can be read two ways is answered as both. */
import { type CivilDate, parseDate } from '../calendar/day.ts';

/** Which comes first where both are figures: 3/4 is the third of April, or the fourth of March. */
export const DATE_ORDERS = ['dmy', 'mdy'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export type ReadDate =
  | { readonly kind: 'date'; readonly date: CivilDate; readonly clock: string | null }
  /** Figures with strokes: the date in each order, null where that order makes none. Never null both. */
  | { readonly kind: 'figures'; readonly dmy: CivilDate | null; readonly mdy: CivilDate | null; readonly clock: string | null }
  /** Days since birth: `day 3`, `week 2`, `birth`. */
  | { readonly kind: 'age'; readonly days: number }
  | { readonly kind: 'no-year' }
  | { readonly kind: 'unreadable' };

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH = String.raw`(jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec|january|february|march|april|august|september|october|november|december)\.?`;
const WEEKDAY =
  /^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday)\.?,?\s+/;
const YEAR = String.raw`(\d{4}|\d{2})`;

const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const DOTS = new RegExp(String.raw`^(\d{1,2})\.\s?(\d{1,2})\.\s?${YEAR}$`);
const FIGURES = new RegExp(String.raw`^(\d{1,2})[/-](\d{1,2})[/-]${YEAR}$`);
const DAY_MONTH = new RegExp(String.raw`^(\d{1,2})(?:st|nd|rd|th)?\.?[\s-]+${MONTH}[\s,-]+${YEAR}$`);
const MONTH_DAY = new RegExp(String.raw`^${MONTH}\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+${YEAR}$`);
const NO_YEAR = new RegExp(
  String.raw`^(?:\d{1,2}[./-]\s?\d{1,2}\.?|\d{1,2}(?:st|nd|rd|th)?\.?[\s-]+${MONTH}|${MONTH}\s+\d{1,2}(?:st|nd|rd|th)?)$`,
);
const AGE = /^(?:(day|d|age|week|wk|w)\s*\.?\s*(\d{1,3})|(\d{1,3})\s*(days?|d|weeks?|wks?|w)(?:\s+old)?)$/;
const AT_BIRTH = /^(?:(?:at|after)\s+)?(?:birth|born|whelping|whelped)(?:\s+weight)?$/;

/** What a cell says about a day. Two figures of a year are of this century. */
export function readDateCell(text: string): ReadDate {
  const t = text.normalize('NFKC').trim().toLowerCase();
  const bare = readDay(t);
  if (bare.kind !== 'unreadable') return bare;
  // A day and a clock time, with a blank or a T between them.
  const m = /^(.*\d)(?:t|,?\s+)(\d{1,2}[:.]\d{2}(?:[:.]\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m\.?)?)z?$/.exec(t);
  const clock = m === null ? null : readClockCell(m[2] ?? '');
  if (m === null || clock === null) return bare;
  const day = readDay(m[1] ?? '');
  return day.kind === 'date' || day.kind === 'figures' ? { ...day, clock } : bare;
}

function readDay(text: string): ReadDate {
  const t = text.replace(WEEKDAY, '').replace(/,$/, '');
  const first = YEAR_FIRST.exec(t);
  if (first) return dateOrNot(civil(first[1], first[2], first[3]));
  const dots = DOTS.exec(t);
  if (dots) return dateOrNot(civil(dots[3], dots[2], dots[1]));
  const figures = FIGURES.exec(t);
  if (figures) return eitherWay(figures[1], figures[2], figures[3]);
  const words = DAY_MONTH.exec(t);
  if (words) return dateOrNot(civil(words[3], monthOf(words[2]), words[1]));
  const american = MONTH_DAY.exec(t);
  if (american) return dateOrNot(civil(american[3], monthOf(american[1]), american[2]));
  if (AT_BIRTH.test(t)) return { kind: 'age', days: 0 };
  const age = AGE.exec(t);
  if (age) return { kind: 'age', days: Number(age[2] ?? age[3]) * (/^w/.test(age[1] ?? age[4] ?? '') ? 7 : 1) };
  return NO_YEAR.test(t) ? { kind: 'no-year' } : { kind: 'unreadable' };
}

function eitherWay(a = '', b = '', year = ''): ReadDate {
  const [dmy, mdy] = [civil(year, b, a), civil(year, a, b)];
  if (dmy === null && mdy === null) return { kind: 'unreadable' };
  return dmy === mdy && dmy !== null ? { kind: 'date', date: dmy, clock: null } : { kind: 'figures', dmy, mdy, clock: null };
}

function dateOrNot(date: CivilDate | null): ReadDate {
  return date === null ? { kind: 'unreadable' } : { kind: 'date', date, clock: null };
}

function civil(year = '', month = '', day = ''): CivilDate | null {
  const y = year.length === 2 ? `20${year}` : year;
  return parseDate(`${y}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
}

function monthOf(word = ''): string {
  return String(MONTHS.indexOf(word.slice(0, 3)) + 1);
}

/** A clock time `hh:mm` out of `7:10`, `07.10`, `0710`, `7h10`, `7:10 pm`, `7 pm`; null when it is none. Seconds are left off. */
export function readClockCell(text: string): string | null {
  const t = text.normalize('NFKC').trim().toLowerCase();
  const m = /^(\d{1,2})(?:[:.h](\d{2})(?::\d{2}(?:\.\d+)?)?|(\d{2}))?\s*([ap])?\.?(?:m\.?)?$/.exec(t);
  if (m === null) return null;
  const [minute, half] = [m[2] ?? m[3], m[4]];
  if (minute === undefined && half === undefined) return null;
  const hour = Number(m[1]);
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  const h = half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  if (h > 23 || Number(minute ?? 0) > 59) return null;
  return `${String(h).padStart(2, '0')}:${minute ?? '00'}`;
}

/**
 * Which order the dates of a table are written in, by those that only one order makes a date of: null when none tells,
 * `both` when they tell different things.
 */
export function orderOf(dates: readonly ReadDate[]): DateOrder | 'both' | null {
  const figures = dates.filter((d) => d.kind === 'figures');
  const dayFirst = figures.some((d) => d.mdy === null);
  const monthFirst = figures.some((d) => d.dmy === null);
  if (dayFirst && monthFirst) return 'both';
  return dayFirst ? 'dmy' : monthFirst ? 'mdy' : null;
}
