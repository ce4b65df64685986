/** What a scale says at one moment, whichever way it is connected. */

/** Why a scale's word is no weight: a closed list, so that the window can say it. */
export type ScaleFault =
  | 'fault' // the scale reports a fault of its own
  | 'under-zero'
  | 'over-limit'
  | 'calibrate'
  | 're-zero'
  | 'unit' // a unit that is unknown, or that means different weights in different places
  | 'no-unit' // a number without a unit, and nobody said which one it is in
  | 'garbled'; // too short, or a status that no table has

/** Why there is no link to a scale: a closed list, so that it can be said. */
export type ScaleTrouble = 'no-way' | 'none-chosen' | 'not-a-scale' | 'cannot-open';

/** By USB report, or by lines over a serial port. */
export const SCALE_WAYS = ['usb', 'serial'] as const;
export type ScaleWay = (typeof SCALE_WAYS)[number];

export type ScaleValue =
  | {
      readonly kind: 'weight';
      /** Grams; below zero when the scale was not zeroed. */
      readonly grams: number;
      /** Grams of one unit in the last place sent: the scale moves by this much or more. */
      readonly stepGrams: number;
      /** Null when the scale does not say. */
      readonly stable: boolean | null;
      readonly basis: 'gross' | 'net' | null;
    }
  /** Stable at the centre of zero: nothing is on it. */
  | { readonly kind: 'zero' }
  | { readonly kind: 'fault'; readonly fault: ScaleFault };

export function fault(of: ScaleFault): ScaleValue {
  return { kind: 'fault', fault: of };
}
