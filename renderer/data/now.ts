/** The clock and the time zone of this machine, asked in one place so that core never needs them. */
import { useEffect, useState } from 'react';
import { type LocalTime, localTime } from '../../core/calendar/clock.ts';
import { type CivilDate, date } from '../../core/calendar/day.ts';

const two = (n: number) => String(n).padStart(2, '0');

/** The local time of an instant in ms, by this machine's zone. */
export function localOf(instant: number): LocalTime {
  const d = new Date(instant);
  return localTime(
    `${String(d.getFullYear()).padStart(4, '0')}-${two(d.getMonth() + 1)}-${two(d.getDate())}T${two(d.getHours())}:${two(d.getMinutes())}`,
  );
}

/** The instant of a local time by this machine's zone; a time that a clock change skipped is moved forward. */
export function instantOf(t: LocalTime): number {
  return new Date(t).getTime();
}

/** Minutes east of UTC, now. */
export function utcOffsetMinutes(): number {
  return -new Date().getTimezoneOffset();
}

export function now(): { instant: number; local: LocalTime } {
  const instant = Date.now();
  return { instant, local: localOf(instant) };
}

/** Today's date; a component that uses it is drawn again after midnight. */
export function useToday(): CivilDate {
  const [today, setToday] = useState(() => date(now().local.slice(0, 10)));
  useEffect(() => {
    const timer = setInterval(() => setToday(date(now().local.slice(0, 10))), 30_000);
    return () => clearInterval(timer);
  }, []);
  return today;
}
