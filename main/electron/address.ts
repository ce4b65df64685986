/** The window's own address. Whatever else asks for something is a stranger. */
import type { WebFrameMain } from 'electron';

export const SCHEME = 'app';
export const WINDOW_ADDRESS = 'app://whelpside/';

/** Whether an address, or an origin, is the window's own. */
export function isOwn(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host, username, password } = new URL(address);
  return protocol === 'app:' && host === 'whelpside' && username === '' && password === '';
}

/** Whether a frame is the top frame of our own page. A frame that is gone or has moved on is null, and a stranger. */
export function isOurFrame(frame: Pick<WebFrameMain, 'url' | 'parent'> | null): boolean {
  return frame !== null && frame.parent === null && isOwn(frame.url);
}
