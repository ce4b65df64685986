/** The house: whose it is, and whom to call. */
import { z } from 'zod';
import { houseSchema } from '../people/house.ts';
import { changeOf } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const PEOPLE_OPERATIONS = {
  'people.house': op({ kind: 'query', input: nothing, output: z.strictObject({ house: houseSchema }), tags: ['house'] }),
  'people.setHouse': op({
    kind: 'command',
    input: z.strictObject({ change: changeOf(houseSchema.shape) }),
    output: nothing,
  }),
  /**
   * Erases what was written about the breeder and the vet, the journal's memory of it included, and overwrites where it
   * stood. Not journaled: it can't be undone. Plans that were handed over stay as they were.
   */
  'people.eraseHouse': op({ kind: 'command', input: nothing, output: nothing }),
} as const;
