/**
 * The go-home plan as a document: everything the three sheets say, already worded and rounded, so that a plan that was
 * handed over can be printed again years later exactly as it was. The paper decides only where things stand.
 */

import { z } from 'zod';
import { ladderStepSchema } from '../feeding/ladder.ts';
import { MEAL_NAMES } from '../food/bowls.ts';
import { collarSchema } from '../litter/collar.ts';
import { SEXES } from '../reference/classes.ts';
import { dateSchema, idSchema, lineSchema } from '../units/fields.ts';
import { FOOD_UNITS } from '../units/food.ts';
import { languageSchema } from '../units/language.ts';
import { earlierPlanSchema, runSchema } from './earlier-plan.ts';

const text = z.string().max(4000);
/** A sentence in runs: plain, strong, or official (a published caution, set in italics). */
const runs = z.array(runSchema);

/** Why a plan was printed though a warning stands: her own words. */
export const whySchema = lineSchema(300).trim();

const mealAmounts = z.partialRecord(z.enum(MEAL_NAMES), z.number());

/** One row of the table: from a day, what to expect on the scale and what to feed. */
const planRowSchema = z.strictObject({
  /** Whole weeks, and the days where a row does not begin on one. */
  age: text,
  /** Months that are full in that week; empty for the others. */
  months: text,
  from: text,
  /** Age in days on which the row begins. */
  fromDay: z.number().int(),
  /** Expected weight, low to high, in the unit of the heading; empty when it cannot be known. */
  weight: text,
  /** Weighed today: the first row only; the others are to be written in. */
  weighed: text,
  /** Null when no weight can be expected that far ahead. */
  dayGrams: z.number().nullable(),
  /** What stands in the place of the amount. */
  instead: text,
  meals: mealAmounts,
  mark: z.enum(['none', 'now', 'changing']),
});
export type PlanRow = z.infer<typeof planRowSchema>;

export const NOTE_KEYS = [
  'left',
  'bones',
  'treats',
  'droppings',
  'growth',
  'poisons',
  'choking',
  'thawing',
  'water',
  'hygiene',
] as const;
const planNoteSchema = z.strictObject({ key: z.enum(NOTE_KEYS), heading: text, runs, boxed: z.boolean() });
export type PlanNote = z.infer<typeof planNoteSchema>;

/** Something the breeder should see before she prints. It stands on the screen beside the preview and is not printed. */
const planFindingSchema = z.strictObject({
  /** What is found, whatever the puppy: the same key on two plans is the same finding. */
  key: text,
  severity: z.enum(['note', 'caution', 'warning']),
  /** Asks why before anything is printed. */
  blocks: z.boolean(),
  sentence: text,
  mend: text.nullable(),
  source: text,
  /** The rule that mends it, where one does. */
  change: z.strictObject({ key: text, value: z.union([z.number(), text]) }).nullable(),
});
export type PlanFinding = z.infer<typeof planFindingSchema>;

const weekSchema = z.strictObject({
  heading: text,
  /** Of which food, and its energy. */
  food: runs,
  bowls: z.array(z.strictObject({ name: z.enum(MEAL_NAMES), time: text, grams: z.number() })),
  day: text,
  dayGrams: z.number(),
  until: text,
  /** Which weight the amount was reckoned from, what it is of the published estimate, and the gain to expect. */
  fair: runs,
});

const nextSchema = z.strictObject({
  heading: text,
  note: text,
  weeks: z.array(z.strictObject({ from: text, bowls: z.array(text), changes: z.boolean() })),
  /** When the number of bowls changes, and to which; empty when it does not. */
  change: runs,
});

const vetTierSchema = z.strictObject({ heading: text, note: text, first: runs, lines: z.array(runs) });

export const planDocumentSchema = z.strictObject({
  version: z.literal(3),
  kind: z.literal('plan'),
  language: languageSchema,
  puppyId: idSchema,
  made: dateSchema,
  /** Null where nobody wrote the rules: they are those the program came with. */
  rulesFrom: dateSchema.nullable(),
  units: z.strictObject({ amount: z.enum(FOOD_UNITS), weight: z.enum(['kg', 'lb']) }),
  title: text,
  name: text,
  sex: z.enum(SEXES),
  collar: collarSchema,
  collarWords: text,
  /** Whose plan it is, line by line. */
  about: z.array(runs),
  /** Empty lines are lines to write on. */
  contact: z.strictObject({ lead: text, name: text, address: text, phone: text, email: text, phoneLabel: text }),
  /** What to feed this week (or month), or null when that is not known well enough to be written down. */
  week: weekSchema.nullable(),
  /** Stands in the place of the week when there is none; empty when there is one. */
  missing: text,
  /** Why it is printed though a warning stands, as it is printed; empty without one. */
  why: text,
  /** Null without amounts. */
  next: nextSchema.nullable(),
  ladder: z.strictObject({
    heading: text,
    note: text,
    bornOn: dateSchema,
    /** Empty when no weight can be expected. */
    steps: z.array(ladderStepSchema),
    /** Age in days; null while the plan is a forecast for the go-home day. */
    nowDay: z.number().int().nullable(),
  }),
  vet: z.strictObject({
    now: vetTierSchema,
    today: vetTierSchema,
    /** Empty numbers are lines to write on. */
    lines: z.array(z.strictObject({ label: text, name: text, phone: text })),
  }),
  table: z.strictObject({
    heading: text,
    note: text,
    caption: text,
    heads: z.strictObject({ age: text, from: text, weight: text, weighed: text, day: text }),
    columns: z.array(z.strictObject({ name: z.enum(MEAL_NAMES), head: text })),
    groups: z.array(z.strictObject({ heading: text, note: text, rows: z.array(planRowSchema) })),
    end: runs,
  }),
  byWeight: z.strictObject({
    heading: text,
    /** How to read it: the table's caption. */
    note: runs,
    heads: z.array(text),
    rows: z.array(
      z.strictObject({
        age: text,
        /** A weight, and grams a day for it; null where no puppy of that age is likely to weigh that. */
        cells: z.array(z.strictObject({ at: text, grams: z.number().nullable(), as: z.enum(['age', 'weight']) })),
      }),
    ),
    /** What to do for a lighter or a heavier one. */
    way: runs,
  }),
  kitchen: z.strictObject({ heading: text, note: text }),
  notes: z.array(planNoteSchema),
  last: text,
  foot: text,
  /** "sheet 1 of 3", one for each. */
  sheets: z.array(text),
  findings: z.array(planFindingSchema),
  /** How each number came about: shown on screen behind the preview, not printed. */
  provenance: z.array(z.strictObject({ what: text, how: text })),
});
export type PlanDocument = z.infer<typeof planDocumentSchema>;

/** A plan of any version: one that was handed over is kept as it was. */
export const anyPlanSchema = z.discriminatedUnion('version', [earlierPlanSchema, planDocumentSchema]);
export type AnyPlan = z.infer<typeof anyPlanSchema>;
