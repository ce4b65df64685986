/** A scale that is connected, whichever way: what it says, and that it is gone. */

import type { ScaleValue } from '../../../core/growth/scale/value.ts';
import type { KnownScale } from '../../../core/records/house.ts';

export type ScaleWay = KnownScale['way'];

export interface Hearing {
  /** `at` is the page's steady clock, as performance.now(). */
  readonly heard: (value: ScaleValue, at: number) => void;
  readonly lost: () => void;
}

export interface ScaleLink {
  readonly name: string;
  close(): Promise<void>;
}

/** Why there is no link: a closed list, so that it can be said. */
export type ScaleTrouble = 'no-way' | 'none-chosen' | 'not-a-scale' | 'cannot-open';

export class NoLink extends Error {
  readonly trouble: ScaleTrouble;
  constructor(trouble: ScaleTrouble) {
    super(trouble);
    this.name = 'NoLink';
    this.trouble = trouble;
  }
}
