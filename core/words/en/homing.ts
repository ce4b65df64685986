/** Sentences of the Homes page: who goes when. */
import type { GoHomeRule } from '../../reference/go-home.ts';

const RULE_PLACES: Record<GoHomeRule['where'], string> = {
  england: 'England (licensed breeders)',
  germany: 'Germany',
  austria: 'Austria',
  france: 'France',
};

export const homesWords = {
  title: 'Homes',
  lead: (litter: string, age: string) => `${litter}, ${age}`,
  earliest: (day: string) => `Eight weeks old on ${day}.`,
  localRule: 'Check your local rule: the earliest day differs from place to place.',
  rule: (where: GoHomeRule['where'], day: string, source: string, known: string) =>
    `${RULE_PLACES[where]} from ${day} (${source}; ${known})`,
  rules: (all: readonly string[]) => `Earliest days by some rules: ${all.join(' · ')}. Rules change and differ: check yours.`,
  printAll: 'Print all plans',
  puppy: 'puppy',
  state: 'now',
  plan: 'go-home plan',
  handedOver: 'handed over',
  none: 'No puppy is written down yet.',
  writePuppies: 'Write down the puppies',
  stateOf: (name: string) => `${name}, where it is now`,
  dateOf: (name: string) => `${name}, since when`,
  preview: 'Preview',
  previewOf: (name: string) => `Preview the plan of ${name}`,
  notYet: 'nothing handed over',
  openKept: (name: string, day: string) => `Open the plan of ${name} as handed over on ${day}`,
  keptNote: 'A plan that was handed over is kept as it was, and prints exactly so again, years later too.',
  waiting: (n: number) =>
    n === 0 ? 'Nobody waits for a home.' : n === 1 ? 'One waits for its home.' : `${n} wait for their homes.`,
};
