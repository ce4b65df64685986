import type { Level } from '../../core/growth/assess.ts';
import type { ChartTheme } from './charts/useChart.ts';

/** How the points of one puppy's own line look: steady a small dot, watch an open ring, act a filled one. */
export function pointMarks(theme: ChartTheme, count: number, marks: readonly Level[] | undefined) {
  const levels = Array.from({ length: count }, (_, i) => marks?.[i] ?? 'steady');
  const small = count > 70 ? 1.4 : 2.2;
  const colour = { steady: theme.ink, watch: theme.watch, act: theme.accent };
  return {
    pointRadius: levels.map((l) => (l === 'steady' ? small : 4.6)),
    pointHoverRadius: levels.map((l) => (l === 'steady' ? 4 : 6)),
    pointBorderWidth: levels.map((l) => (l === 'steady' ? 0 : 2.4)),
    pointBorderColor: levels.map((l) => colour[l]),
    pointBackgroundColor: levels.map((l) => (l === 'watch' ? theme.paper : colour[l])),
  };
}
