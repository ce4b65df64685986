/** Numbers as they are written and said: thousands apart, at most so many decimals, ranges, small numbers in words. */

const GROUPED = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 20, signDisplay: 'negative' });
const PLAIN = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 20, signDisplay: 'negative', useGrouping: false });
const PLACE = new Intl.PluralRules('en-GB', { type: 'ordinal' });
const COUNT = new Intl.PluralRules('en-GB');
const FIXED = [0, 1, 2, 3].map(
  (digits) =>
    new Intl.NumberFormat('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false }),
);
const LIST = new Intl.ListFormat('en-GB', { type: 'conjunction' });

/** A figure to so many decimals, without closing noughts. A no-break space for thousands, as on paper: a comma could be read as a decimal one. */
export function grouped(n: number, decimals = 0): string {
  return GROUPED.formatToParts(Number(n.toFixed(decimals)))
    .map((p) => (p.type === 'group' ? '\u00a0' : p.value))
    .join('');
}

/** Always so many decimals, 0 to 3. Rounded as a number first: `Intl` would round halves of its own. */
export function fixed(n: number, decimals: 0 | 1 | 2 | 3): string {
  return (FIXED[decimals] ?? PLAIN).format(Number(n.toFixed(decimals)));
}

/** At most so many decimals, no closing nought. */
export function plain(figure: number, decimals: number): string {
  return PLAIN.format(Number(figure.toFixed(decimals)));
}

/** `5.5 %`, `60 %`: at most so many decimals, no closing nought. */
export function percentText(part: number, decimals: number): string {
  return `${plain(part * 100, decimals)}\u00a0%`;
}

/** `2.6 to 3.8`, or one figure when both ends read the same; `2.6 or more` and `not known` when the upper end is. */
export function rangeText(range: { readonly low: number; readonly high: number }, decimals: number): string {
  if (!Number.isFinite(range.high)) return range.low > 0 ? `${plain(range.low, decimals)} or more` : 'not known';
  const [low, high] = [plain(range.low, decimals), plain(range.high, decimals)];
  return low === high ? low : `${low} to ${high}`;
}

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
] as const;

/** "no" for none, "seven"; figures from thirteen on. `n` is a whole number, not negative. */
export function numberWord(n: number): string {
  return NUMBERS[n] ?? String(n);
}

const PLACES = [
  '',
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
] as const;
const PLACE_ENDS: Record<Intl.LDMLPluralRule, string> = { zero: 'th', one: 'st', two: 'nd', few: 'rd', many: 'th', other: 'th' };

/** "third" up to twelfth, then "13th". */
export function placeWord(n: number): string {
  return PLACES[n] ?? `${n}${PLACE_ENDS[PLACE.select(n)]}`;
}

/** "a tenth" for 0.1, else "15 %". */
export function partWord(share: number): string {
  return Math.abs(share - 0.1) < 1e-9 ? 'a tenth' : percentText(share, 1);
}

/** "1 day", "3 days". */
export function counted(n: number, one: string, other = `${one}s`): string {
  return `${n} ${COUNT.select(n) === 'one' ? one : other}`;
}

/** "Tansy", "Tansy and Moss", "Tansy, Moss and Fern". */
export function listed(names: readonly string[]): string {
  return LIST.format(names);
}

/** The text with a capital at its start. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** "Tansy’s", "Moss’s" */
export function whose(name: string): string {
  return `${name}’s`;
}

/** "412 kcal". */
export function kcalText(kcal: number): string {
  return `${Math.round(kcal)}\u00a0kcal`;
}
