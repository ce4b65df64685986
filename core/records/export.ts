/** All weights as one table that people can read, and that `import` reads back to the letter. */
import { clockOf, dateOf } from '../calendar/clock.ts';
import { isCurrent, type Litter, type Puppy, type Reading } from '../litter/litter.ts';
import type { Cell } from './csv.ts';

/** The headings, by words that the import knows. `grams` is the weight; `typed` and `unit` are how it was written. */
export const WEIGHT_HEADINGS = [
  'litter',
  'dam',
  'sire',
  'breed',
  'born',
  'puppy',
  'collar',
  'colour',
  'pattern',
  'sex',
  'date',
  'time',
  'session',
  'grams',
  'typed',
  'unit',
  'held',
] as const;

export interface LitterWeights {
  readonly litter: Litter;
  readonly puppies: readonly Puppy[];
  readonly readings: readonly Reading[];
}

/** Headings and one row for each weight that stands: litters as given, puppies in their order, weights by time. */
export function weightsTable(litters: readonly LitterWeights[]): Cell[][] {
  const rows = litters.flatMap(({ litter, puppies, readings }) =>
    puppies.flatMap((puppy) =>
      readings
        .filter((r) => r.puppyId === puppy.id && isCurrent(r))
        .toSorted((a, b) => a.instant - b.instant || a.recordedInstant - b.recordedInstant)
        .map((r) => weightRow(litter, puppy, r)),
    ),
  );
  return [[...WEIGHT_HEADINGS], ...rows];
}

function weightRow(litter: Litter, puppy: Puppy, r: Reading): Cell[] {
  return [
    litter.name,
    litter.dam,
    litter.sire,
    litter.breed,
    `${dateOf(litter.whelpedAt)} ${clockOf(litter.whelpedAt)}`,
    puppy.callName,
    puppy.collar.letter,
    puppy.collar.colour,
    puppy.collar.pattern,
    puppy.sex,
    dateOf(r.at),
    clockOf(r.at),
    r.session,
    r.grams,
    r.typed,
    r.unit,
    r.held ? 'yes' : 'no',
  ];
}
