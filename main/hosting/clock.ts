/** The clock and the ids that the hosts hand to the program, so that nothing below them asks the machine. */
import { randomUUID } from 'node:crypto';
import { type LocalTime, localTime } from '../../core/calendar/clock.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** This moment: ms since 1970 and the local time by the machine's zone. */
export function now(): { instant: number; local: LocalTime } {
  const d = new Date();
  const day = `${String(d.getFullYear()).padStart(4, '0')}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
  return { instant: d.getTime(), local: localTime(`${day}T${two(d.getHours())}:${two(d.getMinutes())}`) };
}

/** Minutes east of UTC, now, by the machine's zone. */
export function utcOffsetMinutes(): number {
  return -new Date().getTimezoneOffset();
}

/** A new id: 122 random bits. */
export function newId(): string {
  return randomUUID();
}
