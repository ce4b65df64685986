/** The weights of a table as they are written, and what it says of the litters. */
import type { MassUnit } from '../units/mass.ts';
import { rearm } from './csv.ts';
import { type ReadDate, readDateCell } from './import-dates.ts';
import { type Label, labelOf } from './import-labels.ts';
import { BLANK, type Column, dayOfHeading, FEW_FIGURES, type Shape } from './import-shape.ts';
import { isYes, type Meaning, nameKey, unitOf } from './import-words.ts';

/** One weight as it is written. */
export interface Entry {
  /** Line of the text or row of the sheet. */
  readonly line: number;
  /** The column's heading in a grid, null where each row is a weight. */
  readonly heading: string | null;
  readonly label: Label;
  readonly day: ReadDate | null;
  readonly dayText: string;
  readonly clockText: string;
  readonly sessionText: string;
  readonly weightText: string;
  /** The heading's unit, else the row's; null when only the number stands there. */
  readonly unit: MassUnit | null;
  readonly unitText: string;
  /** The text that a scale or keyboard gave, kept beside the weight in our own export; null elsewhere. */
  readonly typed: string | null;
  readonly held: boolean;
}

/** What the table says of the litter itself. */
export interface LitterWords {
  readonly key: string;
  readonly name: string;
  readonly dam: string;
  readonly sire: string;
  readonly breed: string;
  readonly born: ReadDate | null;
}

export type ColumnsFault = 'no-weights' | 'no-dates' | 'no-rows';

export interface Placed {
  readonly entry: Entry;
  readonly litterKey: string;
}

/** Our own export comes back to the letter: blanks at the ends of a name and names like "Red" are kept as they are. */
function isOurs(columns: readonly Column[]): boolean {
  return columns.some((c) => c.meaning === 'typed') && columns.some((c) => c.meaning === 'held');
}

/** Text of the first column of a meaning, our own disarming taken away. */
function textOf(columns: readonly Column[], row: readonly string[], meaning: Meaning): string {
  const column = columns.find((c) => c.meaning === meaning);
  const text = column === undefined ? '' : rearm(row[column.index] ?? '');
  return isOurs(columns) ? text : text.trim();
}

/** A day as a cell has it; in a column of days a number alone is an age in days. */
function dayOfCell(text: string): ReadDate | null {
  if (text === '') return null;
  return FEW_FIGURES.test(text) ? { kind: 'age', days: Number(text) } : readDateCell(text);
}

export function entriesOfRows(
  columns: readonly Column[],
  body: readonly (readonly string[])[],
  lines: readonly number[],
): Placed[] | ColumnsFault {
  const weight = columns.find((c) => c.meaning === 'weight');
  if (weight === undefined) return 'no-weights';
  if (!columns.some((c) => c.meaning === 'date')) return 'no-dates';
  const ours = isOurs(columns);
  return body.map((row, i) => {
    const text = (meaning: Meaning) => textOf(columns, row, meaning);
    const unitText = text('unit');
    return {
      litterKey: litterKey(columns, row),
      entry: {
        line: lines[i] ?? i + 1,
        heading: null,
        label: labelIn(text, ours),
        day: dayOfCell(text('date')),
        dayText: text('date'),
        clockText: text('time'),
        sessionText: text('session'),
        weightText: text('weight'),
        unit: weight.unit ?? unitOf(unitText),
        unitText,
        typed: ours ? text('typed') : null,
        held: isYes(text('held')),
      },
    };
  });
}

export function entriesOfGrid(
  shape: Exclude<Shape, 'rows'>,
  columns: readonly Column[],
  body: readonly (readonly string[])[],
  lines: readonly number[],
): Placed[] | ColumnsFault {
  const weights = columns.filter((c) => c.weights);
  if (weights.length === 0) return shape === 'days-down' ? 'no-weights' : 'no-dates';
  return body.flatMap((row, i) =>
    weights.flatMap((column): Placed[] => {
      const weightText = rearm(row[column.index] ?? '').trim();
      if (BLANK.test(weightText)) return [];
      const text = (meaning: Meaning) => textOf(columns, row, meaning);
      const down = shape === 'days-down';
      const dayText = down ? text('date') : column.heading;
      return [
        {
          litterKey: litterKey(columns, row),
          entry: {
            line: lines[i] ?? i + 1,
            heading: column.heading,
            label: down
              ? labelOf(
                  column.heading.replace(/\s*[([][^)\]]*[)\]]$/, (unit) =>
                    unitOf(unit.replace(/[()[\]\s]/g, '')) === null ? unit : '',
                  ),
                  '',
                  '',
                  '',
                  '',
                )
              : labelIn(text, false),
            day: down ? dayOfCell(dayText) : dayOfHeading(dayText),
            dayText,
            clockText: down ? text('time') : '',
            sessionText: down ? text('session') : '',
            weightText,
            unit: column.unit,
            unitText: '',
            typed: null,
            held: false,
          },
        },
      ];
    }),
  );
}

function litterKey(columns: readonly Column[], row: readonly string[]): string {
  return [...(['litter', 'dam', 'born'] as const).map((meaning) => nameKey(textOf(columns, row, meaning)))].join('\n');
}

export function littersOf(columns: readonly Column[], body: readonly (readonly string[])[]): LitterWords[] {
  if (!columns.some((c) => c.meaning === 'litter' || c.meaning === 'dam' || c.meaning === 'born')) return [];
  const found = new Map<string, LitterWords>();
  for (const row of body) {
    const key = litterKey(columns, row);
    if (found.has(key) || key.trim() === '') continue;
    const text = (meaning: Meaning) => textOf(columns, row, meaning);
    const born = text('born');
    found.set(key, {
      key,
      name: text('litter'),
      dam: text('dam'),
      sire: text('sire'),
      breed: text('breed'),
      born: born === '' ? null : readDateCell(born),
    });
  }
  return [...found.values()];
}

function labelIn(text: (meaning: Meaning) => string, ours: boolean): Label {
  const label = labelOf(text('puppy'), text('collar'), text('colour'), text('pattern'), text('sex'));
  return ours ? { ...label, name: text('puppy') } : label;
}
