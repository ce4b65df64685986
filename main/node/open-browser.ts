/** Opens the default browser, where there is a display to open it on. */
import { spawn } from 'node:child_process';

export interface Opener {
  readonly command: string;
  readonly args: readonly string[];
}

/** The platform's own opener for an address, or null without a display. */
export function openerFor(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  address: string,
): Opener | null {
  if (platform === 'win32') return { command: 'cmd', args: ['/d', '/c', 'start', '""', `"${address}"`] };
  if (platform === 'darwin') return { command: 'open', args: [address] };
  return env['DISPLAY'] || env['WAYLAND_DISPLAY'] ? { command: 'xdg-open', args: [address] } : null;
}

/** Starts the opener and lets it go. That there is none is no failure: the address is printed in any case. */
export function openBrowser(address: string): void {
  const opener = openerFor(process.platform, process.env, address);
  if (opener === null) return;
  // `start` is a word of cmd, which does its own quoting.
  const child = spawn(opener.command, opener.args, {
    detached: true,
    stdio: 'ignore',
    windowsVerbatimArguments: true,
    windowsHide: true,
  });
  child.once('error', () => undefined);
  child.unref();
}
