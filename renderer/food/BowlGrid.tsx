/** The week as a grid: one tab stop, arrows move, Enter opens, Delete empties, copy and paste; dragging does the same with the pointer. */

import { useRef } from 'react';
import { mealClock } from '../../core/feeding/meals.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { MealName } from '../../core/food/bowls.ts';
import type { FoodCatalogue } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type Bowl, bowlSchema, DAYS_OF_WEEK, type Place, type Week } from '../../core/food/rotation.ts';
import { words } from '../state/words.ts';
import { bowlAt, bowlLines } from './bowls.ts';

/** The type under which a bowl is carried; the text of it is a bowl as JSON. */
const CARRIED = 'application/x-whelpside-bowl';

/** A table that is moved in by arrows: the grid pattern of ARIA. */
const AS_GRID = { role: 'grid' } as const;

export interface GridProps {
  readonly week: Week;
  readonly columns: readonly MealName[];
  readonly rules: HouseRules;
  readonly catalogue: FoodCatalogue;
  readonly usual: Food;
  readonly at: Place;
  readonly onGo: (place: Place) => void;
  readonly onOpen: () => void;
  readonly onPut: (place: Place, bowl: Bowl | null) => void;
}

/** Takes hold of a bowl for dragging. */
export function carry(event: React.DragEvent, bowl: Bowl): void {
  event.dataTransfer.setData(CARRIED, JSON.stringify(bowl));
  event.dataTransfer.effectAllowed = 'copy';
}

function carried(event: React.DragEvent): Bowl | null {
  const text = event.dataTransfer.getData(CARRIED);
  if (text === '') return null;
  const read = bowlSchema.safeParse(JSON.parse(text));
  return read.success ? read.data : null;
}

export function BowlGrid(props: GridProps) {
  const { columns, rules, at } = props;
  const grid = useRef<HTMLTableElement>(null);
  const copied = useRef<Bowl | null>(null);
  const goTo = (place: Place) => {
    props.onGo(place);
    grid.current?.querySelector<HTMLElement>(`[data-place="${place.day} ${place.meal}"]`)?.focus();
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const bowl = bowlAt(props.week, at);
    const key = event.key.toLowerCase();
    if ((event.ctrlKey || event.metaKey) && key === 'c') copied.current = bowl;
    else if ((event.ctrlKey || event.metaKey) && key === 'v') props.onPut(at, copied.current);
    else if (key === 'enter' || key === 'f2') props.onOpen();
    else if (key === 'delete' || key === 'backspace') props.onPut(at, null);
    else {
      const next = moved(at, columns, event);
      if (next === null) return;
      goTo(next);
    }
    event.preventDefault();
  };
  return (
    <table {...AS_GRID} aria-label={words.week.grid} className="week-grid" ref={grid}>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{words.week.day}</span>
          </th>
          {columns.map((meal) => (
            <th key={meal} scope="col">
              {words.meal.names[meal]} <span className="week-time">{mealClock(rules, meal, columns.length)}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {words.week.days.map((name, day) => (
          <tr key={name}>
            <th scope="row">
              <span className="week-long">{name}</span>
              <span className="week-short" aria-hidden="true">
                {name.slice(0, 2)}
              </span>
            </th>
            {columns.map((meal) => (
              <td key={meal}>
                <Cell {...props} place={{ day, meal }} onGo={goTo} onKeyDown={onKeyDown} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Cell(props: GridProps & { place: Place; onKeyDown: (event: React.KeyboardEvent) => void }) {
  const { place, week, catalogue, usual, at, onGo, onPut, onOpen, onKeyDown } = props;
  const bowl = bowlAt(week, place);
  const here = at.day === place.day && at.meal === place.meal;
  const lines = bowlLines(bowl, catalogue);
  return (
    <button
      type="button"
      data-place={`${place.day} ${place.meal}`}
      tabIndex={here ? 0 : -1}
      aria-current={here ? 'true' : undefined}
      className={bowl === null ? 'week-cell' : 'week-cell filled'}
      draggable={bowl !== null}
      onClick={() => onGo(place)}
      onKeyDown={onKeyDown}
      onDoubleClick={onOpen}
      onDragStart={(event) => {
        if (bowl !== null) carry(event, bowl);
      }}
      onDragOver={(event) => {
        if (!event.dataTransfer.types.includes(CARRIED)) return;
        event.preventDefault();
        event.dataTransfer.dropEffect = 'copy';
      }}
      onDrop={(event) => {
        event.preventDefault();
        const dropped = carried(event);
        if (dropped === null) return;
        onPut(place, dropped);
        onGo(place);
      }}
    >
      {bowl === null ? (
        <span className="soft">{words.foods.nameOf(usual)}</span>
      ) : (
        lines.map((line) => <span key={line}>{line}</span>)
      )}
    </button>
  );
}

/** Where a key leads, null when it leads nowhere: arrows a cell without wrapping, Home and End along a day, with Ctrl to the corners. */
function moved({ day, meal }: Place, columns: readonly MealName[], event: React.KeyboardEvent): Place | null {
  const column = columns.indexOf(meal);
  const lastColumn = columns.length - 1;
  const lastDay = DAYS_OF_WEEK - 1;
  const to = (d: number, c: number): Place => ({
    day: Math.min(lastDay, Math.max(0, d)),
    meal: columns[Math.min(lastColumn, Math.max(0, c))] ?? meal,
  });
  switch (event.key) {
    case 'ArrowUp':
      return to(day - 1, column);
    case 'ArrowDown':
      return to(day + 1, column);
    case 'ArrowLeft':
      return to(day, column - 1);
    case 'ArrowRight':
      return to(day, column + 1);
    case 'Home':
      return to(event.ctrlKey ? 0 : day, 0);
    case 'End':
      return to(event.ctrlKey ? lastDay : day, lastColumn);
    case 'PageUp':
      return to(0, column);
    case 'PageDown':
      return to(lastDay, column);
    default:
      return null;
  }
}
