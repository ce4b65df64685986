/** Figures in the sentences of feeding. */

/** `5.5 %`, `60 %`: at most so many decimals, no closing nought. */
export function percentText(part: number, decimals: number): string {
  return `${plain(part * 100, decimals)}\u00a0%`;
}

/** At most so many decimals, no closing nought. */
export function plain(figure: number, decimals: number): string {
  return String(Number(figure.toFixed(decimals)));
}

/** `2.6 to 3.8`, or one figure when both ends read the same; `2.6 or more` and `not known` when the upper end is. */
export function rangeText(range: { readonly low: number; readonly high: number }, decimals: number): string {
  if (!Number.isFinite(range.high)) return range.low > 0 ? `${plain(range.low, decimals)} or more` : 'not known';
  const [low, high] = [plain(range.low, decimals), plain(range.high, decimals)];
  return low === high ? low : `${low} to ${high}`;
}
