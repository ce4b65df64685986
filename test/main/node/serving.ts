/** A loopback server over a small built window in a folder of its own, with a program that only notes what it is asked. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Result } from '../../../core/contract/result.ts';
import { readWindowFiles } from '../../../main/hosting/files.ts';
import { PaperSlots } from '../../../main/hosting/slots.ts';
import { createServer, type Served } from '../../../main/node/server.ts';
import { enter } from './client.ts';

export const PAGE = '<!doctype html><html lang="en"><head><title>Window</title></head><body>the window</body></html>';
export const SCRIPT = 'console.log("the window");';
export const OUTSIDE = 'kept outside the window';

/** A folder `window` with a page, and a file beside it that no request may reach. Answers the folder that holds both. */
export function makeWindowFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-serving-'));
  mkdirSync(join(folder, 'window/assets'), { recursive: true });
  writeFileSync(join(folder, 'outside.txt'), OUTSIDE);
  writeFileSync(join(folder, 'window/index.html'), PAGE);
  writeFileSync(join(folder, 'window/assets/app-1f.js'), SCRIPT);
  writeFileSync(join(folder, 'window/assets/app-1f.css'), 'body { margin: 0 }');
  writeFileSync(join(folder, 'window/assets/face-1f.woff2'), new Uint8Array([0x77, 0x4f, 0x46, 0x32, 0xff]));
  writeFileSync(join(folder, 'window/assets/app-1f.js.map'), OUTSIDE);
  writeFileSync(join(folder, 'window/mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  symlinkSync(join(folder, 'outside.txt'), join(folder, 'window/link.txt'));
  return folder;
}

export interface Serving {
  readonly served: Served;
  readonly slots: PaperSlots;
  /** What reached the program: `[name, input]`. */
  readonly reached: (readonly [string, unknown])[];
  /** The cookie header of a session opened with the printed address. */
  readonly cookie: string;
  /** The secret of the tab. */
  readonly header: string;
  close(): Promise<void>;
}

interface Settings {
  readonly limits?: { readonly bytes: number; readonly milliseconds: number };
  readonly headMilliseconds?: number;
  /** Called in the middle of each operation. */
  readonly whileAnswering?: () => void;
}

export async function serve({ whileAnswering = () => undefined, ...settings }: Settings = {}): Promise<Serving> {
  const folder = makeWindowFolder();
  const reached: (readonly [string, unknown])[] = [];
  const slots = new PaperSlots(() => performance.now());
  const dispatch = async (name: string, input: unknown): Promise<Result<unknown>> => {
    reached.push([name, input]);
    whileAnswering();
    return { ok: true, value: { heard: input }, changed: [] };
  };
  const files = readWindowFiles(join(folder, 'window'));
  const served = await createServer({ dispatch, files, slots, port: 0, ...settings });
  const { cookie, secret: header } = await enter(served.address);
  const close = async (): Promise<void> => {
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { served, slots, reached, cookie, header, close };
}
