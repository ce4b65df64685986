/**
 * An XLSX file is a ZIP of XML. Its parts are inflated here, by the browser itself and only up to a bound, and packed
 * again without compression: the sheet reader would inflate large parts in workers made of blobs, which the window's
 * policy forbids, and it knows no bound. Layout: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16.
 */

import { MOST_COLUMNS, MOST_ROWS } from '../../core/records/table.ts';

/** Bytes that all parts of a file may make together. */
const MOST_BYTES = 60_000_000;
/** Empty rows may lie between those of a table. */
const FARTHEST_ROW = 10 * MOST_ROWS;
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const STORED = 0;
const DEFLATED = 8;

interface Part {
  readonly name: Uint8Array<ArrayBuffer>;
  readonly method: number;
  readonly crc: number;
  readonly packed: Uint8Array<ArrayBuffer>;
}

/** Why a file can't be unpacked. */
export class UnpackError extends Error {
  readonly code: 'not-a-sheet' | 'too-large' | 'too-many-rows' | 'too-many-columns';
  constructor(code: UnpackError['code']) {
    super(code);
    this.name = 'UnpackError';
    this.code = code;
  }
}

/** The same ZIP with its XML parts stored plain; other parts are left out. Throws UnpackError. */
export async function unpackSheet(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  const parts = partsOf(bytes).filter((p) => /\.(?:xml|rels)$/i.test(new TextDecoder().decode(p.name)));
  let left = MOST_BYTES;
  const plain = [];
  for (const part of parts) {
    const content = part.method === STORED ? part.packed : await inflated(part.packed, left);
    left -= content.length;
    if (left < 0) throw new UnpackError('too-large');
    requireBounded(content);
    plain.push({ ...part, content });
  }
  return zipOf(plain);
}

/** One cell far out would make the sheet reader fill in every cell before it. */
function requireBounded(part: Uint8Array): void {
  for (const [, column = '', row] of new TextDecoder().decode(part).matchAll(/\sr="([A-Z]{0,3})(\d{1,7})"/g)) {
    if (Number(row) > FARTHEST_ROW) throw new UnpackError('too-many-rows');
    if (columnNumber(column) > MOST_COLUMNS) throw new UnpackError('too-many-columns');
  }
}

function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

function partsOf(bytes: Uint8Array<ArrayBuffer>): Part[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    const end = endOf(view);
    const count = view.getUint16(end + 10, true);
    const parts: Part[] = [];
    let at = view.getUint32(end + 16, true);
    for (let n = 0; n < count; n += 1) {
      if (view.getUint32(at, true) !== CENTRAL) throw new UnpackError('not-a-sheet');
      const method = view.getUint16(at + 10, true);
      const isSecret = (view.getUint16(at + 8, true) & 1) === 1;
      if (isSecret || (method !== STORED && method !== DEFLATED)) throw new UnpackError('not-a-sheet');
      const [size, nameLength] = [view.getUint32(at + 20, true), view.getUint16(at + 28, true)];
      const local = view.getUint32(at + 42, true);
      if (view.getUint32(local, true) !== LOCAL) throw new UnpackError('not-a-sheet');
      const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      if (from + size > bytes.length) throw new UnpackError('not-a-sheet');
      const name = bytes.slice(at + 46, at + 46 + nameLength);
      parts.push({ name, method, crc: view.getUint32(at + 16, true), packed: bytes.slice(from, from + size) });
      at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    }
    return parts;
  } catch (error) {
    // An offset that leads out of the file.
    if (error instanceof RangeError) throw new UnpackError('not-a-sheet');
    throw error;
  }
}

/** The end record is the last thing but a remark of up to 65,535 bytes. */
function endOf(view: DataView): number {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 0xffff); at -= 1) {
    if (view.getUint32(at, true) === END) return at;
  }
  throw new UnpackError('not-a-sheet');
}

async function inflated(packed: Uint8Array<ArrayBuffer>, limit: number): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      size += value.length;
      if (size > limit) throw new UnpackError('too-large');
      pieces.push(value);
    }
  } catch (error) {
    await reader.cancel().catch(() => undefined);
    throw error instanceof UnpackError ? error : new UnpackError('not-a-sheet');
  }
  const joined = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    joined.set(piece, at);
    at += piece.length;
  }
  return joined;
}

function zipOf(parts: readonly (Part & { readonly content: Uint8Array })[]): ArrayBuffer {
  const named = parts.reduce((sum, p) => sum + p.name.length, 0);
  const size = parts.reduce((sum, p) => sum + p.content.length, 0) + 2 * named + parts.length * (30 + 46) + 22;
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const starts = parts.map(({ name, content, crc }) => {
    const start = at;
    view.setUint32(at, LOCAL, true);
    view.setUint16(at + 4, 20, true);
    view.setUint32(at + 14, crc, true);
    view.setUint32(at + 18, content.length, true);
    view.setUint32(at + 22, content.length, true);
    view.setUint16(at + 26, name.length, true);
    bytes.set(name, at + 30);
    bytes.set(content, at + 30 + name.length);
    at += 30 + name.length + content.length;
    return start;
  });
  const central = at;
  for (const [i, { name, content, crc }] of parts.entries()) {
    view.setUint32(at, CENTRAL, true);
    view.setUint16(at + 4, 20, true);
    view.setUint16(at + 6, 20, true);
    view.setUint32(at + 16, crc, true);
    view.setUint32(at + 20, content.length, true);
    view.setUint32(at + 24, content.length, true);
    view.setUint16(at + 28, name.length, true);
    view.setUint32(at + 42, starts[i] ?? 0, true);
    bytes.set(name, at + 46);
    at += 46 + name.length;
  }
  view.setUint32(at, END, true);
  view.setUint16(at + 8, parts.length, true);
  view.setUint16(at + 10, parts.length, true);
  view.setUint32(at + 12, at - central, true);
  view.setUint32(at + 16, central, true);
  return bytes.buffer;
}
