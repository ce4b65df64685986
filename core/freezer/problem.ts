/** What the search for portions is asked, and what it answers. Times are minutes, masses tenths of a gram, all whole numbers. */
import type { Batch, Need, Served } from './serve.ts';

export interface Portion {
  readonly id: string;
  readonly tenths: number;
  /** Last day (day number) on which it may come to its first meal; null for any. */
  readonly lastDay: number | null;
}

export interface SolveInput {
  readonly now: number;
  /** In order of time; those before `now` only eat from what is thawed. */
  readonly needs: readonly Need[];
  /** Thawed or thawing already. */
  readonly thawed: readonly Batch[];
  /** Oldest first. */
  readonly portions: readonly Portion[];
  /** Minutes from freezer to fed, by mass. */
  readonly aheadOf: (tenths: number) => number;
  readonly keepMinutes: number;
  /** Minutes of the day at which packs are moved, rising, at least one. */
  readonly moveAt: readonly number[];
  /** End of what is looked at. What is left over then and still good is not counted as waste. */
  readonly until: number;
}

/** A portion taken out for a meal. */
export interface Opening {
  /** Place in the list of portions. */
  readonly portion: number;
  /** Place in the list of needs: the meal it is needed for. */
  readonly need: number;
  readonly moved: number;
  readonly ready: number;
  readonly useBy: number;
}

export interface Short {
  readonly need: number;
  readonly tenths: number;
  /** There is some, but it can't be thawed in time; or there is none left. */
  readonly why: 'too-late' | 'none-left';
}

export interface Solution {
  readonly openings: readonly Opening[];
  /** Who eats what: first the batches that were thawed already, then the openings, in their order. */
  readonly served: Served;
  readonly short: readonly Short[];
  readonly shortTenths: number;
  /** Thawed and not eaten in its time, what was thawed already included. */
  readonly wasteTenths: number;
  /** Whether no plan of this kind wastes less. */
  readonly exact: boolean;
  /** The least waste that could still be possible; equal to `wasteTenths` when exact. */
  readonly atLeastTenths: number;
}
