/** What every chart shares: age on x with weekly lines, real units on y, one left and right edge for charts under one another. */
import type { ChartOptions } from 'chart.js';
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND, isMetric, type MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import type { ChartTheme } from './useChart.ts';

/** Width kept free left of every chart for its figures, and right of it for the collars at the ends of the lines. */
const LEFT = 52;
export const RIGHT = 64;
const DAYS_IN_MONTH = 365.25 / 12;

/** A unit that an axis can count in: pounds and ounces are counted in pounds. */
interface AxisUnit {
  readonly grams: number;
  readonly name: string;
  readonly figure: (value: number) => string;
}

const plain = (value: number): string => words.grouped(Math.round(value * 100) / 100, 2);

export function axisUnit(unit: MassUnit, heaviest: number): AxisUnit {
  if (isMetric(unit)) {
    return unit === 'kg' || heaviest > 20_000
      ? { grams: 1000, name: 'kg', figure: plain }
      : { grams: 1, name: 'g', figure: plain };
  }
  if (unit === 'oz' && heaviest <= 5_000) return { grams: GRAMS_PER_OUNCE, name: 'oz', figure: plain };
  return heaviest < GRAMS_PER_POUND
    ? { grams: GRAMS_PER_OUNCE, name: 'oz', figure: plain }
    : { grams: GRAMS_PER_POUND, name: 'lb', figure: plain };
}

/** First and last age in days shown, so that charts under one another share their weeks. */
export interface AgeSpan {
  readonly from: number;
  readonly until: number;
}

/** From birth to the oldest point, at least four days. */
export function ageSpan(...series: (readonly { readonly ageDays: number }[])[]): AgeSpan {
  const oldest = Math.max(0, ...series.flatMap((s) => s.map((p) => p.ageDays)));
  return { from: 0, until: Math.max(4, oldest) };
}

/** Days up to two weeks, weeks to half a year, then months; never closer than their words. */
export function ageTicks({ from, until }: AgeSpan, width: number): { value: number; label: string }[] {
  const room = Math.max(2, Math.floor((width - LEFT - RIGHT) / (until - from > 200 ? 84 : 62) + 0.3));
  const span = until - from;
  const steps: [number, (n: number) => string][] = [
    ...[1, 2, 3].map((n): [number, (i: number) => string] => [n, (i) => words.chart.days(i * n)]),
    ...[1, 2, 4, 8, 12].map((n): [number, (i: number) => string] => [7 * n, (i) => words.chart.weeks(i * n)]),
    ...[1, 2, 3, 6, 12].map((n): [number, (i: number) => string] => [DAYS_IN_MONTH * n, (i) => words.chart.months(i * n)]),
  ];
  const usable = steps.filter(
    ([days]) => (span > 14 ? days >= 7 : true) && (span > 200 ? days % 7 !== 0 : days <= 3 || days % 7 === 0),
  );
  const [days, label] = usable.find(([d]) => span / d <= room) ?? usable.at(-1) ?? [7, words.chart.weeks];
  const ticks = [];
  for (let i = Math.ceil(from / days); i * days <= until + 1e-6; i += 1)
    ticks.push({ value: i * days, label: i === 0 ? words.chart.birth : label(i) });
  return ticks;
}

type Axis = NonNullable<NonNullable<ChartOptions<'line' | 'bar'>['scales']>[string]>;

export function ageAxis(theme: ChartTheme, span: AgeSpan): Axis {
  return {
    type: 'linear',
    min: span.from,
    max: span.until,
    border: { display: true, color: theme.edge, width: 1.5, dash: [1, 4] },
    grid: { color: theme.rule, tickLength: 6, lineWidth: 1, offset: false },
    afterBuildTicks: (scale) => {
      scale.ticks = ageTicks(span, scale.chart.width);
    },
    offset: false,
    ticks: {
      callback(value) {
        return ageTicks(span, this.chart.width).find((t) => Math.abs(t.value - Number(value)) < 1e-6)?.label ?? '';
      },
      color: theme.soft,
      font: { family: theme.face, size: 14 },
      autoSkip: false,
      maxRotation: 0,
      align: 'inner',
      padding: 4,
    },
  };
}

/** `figure` writes a tick; the axis is as wide as its neighbour's below. */
export function massAxis(
  theme: ChartTheme,
  figure: (value: number) => string,
  limits: { min?: number; max?: number; step?: number } = {},
): Axis {
  return {
    type: 'linear',
    ...(limits.min === undefined ? {} : { min: limits.min }),
    ...(limits.max === undefined ? {} : { max: limits.max }),
    border: { display: false },
    grid: {
      color: (line) => (line.tick.value === 0 ? theme.edge : theme.rule),
      lineWidth: (line) => (line.tick.value === 0 ? 1.6 : 1),
      tickLength: 0,
    },
    afterFit: (scale) => {
      scale.width = LEFT;
    },
    ticks: {
      color: theme.soft,
      font: { family: theme.face, size: 14 },
      padding: 8,
      maxTicksLimit: 7,
      ...(limits.step === undefined ? {} : { stepSize: limits.step }),
      callback: (value) => figure(Number(value)),
    },
  };
}

export function baseOptions(
  theme: ChartTheme,
  right = RIGHT,
  mode: 'nearest' | 'lastLine' = 'nearest',
): ChartOptions<'line' | 'bar'> {
  return {
    animation: false,
    responsive: true,
    maintainAspectRatio: false,
    normalized: true,
    interaction: { mode, axis: 'x', intersect: false },
    layout: { padding: { right, top: 8 } },
    plugins: {
      tooltip: {
        animation: false,
        backgroundColor: theme.sheet,
        borderColor: theme.ink,
        borderWidth: 1,
        titleColor: theme.soft,
        bodyColor: theme.ink,
        titleFont: { family: theme.face, size: 14, weight: 'normal' },
        bodyFont: { family: theme.face, size: 15 },
        cornerRadius: 2,
        caretSize: 0,
        padding: 8,
        displayColors: false,
      },
    },
  };
}

/** "9 days", "4 weeks 2 days". */
export function ageWords(ageDays: number): string {
  const days = Math.floor(ageDays + 1e-6);
  if (days === 0) return words.chart.birth;
  if (days < 14) return words.chart.days(days);
  if (days > 190) return words.chart.months(Math.floor(days / DAYS_IN_MONTH));
  return days % 7 === 0
    ? words.chart.weeks(days / 7)
    : `${words.chart.weeks(Math.floor(days / 7))} ${words.chart.days(days % 7)}`;
}
