/** Dates against an independent implementation: the Temporal polyfill (ECMAScript proposal, ISO 8601 calendar). */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { ageInMonths } from '../../../core/calendar/age.ts';
import { fromLocalMinutes, localMinutes, localTime, parseLocalTime } from '../../../core/calendar/clock.ts';
import {
  addDays,
  addMonths,
  ageInDays,
  date,
  dayNumber,
  daysBetween,
  daysInMonth,
  fromDayNumber,
  isLeapYear,
  parseDate,
  weekday,
} from '../../../core/calendar/day.ts';
import { ageInWords } from '../../../core/words/en/dates.ts';

const anyDay = fc.integer({ min: -700_000, max: 2_900_000 });
const EPOCH = Temporal.PlainDate.from('1970-01-01');
const iso = (n: number) => EPOCH.add({ days: n }).toString();

describe('civil dates against Temporal', () => {
  it('day numbers there and back', () => {
    fc.assert(
      fc.property(anyDay, (n) => {
        expect(fromDayNumber(n)).toBe(iso(n));
        expect(dayNumber(date(iso(n)))).toBe(n);
      }),
      { numRuns: 2000 },
    );
  });

  it('adds days and months, and counts between', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -500_000, max: 500_000 }),
        fc.integer({ min: -4000, max: 4000 }),
        fc.integer({ min: -60, max: 60 }),
        (n, days, months) => {
          const from = date(iso(n));
          const other = Temporal.PlainDate.from(from);
          expect(addDays(from, days)).toBe(other.add({ days }).toString());
          expect(addMonths(from, months)).toBe(other.add({ months }).toString());
          expect(daysBetween(from, addDays(from, days))).toBe(days);
          expect(weekday(from) + 1).toBe(other.dayOfWeek);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('months and leap years', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9998 }), fc.integer({ min: 1, max: 12 }), (year, month) => {
        const m = Temporal.PlainYearMonth.from({ year, month });
        expect(daysInMonth(year, month)).toBe(m.daysInMonth);
        expect(isLeapYear(year)).toBe(m.inLeapYear);
      }),
    );
  });

  it('ages in days and in months', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: 0, max: 4000 }), (n, age) => {
        const born = date(iso(n));
        const on = addDays(born, age);
        expect(ageInDays(born, on)).toBe(age);
        const months = ageInMonths(born, on);
        expect(addMonths(born, months) <= on).toBe(true);
        expect(addMonths(born, months + 1) > on).toBe(true);
      }),
    );
  });

  it('takes no text that is not a date', () => {
    for (const text of [
      '',
      '2026-02-29',
      '2026-13-01',
      '2026-00-10',
      '2026-04-31',
      '26-04-01',
      '2026-4-1',
      '2026-04-01 ',
      '0000-01-01',
    ]) {
      expect(parseDate(text), text).toBeNull();
    }
    expect(() => date('2026-02-29')).toThrow(RangeError);
    expect(() => fromDayNumber(9_000_000)).toThrow(RangeError);
    expect(() => daysInMonth(2026, 13)).toThrow(RangeError);
  });
});

describe('clock times', () => {
  it('local minutes there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000_000 }), (minutes) => {
        const t = fromLocalMinutes(minutes);
        expect(localMinutes(t)).toBe(minutes);
        expect(Temporal.PlainDateTime.from(t).toString().slice(0, 16)).toBe(t);
      }),
    );
  });

  it('takes no text that is not a time', () => {
    for (const text of ['2026-11-25T24:00', '2026-11-25T07:60', '2026-11-25 07:00', '2026-02-30T07:00', '07:00'])
      expect(parseLocalTime(text), text).toBeNull();
    expect(() => localTime('noon')).toThrow(RangeError);
  });
});

describe('ages in words', () => {
  const born = date('2026-10-24');
  it.each([
    [0, '0 days'],
    [1, '1 day'],
    [9, '9 days'],
    [14, '2 weeks'],
    [33, '4 weeks 5 days'],
    [56, '8 weeks'],
    [183, '6 months'],
  ])('%i days', (days, words) => {
    expect(ageInWords(born, addDays(born, days))).toBe(words);
  });
});
