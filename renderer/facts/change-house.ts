import type { House } from '../../core/people/house.ts';
import { formWords } from '../../core/words/en/form.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import { inTurn } from '../parts/form/in-turn.ts';
import { useWindow } from '../state/window.ts';

/** Changes facts of the house, leaving the others as they are now. Null when saved, else the sentence for the field. */
export function changeHouse(change: Partial<House>): Promise<string | null> {
  return inTurn(async () => {
    const now = await call('people.house', {});
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return formWords.notSaved;
    }
    const done = await run('people.setHouse', { house: { ...now.value.house, ...change } });
    return done.ok ? null : formWords.notSaved;
  });
}
