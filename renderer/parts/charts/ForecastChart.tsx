import { useMemo } from 'react';
import type { MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import { ageAxis, ageSpan, ageWords, axisUnit, baseOptions, massAxis } from './axes.ts';
import { ChartFrame, cornerText, groundTexts } from './ChartFrame.tsx';
import type { DrawChart } from './useChart.ts';
import type { ForecastPoint, WeightPoint } from './WeightChart.tsx';

const OWN = 3;
const HEAVY = 20_001;

/** Weight until grown: the forecast as a band around its middle, what was weighed as dots. In kg, or in pounds. */
export function ForecastChart({
  own,
  forecast,
  name,
  unit,
  height = 320,
  describedBy,
}: {
  own: readonly WeightPoint[];
  forecast: readonly ForecastPoint[];
  name: string;
  unit: MassUnit;
  height?: number;
  describedBy?: string;
}) {
  const axis = useMemo(() => axisUnit(unit, HEAVY), [unit]);
  const draw = useMemo<DrawChart>(() => {
    const at = (ageDays: number, grams: number) => ({ x: ageDays, y: grams / axis.grams });
    return (theme) => {
      const options = baseOptions(theme, 24);
      const edge = { borderWidth: 1, borderColor: theme.edge, pointRadius: 0, pointHitRadius: 0 };
      const tooltip = {
        ...options.plugins?.tooltip,
        filter: (item: { datasetIndex: number }) => item.datasetIndex >= 2,
        callbacks: {
          title: (items: { parsed: { x: number | null } }[]) => ageWords(items[0]?.parsed.x ?? 0),
          label: (item: { datasetIndex: number; parsed: { y: number | null } }) => {
            const text = `${(item.parsed.y ?? 0).toFixed(item.datasetIndex === OWN ? 2 : 1)}\u00a0${axis.name}`;
            return item.datasetIndex === OWN ? `${name} ${text}` : `${words.chart.forecast} ${text}`;
          },
        },
      };
      return {
        type: 'line',
        data: {
          datasets: [
            { ...edge, order: 3, data: forecast.map((p) => at(p.ageDays, p.low)) },
            {
              ...edge,
              order: 3,
              data: forecast.map((p) => at(p.ageDays, p.high)),
              fill: '-1',
              backgroundColor: theme.littermates,
            },
            {
              ...edge,
              order: 2,
              data: forecast.map((p) => at(p.ageDays, p.mid)),
              borderWidth: 2,
              borderColor: theme.ink,
              borderDash: [6, 4],
            },
            {
              order: 1,
              data: own.map((p) => at(p.ageDays, p.grams)),
              showLine: false,
              pointRadius: 2.4,
              pointHoverRadius: 4,
              pointBackgroundColor: theme.ink,
              pointBorderWidth: 0,
              clip: 6,
            },
          ],
        },
        options: {
          ...options,
          scales: { x: ageAxis(theme, ageSpan(own, forecast)), y: massAxis(theme, axis.figure, { min: 0 }) },
          plugins: { ...options.plugins, tooltip },
        },
        plugins: [groundTexts(theme, (chart) => [cornerText(chart, words.chart.weight(axis.name))])],
      };
    };
  }, [own, forecast, name, axis]);
  return (
    <ChartFrame draw={draw} label={words.chart.forecastPicture(name, axis.name)} describedBy={describedBy} height={height} />
  );
}
