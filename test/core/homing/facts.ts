/** An invented litter for the tests of the plan: seven puppies, weighed every morning from birth. */
import { type LocalTime, localTime } from '../../../core/calendar/clock.ts';
import { addDays, type CivilDate, date, dayNumber } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES, type HouseRules } from '../../../core/feeding/rules.ts';
import type { PlanFacts } from '../../../core/homing/basis.ts';
import { USUAL_COLLARS } from '../../../core/litter/collar.ts';
import type { Litter, Puppy, Reading } from '../../../core/litter/litter.ts';
import { DEFAULT_HOUSE, type House } from '../../../core/people/house.ts';
import { toGrams } from '../../../core/units/mass.ts';

export const BORN = date('2026-09-26');
const NAMES = ['Burnet', 'Clover', 'Sorrel', 'Tansy', 'Vetch', 'Yarrow', 'Melilot'] as const;
const BIRTH_GRAMS = [402, 371, 388, 385, 410, 362, 395] as const;

/** Universal time here, so that local time and instant agree. */
export function instantOf(t: LocalTime): number {
  return dayNumber(t.slice(0, 10) as CivilDate) * 86_400_000 + Number(t.slice(11, 13)) * 3_600_000 + Number(t.slice(14)) * 60_000;
}

function id(kind: string, n: number): string {
  return `${kind}-${String(n).padStart(8, '0')}`;
}

export const LITTER: Litter = {
  id: id('litter', 1),
  demo: false,
  name: '',
  dam: 'Wren of Hollinside',
  sire: 'Marsh Otter',
  breed: 'farm collie × water dog',
  sizeClass: 'medium',
  adultDogKg: 25,
  adultBitchKg: 22,
  breedBirthGrams: null,
  whelpedAt: localTime(`${BORN}T03:00`),
  whelpedInstant: instantOf(localTime(`${BORN}T03:00`)),
};

export const HOUSE: House = {
  ...DEFAULT_HOUSE,
  breederName: 'Anke Holm',
  address: 'Hollinside, Mill Road 4',
  phone: '555-0142',
  email: 'anke@hollinside.example',
  vetName: 'Dr Iver Strand',
  vetPhone: '555-0188',
};

export function puppyOf(place: number, changes: Partial<Puppy> = {}): Puppy {
  const bornAt = localTime(`${BORN}T0${3 + Math.floor(place / 2)}:${place % 2 === 0 ? '10' : '40'}`);
  return {
    id: id('puppy', place),
    litterId: LITTER.id,
    place,
    collar: USUAL_COLLARS[place] ?? { letter: 'S', colour: 'blue', pattern: 'edges' },
    callName: NAMES[place % NAMES.length] ?? '',
    sex: place % 2 === 0 ? 'dog' : 'bitch',
    markings: place === 3 ? 'white blaze, left hind sock' : '',
    birthOrder: place + 1,
    bornAt,
    bornInstant: instantOf(bornAt),
    state: 'litter',
    stateOn: null,
    ...changes,
  };
}

/** Grams at an age: doubled by nine days, near ten times at eight weeks, each puppy at a pace of its own. */
export function growing(birthGrams: number, ageDays: number, pace = 1): number {
  const since = 0.095 / 0.0245;
  return birthGrams * Math.exp(pace * since * (1 - Math.exp(-0.0245 * ageDays)) * 0.81);
}

/** A weight each morning from birth until `days`; `scale` makes a toy or a giant of the litter. */
export function readingsOf(puppies: readonly Puppy[], days: number, scale = 1): Reading[] {
  const readings: Reading[] = [];
  for (const p of puppies) {
    for (let day = 0; day <= days; day += 1) {
      const at = day === 0 ? p.bornAt : localTime(`${addDays(BORN, day)}T07:${String(10 + p.place).padStart(2, '0')}`);
      const age = (instantOf(at) - p.bornInstant) / 86_400_000;
      const wobble = 1 + 0.004 * Math.sin(day * 1.7 + p.place);
      const grams = toGrams(
        Math.round(growing((BIRTH_GRAMS[p.place % BIRTH_GRAMS.length] ?? 390) * scale, age, 1 + 0.006 * (p.place - 3)) * wobble),
      );
      readings.push({
        id: id(`reading-${p.place}`, day),
        puppyId: p.id,
        at,
        instant: instantOf(at),
        session: day === 0 ? 'birth' : 'morning',
        grams,
        typed: String(grams),
        unit: 'g',
        source: 'keyboard',
        held: false,
        kept: false,
        supersedes: null,
        supersededBy: null,
        withdrawn: false,
        recordedInstant: instantOf(at),
      });
    }
  }
  return readings;
}

export interface Choices {
  readonly place?: number;
  readonly count?: number;
  /** Day of the plan, as age in days. */
  readonly age?: number;
  /** Last day weighed; negative is never. */
  readonly weighed?: number;
  readonly scale?: number;
  readonly litter?: Partial<Litter>;
  readonly puppy?: Partial<Puppy>;
  readonly house?: Partial<House>;
  readonly rules?: Partial<HouseRules>;
}

/** The facts of one plan: Tansy at eight weeks, weighed this morning, unless chosen otherwise. */
export function planFacts(choices: Choices = {}): PlanFacts {
  const { place = 3, count = 7, age = 56, weighed = age, scale = 1 } = choices;
  const puppies = Array.from({ length: count }, (_, i) => puppyOf(i, i === place ? choices.puppy : {}));
  const puppy = puppies[place];
  if (puppy === undefined) throw new RangeError(`no puppy at ${place}`);
  return {
    litter: { ...LITTER, ...choices.litter },
    puppies,
    puppy,
    readings: readingsOf(puppies, weighed, scale),
    rules: { id: id('rules', 1), from: date('2026-08-03'), rules: { ...DEFAULT_RULES, ...choices.rules } },
    house: { ...HOUSE, ...choices.house },
    on: addDays(BORN, age),
  };
}
