/** Where the headings of a table of weights are, which way round it is, and what stands in each column. */
import type { MassUnit } from '../units/mass.ts';
import { type ReadDate, readClockCell, readDateCell } from './import-dates.ts';
import { isNoPuppy, type Meaning, meaningOf, sessionOf, unitOf } from './import-words.ts';
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

export interface Heads {
  /** Index into the rows; -1 when there are no headings. */
  readonly row: number;
  readonly cells: readonly string[];
}

const LOOKED_AT_FOR_HEADINGS = 6;
export const BLANK = /^(?:|[-–—.?]+|n\/?a|none)$/i;
export const FEW_FIGURES = /^\d{1,3}$/;

function isDay(text: string): boolean {
  return readDateCell(text).kind !== 'unreadable';
}

/** The first rows may be a title; the headings are the row that says most, unless it already holds a weight of a day. */
export function findHeads(table: Table): Heads {
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

export function shapeOf(heads: Heads, body: readonly (readonly string[])[]): Shape {
  const meanings = heads.cells.map(meaningOf);
  if (meanings.some((m) => m?.meaning === 'weight')) return 'rows';
  const dayHeads = heads.cells.filter((c, i) => meanings[i] === null && isDay(c)).length;
  const first = cellsOf(body, 0);
  const datesDown = part(first, isDay) > 0.5;
  if (dayHeads > 0 && !datesDown) return 'days-across';
  const numbered = heads.cells.filter((c) => FEW_FIGURES.test(c.trim())).length;
  if (numbered >= 2 && !datesDown && part(first, (c) => FEW_FIGURES.test(c)) < 0.5) return 'days-across';
  const dateColumn = meanings.some((m) => m?.meaning === 'date') || datesDown;
  const others = heads.cells.filter((c, i) => c.trim() !== '' && meanings[i] === null).length;
  return dateColumn && others > 0 && heads.row !== -1 ? 'days-down' : 'rows';
}

export function columnsOf(
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
export function dayOfHeading(heading: string): ReadDate | null {
  const t = heading.trim();
  if (FEW_FIGURES.test(t)) return { kind: 'age', days: Number(t) };
  const day = readDateCell(t);
  return day.kind === 'unreadable' ? null : day;
}
