/** The things: litter, puppy, reading. Facts only; what they mean is computed in growth, feeding and homing. */
import { z } from 'zod';
import { SEXES, SIZE_CLASSES } from '../reference/classes.ts';
import { dateSchema, gramsSchema, idSchema, instantSchema, lineSchema, localTimeSchema, shortText } from '../units/fields.ts';
import { MASS_UNITS } from '../units/mass.ts';
import { collarSchema } from './collar.ts';

/** Where a puppy is: in the litter, gone home, kept by the breeder, died. */
export const PUPPY_STATES = ['litter', 'home', 'kept', 'died'] as const;
export type PuppyState = (typeof PUPPY_STATES)[number];
export const SESSIONS = ['birth', 'morning', 'evening'] as const;
export type Session = (typeof SESSIONS)[number];

const adultKg = z.number().min(0.5).max(120).nullable();

/** Usual birth weight of a breed, in grams: the means of the smallest and the heaviest breeds are well within. */
export const BREED_BIRTH_GRAMS = { low: 40, high: 1500 } as const;

/** What the breeder writes about a litter. Adult weights in kg, null when she does not know. */
export const litterFieldsSchema = z.strictObject({
  name: shortText,
  dam: shortText.min(1),
  sire: shortText,
  breed: shortText,
  sizeClass: z.enum(SIZE_CLASSES).nullable(),
  adultDogKg: adultKg,
  adultBitchKg: adultKg,
  /** The usual birth weight of the breed, null when she gave none. Not used where figures of the breed were published. */
  breedBirthGrams: gramsSchema.min(BREED_BIRTH_GRAMS.low).max(BREED_BIRTH_GRAMS.high).nullable(),
  whelpedAt: localTimeSchema,
  whelpedInstant: instantSchema,
});
export type LitterFields = z.infer<typeof litterFieldsSchema>;

export const litterSchema = z.strictObject({ ...litterFieldsSchema.shape, id: idSchema, demo: z.boolean() });
export type Litter = z.infer<typeof litterSchema>;

/** What the breeder writes about a puppy. `place` is its place in the weigh-in, from 0. */
export const puppyFieldsSchema = z.strictObject({
  collar: collarSchema,
  callName: shortText,
  sex: z.enum(SEXES),
  markings: shortText,
  birthOrder: z.number().int().min(1).max(30),
  bornAt: localTimeSchema,
  bornInstant: instantSchema,
});
export type PuppyFields = z.infer<typeof puppyFieldsSchema>;

export const puppySchema = z.strictObject({
  ...puppyFieldsSchema.shape,
  id: idSchema,
  litterId: idSchema,
  place: z.number().int().min(0),
  state: z.enum(PUPPY_STATES),
  stateOn: dateSchema.nullable(),
});
export type Puppy = z.infer<typeof puppySchema>;

export const READING_SOURCES = ['keyboard', 'scale', 'file', 'demo'] as const;

/** One weight as it came. `typed` is the text as it was typed, with the unit it was read in. */
export const readingFieldsSchema = z.strictObject({
  at: localTimeSchema,
  instant: instantSchema,
  session: z.enum(SESSIONS),
  grams: gramsSchema,
  typed: lineSchema(40),
  unit: z.enum(MASS_UNITS),
  source: z.enum(READING_SOURCES),
  /** Doubtful and not answered yet: kept, and held out of the calculation. */
  held: z.boolean(),
});
export type ReadingFields = z.infer<typeof readingFieldsSchema>;

/**
 * A reading as stored. It is never deleted: `supersededBy` names the reading that replaced it, `withdrawn` says that
 * it was taken back. It counts only while neither is so.
 */
export const readingSchema = z.strictObject({
  ...readingFieldsSchema.shape,
  id: idSchema,
  puppyId: idSchema,
  supersedes: idSchema.nullable(),
  supersededBy: idSchema.nullable(),
  withdrawn: z.boolean(),
  /** The person was asked and said that it is right: the calculation never holds it out again. */
  kept: z.boolean(),
  recordedInstant: instantSchema,
});
export type Reading = z.infer<typeof readingSchema>;

/** Whether the reading stands: neither replaced nor taken back. It may still be held out as doubtful. */
export function isCurrent(r: Reading): boolean {
  return r.supersededBy === null && !r.withdrawn;
}

/** What a puppy is called: its call name, else its collar letter. */
export function puppyName(p: Pick<Puppy, 'callName' | 'collar'>): string {
  return p.callName === '' ? p.collar.letter : p.callName;
}
