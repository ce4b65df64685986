/** Weaning: the plan, and the diary of meals, stools, pauses and answers. */

import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { DEFAULT_RULES, ownRulesOn } from '../../core/feeding/rules.ts';
import { foodBook, foodOrDefault } from '../../core/food/catalogue.ts';
import { feedingOf } from '../../core/food/rotation.ts';
import { growthInput } from '../../core/growth/input.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import type { WeaningEvent, WeaningNote } from '../../core/weaning/eaten.ts';
import { type PrepDocument, prepDocument } from '../../core/weaning/prep-document.ts';
import { weaningPuppies } from '../../core/weaning/weaning-puppies.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import { litterRules, rulesVersions } from '../store/feeding.ts';
import { feedings, storedFoods } from '../store/food.ts';
import { readingsOf } from '../store/growth.ts';
import { puppiesOf } from '../store/litter.ts';
import { papersFolder, writePaper } from '../store/papers.ts';
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
import { aboutLitter, aboutPuppy, checkTime, found, litterOf, puppyOf } from './facts.ts';
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
      const born = dateOf(litter.whelpedAt);
      if (plan.starts <= born) throw new ContractFailure('bad-input', 'the first bowl is before the birth', 'plan.starts');
      if (plan.starts > addDays(born, LATEST_START_DAYS))
        throw new ContractFailure('bad-input', 'the first bowl is too late', 'plan.starts');
      return command(c, 'weaning.setPlan', (recorder) => {
        setWeaningPlan(db, recorder, litterId, plan);
        return { value: { plan }, about: aboutLitter(litter) };
      });
    },

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
        const about = puppy === null ? aboutLitter(litter) : aboutPuppy(puppy, null);
        return { value: { event }, about: { ...about, who: `${about.who}: ${whatWasNoted(event.note)}` } };
      });
    },

    'weaning.prepPdf': async ({ litterId, day, paper }) => {
      const document = sheetOf(c, litterId, day);
      if (c.paper === null) throw new ContractFailure('no-printer', 'nothing that can make a PDF was found');
      const bytes = await c.paper.print(document, paper);
      return { file: writePaper(c.store.folder, document.name, bytes), folder: papersFolder(c.store.folder) };
    },

    'weaning.takeBack': ({ eventId }) => {
      const event = found(findWeaningEvent(db, eventId), 'note');
      const litter = litterOf(c, event.litterId);
      return command(c, 'weaning.takeBack', (recorder) => {
        removeWeaningEvent(recorder, eventId);
        const about = aboutLitter(litter);
        return { value: {}, about: { ...about, who: `${about.who}: ${whatWasNoted(event.note)}` } };
      });
    },
  };
}

function sheetOf(c: Context, litterId: string, day: CivilDate): PrepDocument {
  const { db } = c.store;
  const litter = litterOf(c, litterId);
  const plan = weaningPlanOf(db, litterId);
  if (plan === null) throw new ContractFailure('refused', 'there is no plan of weaning');
  const house = storedHouse(db) ?? DEFAULT_HOUSE;
  const today = dateOf(c.now().local);
  const born = dateOf(litter.whelpedAt);
  const all = puppiesOf(db, litterId);
  const fed = all.filter((p) => p.state === 'litter' || p.state === 'kept');
  const version = ownRulesOn(litterRules(db), litterId, today) ?? rulesVersions(db).find((v) => v.from <= today) ?? null;
  const input = {
    plan,
    events: weaningEventsOf(db, litterId),
    rules: version?.rules ?? DEFAULT_RULES,
    food: foodOrDefault(foodBook(storedFoods(db)), feedingOf(feedings(db), litterId).foodId),
    sizeClass: litter.sizeClass,
    puppies: weaningPuppies(litter, fed, growthInput(litter, all, readingsOf(db, litterId), house.scaleStepGrams)),
    today,
    unit: house.massUnit,
  };
  const sheet = prepDocument(
    {
      input,
      litterId,
      litterName: catalogueOf('en').litterName(litter),
      born,
      day,
      made: today,
      rulesFrom: version?.from ?? null,
      collarOf: (id) => all.find((p) => p.id === id)?.collar ?? null,
    },
    catalogueOf('en'),
  );
  if (sheet === null) throw new ContractFailure('refused', 'nothing is fed from bowls on that day', 'day');
  return sheet;
}

const ATE_WORDS = { clean: 'cleaned up', left: 'some left', refused: 'refused' } as const;

/** In the list of things done, beside the name: a meal, a stool, a pause, an answer. */
function whatWasNoted(note: WeaningNote): string {
  switch (note.kind) {
    case 'meal':
      return `${note.meal} meal ${ATE_WORDS[note.ate]}`;
    case 'stool':
      return `${note.stool} stool`;
    case 'pause':
      return note.paused ? 'weaning paused' : 'weaning goes on';
    case 'answer':
      return note.accepted ? 'suggestion taken' : 'suggestion not taken';
  }
}
