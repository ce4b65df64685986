import type { EarlierPlan } from '../../../core/homing/earlier-plan.ts';
import { GRAMS_PER_POUND } from '../../../core/units/mass.ts';
import { niceTop, weekTicks } from './picture-axes.ts';
import { words } from './words.ts';

/** Millimetres, nearly: the picture is drawn 129 mm wide. */
const WIDE = 130;
const HIGH = 47;
const PLOT = { left: 10, right: 109, top: 8, base: 40.5 };
const TEXT = 3.9;
const LONGEST_NAME = 7;

/** Weights so far on paper: own line with a square each week, the littermates as a band behind it. */
export function WeightPicture({ document }: { document: EarlierPlan }) {
  const { own, band } = document.weights;
  const last = own.at(-1);
  if (last === undefined) return null;
  const grams = document.units.weight === 'kg' ? 1000 : GRAMS_PER_POUND;
  const lastDay = Math.max(last.day, 1);
  const shown = band.filter((b) => b.day <= lastDay + 0.5);
  const heaviest = Math.max(...own.map((p) => p.grams), ...shown.map((b) => b.high)) / grams;
  const { top, step } = niceTop(heaviest);
  const x = (day: number) => PLOT.left + (Math.min(day, lastDay) / lastDay) * (PLOT.right - PLOT.left);
  const y = (g: number) => PLOT.base - (g / grams / top) * (PLOT.base - PLOT.top);
  const lastText = document.weights.facts[0]?.figure ?? '';
  const sentence = shown.length > 1 ? words.paper.weightsPicture : words.paper.weightsPictureAlone;
  return (
    <svg
      className="weights"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={sentence(document.name, lastText, document.units.weight)}
    >
      {shown.length > 1 && (
        <path
          className="band"
          d={`M${shown.map((b) => `${x(b.day).toFixed(2)} ${y(b.high).toFixed(2)}`).join('L')}L${[...shown]
            .reverse()
            .map((b) => `${x(b.day).toFixed(2)} ${y(b.low).toFixed(2)}`)
            .join('L')}Z`}
        />
      )}
      <Scale top={top} step={step} unit={document.units.weight} />
      {weekTicks(lastDay).map(({ day, text }) => (
        <g key={day}>
          <path className="tick" d={`M${x(day)} ${PLOT.base}v1.3`} />
          <text x={x(day)} y={PLOT.base + 5.2} fontSize={TEXT} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${PLOT.left} ${PLOT.base}H${PLOT.right}`} />
      {shown.length > 1 && <BandName shown={shown} x={x} y={y} lastDay={lastDay} />}
      {own.length > 1 && (
        <path className="own" d={`M${own.map((p) => `${x(p.day).toFixed(2)} ${y(p.grams).toFixed(2)}`).join('L')}`} />
      )}
      {squares(own).map((p) => (
        <rect key={p.day} className="weighed" x={x(p.day) - 1} y={y(p.grams) - 1} width="2" height="2" />
      ))}
      <OwnName name={document.name} letter={document.collar.letter} x={x(last.day)} y={y(last.grams)} />
    </svg>
  );
}

function Scale({ top, step, unit }: { top: number; step: number; unit: string }) {
  const lines = Array.from({ length: Math.round(top / step) }, (_, i) => (i + 1) * step);
  const y = (value: number) => PLOT.base - (value / top) * (PLOT.base - PLOT.top);
  const digits = step < 1 ? (step < 0.1 ? 2 : 1) : 0;
  return (
    <>
      {lines.map((value) => (
        <g key={value}>
          <path className="grid" d={`M${PLOT.left} ${y(value)}H${PLOT.right}`} />
          <text x={PLOT.left - 1.4} y={y(value) + 1.4} fontSize={TEXT} textAnchor="end">
            {value.toFixed(digits)}
          </text>
        </g>
      ))}
      <text x={PLOT.left - 1.4} y={PLOT.top - 3.4} fontSize={TEXT} fontWeight="650" textAnchor="end">
        {unit}
      </text>
    </>
  );
}

/** Over the rising band its upper left is always free. */
function BandName({
  shown,
  x,
  y,
  lastDay,
}: {
  shown: EarlierPlan['weights']['band'];
  x: (d: number) => number;
  y: (g: number) => number;
  lastDay: number;
}) {
  const at = shown.find((b) => b.day >= lastDay * 0.62) ?? shown.at(-1);
  if (at === undefined) return null;
  const end = x(at.day) - 9;
  const foot = Math.max(y(at.high) - 6, PLOT.top + 8);
  return (
    <>
      {words.paper.littermates.map((line, i) => (
        <text key={line} className="halo" x={end} y={foot - 4.3 + i * 4.3} fontSize={TEXT} textAnchor="end">
          {line}
        </text>
      ))}
      <path className="leader" d={`M${end + 1} ${foot - 1}L${x(at.day) - 0.3} ${y(at.high) + 0.6}`} />
    </>
  );
}

/** A short name stands at the end of its line, a long one as the letter of its collar. */
function OwnName({ name, letter, x, y }: { name: string; letter: string; x: number; y: number }) {
  const short = name.length <= LONGEST_NAME;
  return (
    <>
      {!short && <rect className="plate" x={x + 2.6} y={y - 3} width="6" height="6" />}
      <text x={short ? x + 2.4 : x + 5.6} y={y + 1.6} fontSize="4.4" fontWeight="740" textAnchor={short ? 'start' : 'middle'}>
        {short ? name : letter}
      </text>
    </>
  );
}

/** The weight nearest to each whole week, and always the first and the last. */
function squares(own: EarlierPlan['weights']['own']): EarlierPlan['weights']['own'] {
  const chosen = new Map<number, EarlierPlan['weights']['own'][number]>();
  for (const p of own) {
    const week = Math.round(p.day / 7);
    const before = chosen.get(week);
    if (before === undefined || Math.abs(p.day - week * 7) < Math.abs(before.day - week * 7)) chosen.set(week, p);
  }
  const last = own.at(-1);
  const inWeeks = [...chosen.values()].filter((p) => p !== last && (last === undefined || last.day - p.day > 2.5));
  return last === undefined ? inWeeks : [...inWeeks, last];
}
