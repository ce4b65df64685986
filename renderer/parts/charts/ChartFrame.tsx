import type { Chart, Plugin } from 'chart.js';
import { type ReactNode, useCallback, useRef, useState } from 'react';
import { RIGHT } from './axes.ts';
import { type ChartTheme, type DrawChart, useChart } from './useChart.ts';
import '../parts.css';

/** A canvas with a name for readers; `children` stand over it, at places in its own CSS pixels. */
export function ChartFrame({
  draw,
  label,
  describedBy,
  height,
  children,
}: {
  draw: DrawChart;
  label: string;
  describedBy: string | undefined;
  height: number;
  children?: ReactNode;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useChart(canvas, draw);
  return (
    <div className="chart" style={{ height }}>
      <canvas ref={canvas} role="img" aria-label={label} aria-describedby={describedBy} />
      {children}
    </div>
  );
}

/** Where the named lines of a chart end, in CSS pixels, and the bounds of its ground. */
export interface Ends {
  readonly ends: readonly { readonly key: string; readonly x: number; readonly y: number }[];
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Watches where lines end, so that collars can be set there: the plugin reports after each draw. */
export function useEnds(): [Ends | null, (keys: ReadonlyMap<number, string>) => Plugin<'line' | 'bar'>] {
  const [ends, setEnds] = useState<Ends | null>(null);
  const watch = useCallback(
    (keys: ReadonlyMap<number, string>): Plugin<'line' | 'bar'> => ({
      id: 'ends',
      afterDraw: (chart) => {
        const found = readEnds(chart, keys);
        setEnds((was) => (JSON.stringify(was) === JSON.stringify(found) ? was : found));
      },
    }),
    [],
  );
  return [ends, watch];
}

function readEnds(chart: Chart, keys: ReadonlyMap<number, string>): Ends {
  const { right, top, bottom } = chart.chartArea;
  const ends = [...keys].flatMap(([index, key]) => {
    const last = chart.getDatasetMeta(index).data.at(-1);
    return last === undefined ? [] : [{ key, x: last.x, y: last.y }];
  });
  return { ends, right, top, bottom };
}

/** A few words on the ground itself: at its top left, what is shown; elsewhere, what a line is. */
export interface GroundText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly align: 'left' | 'right';
}

export function groundTexts(theme: ChartTheme, textsOf: (chart: Chart) => readonly GroundText[]): Plugin<'line' | 'bar'> {
  return {
    id: 'groundTexts',
    afterDatasetsDraw: (chart) => {
      const { ctx } = chart;
      ctx.save();
      ctx.font = `400 14px ${theme.face}`;
      ctx.textBaseline = 'middle';
      ctx.lineJoin = 'round';
      ctx.lineWidth = 5;
      ctx.strokeStyle = theme.paper;
      ctx.fillStyle = theme.soft;
      for (const { text, x, y, align } of textsOf(chart)) {
        ctx.textAlign = align;
        ctx.strokeText(text, x, y);
        ctx.fillText(text, x, y);
      }
      ctx.restore();
    },
  };
}

/** What the chart shows, in its top left corner. */
export function cornerText(chart: Chart, text: string): GroundText {
  return { text, x: chart.chartArea.left + 7, y: chart.chartArea.top + 12, align: 'left' };
}

/** A label right of the ground, centred on a height. */
export function EndLabel({
  ends,
  y,
  width = RIGHT - 12,
  children,
}: {
  ends: Ends;
  y: number;
  width?: number;
  children: ReactNode;
}) {
  return (
    <span className="chart-end" style={{ left: ends.right + 12, top: y, width }}>
      {children}
    </span>
  );
}
