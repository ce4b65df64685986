/** The house: whose it is, and whom to call; everybody who is written down. */
import { z } from 'zod';
import { houseSchema } from '../people/house.ts';
import { personSchema } from '../people/person.ts';
import { changeOf, idSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';
import { exportedSchema } from './records.ts';

export const PEOPLE_OPERATIONS = {
  'people.house': op({ kind: 'query', input: nothing, output: z.strictObject({ house: houseSchema }), tags: ['house'] }),
  'people.setHouse': op({
    kind: 'command',
    input: z.strictObject({ change: changeOf(houseSchema.shape) }),
    output: nothing,
  }),
  /**
   * Everybody of whom something is written, in the order they were. `isNamed`: something still names her; else she is in the
   * file so that undo can bring her back. `papers` counts plans that were handed over with what is written of her on them.
   */
  'people.all': op({
    kind: 'query',
    input: nothing,
    output: z.strictObject({
      people: z.array(
        z.strictObject({
          ...personSchema.shape,
          isNamed: z.boolean(),
          starters: z.number().int(),
          papers: z.number().int(),
        }),
      ),
    }),
    tags: ['house', 'freezer', 'plans'],
  }),
  /** Writes what is kept of one person into the exports folder, as JSON. */
  'people.export': op({ kind: 'act', input: z.strictObject({ personId: idSchema }), output: exportedSchema, tags: [] }),
  /**
   * Erases what was written about a person, the journal's memory of it included, and overwrites where it stood. What hangs on
   * her stays, for a buyer without a name. Plans that were handed over stay as they were, or with `papers` lose her lines.
   * Answers how many starter packs stay and how many plans held what was erased. Not journaled: it can't be undone.
   */
  'people.erase': op({
    kind: 'command',
    input: z.strictObject({ personId: idSchema, papers: z.boolean() }),
    output: z.strictObject({ starters: z.number().int(), papers: z.number().int() }),
  }),
} as const;
