import { expect, test } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { date } from '../../../core/calendar/day.ts';
import { dayName, sinceWhen, weighingName, whenBefore, whenBeforeOwner } from '../../../core/words/en/weighings.ts';

const now = localTime('2026-03-12T07:10');

test('days are named as people do', () => {
  expect(dayName(date('2026-03-10'), date('2026-03-12'))).toBe('Tuesday');
  expect(dayName(date('2026-03-05'), date('2026-03-12'))).toBe('5 March');
  expect(sinceWhen(localTime('2026-03-10T07:00'), now)).toBe('Tuesday');
  expect(sinceWhen(localTime('2026-03-11T19:00'), now)).toBe('Wednesday evening');
  expect(whenBefore(localTime('2026-03-11T07:00'), now)).toBe('yesterday');
  expect(whenBefore(localTime('2026-03-09T07:00'), now)).toBe('on Monday');
});

test('a weighing is named by day and part of the day, and what was weighed belongs to it', () => {
  expect(weighingName(localTime('2026-03-09T19:00'), now)).toBe('Monday evening');
  expect(weighingName(localTime('2026-03-01T19:00'), now)).toBe('1 March');
  expect(whenBefore(localTime('2026-03-12T02:00'), now)).toBe('this night');
  expect(whenBeforeOwner(localTime('2026-03-11T19:00'), now)).toBe('yesterday evening’s');
  expect(whenBeforeOwner(localTime('2026-03-09T19:00'), now)).toBe('Monday’s');
});
