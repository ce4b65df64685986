/** The prep sheet as a finished document, worded and rounded in one language. */
import { dateOf } from '../calendar/clock.ts';
import type { CivilDate } from '../calendar/day.ts';
import { keepingOf } from '../feeding/keeping.ts';
import { mealClock } from '../feeding/meals.ts';
import { rulesOn, writtenFrom } from '../feeding/rules.ts';
import type { Puppy } from '../litter/litter.ts';
import { foodUnit } from '../units/food.ts';
import type { Language } from '../units/language.ts';
import { type PrepAmounts, type PrepBowl, prepSheet } from '../weaning/prep.ts';
import type { PrepDocument } from '../weaning/prep-document.ts';
import { type WeaningDay, type WeaningInput, weaningDay } from '../weaning/weaning.ts';
import { type WeaningFacts, weaningInputOf } from '../weaning/weaning-input.ts';
import { type Catalogue, catalogueOf } from './catalogue.ts';

/** The sheet of a day; null when nothing is fed from bowls on it. */
export function prepDocument(facts: WeaningFacts, day: CivilDate, language: Language = 'en'): PrepDocument | null {
  const input = weaningInputOf(facts, day);
  if (input === null) return null;
  const words = catalogueOf(language);
  const w = words.prep;
  const { litter, puppies, today } = facts;
  const litterName = words.litterName(litter);
  const { rules, food, unit, plan } = input;
  const foodName = words.foods.nameOf(food);
  const fed = weaningDay(input, day);
  const sheet = prepSheet(fed, plan.atOneBowl, food);
  if (fed.step === null || sheet.bowls.length === 0) return null;
  const step = plan.steps[fed.step];
  const several = new Set(sheet.bowls.map((b) => b.texture)).size > 1;
  const of = (a: PrepAmounts) => ({
    amounts: a.byMeal.map((g) => words.foodFigure(g, unit)),
    day: words.foodFigure(a.day, unit),
  });
  return {
    version: 1,
    kind: 'prep',
    language,
    litterId: litter.id,
    day,
    made: today,
    title: w.titleOf(litterName, day),
    name: w.file(litterName, day),
    heading: w.title,
    sub: w.sub(litterName, day, dateOf(litter.whelpedAt)),
    top: [step === undefined ? '' : w.textureOf(step.texture, foodName), w.fromBowl(step?.share ?? 1)],
    unit: foodUnit(unit),
    times: sheet.meals.map((m) => mealClock(rules, m, sheet.meals.length)),
    bowls: sheet.bowls.map((bowl, n) => bowlOf(input, puppies, bowl, n, several, words)),
    totals: [
      { label: w.wholeLitter(foodName), ...of(sheet.food), strong: true },
      ...(sheet.water.day > 0 ? [{ label: w.water, ...of(sheet.water), strong: false }] : []),
    ],
    notes: notesOf(input, fed, words),
    foot: w.foot(today, writtenFrom(rulesOn(facts.rules, litter.id, day))),
  };
}

function bowlOf(
  input: WeaningInput,
  puppies: readonly Puppy[],
  bowl: PrepBowl,
  n: number,
  several: boolean,
  { prep: w, foodFigure }: Catalogue,
): PrepDocument['bowls'][number] {
  const figure = (grams: number) => foodFigure(grams, input.unit);
  const rows = bowl.puppies.flatMap((p) => {
    const collar = puppies.find((x) => x.id === p.puppyId)?.collar ?? null;
    const name = input.puppies.find((x) => x.id === p.puppyId)?.name ?? '';
    const note = p.holds ? w.holds(p.share) : '';
    return collar === null ? [] : [{ collar, name, note, amounts: p.byMeal.map(figure), day: figure(p.day) }];
  });
  return { name: w.bowl(n + 1, several ? bowl.texture : null), rows, amounts: bowl.food.byMeal.map(figure) };
}

function notesOf(input: WeaningInput, fed: WeaningDay, { prep: w }: Catalogue): PrepDocument['notes'] {
  const held = fed.puppies.flatMap((p) => (p.holds ? (input.puppies.find((x) => x.id === p.puppyId)?.name ?? []) : []));
  const bone = fed.puppies.some((p) => p.texture === 'mince with soft bone');
  return [
    { ...w.bowlDown(held, input.plan.liftMinutes, bone), lines: 2 },
    { ...w.hands(keepingOf(input.rules)), lines: 0 },
  ];
}
