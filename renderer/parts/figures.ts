/** Figures of foods as they are shown. */
import type { Range } from '../../core/food/food.ts';
import { words } from '../state/words.ts';

/** A figure to so many decimals, thousands apart. */
export function figure(n: number, decimals = 0): string {
  return words.grouped(n, decimals);
}

/** A range of parts as per cent: `9 to 13`, `not known`. */
export function percentRange(range: Range, decimals = 0): string {
  if (range.high >= 1 && range.low <= 0) return words.rangeText({ low: 0, high: Number.POSITIVE_INFINITY }, decimals);
  return words.rangeText({ low: range.low * 100, high: range.high * 100 }, decimals);
}
