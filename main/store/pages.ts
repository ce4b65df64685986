/**
 * The pages of a data file, read without SQLite, so that what is whole can still be read where the file is not. Layouts
 * are those of the public description of the SQLite file format: the header, and the write-ahead log (`log.ts`).
 */
import { existsSync, readFileSync } from 'node:fs';
import { logPageSize, readLog } from './log.ts';

const USUAL_PAGE = 4096;

export interface Pages {
  /** Bytes of a page. */
  readonly size: number;
  readonly count: number;
  /** A page by its number from 1, or null when the file does not hold it. */
  page(number: number): Buffer | null;
}

/**
 * The file with its log laid over it. Either may be missing or damaged; never throws for that. Frames that add up are taken
 * also behind one that does not: SQLite would forget them.
 */
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

/** The newest page of each number among the log's frames that add up, up to the last that ends a transaction. */
function loggedPages(bytes: Buffer, size: number): Map<number, Buffer> {
  const pages = new Map<number, Buffer>();
  const frames = readLog(bytes, size)?.frames ?? [];
  const end = frames.findLastIndex((frame) => frame.commits && frame.addsUp) + 1;
  for (const frame of frames.slice(0, end)) if (frame.addsUp) pages.set(frame.page, frame.bytes);
  return pages;
}
