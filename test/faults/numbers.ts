/**
 * How many rounds a fault test runs: the full numbers under `npm run faults`, fewer under `npm test`; and the one table
 * that all of them fill.
 */
import { appendFileSync } from 'node:fs';
import { env } from 'node:process';

const FULL = env['WHELPSIDE_FAULTS'] === 'full';

export function rounds(full: number, few: number): number {
  return FULL ? full : few;
}

/** One line of the table. What does not apply to a test is left out. */
export interface Line {
  readonly what: string;
  readonly rounds: number;
  /** Acknowledged facts that were gone afterwards. */
  readonly lost?: number;
  /** Openings whose file was not whole, or whose facts were not those written, without a word. */
  readonly silent?: number;
  /** Starts that offered no way on. */
  readonly lockedOut?: number;
  /** Strangers who got a fact, a secret or a change. */
  readonly letIn?: number;
  /** Rounds in which the program refused, in a sentence, and left everything as it was. */
  readonly refused?: number;
  /** Rounds after which it went on with every fact, or with those of the newest good copy. */
  readonly recovered?: number;
}

/** Says the line, and adds it to the table of `npm run faults`. */
export function report(line: Line): void {
  console.log(textOf(line));
  const table = env['WHELPSIDE_FAULTS_TABLE'];
  if (table !== undefined) appendFileSync(table, `${JSON.stringify(line)}\n`);
}

const COLUMNS = [
  ['rounds', 'rounds'],
  ['lost', 'lost'],
  ['silent', 'silent'],
  ['lockedOut', 'locked out'],
  ['letIn', 'let in'],
  ['refused', 'refused'],
  ['recovered', 'recovered'],
] as const;

export function textOf(line: Line): string {
  return `${line.what.padEnd(44)}${COLUMNS.map(([column]) => String(line[column] ?? '-').padStart(11)).join('')}`;
}

export const HEADING = `${''.padEnd(44)}${COLUMNS.map(([, heading]) => heading.padStart(11)).join('')}`;

/** Numbers that look random and are the same on every run with the same seed (mulberry32). */
export class Chance {
  #state: number;
  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0 up to, not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number {
    return Math.floor(this.next() * below);
  }

  pick<T>(list: readonly T[]): T {
    const one = list[this.below(list.length)];
    if (one === undefined) throw new RangeError('nothing to pick from');
    return one;
  }

  yes(probability: number): boolean {
    return this.next() < probability;
  }
}
