/** What a place in the line means, in plain words: a note, never a level, and never a reason to feed more. */

import type { NoPlace } from '../../growth/own-line/no-place.ts';
import { LINE_NEEDS, type LinePlace } from '../../growth/own-line/own-line.ts';
import type { Sex } from '../../reference/classes.ts';
import type { MassUnit } from '../../units/mass.ts';
import { massText } from './amounts.ts';
import { counted } from './figures.ts';
import { pronouns } from './pronouns.ts';

export const ownLineWords = {
  place: placeSentence,
  gain: gainSentence,
  how: placeHow,
  noPlace: noPlaceSentence,
} as const;

/** In fives: the line is of a few litters, and no finer. */
function inFives(percentile: number): number {
  return Math.round(percentile / 5) * 5;
}

/** "For his birth weight he is heavier than about 70 of 100 puppies of your own line at this age." */
function placeSentence(place: LinePlace, sex: Sex): string {
  const { they, their } = pronouns(sex);
  const n = inFives(place.percentile);
  const start = `For ${their} birth weight ${they} is`;
  if (n === 0) return `${start} among the lightest of 100 puppies of your own line at this age.`;
  if (n === 100) return `${start} among the heaviest of 100 puppies of your own line at this age.`;
  if (n === 50) return `${start} in the middle of your own line at this age.`;
  return n > 50
    ? `${start} heavier than about ${n} of 100 puppies of your own line at this age.`
    : `${start} lighter than about ${100 - n} of 100 puppies of your own line at this age.`;
}

/** Null without a weight some days ago. */
function gainSentence(place: LinePlace, sex: Sex): string | null {
  if (place.gain === null) return null;
  const { they } = pronouns(sex);
  const days = Math.round(place.gain.days);
  const n = inFives(place.gain.percentile);
  const start = `In the last ${days} days ${they} gained`;
  const those = `of 100 that stood where ${they} did`;
  if (n >= 35 && n <= 65) return `${start} about as much as most that stood where ${they} did.`;
  if (n === 0) return `${start} less than nearly all ${those}.`;
  if (n === 100) return `${start} more than nearly all ${those}.`;
  return n > 50 ? `${start} more than about ${n} ${those}.` : `${start} less than about ${100 - n} ${those}.`;
}

/** Where the figure comes from. */
function placeHow(place: LinePlace, grams: number, unit: MassUnit): string {
  const { table } = place;
  return `${massText(grams, unit)}, where the middle of your line for this birth weight is ${massText(place.medianGrams, unit)}: ${table.m.toFixed(2)} times birth weight, spread ${(100 * table.s).toFixed(0)} %, z ${place.z.toFixed(2)}. From ${table.puppies} puppies of ${table.litters} earlier litters of the same breed at this age; litters count alike (mixed model), the place by the LMS method (Cole 1990, from memory), with the fewness of the litters reckoned in. Puppies that died or lost a tenth in the first days are left out.`;
}

/** Why there is no place to tell. */
function noPlaceSentence(f: NoPlace): string {
  const needed = `your own line needs ${LINE_NEEDS.litters} litters and ${LINE_NEEDS.puppies} puppies weighed from birth`;
  switch (f.code) {
    case 'no-breed':
      return `Write down the breed of the litter first; ${needed}.`;
    case 'no-earlier-litter':
      return `No earlier litter of this breed was weighed from birth; ${needed}.`;
    case 'few-litters': {
      const litters = counted(f.litters, 'earlier litter');
      return `There ${f.litters === 1 ? 'is' : 'are'} ${litters} of this breed with ${counted(f.puppies, 'puppy', 'puppies')} weighed from birth; ${needed}.`;
    }
    case 'no-weights':
      return 'No weights are written yet.';
    case 'no-birth-weight':
      return 'This puppy has no birth weight to go by.';
    case 'few-weights-alike':
      return `Your earlier litters have too few weights at the same ages; ${needed}.`;
    case 'out-of-reach':
      return `Your earlier litters have enough weights from day ${f.first} to day ${f.last} only.`;
  }
}
