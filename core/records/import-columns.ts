/**
 * What stands where in a table of weights. Two shapes are read: one row a weight, and a grid of days and puppies, either
 * way round. Answers entries, one for each weight that is written, still as text: `import.ts` judges them.
 */

import {
  COLLAR_COLOURS,
  COLLAR_LETTERS,
  COLLAR_PATTERNS,
  type CollarColour,
  type CollarLetter,
  type CollarPattern,
} from '../litter/collar.ts';
import type { Sex } from '../reference/classes.ts';
import type { MassUnit } from '../units/mass.ts';
import { rearm } from './csv.ts';
import { type DateOrder, orderOf, type ReadDate, readClockCell, readDateCell } from './import-dates.ts';
import { isNoPuppy, isYes, type Meaning, meaningOf, nameKey, sessionOf, sexOf, unitOf } from './import-words.ts';
import type { Table } from './table.ts';

/** `rows`: one row a weight. `days-down`: a row a day, a column a puppy. `days-across`: a row a puppy, a column a day. */
export const SHAPES = ['rows', 'days-down', 'days-across'] as const;
export type Shape = (typeof SHAPES)[number];

export interface Column {
  readonly index: number;
  readonly heading: string;
  /** Null in a grid for a column that is a day or a puppy, and in any table for one that was not understood. */
  readonly meaning: Meaning | null;
  /** The unit that the heading names. */
  readonly unit: MassUnit | null;
  /** A column of weights in a grid. */
  readonly weights: boolean;
}

/** What the table calls a puppy. */
export interface Label {
  readonly key: string;
  /** As it stands in the table; empty when the table names no puppy. */
  readonly text: string;
  readonly name: string;
  readonly letter: CollarLetter | null;
  readonly colour: CollarColour | null;
  readonly pattern: CollarPattern | null;
  readonly sex: Sex | null;
  readonly number: number | null;
}

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

export interface TableRead {
  readonly shape: Shape;
  readonly columns: readonly Column[];
  /** Line of the headings; null when there are none. */
  readonly headingLine: number | null;
  readonly entries: readonly Entry[];
  readonly labels: readonly Label[];
  /** The litters that the table names, in its order; empty when it names none. */
  readonly litters: readonly LitterWords[];
  /** The order that figures with strokes are in, as the dates themselves tell; null when they don't. */
  readonly order: DateOrder | 'both' | null;
  /** Some dates can be read two ways until the order is known. */
  readonly twoWays: boolean;
  /** Some weights have no unit of their own. */
  readonly bareNumbers: boolean;
}

/** What the person said of the table, where it was not plain. */
export interface TableAnswers {
  readonly shape: Shape | null;
  /** Meanings by column. */
  readonly meanings: Readonly<Record<number, Meaning>>;
  /** Key of the litter to take in, where the table names several. */
  readonly litter: string | null;
}

export type ColumnsFault = 'no-weights' | 'no-dates' | 'no-rows';

export type ColumnsResult =
  | { readonly ok: true; readonly read: TableRead }
  | { readonly ok: false; readonly fault: ColumnsFault; readonly columns: readonly Column[]; readonly shape: Shape };

interface Heads {
  /** Index into the rows; -1 when there are no headings. */
  readonly row: number;
  readonly cells: readonly string[];
}

const LOOKED_AT_FOR_HEADINGS = 6;
const BLANK = /^(?:|[-–—.?]+|n\/?a|none)$/i;
const WHOLE = /^\d{1,3}$/;

/** Reads a table; `answers` take precedence over what is found out. */
export function readColumns(table: Table, answers: TableAnswers): ColumnsResult {
  const heads = findHeads(table);
  const body = table.rows.slice(heads.row + 1);
  const lines = table.lines.slice(heads.row + 1);
  const shape = answers.shape ?? shapeOf(heads, body);
  const columns = columnsOf(shape, heads, body, answers.meanings);
  const refused = (fault: ColumnsFault): ColumnsResult => ({ ok: false, fault, columns, shape });
  if (body.length === 0) return refused('no-rows');
  const all = shape === 'rows' ? entriesOfRows(columns, body, lines) : entriesOfGrid(shape, columns, body, lines);
  if (typeof all === 'string') return refused(all);
  const litters = littersOf(columns, body);
  const entries = litters.length > 1 ? all.filter((e) => e.litterKey === answers.litter) : all;
  const days = entries.flatMap((e) => (e.entry.day === null ? [] : [e.entry.day]));
  const order = orderOf(days);
  const labels = new Map(entries.map((e) => [e.entry.label.key, e.entry.label]));
  return {
    ok: true,
    read: {
      shape,
      columns,
      headingLine: heads.row === -1 ? null : (table.lines[heads.row] ?? null),
      entries: entries.map((e) => e.entry),
      labels: [...labels.values()],
      litters,
      order,
      twoWays: days.some((d) => d.kind === 'figures' && d.dmy !== null && d.mdy !== null),
      bareNumbers: entries.some((e) => e.entry.unit === null && /\d\s*$/.test(e.entry.weightText)),
    },
  };
}

