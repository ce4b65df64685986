/** What is written on the page that begins a litter, and how it is read. */

import { clockOf, dateOf, type LocalTime, localTime } from '../../core/calendar/clock.ts';
import { type Collar, USUAL_COLLARS } from '../../core/litter/collar.ts';
import type { LitterFields } from '../../core/litter/litter.ts';
import { type Sex, SIZE_CLASSES } from '../../core/reference/classes.ts';
import { shortText } from '../../core/units/fields.ts';
import { longestOf } from '../../core/units/limits.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { instantOf, now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { whelpingFault } from '../facts/changes.ts';
import {
  bad,
  good,
  type Read,
  readClock,
  readDate,
  readGrownKg,
  readMass,
  readNumber,
  readText,
  type TypedMass,
} from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import { asksBreedBirth, readBreedBirth } from './breed-birth.ts';

export interface NewPuppy {
  readonly sex: Sex;
  readonly weight: string;
}

export interface Draft {
  readonly dam: string;
  readonly sire: string;
  readonly name: string;
  readonly breed: string;
  readonly sizeClass: string;
  readonly adultDogKg: string;
  readonly adultBitchKg: string;
  readonly breedBirth: string;
  readonly day: string;
  readonly clock: string;
  readonly count: string;
  readonly puppies: readonly NewPuppy[];
}

export type Faults = Partial<Record<keyof Draft | `puppy-${number}`, string>>;

export interface Ready {
  readonly litter: LitterFields;
  readonly puppies: readonly { readonly collar: Collar; readonly sex: Sex; readonly birth: TypedMass | null }[];
}

const LINE = longestOf(shortText);
export const MOST = USUAL_COLLARS.length;
export const EMPTY_PUPPY: NewPuppy = { sex: 'unseen', weight: '' };

export function emptyDraft(): Draft {
  const { local } = now();
  return {
    dam: '',
    sire: '',
    name: '',
    breed: '',
    sizeClass: '',
    adultDogKg: '',
    adultBitchKg: '',
    breedBirth: '',
    count: '0',
    puppies: [],
    day: dateOf(local),
    clock: clockOf(local),
  };
}

/** How many puppies the text asks for, 0 to 16; an unreadable text is none. */
export function countOf(text: string): Read<number> {
  return text.trim() === ''
    ? good(0)
    : readNumber({ low: 0, high: MOST, integer: true, example: words.begin.puppiesExample })(text);
}

export function asksBreedBirthIn(draft: Draft): boolean {
  return asksBreedBirth(draft.breed, draft.breedBirth.trim() !== '');
}

function whelpedOf(draft: Draft): { at: LocalTime } | { faults: Faults } {
  const day = readDate(draft.day);
  const clock = readClock(draft.clock);
  if (!day.ok) return { faults: { day: day.sentence } };
  if (!clock.ok) return { faults: { clock: clock.sentence } };
  const at = localTime(`${day.value}T${clock.value}`);
  const fault = whelpingFault(at);
  return fault === null ? { at } : { faults: { day: fault } };
}

/** The whole form read, or a sentence for each field that cannot be. */
export function readDraft(draft: Draft, unit: MassUnit): Read<Ready> & { faults: Faults } {
  const faults: Faults = {};
  const take = <T>(field: keyof Faults, answer: Read<T>, otherwise: T): T => {
    if (answer.ok) return answer.value;
    faults[field] = answer.sentence;
    return otherwise;
  };
  const whelped = whelpedOf(draft);
  if ('faults' in whelped) Object.assign(faults, whelped.faults);
  const at = 'at' in whelped ? whelped.at : now().local;
  const litter: LitterFields = {
    dam: take('dam', readText(LINE, words.begin.damNeeded)(draft.dam), ''),
    sire: take('sire', readText(LINE)(draft.sire), ''),
    name: take('name', readText(LINE)(draft.name), ''),
    breed: take('breed', readText(LINE)(draft.breed), ''),
    sizeClass: SIZE_CLASSES.find((s) => s === draft.sizeClass) ?? null,
    adultDogKg: take('adultDogKg', readGrownKg(unit)(draft.adultDogKg), null),
    adultBitchKg: take('adultBitchKg', readGrownKg(unit)(draft.adultBitchKg), null),
    breedBirthGrams: asksBreedBirthIn(draft) ? take('breedBirth', readBreedBirth(unit)(draft.breedBirth), null) : null,
    whelpedAt: at,
    whelpedInstant: instantOf(at),
  };
  const count = take('count', countOf(draft.count), 0);
  const puppies = USUAL_COLLARS.slice(0, count).map((collar, i) => {
    const puppy = draft.puppies[i] ?? EMPTY_PUPPY;
    return { collar, sex: puppy.sex, birth: take(`puppy-${i}`, readMass(unit)(puppy.weight), null) };
  });
  const first = Object.values(faults)[0];
  return first === undefined ? { ...good({ litter, puppies }), faults } : { ...bad(first), faults };
}

/** The litter and its puppies in the order of birth, as one; answers the id of the litter. */
export async function beginLitter({ litter, puppies }: Ready): Promise<string | null> {
  const begun = await run('litter.begin', {
    litter,
    puppies: puppies.map(({ collar, sex, birth }, i) => ({
      fields: {
        collar,
        sex,
        callName: '',
        markings: '',
        birthOrder: i + 1,
        bornAt: litter.whelpedAt,
        bornInstant: litter.whelpedInstant,
      },
      birthWeight: birth === null ? null : { ...birth, source: 'keyboard' as const },
    })),
  });
  return begun.ok ? begun.value.litter.id : null;
}
