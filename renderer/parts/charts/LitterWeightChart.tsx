import type { Plugin } from 'chart.js';
import { useMemo } from 'react';
import type { Collar } from '../../../core/litter/collar.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import { CollarBand } from '../CollarBand.tsx';
import { spread } from '../spread.ts';
import { ageAxis, ageSpan, ageWords, axisUnit, baseOptions, massAxis } from './axes.ts';
import { ChartFrame, cornerText, EndLabel, groundTexts, useEnds } from './ChartFrame.tsx';
import type { ChartTheme, DrawChart } from './useChart.ts';
import type { WeightPoint } from './WeightChart.tsx';

interface LitterLine {
  readonly puppyId: string;
  readonly name: string;
  readonly collar: Collar;
  readonly points: readonly WeightPoint[];
}

/** So that lines are told apart without colour; sixteen collars, eight dashes, ink and soft ink. */
const DASHES = [[], [9, 4], [2, 3], [12, 3, 2, 3], [5, 5], [16, 4], [7, 3, 2, 3, 2, 3], [1, 5]];
const BAND = 18;
/** Grams shown on an empty chart. */
const NOTHING_YET = 500;

/** Weights of the whole litter by age: a line each, its collar at the end. `picked` is drawn heavy, the others pale. */
export function LitterWeightChart({
  lines,
  unit,
  picked = null,
  height = 380,
  describedBy,
}: {
  lines: readonly LitterLine[];
  unit: MassUnit;
  picked?: string | null;
  height?: number;
  describedBy?: string;
}) {
  const [ends, watchEnds] = useEnds();
  const heaviest = Math.max(0, ...lines.flatMap((l) => l.points.map((p) => p.grams)));
  const axis = useMemo(() => axisUnit(unit, heaviest), [unit, heaviest]);
  const draw = useMemo<DrawChart>(() => {
    const ages = ageSpan(...lines.map((l) => l.points));
    return (theme) => {
      const options = baseOptions(theme);
      const tooltip = {
        ...options.plugins?.tooltip,
        callbacks: {
          title: (items: { parsed: { x: number | null } }[]) => ageWords(items[0]?.parsed.x ?? 0),
          label: (item: { datasetIndex: number; parsed: { y: number | null } }) =>
            `${lines[item.datasetIndex]?.name ?? ''} ${words.massText((item.parsed.y ?? 0) * axis.grams, unit)}`,
        },
      };
      return {
        type: 'line',
        data: {
          datasets: lines.map((line, i) => ({
            data: line.points.map((p) => ({ x: p.ageDays, y: p.grams / axis.grams })),
            ...lineLook(theme, i, picked === null ? null : picked === line.puppyId),
          })),
        },
        options: {
          ...options,
          interaction: { mode: 'nearest', axis: 'xy', intersect: false },
          scales: {
            x: ageAxis(theme, ages),
            y: { ...massAxis(theme, axis.figure, { min: 0 }), ...(heaviest === 0 ? { max: NOTHING_YET / axis.grams } : {}) },
          },
          plugins: { ...options.plugins, tooltip },
        },
        plugins: [
          groundTexts(theme, (chart) => [cornerText(chart, words.chart.weight(axis.name))]),
          leaders(theme, lines.length),
          watchEnds(new Map(lines.map((line, i) => [i, line.puppyId]))),
        ],
      };
    };
  }, [lines, unit, picked, heaviest, axis, watchEnds]);
  const places =
    ends === null
      ? []
      : placesOf(
          ends.ends.map((e) => e.y),
          ends.top,
          ends.bottom,
        );
  return (
    <ChartFrame
      draw={draw}
      label={words.chart.litterPicture(lines.map((l) => l.name).join(', '), axis.name)}
      describedBy={describedBy}
      height={height}
    >
      {ends?.ends.map((end, i) => {
        const line = lines.find((l) => l.puppyId === end.key);
        return line === undefined ? null : (
          <EndLabel key={end.key} ends={ends} y={places[i] ?? end.y}>
            <CollarBand collar={line.collar} height={BAND - 1} faded={picked !== null && picked !== line.puppyId} label={null} />
          </EndLabel>
        );
      })}
    </ChartFrame>
  );
}

function placesOf(wanted: readonly number[], top: number, bottom: number): number[] {
  return spread(wanted, BAND + 1, top + BAND / 2, bottom - BAND / 2);
}

function lineLook(theme: ChartTheme, i: number, picked: boolean | null) {
  return {
    borderColor: picked === false ? theme.edge : i < DASHES.length ? theme.ink : theme.soft,
    borderWidth: picked === null ? 1.6 : picked ? 3 : 1,
    borderDash: picked === true ? [] : (DASHES[i % DASHES.length] ?? []),
    pointRadius: picked === true ? 2.2 : 0,
    pointHoverRadius: 4,
    pointBackgroundColor: theme.ink,
    clip: 6,
    order: picked === true ? -1 : i,
  };
}

/** A thin line from where a line ends to its collar, which may stand a little off. */
function leaders(theme: ChartTheme, count: number): Plugin<'line' | 'bar'> {
  return {
    id: 'leaders',
    afterDatasetsDraw: (chart) => {
      const { ctx, chartArea } = chart;
      const lasts = Array.from({ length: count }, (_, i) => chart.getDatasetMeta(i).data.at(-1)).filter((p) => p !== undefined);
      const places = placesOf(
        lasts.map((p) => p.y),
        chartArea.top,
        chartArea.bottom,
      );
      ctx.save();
      ctx.strokeStyle = theme.edge;
      ctx.lineWidth = 1;
      for (const [i, p] of lasts.entries()) {
        ctx.beginPath();
        ctx.moveTo(p.x + 2, p.y);
        ctx.lineTo(chartArea.right + 11, places[i] ?? p.y);
        ctx.stroke();
      }
      ctx.restore();
    },
  };
}