function isDay(text: string): boolean {
  return readDateCell(text).kind !== 'unreadable';
}

/** The first rows may be a title; the headings are the row that says most, unless it already holds a weight of a day. */
function findHeads(table: Table): Heads {
  let best = { row: -1, score: 0 };
  for (const [row, cells] of table.rows.slice(0, LOOKED_AT_FOR_HEADINGS).entries()) {
    const filled = cells.filter((c) => c.trim() !== '');
    if (filled.length < 2) continue;
    const known = filled.filter((c) => meaningOf(c) !== null || (isDay(c) && filled.length > 2)).length;
    const figures = filled.filter((c) => /^\s*\d+[.,]?\d*\s*(?:g|kg|oz|lb)?\s*$/i.test(c)).length;
    const dated = cells.some((c) => ['date', 'figures'].includes(readDateCell(c).kind));
    // A date beside a figure and no word of ours: the list begins here, without headings.
    if (figures > 0 && dated && !filled.some((c) => meaningOf(c) !== null)) break;
    const score = known + (best.row === -1 ? 0.5 : 0);
    if (score > best.score) best = { row, score };
  }
  return { row: best.row, cells: best.row === -1 ? [] : (table.rows[best.row] ?? []) };
}

function cellsOf(body: readonly (readonly string[])[], column: number): string[] {
  return body.map((row) => (row[column] ?? '').trim()).filter((c) => !BLANK.test(c));
}

function part(cells: readonly string[], test: (cell: string) => boolean): number {
  return cells.length === 0 ? 0 : cells.filter(test).length / cells.length;
}

const isWeight = (cell: string) => /^\d[\d.,\s:]*(?:[a-z#]+\.?(?:\s*[\d.,]+\s*(?:oz|ounces?)?)?)?$/i.test(cell) && !isDay(cell);

function shapeOf(heads: Heads, body: readonly (readonly string[])[]): Shape {
  const meanings = heads.cells.map(meaningOf);
  if (meanings.some((m) => m?.meaning === 'weight')) return 'rows';
  const dayHeads = heads.cells.filter((c, i) => meanings[i] === null && isDay(c)).length;
  const first = cellsOf(body, 0);
  const datesDown = part(first, isDay) > 0.5;
  if (dayHeads > 0 && !datesDown) return 'days-across';
  const numbered = heads.cells.filter((c) => WHOLE.test(c.trim())).length;
  if (numbered >= 2 && !datesDown && part(first, (c) => WHOLE.test(c)) < 0.5) return 'days-across';
  const dateColumn = meanings.some((m) => m?.meaning === 'date') || datesDown;
  const others = heads.cells.filter((c, i) => c.trim() !== '' && meanings[i] === null).length;
  return dateColumn && others > 0 && heads.row !== -1 ? 'days-down' : 'rows';
}

function columnsOf(
  shape: Shape,
  heads: Heads,
  body: readonly (readonly string[])[],
  said: Readonly<Record<number, Meaning>>,
): Column[] {
  const width = Math.max(heads.cells.length, ...body.map((row) => row.length), 0);
  const found = Array.from({ length: width }, (_, index): Column => {
    const heading = (heads.cells[index] ?? '').trim();
    const known = meaningOf(heading);
    return { index, heading, meaning: said[index] ?? known?.meaning ?? null, unit: known?.unit ?? null, weights: false };
  });
  if (shape === 'rows') return inferred(found, body, said);
  if (shape === 'days-down') return daysDown(found, body, said);
  return daysAcross(found, said);
}

/** Columns of a list whose headings say nothing: a date, a weight and a name are told by what is in them. */
function inferred(
  columns: readonly Column[],
  body: readonly (readonly string[])[],
  said: Readonly<Record<number, Meaning>>,
): Column[] {
  const known = [...columns];
  const give = (meaning: Meaning, fits: (cells: string[]) => boolean) => {
    if (known.some((c) => c.meaning === meaning)) return;
    const at = known.findIndex((c) => c.meaning === null && said[c.index] === undefined && fits(cellsOf(body, c.index)));
    const column = known[at];
    if (column !== undefined) known[at] = { ...column, meaning };
  };
  give('date', (cells) => part(cells, (c) => ['date', 'figures'].includes(readDateCell(c).kind)) > 0.5);
  give('session', (cells) => part(cells, (c) => sessionOf(c) !== null) > 0.8);
  give('time', (cells) => part(cells, (c) => readClockCell(c) !== null && /[:hap]/i.test(c)) > 0.8);
  give('weight', (cells) => part(cells, isWeight) > 0.5);
  if (!known.some((c) => c.meaning === 'collar')) give('puppy', (cells) => part(cells, (c) => !isWeight(c) && !isDay(c)) > 0.5);
  return known;
}

function daysDown(
  columns: readonly Column[],
  body: readonly (readonly string[])[],
  said: Readonly<Record<number, Meaning>>,
): Column[] {
  const dateAt =
    columns.find((c) => c.meaning === 'date')?.index ??
    columns.find((c) => part(cellsOf(body, c.index), isDay) > 0.5)?.index ??
    0;
  return columns.map((column) => {
    if (column.index === dateAt && said[column.index] === undefined) return { ...column, meaning: 'date' };
    const about = column.meaning === 'time' || column.meaning === 'session' || column.meaning === 'date';
    if (about || column.meaning === 'leave') return column;
    const leave = column.heading === '' || (said[column.index] === undefined && isNoPuppy(column.heading));
    const unit = /[([]\s*([^)\]]+?)\s*[)\]]$/.exec(column.heading)?.[1] ?? '';
    return leave ? { ...column, meaning: 'leave' } : { ...column, meaning: null, unit: unitOf(unit), weights: true };
  });
}

