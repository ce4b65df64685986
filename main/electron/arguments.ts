/** The arguments of the desktop host. Electron and the system put their own among them, so that unknown ones are passed over. */
import { isAbsolute, resolve } from 'node:path';
import { parseArgs } from 'node:util';

export interface DesktopArguments {
  /** Absolute path, or null for the platform's place. */
  readonly data: string | null;
  readonly demo: boolean;
}

/** `from` is the folder that a relative path starts at. */
export function readDesktopArguments(args: readonly string[], from: string): DesktopArguments {
  const { values } = parseArgs({
    args: [...args],
    strict: false,
    options: { data: { type: 'string' }, demo: { type: 'boolean' } },
  });
  const { data } = values;
  const named = typeof data === 'string' && data !== '' ? data : null;
  return { data: named === null || isAbsolute(named) ? named : resolve(from, named), demo: values.demo === true };
}
