import { useId, useMemo, useRef } from 'react';
import { addDays, type CivilDate } from '../../../core/calendar/day.ts';
import type { LadderStep } from '../../../core/feeding/ladder.ts';
import type { MealName } from '../../../core/food/bowls.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import type { Catalogue } from '../../../core/words/catalogue.ts';
import { words } from '../../state/words.ts';
import { useMeasure, useWidth } from '../measure.ts';
import { type LadderLayout, ladderLayout } from './ladder-layout.ts';
import { LAYERS, type LadderLook, type LadderTexts, weightOf } from './ladder-look.ts';
import '../parts.css';

/** 184 mm at 96 px an inch: the width inside the margins of A4. */
const PAPER: LadderLook = {
  width: 695,
  height: 284,
  pad: 4,
  figure: 17,
  bracket: 17,
  change: 14.5,
  layer: 14.5,
  age: 15.5,
  date: 14,
};

function screenLook(width: number): LadderLook {
  return width < 560
    ? { width, height: 250, pad: 4, figure: 14, bracket: 14.5, change: 14, layer: 14, age: 14, date: 0 }
    : { width, height: 228, pad: 8, figure: 16, bracket: 15, change: 14, layer: 14, age: 14, date: 0 };
}

/**
 * The food of one puppy as a ladder: a tread a week, later a month. `nowDay` is its age in days today, null when nothing is
 * to be marked. On screen it fills the width it is given and its rows follow as a table for readers; on paper it is drawn
 * for a sheet 184 mm wide, and the plan has its own table.
 */
export function MealLadder({
  steps,
  born,
  nowDay,
  unit = 'g',
  paper = false,
  paperHigh = PAPER.height,
  spoken = words,
  plates = false,
}: {
  steps: readonly LadderStep[];
  born: CivilDate;
  nowDay: number | null;
  unit?: MassUnit;
  paper?: boolean;
  /** Height on paper over its width of 695. */
  paperHigh?: number;
  /** In the language of the paper; else of the window. */
  spoken?: Catalogue;
  /** Plates under texts instead of an edge around their letters. */
  plates?: boolean;
}) {
  const box = useRef<HTMLDivElement>(null);
  const wide = useWidth(box);
  const measure = useMeasure();
  const width = paper ? PAPER.width : wide;
  const layout = useMemo(
    () =>
      width === 0 || steps.length === 0
        ? null
        : ladderLayout(
            steps,
            born,
            nowDay,
            paper ? { ...PAPER, height: paperHigh } : screenLook(width),
            ladderTexts(unit, paper, spoken),
            measure,
          ),
    [steps, born, nowDay, unit, paper, paperHigh, width, measure, spoken],
  );
  return (
    <div className={paper ? 'ladder' : 'ladder on-screen'} ref={box}>
      {layout !== null && <LadderPicture layout={layout} unit={unit} paper={paper} spoken={spoken} plates={plates} />}
      {!paper && steps.length > 0 && (
        <>
          <p className="note">{words.ladder.how}</p>
          <LadderTable steps={steps} born={born} unit={unit} />
        </>
      )}
    </div>
  );
}

function ladderTexts(unit: MassUnit, paper: boolean, words: Catalogue): LadderTexts {
  return {
    figure: (grams, first, now) => {
      const figure = first || now ? words.foodText(grams, unit) : words.foodFigure(grams, unit);
      return now ? `${words.ladder.now} ${figure}` : figure;
    },
    meals: (count) => [words.ladder.mealsADay(count), words.ladder.mealsShort(count)],
    change: (days) => [words.ladder.change(days), words.ladder.changeShort(days)],
    layer: (meal) => words.ladder.meals[meal],
    weeks: paper ? words.ladder.weeksPaper : words.ladder.weeks,
    months: paper ? words.ladder.monthsPaper : words.ladder.months,
    date: words.ladder.date,
    now: words.ladder.now,
  };
}

