/** The sentences of the growth method: short, with numbers and day names. They point, they never diagnose. */

import { clockOf, dateOf, type LocalTime } from '../calendar/clock.ts';
import { ageInDays, type CivilDate, dateParts, daysBetween, weekday } from '../calendar/day.ts';
import type { Sex } from '../reference/classes.ts';
import { type MassUnit, massText } from '../units/mass.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
const MONTHS = [
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

export interface Pronouns {
  readonly subject: 'he' | 'she';
  readonly object: 'him' | 'her';
  readonly possessive: 'his' | 'her';
}

export function pronouns(sex: Sex): Pronouns {
  return sex === 'dog'
    ? { subject: 'he', object: 'him', possessive: 'his' }
    : { subject: 'she', object: 'her', possessive: 'her' };
}

/** "Tuesday" within the last six days, else "12 March". */
export function dayName(day: CivilDate, today: CivilDate): string {
  const ago = daysBetween(day, today);
  if (ago >= 0 && ago <= 6) return DAYS[weekday(day)] ?? day;
  const { day: d, month } = dateParts(day);
  return `${d} ${MONTHS[month - 1] ?? ''}`;
}

/** "Tuesday", or "Tuesday morning" when it is under two days ago. */
export function sinceWhen(at: LocalTime, now: LocalTime): string {
  const name = dayName(dateOf(at), dateOf(now));
  return daysBetween(dateOf(at), dateOf(now)) < 2 ? `${name} ${partOfDay(at)}` : name;
}

/** "Tuesday morning", or "12 March" when it is longer ago. */
export function weighingName(at: LocalTime, now: LocalTime): string {
  const name = dayName(dateOf(at), dateOf(now));
  return daysBetween(dateOf(at), dateOf(now)) <= 6 ? `${name} ${partOfDay(at)}` : name;
}

function partOfDay(at: LocalTime): string {
  const hour = Number(clockOf(at).slice(0, 2));
  if (hour < 5) return 'night';
  if (hour < 12) return 'morning';
  return hour < 18 ? 'afternoon' : 'evening';
}

/** "yesterday", "this morning", "on Tuesday": a weighing seen from a later one. */
export function whenBefore(at: LocalTime, now: LocalTime): string {
  const ago = daysBetween(dateOf(at), dateOf(now));
  if (ago === 0) return `this ${partOfDay(at) === 'night' ? 'night' : partOfDay(at)}`;
  if (ago === 1) return partOfDay(at) === 'evening' && partOfDay(now) === 'morning' ? 'yesterday evening' : 'yesterday';
  return `on ${dayName(dateOf(at), dateOf(now))}`;
}

/** "yesterday's", "Tuesday's". */
export function whenBeforeOwner(at: LocalTime, now: LocalTime): string {
  return `${whenBefore(at, now).replace(/^on /, '')}’s`;
}

/** A gain: grams for metric scales, ounces for others. Sign left out. */
export function gainText(grams: number, unit: MassUnit): string {
  const small = unit === 'g' || unit === 'kg' ? 'g' : 'oz';
  return massText(Math.abs(grams), small);
}

function gainFigure(grams: number, unit: MassUnit): string {
  return gainText(grams, unit).replace(/\u00a0(?:g|oz)$/, '');
}

/** Whole days in words: "nine days". */
export function daysInWords(days: number): string {
  return `${NUMBERS[days] ?? String(days)} ${days === 1 ? 'day' : 'days'}`;
}

/**
 * "Since Tuesday about 60 % less gain than expected: 16 g a day instead of 41." Gains in grams per day; `who` loses weight
 * is "she has been", or "the puppies have been" with the middle of them.
 */
export function lessGain(since: string, actual: number, expected: number, unit: MassUnit, who: string): string {
  if (actual < -0.5) {
    return `Since ${since} ${who} losing about ${gainText(actual, unit)} a day instead of gaining ${gainFigure(expected, unit)}.`;
  }
  if (actual < 0.5) return `No gain since ${since}; ${gainText(expected, unit)} a day was expected.`;
  const percent = Math.round((20 * (expected - actual)) / expected) * 5;
  return `Since ${since} about ${percent}\u00a0% less gain than expected: ${gainText(actual, unit)} a day instead of ${gainFigure(expected, unit)}.`;
}

/** Two weeks and younger puppies are told apart from those that eat. */
const SUCKS_UNTIL = 24;

/** What to do for one puppy, in order. Common practice, no source; it does not replace the vet. */
export function puppyTodo(level: 'watch' | 'act', p: Pronouns, ageDays: number): string[] {
  const warm =
    ageDays < 28
      ? [`Keep ${p.object} warm; a chilled puppy cannot digest, so warm first, then milk.`]
      : [`Keep ${p.object} warm and quiet.`];
  const feed =
    ageDays < SUCKS_UNTIL
      ? [`See ${p.object} suckle and swallow; put ${p.object} on a full teat first.`]
      : [`See ${p.object} eat and drink, alone and in peace.`];
  if (level === 'watch') {
    return [
      'Check the number: weigh again now.',
      'Weigh again in 6 to 12 hours; that weight counts.',
      ...warm,
      ...feed,
      'If the next weight is no better, call your vet.',
    ];
  }
  return ['Check the number: weigh again now.', 'Then weigh every 6 hours.', ...warm, ...feed, 'Call your vet now.'];
}

/** What to do for the whole litter. Common practice, no source. */
export function litterTodo(level: 'watch' | 'act'): string[] {
  const first = [
    'Look at the dam first: food, water, teats, temperature.',
    'Check the scale with something whose weight you know.',
    'Check the warmth where they lie.',
  ];
  return level === 'watch'
    ? [...first, 'Weigh all of them again in 6 to 12 hours.', 'If they are no better then, call your vet.']
    : [...first, 'Weigh all of them again in 6 hours.', 'Call your vet now, for the dam and the puppies.'];
}

/** Whether a late starter is still possible: it looks just like fading until it catches up. */
export function lateStarterNote(born: CivilDate, on: CivilDate): string {
  return ageInDays(born, on) <= 4 ? ' It may be a late starter; until the weight catches up nobody can tell.' : '';
}

/** 9 % over, 3 % under. */
export function standingText(standing: number): string {
  const percent = Math.round(100 * (Math.exp(standing) - 1));
  if (percent === 0) return 'in the middle';
  return `${Math.abs(percent)}\u00a0% ${percent < 0 ? 'under' : 'over'} the middle`;
}

export function coarseScale(stepGrams: number, unit: MassUnit): string {
  return `The scale moves in steps of ${gainText(stepGrams, unit)}: too coarse for early signs at these weights.`;
}
