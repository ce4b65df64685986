/** Weights and what earlier litters weighed. */

import { z } from 'zod';
import { MOST_LITTERS } from '../growth/own-line/earlier.ts';
import { readingFieldsSchema, readingSchema } from '../litter/litter.ts';
import { changeOf, idSchema } from '../units/fields.ts';
import { litterWithPuppies } from './litter.ts';
import { op } from './operation.ts';

/** As much of a reading as a line needs: there are thousands of them. */
const lineReading = readingSchema.pick({ puppyId: true, instant: true, grams: true });

export const GROWTH_OPERATIONS = {
  'growth.readings': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({ readings: z.array(readingSchema) }),
    tags: ['readings', 'litters'],
  }),
  /**
   * Earlier litters of the same breed as written, in any case and spacing; the youngest first, 24 at the most, and their weights
   * of the first eight weeks that stand and are not in question. None when the breed is not written; invented ones only for an
   * invented litter.
   */
  'growth.line': op({
    kind: 'query',
    input: z.strictObject({ litterId: idSchema }),
    output: z.strictObject({
      litters: z.array(z.strictObject({ ...litterWithPuppies.shape, readings: z.array(lineReading) })).max(MOST_LITTERS),
    }),
    tags: ['litters', 'readings'],
  }),
  'growth.record': op({
    kind: 'command',
    input: z.strictObject({ puppyId: idSchema, reading: readingFieldsSchema }),
    output: z.strictObject({ reading: readingSchema }),
  }),
  /** A weighing of the whole table, or of several tables of one litter: each weight of one puppy. All or nothing. */
  'growth.recordWeighing': op({
    kind: 'command',
    input: z.strictObject({
      litterId: idSchema,
      readings: z
        .array(z.strictObject({ puppyId: idSchema, reading: readingFieldsSchema }))
        .min(1)
        .max(500),
    }),
    output: z.strictObject({ readings: z.array(readingSchema) }),
  }),
  /** Several readings of one litter corrected at once: moved to another day or time, or to other weights. All or nothing. */
  'growth.correctWeighing': op({
    kind: 'command',
    input: z.strictObject({
      litterId: idSchema,
      corrections: z
        .array(z.strictObject({ readingId: idSchema, change: changeOf(readingFieldsSchema.shape) }))
        .min(1)
        .max(500),
    }),
    output: z.strictObject({ readings: z.array(readingSchema) }),
  }),
  /** A new reading takes the old one's place; both are kept. */
  'growth.correct': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, reading: readingFieldsSchema }),
    output: z.strictObject({ reading: readingSchema }),
  }),
  'growth.withdraw': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema }),
    output: z.strictObject({ reading: readingSchema }),
  }),
  /** The person says that doubtful readings are right (two, where weights may be exchanged): not held any more, and `kept`. */
  'growth.keep': op({
    kind: 'command',
    input: z.strictObject({ readingIds: z.array(idSchema).min(1).max(30) }),
    output: z.strictObject({ readings: z.array(readingSchema) }),
  }),
  /**
   * The weight was a littermate's: it is struck out where it stands and written for that one, at its own time, in one entry. One that was asked
   * about gives the weight that it had taken the place of its place back.
   */
  'growth.give': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, puppyId: idSchema }),
    output: z.strictObject({ reading: readingSchema }),
  }),
  /** Two puppies' weights changed places: each reading is replaced by one with the other's weight, in one entry. */
  'growth.exchange': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, withReadingId: idSchema }),
    output: z.strictObject({ readings: z.array(readingSchema).length(2) }),
  }),
} as const;
