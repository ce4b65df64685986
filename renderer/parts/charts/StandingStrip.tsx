import { useMemo } from 'react';
import type { Level } from '../../../core/growth/assess.ts';
import type { Collar } from '../../../core/litter/collar.ts';
import { words } from '../../state/words.ts';
import { CollarBand } from '../CollarBand.tsx';
import { percentOf } from '../drift-layout.ts';
import { pointMarks } from '../marks.ts';
import { type AgeSpan, ageAxis, ageSpan, ageWords, baseOptions, massAxis } from './axes.ts';
import { ChartFrame, cornerText, EndLabel, groundTexts, useEnds } from './ChartFrame.tsx';
import type { DrawChart } from './useChart.ts';

interface StandingPoint {
  readonly ageDays: number;
  /** Log ratio to the littermates' median. */
  readonly standing: number;
}

/** Where a puppy stood, by age, in per cent of the middle: the slip that a steep weight curve hides. */
export function StandingStrip({
  points,
  marks,
  name,
  collar,
  span,
  height = 130,
  describedBy,
}: {
  points: readonly StandingPoint[];
  marks?: readonly Level[];
  name: string;
  collar: Collar;
  span?: AgeSpan;
  height?: number;
  describedBy?: string;
}) {
  const [ends, watchEnds] = useEnds();
  const draw = useMemo<DrawChart>(() => {
    const data = points.map((p) => ({ x: p.ageDays, y: percentOf(p.standing) }));
    const least = Math.min(-5, ...data.map((d) => d.y - 1));
    const highest = Math.max(2, ...data.map((d) => d.y + 1));
    const step = [5, 10, 20, 50, 100].find((s) => (highest - least) / s <= 5) ?? 200;
    return (theme) => {
      const options = baseOptions(theme);
      const tooltip = {
        ...options.plugins?.tooltip,
        callbacks: {
          title: (items: { parsed: { x: number | null } }[]) => ageWords(items[0]?.parsed.x ?? 0),
          label: (item: { parsed: { y: number | null } }) => words.chart.percent(Math.round(item.parsed.y ?? 0) + 0),
        },
      };
      return {
        type: 'line',
        data: {
          datasets: [
            {
              data,
              borderColor: theme.ink,
              borderWidth: 2,
              borderJoinStyle: 'round',
              clip: 8,
              ...pointMarks(theme, data.length, marks),
            },
          ],
        },
        options: {
          ...options,
          scales: {
            x: ageAxis(theme, span ?? ageSpan(points)),
            y: {
              ...massAxis(theme, (v) => (v === 0 ? words.chart.middle : words.chart.percent(v)), { step }),
              suggestedMin: least,
              suggestedMax: highest,
            },
          },
          plugins: { ...options.plugins, tooltip },
        },
        plugins: [
          groundTexts(theme, (chart) => [{ ...cornerText(chart, words.chart.standing), y: chart.chartArea.bottom - 11 }]),
          watchEnds(OWN),
        ],
      };
    };
  }, [points, marks, span, watchEnds]);
  return (
    <ChartFrame draw={draw} label={words.chart.standingPicture(name)} describedBy={describedBy} height={height}>
      {ends?.ends.map((end) => (
        <EndLabel key={end.key} ends={ends} y={end.y}>
          <CollarBand collar={collar} height={20} label={null} />
        </EndLabel>
      ))}
    </ChartFrame>
  );
}

const OWN: ReadonlyMap<number, string> = new Map([[0, 'own']]);
