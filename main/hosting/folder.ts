/** Where the data lives unless she names a folder: the platform's place for a program's own data, the same for both hosts. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, isAbsolute, posix, win32 } from 'node:path';

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

/**
 * Where it is noted that the house is kept in another folder: beside other programs' settings, since the data folder may
 * be what could not be written.
 */
export function noteOfFolder({ platform, env, home }: Surroundings): string {
  if (platform === 'win32') {
    const local = env['LOCALAPPDATA'];
    return win32.join(local && win32.isAbsolute(local) ? local : win32.join(home, 'AppData', 'Local'), 'Whelpside', 'folder.txt');
  }
  if (platform === 'darwin') return posix.join(home, 'Library', 'Preferences', 'Whelpside', 'folder.txt');
  const settings = env['XDG_CONFIG_HOME'];
  return posix.join(settings && posix.isAbsolute(settings) ? settings : posix.join(home, '.config'), 'whelpside', 'folder.txt');
}

/** The folder that was noted, or null. */
export function notedFolder(note: string): string | null {
  try {
    const folder = readFileSync(note, 'utf8').trim();
    return isAbsolute(folder) ? folder : null;
  } catch {
    return null;
  }
}

/** Notes the folder, or (null) that it is the usual one again. Answers whether that could be written down. */
export function noteFolder(note: string, folder: string | null): boolean {
  try {
    if (folder === null) rmSync(note, { force: true });
    else {
      mkdirSync(dirname(note), { recursive: true, mode: 0o700 });
      writeFileSync(note, `${folder}\n`, { mode: 0o600 });
    }
    return notedFolder(note) === folder;
  } catch {
    return false;
  }
}

export interface House {
  readonly folder: string;
  /** It was chosen once, so that it must be there. */
  readonly mustExist: boolean;
  /** The folder that is usual on this computer. */
  readonly usualFolder: string;
  readonly onMoved: (folder: string) => boolean;
}

/** Which folder a start opens: the one that it was told, else the one that was noted, else the usual one. */
export function houseOf(told: string | null, around: Surroundings): House {
  const usualFolder = dataFolder(around);
  const note = noteOfFolder(around);
  const noted = told === null ? notedFolder(note) : null;
  return {
    folder: told ?? noted ?? usualFolder,
    mustExist: noted !== null,
    usualFolder: told ?? usualFolder,
    // A start that is told its folder is told it again the next time.
    onMoved: (folder) => told === null && noteFolder(note, folder === usualFolder ? null : folder),
  };
}
