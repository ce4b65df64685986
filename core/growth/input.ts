/** What the growth functions are given: puppies and the readings that stand, as plain facts. */

import { dateOf, type LocalTime, localMinutes } from '../calendar/clock.ts';
import { type CivilDate, dayNumber } from '../calendar/day.ts';
import { DAY_MINUTES } from '../calendar/durations.ts';
import { comparedUntil } from '../litter/in-the-house.ts';
import { isCurrent, type Litter, type Puppy, type PuppyState, puppyName, type Reading, type Session } from '../litter/litter.ts';
import type { Sex, SizeClass } from '../reference/classes.ts';
import { exactGrams, type MassUnit } from '../units/mass.ts';

const MINUTE = 60_000;
/** Grams under which rounding to a tenth may hide what was typed: 0.545, meant in kilograms. */
const ROUNDED_BELOW = 10;

/** Weights in grams, instants in milliseconds since 1970, ages in days with fractions. */
export interface GrowthPuppy {
  readonly id: string;
  readonly name: string;
  readonly sex: Sex;
  readonly bornInstant: number;
  /** When its series ends because it died or went home; null while it is in the house. */
  readonly endsInstant: number | null;
  readonly state: PuppyState;
}

export interface GrowthReading {
  readonly id: string;
  readonly puppyId: string;
  readonly at: LocalTime;
  readonly instant: number;
  readonly grams: number;
  /** What was typed before it was rounded, where that tells more: for guesses at slips of the hand. */
  readonly exact?: number;
  /** The unit it was typed in, for guesses at slips of the hand; grams when nobody said. */
  readonly unit?: MassUnit;
  readonly session: Session;
  /** Doubtful and not answered: out of the calculation unless it is kept. */
  readonly held: boolean;
  /** The person said that it is right: it always counts. */
  readonly kept: boolean;
}

export interface GrowthInput {
  readonly puppies: readonly GrowthPuppy[];
  /** Only those that stand: neither replaced nor taken back. Any order. */
  readonly readings: readonly GrowthReading[];
  /** What the scale moves by, in grams; null when nobody said, then it is read off the weights. */
  readonly scaleStepGrams: number | null;
  readonly sizeClass: SizeClass | null;
  /** As the breeder wrote it: for published birth weights, when the study has the breed. */
  readonly breed?: string;
  /** The usual birth weight of the breed as the breeder wrote it, in grams: for a breed that the study does not have. */
  readonly breedBirthGrams?: number | null;
  /** What her scale shows: slips of the fingers are looked for in it, and weights are said in it. */
  readonly unit: MassUnit;
}

/** The facts of one litter. `readings` holds all of it, those replaced or taken back included. */
export interface GrowthFacts {
  readonly litter: Pick<Litter, 'sizeClass' | 'breed' | 'breedBirthGrams'>;
  readonly puppies: readonly Puppy[];
  readonly readings: readonly Reading[];
  readonly house: { readonly massUnit: MassUnit; readonly scaleStepGrams: number | null };
}

/** Left out, everything counts as it stands. */
export interface GrowthView {
  /** Only what was weighed until this day. */
  readonly until?: CivilDate;
  /** This puppy is looked at where it lives now: weights of after it went home count, its new owner weighs on. */
  readonly atHomeToo?: string;
}

/** The one place where facts become what growth is reckoned from. */
export function growthInputOf({ litter, puppies, readings, house }: GrowthFacts, view: GrowthView = {}): GrowthInput {
  const ids = new Set(puppies.map((p) => p.id));
  const { until, atHomeToo } = view;
  return {
    puppies: puppies.map((p) => {
      const { state, stateOn } = p.id === atHomeToo && p.state === 'home' ? ({ state: 'litter', stateOn: null } as const) : p;
      return {
        id: p.id,
        name: puppyName(p),
        sex: p.sex,
        bornInstant: p.bornInstant,
        endsInstant: seriesEnd({ ...p, state, stateOn }),
        state,
      };
    }),
    readings: readings
      .filter((r) => isCurrent(r) && ids.has(r.puppyId) && (until === undefined || dateOf(r.at) <= until))
      .map((r) => ({
        id: r.id,
        puppyId: r.puppyId,
        at: r.at,
        instant: r.instant,
        grams: r.grams,
        ...(r.grams < ROUNDED_BELOW ? { exact: exactGrams(r.typed, r.unit, r.grams) } : {}),
        unit: r.unit,
        session: r.session,
        held: r.held,
        kept: r.kept,
      })),
    scaleStepGrams: house.scaleStepGrams,
    sizeClass: litter.sizeClass,
    breed: litter.breed,
    breedBirthGrams: litter.breedBirthGrams,
    unit: house.massUnit,
  };
}

/** The end of the last day on which it is compared, by the clock that its birth was noted with. */
function seriesEnd(p: Puppy): number | null {
  const until = comparedUntil(p);
  if (until === null) return null;
  const clockAhead = localMinutes(p.bornAt) * MINUTE - p.bornInstant;
  return (dayNumber(until) + 1) * DAY_MINUTES * MINUTE - clockAhead;
}
