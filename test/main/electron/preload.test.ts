/** The bridge: exactly two functions, and nothing of Electron's goes through it (checklist 20). */
import { beforeAll, expect, test, vi } from 'vitest';
import * as electron from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

interface Bridge {
  call(name: string, input: unknown): Promise<unknown>;
  onChanged(listener: (...heard: unknown[]) => void): () => void;
}
const bridge = () => electron.contextBridge.exposed.get('whelpside') as Bridge;

beforeAll(() => import('../../../main/preload/preload.ts'));

test('one thing is exposed, with two functions', () => {
  expect([...electron.contextBridge.exposed.keys()]).toEqual(['whelpside']);
  expect(Object.keys(bridge()).sort()).toEqual(['call', 'onChanged']);
});

test('a call goes to the one channel, whatever it is called with', async () => {
  electron.ipcMain.handlers.set('whelpside:call', async (_event, ...args) => ({ ok: true, value: args, changed: [] }));
  expect(await bridge().call('litter.all', { a: 1 })).toEqual({ ok: true, value: ['litter.all', { a: 1 }], changed: [] });
  await bridge().call('whelpside:changed', {});
  await bridge().call('other:channel', {});
  expect(new Set(electron.ipcRenderer.invoked)).toEqual(new Set(['whelpside:call']));
});

test('a listener hears tags, never the event with its sender, and no more once it stops', () => {
  const heard = vi.fn();
  const other = vi.fn();
  const stop = bridge().onChanged(heard);
  bridge().onChanged(other);
  electron.ipcRenderer.emit('whelpside:changed', { sender: electron.ipcRenderer }, ['rules']);
  expect(heard.mock.calls).toEqual([[['rules']]]);
  expect(stop()).toBeUndefined();
  electron.ipcRenderer.emit('whelpside:changed', {}, ['house']);
  expect(heard).toHaveBeenCalledOnce();
  expect(other).toHaveBeenCalledTimes(2);
});
