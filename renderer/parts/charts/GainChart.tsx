import { useMemo } from 'react';
import { GRAMS_PER_OUNCE, isMetric, type MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import { type AgeSpan, ageAxis, ageSpan, ageWords, baseOptions, massAxis } from './axes.ts';
import { ChartFrame, cornerText, EndLabel, groundTexts, useEnds } from './ChartFrame.tsx';
import type { DrawChart } from './useChart.ts';

interface GainPoint {
  readonly ageDays: number;
  readonly gramsPerDay: number;
  readonly percentPerDay: number;
}

/** Gain a day by age, as bars on a line of nought; the last one in figures too, with its share of the weight. */
export function GainChart({
  gains,
  name,
  unit,
  span,
  height = 340,
  describedBy,
}: {
  gains: readonly GainPoint[];
  name: string;
  unit: MassUnit;
  span?: AgeSpan;
  height?: number;
  describedBy?: string;
}) {
  const [ends, watchEnds] = useEnds();
  const { grams, name: unitName, decimals } = gainUnit(unit);
  const draw = useMemo<DrawChart>(() => {
    const figure = (value: number) => words.chart.signedFigure(Math.abs(value).toFixed(decimals), value);
    const ages = span ?? { from: 0, until: ageSpan(gains).until + HALF_A_BAR };
    return (theme) => {
      const options = baseOptions(theme, END);
      const tooltip = {
        ...options.plugins?.tooltip,
        callbacks: {
          title: (items: { parsed: { x: number | null } }[]) => ageWords(items[0]?.parsed.x ?? 0),
          label: (item: { dataIndex: number; parsed: { y: number | null } }) => [
            `${figure(item.parsed.y ?? 0)}\u00a0${unitName}`,
            words.chart.percentADay(gains[item.dataIndex]?.percentPerDay ?? 0),
          ],
        },
      };
      return {
        type: 'bar',
        data: {
          datasets: [
            {
              data: gains.map((g) => ({ x: g.ageDays, y: g.gramsPerDay / grams })),
              backgroundColor: gains.map((g, i) =>
                g.gramsPerDay < 0 ? theme.accent : i === gains.length - 1 ? theme.ink : theme.edge,
              ),
              barThickness: 'flex',
              maxBarThickness: 18,
              barPercentage: 0.72,
              categoryPercentage: 1,
              clip: 10,
            },
          ],
        },
        options: {
          ...options,
          scales: {
            x: ageAxis(theme, ages),
            y: {
              ...massAxis(theme, (v) => (v < 0 ? words.chart.signedFigure(String(Math.abs(v)), v) : String(v))),
              beginAtZero: true,
            },
          },
          plugins: { ...options.plugins, tooltip },
        },
        plugins: [groundTexts(theme, (chart) => [cornerText(chart, words.chart.gain(unitName))]), watchEnds(BARS)],
      };
    };
  }, [gains, span, grams, unitName, decimals, watchEnds]);
  const last = gains.at(-1);
  return (
    <ChartFrame draw={draw} label={words.chart.gainPicture(name, unitName)} describedBy={describedBy} height={height}>
      {last !== undefined &&
        ends?.ends.map((end) => (
          <EndLabel key={end.key} ends={ends} y={Math.max(end.y, ends.top + 18)} width={END - 12}>
            <b>
              {words.chart.signedFigure(Math.abs(last.gramsPerDay / grams).toFixed(decimals), last.gramsPerDay)}&nbsp;{unitName}
            </b>
            <span className="note">{words.chart.percent(Math.round(last.percentPerDay * 10) / 10)}</span>
          </EndLabel>
        ))}
    </ChartFrame>
  );
}

const BARS: ReadonlyMap<number, string> = new Map([[0, 'last']]);
const END = 72;
const HALF_A_BAR = 0.5;

/** A day's gain is small: grams, or ounces with one decimal. */
function gainUnit(unit: MassUnit): { grams: number; name: string; decimals: number } {
  return isMetric(unit) ? { grams: 1, name: 'g', decimals: 0 } : { grams: GRAMS_PER_OUNCE, name: 'oz', decimals: 1 };
}
