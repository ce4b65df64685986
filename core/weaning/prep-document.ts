/** The prep sheet as a document: everything the page says, worded and rounded, so that preview, print and PDF are the same. */

import { z } from 'zod';
import { dateOf } from '../calendar/clock.ts';
import { ageInDays, type CivilDate } from '../calendar/day.ts';
import { capital, fullDate, longDate } from '../calendar/words.ts';
import { keepingOf } from '../feeding/keeping.ts';
import { type HouseRules, rulesOn, writtenFrom } from '../feeding/rules.ts';
import { percentText } from '../food/figures.ts';
import type { NamedFood } from '../food/food.ts';
import { type Collar, collarSchema } from '../litter/collar.ts';
import type { Litter } from '../litter/litter.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { FOOD_UNITS, foodFigure, foodUnit } from '../units/food.ts';
import { languageSchema } from '../units/language.ts';
import { type PrepAmounts, type PrepBowl, prepSheet } from './prep.ts';
import { type WeaningDay, type WeaningInput, weaningDay } from './weaning.ts';
import { type WeaningFacts, weaningInputOf } from './weaning-input.ts';

const text = z.string().max(1000);
const amounts = z.array(text).max(4);

export const prepDocumentSchema = z.strictObject({
  version: z.literal(1),
  kind: z.literal('prep'),
  language: languageSchema,
  litterId: idSchema,
  day: dateSchema,
  made: dateSchema,
  title: text,
  /** What the file is called. */
  name: text,
  heading: text,
  sub: text,
  /** Lines at the top right. */
  top: z.array(text),
  unit: z.enum(FOOD_UNITS),
  /** Clock time of each meal. */
  times: amounts,
  bowls: z.array(
    z.strictObject({
      name: text,
      rows: z.array(z.strictObject({ collar: collarSchema, name: text, note: text, amounts, day: text })),
      amounts,
    }),
  ),
  totals: z.array(z.strictObject({ label: text, amounts, day: text, strong: z.boolean() })),
  notes: z.array(z.strictObject({ heading: text, text, /** Empty lines to write on. */ lines: z.number().int().min(0).max(6) })),
  foot: text,
});
export type PrepDocument = z.infer<typeof prepDocumentSchema>;

export interface PrepFacts {
  readonly input: WeaningInput;
  readonly litterId: string;
  readonly litterName: string;
  readonly born: CivilDate;
  readonly day: CivilDate;
  readonly made: CivilDate;
  /** Day from which the rules hold; null for those of the program. */
  readonly rulesFrom: CivilDate | null;
  readonly collarOf: (puppyId: string) => Collar | null;
}

/** What the sheet has said elsewhere. */
export interface PrepWords {
  readonly litterName: (litter: Litter) => string;
  readonly foods: { readonly nameOf: (f: NamedFood) => string };
  readonly officialPlace: Readonly<Record<HouseRules['officialKeeping'], string>>;
}

/** The sheet of a day from the facts; null when nothing is fed from bowls on it. */
export function prepDocumentOn(facts: WeaningFacts, day: CivilDate, words: PrepWords): PrepDocument | null {
  const { litter, puppies, today } = facts;
  const input = weaningInputOf(facts, day);
  if (input === null) return null;
  const prepared: PrepFacts = {
    input,
    litterId: litter.id,
    litterName: words.litterName(litter),
    born: dateOf(litter.whelpedAt),
    day,
    made: today,
    rulesFrom: writtenFrom(rulesOn(facts.rules, litter.id, day)),
    collarOf: (id) => puppies.find((p) => p.id === id)?.collar ?? null,
  };
  return prepDocument(prepared, words);
}

