/**
 * Go-home plans as they were laid out until November 2026, versions 1 and 2: two sheets. None is made any more; one that was
 * handed over is printed again exactly as it was, so nothing here changes.
 */

import { z } from 'zod';
import { ladderStepSchema } from '../feeding/ladder.ts';
import { MEAL_NAMES } from '../food/bowls.ts';
import { collarSchema } from '../litter/collar.ts';
import { SEXES } from '../reference/classes.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { FOOD_UNITS } from '../units/food.ts';
import { languageSchema } from '../units/language.ts';

const text = z.string().max(4000);
/** A sentence in runs: plain, strong, or official (a published caution, set in italics). */
export const runSchema = z.strictObject({ text, as: z.enum(['plain', 'strong', 'official']) });
export type Run = z.infer<typeof runSchema>;

const mealAmounts = z.partialRecord(z.enum(MEAL_NAMES), z.number());

/** One row of the table: from a day, what to expect on the scale and what to feed. */
const planRowSchema = z.strictObject({
  age: text,
  from: text,
  /** Age in days on which the row begins. */
  fromDay: z.number().int(),
  /** Expected weight, low to high, in the unit of the heading; empty when it cannot be known. */
  weight: text,
  /** Per cent of body weight; empty when the amount does not come from a share. */
  share: text,
  /** Null when no weight can be expected that far ahead; the table by weight holds then. */
  dayGrams: z.number().nullable(),
  meals: mealAmounts,
  mark: z.enum(['none', 'now', 'changing']),
});
export type EarlierRow = z.infer<typeof planRowSchema>;

const NOTE_KEYS = ['left', 'bones', 'thawing', 'treats', 'water', 'first-week', 'hygiene', 'growth'] as const;
const planNoteSchema = z.strictObject({ key: z.enum(NOTE_KEYS), heading: text, runs: z.array(runSchema) });
export type EarlierNote = z.infer<typeof planNoteSchema>;

/** Something the breeder should see before she prints. It stands on the screen beside the preview and is not printed. */
const planFindingSchema = z.strictObject({
  severity: z.enum(['note', 'caution', 'warning']),
  sentence: text,
  mend: text.nullable(),
  source: text,
});

export const earlierPlanSchema = z.strictObject({
  /** 1 is how plans were laid out until November 2026: their notes were divided by counting letters, and still are. */
  version: z.literal([1, 2]),
  /** Plans kept before there were other papers do not say what they are. */
  kind: z.literal('plan').default('plan'),
  language: languageSchema,
  puppyId: idSchema,
  made: dateSchema,
  rulesFrom: dateSchema,
  units: z.strictObject({ amount: z.enum(FOOD_UNITS), weight: z.enum(['kg', 'lb']) }),
  title: text,
  name: text,
  sex: z.enum(SEXES),
  collar: collarSchema,
  facts: z.array(z.strictObject({ label: text, value: text })),
  /** Empty lines are lines to write on. */
  contact: z.strictObject({ lead: text, name: text, address: text, phone: text, email: text }),
  /** What to feed this week (or month), or null when no weight is known or can be expected. */
  week: z
    .strictObject({
      heading: text,
      dates: text,
      dayGrams: z.number(),
      lead: text,
      meals: z.array(z.strictObject({ name: z.enum(MEAL_NAMES), time: text, grams: z.number() })),
      /** Which weight the amount was reckoned from. */
      basis: text,
    })
    .nullable(),
  /** Stands in the place of the week when there is none; empty when there is one. */
  missing: text,
  ladder: z.strictObject({
    heading: text,
    note: text,
    bornOn: dateSchema,
    /** Empty when no weight can be expected. */
    steps: z.array(ladderStepSchema),
    /** Age in days; null while the plan is a forecast for the go-home day. */
    nowDay: z.number().int().nullable(),
  }),
  weights: z.strictObject({
    heading: text,
    note: text,
    /** Age in days, grams: the puppy's own weights, and its littermates' lightest and heaviest at each weigh-in. */
    own: z.array(z.strictObject({ day: z.number(), grams: z.number() })),
    band: z.array(z.strictObject({ day: z.number(), low: z.number(), high: z.number() })),
    facts: z.array(z.strictObject({ figure: text, text })),
  }),
  table: z.strictObject({
    heading: text,
    note: text,
    columns: z.array(z.enum(MEAL_NAMES)),
    groups: z.array(z.strictObject({ heading: text, rows: z.array(planRowSchema) })),
  }),
  byWeight: z.strictObject({
    heading: text,
    note: text,
    /** In `units.weight`. */
    columns: z.array(z.number()),
    /** Grams a day; null where no puppy of that age is likely to weigh that. */
    rows: z.array(z.strictObject({ age: text, grams: z.array(z.number().nullable()) })),
  }),
  notes: z.array(planNoteSchema),
  vet: z.strictObject({
    heading: text,
    runs: z.array(runSchema),
    lines: z.array(z.strictObject({ label: text, name: text, phone: text })),
  }),
  last: text,
  foot: text,
  findings: z.array(planFindingSchema),
  /** How each number came about: shown on screen behind the preview, not printed. */
  provenance: z.array(z.strictObject({ what: text, how: text })),
});
export type EarlierPlan = z.infer<typeof earlierPlanSchema>;
