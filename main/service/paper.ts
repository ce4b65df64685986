/** Everything that is printed: its document made from the facts, and the PDF of it in the papers folder. */
import { dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import { addDays } from '../../core/calendar/day.ts';
import type { PaperDocument, PaperOf } from '../../core/contract/paper.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { rulesOn } from '../../core/feeding/rules.ts';
import { foodCatalogue } from '../../core/food/catalogue.ts';
import { DEFAULT_FREEZER } from '../../core/freezer/pack.ts';
import { planFreezer } from '../../core/freezer/plan.ts';
import { GONE_DAYS, PLANNED_DAYS, REMEMBERED_DAYS } from '../../core/freezer/thaw-list.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import { type FreezerPaperFacts, labelsDocument, thawDocument } from '../../core/words/freezer-paper.ts';
import { storedFoods } from '../store/food.ts';
import { packsSince, starters, storedFreezer, thawsSince } from '../store/freezer.ts';
import { keptDocument } from '../store/homing.ts';
import { isBareName, papersFolder, readPaper, writePaper } from '../store/papers.ts';
import { storedHouse } from '../store/people.ts';
import { found } from './facts.ts';
import { rulesFacts } from './feeding.ts';
import { demandBetween } from './freezer-demand.ts';
import type { Context, HandlersOf } from './handlers.ts';
import { planOf, requireReason } from './homing.ts';
import { prepSheetOf } from './weaning.ts';

type Named<N extends keyof HandlersOf<'records'>> = Pick<HandlersOf<'records'>, N>;

export function paperHandlers(c: Context): Named<'records.paper' | 'records.savePaper' | 'records.paperFile'> {
  const { folder } = c.store;
  return {
    'records.paper': ({ of }) => ({ document: documentOf(c, of) }),

    'records.savePaper': async ({ of, paper }) => {
      const document = documentOf(c, of);
      if (document === null) throw new ContractFailure('refused', 'there is nothing to print');
      if (document.kind === 'plan' && document.version === 3 && of.kind !== 'handed-over') requireReason(document);
      if (c.paper === null) throw new ContractFailure('no-printer', 'nothing that can make a PDF was found');
      const bytes = await c.paper.print(document, paper, storedHouse(c.store.db)?.breederName ?? '');
      return { file: writePaper(folder, fileStem(document), bytes), folder: papersFolder(folder) };
    },

    'records.paperFile': ({ file }) => {
      if (!isBareName(file)) throw new ContractFailure('bad-input', 'that is not the name of a paper', 'file');
      return { base64: found(readPaper(folder, file), 'paper').toString('base64') };
    },
  };
}

function documentOf(c: Context, of: PaperOf): PaperDocument | null {
  switch (of.kind) {
    case 'puppy':
      return planOf(c, of.puppyId, of.on, of.why);
    case 'handed-over':
      return found(keptDocument(c.store.db, of.planId), 'plan');
    case 'prep':
      return prepSheetOf(c, of.litterId, of.day);
    case 'thaw':
      return thawDocument(freezerFacts(c, of.now));
    case 'labels':
      return labelsDocument(freezerFacts(c, of.now), of.sheet, of.used);
  }
}

/** A plan is called by its puppy: its file says what it is, and of which day. */
function fileStem(document: PaperDocument): string {
  return document.kind === 'plan' ? catalogueOf(document.language).plan.file(document.name, document.made) : document.name;
}

function freezerFacts(c: Context, now: LocalTime): FreezerPaperFacts {
  const { db } = c.store;
  const today = dateOf(now);
  const untilDay = addDays(today, PLANNED_DAYS - 1);
  const packs = packsSince(db, addDays(today, -GONE_DAYS));
  const { rules } = rulesOn(rulesFacts(c), null, today);
  const plan = planFreezer({
    now,
    untilDay,
    rules,
    settings: storedFreezer(db) ?? DEFAULT_FREEZER,
    packs,
    thaws: thawsSince(db, addDays(today, -GONE_DAYS)),
    starters: starters(db),
    demand: demandBetween(c, addDays(today, -REMEMBERED_DAYS), untilDay),
  });
  const catalogue = foodCatalogue(storedFoods(db));
  const nameOf = (id: string) => {
    const food = catalogue.find(id);
    return food === null ? id : catalogueOf('en').foods.nameOf(food);
  };
  const unit = (storedHouse(db) ?? DEFAULT_HOUSE).massUnit;
  return { now, plan, packs, rules, unit, nameOf };
}
