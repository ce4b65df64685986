/** Round figures for the axes of a picture on paper. */
import { words } from './words.ts';

const STEPS = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50] as const;
const MOST_LINES = 5;

/** The end of a scale that holds `most` and a line beyond for the unit, in at most five or six even steps. */
export function niceTop(highest: number): { top: number; step: number } {
  for (const step of STEPS) {
    const lines = Math.ceil(highest / step + 1e-9);
    if (lines <= MOST_LINES) return { top: Math.max(1, lines) * step, step };
  }
  return { top: highest, step: highest };
}

const MOST_TICKS = 9;

/** Ticks from birth to an age in days: every week, or every second, fourth, eighth … */
export function weekTicks(lastDay: number): { day: number; text: string }[] {
  const weeks = Math.floor(lastDay / 7 + 0.15);
  const every = [1, 2, 4, 8, 13, 26, 52, 104].find((n) => weeks / n <= MOST_TICKS) ?? 208;
  const ticks = [{ day: 0, text: words.paper.birth }];
  for (let week = every; week <= weeks; week += every) {
    const last = week + every > weeks;
    ticks.push({ day: week * 7, text: last ? words.paper.week(week) : String(week) });
  }
  return ticks;
}
