/** Weights and what earlier litters weighed. */

import { z } from 'zod';
import { MOST_LITTERS } from '../growth/line/earlier.ts';
import { readingFieldsSchema, readingSchema } from '../litter/litter.ts';
import { idSchema } from '../units/fields.ts';
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
  /** The person says that a doubtful reading is right: not held any more, and `kept`. */
  'growth.keep': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema }),
    output: z.strictObject({ reading: readingSchema }),
  }),
  /** Two puppies' weights changed places: each reading is replaced by one with the other's weight, in one entry. */
  'growth.exchange': op({
    kind: 'command',
    input: z.strictObject({ readingId: idSchema, withReadingId: idSchema }),
    output: z.strictObject({ readings: z.array(readingSchema).length(2) }),
  }),
} as const;
