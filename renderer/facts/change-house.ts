import type { House } from '../../core/people/house.ts';
import { run } from '../data/query.ts';
import { words } from '../state/words.ts';

/** Changes facts of the house, the others stay. Null when saved, else the sentence for the field. */
export async function changeHouse(change: Partial<House>): Promise<string | null> {
  const done = await run('people.setHouse', { change });
  return done.ok ? null : words.form.notSaved;
}
