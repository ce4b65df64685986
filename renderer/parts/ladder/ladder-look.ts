import type { CivilDate } from '../../../core/calendar/day.ts';
import type { LadderStep } from '../../../core/feeding/ladder.ts';
import type { MealName } from '../../../core/food/bowls.ts';
import { clamp } from '../../../core/statistics/clamp.ts';

/** From the bottom up. */
export const LAYERS: readonly MealName[] = ['evening', 'afternoon', 'midday', 'morning'];

export interface LadderLook {
  readonly width: number;
  readonly height: number;
  /** Space left and right of the first and last tread. */
  readonly pad: number;
  readonly figure: number;
  readonly bracket: number;
  readonly change: number;
  readonly layer: number;
  readonly age: number;
  /** Size of the row of dates under the ages; 0 has none. */
  readonly date: number;
}

/** The words, so that the placing knows how long they are; the first of a list is the best, the next are shorter. */
export interface LadderTexts {
  readonly figure: (grams: number, first: boolean, now: boolean) => string;
  readonly meals: (count: number) => readonly string[];
  readonly change: (days: number) => readonly string[];
  readonly layer: (meal: MealName) => string;
  readonly weeks: (weeks: number, first: boolean) => string;
  readonly months: (months: number, first: boolean) => string;
  readonly date: (day: CivilDate) => string;
  readonly now: string;
}

type LadderTextKind = 'figure' | 'bracket' | 'change' | 'layer' | 'age' | 'date';

/** A text centred on `x` with its baseline at `y`; `width` as measured. */
export interface LadderText {
  readonly kind: LadderTextKind;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
}

export interface Tread {
  readonly step: LadderStep;
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly layers: readonly { readonly meal: MealName; readonly top: number; readonly bottom: number }[];
}

/** Weights of the text face by what the text says. */
export function weightOf(kind: LadderTextKind): number {
  return { figure: 650, bracket: 600, change: 400, layer: 450, age: 400, date: 400 }[kind];
}

export function inside(center: number, width: number, room: number): number {
  return clamp(center, width / 2, room - width / 2);
}

/** Whether two texts come closer than `gap` sideways while they share a height. */
export function overlaps(a: LadderText, b: LadderText, gap: number): boolean {
  const apart = Math.abs(a.x - b.x) >= (a.width + b.width) / 2 + gap;
  const rows = a.y - a.size * 0.8 >= b.y + b.size * 0.24 || b.y - b.size * 0.8 >= a.y + a.size * 0.24;
  return !apart && !rows;
}

export const GAP = 6;

export interface Zone {
  readonly from: number;
  readonly to: number;
  readonly meals: number;
  readonly changing: boolean;
  readonly names: readonly MealName[];
}
