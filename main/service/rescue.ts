/**
 * The program over a data file that can't be opened: it says what is wrong, names the copies to go back to and what can still be
 * read, or the other ways on, and does what she chooses. Until then it carries nothing else and changes nothing.
 */

import { accessSync, constants, statSync } from 'node:fs';
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
import { goBackTo, replaceByNew, replaceBySalvage, type Salvageable, salvageable, takeFileAlong } from '../store/replace.ts';
import { type DispatchHooks, dispatcher } from './dispatch.ts';
import { faultsOf } from './fault-log.ts';
import { chosenFolder, foundBackup, usable } from './folders.ts';
import type { Handlers, HandlersOf, Reopening } from './handlers.ts';
import type { Program, ProgramOptions } from './options.ts';

/** What is wrong with the file itself, and this program's to mend. */
const MENDABLE = ['damaged', 'changed', 'older', 'newer', 'foreign', 'update'] as const;
type Mendable = (typeof MENDABLE)[number];
type Problem = Rescue['problem'];

/** The error of a start, as the problem it is: a stranger's file is none of hers to mend. */
function problemOf({ code }: StoreError, folder: string): Problem {
  return code === 'foreign' && !hadOwnFile(folder) ? 'stranger' : code;
}

function isMendable(problem: Problem): problem is Mendable {
  return MENDABLE.some((code) => code === problem);
}

type Ways = Pick<
  HandlersOf<'records'>,
  | 'records.rescue'
  | 'records.restore'
  | 'records.salvage'
  | 'records.takeAsItIs'
  | 'records.tryAgain'
  | 'records.elsewhere'
  | 'records.beginAnew'
  | 'records.faults'
  | 'records.backupsIn'
  | 'records.chooseFolder'
>;

/** How the program goes on: `again` opens the same folder, or another, and answers whether the file is open now. */
export interface GoingOn {
  readonly reopening: Reopening;
  readonly again: (folder?: string) => boolean;
}

/** Carries the ways on, over a file that is not in order with its folder's lock held. Throws no StoreError. */
export function openRescue(options: ProgramOptions, on: GoingOn, error: StoreError, hooks: DispatchHooks): Program {
  const problem = problemOf(error, options.folder);
  if (!isMendable(problem)) return openBarred(options, on, error, problem, hooks);
  let unlock: () => void;
  try {
    unlock = lockFolder(options.folder);
  } catch (barred) {
    if (!(barred instanceof StoreError)) throw barred;
    return openBarred(options, on, barred, problemOf(barred, options.folder), hooks);
  }
  const ways = { ...waysOn(options, on, problem), ...mendingWays(options, on.reopening, problem) };
  const refuse = new ContractFailure('damaged', 'the data file is not in order');
  return {
    dispatch: dispatcher({ ...refusals(refuse), ...ways }, hooks),
    isRescue: () => true,
    barredBy: () => null,
    close: unlock,
  };
}

/** Something stands in the way, and nothing is wrong with a file of hers. */
function openBarred(options: ProgramOptions, on: GoingOn, error: StoreError, problem: Problem, hooks: DispatchHooks): Program {
  const notNow = (): never => {
    throw new ContractFailure('refused', 'the data file can not be reached');
  };
  const ways: Ways = {
    ...waysOn(options, on, problem),
    'records.restore': notNow,
    'records.salvage': notNow,
    'records.takeAsItIs': notNow,
    'records.beginAnew': notNow,
  };
  const dispatch = dispatcher({ ...refusals(error), ...ways }, hooks);
  return { dispatch, isRescue: () => true, barredBy: () => error, close: () => undefined };
}

type Mending = 'records.restore' | 'records.salvage' | 'records.takeAsItIs' | 'records.beginAnew';

function mendingWays({ folder, now }: ProgramOptions, reopening: Reopening, code: Mendable): Pick<Ways, Mending> {
  const file = dataFile(folder);
  const place = () => ({ folder, file, now: now() });
  return {
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
  };
}

function waysOn(options: ProgramOptions, { again }: GoingOn, problem: Problem): Omit<Ways, Mending> {
  const { folder, chooseFolder = null } = options;
  let found: Rescue | null = null;
  return {
    'records.rescue': () => {
      found ??= rescueOf(options, problem);
      return { rescue: found };
    },
    'records.tryAgain': () => ({ open: again() }),
    'records.elsewhere': ({ folder: to, takeAlong }) => {
      goElsewhere(folder, usable(to), takeAlong ? problem : null);
      again(to);
      return { remembered: options.onMoved?.(to) ?? false };
    },
    'records.faults': () => faultsOf(folder),
    'records.backupsIn': ({ folder: from }) => ({ backups: backupsIn(usable(from)) }),
    'records.chooseFolder': async () => ({ folder: await chosenFolder(chooseFolder) }),
  };
}

/** Makes the other folder ready, or throws why it can't be one; nothing is touched then. */
function goElsewhere(folder: string, to: string, takenAlong: Problem | null): void {
  lockFolder(to)();
  if (takenAlong === null) return;
  const file = dataFile(folder);
  if (!canTakeAlong(file, takenAlong)) throw new ContractFailure('refused', 'the data file can not be taken along');
  if (statSync(dataFile(to), { throwIfNoEntry: false }) !== undefined)
    throw new ContractFailure('conflict', 'a data file is there');
  takeFileAlong(file, dataFile(to));
}

/** One that is open in another window would go on in two places. */
function canTakeAlong(file: string, problem: Problem): boolean {
  return (problem === 'read-only' || problem === 'disk-full') && mayBeRead(file);
}

function mayBeRead(file: string): boolean {
  try {
    accessSync(file, constants.R_OK);
    return true;
  } catch {
    return false;
  }
}

function refusals(why: Error): Handlers {
  const refuse = (): never => {
    throw why;
  };
  return Object.fromEntries(Object.keys(OPERATIONS).map((name) => [name, refuse])) as unknown as Handlers;
}

function rescueOf({ folder, chooseFolder = null, usualFolder }: ProgramOptions, problem: Problem): Rescue {
  const file = dataFile(folder);
  const isThere = isFile(file);
  const found = isMendable(problem) ? salvageable({ folder, file }) : null;
  return {
    problem: isThere || !isMendable(problem) ? problem : 'lost',
    file,
    bytes: isThere ? fileBytes(file) : 0,
    readable: found?.counts ?? null,
    backups: listBackups(folder).map((backup) => lookedThrough(folder, backup, found)),
    canChooseFolder: chooseFolder !== null,
    canTakeAlong: canTakeAlong(file, problem),
    usualFolder: usualFolder === undefined || usualFolder === folder ? null : usualFolder,
  };
}

function isFile(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false }) !== undefined;
  } catch {
    return false; // a part of the path is a file, or may not be entered
  }
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
