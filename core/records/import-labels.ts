/** What a table calls a puppy: a name, a collar letter, a colour, a number, or several of them. */
import {
  COLLAR_COLOURS,
  COLLAR_LETTERS,
  COLLAR_PATTERNS,
  type CollarColour,
  type CollarLetter,
  type CollarPattern,
} from '../litter/collar.ts';
import type { Sex } from '../reference/classes.ts';
import { nameKey, sexOf } from './import-words.ts';

/** What the table calls a puppy. */
export interface Label {
  readonly key: string;
  /** As it stands in the table; empty when the table names no puppy. */
  readonly text: string;
  readonly name: string;
  readonly letter: CollarLetter | null;
  readonly colour: CollarColour | null;
  readonly pattern: CollarPattern | null;
  readonly sex: Sex | null;
  readonly number: number | null;
}

/** The key of a puppy that the import will make for a label; never that of one that is there. */
export function newKey(label: Pick<Label, 'key'>): string {
  return `new:${label.key}`;
}

/** Whom a label means: a puppy that is there by id, a new one, or nobody (left out). */
export type Who = { readonly is: 'there'; readonly puppyId: string } | { readonly is: 'new' } | { readonly is: 'nobody' };

const FILLERS = new Set(['collar', 'puppy', 'pup', 'band', 'ribbon', 'the', 'no', 'nr', 'number', '#']);

/** What a table calls a puppy: a name, a collar letter, a colour, a number, or several of them. */
export function labelOf(text: string, collar: string, colour: string, pattern: string, sex: string): Label {
  const both = /^(.*\S)\s*[([]([A-Za-z])[)\]]$/.exec(text);
  const named = both?.[1] ?? text;
  const words = named.split(/[\s,/]+/).filter((w) => w !== '');
  const tokens = words.map(tokenOf);
  const isName = tokens.some((t) => t === null);
  const first = <K extends keyof Token>(key: K): Token[K] | undefined => tokens.find((t) => t?.[key] !== undefined)?.[key];
  const letter = letterOf(collar) ?? letterOf(both?.[2] ?? '') ?? (isName ? null : (first('letter') ?? null));
  return {
    key: [text, collar, text === '' && collar === '' ? colour : ''].map(nameKey).join('\n'),
    text: [text, text === collar ? '' : collar].filter((t) => t !== '').join(', ') || colour,
    name: isName ? named : '',
    letter,
    colour: colourOf(colour) ?? colourOf(collar) ?? (isName ? null : (first('colour') ?? null)),
    pattern: COLLAR_PATTERNS.find((p) => p === nameKey(pattern)) ?? null,
    sex: sexOf(sex) ?? (isName ? null : (first('sex') ?? null)),
    number: isName ? null : (first('number') ?? null),
  };
}

interface Token {
  letter?: CollarLetter;
  colour?: CollarColour;
  sex?: Sex;
  number?: number;
}

function tokenOf(word: string): Token | null {
  const key = nameKey(word);
  if (FILLERS.has(key)) return {};
  const colour = colourOf(word);
  if (colour !== null) return { colour };
  const letter = word.length === 1 ? letterOf(word) : null;
  if (letter !== null) return { letter };
  const sex = sexOf(word);
  if (sex !== null && word.length > 1) return { sex };
  const number = /^#?(\d{1,2})$/.exec(key)?.[1];
  return number === undefined ? null : { number: Number(number) };
}

function letterOf(text: string): CollarLetter | null {
  const t = text.trim().toUpperCase();
  return COLLAR_LETTERS.find((l) => l === t) ?? null;
}

function colourOf(text: string): CollarColour | null {
  const key = nameKey(text);
  return COLLAR_COLOURS.find((c) => c === key) ?? null;
}
