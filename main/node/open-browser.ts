/**
 * Opens the default browser, where there is a display to open it on. What a program is started with is shown to everybody
 * on the computer by the list of processes, so the browser is given the name of a file that only its owner can read; the
 * address with the key stands in that.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Opener {
  readonly command: string;
  readonly args: readonly string[];
}

/** The platform's own opener for a file or an address, or null without a display. */
export function openerFor(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  target: string,
): Opener | null {
  if (platform === 'win32') return { command: 'cmd', args: ['/d', '/c', 'start', '""', `"${target}"`] };
  if (platform === 'darwin') return { command: 'open', args: [target] };
  return env['DISPLAY'] || env['WAYLAND_DISPLAY'] ? { command: 'xdg-open', args: [target] } : null;
}

/** A page of its own that leads to the address, for its owner only. */
export class Letter {
  readonly #folder: string;
  readonly file: string;

  constructor(address: string, parent = letterPlace()) {
    this.#folder = mkdtempSync(join(parent, 'whelpside-opens-'));
    this.file = join(this.#folder, 'whelpside.html');
    const page =
      '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Whelpside</title>' +
      `<meta http-equiv="refresh" content="0;url=${address}"></head><body><a href="${address}">Whelpside</a></body></html>`;
    writeFileSync(this.file, page, { mode: 0o600, flag: 'wx' });
  }

  remove(): void {
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

/** A browser that is shut into a box of its own sees no temporary files, but what lies openly in her folder. */
function letterPlace(): string {
  return existsSync('/snap/bin') ? homedir() : tmpdir();
}

/**
 * Starts the opener and lets it go. Answers the letter that it was given, to be taken away once the key is used; null
 * where there is nothing to open it on. That it can't be opened is no failure: the address is printed in any case.
 */
export function openBrowser(address: string): Letter | null {
  if (openerFor(process.platform, process.env, '') === null) return null;
  let letter: Letter;
  try {
    letter = new Letter(address);
  } catch {
    return null;
  }
  const opener = openerFor(process.platform, process.env, letter.file);
  if (opener === null) return null;
  // `start` is a word of cmd, which does its own quoting.
  const child = spawn(opener.command, opener.args, {
    detached: true,
    stdio: 'ignore',
    windowsVerbatimArguments: true,
    windowsHide: true,
  });
  child.once('error', () => letter.remove());
  child.unref();
  return letter;
}
