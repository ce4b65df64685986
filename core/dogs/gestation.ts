/** When she is due: a window from each date that is known, and the one to go by. */
import { addDays, type CivilDate } from '../calendar/day.ts';
import { ANY_MATING_DAYS, GESTATION_DAYS, GESTATION_FROM, type GestationFrom } from '../reference/feeding/gestation.ts';
import type { Known } from '../reference/feeding/known.ts';

/** What was seen or measured of the heat; null what was not. */
export interface HeatDates {
  readonly lh: CivilDate | null;
  readonly ovulation: CivilDate | null;
  readonly dioestrus: CivilDate | null;
  readonly firstMating: CivilDate | null;
  readonly lastMating: CivilDate | null;
}

export interface DueWindow {
  readonly from: GestationFrom;
  readonly low: CivilDate;
  readonly due: CivilDate;
  readonly high: CivilDate;
  readonly source: string;
  readonly known: Known;
}

/** The window from each known date, the narrowest kind first; empty when no date is known. The first is the one to go by. */
export function dueWindows(dates: HeatDates): DueWindow[] {
  return GESTATION_FROM.flatMap((from) => dueFrom(from, dates) ?? []);
}

/** Days from a date to the middle, first and last day of the window of its kind. */
export function dueDays(from: GestationFrom): { low: number; middle: number; high: number } {
  const { low, middle, high } = GESTATION_DAYS[from];
  return { low, middle, high };
}

function dueFrom(from: GestationFrom, dates: HeatDates): DueWindow | null {
  const { source, known } = GESTATION_DAYS[from];
  const days = dueDays(from);
  if (from !== 'mating') {
    const day = dates[from];
    return day === null
      ? null
      : { from, low: addDays(day, days.low), due: addDays(day, days.middle), high: addDays(day, days.high), source, known };
  }
  const first = dates.firstMating ?? dates.lastMating;
  if (first === null) return null;
  const last = dates.lastMating ?? first;
  // Several matings: nobody knows which one took, so the window opens to the extremes of a mating on any day.
  const several = last > first;
  return {
    from,
    low: addDays(first, several ? ANY_MATING_DAYS.low : days.low),
    due: addDays(several ? middleDay(first, last) : first, days.middle),
    high: addDays(last, several ? ANY_MATING_DAYS.high : days.high),
    source,
    known,
  };
}

function middleDay(first: CivilDate, last: CivilDate): CivilDate {
  let day = first;
  for (let ahead = 1; addDays(first, 2 * ahead) <= last; ahead += 1) day = addDays(first, ahead);
  return day;
}
