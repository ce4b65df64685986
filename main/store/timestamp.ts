import type { LocalTime } from '../../core/calendar/clock.ts';

/** The moment as the caller's clock has it: milliseconds since 1970 and what the kitchen clock says. */
export interface Timestamp {
  readonly instant: number;
  readonly local: LocalTime;
}
