/** Chart.js, used directly: one hook that makes, redraws and takes away a chart, in the colours of the theme in force. */
import {
  BarController,
  BarElement,
  Chart,
  type ChartConfiguration,
  Filler,
  Interaction,
  type InteractionModeFunction,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
} from 'chart.js';
import { type RefObject, useEffect, useState } from 'react';
import { textFace } from '../measure.ts';

Chart.register(BarController, BarElement, Filler, LinearScale, LineController, LineElement, PointElement, Tooltip);

declare module 'chart.js' {
  interface InteractionModeMap {
    lastLine: InteractionModeFunction;
  }
}

/** The point nearest to the pointer on the last line of the chart, the puppy's own, wherever the bands have theirs. */
Interaction.modes.lastLine = (chart, event) => {
  const datasetIndex = chart.data.datasets.length - 1;
  let nearest: { element: PointElement; datasetIndex: number; index: number; off: number } | null = null;
  for (const [index, element] of chart.getDatasetMeta(datasetIndex).data.entries()) {
    const off = Math.abs(element.x - (event.x ?? 0));
    if (element instanceof PointElement && (nearest === null || off < nearest.off))
      nearest = { element, datasetIndex, index, off };
  }
  return nearest === null ? [] : [nearest];
};

/** Colours of the theme as they are now, and the text face. */
export interface ChartTheme {
  readonly paper: string;
  readonly sheet: string;
  readonly rule: string;
  readonly edge: string;
  readonly ink: string;
  readonly soft: string;
  readonly accent: string;
  readonly watch: string;
  readonly littermates: string;
  readonly face: string;
}

export type DrawChart = (theme: ChartTheme) => ChartConfiguration<'line' | 'bar', { x: number; y: number }[]>;

/**
 * Draws a chart on a canvas and again when `draw` is another function (keep it with `useMemo`), when the theme changes and
 * once the faces have loaded.
 */
export function useChart(canvas: RefObject<HTMLCanvasElement | null>, draw: DrawChart): void {
  const look = useLook();
  useEffect(() => {
    if (canvas.current === null) return;
    const chart = new Chart(canvas.current, draw(themeOf(canvas.current, look)));
    return () => chart.destroy();
  }, [canvas, draw, look]);
}

/** Changes whenever colours or faces may have changed. */
function useLook(): number {
  const [look, setLook] = useState(0);
  useEffect(() => {
    let gone = false;
    const again = () => {
      if (!gone) setLook((n) => n + 1);
    };
    const observer = new MutationObserver(again);
    observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    if (document.fonts.status !== 'loaded') void document.fonts.ready.then(again);
    return () => {
      gone = true;
      observer.disconnect();
    };
  }, []);
  return look;
}

function themeOf(element: Element, _look: number): ChartTheme {
  const style = getComputedStyle(element);
  const of = (name: string) => style.getPropertyValue(name).trim();
  return {
    paper: of('--paper'),
    sheet: of('--sheet'),
    rule: of('--rule'),
    edge: of('--edge'),
    ink: of('--ink'),
    soft: of('--soft'),
    accent: of('--accent'),
    watch: of('--watch'),
    littermates: of('--littermates'),
    face: textFace(),
  };
}
