/** Carries calls from the window to the program: one channel, and only for the top frame of our own page. */
import { BrowserWindow, ipcMain } from 'electron';
import type { Result, Tag } from '../../core/contract/result.ts';
import type { Dispatch } from '../service/dispatch.ts';
import { isOurFrame } from './address.ts';

const CALL_CHANNEL = 'whelpside:call';
const CHANGED_CHANNEL = 'whelpside:changed';

export function carryCalls(dispatch: Dispatch): void {
  ipcMain.handle(CALL_CHANNEL, async (event, name: unknown, input: unknown): Promise<Result<unknown>> => {
    if (!isOurFrame(event.senderFrame)) return { ok: false, error: { code: 'forbidden', message: 'not asked by the window' } };
    if (typeof name !== 'string') return { ok: false, error: { code: 'unknown-operation', message: 'the name is no text' } };
    return dispatch(name, input);
  });
}

/** Tells every window what changed. */
export function tellWindows(tags: readonly Tag[]): void {
  for (const window of BrowserWindow.getAllWindows()) window.webContents.send(CHANGED_CHANNEL, tags);
}
