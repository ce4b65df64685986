/** Weaning: the plan, and the diary of meals, stools, pauses and answers. */

import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { foodCatalogue } from '../../core/food/catalogue.ts';
import { growthInputOf } from '../../core/growth/input.ts';
import { type Litter, type Puppy, puppyName } from '../../core/litter/litter.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import type { WeaningEvent, WeaningNote } from '../../core/weaning/eaten.ts';
import type { PrepDocument } from '../../core/weaning/prep-document.ts';
import type { OwnWeaningFacts } from '../../core/weaning/weaning-input.ts';
import { changedSteps, type WeaningPlan, weaningPlanSchema } from '../../core/weaning/weaning-plan.ts';
import { prepDocument } from '../../core/words/prep-paper.ts';
import { feedings, storedFoods } from '../store/food.ts';
import { readingsOf } from '../store/growth.ts';
import type { About, Written } from '../store/journal.ts';
import { puppiesOf } from '../store/litter.ts';
import { storedHouse } from '../store/people.ts';
import {
  findWeaningEvent,
  insertWeaningEvent,
  removeWeaningEvent,
  removeWeaningPlan,
  setWeaningPlan,
  weaningEventsOf,
  weaningPlanOf,
} from '../store/weaning.ts';
import { aboutLitter, aboutPuppy, checkTime, found, litterOf, puppyOf, wholeOf } from './facts.ts';
import { rulesFacts } from './feeding.ts';
import { type Context, command, type HandlersOf } from './handlers.ts';

/** The first bowl is after the birth and within the first half year. */
const LATEST_START_DAYS = 180;

export function weaningHandlers(c: Context): HandlersOf<'weaning'> {
  const { db } = c.store;
  return {
    'weaning.plan': ({ litterId }) => {
      litterOf(c, litterId);
      return { plan: weaningPlanOf(db, litterId), events: weaningEventsOf(db, litterId) };
    },

    'weaning.setPlan': ({ litterId, plan }) => {
      const litter = litterOf(c, litterId);
      checkStart(litter, plan, 'plan.starts');
      return command(c, 'weaning.setPlan', (recorder) => {
        setWeaningPlan(db, recorder, litterId, plan);
        return { value: { plan }, about: aboutLitter(litter) };
      });
    },

    'weaning.changePlan': ({ litterId, change }) =>
      changePlan(c, 'weaning.changePlan', litterId, (old, litter) => {
        const plan = { ...old, ...change };
        checkStart(litter, plan, 'change.starts');
        return plan;
      }),

    'weaning.changeSteps': ({ litterId, to }) =>
      changePlan(c, 'weaning.changeSteps', litterId, (old, litter) => {
        const steps = changedSteps(old, dateOf(litter.whelpedAt), to);
        if (steps === null) throw new ContractFailure('conflict', 'there is no such step', 'to.place');
        return { ...old, steps };
      }),

    'weaning.dropPlan': ({ litterId }) => {
      const litter = litterOf(c, litterId);
      found(weaningPlanOf(db, litterId), 'plan of weaning');
      return command(c, 'weaning.dropPlan', (recorder) => {
        removeWeaningPlan(recorder, litterId);
        return { value: {}, about: aboutLitter(litter) };
      });
    },

    'weaning.note': (noted) => {
      const { litterId, puppyId, at, instant } = noted;
      const litter = litterOf(c, litterId);
      const puppy = puppyId === null ? null : puppyOf(c, puppyId);
      if (puppy !== null && puppy.litterId !== litterId)
        throw new ContractFailure('bad-input', 'the puppy is of another litter', 'puppyId');
      checkTime(c, at, instant, 'instant');
      if (noted.day < dateOf(litter.whelpedAt)) throw new ContractFailure('bad-input', 'the day is before the birth', 'day');
      const event: WeaningEvent = { ...noted, id: c.newId() };
      return command(c, 'weaning.note', (recorder) => {
        insertWeaningEvent(recorder, event);
        return { value: { event }, about: aboutNote(litter, puppy, event.note) };
      });
    },

    'weaning.takeBack': ({ eventId }) => {
      const event = found(findWeaningEvent(db, eventId), 'note');
      const litter = litterOf(c, event.litterId);
      return command(c, 'weaning.takeBack', (recorder) => {
        removeWeaningEvent(recorder, eventId);
        return { value: {}, about: aboutNote(litter, null, event.note) };
      });
    },
  };
}

/** Of the whole litter, or of one puppy. */
function aboutNote(litter: Litter, puppy: Puppy | null, note: WeaningNote): About {
  if (puppy === null) return { ...aboutLitter(litter), what: { of: 'litter', dam: litter.dam, note } };
  return { ...aboutPuppy(puppy, null), what: { of: 'puppies', names: [puppyName(puppy)], note } };
}

/** What is the litter's own of the facts that weaning is reckoned from. */
export function ownWeaningFacts(c: Context, litter: Litter, puppies: readonly Puppy[]): OwnWeaningFacts {
  const { db } = c.store;
  const house = storedHouse(db) ?? DEFAULT_HOUSE;
  return {
    litter,
    puppies,
    growth: growthInputOf({ litter, puppies, readings: readingsOf(db, litter.id), house }),
    plan: weaningPlanOf(db, litter.id),
    events: weaningEventsOf(db, litter.id),
  };
}

/** Changes the plan that is there; what comes of it must hold as a whole. */
function changePlan(
  c: Context,
  operation: 'weaning.changePlan' | 'weaning.changeSteps',
  litterId: string,
  to: (old: WeaningPlan, litter: Litter) => WeaningPlan,
): Written<{ plan: WeaningPlan }> {
  const { db } = c.store;
  return command(c, operation, (recorder) => {
    const litter = litterOf(c, litterId);
    const plan = wholeOf(weaningPlanSchema.safeParse(to(found(weaningPlanOf(db, litterId), 'plan of weaning'), litter)));
    setWeaningPlan(db, recorder, litterId, plan);
    return { value: { plan }, about: aboutLitter(litter) };
  });
}

function checkStart(litter: Litter, plan: WeaningPlan, field: string): void {
  const born = dateOf(litter.whelpedAt);
  if (plan.starts <= born) throw new ContractFailure('bad-input', 'the first bowl is before the birth', field);
  if (plan.starts > addDays(born, LATEST_START_DAYS)) throw new ContractFailure('bad-input', 'the first bowl is too late', field);
}

/** The prep sheet of a day; null without a plan of weaning, or when nothing is fed from bowls on it. */
export function prepSheetOf(c: Context, litterId: string, day: CivilDate): PrepDocument | null {
  const { db } = c.store;
  const own = ownWeaningFacts(c, litterOf(c, litterId), puppiesOf(db, litterId));
  if (own.plan === null) return null;
  const catalogue = foodCatalogue(storedFoods(db));
  return prepDocument({ ...own, rules: rulesFacts(c), catalogue, feedings: feedings(db), today: dateOf(c.now().local) }, day);
}
