/** Sentences of the litters, of beginning one, and of its puppies. */

import type { Litter, PuppyState } from '../../litter/litter.ts';
import type { Sex, SizeClass } from '../../reference/classes.ts';
import { isMetric, type MassUnit } from '../../units/mass.ts';
import { massText } from './amounts.ts';
import { capital, numberWord } from './figures.ts';

/** "Hazel’s litter", or the name the breeder gave it. */
export function litterName(l: Pick<Litter, 'name' | 'dam'>): string {
  return l.name === '' ? `${l.dam}’s litter` : l.name;
}

const inWords = (n: number) => (n === 0 ? 'None' : capital(numberWord(n)));

export const sexWords: Record<Sex, string> = { dog: 'dog', bitch: 'bitch', unseen: 'not seen yet' };

export const stateWords: Record<PuppyState, string> = { litter: 'in the litter', home: 'gone home', kept: 'kept', died: 'died' };

export const sizeWords: Record<SizeClass, string> = {
  toy: 'toy, up to 5 kg',
  small: 'small, 5 to 10 kg',
  medium: 'medium, 10 to 25 kg',
  large: 'large, 25 to 45 kg',
  giant: 'giant, over 45 kg',
};

export const littersWords = {
  title: 'Litters',
  nothing: 'Nothing is written here yet.',
  loading: 'Opening the notebook …',
  count: (here: number, gone: number) =>
    gone === 0 ? `${inWords(here)} in the house` : `${inWords(here)} in the house, ${inWords(gone).toLowerCase()} gone home`,
  begin: 'Begin a litter',
  enough: 'The dam’s name is enough to begin. Collars and weights can be written while she whelps.',
  damAndSire: 'dam and sire',
  born: 'born',
  puppies: 'puppies',
  now: 'now',
  next: 'next',
  and: (sire: string) => `and ${sire}`,
  goneHome: 'Gone home',
  noneHere: 'No litter is in the house now.',
  plans: (n: number) => (n === 0 ? 'no plan handed over' : n === 1 ? '1 plan handed over' : `${n} plans handed over`),
  wholeLitter: 'the whole litter',
  noWeights: 'no weights yet',
  noPuppies: 'no puppies yet',
  writePuppies: 'Write down the puppies',
  thisMorning: 'Weigh-in, this morning',
  thisEvening: 'Weigh-in, this evening',
  todayNext: 'Weigh-in, today',
  allWeighed: 'All weighed',
  invented: 'invented',
  inventedLine: 'These are invented litters.',
  inventedMore: 'Invented dogs and weights, to look round. Your own litters are kept apart from them.',
  removeInvented: 'Remove them without a trace',
  removeTitle: 'Remove the invented litters?',
  removeBody:
    'Every invented puppy, weight and plan goes, and what was done with them. This cannot be undone. Your own litters stay as they are.',
  removeYes: 'Remove them',
  removeNo: 'Keep them',
  once: 'Worth writing down once',
  vetPhone: 'your vet’s number',
  vetHint: 'shown wherever a puppy needs help',
  weightsIn: 'weights in',
  weightsHint: 'or write any unit as you go: 14.5oz',
  already: 'If you want to see it first',
  lookRound: 'Look round three invented litters',
  lookRoundMore: 'Kept apart from yours, marked everywhere, removed without a trace.',
} as const;

