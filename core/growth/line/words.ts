/** What a place in the line means, in plain words: a note, never a level, and never a reason to feed more. */
import type { Sex } from '../../reference/classes.ts';
import { type MassUnit, massText } from '../../units/mass.ts';
import { birthIn } from '../milestones.ts';
import { pronouns } from '../words.ts';
import { LINE_NEEDS, type Line, type LinePlace, type LinePoint } from './line-curve.ts';

/** In fives: the line is of a few litters, and no finer. */
function inFives(percentile: number): number {
  return Math.round(percentile / 5) * 5;
}

/** "For his birth weight he is heavier than about 70 of 100 puppies of your own line at this age." */
export function placeSentence(place: LinePlace, sex: Sex): string {
  const { subject, possessive } = pronouns(sex);
  const n = inFives(place.percentile);
  const start = `For ${possessive} birth weight ${subject} is`;
  if (n === 0) return `${start} among the lightest of 100 puppies of your own line at this age.`;
  if (n === 100) return `${start} among the heaviest of 100 puppies of your own line at this age.`;
  if (n === 50) return `${start} in the middle of your own line at this age.`;
  return n > 50
    ? `${start} heavier than about ${n} of 100 puppies of your own line at this age.`
    : `${start} lighter than about ${100 - n} of 100 puppies of your own line at this age.`;
}

/** Null without a weight some days ago. */
export function gainSentence(place: LinePlace, sex: Sex): string | null {
  if (place.gain === null) return null;
  const { subject } = pronouns(sex);
  const days = Math.round(place.gain.days);
  const n = inFives(place.gain.percentile);
  const start = `In the last ${days} days ${subject} gained`;
  const those = `of 100 that stood where ${subject} did`;
  if (n >= 35 && n <= 65) return `${start} about as much as most that stood where ${subject} did.`;
  if (n === 0) return `${start} less than nearly all ${those}.`;
  if (n === 100) return `${start} more than nearly all ${those}.`;
  return n > 50 ? `${start} more than about ${n} ${those}.` : `${start} less than about ${100 - n} ${those}.`;
}

/** Where the figure comes from. */
export function placeHow(place: LinePlace, grams: number, unit: MassUnit): string {
  const { table } = place;
  return `${massText(grams, unit)}, where the middle of your line for this birth weight is ${massText(place.middleGrams, unit)}: ${table.m.toFixed(2)} times birth weight, spread ${(100 * table.s).toFixed(0)} %, z ${place.z.toFixed(2)}. From ${table.puppies} puppies of ${table.litters} earlier litters of the same breed at this age; litters count alike (mixed model), the place by the LMS method (Cole 1990, from memory), with the fewness of the litters reckoned in. Puppies that died or lost a tenth in the first days are left out.`;
}

/** Why there is no place to tell: too few litters, no birth weight, or none of the line's weights at this age. */
export function noPlaceSentence(line: Line, breed: string, series: readonly LinePoint[]): string {
  const { litters, puppies } = LINE_NEEDS;
  const needed = `your own line needs ${litters} litters and ${puppies} puppies weighed from birth`;
  if (breed.trim() === '') return `Write down the breed of the litter first; ${needed}.`;
  if (line.puppies === 0) return `No earlier litter of this breed was weighed from birth; ${needed}.`;
  if (line.litters < litters || line.puppies < puppies) {
    const are = line.litters === 1 ? 'is 1 earlier litter' : `are ${line.litters} earlier litters`;
    return `There ${are} of this breed with ${line.puppies} ${line.puppies === 1 ? 'puppy' : 'puppies'} weighed from birth; ${needed}.`;
  }
  if (series.length === 0) return 'No weights are written yet.';
  if (birthIn(series) === null) return 'This puppy has no birth weight to go by.';
  const [first, last] = [line.ages[0]?.day, line.ages.at(-1)?.day];
  if (first === undefined || last === undefined) return `Your earlier litters have too few weights at the same ages; ${needed}.`;
  return `Your earlier litters have enough weights from day ${first} to day ${last} only.`;
}
