/** Undo and redo, what was done, copies of the file, and the demo. */

import { ContractFailure } from '../../core/contract/result.ts';
import { backUp, backUpInto, backupsIn, listBackups } from '../store/backup.ts';
import { insertDam, insertDamWeight } from '../store/dogs.ts';
import { insertReading } from '../store/growth.ts';
import { doneList, JournalError, lastDone, nextUndone, type Recorder, redo, undo } from '../store/journal.ts';
import { insertLitter, insertPuppy } from '../store/litter.ts';
import { papersFolder } from '../store/papers.ts';
import { fileBytes, hasDemo, removeDemo, writeUnrecorded } from '../store/records.ts';
import { goBackTo } from '../store/replace.ts';
import { insertWeaningEvent, insertWeaningPlan } from '../store/weaning.ts';
import { type DemoFacts, demoLitters } from './demo.ts';
import { exportHandlers } from './export.ts';
import { faultsOf } from './fault-log.ts';
import { chosenFolder, foundBackup, usable, usableForCopies } from './folders.ts';
import type { Context, HandlersOf } from './handlers.ts';
import { importHandlers } from './import.ts';
import { paperHandlers } from './paper.ts';

export function recordsHandlers(c: Context): HandlersOf<'records'> {
  const { db, folder, file } = c.store;
  return {
    ...importHandlers(c),
    ...exportHandlers(c),
    ...paperHandlers(c),

    'records.status': () => ({
      version: c.version,
      file,
      bytes: fileBytes(file),
      demo: hasDemo(db),
      backups: listBackups(folder),
      papersFolder: papersFolder(folder),
      canUndo: lastDone(db),
      canRedo: nextUndone(db),
      canChooseFolder: c.chooseFolder !== null,
    }),

    'records.done': ({ limit: most }) => ({ done: doneList(db, most) }),

    'records.undo': () => {
      const done = stepped(() => undo(db));
      if (done === null) throw new ContractFailure('nothing-to-undo', 'there is nothing to undo');
      return done;
    },

    'records.redo': () => {
      const done = stepped(() => redo(db));
      if (done === null) throw new ContractFailure('nothing-to-redo', 'there is nothing to redo');
      return done;
    },

    'records.backUp': () => ({ backup: backUp(db, folder, c.now(), 'by-hand') }),

    'records.backUpTo': ({ folder: into }) => ({ backup: backUpInto(db, usableForCopies(into), c.now(), 'by-hand') }),

    'records.backupsIn': ({ folder: from }) => ({ backups: backupsIn(usable(from)) }),

    'records.chooseFolder': async () => ({ folder: await chosenFolder(c.chooseFolder) }),

    'records.restore': ({ folder: from, file: name }) => {
      const copy = foundBackup(folder, from, name);
      const before = backUp(db, folder, c.now(), 'before-restore');
      const { counts } = c.reopening(() => goBackTo(copy, { folder, file }, null));
      return { kept: before.file, counts };
    },

    'records.rescue': () => ({ rescue: null }),
    'records.salvage': () => inOrder(),
    'records.takeAsItIs': () => inOrder(),
    'records.beginAnew': () => inOrder(),
    'records.tryAgain': () => inOrder(),
    'records.elsewhere': () => inOrder(),
    'records.faults': () => faultsOf(folder),

    'records.addDemo': ({ now, utcOffsetMinutes }) => {
      if (hasDemo(db)) throw new ContractFailure('conflict', 'the demo is already there');
      const litters = demoLitters({ now, utcOffsetMinutes, recordedInstant: c.now().instant, newId: c.newId });
      const changed = writeUnrecorded(db, (writer) => {
        for (const facts of litters) insertDemo(c, writer, facts);
      });
      return { value: { litterIds: litters.map(({ litter }) => litter.id) }, changed };
    },

    'records.removeDemo': () => ({ value: {}, changed: removeDemo(db) }),
  };
}

function insertDemo(
  { store: { db } }: Context,
  writer: Pick<Recorder, 'insert'>,
  { litter, puppies, readings, weaning, dam }: DemoFacts,
): void {
  insertLitter(db, writer, litter);
  for (const puppy of puppies) insertPuppy(writer, puppy);
  for (const reading of readings) insertReading(writer, reading);
  if (weaning !== null) {
    insertWeaningPlan(writer, litter.id, weaning.plan);
    for (const event of weaning.events) insertWeaningEvent(writer, event);
  }
  if (dam !== null) {
    insertDam(db, writer, dam.id, dam.fields);
    for (const weight of dam.weights) insertDamWeight(writer, dam.id, weight);
  }
}

function stepped<T>(step: () => T): T {
  try {
    return step();
  } catch (error) {
    if (error instanceof JournalError) throw new ContractFailure('no-way-back', error.message);
    throw error;
  }
}

function inOrder(): never {
  throw new ContractFailure('refused', 'the data file is in order');
}
