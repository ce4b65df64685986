/**
 * What became of the bowls: eaten, left, refused; stools; pauses; what was answered to a suggestion. The rules for food that is left are common
 * practice, no source; steps of a tenth are also how Hand et al. 2010 (table 17-3, seen) change a growing dog's ration.
 */

import { z } from 'zod';
import { type CivilDate, daysBetween } from '../calendar/day.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { MEAL_NAMES, type MealName } from '../food/bowls.ts';
import type { SizeClass } from '../reference/classes.ts';
import type { Known } from '../reference/feeding/known.ts';
import { dateSchema, idSchema, instantSchema, localTimeSchema } from '../units/fields.ts';

export const ATE = ['clean', 'left', 'refused'] as const;
export type Ate = (typeof ATE)[number];
export const STOOLS = ['normal', 'soft', 'loose', 'crumbly'] as const;
export type Stool = (typeof STOOLS)[number];
/** What may be suggested about food that is left. */
export const SUGGESTIONS = ['offer-again', 'cut', 'miss-meal', 'restore'] as const;
export type SuggestionCode = (typeof SUGGESTIONS)[number];

const meal = z.enum(MEAL_NAMES);

/** What may be noted in the diary of weaning. */
export const weaningNoteSchema = z.discriminatedUnion('kind', [
  /** How a meal was eaten, by all (`puppyId` null) or by one. A later note about the same meal takes the place of the earlier. */
  z.strictObject({ kind: z.literal('meal'), meal, ate: z.enum(ATE) }),
  z.strictObject({ kind: z.literal('stool'), stool: z.enum(STOOLS) }),
  /** The steps stand still from this day, or go on from it. */
  z.strictObject({ kind: z.literal('pause'), paused: z.boolean() }),
  /** An answer to a suggestion that arose at a meal. */
  z.strictObject({ kind: z.literal('answer'), meal, suggestion: z.enum(SUGGESTIONS), accepted: z.boolean() }),
]);
export type WeaningNote = z.infer<typeof weaningNoteSchema>;

export const weaningEventSchema = z.strictObject({
  id: idSchema,
  litterId: idSchema,
  /** Null for the whole litter. */
  puppyId: idSchema.nullable(),
  day: dateSchema,
  at: localTimeSchema,
  instant: instantSchema,
  note: weaningNoteSchema,
});
export type WeaningEvent = z.infer<typeof weaningEventSchema>;

/** One meal with how it was eaten. */
export interface EatenMeal {
  readonly day: CivilDate;
  readonly meal: MealName;
  readonly ate: Ate;
}

/** The meals that were noted, oldest first, of the whole litter (`puppyId` null) or of one puppy. */
export function eatenMeals(events: readonly WeaningEvent[], puppyId: string | null): EatenMeal[] {
  const byMeal = new Map<string, EatenMeal & { instant: number }>();
  for (const { puppyId: whose, day, instant, note } of events) {
    if (note.kind !== 'meal' || whose !== puppyId) continue;
    const key = `${day} ${MEAL_NAMES.indexOf(note.meal)}`;
    const before = byMeal.get(key);
    if (before === undefined || instant >= before.instant) byMeal.set(key, { day, meal: note.meal, ate: note.ate, instant });
  }
  return [...byMeal.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { day, meal: name, ate }]) => ({ day, meal: name, ate }));
}

interface Suggested<Code extends SuggestionCode> {
  readonly code: Code;
  /** The meal that it arose at: with the code it names the suggestion. */
  readonly day: CivilDate;
  readonly meal: MealName;
  readonly known: Known;
  /** What she said to it; null while it waits. */
  readonly accepted: boolean | null;
}

/** What the last meals suggest, by the house rules. `times`: how often food was left, one meal after another; shares are parts of 1. */
export type Suggestion =
  | (Suggested<'restore'> & { readonly cleanMeals: number })
  | (Suggested<'offer-again'> & { readonly liftMinutes: number })
  | (Suggested<'cut'> & { readonly times: number; readonly cutShare: number })
  | Suggested<'miss-meal'>;

/** Meals eaten clean, one after another, after which the full amount is suggested again. Our own choice. */
const CLEAN_AGAIN = 6;
/** Small dogs go without food badly when young: under this age no meal of theirs is left out. From memory. */
const LITTLE_ONES_WEEKS = 12;
const WEANED_WEEKS = 8;

interface SuggestionInput {
  readonly events: readonly WeaningEvent[];
  readonly rules: HouseRules;
  readonly liftMinutes: number;
  readonly ageDays: number;
  readonly sizeClass: SizeClass | null;
}

/** What the last meals suggest for the litter; null when there is nothing to suggest. Nothing is changed unless she accepts. */
export function suggestionOf(input: SuggestionInput): Suggestion | null {
  const { events, rules, liftMinutes } = input;
  const meals = eatenMeals(events, null);
  const last = meals.at(-1);
  if (last === undefined) return null;
  const at = <Code extends SuggestionCode>(code: Code): Suggested<Code> => ({
    code,
    day: last.day,
    meal: last.meal,
    known: 'common practice',
    accepted: answerTo(events, code, last),
  });
  const run = trailing(meals, (m) => m.ate !== 'clean');
  if (run === 0) {
    const isClean = trailing(meals, (m) => m.ate === 'clean') >= CLEAN_AGAIN;
    return cutsInForce(events) > 0 && isClean ? { ...at('restore'), cleanMeals: CLEAN_AGAIN } : null;
  }
  if (run === 1) return { ...at('offer-again'), liftMinutes };
  const streak = meals.slice(-run);
  if (!streak.some((m) => answerTo(events, 'cut', m) === true)) return { ...at('cut'), times: run, cutShare: rules.cutShare };
  return mayMissMeal(input) ? at('miss-meal') : null;
}

