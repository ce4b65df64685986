/** A small house with one litter, made through the contract alone: what the suite starts from. */

import { fromLocalMinutes, type LocalTime, localMinutes } from '../../core/calendar/clock.ts';
import { type CivilDate, fromDayNumber } from '../../core/calendar/day.ts';
import type { Chip } from '../../core/care/microchip.ts';
import { type InputOf, OPERATIONS, type OperationName, type OutputOf } from '../../core/contract/operations.ts';
import type { PaperOf } from '../../core/contract/paper.ts';
import type { Result } from '../../core/contract/result.ts';
import type { Label } from '../../core/food/label.ts';
import type { FoodFields } from '../../core/food/own-food.ts';
import type { Week } from '../../core/food/rotation.ts';
import type { PlanDocument } from '../../core/homing/document.ts';
import { USUAL_COLLARS } from '../../core/litter/collar.ts';
import { isCurrent, type Litter, type Puppy, type Reading } from '../../core/litter/litter.ts';

/** As main/service/dispatch.ts has it; said again so that the suite leans on no host. */
export type Dispatch = (name: string, input: unknown) => Promise<Result<unknown>>;

/** Calls an operation that must go well; its output is held against the schema. */
export async function call<N extends OperationName>(dispatch: Dispatch, name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const result = await dispatch(name, input);
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.error)}`);
  return OPERATIONS[name].output.parse(result.value) as OutputOf<N>;
}

/** The plan of a puppy for a day, as it would be printed. */
export function planOn(dispatch: Dispatch, puppyId: string, on: CivilDate): Promise<PlanDocument> {
  return planPaper(dispatch, { kind: 'puppy', puppyId, on });
}

/** A plan as it was handed over. */
export function keptPlan(dispatch: Dispatch, planId: string): Promise<PlanDocument> {
  return planPaper(dispatch, { kind: 'handed-over', planId });
}

async function planPaper(dispatch: Dispatch, of: PaperOf): Promise<PlanDocument> {
  const { document } = await call(dispatch, 'records.paper', { of });
  if (document?.kind !== 'plan' || document.version !== 3) throw new Error(`no plan but ${document?.kind}`);
  return document;
}

export interface Clock {
  readonly instant: number;
  readonly local: LocalTime;
}

/** The machine's clock, to the minute. */
export function machineClock(): Clock {
  const instant = Math.floor(Date.now() / 60_000) * 60_000;
  return { instant, local: fromLocalMinutes(instant / 60_000 - new Date(instant).getTimezoneOffset()) };
}

/** The moment so many days and minutes before a clock's. */
export function before(clock: Clock, days: number, minutes = 0): Clock {
  const back = days * 1440 + minutes;
  return { instant: clock.instant - back * 60_000, local: fromLocalMinutes(localMinutes(clock.local) - back) };
}

/** The calendar day so many days before a clock's; negative for later days. */
export function dayBefore(clock: Clock, days: number): CivilDate {
  return fromDayNumber(Math.floor(localMinutes(clock.local) / 1440) - days);
}

export function litterFields(clock: Clock, dam: string): InputOf<'litter.begin'>['litter'] {
  const whelped = before(clock, 20);
  return {
    name: '',
    dam,
    sire: 'Larch',
    breed: '',
    sizeClass: 'medium',
    adultDogKg: 26,
    adultBitchKg: 22,
    breedBirthGrams: 300,
    whelpedAt: whelped.local,
    whelpedInstant: whelped.instant,
  };
}

export function puppyFields(clock: Clock, index: number): InputOf<'litter.addPuppy'>['fields'] {
  const born = before(clock, 20, -30 * index);
  const collar = USUAL_COLLARS[index];
  if (collar === undefined) throw new RangeError(`no collar ${index}`);
  return {
    collar,
    callName: index === 0 ? 'Vetch' : '',
    sex: index % 2 === 0 ? 'bitch' : 'dog',
    markings: '',
    birthOrder: index + 1,
    bornAt: born.local,
    bornInstant: born.instant,
  };
}

export function readingFields(at: Clock, grams: number, held = false): InputOf<'growth.record'>['reading'] {
  const session = Number(at.local.slice(11, 13)) < 12 ? 'morning' : 'evening';
  return { at: at.local, instant: at.instant, session, grams, typed: String(grams), unit: 'g', source: 'keyboard', held };
}

/** A food as written down from a pack. */
export function foodFields(name: string, label: Partial<Label> = {}): FoodFields {
  return {
    name,
    form: 'complete mix',
    made: {
      by: 'label',
      label: {
        basis: 'as fed',
        water: 66,
        protein: 15,
        fat: 14,
        fibre: 0.5,
        ash: 3,
        calcium: 0.6,
        phosphorus: 0.5,
        vitaminAPerKg: 9000,
        kcalPer100g: 190,
        method: 'label',
        ...label,
      },
    },
    bone: { share: 0.1, basis: 'wet' },
    holdsVegetables: true,
    packGrams: 454,
    portionsPerPack: 4,
    price: 3.5,
    keepHours: 24,
    note: '',
  };
}

export function recipeFields(parts: readonly (readonly [foodId: string, share: number])[]): FoodFields {
  return {
    ...foodFields('Own mix'),
    made: { by: 'recipe', parts: parts.map(([foodId, share]) => ({ foodId, share })) },
    bone: null,
  };
}

/** A week of one food in the mornings. */
export function weekOf(foodId: string, share = 1): Week {
  return Array.from({ length: 7 }, () => ({ morning: { kind: 'foods', parts: [{ foodId, share }] } }));
}

export function damFields(w: Pick<World, 'clock'>, name: string): InputOf<'dogs.damBegin'> {
  return {
    name,
    litterId: null,
    lh: dayBefore(w.clock, 86),
    ovulation: dayBefore(w.clock, 84),
    dioestrus: null,
    firstMating: dayBefore(w.clock, 84),
    lastMating: dayBefore(w.clock, 82),
    foodKcalPer100g: 180,
  };
}

export function damWeight(w: Pick<World, 'clock'>, grams: number): InputOf<'dogs.damWeigh'>['weight'] {
  const at = before(w.clock, 0, 2);
  return { at: at.local, instant: at.instant, grams, typed: String(grams / 1000), unit: 'kg' };
}

/** The litter cleaned up its morning meal. */
export function mealNote(w: Pick<World, 'clock' | 'litter'>): InputOf<'weaning.note'> {
  const at = before(w.clock, 0, 3);
  const note = { kind: 'meal', meal: 'morning', ate: 'clean' } as const;
  return { litterId: w.litter.id, puppyId: null, day: dayBefore(w.clock, 0), at: at.local, instant: at.instant, note };
}

export interface World {
  readonly dispatch: Dispatch;
  readonly clock: Clock;
  readonly litter: Litter;
  /** Weighed on three days. */
  readonly puppies: readonly Puppy[];
  /** Never weighed after birth, no plan. */
  readonly unweighed: Puppy;
  /** A litter that nothing hangs on. */
  readonly emptyLitter: Litter;
  readonly reading: Reading;
  readonly held: Reading;
  readonly planId: string;
  readonly chip: Chip;
  /** Linked to the litter, weighed once. */
  readonly damId: string;
  readonly damWeightId: string;
  /** A meal that was left. */
  readonly eventId: string;
  readonly foodId: string;
  /** Two whole packs; of the second one portion of four is thawing. */
  readonly packIds: readonly [string, string];
  readonly thawId: string;
  readonly dogId: string;
  readonly starterId: string;
}

/** Two litters, four puppies, readings, one held reading, one kept plan. */
let chipsGiven = 0;
/** The number of a chip that nobody else has: several worlds may stand in one file. */
export function chipCode(): string {
  chipsGiven += 1;
  return `982${String(chipsGiven).padStart(12, '0')}`;
}

export async function makeWorld(dispatch: Dispatch): Promise<World> {
  const clock = machineClock();
  const { litter } = await call(dispatch, 'litter.begin', { litter: litterFields(clock, 'Yarrow'), puppies: [] });
  const { litter: emptyLitter } = await call(dispatch, 'litter.begin', { litter: litterFields(clock, 'Comfrey'), puppies: [] });
  const puppies: Puppy[] = [];
  for (let index = 0; index < 4; index += 1) {
    const birthWeight = { grams: 350 + index, typed: String(350 + index), unit: 'g', source: 'keyboard' } as const;
    const { puppy } = await call(dispatch, 'litter.addPuppy', {
      litterId: litter.id,
      fields: puppyFields(clock, index),
      birthWeight,
    });
    puppies.push(puppy);
  }
  const unweighed = puppies.pop();
  const [first] = puppies;
  if (unweighed === undefined || first === undefined) throw new Error('no puppies');
  const readings: Reading[] = [];
  for (const days of [3, 2, 1]) {
    for (const [index, puppy] of puppies.entries()) {
      const fields = readingFields(before(clock, days, -index), 1000 - days * 45 + index * 12);
      readings.push((await call(dispatch, 'growth.record', { puppyId: puppy.id, reading: fields })).reading);
    }
  }
  const doubtful = readingFields(before(clock, 0, 30), 1900, true);
  const { reading: held } = await call(dispatch, 'growth.record', { puppyId: first.id, reading: doubtful });
  const { dam } = await call(dispatch, 'dogs.damBegin', { ...damFields({ clock }, 'Yarrow'), litterId: litter.id });
  const { weightId } = await call(dispatch, 'dogs.damWeigh', { damId: dam.id, weight: damWeight({ clock }, 21_000) });
  const chipped = puppies[1]?.id ?? '';
  const { chip } = await call(dispatch, 'care.setChip', { puppyId: chipped, change: { code: chipCode(), by: 'the vet' } });
  const freezer = await makeFreezer(dispatch, clock);
  const left = { ...mealNote({ clock, litter }), note: { kind: 'meal', meal: 'midday', ate: 'left' } as const };
  const { event } = await call(dispatch, 'weaning.note', left);
  const { food } = await call(dispatch, 'food.add', { fields: foodFields('Lean mix') });
  const { plan } = await call(dispatch, 'homing.handOver', { puppyId: first.id, on: dayBefore(clock, 0), leaves: false });
  const reading = readings.at(-1);
  if (reading === undefined) throw new Error('no reading');
  return {
    dispatch,
    clock,
    litter,
    puppies,
    unweighed,
    emptyLitter,
    reading,
    held,
    planId: plan.id,
    chip,
    damId: dam.id,
    damWeightId: weightId,
    eventId: event.id,
    foodId: food.id,
    ...freezer,
  };
}

export function packFields(clock: Clock): InputOf<'freezer.add'>['pack'] {
  const bestBefore = dayBefore(clock, -90);
  return {
    foodId: 'food-generic-mix',
    grams: 454,
    portions: 4,
    frozenOn: dayBefore(clock, 10),
    bestBefore,
    price: 3.2,
    place: 'top drawer',
  };
}

export function dogFields(clock: Clock, name: string): InputOf<'freezer.addDog'>['fields'] {
  const fromDay = dayBefore(clock, 0);
  return { name, foodId: 'food-generic-mix', gramsADay: 500, damId: null, meals: 2, fromDay, untilDay: null };
}

export function starterFields(clock: Clock): InputOf<'freezer.addStarter'>['fields'] {
  return { who: 'Vetch', day: dayBefore(clock, -20), foodId: 'food-generic-mix', grams: 454 };
}

async function makeFreezer(dispatch: Dispatch, clock: Clock): Promise<Pick<World, 'packIds' | 'thawId' | 'dogId' | 'starterId'>> {
  const { packs } = await call(dispatch, 'freezer.add', { count: 2, pack: packFields(clock) });
  const [one = '', two = ''] = packs.map((p) => p.id);
  const at = before(clock, 0, 120);
  const { thaws } = await call(dispatch, 'freezer.thaw', {
    takes: [{ packId: two, portions: 1 }],
    at: at.local,
    instant: at.instant,
    way: 'refrigerator',
  });
  const { dog } = await call(dispatch, 'freezer.addDog', { fields: dogFields(clock, 'Sorrel') });
  const { starter } = await call(dispatch, 'freezer.addStarter', { fields: starterFields(clock) });
  return { packIds: [one, two], thawId: thaws[0]?.id ?? '', dogId: dog.id, starterId: starter.id };
}

/**
 * Everything that the queries answer about the facts. Readings that were withdrawn are left out: undo marks a reading,
 * it never deletes one.
 */
export async function allFacts({ dispatch, clock }: Pick<World, 'dispatch' | 'clock'>): Promise<unknown> {
  const { litters } = await call(dispatch, 'litter.all', {});
  const on = dayBefore(clock, 0);
  const perLitter = [];
  for (const { litter, puppies } of litters) {
    const { readings } = await call(dispatch, 'growth.readings', { litterId: litter.id });
    const { plans } = await call(dispatch, 'homing.handedOver', { litterId: litter.id });
    const kept = [];
    for (const plan of plans) kept.push(await keptPlan(dispatch, plan.id));
    const today = [];
    for (const puppy of puppies) today.push(await planOn(dispatch, puppy.id, on));
    const weaning = await call(dispatch, 'weaning.plan', { litterId: litter.id });
    const { chips } = await call(dispatch, 'care.chips', { litterId: litter.id });
    perLitter.push({
      weaning,
      chips,
      litter,
      puppies,
      readings: readings.filter((r) => !r.withdrawn),
      standing: readings.filter(isCurrent).length,
      plans,
      kept,
      today,
    });
  }
  return {
    perLitter,
    dams: await call(dispatch, 'dogs.dams', {}),
    rules: await call(dispatch, 'feeding.rules', {}),
    foods: await call(dispatch, 'food.all', {}),
    fed: await call(dispatch, 'food.feedings', {}),
    freezer: await call(dispatch, 'freezer.stock', { since: dayBefore(clock, 60) }),
    house: await call(dispatch, 'people.house', {}),
    named: await call(dispatch, 'dogs.all', {}),
    people: (await call(dispatch, 'people.all', {})).people.filter((person) => person.isNamed),
  };
}
