/** How long an hour and a day are: elapsed time in milliseconds, clock time in minutes. */
export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;
export const DAY_MINUTES = 1440;
