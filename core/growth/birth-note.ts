/** What a birth weight means: by the published figures of its breed, else by two thirds of the middle of its littermates. */
import type { BreedBirthWeight } from '../reference/growth/birth-weight.ts';
import { type BirthClass, birthClass, breedBirthWeight, deathsToDay21 } from './birth-class.ts';

export type BirthNote =
  | {
      readonly by: 'breed';
      readonly is: BirthClass;
      readonly breed: BreedBirthWeight;
      /** Published deaths to day 21 of such puppies of the breed, in percent. */
      readonly deaths: number;
    }
  /** `under` grams: two thirds of the mean birth weight of the litter. A stand-in of our own for the mean of a breed nobody measured. */
  | { readonly by: 'litter'; readonly is: 'normal' | 'very-low'; readonly meanGrams: number; readonly under: number };

/** Fewer birth weights make no mean. */
const FEWEST = 3;

/** Null when the breed is not listed and the litter too small to be a measure. Weights in grams; `litter` holds the puppy's own too. */
export function birthNote(breed: string, grams: number, litter: readonly number[]): BirthNote | null {
  const listed = breedBirthWeight(breed);
  if (listed !== null) {
    const is = birthClass(listed, grams);
    return { by: 'breed', is, breed: listed, deaths: deathsToDay21(is, listed) };
  }
  if (litter.length < FEWEST) return null;
  const meanGrams = litter.reduce((a, b) => a + b, 0) / litter.length;
  const under = (2 * meanGrams) / 3;
  return { by: 'litter', is: grams < under ? 'very-low' : 'normal', meanGrams, under };
}
