/** The go-home plan as a finished document: facts in, everything that the two sheets say out, in one language. */

import type { PlanFacts } from '../homing/basis.ts';
import type { PlanDocument, PlanFinding } from '../homing/document.ts';
import { type GoHomePlan, goHomePlan } from '../homing/plan.ts';
import type { PlanRemark } from '../homing/plan-findings.ts';
import { foodUnit } from '../units/food.ts';
import type { Language } from '../units/language.ts';
import { GRAMS_PER_POUND, grownUnit, type MassUnit } from '../units/mass.ts';
import { type Catalogue, catalogueOf } from './catalogue.ts';
import { runsOf } from './runs.ts';

/** Pure: the same facts give the same document. Works with thin facts and says what is missing. */
export function planDocument(facts: PlanFacts, language: Language = 'en'): PlanDocument {
  const words = catalogueOf(language);
  const w = words.plan;
  const { puppy, house, on } = facts;
  const { sex } = puppy;
  const called = puppy.callName.trim();
  const plan = goHomePlan(facts, called === '' ? w.unnamed(puppy.collar.letter) : called);
  const { name, born, weights } = plan;
  return {
    version: 2,
    kind: 'plan',
    language,
    puppyId: puppy.id,
    made: on,
    rulesFrom: facts.rules.from,
    units: { amount: foodUnit(house.massUnit), weight: grownUnit(house.massUnit) },
    title: w.title(name),
    name,
    sex,
    collar: puppy.collar,
    facts: puppyFacts(plan, words),
    contact: { lead: w.contact, name: house.breederName, address: house.address, phone: house.phone, email: house.email },
    week: weekOf(plan, words),
    missing: plan.missing === null ? '' : w.missing(plan.missing, sex),
    ladder: {
      heading: w.ladder,
      note: w.ladderNote(plan.ladderNote, sex),
      bornOn: born,
      steps: plan.treads.map(({ share: _, ...step }) => step),
      nowDay: plan.nowDay,
    },
    weights: weightsSoFar(plan, words),
    table: tableOf(plan, words),
    byWeight: {
      heading: w.byWeight(sex),
      note: w.byWeightNote(plan.hasExpectation, sex, born, foodUnit(house.massUnit)),
      columns: [...plan.byWeight.columns],
      rows: plan.byWeight.rows.map(({ age, grams }) => ({ age: w.byWeightAge(age.code, age.months), grams: [...grams] })),
    },
    notes: plan.notes.map((found) => {
      const { heading, text } = words.planNote.note(found, sex);
      return { key: found.code, heading, runs: runsOf(text) };
    }),
    vet: vetBox(plan, words),
    last: w.last,
    foot: w.foot(name, on, plan.rulesFrom),
    findings: plan.remarks.map((r) => findingOf(r, plan, words)),
    provenance: [...words.planNote.provenance(weights.anchor, weights.adult, facts.rules.rules, plan.food, house.massUnit)],
  };
}

function puppyFacts(plan: GoHomePlan, { plan: w, plain }: Catalogue): PlanDocument['facts'] {
  const { litter, puppies, puppy, house, born, bornAt, weights } = plan;
  const grown = weights.adult === null ? '' : w.grown(grownText(weights.adult.kg, house.massUnit, plain));
  const written = (texts: readonly string[]) => texts.map((t) => t.trim()).filter((t) => t !== '');
  return [
    { label: w.collar, value: w.collarIs(puppy.collar.colour, puppy.collar.pattern, puppy.collar.letter) },
    { label: w.born, value: w.bornIs(born, bornAt) },
    { label: w.sex, value: w.sexIs(puppy.sex, puppy.birthOrder, puppies.length) },
    { label: w.breed, value: written([litter.breed, grown]).join(', ') },
    { label: w.parents, value: written([litter.dam, litter.sire]).join(w.and) },
    { label: w.marks, value: puppy.markings.trim() },
  ].filter((f) => f.value !== '');
}

function grownText(kg: number, unit: MassUnit, figure: Catalogue['plain']): string {
  const value = grownUnit(unit) === 'kg' ? kg : (kg * 1000) / GRAMS_PER_POUND;
  return `${value < 9.5 ? figure(value, 1) : Math.round(value)}\u00a0${grownUnit(unit)}`;
}

