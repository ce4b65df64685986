import type { Collar } from '../../core/litter/collar.ts';
import { words } from '../state/words.ts';

/** "green zigzag". */
export function collarWords(collar: Pick<Collar, 'colour' | 'pattern'>): string {
  return `${words.collarText.colours[collar.colour]} ${words.collarText.patterns[collar.pattern]}`;
}

/** The spoken label: "D, Dock, green zigzag". */
export function collarLabel(collar: Collar, name: string): string {
  return words.collarText.spoken(collar.letter, name, collarWords(collar));
}
