/**
 * The write-ahead log, read without SQLite. Layout and sums are those of the public description of the SQLite file
 * format. SQLite itself stops at the first frame that does not add up and forgets the rest without a word: what a power
 * cut left of a last, unanswered command has to go that way, what a disk did to weights that were answered must not.
 */
const LOG_HEADER = 32;
const FRAME_HEADER = 24;
/** The last frame of a transaction says how many pages the file then has. No house has so many: it is noise that a power cut left. */
const MOST_PAGES = 2 ** 24;

export interface Frame {
  readonly page: number;
  readonly bytes: Buffer;
  /** It ends a transaction. */
  readonly commits: boolean;
  /** Its sum follows from the frame before it. */
  readonly addsUp: boolean;
}

export interface Log {
  /** What this log began with, 16 hex digits: SQLite counts the first half up each time that it begins the log anew. */
  readonly salts: string;
  readonly headerAddsUp: boolean;
  /** Frames up to the end of the last whole transaction before anything that does not add up. */
  readonly intact: number;
  /** The frames of this log in their order; those of an earlier one, which lie behind its end, are left out. */
  readonly frames: readonly Frame[];
}

/** Reads a log whose pages have that size. Null when there is not even a first frame. Never throws for damage. */
export function readLog(log: Buffer, size: number): Log | null {
  if (log.length < LOG_HEADER + FRAME_HEADER + size) return null;
  const magic = log.readUInt32BE(0);
  const sum = new RunningSum(magic === 0x377f0683);
  sum.add(log.subarray(0, 24));
  const headerAddsUp = (magic & ~1) >>> 0 === 0x377f0682 && logPageSize(log) === size && sum.is(log, 24);
  const saltBytes = saltsOf(log, headerAddsUp, size);
  const frames: Frame[] = [];
  let intact = 0;
  let chained = headerAddsUp;
  if (!headerAddsUp) sum.take(log, LOG_HEADER - 8);
  for (let at = LOG_HEADER; at + FRAME_HEADER + size <= log.length; at += FRAME_HEADER + size) {
    const bytes = log.subarray(at + FRAME_HEADER, at + FRAME_HEADER + size);
    sum.add(log.subarray(at, at + 8));
    sum.add(bytes);
    const ofThisLog = log.subarray(at + 8, at + 16).equals(saltBytes);
    const addsUp = ofThisLog && sum.is(log, at + 16);
    const pages = log.readUInt32BE(at + 4);
    const commits = pages > 0 && pages < MOST_PAGES;
    // Behind a frame that was changed the sums go on from what it says of itself.
    sum.take(log, at + 16);
    chained &&= addsUp;
    if (ofThisLog) frames.push({ page: log.readUInt32BE(at), bytes, commits, addsUp });
    if (chained && commits) intact = frames.length;
  }
  return { salts: saltBytes.toString('hex'), headerAddsUp, intact: intact, frames };
}

/** By the header; where that is not to be believed, by the first two frames that agree. */
function saltsOf(log: Buffer, headerAddsUp: boolean, size: number): Buffer {
  const step = FRAME_HEADER + size;
  const saltAt = (n: number) => log.subarray(LOG_HEADER + n * step + 8, LOG_HEADER + n * step + 16);
  if (headerAddsUp) return log.subarray(16, 24);
  for (let n = 0; LOG_HEADER + (n + 2) * step <= log.length; n += 1) if (saltAt(n).equals(saltAt(n + 1))) return saltAt(n);
  return log.subarray(16, 24);
}

/** Bytes of a page as the log's header has it; 0 when there is none. */
export function logPageSize(log: Buffer): number {
  return log.length < LOG_HEADER ? 0 : log.readUInt32BE(8);
}

/** What is known of the log from what was answered: see `mark.ts`. */
export interface Answered {
  /** Empty when nothing had been written into a log yet. */
  readonly salts: string;
  /** Frames of all commands that were answered. */
  readonly frames: number;
  /** How many of them the data file holds itself. */
  readonly folded: number;
}

/**
 * Whether commands that were answered are missing from the log. `answered` is null when that was not kept: then only a
 * frame that does not add up before a later command tells, because each command is durable before the next begins.
 */
export function isLogBroken(log: Log | null, answered: Answered | null): boolean {
  if (answered === null) return log !== null && commitsBehind(log) > 1;
  if (log === null) return answered.frames > answered.folded;
  if (log.salts === answered.salts) return log.intact < answered.frames;
  if (answered.salts === '' || isNext(answered.salts, log.salts)) return commitsBehind(log) > 1;
  // An empty header over frames that nobody answered for is a power cut; other salts are another house's log.
  return log.headerAddsUp || answered.frames > answered.folded;
}

/** Ends of transactions behind the last whole one. */
function commitsBehind(log: Log): number {
  return log.frames.slice(log.intact).filter((frame) => frame.commits).length;
}

function isNext(salts: string, later: string): boolean {
  const first = (text: string) => Number.parseInt(text.slice(0, 8), 16);
  return (first(salts) + 1) % 2 ** 32 === first(later);
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

  /** Goes on from a sum that was written down. */
  take(bytes: Buffer, at: number): void {
    this.#a = bytes.readUInt32BE(at);
    this.#b = bytes.readUInt32BE(at + 4);
  }

  #word(bytes: Buffer, at: number): number {
    return this.#big ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at);
  }
}
