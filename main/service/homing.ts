/** Go-home plans: made from the facts, kept as they were handed over, printed into the papers folder. */

import { dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { HandedPlan } from '../../core/contract/homing.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { rulesOn } from '../../core/feeding/rules.ts';
import type { PlanDocument } from '../../core/homing/document.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { planDocument } from '../../core/words/plan-paper.ts';
import { readingsOf } from '../store/growth.ts';
import { insertPlan, plansOf } from '../store/homing.ts';
import { puppiesOf, setState } from '../store/litter.ts';
import { storedHouse } from '../store/people.ts';
import { aboutPuppy, litterOf, puppyOf } from './facts.ts';
import { rulesFacts } from './feeding.ts';
import { foodOn } from './food.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

export function homingHandlers(c: Context): HandlersOf<'homing'> {
  const { db } = c.store;
  return {
    'homing.handOver': ({ puppyId, on, leaves, why }) => {
      const puppy = puppyOf(c, puppyId);
      if (puppy.state === 'died') throw new ContractFailure('refused', 'the puppy has died');
      const document = planOf(c, puppyId, on, why);
      requireReason(document);
      const plan: HandedPlan = {
        id: c.newId(),
        puppyId,
        handedOver: on,
        recordedInstant: c.now().instant,
        title: document.title,
      };
      return command(c, 'homing.handOver', (recorder) => {
        insertPlan(recorder, plan, document);
        if (leaves) setState(recorder, puppyId, 'home', on);
        return { value: { plan }, about: aboutPuppy(puppy, null) };
      });
    },

    'homing.handedOver': ({ litterId }) => ({ plans: plansOf(db, litterOf(c, litterId).id) }),
  };
}

/** A plan that a warning stands against is neither printed nor handed over without her reason on it. */
export function requireReason(document: PlanDocument): void {
  if (document.why === '' && document.findings.some((f) => f.blocks)) {
    throw new ContractFailure('refused', 'a warning stands and no reason is given', 'why');
  }
}

/** The plan of that day, from the facts as they are; `why` it is made though a warning stands. */
export function planOf(c: Context, puppyId: string, on: CivilDate, why = ''): PlanDocument {
  const { db } = c.store;
  const puppy = puppyOf(c, puppyId);
  if (on < dateOf(puppy.bornAt)) throw new ContractFailure('bad-input', 'the day is before the birth', 'on');
  const litter = litterOf(c, puppy.litterId);
  const puppies = puppiesOf(db, litter.id);
  const readings = readingsOf(db, litter.id);
  const rules = rulesOn(rulesFacts(c), litter.id, on);
  const food = foodOn(c, litter.id, rules.rules, dateOf(puppy.bornAt), on);
  return planDocument({ litter, puppies, puppy, readings, rules, food, house: storedHouse(db) ?? DEFAULT_HOUSE, on, why });
}