/** Weaned, eight weeks at least, and not of a small breed under twelve weeks. */
function mayMissMeal({ ageDays, sizeClass }: SuggestionInput): boolean {
  const little = sizeClass === 'toy' || sizeClass === 'small' || sizeClass === null;
  return ageDays >= (little ? LITTLE_ONES_WEEKS : WEANED_WEEKS) * 7;
}

function trailing(meals: readonly EatenMeal[], is: (m: EatenMeal) => boolean): number {
  let count = 0;
  while (count < meals.length && is(meals[meals.length - 1 - count] as EatenMeal)) count += 1;
  return count;
}

function answerTo(events: readonly WeaningEvent[], code: SuggestionCode, at: { day: CivilDate; meal: MealName }): boolean | null {
  let answer: boolean | null = null;
  for (const { day, note } of events) {
    if (note.kind === 'answer' && note.suggestion === code && day === at.day && note.meal === at.meal) answer = note.accepted;
  }
  return answer;
}

/** What accepted suggestions make of the amounts of a day. */
export interface Adjusted {
  /** The amount is multiplied by it. */
  readonly factor: number;
  /** Meals of that day that are left out. */
  readonly missed: readonly MealName[];
}

/** Accepted cuts, one on another, until the full amount was accepted again; and a meal that is left out. `fed`: the meals of a day, in order. */
export function adjustedOn(
  events: readonly WeaningEvent[],
  rules: HouseRules,
  day: CivilDate,
  fed: readonly MealName[],
): Adjusted {
  const before = events.filter((e) => e.note.kind === 'answer' && e.day <= day);
  return { factor: (1 - rules.cutShare) ** cutsInForce(before), missed: missedOn(before, day, fed) };
}

function cutsInForce(events: readonly WeaningEvent[]): number {
  let cuts = 0;
  for (const { note } of inOrder(events)) {
    if (note.kind !== 'answer' || !note.accepted) continue;
    if (note.suggestion === 'cut') cuts += 1;
    if (note.suggestion === 'restore') cuts = 0;
  }
  return cuts;
}

/** The meal after the one at which leaving out was accepted. The first of a day follows the last of the day before. */
function missedOn(events: readonly WeaningEvent[], day: CivilDate, fed: readonly MealName[]): MealName[] {
  return events.flatMap(({ day: on, note }) => {
    if (note.kind !== 'answer' || !note.accepted || note.suggestion !== 'miss-meal') return [];
    const at = MEAL_NAMES.indexOf(note.meal);
    const next = fed.find((name) => MEAL_NAMES.indexOf(name) > at);
    if (on === day) return next ?? [];
    return next === undefined && daysBetween(on, day) === 1 ? (fed[0] ?? []) : [];
  });
}

function inOrder(events: readonly WeaningEvent[]): WeaningEvent[] {
  return [...events].sort((a, b) => a.instant - b.instant);
}

/** Days that a loose stool keeps the steps still, unless a normal one is noted before. */
const LOOSE_REST_DAYS = 2;

/**
 * Whether the steps of the litter stand still on a day: she paused them, or a loose stool was noted within the last two days and no normal
 * one since. A loose stool of one puppy rests that puppy only (`puppyId`).
 */
export function restsOn(events: readonly WeaningEvent[], day: CivilDate, puppyId: string | null = null): boolean {
  let paused = false;
  let looseOn: CivilDate | null = null;
  for (const { puppyId: whose, day: on, note } of inOrder(events)) {
    if (on > day || (whose !== null && whose !== puppyId)) continue;
    if (note.kind === 'pause') paused = note.paused;
    if (note.kind === 'stool') {
      if (note.stool === 'loose') looseOn = on;
      else if (note.stool === 'normal') looseOn = null;
    }
  }
  return paused || (looseOn !== null && daysBetween(looseOn, day) <= LOOSE_REST_DAYS);
}

export interface StoolHint {
  readonly stool: Exclude<Stool, 'normal'>;
  readonly puppyId: string | null;
  readonly day: CivilDate;
  readonly known: Known;
}

/** A stool is spoken of for so many days. Our own choice. */
const HINT_DAYS = 3;

/** What the latest stool of the litter, and of each puppy, hints at; nothing after a normal one or after three days. */
export function stoolHints(events: readonly WeaningEvent[], today: CivilDate): StoolHint[] {
  const latest = new Map<string | null, WeaningEvent>();
  for (const e of inOrder(events)) if (e.note.kind === 'stool' && e.day <= today) latest.set(e.puppyId, e);
  return [...latest.values()].flatMap(({ puppyId, day, note }) =>
    note.kind !== 'stool' || note.stool === 'normal' || daysBetween(day, today) > HINT_DAYS
      ? []
      : [{ stool: note.stool, puppyId, day, known: 'common practice' }],
  );
}
