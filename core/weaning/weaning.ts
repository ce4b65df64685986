/**
 * Weaning day by day: the step of the litter, the step of each puppy, and what is weighed out. The plan says how fast; the scale says for whom. A
 * puppy whose gain stalls more than two days stays on its step until the gain is back for two days, then follows one step every second day.
 */

import { addDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import { amountOn } from '../feeding/amount.ts';
import { mealsOn } from '../feeding/meals.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { bowlStep, MEAL_NAMES, type MealName, type Meals } from '../food/bowls.ts';
import type { Food } from '../food/food.ts';
import type { SizeClass } from '../reference/classes.ts';
import { clamp } from '../statistics/clamp.ts';
import { median } from '../statistics/median.ts';
import { GRAMS_PER_OUNCE, isMetric, type MassUnit } from '../units/mass.ts';
import { adjustedOn, restsOn, type WeaningEvent } from './eaten.ts';
import type { Texture } from './texture.ts';
import { stepOnPlanDay, type WeaningPlan } from './weaning-plan.ts';

/** A weight that counts, with the age it was taken at. */
export interface Weighing {
  readonly day: CivilDate;
  /** With fractions. */
  readonly ageDays: number;
  readonly grams: number;
}

export interface WeaningPuppy {
  readonly id: string;
  readonly name: string;
  readonly born: CivilDate;
  readonly adultKg: number | null;
  /** Oldest first. */
  readonly weighings: readonly Weighing[];
  /** Log gain a day to expect at an age in days. */
  readonly pace: (ageDays: number) => number;
  /** Grams to expect at an age in days, from the last weight on; null where nothing can be expected. */
  readonly forecast: (ageDays: number) => number | null;
}

export interface WeaningInput {
  readonly plan: WeaningPlan;
  readonly events: readonly WeaningEvent[];
  readonly rules: HouseRules;
  readonly food: Food;
  readonly sizeClass: SizeClass | null;
  /** Those in the litter, in the order of the weigh-in. */
  readonly puppies: readonly WeaningPuppy[];
  /** What is known is known until today. */
  readonly today: CivilDate;
  readonly unit: MassUnit;
}

export interface PuppyDay {
  readonly puppyId: string;
  /** Place of its step in the plan, with the share and texture of it. */
  readonly step: number;
  readonly share: number;
  readonly texture: Texture;
  /** It stays behind the litter's step. */
  readonly holds: boolean;
  /** Nothing but bowls for three days, and it does not hold. */
  readonly weaned: boolean;
  /** The weight that is reckoned with: of a weighing, or expected; null when there is none, and then there are no bowls. */
  readonly grams: number | null;
  readonly weight: 'weighed' | 'expected' | 'none';
  /** Days since it was weighed; null when it never was. */
  readonly weighedAgo: number | null;
  /** Sum of its bowls; exactly the sum of `meals`. */
  readonly dayGrams: number;
  readonly meals: Meals;
  /** What it needs in all by the published estimate, kcal; null without an adult weight. */
  readonly estimateKcal: number | null;
}

export interface WeaningDay {
  readonly day: CivilDate;
  /** Place of the litter's step; null before the first bowl. */
  readonly step: number | null;
  /** The steps stand still. */
  readonly rests: boolean;
  readonly puppies: readonly PuppyDay[];
  /** Everyone is weaned. */
  readonly weaned: boolean;
  /** Meals with their sum over the puppies, in order; a meal that is left out has 0. */
  readonly meals: readonly { readonly name: MealName; readonly grams: number }[];
  readonly dayGrams: number;
  /** Amounts are cut to this part of the rule because food was left. */
  readonly cut: number;
}

/** Under this part of the expected gain over about two days a puppy stalls; from `BACK` on its gain is back. Our own choice. */
const STALLS = 0.4;
const BACK = 0.7;
/** A gain over less says nothing; over more it is no longer about the last two days. */
const SHORTEST_DAYS = 1.5;
const LONGEST_DAYS = 4;
/** After this many days without a weighing the state of before holds. */
const GAIN_HOLDS_DAYS = 2;
/** A gain is looked at over about so long. */
const GAIN_OVER_DAYS = 2;
/** A puppy that held goes up a step at most so often. */
const CATCH_UP_DAYS = 2;
/** Ahead of today nobody knows; a puppy that holds now is reckoned to go on after so many days. */
const HOLD_AHEAD_DAYS = 2;
const WEANED_AFTER_DAYS = 3;

/** Days of weaning in a row, from the first bowl or `from`, whichever is later asked for. Days before the first bowl have no bowls. */
export function weaningDays(input: WeaningInput, from: CivilDate, count: number): WeaningDay[] {
  const until = addDays(from, count - 1);
  const litter = litterSteps(input, until);
  const tracks = puppyTracks(input, litter);
  return Array.from({ length: count }, (_, n) => {
    const day = addDays(from, n);
    const at = daysBetween(input.plan.starts, day);
    return dayOf(input, day, litter[at] ?? null, at, tracks);
  });
}

/** One day. */
export function weaningDay(input: WeaningInput, day: CivilDate): WeaningDay {
  return weaningDays(input, day, 1)[0] as WeaningDay;
}

interface LitterStep {
  readonly step: number;
  readonly rests: boolean;
}

/** The litter's step on every day from the first bowl. A day on which the steps rest is not counted. */
function litterSteps({ plan, events, today }: WeaningInput, until: CivilDate): LitterStep[] {
  const steps: LitterStep[] = [];
  const notes = events.filter((e) => e.note.kind === 'pause' || e.note.kind === 'stool');
  let planDay = 0;
  for (let n = 0; n <= daysBetween(plan.starts, until); n += 1) {
    const day = addDays(plan.starts, n);
    const rests = notes.length > 0 && restsOn(notes, day < today ? day : today) && (day <= today || restsOn(notes, day));
    if (n > 0 && !rests) planDay += 1;
    steps.push({ step: stepOnPlanDay(plan.steps, planDay), rests });
  }
  return steps;
}

interface Track {
  readonly step: number;
  readonly holds: boolean;
  /** Days at 100 %, this one included. */
  readonly daysAtAll: number;
}

/** Each puppy's own step on every day from the first bowl. */
function puppyTracks(input: WeaningInput, litter: readonly LitterStep[]): ReadonlyMap<string, readonly Track[]> {
  const { plan, puppies, events, today } = input;
  const gains = puppies.map((p) => gainsByDay(p, plan.starts, litter.length));
  const ownStools = new Set(events.flatMap((e) => (e.note.kind === 'stool' && e.puppyId !== null ? [e.puppyId] : [])));
  const known = daysBetween(plan.starts, today);
  const last = plan.steps.length - 1;
  return new Map(
    puppies.map((puppy, i) => {
      const track: Track[] = [];
      let [step, stalls, changed, daysAtAll] = [litter[0]?.step ?? 0, false, 0, 0];
      for (const [n, { step: target }] of litter.entries()) {
        const gain = gains[i]?.[n] ?? null;
        if (gain !== null) {
          const part = gain.own / expectedGain(gain.reference, median(gains.flatMap((g) => g[n]?.own ?? [])));
          stalls = stalls ? part < BACK : part < STALLS;
        }
        if (n > known + HOLD_AHEAD_DAYS) stalls = false;
        const rests = ownStools.has(puppy.id) && restsOn(events, addDays(plan.starts, n), puppy.id);
        const level = n > 0 && step === litter[n - 1]?.step;
        if (step < target && !stalls && !rests && (level || n - changed >= CATCH_UP_DAYS)) {
          step += level ? target - step : 1;
          changed = n;
        }
        step = Math.min(step, target);
        daysAtAll = step === last ? daysAtAll + 1 : 0;
        track.push({ step, holds: step < target, daysAtAll: stalls ? 0 : daysAtAll });
      }
      return [puppy.id, track];
    }),
  );
}

interface Gain {
  /** Log gain a day over about the last two days, and what the reference expects at that age. */
  readonly own: number;
  readonly reference: number;
}

/** The gain as it was known on each day; null where there was no fresh weighing. */
function gainsByDay(puppy: WeaningPuppy, starts: CivilDate, count: number): (Gain | null)[] {
  const { weighings } = puppy;
  const days = weighings.map((w) => daysBetween(starts, w.day));
  let next = 0;
  return Array.from({ length: count }, (_, n) => {
    while (next < weighings.length && (days[next] as number) <= n) next += 1;
    const to = weighings[next - 1];
    if (to === undefined || n - (days[next - 1] as number) > GAIN_HOLDS_DAYS) return null;
    const from = twoDaysBefore(weighings, next - 1);
    if (from === null) return null;
    return {
      own: Math.log(to.grams / from.grams) / (to.ageDays - from.ageDays),
      reference: puppy.pace((to.ageDays + from.ageDays) / 2),
    };
  });
}

function twoDaysBefore(weighings: readonly Weighing[], at: number): Weighing | null {
  const to = weighings[at] as Weighing;
  let best: Weighing | null = null;
  for (let i = at - 1; i >= 0; i -= 1) {
    const from = weighings[i] as Weighing;
    const days = to.ageDays - from.ageDays;
    if (days > LONGEST_DAYS) break;
    if (days < SHORTEST_DAYS) continue;
    if (best === null || Math.abs(days - GAIN_OVER_DAYS) < Math.abs(to.ageDays - best.ageDays - GAIN_OVER_DAYS)) best = from;
  }
  return best;
}

/** The lower of the reference and the litter's own middle, but never under half of the reference: a whole litter can stall. */
function expectedGain(reference: number, litterGain: number): number {
  return clamp(litterGain, reference / 2, reference);
}

function dayOf(
  input: WeaningInput,
  day: CivilDate,
  litter: LitterStep | null,
  at: number,
  tracks: ReadonlyMap<string, readonly Track[]>,
): WeaningDay {
  const { rules, events } = input;
  const born = input.puppies[0]?.born ?? day;
  const { shares } = mealsOn(rules, born, day, smallest(input.puppies));
  const fed = MEAL_NAMES.filter((name) => shares[name] !== undefined);
  if (litter === null) {
    return { day, step: null, rests: false, puppies: [], weaned: false, meals: [], dayGrams: 0, cut: 1 };
  }
  const { factor, missed } = adjustedOn(events, rules, day, fed);
  const puppies = input.puppies.map((p) => puppyDay(input, p, day, tracks.get(p.id)?.[at] as Track, factor, missed));
  const meals = fed.map((name) => ({ name, grams: sum(puppies.map((p) => p.meals[name] ?? 0)) }));
  return {
    day,
    step: litter.step,
    rests: litter.rests,
    puppies,
    weaned: puppies.length > 0 && puppies.every((p) => p.weaned),
    meals,
    dayGrams: sum(meals.map((m) => m.grams)),
    cut: factor,
  };
}

function puppyDay(
  input: WeaningInput,
  puppy: WeaningPuppy,
  day: CivilDate,
  track: Track,
  factor: number,
  missed: readonly MealName[],
): PuppyDay {
  const { plan, rules, food } = input;
  const { share, texture } = plan.steps[track.step] as WeaningPlan['steps'][number];
  const weight = weightOn(puppy, day);
  const { shares } = mealsOn(rules, puppy.born, day, smallest(input.puppies));
  const amount =
    weight.grams === null
      ? null
      : amountOn({ rules, food, born: puppy.born, day, weightGrams: weight.grams, adultKg: puppy.adultKg });
  const fed =
    amount === null ? { dayGrams: 0, meals: {} } : fillPuppyBowls(amount.grams * share * factor, shares, missed, input.unit);
  return {
    puppyId: puppy.id,
    step: track.step,
    share,
    texture,
    holds: track.holds,
    weaned: track.daysAtAll >= WEANED_AFTER_DAYS,
    ...weight,
    ...fed,
    estimateKcal: amount?.estimateKcal ?? null,
  };
}

/** The weight of that day's weighing, else what is expected from the last one; beyond the forecast the last that can be expected. */
export function weightOn(puppy: WeaningPuppy, day: CivilDate): Pick<PuppyDay, 'grams' | 'weight' | 'weighedAgo'> {
  const last = puppy.weighings.findLast((w) => w.day <= day);
  if (last === undefined) return { grams: null, weight: 'none', weighedAgo: null };
  const weighedAgo = daysBetween(last.day, day);
  if (weighedAgo === 0) return { grams: last.grams, weight: 'weighed', weighedAgo };
  const newest = puppy.weighings.at(-1) as Weighing;
  if (newest !== last) return { grams: last.grams, weight: 'weighed', weighedAgo };
  for (let ahead = weighedAgo; ahead > 0; ahead -= 1) {
    const grams = puppy.forecast(last.ageDays + ahead);
    if (grams !== null) return { grams, weight: 'expected', weighedAgo };
  }
  return { grams: last.grams, weight: 'expected', weighedAgo };
}

/** In ounces small bowls are weighed to a twentieth: a quarter ounce would be several times a first lick. */
const SMALL_OUNCE_STEP = GRAMS_PER_OUNCE / 20;
const SMALL_OUNCES = 2;

/**
 * Equal bowls of one puppy; the bowl is rounded and the day is the sum. A bowl is never nothing while there is anything to give; meals left out
 * are 0.
 */
function fillPuppyBowls(
  dayGrams: number,
  shares: Meals,
  missed: readonly MealName[],
  unit: MassUnit,
): { dayGrams: number; meals: Meals } {
  const meals: Meals = {};
  let day = 0;
  for (const name of MEAL_NAMES) {
    const part = shares[name];
    if (part === undefined) continue;
    const bowl = missed.includes(name) || dayGrams <= 0 ? 0 : roundPuppyBowl(dayGrams * part, unit);
    meals[name] = bowl;
    day += bowl;
  }
  return { dayGrams: day, meals };
}

function roundPuppyBowl(grams: number, unit: MassUnit): number {
  const step = isMetric(unit) || grams >= SMALL_OUNCES * GRAMS_PER_OUNCE ? bowlStep(grams, unit) : SMALL_OUNCE_STEP;
  return Math.max(1, Math.round(grams / step)) * step;
}

/** A litter eats at one time: its meals are those of the smallest to be, in kg grown; null when nobody knows of any. */
function smallest(puppies: readonly WeaningPuppy[]): number | null {
  const known = puppies.flatMap((p) => p.adultKg ?? []);
  return known.length === 0 ? null : Math.min(...known);
}

function sum(figures: readonly number[]): number {
  return figures.reduce((total, f) => total + f, 0);
}

/** Part of the litter's food that comes from bowls on a day, 0 to 1: what the dam no longer gives. */
export function solidShare(day: WeaningDay): number {
  return day.puppies.length === 0 ? 0 : sum(day.puppies.map((p) => p.share)) / day.puppies.length;
}
