/**
 * Rows out of single pages, read without SQLite: a leaf page of a table holds whole rows, whatever became of the pages
 * around it. Layouts are those of the public description of the SQLite file format.
 */
import type { Pages } from './pages.ts';

export type Value = string | number | null | Buffer;

export interface RawRow {
  readonly rowid: number;
  readonly values: readonly Value[];
}

const LEAF = 0x0d;
const INNER = 0x05;

/** Whether the page is a leaf of a table. */
export function isLeaf(pages: Pages, number: number): boolean {
  return pages.page(number)?.[headOf(number)] === LEAF;
}

/** The leaves of the table whose root is that page; those that can't be reached are left out. */
export function leavesUnder(pages: Pages, root: number): number[] {
  const seen = new Set<number>();
  const leaves: number[] = [];
  const waiting = [root];
  for (let number = waiting.pop(); number !== undefined; number = waiting.pop()) {
    const page = pages.page(number);
    if (page === null || seen.has(number)) continue;
    seen.add(number);
    const head = headOf(number);
    if (page[head] === LEAF) leaves.push(number);
    else if (page[head] === INNER) waiting.push(...childrenOf(page, head));
  }
  return leaves;
}

function childrenOf(page: Buffer, head: number): number[] {
  const starts = cellStarts(page, head, 12).filter((at) => at + 4 <= page.length);
  return [...starts.map((at) => page.readUInt32BE(at)), page.readUInt32BE(head + 8)];
}

/** The rows of a leaf page that can be read, and how many of its cells can't. */
export function rowsOf(pages: Pages, number: number): { rows: RawRow[]; unread: number } {
  const page = pages.page(number);
  const head = headOf(number);
  if (page === null || page[head] !== LEAF) return { rows: [], unread: 0 };
  const rows: RawRow[] = [];
  let unread = 0;
  for (const at of cellStarts(page, head, 8)) {
    try {
      rows.push(rowAt(pages, page, at));
    } catch (error) {
      // Reading past the end of a buffer, or text that is none: this cell is not whole.
      if (!(error instanceof RangeError || error instanceof TypeError)) throw error;
      unread += 1;
    }
  }
  return { rows, unread };
}

function headOf(number: number): number {
  return number === 1 ? 100 : 0;
}

function cellStarts(page: Buffer, head: number, headerBytes: number): number[] {
  const limit = Math.floor((page.length - head - headerBytes) / 2);
  const count = Math.min(page.readUInt16BE(head + 3), limit);
  return Array.from({ length: count }, (_, n) => page.readUInt16BE(head + headerBytes + 2 * n));
}

function rowAt(pages: Pages, page: Buffer, at: number): RawRow {
  const length = varint(page, at);
  const rowid = varint(page, length.next);
  return { rowid: rowid.value, values: valuesOf(payload(pages, page, rowid.next, length.value)) };
}

/** A row's bytes: the first part in the page, the rest in a chain of pages of their own. */
function payload(pages: Pages, page: Buffer, at: number, length: number): Buffer {
  const size = pages.size;
  if (length > size * pages.count) throw new RangeError('longer than the file');
  if (length <= size - 35) return slice(page, at, length);
  const least = Math.floor(((size - 12) * 32) / 255) - 23;
  const fits = least + ((length - least) % (size - 4));
  const local = fits <= size - 35 ? fits : least;
  const parts = [slice(page, at, local)];
  let left = length - local;
  let next = page.readUInt32BE(at + local);
  while (left > 0) {
    const more = pages.page(next);
    if (more === null) throw new RangeError('the rest is not there');
    const here = Math.min(left, size - 4);
    parts.push(slice(more, 4, here));
    left -= here;
    next = more.readUInt32BE(0);
  }
  return Buffer.concat(parts);
}

function slice(bytes: Buffer, at: number, length: number): Buffer {
  if (at + length > bytes.length) throw new RangeError('past the end');
  return bytes.subarray(at, at + length);
}

function valuesOf(record: Buffer): Value[] {
  const head = varint(record, 0);
  const values: Value[] = [];
  let body = head.value;
  for (let at = head.next; at < head.value; ) {
    const type = varint(record, at);
    at = type.next;
    const length = lengthOf(type.value);
    values.push(valueAt(slice(record, body, length), type.value));
    body += length;
  }
  if (body !== record.length) throw new RangeError('the record does not add up');
  return values;
}

const LENGTHS = [0, 1, 2, 3, 4, 6, 8, 8, 0, 0];

function lengthOf(type: number): number {
  if (type < 10) return LENGTHS[type] ?? 0;
  if (type < 12) throw new RangeError('a type that is not in use');
  return Math.floor((type - 12) / 2);
}

function valueAt(bytes: Buffer, type: number): Value {
  if (type === 0) return null;
  if (type === 7) return bytes.readDoubleBE(0);
  if (type >= 8 && type < 10) return type - 8;
  if (type === 6) return wholeNumber(bytes.readBigInt64BE(0));
  if (type < 6) return bytes.readIntBE(0, bytes.length);
  return type % 2 === 0 ? Buffer.from(bytes) : new TextDecoder('utf-8', { fatal: true }).decode(bytes);
}

function wholeNumber(n: bigint): number {
  const number = Number(n);
  if (!Number.isSafeInteger(number)) throw new RangeError('a number that no column of ours holds');
  return number;
}

/** A number of 1 to 9 bytes, seven bits in each but the ninth. */
function varint(bytes: Buffer, at: number): { value: number; next: number } {
  let value = 0n;
  for (let n = 0; n < 9; n += 1) {
    const byte = bytes[at + n];
    if (byte === undefined) throw new RangeError('past the end');
    if (n === 8) return { value: wholeNumber(BigInt.asIntN(64, (value << 8n) | BigInt(byte))), next: at + 9 };
    value = (value << 7n) | BigInt(byte & 0x7f);
    if (byte < 0x80) return { value: wholeNumber(value), next: at + n + 1 };
  }
  throw new RangeError('no number');
}
