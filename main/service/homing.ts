/** Go-home plans: made from the facts, kept as they were handed over, printed into the papers folder. */

import { dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { KeptPlan, PaperOf } from '../../core/contract/homing.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { rulesOn } from '../../core/feeding/rules.ts';
import type { PlanDocument } from '../../core/homing/document.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { planDocument } from '../../core/words/plan-paper.ts';
import { readingsOf } from '../store/growth.ts';
import { insertPlan, keptDocument, plansOf } from '../store/homing.ts';
import { puppiesOf, setState } from '../store/litter.ts';
import { isBareName, papersFolder, readPaper, writePaper } from '../store/papers.ts';
import { storedHouse } from '../store/people.ts';
import { aboutPuppy, found, litterOf, puppyOf } from './facts.ts';
import { rulesFacts } from './feeding.ts';
import { foodOn } from './food.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function homingHandlers(c: Context): HandlersOf<'homing'> {
  const { db, folder } = c.store;
  return {
    'homing.plan': ({ puppyId, on }) => ({ document: planOf(c, puppyId, on) }),

    'homing.handOver': ({ puppyId, on, leaves }) => {
      const puppy = puppyOf(c, puppyId);
      if (puppy.state === 'died') throw new ContractFailure('refused', 'the puppy has died');
      const document = planOf(c, puppyId, on);
      const plan: KeptPlan = { id: c.newId(), puppyId, handedOver: on, recordedInstant: c.now().instant, title: document.title };
      return command(c, 'homing.handOver', (recorder) => {
        insertPlan(recorder, plan, document);
        if (leaves) setState(recorder, puppyId, 'home', on);
        return { value: { plan }, about: aboutPuppy(puppy, null) };
      });
    },

    'homing.kept': ({ litterId }) => ({ plans: plansOf(db, litterOf(c, litterId).id) }),

    'homing.keptDocument': ({ planId }) => ({ document: found(keptDocument(db, planId), 'plan') }),

    'homing.savePdf': async ({ of, paper }) => {
      const document = documentOf(c, of);
      if (c.paper === null) throw new ContractFailure('no-printer', 'nothing that can make a PDF was found');
      const bytes = await c.paper.print(document, paper);
      return { file: writePaper(folder, `${document.name} go-home plan ${document.made}`, bytes), folder: papersFolder(folder) };
    },

    'homing.paperFile': ({ file }) => {
      if (!isBareName(file)) throw new ContractFailure('bad-input', 'that is not the name of a paper', 'file');
      return { base64: found(readPaper(folder, file), 'paper').toString('base64') };
    },
  };
}

function documentOf(c: Context, of: PaperOf): PlanDocument {
  return of.kind === 'kept' ? found(keptDocument(c.store.db, of.planId), 'plan') : planOf(c, of.puppyId, of.on);
}

function planOf(c: Context, puppyId: string, on: CivilDate): PlanDocument {
  const { db } = c.store;
  const puppy = puppyOf(c, puppyId);
  if (on < dateOf(puppy.bornAt)) throw new ContractFailure('bad-input', 'the day is before the birth', 'on');
  const litter = litterOf(c, puppy.litterId);
  const puppies = puppiesOf(db, litter.id);
  const readings = readingsOf(db, litter.id);
  const rules = rulesOn(rulesFacts(c), litter.id, on);
  const food = foodOn(c, litter.id, rules.rules, dateOf(puppy.bornAt), on);
  return planDocument({ litter, puppies, puppy, readings, rules, food, house: storedHouse(db) ?? DEFAULT_HOUSE, on });
}
