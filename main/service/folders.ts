/** Folders that a person names: looked at before anything is written into them. */
import { realpathSync, statSync } from 'node:fs';
import { isAbsolute } from 'node:path';
import { ContractFailure } from '../../core/contract/result.ts';
import { findBackup } from '../store/backup.ts';

/** The folder, when it is one and is there; else `bad-input` or `not-found` for the field `folder`. It is never made. */
export function usable(folder: string): string {
  if (!isAbsolute(folder) || folder.includes('\0')) {
    throw new ContractFailure('bad-input', 'not the whole path of a folder', 'folder');
  }
  if (!isFolder(folder)) throw new ContractFailure('not-found', 'there is no such folder', 'folder');
  return folder;
}

/** A folder that a copy may be written into: not one in which a system shows its devices and itself as files. */
export function usableForCopies(folder: string): string {
  const path = usable(folder);
  if (DEVICES.test(realpathSync(path))) throw new ContractFailure('bad-input', 'a folder of devices', 'folder');
  return path;
}

const DEVICES = process.platform === 'win32' ? /^[\\/]{2}[.?][\\/](?![A-Za-z]:)/ : /^\/(?:dev|proc|sys)(?:\/|$)/;

function isFolder(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  } catch {
    return false; // a part of the path is a file, or may not be entered
  }
}

/** The path of a copy that is there: in the folder, or (null) among the data folder's own. */
export function foundBackup(dataFolder: string, from: string | null, file: string): string {
  const path = findBackup(dataFolder, from === null ? null : usable(from), file);
  if (path === null) throw new ContractFailure('not-found', 'there is no such copy', 'file');
  return path;
}

/** What the host's dialog answers; `refused` where it has none. */
export async function chosenFolder(choose: (() => Promise<string | null>) | null): Promise<string | null> {
  if (choose === null) throw new ContractFailure('refused', 'this host has no dialog for folders');
  return await choose();
}
