/**
 * The pages of a data file, read without SQLite, so that what is whole can still be read where the file is not. Layouts
 * are those of the public description of the SQLite file format: header, write-ahead log with its running sums.
 */
import { existsSync, readFileSync } from 'node:fs';

const USUAL_PAGE = 4096;
const LOG_HEADER = 32;
const FRAME_HEADER = 24;

export interface Pages {
  /** Bytes of a page. */
  readonly size: number;
  readonly count: number;
  /** A page by its number from 1, or null when the file does not hold it. */
  page(number: number): Buffer | null;
}

/** The file with the whole transactions of its log laid over it. Either may be missing or damaged; never throws for that. */
export function readPages(file: string): Pages {
  const main = existsSync(file) ? readFileSync(file) : Buffer.alloc(0);
  const log = existsSync(`${file}-wal`) ? readFileSync(`${file}-wal`) : Buffer.alloc(0);
  const size = pageSize(main.length >= 18 ? main.readUInt16BE(16) : 0) ?? pageSize(logPageSize(log)) ?? USUAL_PAGE;
  const later = loggedPages(log, size);
  const count = Math.max(Math.floor(main.length / size), ...later.keys(), 0);
  return {
    size,
    count,
    page: (number) => {
      const logged = later.get(number);
      if (logged !== undefined) return logged;
      const from = (number - 1) * size;
      return number < 1 || from + size > main.length ? null : main.subarray(from, from + size);
    },
  };
}

function pageSize(said: number): number | null {
  const size = said === 1 ? 65_536 : said;
  return size >= 512 && size <= 65_536 && (size & (size - 1)) === 0 ? size : null;
}

function logPageSize(log: Buffer): number {
  return log.length < LOG_HEADER ? 0 : log.readUInt32BE(8);
}

/** The newest page of each number among the log's whole transactions. The first frame that does not add up ends it. */
function loggedPages(log: Buffer, size: number): Map<number, Buffer> {
  const whole = new Map<number, Buffer>();
  if (log.length < LOG_HEADER) return whole;
  const magic = log.readUInt32BE(0);
  if ((magic & ~1) >>> 0 !== 0x377f0682 || logPageSize(log) !== size) return whole;
  const sum = new RunningSum(magic === 0x377f0683);
  sum.add(log.subarray(0, 24));
  if (!sum.is(log, 24)) return whole;
  let open: [number, Buffer][] = [];
  for (let at = LOG_HEADER; at + FRAME_HEADER + size <= log.length; at += FRAME_HEADER + size) {
    const page = log.subarray(at + FRAME_HEADER, at + FRAME_HEADER + size);
    sum.add(log.subarray(at, at + 8));
    sum.add(page);
    if (!log.subarray(at + 8, at + 16).equals(log.subarray(16, 24)) || !sum.is(log, at + 16)) break;
    open.push([log.readUInt32BE(at), page]);
    if (log.readUInt32BE(at + 4) === 0) continue;
    for (const [number, bytes] of open) whole.set(number, bytes);
    open = [];
  }
  return whole;
}

/** The log's running sum: two 32-bit words, fed two words at a time. */
class RunningSum {
  readonly #big: boolean;
  #a = 0;
  #b = 0;
  constructor(big: boolean) {
    this.#big = big;
  }

  add(bytes: Buffer): void {
    for (let at = 0; at + 8 <= bytes.length; at += 8) {
      this.#a = (this.#a + this.#word(bytes, at) + this.#b) >>> 0;
      this.#b = (this.#b + this.#word(bytes, at + 4) + this.#a) >>> 0;
    }
  }

  is(bytes: Buffer, at: number): boolean {
    return bytes.readUInt32BE(at) === this.#a && bytes.readUInt32BE(at + 4) === this.#b;
  }

  #word(bytes: Buffer, at: number): number {
    return this.#big ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at);
  }
}
