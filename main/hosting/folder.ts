/** Where the data lives unless she names a folder: the platform's place for a program's own data, the same for both hosts. */
import { posix, win32 } from 'node:path';

interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** The absolute path of the data folder. A variable that is empty or not absolute counts as not set. */
export function dataFolder({ platform, env, home }: Surroundings): string {
  if (platform === 'win32') {
    const roaming = env['APPDATA'];
    return win32.join(roaming && win32.isAbsolute(roaming) ? roaming : win32.join(home, 'AppData', 'Roaming'), 'Whelpside');
  }
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Whelpside');
  const data = env['XDG_DATA_HOME'];
  return posix.join(data && posix.isAbsolute(data) ? data : posix.join(home, '.local', 'share'), 'whelpside');
}
