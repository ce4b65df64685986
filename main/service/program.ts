/** The program without a host: a data folder, a clock and a way to make paper in; one dispatch out. */
import { StoreError } from '../store/fault.ts';
import { makeFolder } from '../store/file.ts';
import { lockFolder } from '../store/lock.ts';
import { openStore, type Store } from '../store/open.ts';
import { freshCopy, putBack } from '../store/replace.ts';
import { careHandlers } from './care.ts';
import { DayCopies } from './day-copies.ts';
import { type Dispatch, dispatcher, errorOf, failure } from './dispatch.ts';
import { dogsHandlers } from './dogs.ts';
import { noteFault } from './fault-log.ts';
import { feedingHandlers } from './feeding.ts';
import { foodHandlers } from './food.ts';
import { freezerHandlers } from './freezer.ts';
import { growthHandlers } from './growth.ts';
import type { Context, Handlers, PaperPort, Reopening } from './handlers.ts';
import { homingHandlers } from './homing.ts';
import { litterHandlers } from './litter.ts';
import type { Program, ProgramOptions } from './options.ts';
import { peopleHandlers } from './people.ts';
import { recordsHandlers } from './records.ts';
import { type GoingOn, openRescue } from './rescue.ts';
import { weaningHandlers } from './weaning.ts';

export type { PaperPort, Program, ProgramOptions };

/** Opens the program on its folder. Throws StoreError, with a code and a plain message, when the file can't be opened. */
export function openProgram(options: ProgramOptions): Program {
  return keptOpen(options, (at, { reopening }, asItIs) => openFacts(at, reopening, asItIs));
}

/** As `openProgram`, but what can't be opened is a program too, which carries the ways on and nothing else. */
export function openProgramOrRescue(options: ProgramOptions): Program {
  return keptOpen(options, (at, on, asItIs) => {
    try {
      return openFacts(at, on.reopening, asItIs);
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      return openRescue(at, on, error, {
        beforeCommand: () => undefined,
        afterwards: () => undefined,
        onChanged: (tags) => options.onChanged?.(tags),
        onFault: faultsOn(at),
      });
    }
  });
}

/** A program of which the one that stands over it can ask whether its file is still there. */
interface Opened extends Program {
  /** Writes what it holds into a new file, when its own was taken away or exchanged; answers whether it was. */
  putBackIfGone(): boolean;
}

function faultsOn({ folder, now, version, onFault }: ProgramOptions): (operation: string, error: unknown) => void {
  return (operation, error) => {
    noteFault(folder, { now: now(), version, operation, error });
    onFault?.(operation, error);
  };
}

const MINUTE = 60_000;

function openFacts(options: ProgramOptions, reopening: Reopening, asItIs: boolean): Opened {
  const { folder, now, newId, paper, version, chooseFolder = null, onChanged, mustExist = false } = options;
  const store = openStore({ folder, now, asItIs, mustExist });
  const copies = new DayCopies(store, now);
  if (!store.isNew) copies.beforeCommand();
  const context = { store, now, newId, paper, version, chooseFolder, reopening };
  const dispatch = dispatcher(allHandlers(context), {
    beforeCommand: () => {
      copies.beforeCommand();
      copies.whenDue();
    },
    afterwards: () => {
      if (!store.db.open) return; // the act went on with another file
      store.settle();
      copies.afterCommand();
    },
    onChanged: (tags) => onChanged?.(tags),
    onFault: faultsOn(options),
  });
  const watch = setInterval(() => {
    if (store.isThere() && copies.whenDue()) onChanged?.(['records']);
  }, MINUTE).unref();
  const close = (): void => {
    clearInterval(watch);
    if (store.db.open && store.isThere()) copies.atClose();
    store.close();
  };
  return { dispatch, isRescue: () => false, barredBy: () => null, putBackIfGone: () => putBackIfGone(options, store), close };
}

function putBackIfGone(options: ProgramOptions, store: Store): boolean {
  if (!store.db.open || store.isThere()) return false;
  const { folder, file } = store;
  makeFolder(folder);
  const fresh = freshCopy(store.db, file);
  putBack(fresh, { folder, file, now: options.now() });
  faultsOn(options)('data file', new Error('it was taken away while the program ran, and was put back'));
  return true;
}

type Open = (at: ProgramOptions, on: GoingOn, asItIs: boolean) => Program | Opened;

/**
 * One program over several openings of its file, and over another folder when she goes on there. When it can't be opened
 * again after it was worked on, each further call tries once more and answers why it can't.
 */
function keptOpen(options: ProgramOptions, open: Open): Program {
  let at = options;
  let inside: Program | Opened | null = null;
  let closed = false;
  const letGo = (): void => {
    inside?.close();
    inside = null;
  };
  const reopening: Reopening = (work, asItIs = false) => {
    letGo();
    const unlock = lockFolder(at.folder);
    try {
      return work();
    } finally {
      unlock();
      inside = open(at, on, asItIs);
    }
  };
  const again = (folder = at.folder): boolean => {
    letGo();
    if (folder !== at.folder) at = { ...at, folder, mustExist: false };
    inside = open(at, on, false);
    return !inside.isRescue();
  };
  const on = { reopening, again };
  /** Nothing is answered that is not there: a file that is gone is put back first, and opened again. */
  const keptThere = (): Program => {
    inside ??= open(at, on, false);
    if ('putBackIfGone' in inside && inside.putBackIfGone()) {
      letGo();
      inside = open(at, on, false);
    }
    return inside;
  };
  const dispatch: Dispatch = async (name, input) => {
    try {
      if (closed) return failure(errorOf(new Error('the program is closed')));
      const result = await keptThere().dispatch(name, input);
      if (result.ok && !closed) keptThere();
      return result;
    } catch (error) {
      return failure(errorOf(error));
    }
  };
  inside = open(at, on, false);
  return {
    dispatch,
    isRescue: () => inside?.isRescue() === true,
    barredBy: () => inside?.barredBy() ?? null,
    close: () => {
      closed = true;
      try {
        if (inside !== null && 'putBackIfGone' in inside) inside.putBackIfGone();
      } finally {
        inside?.close();
      }
    },
  };
}

/** Every handler there is, in one place. */
export function allHandlers(c: Context): Handlers {
  return {
    ...litterHandlers(c),
    ...growthHandlers(c),
    ...careHandlers(c),
    ...dogsHandlers(c),
    ...foodHandlers(c),
    ...feedingHandlers(c),
    ...weaningHandlers(c),
    ...freezerHandlers(c),
    ...peopleHandlers(c),
    ...homingHandlers(c),
    ...recordsHandlers(c),
  };
}
