/** The usual birth weight of a breed as a form asks for it: only where no figures of the breed were published. */
import { breedBirthWeight, smallStudyMean } from '../../core/growth/birth-class.ts';
import { BREED_BIRTH_GRAMS } from '../../core/litter/litter.ts';
import { type Grams, isMetric, type MassUnit } from '../../core/units/mass.ts';
import { bad, good, type Read, readMass } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

/** What was once written is shown also without a breed, so that it can be taken out. */
export function asksBreedBirth(breed: string, written: boolean): boolean {
  return breedBirthWeight(breed) === null && (written || breed.trim() !== '');
}

/** A number alone is grams, or ounces for who weighs in pounds or ounces: a newborn is too little for kg or lb. Empty is null. */
export function readBreedBirth(unit: MassUnit): (text: string) => Read<Grams | null> {
  return (text) => {
    const mass = readMass(isMetric(unit) ? 'g' : 'lboz')(text);
    if (!mass.ok || mass.value === null) return mass.ok ? good(null) : mass;
    const { low, high } = BREED_BIRTH_GRAMS;
    const { grams } = mass.value;
    const within = grams >= low && grams <= high;
    return within ? good(grams) : bad(words.form.between(breedBirthText(low, unit), breedBirthText(high, unit)));
  };
}

/** As it is typed, empty for null. */
export function breedBirthText(grams: number | null, unit: MassUnit): string {
  return grams === null ? '' : words.begin.breedBirthMass(grams, unit);
}

/** What it is used for, and what serves without it. */
export function breedBirthHint(breed: string, unit: MassUnit): string {
  const study = smallStudyMean(breed);
  return words.begin.breedBirthHint(isMetric(unit) ? 'g' : 'oz', study === null ? null : breedBirthText(study.mean, unit));
}