const ABOUT_A_PUPPY: readonly (Meaning | null)[] = [
  'puppy',
  'collar',
  'colour',
  'pattern',
  'sex',
  'litter',
  'dam',
  'sire',
  'breed',
  'born',
];

function daysAcross(columns: readonly Column[], said: Readonly<Record<number, Meaning>>): Column[] {
  const named = columns.some((c) => c.meaning === 'puppy' || c.meaning === 'collar');
  const nameAt = named ? -1 : (columns.find((c) => dayOfHeading(c.heading) === null)?.index ?? 0);
  return columns.map((column) => {
    if (column.index === nameAt && said[column.index] === undefined) return { ...column, meaning: 'puppy' };
    if (ABOUT_A_PUPPY.includes(column.meaning) || column.meaning === 'leave') return column;
    const day = dayOfHeading(column.heading);
    return day === null ? { ...column, meaning: 'leave' } : { ...column, meaning: null, weights: true };
  });
}

/** The day that a column of a grid is; a number alone is an age in days. */
function dayOfHeading(heading: string): ReadDate | null {
  const t = heading.trim();
  if (WHOLE.test(t)) return { kind: 'age', days: Number(t) };
  const day = readDateCell(t);
  return day.kind === 'unreadable' ? null : day;
}

interface Placed {
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
  return WHOLE.test(text) ? { kind: 'age', days: Number(text) } : readDateCell(text);
}

function entriesOfRows(
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

function entriesOfGrid(
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

function littersOf(columns: readonly Column[], body: readonly (readonly string[])[]): LitterWords[] {
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

const FILLERS = new Set(['collar', 'puppy', 'pup', 'band', 'ribbon', 'the', 'no', 'nr', 'number', '#']);

/** What a table calls a puppy: a name, a collar letter, a colour, a number, or several of them. */
export function labelOf(text: string, collar: string, colour: string, pattern: string, sex: string): Label {
  const both = /^(.*\S)\s*[([]([A-Za-z])[)\]]$/.exec(text);
  const named = both?.[1] ?? text;
  const words = named.split(/[\s,/]+/).filter((w) => w !== '');
  const tokens = words.map(tokenOf);
  const isName = tokens.some((t) => t === null);
  const first = <K extends keyof Token>(key: K): Token[K] | undefined => tokens.find((t) => t?.[key] !== undefined)?.[key];
  const letter = letterOf(collar) ?? letterOf(both?.[2] ?? '') ?? (isName ? null : (first('letter') ?? null));
  return {
    key: [text, collar, text === '' && collar === '' ? colour : ''].map(nameKey).join('\n'),
    text: [text, text === collar ? '' : collar].filter((t) => t !== '').join(', ') || colour,
    name: isName ? named : '',
    letter,
    colour: colourOf(colour) ?? colourOf(collar) ?? (isName ? null : (first('colour') ?? null)),
    pattern: COLLAR_PATTERNS.find((p) => p === nameKey(pattern)) ?? null,
    sex: sexOf(sex) ?? (isName ? null : (first('sex') ?? null)),
    number: isName ? null : (first('number') ?? null),
  };
}

interface Token {
  letter?: CollarLetter;
  colour?: CollarColour;
  sex?: Sex;
  number?: number;
}

function tokenOf(word: string): Token | null {
  const key = nameKey(word);
  if (FILLERS.has(key)) return {};
  const colour = colourOf(word);
  if (colour !== null) return { colour };
  const letter = word.length === 1 ? letterOf(word) : null;
  if (letter !== null) return { letter };
  const sex = sexOf(word);
  if (sex !== null && word.length > 1) return { sex };
  const number = /^#?(\d{1,2})$/.exec(key)?.[1];
  return number === undefined ? null : { number: Number(number) };
}

function letterOf(text: string): CollarLetter | null {
  const t = text.trim().toUpperCase();
  return COLLAR_LETTERS.find((l) => l === t) ?? null;
}

function colourOf(text: string): CollarColour | null {
  const key = nameKey(text);
  return COLLAR_COLOURS.find((c) => c === key) ?? null;
}
