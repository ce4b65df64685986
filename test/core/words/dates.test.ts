import { describe, expect, it } from 'vitest';
import { addDays, date } from '../../../core/calendar/day.ts';
import { dateSpan, fullDate, longDate, shortMonth, WEEKDAY_NAMES, weekdayName } from '../../../core/words/en/dates.ts';
import { counted, fixed, grouped, listed, placeWord, plain } from '../../../core/words/en/figures.ts';

describe('dates as they are said', () => {
  it('says day, month and year in this order, without commas', () => {
    expect(longDate(date('2026-11-26'))).toBe('Thursday 26 November');
    expect(fullDate(date('2026-09-01'))).toBe('1 September 2026');
    expect(dateSpan(date('2026-11-28'), date('2026-12-04'))).toBe('28\u00a0November to 4\u00a0December');
    expect(dateSpan(date('2026-11-21'), date('2026-11-27'))).toBe('21 to 27\u00a0November');
  });

  it('shortens every month to three letters', () => {
    const months = Array.from({ length: 12 }, (_, i) => shortMonth(date(`2026-${String(i + 1).padStart(2, '0')}-15`)));
    expect(months).toEqual(['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']);
  });

  it('begins the week on Monday, on both sides of 1970', () => {
    expect(WEEKDAY_NAMES).toEqual(['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']);
    for (let day = 0; day < 7; day += 1) {
      expect(weekdayName(addDays(date('2026-11-23'), day))).toBe(WEEKDAY_NAMES[day]);
      expect(weekdayName(addDays(date('1901-04-01'), day))).toBe(WEEKDAY_NAMES[day]);
    }
  });
});

describe('figures as they are written', () => {
  it('parts thousands by a space that does not break', () => {
    expect(grouped(2395)).toBe('2\u00a0395');
    expect(grouped(12_345.25, 1)).toBe('12\u00a0345.3');
    expect(plain(2395.04, 1)).toBe('2395');
  });

  it('keeps the rounding of the number, with as many noughts as asked for', () => {
    expect([fixed(1.005, 2), fixed(0.145, 2), fixed(9.96, 1), fixed(1234, 0)]).toEqual(['1.00', '0.14', '10.0', '1234']);
  });

  it('says places, counts and lists', () => {
    expect([1, 2, 3, 12, 13, 21, 22, 23, 111].map(placeWord)).toEqual([
      'first',
      'second',
      'third',
      'twelfth',
      '13th',
      '21st',
      '22nd',
      '23rd',
      '111th',
    ]);
    expect([counted(1, 'day'), counted(0, 'day'), counted(2, 'puppy', 'puppies')]).toEqual(['1 day', '0 days', '2 puppies']);
    expect([listed([]), listed(['Tansy']), listed(['Tansy', 'Moss']), listed(['Tansy', 'Moss', 'Fern'])]).toEqual([
      '',
      'Tansy',
      'Tansy and Moss',
      'Tansy, Moss and Fern',
    ]);
  });
});
