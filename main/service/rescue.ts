/**
 * The program over a data file that is not in order: it says what is wrong, names the copies to go back to and what can still be
 * read, and does what she chooses. Until then it carries nothing else and changes nothing.
 */

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { OPERATIONS } from '../../core/contract/operations.ts';
import type { Backup, Counts, Rescue } from '../../core/contract/records.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { backupsFolder, backupsIn, listBackups } from '../store/backup.ts';
import { countsOf, weightIds } from '../store/counts.ts';
import { StoreError } from '../store/fault.ts';
import { isIntact } from '../store/file.ts';
import { lockFolder } from '../store/lock.ts';
import { dataFile, hadOwnFile } from '../store/look.ts';
import { fileBytes } from '../store/records.ts';
import { goBackTo, replaceByNew, replaceBySalvage, type Salvageable, salvageable } from '../store/replace.ts';
import { type DispatchHooks, dispatcher } from './dispatch.ts';
import { faultsOf } from './fault-log.ts';
import { chosenFolder, foundBackup, usable } from './folders.ts';
import type { Handlers, HandlersOf, Reopening } from './handlers.ts';
import type { Program, ProgramOptions } from './options.ts';

const CODES = ['damaged', 'changed', 'older', 'newer', 'foreign', 'update'] as const;
type RescueCode = (typeof CODES)[number];
type Rescuable = StoreError & { readonly code: RescueCode };

/** Whether the file can't be opened because of what is in it, and is this program's to mend. */
export function canBeRescued(error: unknown, folder: string): error is Rescuable {
  if (!(error instanceof StoreError) || !CODES.some((code) => code === error.code)) return false;
  return error.code !== 'foreign' || hadOwnFile(folder);
}

type Ways = Pick<
  HandlersOf<'records'>,
  | 'records.rescue'
  | 'records.restore'
  | 'records.salvage'
  | 'records.takeAsItIs'
  | 'records.beginAnew'
  | 'records.faults'
  | 'records.backupsIn'
  | 'records.chooseFolder'
>;

/** Holds the folder's lock and carries the ways on. StoreError `locked` when another program has the folder. */
export function openRescue(options: ProgramOptions, reopening: Reopening, code: RescueCode, hooks: DispatchHooks): Program {
  const { folder, now, chooseFolder = null } = options;
  const file = dataFile(folder);
  const place = () => ({ folder, file, now: now() });
  const unlock = lockFolder(folder);
  let found: Rescue | null = null;
  const ways: Ways = {
    'records.rescue': () => {
      found ??= rescueOf(options, file, code);
      return { rescue: found };
    },
    'records.restore': ({ folder: from, file: name }) => {
      const copy = foundBackup(folder, from, name);
      return reopening(() => goBackTo(copy, { folder, file }, now()));
    },
    'records.salvage': () => reopening(() => replaceBySalvage(place())),
    'records.takeAsItIs': () => {
      if (code !== 'changed' && code !== 'older') throw new ContractFailure('refused', 'the data file is not whole');
      return reopening(() => ({}), true);
    },
    'records.beginAnew': () => reopening(() => replaceByNew(place())),
    'records.faults': () => faultsOf(folder),
    'records.backupsIn': ({ folder: from }) => ({ backups: backupsIn(usable(from)) }),
    'records.chooseFolder': async () => ({ folder: await chosenFolder(chooseFolder) }),
  };
  return { dispatch: dispatcher({ ...refusals(), ...ways }, hooks), isRescue: () => true, close: unlock };
}

function refusals(): Handlers {
  const refuse = (): never => {
    throw new ContractFailure('damaged', 'the data file is not in order');
  };
  return Object.fromEntries(Object.keys(OPERATIONS).map((name) => [name, refuse])) as unknown as Handlers;
}

function rescueOf({ folder, chooseFolder = null }: ProgramOptions, file: string, code: RescueCode): Rescue {
  const isThere = statSync(file, { throwIfNoEntry: false }) !== undefined;
  const found = salvageable({ folder, file });
  return {
    problem: isThere ? code : 'lost',
    file,
    bytes: isThere ? fileBytes(file) : 0,
    readable: found?.counts ?? null,
    backups: listBackups(folder).map((backup) => lookedThrough(folder, backup, found)),
    canChooseFolder: chooseFolder !== null,
  };
}

function lookedThrough(folder: string, backup: Backup, found: Salvageable | null): Rescue['backups'][number] {
  const copy = join(backupsFolder(folder), backup.file);
  const counts = backup.checked ? wholeCounts(copy) : null;
  const missing = counts === null || found === null ? null : countMissing(found.weights, weightIds(copy));
  return { backup: { ...backup, checked: counts !== null }, counts, missing };
}

function countMissing(weights: ReadonlySet<string>, inCopy: ReadonlySet<string>): number {
  return [...weights].filter((id) => !inCopy.has(id)).length;
}

function wholeCounts(copy: string): Counts | null {
  try {
    return isIntact(copy) ? countsOf(copy) : null;
  } catch {
    return null;
  }
}
