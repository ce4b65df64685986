import type { House } from '../../core/people/house.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import { inTurn } from '../parts/form/in-turn.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

/** Changes facts of the house, leaving the others as they are now. Null when saved, else the sentence for the field. */
export function changeHouse(change: Partial<House>): Promise<string | null> {
  return inTurn(async () => {
    const now = await call('people.house', {});
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return words.form.notSaved;
    }
    const done = await run('people.setHouse', { house: { ...now.value.house, ...change } });
    return done.ok ? null : words.form.notSaved;
  });
}
