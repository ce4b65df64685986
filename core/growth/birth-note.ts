/** What a birth weight means: by what is known of its breed, else by two thirds of the mean of its litter. */
import type { BreedBirthWeight } from '../reference/growth/birth-weight.ts';
import { type BirthClass, birthClass, deathsToDay21, twoThirds, type VeryLow, veryLowBelow } from './birth-class.ts';

export type BirthNote =
  | {
      readonly by: 'breed';
      readonly is: BirthClass;
      readonly breed: BreedBirthWeight;
      /** Published deaths to day 21 of such puppies of the breed, in percent. */
      readonly deaths: number;
    }
  /** Two thirds of the usual birth weight of a breed without published thresholds. */
  | {
      readonly by: 'mean';
      readonly is: 'normal' | 'very-low';
      readonly cutOff: Exclude<VeryLow, { readonly by: 'thresholds' }>;
    }
  /** `under` grams: two thirds of the mean birth weight of the litter. A stand-in of our own for the mean of a breed nobody measured. */
  | { readonly by: 'litter'; readonly is: 'normal' | 'very-low'; readonly meanGrams: number; readonly under: number };

/** Fewer birth weights make no mean. */
const FEWEST = 3;

/**
 * Null when nothing is known of the breed and the litter is too small to be a measure. Weights in grams; `litter` holds the
 * puppy's own too, `givenMean` is the usual birth weight of the breed as the breeder wrote it, or null.
 */
export function birthNote(breed: string, givenMean: number | null, grams: number, litter: readonly number[]): BirthNote | null {
  const cutOff = veryLowBelow(breed, givenMean);
  if (cutOff?.by === 'thresholds') {
    const is = birthClass(cutOff.breed, grams);
    return { by: 'breed', is, breed: cutOff.breed, deaths: deathsToDay21(is, cutOff.breed) };
  }
  if (cutOff !== null) return { by: 'mean', is: grams < cutOff.below ? 'very-low' : 'normal', cutOff };
  if (litter.length < FEWEST) return null;
  const meanGrams = litter.reduce((a, b) => a + b, 0) / litter.length;
  const under = twoThirds(meanGrams);
  return { by: 'litter', is: grams < under ? 'very-low' : 'normal', meanGrams, under };
}
