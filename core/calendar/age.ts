/** Ages as breeders say them: days, then weeks and days, then months. */
import { addMonths, ageInDays, type CivilDate } from './day.ts';

/** Completed calendar months on a date (5 months from 31 August is 31 January, from 30 September 28 February). */
export function ageInMonths(born: CivilDate, on: CivilDate): number {
  let months = (Number(on.slice(0, 4)) - Number(born.slice(0, 4))) * 12 + Number(on.slice(5, 7)) - Number(born.slice(5, 7));
  if (addMonths(born, months) > on) months -= 1;
  return months;
}

/** "9 days", "4 weeks 5 days", "8 weeks", "7 months": days under two weeks, weeks to 26, then calendar months. */
export function ageInWords(born: CivilDate, on: CivilDate): string {
  const days = ageInDays(born, on);
  if (days < 14) return count(days, 'day');
  if (days < 182) {
    const weeks = Math.floor(days / 7);
    const rest = days - weeks * 7;
    return rest === 0 ? count(weeks, 'week') : `${count(weeks, 'week')} ${count(rest, 'day')}`;
  }
  return count(ageInMonths(born, on), 'month');
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
