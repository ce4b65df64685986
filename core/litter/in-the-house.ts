/** Where a puppy lives is one fact, whether its weights are compared with its littermates' another. */
import type { CivilDate } from '../calendar/day.ts';
import type { Puppy } from './litter.ts';

type Whereabouts = Pick<Puppy, 'state' | 'stateOn'>;

/** In the house on a day: it eats and nurses here. The day it leaves it has its morning meal here, and no other is counted. */
export function inTheHouse({ state, stateOn }: Whereabouts, day: CivilDate): boolean {
  return state === 'litter' || state === 'kept' || (stateOn !== null && day < stateOn);
}

/** Who belongs to the weigh-in of a day: those in the house, in its order. */
export function weighInOrder<P extends Whereabouts & Pick<Puppy, 'place'>>(puppies: readonly P[], day: CivilDate): P[] {
  return puppies.filter((p) => inTheHouse(p, day)).toSorted((a, b) => a.place - b.place);
}

/** Whether a litter is still a matter of the house: someone is there, or nobody is written down yet. */
export function litterInTheHouse(puppies: readonly Whereabouts[], day: CivilDate): boolean {
  return puppies.length === 0 || puppies.some((p) => inTheHouse(p, day));
}

/** The last day on which it belongs to the litter's comparison: the day it left or died; null while it goes on. A kept puppy stays in it. */
export function comparedUntil({ state, stateOn }: Whereabouts): CivilDate | null {
  return state === 'home' || state === 'died' ? stateOn : null;
}