export const beginWords = {
  title: 'Begin a litter',
  lead: 'The dam’s name is enough. Everything else can be written later, or changed.',
  dam: 'dam',
  damNeeded: 'The dam’s name is needed: the litter is called after her.',
  sire: 'sire',
  name: 'litter name or letter',
  nameHint: 'left empty, it is called after the dam',
  breed: 'breed',
  breedHint: 'as you write it; a few are offered with the growth that they mean',
  breedKnown: (size: string, isPublished: boolean) =>
    `grows as ${size}${isPublished ? '; its birth weights were published' : ''}; change the size below if yours are others`,
  rowKeys: 'D or B is the sex, Enter goes on, a number is the birth weight. What was not seen yet can wait.',
  size: 'size when grown',
  sizeNone: 'not said',
  sizeHint: 'lets the program forecast a weight',
  grownDogs: 'dogs grow to',
  grownBitches: 'bitches grow to',
  grownHint: (unit: 'kg' | 'lb') => (unit === 'kg' ? 'kg, or write 53 lb' : 'lb, or write 24 kg'),
  breedBirth: 'usual birth weight of the breed',
  /** "152.5 g", or "5.4 oz" for who weighs in pounds or ounces. */
  breedBirthMass: (grams: number, unit: MassUnit) =>
    isMetric(unit) ? `${grams} g` : massText(grams, 'oz').replace('\u00a0', ' '),
  breedBirthHint: (unit: 'g' | 'oz', ofStudy: string | null) =>
    `${unit === 'g' ? 'g, or write 5.4 oz' : 'oz, or write 154 g'}; a newborn under two thirds of it is at watch${ofStudy === null ? '' : `; left empty, the ${ofStudy} of one small study counts`}`,
  whelpedDate: 'whelped on',
  whelpedTime: 'at',
  whelpedFuture: 'That is still to come. Write the day and time that the first puppy was born.',
  weighedBefore: 'Puppies of this litter were weighed before that day. Is the date right?',
  whelpedLongAgo: 'That is more than thirty years ago. Is the year right?',
  puppies: 'puppies so far',
  puppiesHint: 'each gets a collar; more can be added while she whelps',
  puppiesExample: '8',
  theirCollars: 'In the order they were born',
  sexOf: (letter: string) => `${letter}, sex`,
  birthWeightOf: (letter: string) => `${letter}, birth weight`,
  birthWeight: (unit: string) => `birth weight, ${unit}`,
  sex: 'sex',
  collar: 'collar',
  begin: 'Begin this litter',
  mend: (n: number) => (n === 1 ? 'One line above still needs you.' : `${n} lines above still need you.`),
  back: 'Back to the litters',
} as const;

export const puppiesWords = {
  title: 'Puppies',
  lead: (litter: string, born: string, age: string) => `${litter}, born ${born}, ${age}`,
  add: 'Add a puppy',
  none: 'No puppy is written down yet.',
  full: 'All sixteen collars are given.',
  order: 'order',
  collar: 'collar',
  name: 'call name',
  sex: 'sex',
  birthWeight: (unit: string) => `birth weight, ${unit}`,
  birthWeightPlain: 'birth weight',
  born: 'born at',
  bornOn: 'born on',
  markings: 'markings',
  state: 'now',
  more: 'more',
  moreOf: (name: string) => `More about ${name}`,
  of: (name: string, what: string) => `${name}, ${what}`,
  up: (name: string) => `${name} earlier in the weigh-in`,
  down: (name: string) => `${name} later in the weigh-in`,
  moved: (name: string, place: number, of: number) => `${name} is number ${place} of ${of} in the weigh-in.`,
  orderNote: 'The order here is the order of the weigh-in. Alt with the up or down arrow moves the puppy in hand.',
  letter: 'letter',
  colour: 'colour',
  pattern: 'pattern',
  letterTaken: (letter: string) => `${letter} is on another puppy of this litter. Choose a free letter.`,
  stateOn: { litter: '', home: 'went home on', kept: 'kept since', died: 'died on' },
  stateBefore: 'That is before it was born.',
  stateFuture: 'That day is still to come.',
  bornFuture: 'That is still to come.',
  bornFar:
    'A birth is within a day before and three days after the whelping. Change the whelping below first, if it is the one that is wrong.',
  unusual: (mass: string) => `${mass} is unusual for a birth weight. Is it right?`,
  remove: 'Remove this puppy',
  removeRefused: (name: string) =>
    `${name} has been weighed or handed a plan, so the record stays. If it never was, strike out its weights on its page first; else mark it as gone home or died.`,
  removed: (name: string) => `${name} removed. Undo brings it back.`,
  weighIn: 'Go to the weigh-in',
  litter: 'The litter',
  removeLitter: 'Remove this litter',
  removeLitterNote: 'Only while no puppy of it has been weighed. Undo brings it back.',
  removeLitterRefused: 'Puppies of this litter have been weighed or handed a plan, so the record stays.',
  otherDay: (n: number) =>
    n === 1
      ? 'One puppy still has another day of birth than the whelping.'
      : `${n} puppies still have another day of birth than the whelping.`,
  moveThem: 'Move them to the day of the whelping',
} as const;
