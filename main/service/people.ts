/** The house: whose it is, whom to call, how weights and papers are shown. */
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { eraseHouse, setHouse, storedHouse } from '../store/people.ts';
import { aboutHouse } from './facts.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function peopleHandlers(c: Context): HandlersOf<'people'> {
  const { db } = c.store;
  return {
    'people.house': () => ({ house: storedHouse(db) ?? DEFAULT_HOUSE }),

    'people.setHouse': ({ change }) =>
      command(c, 'people.setHouse', (recorder) => {
        setHouse(db, recorder, { ...(storedHouse(db) ?? DEFAULT_HOUSE), ...change });
        return { value: {}, about: aboutHouse() };
      }),

    'people.eraseHouse': () => ({ value: {}, changed: eraseHouse(db) }),
  };
}
