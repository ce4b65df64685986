/** The program without a host: a data folder, a clock and a way to make paper in; one dispatch out. */
import { dateOf } from '../../core/calendar/clock.ts';
import { backUpDaily } from '../store/backup.ts';
import { lockFolder } from '../store/lock.ts';
import type { Moment } from '../store/moment.ts';
import { openStore, type Store } from '../store/open.ts';
import { type Dispatch, type DispatchHooks, dispatcher, errorOf, failure } from './dispatch.ts';
import { dogsHandlers } from './dogs.ts';
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
      if (!canBeRescued(error)) throw error;
      return openRescue(
        options,
        reopening,
        error.code,
        hooksOf(options, () => undefined),
      );
    }
  });
}

function hooksOf({ onChanged, onFault }: ProgramOptions, beforeCommand: () => void): DispatchHooks {
  return {
    beforeCommand,
    onChanged: (tags) => onChanged?.(tags),
    onFault: (operation, error) => onFault?.(operation, error),
  };
}

function openFacts(options: ProgramOptions, reopening: Reopening, asItIs: boolean): Program {
  const { folder, now, newId, paper, version, chooseFolder = null } = options;
  const store = openStore({ folder, now, asItIs });
  const backUpOnceADay = dailyBackUp(store, now);
  if (!store.isNew) backUpOnceADay();
  const context = { store, now, newId, paper, version, chooseFolder, reopening };
  const dispatch = dispatcher(allHandlers(context), hooksOf(options, backUpOnceADay));
  return { dispatch, isRescue: () => false, close: () => store.close() };
}

/**
 * One program over several openings of its file. When it can't be opened again after it was worked on, each further
 * call tries once more and answers why it can't.
 */
function keptOpen(folder: string, open: (reopening: Reopening, asItIs: boolean) => Program): Program {
  let inside: Program | null = null;
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
  const dispatch: Dispatch = async (name, input) => {
    try {
      if (closed) return failure(errorOf(new Error('the program is closed')));
      inside ??= open(reopening, false);
    } catch (error) {
      return failure(errorOf(error));
    }
    return inside.dispatch(name, input);
  };
  inside = open(reopening, false);
  return {
    dispatch,
    isRescue: () => inside?.isRescue() === true,
    close: () => {
      closed = true;
      inside?.close();
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

const TRY_AGAIN_MS = 10 * 60_000;

/**
 * Makes the day's copy the first time it is called on a day. A copy that can't be made doesn't stop a weighing: the
 * list of copies shows that today's is missing, and it is tried again ten minutes later.
 */
function dailyBackUp(store: Store, now: () => Moment): () => void {
  let doneOn: string = store.isNew ? dateOf(now().local) : '';
  let triedAt = Number.NEGATIVE_INFINITY;
  return () => {
    const moment = now();
    const today = dateOf(moment.local);
    // A clock that was set back counts as time gone by.
    if (today === doneOn || Math.abs(moment.instant - triedAt) < TRY_AGAIN_MS) return;
    triedAt = moment.instant;
    try {
      backUpDaily(store.db, store.folder, moment);
      doneOn = today;
    } catch {
      return;
    }
  };
}