/** The same, put together already. */
export function prepDocument(facts: PrepFacts, words: PrepWords): PrepDocument | null {
  const { input, day } = facts;
  const fed = weaningDay(input, day);
  const sheet = prepSheet(fed, input.plan.atOneBowl, input.food);
  if (fed.step === null || sheet.bowls.length === 0) return null;
  const { rules, food, unit } = input;
  const step = input.plan.steps[fed.step];
  const several = new Set(sheet.bowls.map((b) => b.texture)).size > 1;
  const of = (a: PrepAmounts) => ({ amounts: a.byMeal.map((g) => foodFigure(g, unit)), day: foodFigure(a.day, unit) });
  return {
    version: 1,
    kind: 'prep',
    language: 'en',
    litterId: facts.litterId,
    day,
    made: facts.made,
    title: `Prep sheet, ${facts.litterName}, ${longDate(day)}`,
    name: `${facts.litterName} prep sheet ${day}`,
    heading: 'Prep sheet',
    sub: `${facts.litterName}, ${longDate(day)}, day ${ageInDays(facts.born, day)}`,
    top: [`${step?.texture ?? ''} of ${words.foods.nameOf(food)}`, `${percentText(step?.share ?? 1, 0)} from the bowl`],
    unit: foodUnit(unit),
    times: sheet.meals.map((m) => rules.mealTimes[m]),
    bowls: sheet.bowls.map((bowl, n) => bowlOf(facts, bowl, n, several)),
    totals: [
      { label: `${capital(words.foods.nameOf(food))}, whole litter`, ...of(sheet.food), strong: true },
      ...(sheet.water.day > 0 ? [{ label: 'Warm water to stir in', ...of(sheet.water), strong: false }] : []),
    ],
    notes: notesOf(facts, fed, words),
    foot: `Prep sheet · printed ${fullDate(facts.made)} · ${facts.rulesFrom === null ? 'house rules: common practice' : `house rules of ${fullDate(facts.rulesFrom)}`}`,
  };
}

const PLACES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

function bowlOf({ input, collarOf }: PrepFacts, bowl: PrepBowl, n: number, several: boolean): PrepDocument['bowls'][number] {
  const amountsOf = (a: PrepAmounts) => a.byMeal.map((g) => foodFigure(g, input.unit));
  const name = `${PLACES[n] ?? String(n + 1)} bowl${several ? `, ${bowl.texture}` : ''}`;
  const rows = bowl.puppies.flatMap((p) => {
    const collar = collarOf(p.puppyId);
    const called = input.puppies.find((x) => x.id === p.puppyId)?.name ?? '';
    const note = p.holds ? `holds at ${percentText(p.share, 0)}` : '';
    return collar === null ? [] : [{ collar, name: called, note, amounts: amountsOf(p), day: foodFigure(p.day, input.unit) }];
  });
  return { name, rows, amounts: amountsOf(bowl.food) };
}

function notesOf({ input }: PrepFacts, fed: WeaningDay, words: PrepWords): PrepDocument['notes'] {
  const { plan, rules } = input;
  const { houseHours, official, longer } = keepingOf(rules);
  const held = fed.puppies.flatMap((p) => (p.holds ? (input.puppies.find((x) => x.id === p.puppyId)?.name ?? []) : []));
  const nurses = held.length === 0 ? '' : `${listed(held)} ${held.length === 1 ? 'nurses' : 'nurse'} first. `;
  const bone = fed.puppies.some((p) => p.texture === 'mince with soft bone')
    ? ' Soft bone: raw only, watched all the time. The FDA calls bones of any size unsafe (second-hand).'
    : '';
  const keep = longer
    ? `House rule: use it within ${houseHours} h of thawing. Official, ${words.officialPlace[official.of]}: ${official.hours} h.`
    : `Use it within ${houseHours} h of thawing, then throw it away.`;
  return [
    {
      heading: 'Before the bowl goes down',
      text: `${nurses}Clean water stays down. Lift what is left after ${plan.liftMinutes} minutes, throw it away, and write it here:${bone === '' ? '' : bone}`,
      lines: 2,
    },
    {
      heading: 'Hands and surfaces',
      text: `Wash hands for 20 seconds, bowls and boards in hot soapy water. The mix stays at 4 °C or colder until it is weighed out. ${keep} Children under five, pregnant women, old people and people with weak defences should not handle it.`,
      lines: 0,
    },
  ];
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
