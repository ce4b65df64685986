/** Sentences of a puppy's page about its birth weight, its milestones, what was seen, and the published envelope. */
import type { BirthNote } from '../../growth/birth-note.ts';
import type { Milestone } from '../../growth/milestones.ts';

import type { Sex } from '../../reference/classes.ts';
import type { MassUnit } from '../../units/mass.ts';
import { massText } from './amounts.ts';
import { pronouns } from './pronouns.ts';

export const BIRTH_SOURCE =
  'Mugnier et al. 2020, BMC Veterinary Research 16, tables 1 and 2: 4 971 puppies of 784 litters. Seen.';

/** "low for a Golden Retriever", "usual for the breed". */
export function birthWords(note: BirthNote): string {
  if (note.by === 'litter') return note.is === 'very-low' ? 'under two thirds of the litter’s mean' : 'usual in this litter';
  if (note.by === 'mean') {
    return note.is === 'very-low' ? 'under two thirds of the usual' : 'not very low for the breed';
  }
  const { breed } = note.breed;
  const words = { normal: 'usual for the breed', low: 'low for the breed', 'very-low': 'very low for the breed' };
  return `${words[note.is]} (${breed})`;
}

export function birthHow(note: BirthNote, unit: MassUnit): string {
  const mass = (grams: number) => massText(grams, unit);
  if (note.by === 'litter') {
    return `The mean of the litter is ${mass(note.meanGrams)}, two thirds of it ${mass(note.under)}. No figures of this breed were published; of the listed ones the very low weights begin near two thirds of the mean. Computed.`;
  }
  if (note.by === 'mean') return meanHow(note.cutOff, mass);
  const { mean, lowBelow, veryLowBelow, deaths } = note.breed;
  return `Mean ${mass(mean)}; low is under ${mass(lowBelow)}, very low under ${mass(veryLowBelow)}. Of a hundred such puppies ${deaths[0]}, ${deaths[1]} and ${deaths[2]} died by day 21 (usual, low, very low). ${BIRTH_SOURCE}`;
}

/** Two thirds is a synthesis and says so; no deaths are told, as none were published for the breed. */
function meanHow(cutOff: Extract<BirthNote, { by: 'mean' }>['cutOff'], mass: (grams: number) => string): string {
  const usual =
    cutOff.by === 'given'
      ? `You wrote ${mass(cutOff.mean)} as the usual birth weight of the breed`
      : `The mean of the breed in a small study is ${mass(cutOff.mean)} (${cutOff.found.study.who}, ${cutOff.found.study.where}; few puppies; seen)`;
  return `${usual}; two thirds of it is ${mass(cutOff.below)}. The published limits are those of ten other breeds: there very low begins at 0.45 to 0.91 of the mean, in the middle at 0.66 (Mugnier et al. 2020; computed). Two thirds is a rule of thumb from that, not a published one.`;
}

/** "twice its birth weight on day 15, three times on day 24". */
export function milestoneWords(milestones: readonly Milestone[]): string {
  return milestones.map((m) => `${m.times === 2 ? 'twice its birth weight' : 'three times'} on day ${m.day}`).join(', ');
}

export const puppyNoteWords = {
  birthWeight: 'birth weight',
  closely: (sex: Sex) => {
    const { them } = pronouns(sex);
    return `Weigh ${them} twice a day, keep ${them} warm, and see ${them} suckle.`;
  },
  milestones: 'milestones',
  notYet: 'not yet twice its birth weight',
  milestonesHow:
    'Twice is published for days 8 to 10 (Small Animal Clinical Nutrition, 5th ed., table 16-1) and 10 to 12 (Dog Owner’s Home Veterinary Handbook); both seen. One measured litter of a large breed took 14 to 21 days. Three times at 3 to 4 weeks is common practice. A note, never an alarm.',
  seen: 'What was seen',
  seenNote: 'Each change of level as it was said at that weighing, and each answer to a question.',
  nothingSeen: 'Steady at every weighing, and no weight was asked about.',
  seenDay: 'day',
  seenLevel: 'level',
  seenWhat: 'what',
  kept: (mass: string) => `${mass} was asked about; you said that it is right.`,
  open: (mass: string) => `${mass} is in question and held out.`,
  replaced: (mass: string, by: string) => `${mass} was replaced by ${by}.`,
  takenBack: (mass: string) => `${mass} was taken back.`,
  showMost: 'show the most that a newborn grows',
  hideMost: 'leave out the most that a newborn grows',
  most: 'the most a newborn grows',
  mostHow: (birth: string) =>
    `From a birth weight of ${birth}: times e to the power of 0.13084 d − 0.001616 d², d in days, to day 21. The upper edge of 345 puppies of 19 breeds, not a mean (Alves 2020, Veterinary Medicine and Science, doi 10.1002/vms3.322). Seen.`,
  ownLine: 'Beside your own line',
  ownLineNote: 'A note, never an alarm. A line is what was, not what should be: no puppy needs to be heavier than it is.',
  whereFrom: 'where it comes from',
} as const;
