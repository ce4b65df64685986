/** The thaw list and the labels as finished documents in one language. */
import { clockOf, dateOf, type LocalTime } from '../calendar/clock.ts';
import type { HouseRules } from '../feeding/rules.ts';
import type { LabelSheet, LabelsDocument, ThawDocument } from '../freezer/paper-document.ts';
import type { FreezerPlan } from '../freezer/plan-shape.ts';
import { type Label, type ListRow, labelsOf, weekRows } from '../freezer/thaw-list.ts';
import type { Language } from '../units/language.ts';
import { type Catalogue, catalogueOf } from './catalogue.ts';
import { eatersWords, namesWords, type Stocked, takesWords } from './thaw-text.ts';

export interface FreezerPaperFacts extends Stocked {
  readonly now: LocalTime;
  readonly plan: FreezerPlan;
  readonly rules: HouseRules;
}

/** The list of seven days; null when nothing has to come out. */
export function thawDocument(facts: FreezerPaperFacts, language: Language = 'en'): ThawDocument | null {
  const words = catalogueOf(language);
  const w = words.freezerPaper;
  const today = dateOf(facts.now);
  const rows = weekRows(facts.plan, today);
  if (rows.length === 0) return null;
  return {
    version: 1,
    kind: 'thaw',
    language,
    made: today,
    title: w.listTitle(today),
    name: w.listFile(today),
    lead: w.lead(facts.rules.thawHours, facts.rules.keepHours),
    heads: { box: w.box, out: w.out, what: w.what, ready: w.ready, useBy: w.useBy, forWhom: w.forWhom },
    days: [...Map.groupBy(rows, (r) => dateOf(r.out))].map(([day, ofDay]) => ({
      heading: words.longDate(day),
      rows: ofDay.map((row) => rowOf(row, facts, words)),
    })),
    foot: w.foot,
    when: w.made(words.timeNear(facts.now, today)),
  };
}

function rowOf(row: ListRow, facts: FreezerPaperFacts, words: Catalogue): ThawDocument['days'][number]['rows'][number] {
  const { dateTime, from, official } = words.freezerPaper;
  const time = (t: LocalTime) => dateTime(dateOf(t), clockOf(t));
  const first = (said: string) => (row.manyTimes ? from(said) : said);
  return {
    out: first(clockOf(row.out)),
    what: takesWords(facts, row.takes, words),
    ready: first(time(row.ready)),
    useBy: first(time(row.useBy)),
    official: row.officialUseBy < row.useBy ? official(time(row.officialUseBy)) : '',
    who: namesWords(row.eaters, words),
  };
}

/** Labels for what thaws; null when nothing does. `used` places of the first sheet are left empty. */
export function labelsDocument(
  facts: FreezerPaperFacts,
  sheet: LabelSheet,
  used: number,
  language: Language = 'en',
): LabelsDocument | null {
  const words = catalogueOf(language);
  const w = words.freezerPaper;
  const today = dateOf(facts.now);
  const labels = labelsOf(facts.plan, facts.packs, today);
  if (labels.length === 0) return null;
  return {
    version: 1,
    kind: 'labels',
    language,
    made: today,
    title: w.labelsTitle,
    name: w.labelsFile(today),
    sheet,
    used,
    useBy: w.useBy,
    labels: labels.map((label) => labelText(label, facts, words)),
  };
}

function labelText(label: Label, { nameOf, unit }: FreezerPaperFacts, words: Catalogue): LabelsDocument['labels'][number] {
  const w = words.freezerPaper;
  const time = (t: LocalTime) => w.dateTime(dateOf(t), clockOf(t));
  const { take } = label;
  const grams = words.foodText(take.grams, unit);
  return {
    food: nameOf(label.foodId),
    amount: take.portions === take.of ? grams : w.partOf(take.portions, take.of, grams),
    by: time(label.useBy),
    foot: w.labelFoot(
      time(label.out),
      time(label.ready),
      label.official < label.useBy ? time(label.official) : null,
      eatersWords(label.eaters, unit, words),
    ),
  };
}
