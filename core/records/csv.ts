/**
 * Tables as CSV: RFC 4180 written exactly, read as people's files are. Text that a spreadsheet would take for a formula
 * is disarmed by an apostrophe before it (OWASP, CSV Injection), numbers never are; reading our own file takes the
 * apostrophe away again, so that what comes back is what went out.
 */

/** A number stays a number in a spreadsheet; text is always quoted; null is an empty cell. */
export type Cell = string | number | null;

export const DELIMITERS = [',', ';', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Where reading stopped: `quote` one is opened and never closed, `after-quote` text follows a closed one. */
export interface CsvFault {
  readonly code: 'quote' | 'after-quote';
  /** Line of the text, from 1. */
  readonly line: number;
}

export interface CsvTable {
  readonly rows: readonly (readonly string[])[];
  /** The line of the text that each row begins on, from 1. */
  readonly lines: readonly number[];
  readonly delimiter: Delimiter;
}

export type CsvResult = ({ readonly ok: true } & CsvTable) | { readonly ok: false; readonly fault: CsvFault };

/** Marks the text as UTF-8 for spreadsheets. */
const BYTE_ORDER_MARK = '\ufeff';

// The marks that begin a formula and their full-width forms, also behind blanks and marks that can't be seen, which a
// spreadsheet skips; and the blanks that begin a new cell or line in one.
const FORMULA = String.raw`(?:[\s\p{Cc}\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])`;
const DANGEROUS = new RegExp(`^'*${FORMULA}`, 'u');
const DISARMED = new RegExp(`^'+${FORMULA}`, 'u');

/** The text with an apostrophe before it if a spreadsheet could run it. */
export function disarm(text: string): string {
  return DANGEROUS.test(text) ? `'${text}` : text;
}

/** Takes back what `disarm` did; any other text stays as it is. */
export function rearm(text: string): string {
  return DISARMED.test(text) ? text.slice(1) : text;
}

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return `"${disarm(cell).replaceAll('"', '""')}"`;
  if (!Number.isFinite(cell)) throw new RangeError(`${cell} is not a figure of a table`);
  return String(cell);
}

/** Rows by RFC 4180: comma, CRLF after every record. Line breaks inside text are kept as they are. */
export function writeCsv(rows: readonly (readonly Cell[])[], options: { readonly forSpreadsheet?: boolean } = {}): string {
  const text = rows.map((row) => `${row.map(written).join(',')}\r\n`).join('');
  return options.forSpreadsheet === true ? BYTE_ORDER_MARK + text : text;
}

/**
 * Reads CSV with any of the delimiters (found out unless given) and any line ends. Rows may differ in length; lines with
 * nothing on them are left out. A quote counts only at the beginning of a cell, as people write 12" by hand.
 */
export function readCsv(text: string, given?: Delimiter): CsvResult {
  const plain = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  return readBy(plain, given ?? guessDelimiter(plain));
}

class Reader {
  readonly rows: string[][] = [];
  readonly lines: number[] = [];
  line = 1;
  #row: string[] = [];
  #begun = 1;
  #quoted = false;

  cell(text: string, quoted: boolean): void {
    this.#row.push(text);
    this.#quoted ||= quoted;
  }

  endRow(breaks: number): void {
    const [only] = this.#row;
    if (this.#row.length > 1 || this.#quoted || (only !== undefined && only.trim() !== '')) {
      this.rows.push(this.#row);
      this.lines.push(this.#begun);
    }
    this.#row = [];
    this.#quoted = false;
    this.line += breaks;
    this.#begun = this.line;
  }
}

function readBy(text: string, delimiter: Delimiter): CsvResult {
  const reader = new Reader();
  let at = 0;
  while (at < text.length) {
    const quoted = text[at] === '"';
    const end = quoted ? endOfQuoted(text, at + 1) : endOfPlain(text, at, delimiter);
    if (end === -1) return { ok: false, fault: { code: 'quote', line: reader.line } };
    const inside = quoted ? text.slice(at + 1, end).replaceAll('""', '"') : text.slice(at, end);
    reader.cell(inside, quoted);
    if (quoted) reader.line += breaksIn(inside);
    at = quoted ? end + 1 : end;
    const next = text[at];
    if (next === undefined) break;
    if (next === delimiter) {
      at += 1;
      // A delimiter at the very end opens one more, empty cell.
      if (at === text.length) reader.cell('', false);
    } else if (next === '\r' || next === '\n') {
      at += next === '\r' && text[at + 1] === '\n' ? 2 : 1;
      reader.endRow(1);
    } else {
      return { ok: false, fault: { code: 'after-quote', line: reader.line } };
    }
  }
  reader.endRow(0);
  return { ok: true, rows: reader.rows, lines: reader.lines, delimiter };
}

/** Where the closing quote stands; -1 when there is none. */
function endOfQuoted(text: string, from: number): number {
  for (let at = text.indexOf('"', from); at !== -1; at = text.indexOf('"', at + 2)) if (text[at + 1] !== '"') return at;
  return -1;
}

function endOfPlain(text: string, from: number, delimiter: Delimiter): number {
  let at = from;
  while (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') at += 1;
  return at;
}

function breaksIn(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}

/** How far into a text the delimiter is looked for. */
const GUESSED_FROM = 20_000;

/**
 * The delimiter that cuts most of the first lines into the same number of cells, more than one. A semicolon or tab wins
 * over a comma that does as well: where they are used, the comma is the decimal mark.
 */
export function guessDelimiter(text: string): Delimiter {
  const start = text.slice(0, GUESSED_FROM);
  let best: { delimiter: Delimiter; score: number } = { delimiter: ',', score: 0 };
  for (const delimiter of ['\t', ';', ','] as const) {
    const read = readBy(start, delimiter);
    // The cut at the end may fall inside a quote: then every line counts as it stands.
    const rows = read.ok ? read.rows : start.split(/\r\n|\r|\n/).map((line) => line.split(delimiter));
    const counts = new Map<number, number>();
    for (const row of rows) if (row.length > 1) counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
    const score = Math.max(0, ...counts.values()) / Math.max(1, rows.length);
    if (score > best.score + 1e-9) best = { delimiter, score };
  }
  return best.delimiter;
}
