/** What is wrong with a text that is not a weight, in one sentence, and how weights may be written. */
import type { TypedFault } from '../../growth/scale/wedge.ts';
import type { MassUnit } from '../../units/mass.ts';

export const massWords = {
  /** A bare number is in her unit, so the first example is too. */
  howToWrite: {
    g: 'Write 412, 0.412kg, 14.5oz or 1 lb 3.',
    kg: 'Write 0.412, 412g, 14.5oz or 1 lb 3.',
    oz: 'Write 14.5, 1 lb 3 or 412g.',
    lb: 'Write 1.2, 1 lb 3, 14.5oz or 412g.',
    lboz: 'Write 1 lb 3, 14.5oz or 412g.',
  } satisfies Record<MassUnit, string>,
  stays: 'What you typed stays until you change it.',
};

/** The bold fact of a mistake: what cannot be read, and why. */
export function massMistake(fault: TypedFault, text: string): string {
  switch (fault.code) {
    case 'empty':
      return 'Nothing is written.';
    case 'letter':
      return `There is a letter ${fault.letter} in ${text.trim()}.`;
    case 'unit':
      return `“${fault.unit}” is not a unit of weight.`;
    case 'number':
      return `${text.trim()} cannot be read as a weight.`;
    case 'not-positive':
      return 'A weight is more than nothing.';
    case 'too-heavy':
      return 'No dog is that heavy.';
    case 'scale-moving':
      return 'The scale says that this was still moving. Send it again.';
    case 'scale-refused':
      return 'The scale says that this is no weight.';
    case 'ounces-over':
      return `${fault.ounces} ounces are more than a pound.`;
  }
}
