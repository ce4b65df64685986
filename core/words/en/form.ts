/** Sentences of the form pieces: what a field says when something cannot be read or kept. */
import type { MassFault } from '../../units/mass.ts';

export const formWords = {
  notSaved: 'Not saved. What you wrote stays here; the reason is at the foot of the page.',
  tooLong: (most: number) => `That is longer than ${most} characters.`,
  notDate: 'That is not a whole date yet.',
  notClock: 'Write a time like 06:30.',
  notNumber: (example: string) => `Write a number, like ${example}.`,
  notWhole: 'Write a whole number.',
  between: (low: string, high: string) => `It has to be from ${low} to ${high}.`,
  massFault(fault: MassFault, typed: string): string {
    switch (fault.code) {
      case 'empty':
        return 'Write 412, 0.412kg, 14.5oz or 1 lb 3.';
      case 'letter':
        return `There is a letter ${fault.letter} in ${typed}. Write 412, 0.412kg, 14.5oz or 1 lb 3.`;
      case 'unit':
        return `${fault.unit} is not a unit of weight here. Write 412, 0.412kg, 14.5oz or 1 lb 3.`;
      case 'number':
        return `${typed} cannot be read as a weight. Write 412, 0.412kg, 14.5oz or 1 lb 3.`;
      case 'not-positive':
        return 'A weight has to be more than nothing.';
      case 'too-heavy':
        return 'That is heavier than any dog.';
      case 'ounces-over':
        return `${fault.ounces} ounces are more than a pound. Ounces go to 15 here.`;
    }
  },
} as const;
