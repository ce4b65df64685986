/** The contract over the desktop's bridge: preload, channel and sender check, cloned both ways as Electron clones. */
import { vi } from 'vitest';
import type { Result } from '../../core/contract/result.ts';
import { carryCalls } from '../../main/electron/ipc.ts';
import * as electron from '../main/electron/fake-electron.ts';
import { openOn, scratchFolder } from '../main/open.ts';
import { contractSuite } from './suite.ts';

vi.mock('electron', () => import('../main/electron/fake-electron.ts'));

interface Bridge {
  call(name: string, input: unknown): Promise<Result<unknown>>;
}

contractSuite('the desktop bridge', async () => {
  const { folder, remove } = scratchFolder();
  const program = openOn(folder);
  await import('../../main/preload/preload.ts');
  carryCalls(program.dispatch);
  const bridge = electron.contextBridge.exposed.get('whelpside') as Bridge;
  return {
    dispatch: (name, input) => bridge.call(name, input),
    close: async () => {
      program.close();
      remove();
    },
  };
});
