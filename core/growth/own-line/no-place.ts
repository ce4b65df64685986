/** Why there is no place in the breeder's own line to tell: too few litters, no birth weight, or none of the line's weights then. */
import { birthIn } from '../milestones.ts';
import { LINE_NEEDS, type LinePoint, type OwnLineCurve } from './own-line.ts';

export type NoPlace =
  | { readonly code: 'no-breed' | 'no-earlier-litter' | 'no-weights' | 'no-birth-weight' | 'few-weights-alike' }
  | { readonly code: 'few-litters'; readonly litters: number; readonly puppies: number }
  /** Days of life that the line reaches from and to. */
  | { readonly code: 'out-of-reach'; readonly first: number; readonly last: number };

export function noPlace(line: OwnLineCurve, breed: string, series: readonly LinePoint[]): NoPlace {
  const { litters, puppies } = line;
  if (breed.trim() === '') return { code: 'no-breed' };
  if (puppies === 0) return { code: 'no-earlier-litter' };
  if (litters < LINE_NEEDS.litters || puppies < LINE_NEEDS.puppies) return { code: 'few-litters', litters, puppies };
  if (series.length === 0) return { code: 'no-weights' };
  if (birthIn(series) === null) return { code: 'no-birth-weight' };
  const [first, last] = [line.ages[0]?.day, line.ages.at(-1)?.day];
  return first === undefined || last === undefined ? { code: 'few-weights-alike' } : { code: 'out-of-reach', first, last };
}
