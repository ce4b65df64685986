/** The demo: invented litters with what hangs on them, dated so that the newest weighing was this morning. */

import { dateOf, fromLocalMinutes, type LocalTime } from '../../core/calendar/clock.ts';
import { addDays, dayNumber } from '../../core/calendar/day.ts';
import { DAY_MINUTES } from '../../core/calendar/durations.ts';
import type { Dam } from '../../core/dogs/dam.ts';
import type { Litter, LitterFields, Puppy, PuppyFields, Reading, Session } from '../../core/litter/litter.ts';
import { toGrams } from '../../core/units/mass.ts';
import type { WeaningEvent, WeaningNote } from '../../core/weaning/eaten.ts';
import { usualPlan, type WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import stored from './demo-litters.json' with { type: 'json' };

/** Minutes count from the midnight that the day of whelping began with; the last morning is `days` later. */
export interface DemoLitter extends Omit<LitterFields, 'breedBirthGrams' | 'whelpedAt' | 'whelpedInstant'> {
  readonly days: number;
  readonly whelpedMinute: number;
  /** When each weigh-in began; the puppies follow a minute apart. Before noon it is a morning's. */
  readonly weighIns: readonly number[];
  readonly puppies: readonly DemoPuppy[];
  /** The usual plan from that day of life on, and the diary; null where nothing is planned. */
  readonly weaning: { readonly startsDay: number; readonly notes: readonly DemoNote[] } | null;
  readonly damRecord: DemoDam | null;
}

interface DemoNote {
  /** Its place in the litter; null for the whole litter. */
  readonly puppy: number | null;
  readonly minute: number;
  readonly note: WeaningNote;
}

/** Days and minutes before the whelping are negative. */
interface DemoDam {
  readonly firstMatingDay: number;
  readonly lastMatingDay: number;
  readonly foodKcalPer100g: number;
  readonly weights: readonly { readonly minute: number; readonly kg: number }[];
}

interface DemoPuppy extends Omit<PuppyFields, 'bornAt' | 'bornInstant' | 'birthOrder'> {
  readonly bornMinute: number;
  readonly birthGrams: number;
  /** Its weight at each weigh-in of the litter. */
  readonly grams: readonly number[];
}

interface Dated {
  readonly now: LocalTime;
  readonly utcOffsetMinutes: number;
  readonly recordedInstant: number;
  readonly newId: () => string;
}

export interface DemoFacts {
  readonly litter: Litter;
  readonly puppies: readonly Puppy[];
  readonly readings: readonly Reading[];
  readonly weaning: { readonly plan: WeaningPlan; readonly events: readonly WeaningEvent[] } | null;
  readonly dam: Dam | null;
}

type TimeOf = (minute: number) => { at: LocalTime; instant: number };

/** Before this hour the last morning of the demo is yesterday's. */
const MORNING_DONE_HOUR = 8;

/** The demo's facts with dates. One offset from UTC holds throughout, so a clock change among the days is not shown. */
export function demoLitters(dated: Dated): DemoFacts[] {
  // The JSON's type has plain strings where the facts have closed lists; the script that writes it is typed.
  return (stored as readonly DemoLitter[]).map((litter) => dateLitter(litter, dated));
}

function dateLitter(stored: DemoLitter, dated: Dated): DemoFacts {
  const { days, whelpedMinute, weighIns, puppies, weaning, damRecord, ...fields } = stored;
  const hour = Number(dated.now.slice(11, 13));
  const lastMorning = dayNumber(dateOf(dated.now)) - (hour < MORNING_DONE_HOUR ? 1 : 0);
  const time: TimeOf = (minute) => {
    const minutes = (lastMorning - days) * DAY_MINUTES + minute;
    return { at: fromLocalMinutes(minutes), instant: (minutes - dated.utcOffsetMinutes) * 60_000 };
  };
  const whelped = time(whelpedMinute);
  const litter: Litter = {
    ...fields,
    breedBirthGrams: null,
    id: dated.newId(),
    whelpedAt: whelped.at,
    whelpedInstant: whelped.instant,
    demo: true,
  };
  const both = puppies.map((puppy, index) => datePuppy(puppy, index, litter.id, weighIns, time, dated));
  const dogs = both.map((b) => b.puppy);
  return {
    litter,
    puppies: dogs,
    readings: both.flatMap((b) => b.readings),
    weaning: weaning === null ? null : dateWeaning(weaning, litter, dogs, time, dated),
    dam: damRecord === null ? null : dateDam(damRecord, litter, time, dated),
  };
}

function dateWeaning(
  { startsDay, notes }: NonNullable<DemoLitter['weaning']>,
  { id: litterId, whelpedAt }: Litter,
  puppies: readonly Puppy[],
  time: TimeOf,
  dated: Dated,
): NonNullable<DemoFacts['weaning']> {
  const born = dateOf(whelpedAt);
  const events = notes.map(({ puppy, minute, note }) => {
    const when = time(minute);
    const puppyId = puppy === null ? null : (puppies[puppy]?.id ?? null);
    return { ...when, id: dated.newId(), litterId, puppyId, day: dateOf(when.at), note };
  });
  return { plan: usualPlan(born, addDays(born, startsDay)), events };
}

function dateDam(
  { firstMatingDay, lastMatingDay, foodKcalPer100g, weights }: DemoDam,
  { id: litterId, dam: name, whelpedAt }: Litter,
  time: TimeOf,
  dated: Dated,
): Dam {
  const whelped = dateOf(whelpedAt);
  return {
    id: dated.newId(),
    fields: {
      name,
      litterId,
      lh: null,
      ovulation: null,
      dioestrus: null,
      firstMating: addDays(whelped, firstMatingDay),
      lastMating: addDays(whelped, lastMatingDay),
      foodKcalPer100g,
    },
    weights: weights.map(({ minute, kg }) => ({
      ...time(minute),
      id: dated.newId(),
      grams: toGrams(kg * 1000),
      typed: String(kg),
      unit: 'kg',
    })),
  };
}

function datePuppy(
  { bornMinute, birthGrams, grams: weights, ...fields }: DemoPuppy,
  index: number,
  litterId: string,
  weighIns: readonly number[],
  time: TimeOf,
  dated: Dated,
): { puppy: Puppy; readings: Reading[] } {
  const born = time(bornMinute);
  const puppy: Puppy = {
    ...fields,
    id: dated.newId(),
    litterId,
    birthOrder: index + 1,
    bornAt: born.at,
    bornInstant: born.instant,
    place: index,
    state: 'litter',
    stateOn: null,
  };
  const reading = (minute: number, grams: number, session: Session): Reading => ({
    ...time(minute),
    id: dated.newId(),
    puppyId: puppy.id,
    session,
    grams: toGrams(grams),
    typed: String(grams),
    unit: 'g',
    source: 'demo',
    held: false,
    kept: false,
    supersedes: null,
    supersededBy: null,
    withdrawn: false,
    recordedInstant: dated.recordedInstant,
  });
  const later = weighIns.map((minute, n) =>
    reading(minute + index, weights[n] ?? 0, minute % DAY_MINUTES < 720 ? 'morning' : 'evening'),
  );
  return { puppy, readings: [reading(bornMinute, birthGrams, 'birth'), ...later] };
}
