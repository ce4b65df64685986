/**
 * A puppy is shown as its collar: colour, pattern and letter, so that it reads in grey, on paper and to a
 * colour-blind partner. The letter is never shared inside a litter.
 */
import { z } from 'zod';

export const COLLAR_COLOURS = [
  'red',
  'blue',
  'yellow',
  'green',
  'white',
  'orange',
  'purple',
  'pink',
  'brown',
  'teal',
  'sand',
  'lime',
  'black',
  'sky',
] as const;
export type CollarColour = (typeof COLLAR_COLOURS)[number];

export const COLLAR_PATTERNS = ['plain', 'stripe', 'dots', 'zigzag', 'check', 'bars', 'slant', 'edges'] as const;
export type CollarPattern = (typeof COLLAR_PATTERNS)[number];

/** Letters in birth order, without I and O, which read as 1 and 0. Sixteen, for the largest litters. */
export const COLLAR_LETTERS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K', 'L', 'M', 'N', 'P', 'R', 'S'] as const;

export const collarSchema = z.strictObject({
  letter: z.enum(COLLAR_LETTERS),
  colour: z.enum(COLLAR_COLOURS),
  pattern: z.enum(COLLAR_PATTERNS),
});
export type Collar = z.infer<typeof collarSchema>;
export type CollarLetter = Collar['letter'];

/** The collar a new puppy gets unless the breeder chooses another: no two alike, even in grey. */
export const USUAL_COLLARS: readonly Collar[] = [
  { letter: 'A', colour: 'red', pattern: 'plain' },
  { letter: 'B', colour: 'blue', pattern: 'stripe' },
  { letter: 'C', colour: 'yellow', pattern: 'dots' },
  { letter: 'D', colour: 'green', pattern: 'zigzag' },
  { letter: 'E', colour: 'white', pattern: 'check' },
  { letter: 'F', colour: 'orange', pattern: 'bars' },
  { letter: 'G', colour: 'purple', pattern: 'dots' },
  { letter: 'H', colour: 'pink', pattern: 'zigzag' },
  { letter: 'J', colour: 'brown', pattern: 'check' },
  { letter: 'K', colour: 'teal', pattern: 'slant' },
  { letter: 'L', colour: 'sand', pattern: 'plain' },
  { letter: 'M', colour: 'lime', pattern: 'stripe' },
  { letter: 'N', colour: 'black', pattern: 'edges' },
  { letter: 'P', colour: 'sky', pattern: 'bars' },
  { letter: 'R', colour: 'red', pattern: 'slant' },
  { letter: 'S', colour: 'blue', pattern: 'edges' },
];

/** The first usual collar whose letter is free, or null when all sixteen are taken. */
export function nextCollar(taken: readonly Collar[]): Collar | null {
  const letters = new Set(taken.map((c) => c.letter));
  return USUAL_COLLARS.find((c) => !letters.has(c.letter)) ?? null;
}
