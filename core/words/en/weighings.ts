/** When something was weighed, seen from a later weighing. */
import { clockOf, dateOf, type LocalTime } from '../../calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../calendar/day.ts';
import { dayAndMonth, weekdayName } from './dates.ts';

/** "Tuesday" within the last six days, else "12 March". */
export function dayName(day: CivilDate, today: CivilDate): string {
  const ago = daysBetween(day, today);
  return ago >= 0 && ago <= 6 ? weekdayName(day) : dayAndMonth(day);
}

/** "Tuesday", or "Tuesday morning" when it is under two days ago. */
export function sinceWhen(at: LocalTime, now: LocalTime): string {
  return dayAndPart(at, now, 1);
}

/** "Tuesday morning", or "12 March" when it is longer ago. */
export function weighingName(at: LocalTime, now: LocalTime): string {
  return dayAndPart(at, now, 6);
}

function dayAndPart(at: LocalTime, now: LocalTime, daysWithPart: number): string {
  const name = dayName(dateOf(at), dateOf(now));
  return daysBetween(dateOf(at), dateOf(now)) <= daysWithPart ? `${name} ${partOfDay(at)}` : name;
}

function partOfDay(at: LocalTime): string {
  const hour = Number(clockOf(at).slice(0, 2));
  if (hour < 5) return 'night';
  if (hour < 12) return 'morning';
  return hour < 18 ? 'afternoon' : 'evening';
}

/** "yesterday", "this morning", "on Tuesday". */
export function whenBefore(at: LocalTime, now: LocalTime): string {
  const ago = daysBetween(dateOf(at), dateOf(now));
  if (ago === 0) return `this ${partOfDay(at)}`;
  if (ago === 1) return partOfDay(at) === 'evening' && partOfDay(now) === 'morning' ? 'yesterday evening' : 'yesterday';
  return `on ${dayName(dateOf(at), dateOf(now))}`;
}

/** "yesterday’s", "Tuesday’s". */
export function whenBeforeOwner(at: LocalTime, now: LocalTime): string {
  return `${whenBefore(at, now).replace(/^on /, '')}’s`;
}
