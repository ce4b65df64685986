/** The program without a host: a data folder, a clock and a way to make paper in; one dispatch out. */
import { makeFolder } from '../store/file.ts';
import { lockFolder } from '../store/lock.ts';
import { openStore, type Store } from '../store/open.ts';
import { freshCopy, putBack } from '../store/replace.ts';
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
import { canBeRescued, openRescue } from './rescue.ts';
import { weaningHandlers } from './weaning.ts';

export type { PaperPort, Program, ProgramOptions };

/** Opens the program on its folder. Throws StoreError, with a code and a plain message, when the file can't be opened. */
export function openProgram(options: ProgramOptions): Program {
  return keptOpen(options.folder, (reopening) => openFacts(options, reopening, false));
}

/** As `openProgram`, but a file that is damaged opens too: then the program carries the ways to rescue it, and nothing else. */
export function openProgramOrRescue(options: ProgramOptions): Program {
  return keptOpen(options.folder, (reopening, asItIs) => {
    try {
      return openFacts(options, reopening, asItIs);
    } catch (error) {
      if (!canBeRescued(error, options.folder)) throw error;
      return openRescue(options, reopening, error.code, {
        beforeCommand: () => undefined,
        afterwards: () => undefined,
        onChanged: (tags) => options.onChanged?.(tags),
        onFault: faultsOn(options),
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
  const { folder, now, newId, paper, version, chooseFolder = null, onChanged } = options;
  const store = openStore({ folder, now, asItIs });
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
  return { dispatch, isRescue: () => false, putBackIfGone: () => putBackIfGone(options, store), close };
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

/**
 * One program over several openings of its file. When it can't be opened again after it was worked on, each further
 * call tries once more and answers why it can't.
 */
function keptOpen(folder: string, open: (reopening: Reopening, asItIs: boolean) => Program | Opened): Program {
  let inside: Program | Opened | null = null;
  let closed = false;
  const reopening: Reopening = (work, asItIs = false) => {
    inside?.close();
    inside = null;
    const unlock = lockFolder(folder);
    try {
      return work();
    } finally {
      unlock();
      inside = open(reopening, asItIs);
    }
  };
  /** Nothing is answered that is not there: a file that is gone is put back first, and opened again. */
  const keptThere = (): Program => {
    inside ??= open(reopening, false);
    if ('putBackIfGone' in inside && inside.putBackIfGone()) {
      inside.close();
      inside = null;
      inside = open(reopening, false);
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
  inside = open(reopening, false);
  return {
    dispatch,
    isRescue: () => inside?.isRescue() === true,
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
