/** A table as it came: text in cells, with the number that each row has in its file. */
import { type CsvFault, readCsv } from './csv.ts';

export interface Table {
  readonly rows: readonly (readonly string[])[];
  /** Line of the text or row of the sheet, from 1, for each row. */
  readonly lines: readonly number[];
}

/** Bytes of a file that is looked at: years of weights are far smaller. */
export const LARGEST_FILE = 5_000_000;
/** Rows, beside one of headings, and columns of a table that is looked at. */
export const MOST_ROWS = 10_000;
export const MOST_COLUMNS = 400;
/** Characters of a cell that are looked at: what a cell says of a weight, a day or a name is far shorter. */
const LONGEST_CELL = 200;

export type TableFault =
  | CsvFault
  | { readonly code: 'empty' | 'not-text' | 'too-large' | 'too-many-rows' | 'too-many-columns' | 'not-a-sheet' };

export type TableResult = { readonly ok: true; readonly table: Table } | { readonly ok: false; readonly fault: TableFault };

/** The table that a text holds: CSV with any delimiter, or cells copied from a sheet (tabs between them). */
export function tableOfText(text: string): TableResult {
  if (text.length > LARGEST_FILE) return { ok: false, fault: { code: 'too-large' } };
  // A zero byte means that it is no text at all; half a character can't be kept.
  if (text.includes('\0') || !text.isWellFormed()) return { ok: false, fault: { code: 'not-text' } };
  const read = readCsv(text);
  return read.ok ? checked({ rows: read.rows, lines: read.lines }) : read;
}

/** The table of a sheet's rows, empty ones left out. */
export function tableOfSheet(rows: readonly (readonly string[])[]): TableResult {
  if (rows.some((row) => row.some((cell) => !cell.isWellFormed()))) return { ok: false, fault: { code: 'not-text' } };
  const numbered = rows.map((row, i) => ({ row, line: i + 1 })).filter(({ row }) => row.some((cell) => cell.trim() !== ''));
  return checked({ rows: numbered.map((n) => n.row), lines: numbered.map((n) => n.line) });
}

function checked(table: Table): TableResult {
  if (table.rows.length === 0) return { ok: false, fault: { code: 'empty' } };
  if (table.rows.length - headings(table) > MOST_ROWS) return { ok: false, fault: { code: 'too-many-rows' } };
  if (table.rows.some((row) => row.length > MOST_COLUMNS)) return { ok: false, fault: { code: 'too-many-columns' } };
  return { ok: true, table: { ...table, rows: table.rows.map((row) => row.map(cut)) } };
}

/** One, when the first row has no figure and the second has. */
function headings({ rows: [first, second] }: Table): number {
  const hasFigure = (row: readonly string[] = []) => row.some((cell) => /\d/.test(cell));
  return !hasFigure(first) && hasFigure(second) ? 1 : 0;
}

function cut(cell: string): string {
  return cell.length <= LONGEST_CELL ? cell : cell.slice(0, LONGEST_CELL).toWellFormed();
}
