/** What a heading of a table means, by the plain words of the trade. */

import { SESSIONS, type Session } from '../litter/litter.ts';
import type { Sex } from '../reference/classes.ts';
import { type MassUnit, unitOfWord } from '../units/mass.ts';

/** `leave` is a column that is not taken in. */
export const MEANINGS = [
  'puppy',
  'collar',
  'colour',
  'pattern',
  'sex',
  'date',
  'time',
  'session',
  'weight',
  'unit',
  'typed',
  'held',
  'litter',
  'dam',
  'sire',
  'breed',
  'born',
  'leave',
] as const;
export type Meaning = (typeof MEANINGS)[number];

const WORDS: Readonly<Record<Exclude<Meaning, 'leave'>, readonly string[]>> = {
  puppy: ['puppy', 'puppies', 'pup', 'pups', 'puppy name', 'pup name', 'call name', 'name', 'whelp', 'who'],
  collar: [
    'collar',
    'letter',
    'collar letter',
    'band',
    'ribbon',
    'puppy number',
    'pup number',
    'puppy no',
    'pup no',
    'no',
    'nr',
    'number',
  ],
  colour: ['colour', 'color', 'collar colour', 'collar color', 'ribbon colour', 'ribbon color'],
  pattern: ['pattern', 'collar pattern'],
  sex: ['sex', 'gender', 'dog or bitch', 'm/f'],
  date: [
    'date',
    'day',
    'weighed',
    'weighed on',
    'weigh date',
    'weighing date',
    'date weighed',
    'date of weighing',
    'on',
    'age',
    'age in days',
    'days old',
  ],
  time: ['time', 'clock', 'hour', 'weighed at', 'at', 'time weighed'],
  session: ['session', 'weigh-in', 'weigh in', 'weighing', 'am/pm', 'part of day', 'when'],
  weight: ['weight', 'mass', 'wt', 'reading', 'weighs'],
  unit: ['unit', 'units', 'weight unit'],
  typed: ['typed', 'as typed'],
  held: ['held', 'left out'],
  litter: ['litter', 'litter name'],
  dam: ['dam', 'mother'],
  sire: ['sire', 'father', 'stud'],
  breed: ['breed'],
  born: ['born', 'litter born', 'whelped', 'whelping date', 'date of birth', 'birth date', 'dob', 'date born'],
};

const MEANING_OF = new Map(
  Object.entries(WORDS).flatMap(([meaning, words]) => words.map((word) => [word, meaning as Meaning] as const)),
);

/** Pounds and ounces in one column; single units are those that a weight is typed in. */
const PAIR_WORDS = new Set(['lboz', 'lb oz', 'lb/oz', 'lb, oz', 'lb+oz', 'lbs oz', 'pounds and ounces']);

/** Columns that hold a sum or a remark in a grid: never a puppy. */
const NOT_A_PUPPY =
  /^(?:notes?|remarks?|comments?|total|sum|average|avg|mean|median|min|max|gain|temperature|temp|room|%|dam|dam weight|mother)\b/;

function plain(text: string): string {
  return text
    .normalize('NFKC')
    .trim()
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .replace(/[:.*]+$/, '')
    .trim();
}

/** The unit that a text is, or null: `g`, `kg`, `lb oz`. */
export function unitOf(text: string): MassUnit | null {
  const t = plain(text);
  if (PAIR_WORDS.has(t)) return 'lboz';
  // `#` heads a column of puppy numbers here, not of pounds.
  return t === '#' ? null : unitOfWord(t);
}

/** The heading's meaning, and the unit it names: `Weight (g)`, `grams`, `weight in kg`. Null when the words are none of ours. */
export function meaningOf(heading: string): { readonly meaning: Meaning; readonly unit: MassUnit | null } | null {
  const t = plain(heading);
  const alone = unitOf(t);
  if (alone !== null) return { meaning: 'weight', unit: alone };
  const m = /^(.*?)\s*(?:[([]\s*([^)\]]+?)\s*[)\]]|\bin\s+([a-z+/ ]+)|[,/]\s*([a-z]+))$/.exec(t);
  const unit = m === null ? null : unitOf(m[2] ?? m[3] ?? m[4] ?? '');
  const meaning = MEANING_OF.get(unit === null ? t : (m?.[1] ?? '').trim());
  return meaning === undefined || (unit !== null && meaning !== 'weight') ? null : { meaning, unit };
}

/** Whether a heading of a grid is a sum, a remark or the dam, and so never a puppy. */
export function isNoPuppy(heading: string): boolean {
  return NOT_A_PUPPY.test(plain(heading));
}

const SEX_OF: Readonly<Record<string, Sex>> = {
  dog: 'dog',
  male: 'dog',
  m: 'dog',
  boy: 'dog',
  d: 'dog',
  bitch: 'bitch',
  female: 'bitch',
  f: 'bitch',
  girl: 'bitch',
  b: 'bitch',
};

/** The sex that a text is, or null: `m`, `Bitch`. */
export function sexOf(text: string): Sex | null {
  const t = plain(text);
  return Object.hasOwn(SEX_OF, t) ? (SEX_OF[t] ?? null) : null;
}

const SESSION_OF: Readonly<Record<string, Session>> = {
  ...Object.fromEntries(SESSIONS.map((s) => [s, s])),
  'at birth': 'birth',
  born: 'birth',
  am: 'morning',
  'a.m': 'morning',
  pm: 'evening',
  'p.m': 'evening',
  night: 'evening',
};

/** The session that a text is, or null: `am`, `at birth`. */
export function sessionOf(text: string): Session | null {
  const t = plain(text);
  return Object.hasOwn(SESSION_OF, t) ? (SESSION_OF[t] ?? null) : null;
}

/** Whether a mark says yes: `yes`, `1`, `x`. Anything else, and nothing, is no. */
export function isYes(text: string): boolean {
  return /^(?:yes|y|true|1|x)$/.test(plain(text));
}

/** The text by which names are compared: NFC, without case, marks of direction or marks without width. */
export function nameKey(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g, '')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

/** What a person's text never holds: control characters but tab and line ends. */
const CONTROLS = /(?![\t\n\r])\p{Cc}/gu;

/** The text as the program keeps it: no control characters, no longer than this, no half of a character at the end. */
export function cut(text: string, max: number): string {
  const clean = text.replace(CONTROLS, '');
  return clean.length <= max
    ? clean
    : clean
        .slice(0, max)
        .toWellFormed()
        .replace(/\ufffd$/, '');
}