function weekOf({ week, puppy, house }: GoHomePlan, words: Catalogue): PlanDocument['week'] {
  if (week === null) return null;
  const w = words.plan;
  return {
    heading: w.weekHeading(week.code),
    dates: words.dateSpan(week.from, week.to),
    dayGrams: week.dayGrams,
    lead: w.weekMeals(week.meals.length),
    meals: week.meals.map((m) => ({ ...m })),
    basis: week.basis === null ? '' : w.weekBasis(week.basis, puppy.sex, house.massUnit),
  };
}

function weightsSoFar(
  { weights, puppy, house, on, born, birthGrams, standing }: GoHomePlan,
  words: Catalogue,
): PlanDocument['weights'] {
  const w = words.plan;
  const { anchor, own, band } = weights;
  const said = (grams: number) => words.weightText(grams, house.massUnit);
  const facts =
    anchor === null
      ? []
      : [
          {
            figure: said(anchor.grams),
            text: w.lastWeighed(anchor.on === on ? null : anchor.on, words.ageInWords(born, anchor.on)),
          },
          ...(birthGrams === null ? [] : [{ figure: said(birthGrams), text: w.atBirth }]),
          ...(standing === null ? [] : [{ figure: '', text: w.standing(standing, puppy.sex) }]),
        ];
  return {
    heading: w.soFar(puppy.sex),
    note: w.weighed(own.length),
    own: own.map((p) => ({ day: twoDecimals(p.ageDays), grams: p.grams })),
    band: band.map((b) => ({ day: twoDecimals(b.ageDays), low: b.low, high: b.high })),
    facts,
  };
}

function tableOf({ table, name, isNearlyGrown, puppy, born, house }: GoHomePlan, words: Catalogue): PlanDocument['table'] {
  const w = words.plan;
  const figure = (grams: number) => weightFigure(grams, house.massUnit, words.fixed);
  return {
    heading: w.table(name, isNearlyGrown),
    note: w.tableNote(puppy.sex, born),
    columns: [...table.columns],
    groups: table.groups.map(({ key, rows }) => ({
      heading: w.group(key),
      rows: rows.map((row) => ({
        age: w.rowAge(row.age),
        from: words.dateShort(row.from),
        fromDay: row.fromDay,
        weight: row.weight === null ? '' : w.fromTo(figure(row.weight.low), figure(row.weight.high)),
        share: row.share === null ? '' : words.fixed(row.share * 100, 1),
        dayGrams: row.dayGrams,
        meals: row.meals,
        mark: row.mark,
      })),
    })),
  };
}

/** A figure in the unit of the heading: two decimals under 1, one under 10, none above. */
function weightFigure(grams: number, unit: MassUnit, fixed: Catalogue['fixed']): string {
  const value = grams / (grownUnit(unit) === 'kg' ? 1000 : GRAMS_PER_POUND);
  return fixed(value, value < 0.995 ? 2 : value < 9.95 ? 1 : 0);
}

/** When to call the vet; the buyer writes a number on the line. */
function vetBox({ house }: GoHomePlan, { planNote: { vet: w } }: Catalogue): PlanDocument['vet'] {
  const [name, phone] = [house.vetName.trim(), house.vetPhone.trim()];
  return {
    heading: w.heading,
    runs: runsOf(w.text),
    lines: [{ label: w.yours, name: '', phone: '' }, ...(name === '' && phone === '' ? [] : [{ label: w.ours, name, phone }])],
  };
}

const SEVERITIES: Record<Exclude<PlanRemark['code'], 'level' | 'feeding'>, PlanFinding['severity']> = {
  held: 'caution',
  'no-weight': 'warning',
  'no-grown-weight': 'caution',
  'too-young': 'note',
  'no-phone': 'caution',
};

function findingOf(
  remark: PlanRemark,
  { name, house }: GoHomePlan,
  { plan: w, growthFinding, finding: feeding }: Catalogue,
): PlanFinding {
  if (remark.code === 'feeding') {
    return { severity: remark.finding.severity, ...feeding.say(remark.finding, house.massUnit) };
  }
  if (remark.code === 'level') {
    const said = remark.finding === null ? '' : growthFinding.puppy(remark.finding, house.massUnit);
    return { severity: remark.level === 'act' ? 'warning' : 'caution', ...w.levelRemark(name, remark.level, said) };
  }
  const { sentence, mend, source } = w.remark(name, remark.code);
  return { severity: SEVERITIES[remark.code], sentence, mend, source: source ?? w.ownSource };
}

function twoDecimals(n: number): number {
  return Math.round(n * 100) / 100;
}