function LadderPicture({
  layout,
  unit,
  paper,
  spoken,
  plates,
}: {
  layout: LadderLayout;
  unit: MassUnit;
  paper: boolean;
  spoken: Catalogue;
  plates: boolean;
}) {
  const hatch = useId();
  const spots = useId();
  const { width, height, base, changes, brackets, ticks, texts, now } = layout;
  const fills: Record<MealName, string> = {
    evening: 'var(--layer-evening)',
    night: 'var(--layer-evening)',
    afternoon: `url(#${spots})`,
    midday: `url(#${hatch})`,
    forenoon: `url(#${spots})`,
    morning: 'var(--layer-morning)',
  };
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      {...(paper ? {} : { width, height })}
      role="img"
      aria-label={pictureWords(layout, unit, spoken)}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill="var(--paper)" />
          <rect width="2.2" height="6" fill="var(--hatch)" />
        </pattern>
        <pattern id={spots} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="7" height="7" fill="var(--paper)" />
          <circle cx="3.5" cy="3.5" r="1.5" fill="var(--hatch)" />
        </pattern>
      </defs>
      {changes.map((c) => (
        <rect key={c.from} className="changing" x={c.from} y={c.top} width={c.to - c.from} height={base - c.top} />
      ))}
      {LAYERS.map((meal) => (
        <path key={meal} d={layerPath(layout, meal)} fill={fills[meal]} />
      ))}
      {LAYERS.slice(0, -1).map((meal) => (
        <path key={meal} className="edge" d={edgePath(layout, meal)} />
      ))}
      <path className="outline" d={outlinePath(layout)} />
      {!paper && now !== null && <path className="present" d={`M${now.from} ${now.top}H${now.to}`} />}
      <path className="axis" d={`M0 ${base}H${width}${ticks.map((x) => `M${x} ${base}v5`).join('')}`} />
      {brackets.map((b) => (
        <path key={b.from} className="span" d={`M${b.from} ${b.y + 6}V${b.y}H${b.to}V${b.y + 6}`} />
      ))}
      {/* Letters with an edge around them become drawings in a PDF: on new papers a plate is laid under those that stand on a layer. */}
      {plates &&
        texts
          .filter((t) => t.kind === 'layer')
          .map((t) => (
            <rect
              key={`${t.x} ${t.y}`}
              className="plate"
              x={t.x - t.width / 2 - 3}
              y={t.y - t.size * 0.86}
              width={t.width + 6}
              height={t.size * 1.12}
            />
          ))}
      {texts.map((t) => (
        <text
          key={`${t.kind} ${t.x} ${t.y}`}
          className={!plates && (t.kind === 'figure' || t.kind === 'layer') ? `${t.kind} halo` : t.kind}
          x={t.x}
          y={t.y}
          fontSize={t.size}
          fontWeight={weightOf(t.kind)}
          textAnchor="middle"
        >
          {t.text}
        </text>
      ))}
    </svg>
  );
}

function layerPath({ treads }: LadderLayout, meal: MealName): string {
  return treads
    .flatMap((t) =>
      t.layers.filter((l) => l.meal === meal).map((l) => `M${t.from} ${l.top}H${t.to + 0.4}V${l.bottom}H${t.from}Z`),
    )
    .join('');
}

/** The ink edge between two meals; the topmost edge is the outline. */
function edgePath({ treads }: LadderLayout, meal: MealName): string {
  return treads
    .flatMap((t) => t.layers.filter((l) => l.meal === meal && l.top > t.top + 0.5).map((l) => `M${t.from} ${l.top}H${t.to}`))
    .join('');
}

function outlinePath({ treads, base }: LadderLayout): string {
  const [first, last] = [treads[0], treads.at(-1)];
  if (first === undefined || last === undefined) return '';
  return `M${first.from} ${base}${treads.map((t) => `V${t.top}H${t.to}`).join('')}V${base}`;
}

function pictureWords({ treads }: LadderLayout, unit: MassUnit, words: Catalogue): string {
  const [first, last] = [treads[0]?.step, treads.at(-1)?.step];
  const largest = Math.max(...treads.map((t) => t.step.dayGrams));
  if (first === undefined || last === undefined) return words.ladder.table;
  return words.ladder.picture(
    words.foodText(first.dayGrams, unit),
    Object.keys(first.meals).length,
    words.foodText(largest, unit),
    words.foodText(last.dayGrams, unit),
  );
}

function LadderTable({ steps, born, unit }: { steps: readonly LadderStep[]; born: CivilDate; unit: MassUnit }) {
  const columns = [...LAYERS].reverse().filter((meal) => steps.some((s) => s.meals[meal] !== undefined));
  return (
    <div className="unseen">
      <table>
        <caption>{words.ladder.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.ladder.age}</th>
            <th scope="col">{words.ladder.from}</th>
            <th scope="col">{words.ladder.day}</th>
            {columns.map((meal) => (
              <th key={meal} scope="col">
                {words.ladder.meals[meal]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {steps.map((s) => (
            <tr key={s.fromDay}>
              <th scope="row">{words.ageInWords(born, addDays(born, s.fromDay))}</th>
              <td>{words.fullDate(addDays(born, s.fromDay))}</td>
              <td>{words.foodText(s.dayGrams, unit)}</td>
              {columns.map((meal) => {
                const grams = s.meals[meal];
                return <td key={meal}>{grams === undefined ? words.ladder.notFed : words.foodText(grams, unit)}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
