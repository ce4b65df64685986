/** Birth weight by what is usual in the breed. */
import { sameBreed } from '../litter/breed.ts';
import {
  ALL_BREEDS_DEATHS,
  BREED_BIRTH_WEIGHTS,
  type BreedBirthWeight,
  SMALL_STUDY_MEANS,
  type SmallStudyMean,
} from '../reference/growth/birth-weight.ts';

export type BirthClass = 'normal' | 'low' | 'very-low';

/** Under `below` grams a birth weight is very low in the breed. `mean` is the usual birth weight of the breed, in grams. */
export type VeryLow =
  | { readonly by: 'thresholds'; readonly below: number; readonly mean: number; readonly breed: BreedBirthWeight }
  /** Two thirds of what the breeder wrote as usual. */
  | { readonly by: 'given'; readonly below: number; readonly mean: number }
  /** Two thirds of what a small study found. */
  | { readonly by: 'small-study'; readonly below: number; readonly mean: number; readonly found: SmallStudyMean };

/** The published row of a breed, by its name in any spelling of case and spaces; null when the study does not have it. */
export function breedBirthWeight(breed: string): BreedBirthWeight | null {
  return BREED_BIRTH_WEIGHTS.find((b) => sameBreed(b.breed, breed)) ?? null;
}

/** The mean of a breed in a small study, found in the same way; null when none has it. */
export function smallStudyMean(breed: string): SmallStudyMean | null {
  return SMALL_STUDY_MEANS.find((m) => m.names.some((name) => sameBreed(name, breed))) ?? null;
}

/**
 * Two thirds of the mean of a breed without published thresholds, in grams. Computed: the median of very-low threshold over
 * mean in the ten breeds of Mugnier et al 2020 is 0.66 (0.45 to 0.91). A synthesis, no published rule.
 */
export function twoThirds(meanGrams: number): number {
  return (2 * meanGrams) / 3;
}

/**
 * From where on down a birth weight is very low in the breed: by its published threshold, else by two thirds of the usual
 * birth weight that the breeder gave (grams, or null), else of the mean of a small study. Null when none of them is known.
 */
export function veryLowBelow(breed: string, givenMean: number | null): VeryLow | null {
  const listed = breedBirthWeight(breed);
  if (listed !== null) return { by: 'thresholds', below: listed.veryLowBelow, mean: listed.mean, breed: listed };
  if (givenMean !== null) return { by: 'given', below: twoThirds(givenMean), mean: givenMean };
  const found = smallStudyMean(breed);
  return found === null ? null : { by: 'small-study', below: twoThirds(found.mean), mean: found.mean, found };
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
