/** The house: whose it is, whom to call, how weights and papers are shown. */
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { exportsFolder } from '../store/exports.ts';
import { erasePerson, everybody, personOf, setHouse, storedHouse } from '../store/people.ts';
import { writePerson } from './export.ts';
import { aboutHouse, found } from './facts.ts';
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

    'people.all': () => ({ people: everybody(db) }),

    'people.export': ({ personId }) => {
      const { isNamed: _, starters: _s, papers: _p, ...person } = whom(c, personId);
      return { files: [writePerson(c, person)], folder: exportsFolder(c.store.folder) };
    },

    'people.erase': ({ personId, papers }) => erasePerson(db, whom(c, personId), papers),
  };
}

function whom(c: Context, id: string) {
  return found(personOf(c.store.db, id), 'person');
}
