/** What the go-home plan says, in English: dates, she and he, and the sentences of both sheets. */
import { type CivilDate, dateParts } from '../calendar/day.ts';
import { monthName } from '../calendar/words.ts';
import type { Collar, CollarPattern } from '../litter/collar.ts';

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

const PATTERN_WORDS: Record<CollarPattern, string> = {
  plain: 'plain',
  stripe: 'one stripe',
  dots: 'dots',
  zigzag: 'zigzag',
  check: 'check',
  bars: 'bars',
  slant: 'slanted stripes',
  edges: 'light edges',
};

/** "26 September 2026" */
export function dateInWords(d: CivilDate): string {
  const { year, day } = dateParts(d);
  return `${day}\u00a0${monthName(d)} ${year}`;
}

/** "21 to 27 November", "28 November to 4 December": both days included. */
export function dateSpan(from: CivilDate, to: CivilDate): string {
  const [a, b] = [dateParts(from), dateParts(to)];
  const first = a.month === b.month && a.year === b.year ? String(a.day) : `${a.day}\u00a0${monthName(from)}`;
  return `${first} to ${b.day}\u00a0${monthName(to)}`;
}

/** "third" up to twelfth, then "13th". */
export function placeWord(n: number): string {
  const end = n % 10 === 1 && n !== 11 ? 'st' : n % 10 === 2 && n !== 12 ? 'nd' : n % 10 === 3 && n !== 13 ? 'rd' : 'th';
  return PLACES[n] ?? `${n}${end}`;
}

/** "green, zigzag, letter D" */
export function collarWords(c: Collar): string {
  return `${c.colour}, ${PATTERN_WORDS[c.pattern]}, letter ${c.letter}`;
}

/** "Tansy’s", "Moss’s" */
export function whose(name: string): string {
  return `${name}’s`;
}

/** "a tenth" for 0.1, else "15 %". */
export function partWord(share: number): string {
  return Math.abs(share - 0.1) < 1e-9 ? 'a tenth' : `${Number((share * 100).toFixed(1))}\u00a0%`;
}

/** Published ceiling for treats: at most 10 % of the food (SACN5 p. 315, seen). */
export const PUBLISHED_TREAT_SHARE = 0.1;
