/**
 * An XLSX file is a ZIP of XML. Its parts are inflated here, by the browser itself and only up to a bound, and packed
 * again without compression by a library: the sheet reader would inflate large parts in workers made of blobs, which the
 * window's policy forbids, and it knows no bound. The directory of the ZIP is read here too (`build/decisions/10`).
 * Layout: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16.
 */
import { zipSync } from 'fflate';
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
  readonly name: string;
  readonly method: number;
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
  const parts = partsOf(bytes).filter((p) => /\.(?:xml|rels)$/i.test(p.name));
  let left = MOST_BYTES;
  const plain: [name: string, content: Uint8Array][] = [];
  for (const part of parts) {
    const content = part.method === STORED ? part.packed : await inflated(part.packed, left);
    left -= content.length;
    if (left < 0) throw new UnpackError('too-large');
    requireBounded(content);
    plain.push([part.name, content]);
  }
  return zipSync(Object.fromEntries(plain), { level: 0 }).buffer;
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
      const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
      parts.push({ name, method, packed: bytes.slice(from, from + size) });
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
