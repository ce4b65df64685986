/** Ages in calendar months. */
import { addMonths, type CivilDate } from './day.ts';

/** Completed calendar months on a date (5 months from 31 August is 31 January, from 30 September 28 February). */
export function ageInMonths(born: CivilDate, on: CivilDate): number {
  let months = (Number(on.slice(0, 4)) - Number(born.slice(0, 4))) * 12 + Number(on.slice(5, 7)) - Number(born.slice(5, 7));
  if (addMonths(born, months) > on) months -= 1;
  return months;
}
