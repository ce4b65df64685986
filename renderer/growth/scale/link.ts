/** A scale that is connected, whichever way: what it says, and that it is gone. */

import type { ScaleTrouble, ScaleValue } from '../../../core/growth/scale/value.ts';

export interface Hearing {
  /** `at` is the page's steady clock, as performance.now(). */
  readonly heard: (value: ScaleValue, at: number) => void;
  readonly lost: () => void;
}

export interface ScaleLink {
  readonly name: string;
  close(): Promise<void>;
}

export class NoLink extends Error {
  readonly trouble: ScaleTrouble;
  constructor(trouble: ScaleTrouble) {
    super(trouble);
    this.name = 'NoLink';
    this.trouble = trouble;
  }
}
