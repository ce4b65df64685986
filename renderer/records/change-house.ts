import type { House } from '../../core/records/house.ts';
import { call } from '../data/host.ts';
import { run } from '../data/query.ts';
import { inTurn } from '../parts/form/in-turn.ts';
import { useWindow } from '../state/window.ts';
import { formWords } from '../words/en/form.ts';

/** Changes facts of the house, leaving the others as they are now. Null when saved, else the sentence for the field. */
export function changeHouse(change: Partial<House>): Promise<string | null> {
  return inTurn(async () => {
    const now = await call('records.house', {});
    if (!now.ok) {
      useWindow.getState().setFailure(now.error);
      return formWords.notSaved;
    }
    const done = await run('records.setHouse', { house: { ...now.value.house, ...change } });
    return done.ok ? null : formWords.notSaved;
  });
}
