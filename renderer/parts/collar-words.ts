import type { Collar } from '../../core/litter/collar.ts';
import { collarTextWords as words } from '../../core/words/en/parts.ts';

/** "green zigzag". */
export function collarWords(collar: Pick<Collar, 'colour' | 'pattern'>): string {
  return `${words.colours[collar.colour]} ${words.patterns[collar.pattern]}`;
}

/** The spoken label: "D, Dock, green zigzag". */
export function collarLabel(collar: Collar, name: string): string {
  return words.spoken(collar.letter, name, collarWords(collar));
}
