import { useRef } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { Dam } from '../../core/dogs/dam.ts';
import { grownUnit, type MassUnit } from '../../core/units/mass.ts';
import { useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { useWidth } from '../parts/measure.ts';
import { words } from '../state/words.ts';

const HIGH = 150;
const [LEFT, RIGHT, TOP, BASE] = [8, 8, 26, 118];

/** Her weights as a line, with the day of whelping or the due day marked; the same below as rows. */
export function DamCurve({ dam, mark, unit }: { dam: Dam; mark: { day: CivilDate; word: string } | null; unit: MassUnit }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const today = useToday();
  const { weights } = dam;
  const shown = grownUnit(unit);
  const last = weights.at(-1);
  return (
    <div className="dam-curve" ref={box}>
      <h3>{words.dam.weights}</h3>
      {last === undefined && <p className="line soft">{words.dam.weightsNone}</p>}
      {last !== undefined && width > 0 && weights.length > 1 && <Line dam={dam} mark={mark} width={width} unit={shown} />}
      {weights.toReversed().map((weight) => (
        <p key={weight.id} className="line">
          <span className="soft">{words.when(weight.at, today)}</span>
          <b>{words.massText(weight.grams, shown)}</b>
          <button
            type="button"
            className="link"
            aria-label={words.dam.takeBackOf(words.massText(weight.grams, shown), words.when(weight.at, today))}
            onClick={() => void run('dogs.damWithdraw', { weightId: weight.id })}
          >
            {words.dam.takeBack}
          </button>
        </p>
      ))}
    </div>
  );
}

function Line({
  dam: { weights },
  mark,
  width,
  unit,
}: {
  dam: Dam;
  mark: { day: CivilDate; word: string } | null;
  width: number;
  unit: MassUnit;
}) {
  const today = useToday();
  const [begin, end] = [weights[0], weights.at(-1)];
  if (begin === undefined || end === undefined) return null;
  const first = dateOf(begin.at);
  const days = weights.map((x) => daysBetween(first, dateOf(x.at)));
  const marked = mark === null ? null : daysBetween(first, mark.day);
  const from = Math.min(0, marked ?? 0);
  const until = Math.max(1, ...days, marked ?? 0);
  const grams = weights.map((x) => x.grams);
  const [low, high] = [Math.min(...grams) * 0.97, Math.max(...grams) * 1.03];
  const x = (day: number) => LEFT + ((day - from) / (until - from)) * (width - LEFT - RIGHT);
  const y = (g: number) => BASE - ((g - low) / (high - low)) * (BASE - TOP);
  const points = weights.map((weight, i) => [x(days[i] ?? 0), y(weight.grams)] as const);
  const path = points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px} ${py}`).join('');
  const label = words.dam.weightsPicture(weights.length, words.massText(end.grams, unit));
  return (
    <svg viewBox={`0 0 ${width} ${HIGH}`} width={width} height={HIGH} role="img" aria-label={label}>
      <path className="ground" d={`M0 ${BASE}H${width}`} />
      {marked !== null && <path className="mark" d={`M${x(marked)} ${TOP - 12}V${BASE}`} />}
      {marked !== null && mark !== null && (
        <text x={Math.min(width - 60, x(marked) + 6)} y={TOP - 6} fontSize="14">
          {mark.word}
        </text>
      )}
      <path className="own" d={path} />
      {points.map(([px, py]) => (
        <circle key={`${px} ${py}`} cx={px} cy={py} r="3.2" />
      ))}
      <text x={LEFT} y={HIGH - 10} fontSize="14">
        {words.shortDate(first, today)}
      </text>
      <text x={width - RIGHT} y={HIGH - 10} fontSize="14" textAnchor="end">
        {words.shortDate(dateOf(end.at), today)}
      </text>
      <text
        className="figure"
        x={width - RIGHT}
        y={Math.max(16, (points.at(-1)?.[1] ?? TOP) - 10)}
        fontSize="16"
        textAnchor="end"
      >
        {words.massText(end.grams, unit)}
      </text>
    </svg>
  );
}
