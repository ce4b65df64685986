/** Whom the labels of a table mean: puppies that are there, or new ones with free collars. */

import { type LocalTime, localMinutes } from '../calendar/clock.ts';
import { DAY_MINUTES } from '../calendar/durations.ts';
import { type Collar, nextCollar, USUAL_COLLARS } from '../litter/collar.ts';
import type { Puppy } from '../litter/litter.ts';
import type { Sex } from '../reference/classes.ts';
import type { ImportRow, ImportTarget } from './import.ts';
import { type Label, newKey, type Who } from './import-labels.ts';
import { cut, nameKey } from './import-words.ts';

/** Longest name of a puppy. */
const LONGEST_NAME = 120;
const BORN_BEFORE_DAYS = 1;
const BORN_AFTER_DAYS = 3;

/** Whom each label probably means, where exactly one puppy answers to it. */
export function matchPuppies(labels: readonly Label[], puppies: readonly Puppy[]): Map<string, Who> {
  const found = new Map<string, Who>();
  for (const label of labels) {
    const puppy = matchOf(label, puppies);
    if (puppy !== null) found.set(label.key, { is: 'there', puppyId: puppy.id });
  }
  return found;
}

function matchOf(label: Label, puppies: readonly Puppy[]): Puppy | null {
  const only = (test: (p: Puppy) => boolean) => {
    const fit = puppies.filter(test);
    return fit.length === 1 ? (fit[0] ?? null) : null;
  };
  const name = nameKey(label.name);
  return (
    (label.letter === null ? null : only((p) => p.collar.letter === label.letter)) ??
    (name === '' ? null : only((p) => nameKey(p.callName) === name)) ??
    (label.colour === null
      ? null
      : only((p) => p.collar.colour === label.colour && (label.sex === null || p.sex === label.sex || p.sex === 'unseen'))) ??
    (label.number === null ? null : only((p) => p.birthOrder === label.number))
  );
}

export interface NewPuppy {
  readonly key: string;
  readonly collar: Collar;
  readonly callName: string;
  /** Null when the table does not say. */
  readonly sex: Sex | null;
  readonly bornAt: LocalTime;
}

/**
 * The puppies that the labels would become, with free collars: the letter and colour of the table where it has them, else
 * the usual ones in turn. Null when there are more than sixteen. A birth weight's time is the time of birth.
 */
export function newPuppies(labels: readonly Label[], rows: readonly ImportRow[], target: ImportTarget): NewPuppy[] | null {
  const taken = target.puppies.map((p) => p.collar);
  const asked = new Set(labels.flatMap((l) => (l.letter === null ? [] : [l.letter])));
  const made: NewPuppy[] = [];
  for (const label of labels) {
    const letterFree = label.letter !== null && !taken.some((c) => c.letter === label.letter);
    const usual = letterFree
      ? (USUAL_COLLARS.find((c) => c.letter === label.letter) ?? null)
      : (USUAL_COLLARS.find((c) => !asked.has(c.letter) && !taken.some((t) => t.letter === c.letter)) ?? nextCollar(taken));
    if (usual === null) return null;
    const collar: Collar = {
      ...usual,
      ...(label.colour && { colour: label.colour }),
      ...(label.pattern && { pattern: label.pattern }),
    };
    taken.push(collar);
    const birth = rows.find((r) => r.puppy === newKey(label) && r.reading?.session === 'birth')?.reading?.at;
    const bornAt = birth !== undefined && fitsWhelping(birth, target.whelpedAt) ? birth : target.whelpedAt;
    made.push({
      key: newKey(label),
      collar,
      callName: cut(label.name, LONGEST_NAME),
      sex: label.sex,
      bornAt,
    });
  }
  return made;
}

/** A birth is within a day before and three days after the whelping began: our own bounds. */
function fitsWhelping(birth: LocalTime, whelpedAt: LocalTime): boolean {
  const days = (localMinutes(birth) - localMinutes(whelpedAt)) / DAY_MINUTES;
  return days >= -BORN_BEFORE_DAYS && days <= BORN_AFTER_DAYS;
}
