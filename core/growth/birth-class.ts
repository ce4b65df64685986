/** Birth weight by what is usual in the breed. */
import { ALL_BREEDS_DEATHS, BREED_BIRTH_WEIGHTS, type BreedBirthWeight } from '../reference/growth/birth-weight.ts';

export type BirthClass = 'normal' | 'low' | 'very-low';

/** The published row of a breed, by its name in any spelling of case and spaces; null when the study does not have it. */
export function breedBirthWeight(breed: string): BreedBirthWeight | null {
  const plain = (t: string) =>
    t
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z]/g, '');
  const wanted = plain(breed);
  return BREED_BIRTH_WEIGHTS.find((b) => plain(b.breed) === wanted) ?? null;
}

export function birthClass(breed: Pick<BreedBirthWeight, 'lowBelow' | 'veryLowBelow'>, grams: number): BirthClass {
  if (grams < breed.veryLowBelow) return 'very-low';
  return grams < breed.lowBelow ? 'low' : 'normal';
}

/** Published deaths to day 21 of such puppies, in percent; for an explanation, never for a verdict. */
export function deathsToDay21(of: BirthClass, breed: BreedBirthWeight | null): number {
  const place = { normal: 0, low: 1, 'very-low': 2 } as const;
  return (breed?.deaths ?? ALL_BREEDS_DEATHS)[place[of]];
}
