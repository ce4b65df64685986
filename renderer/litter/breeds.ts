/** Breeds as they are offered while one is typed, each with the growth that it means. */
import { breedBirthWeight } from '../../core/growth/birth-class.ts';
import { sameBreed } from '../../core/litter/breed.ts';
import type { SizeClass } from '../../core/reference/classes.ts';
import { BREED_SIZES } from '../../core/reference/growth/breeds.ts';
import type { Option } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';

export function breedSuggestions(): Option[] {
  return BREED_SIZES.map(({ breed, grows }) => ({ value: breed, word: grows === null ? '' : words.size[grows] }));
}

/** The size that a breed grows to; null for one that is not in the list, or that means several. */
export function sizeOfBreed(breed: string): SizeClass | null {
  return BREED_SIZES.find((b) => sameBreed(b.breed, breed))?.grows ?? null;
}

/** What the program knows of the breed: how it grows, and whether its birth weights were published. */
export function breedHint(breed: string): string {
  const size = sizeOfBreed(breed);
  if (size === null) return words.begin.breedHint;
  return words.begin.breedKnown(words.size[size], breedBirthWeight(breed) !== null);
}
