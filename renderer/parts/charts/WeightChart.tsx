import type { Chart } from 'chart.js';
import { useMemo } from 'react';
import type { Level } from '../../../core/growth/assess.ts';
import type { Collar } from '../../../core/litter/collar.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import { CollarBand } from '../CollarBand.tsx';
import { pointMarks } from '../marks.ts';
import { spread } from '../spread.ts';
import { type AgeSpan, ageAxis, ageSpan, ageWords, axisUnit, baseOptions, massAxis, RIGHT } from './axes.ts';
import { ChartFrame, cornerText, EndLabel, type GroundText, groundTexts, useEnds } from './ChartFrame.tsx';
import type { DrawChart } from './useChart.ts';

export interface WeightPoint {
  readonly ageDays: number;
  readonly grams: number;
}
/** The littermates at an age, in grams. */
interface MatesPoint {
  readonly ageDays: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}
export interface ForecastPoint {
  readonly ageDays: number;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/**
 * One puppy's weight by age in its littermates' band, with a forecast when one is given. `marks` holds a level for each point
 * of `own`. `span` sets the ages shown, to stand over a {@link StandingStrip}; left out, from birth to the last point.
 */
export function WeightChart({
  own,
  band,
  forecast = NO_FORECAST,
  fastest: fastestPoints = NO_POINTS,
  line = NO_POINTS,
  name,
  collar,
  unit,
  marks,
  span,
  height = 340,
  describedBy,
}: {
  own: readonly WeightPoint[];
  band: readonly MatesPoint[];
  forecast?: readonly ForecastPoint[];
  /** The published upper edge of newborn growth, in grams. */
  fastest?: readonly WeightPoint[];
  /** The middle of the breeder's own line, in grams. */
  line?: readonly WeightPoint[];
  name: string;
  collar: Collar;
  unit: MassUnit;
  marks?: readonly Level[];
  span?: AgeSpan;
  height?: number;
  describedBy?: string;
}) {
  const [ends, watchEnds] = useEnds();
  const heaviest = Math.max(0, ...own.map((p) => p.grams), ...band.map((p) => p.high), ...forecast.map((p) => p.high));
  const axis = useMemo(() => axisUnit(unit, heaviest), [unit, heaviest]);
  const draw = useMemo<DrawChart>(() => {
    const at = (ageDays: number, grams: number) => ({ x: ageDays, y: grams / axis.grams });
    const ages = span ?? ageSpan(own, band, forecast);
    return (theme) => {
      const ghost = { borderWidth: 0, pointRadius: 0, pointHitRadius: 0 };
      const options = baseOptions(theme, RIGHT, 'lastLine');
      const tooltip = {
        ...options.plugins?.tooltip,
        callbacks: {
          title: (items: { parsed: { x: number | null } }[]) => ageWords(items[0]?.parsed.x ?? 0),
          label: (item: { parsed: { y: number | null } }) => `${name} ${words.massText((item.parsed.y ?? 0) * axis.grams, unit)}`,
        },
      };
      return {
        type: 'line',
        data: {
          datasets: [
            { ...ghost, order: 4, data: band.map((p) => at(p.ageDays, p.low)) },
            { ...ghost, order: 4, data: band.map((p) => at(p.ageDays, p.high)), fill: '-1', backgroundColor: theme.littermates },
            {
              ...ghost,
              order: 3,
              data: forecast.map((p) => at(p.ageDays, p.low)),
              borderWidth: 1,
              borderColor: theme.edge,
              borderDash: [2, 3],
            },
            {
              ...ghost,
              order: 3,
              data: forecast.map((p) => at(p.ageDays, p.high)),
              fill: '-1',
              backgroundColor: `${theme.littermates}90`,
              borderWidth: 1,
              borderColor: theme.edge,
              borderDash: [2, 3],
            },
            {
              ...ghost,
              order: 2,
              data: band.map((p) => at(p.ageDays, p.median)),
              borderWidth: 1.5,
              borderColor: theme.soft,
              borderDash: [5, 4],
            },
            {
              ...ghost,
              order: 2,
              data: forecast.map((p) => at(p.ageDays, p.mid)),
              borderWidth: 2,
              borderColor: theme.ink,
              borderDash: [2, 4],
            },
            {
              ...ghost,
              order: 2,
              data: fastestPoints.map((p) => at(p.ageDays, p.grams)),
              borderWidth: 1.5,
              borderColor: theme.edge,
              borderDash: [8, 3, 2, 3],
            },
            {
              ...ghost,
              order: 2,
              data: line.map((p) => at(p.ageDays, p.grams)),
              borderWidth: 1,
              borderColor: theme.ink,
            },
            {
              order: 1,
              data: own.map((p) => at(p.ageDays, p.grams)),
              borderColor: theme.ink,
              borderWidth: 2.4,
              borderJoinStyle: 'round',
              clip: 8,
              ...pointMarks(theme, own.length, marks),
            },
          ],
        },
        options: {
          ...options,
          scales: {
            x: ageAxis(theme, ages),
            y: { ...massAxis(theme, axis.figure, { min: 0 }), ...(heaviest === 0 ? { max: NOTHING_YET / axis.grams } : {}) },
          },
          plugins: { ...options.plugins, tooltip },
        },
        plugins: [
          groundTexts(theme, (chart) => [
            cornerText(chart, words.chart.weight(axis.name)),
            ...bandTexts(chart, band.length),
            ...lineText(chart, MOST, fastestPoints.length, words.chart.most),
            ...lineText(chart, LINE, line.length, words.chart.line),
          ]),
          watchEnds(new Map([[OWN, 'own'], ...(band.length === 0 ? [] : [[MIDDLE, 'middle'] as const])])),
        ],
      };
    };
  }, [own, band, forecast, fastestPoints, line, name, unit, heaviest, marks, span, axis, watchEnds]);
  const last = own.at(-1);
  const label =
    last === undefined
      ? words.chart.weightPictureEmpty(name)
      : words.chart.weightPicture(name, words.massText(last.grams, unit), axis.name);
  const places =
    ends === null
      ? []
      : spread(
          ends.ends.map((e) => e.y),
          26,
          ends.top + 6,
          ends.bottom - 8,
        );
  return (
    <ChartFrame draw={draw} label={label} describedBy={describedBy} height={height}>
      {ends?.ends.map((end, i) => (
        <EndLabel key={end.key} ends={ends} y={places[i] ?? end.y}>
          {end.key === 'own' ? (
            <CollarBand collar={collar} height={20} label={null} />
          ) : (
            <span className="note">{words.chart.middle}</span>
          )}
        </EndLabel>
      ))}
    </ChartFrame>
  );
}

const NO_POINTS: readonly WeightPoint[] = [];
const NO_FORECAST: readonly ForecastPoint[] = [];
/** Grams shown on an empty chart. */
const NOTHING_YET = 500;
const LOW = 0;
const HIGH = 1;
const MIDDLE = 4;
const MOST = 6;
const LINE = 7;
const OWN = 8;

/** What the line is, left of its upper end. */
function lineText(chart: Chart, set: number, count: number, text: string): GroundText[] {
  const shown = chart.getDatasetMeta(set).data.filter((p) => p.x <= chart.chartArea.right && p.y >= chart.chartArea.top + 20);
  const last = count === 0 ? undefined : shown.at(-1);
  return last === undefined ? [] : [{ text, x: last.x - 12, y: last.y, align: 'right' }];
}

/** "heaviest" over the band and "lightest littermate" under it, where the band is wide enough to be seen. */
function bandTexts(chart: Chart, count: number): GroundText[] {
  if (count < 6) return [];
  const high = chart.getDatasetMeta(HIGH).data[Math.floor(count * 0.66)];
  const low = chart.getDatasetMeta(LOW).data[Math.floor(count * 0.66)];
  if (high === undefined || low === undefined || low.y - high.y < 10 || low.x - chart.chartArea.left < 140) return [];
  const lowest = Math.min(low.y + 22, chart.chartArea.bottom - 12);
  const texts: GroundText[] = [{ text: words.chart.heaviest, x: high.x - 12, y: high.y - 14, align: 'right' }];
  const width = chart.ctx.measureText(words.chart.lightest).width;
  if (low.x + 12 + width < chart.chartArea.right)
    texts.push({ text: words.chart.lightest, x: low.x + 12, y: lowest, align: 'left' });
  return texts;
}
