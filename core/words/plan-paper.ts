/** The go-home plan as a finished document: facts in, everything that the three sheets say out, in one language. */

import { mealClock } from '../feeding/meals.ts';
import type { PlanFacts } from '../homing/basis.ts';
import type { PlanDocument, PlanFinding } from '../homing/document.ts';
import { type GoHomePlan, goHomePlan } from '../homing/plan.ts';
import type { PlanRemark } from '../homing/plan-findings.ts';
import type { Row } from '../homing/table.ts';
import { foodUnit } from '../units/food.ts';
import type { Language } from '../units/language.ts';
import { GRAMS_PER_POUND, grownUnit, type MassUnit } from '../units/mass.ts';
import { type Catalogue, catalogueOf } from './catalogue.ts';
import { runsOf } from './runs.ts';

const SHEETS = 3;

/** Pure: the same facts give the same document. Works with thin facts and says what is missing. */
export function planDocument(facts: PlanFacts, language: Language = 'en'): PlanDocument {
  const words = catalogueOf(language);
  const w = words.plan;
  const { puppy, house, on } = facts;
  const { sex, collar } = puppy;
  const called = puppy.callName.trim();
  const plan = goHomePlan(facts, called === '' ? w.unnamed(collar.letter) : called);
  const { name, born, weights } = plan;
  const why = facts.why?.trim() ?? '';
  return {
    version: 3,
    kind: 'plan',
    language,
    puppyId: puppy.id,
    made: on,
    rulesFrom: plan.rulesFrom,
    units: { amount: foodUnit(house.massUnit), weight: grownUnit(house.massUnit) },
    title: w.title(name),
    name,
    sex,
    collar,
    collarWords: w.collarWords(collar.letter, collar.colour, collar.pattern),
    about: aboutPuppy(plan, words),
    contact: {
      lead: w.contact,
      name: house.breederName,
      address: house.address,
      phone: house.phone,
      email: house.email,
      phoneLabel: w.phone,
    },
    week: weekOf(plan, words),
    missing: plan.missing === null ? '' : w.missing(plan.missing, sex),
    why: why === '' ? '' : w.why(why),
    next: nextOf(plan, words),
    ladder: {
      heading: w.ladder,
      note: w.ladderNote(plan.ladderNote, sex),
      bornOn: born,
      steps: [...plan.treads],
      nowDay: plan.nowDay,
    },
    vet: vetBox(plan, words),
    table: tableOf(plan, words),
    byWeight: byWeightOf(plan, words),
    kitchen: { heading: w.kitchen, note: w.kitchenNote },
    notes: plan.notes.map((found) => {
      const { heading, text, boxed } = words.planNote.note(found, sex);
      return { key: found.code, heading, runs: runsOf(text), boxed };
    }),
    last: w.last,
    foot: w.foot(name, on, plan.rulesFrom),
    sheets: Array.from({ length: SHEETS }, (_, i) => w.sheet(i + 1, SHEETS)),
    findings: plan.remarks.map((r) => findingOf(r, plan, words)),
    provenance: [...words.planNote.provenance(weights.anchor, weights.adult, facts.rules.rules, plan.food, house.massUnit)],
  };
}

function aboutPuppy(plan: GoHomePlan, words: Catalogue): PlanDocument['about'] {
  const { litter, puppies, puppy, house, on, born, bornAt, weights, standing } = plan;
  const w = words.plan;
  const { collar, sex } = puppy;
  const { anchor, adult } = weights;
  const joined = (by: string, texts: readonly string[]) =>
    texts
      .map((t) => t.trim())
      .filter((t) => t !== '')
      .join(by);
  return [
    w.who(sex, words.ageInWords(born, on), born, bornAt),
    joined(', ', [w.place(puppy.birthOrder, puppies.length), w.parents(litter.sire.trim(), litter.dam.trim())]),
    joined(', ', [litter.breed, adult === null ? '' : w.grown(grownText(adult.kg, house.massUnit, words.plain))]),
    joined('; ', [w.collarIs(collar.colour, collar.pattern), puppy.markings]),
    joined(', ', [
      anchor === null ? '' : w.weighed(anchor.grams, anchor.on === on ? null : anchor.on, house.massUnit),
      standing === null ? '' : w.standing(standing, sex),
    ]),
  ]
    .filter((line) => line !== '')
    .map((line) => runsOf(line));
}

function grownText(kg: number, unit: MassUnit, figure: Catalogue['plain']): string {
  const value = grownUnit(unit) === 'kg' ? kg : (kg * 1000) / GRAMS_PER_POUND;
  return `${value < 9.5 ? figure(value, 1) : Math.round(value)}\u00a0${grownUnit(unit)}`;
}

function weekOf({ week, puppy, house, food, isToy }: GoHomePlan, words: Catalogue): PlanDocument['week'] {
  if (week === null) return null;
  const w = words.plan;
  const unit = house.massUnit;
  const fair = [
    week.basis === null ? '' : w.weekBasis(week.basis, puppy.sex, unit),
    w.fair(week.fair, week.dayGrams, puppy.sex, unit),
    w.gain(week.fair, isToy, puppy.sex, unit),
  ];
  return {
    heading: w.weekHeading(week.code),
    food: runsOf(w.food(words.foods.nameOf(food), w.kcal(food.kcalPer100g, unit))),
    bowls: week.meals.map((m) => ({ ...m })),
    day: w.aDay,
    dayGrams: week.dayGrams,
    until: w.until(week.to),
    fair: runsOf(fair.filter((t) => t !== '').join(' ')),
  };
}

function nextOf({ next, week, house }: GoHomePlan, words: Catalogue): PlanDocument['next'] {
  const first = next[0];
  if (first === undefined || week === null) return null;
  const w = words.plan;
  const unit = house.massUnit;
  const change = next.find((n, i) => n.meals.length !== (next[i - 1] ?? week).meals.length);
  const before = change === undefined ? undefined : (next[next.indexOf(change) - 1] ?? week);
  return {
    heading: w.next,
    note: w.nextNote(first.from, foodUnit(unit)),
    weeks: next.map((n) => ({ from: words.dateShort(n.from), bowls: [...w.bowlLines(n.meals, unit)], changes: n.changes })),
    change:
      change === undefined || before === undefined ? [] : runsOf(w.nextChange(change, change.meals.length < before.meals.length)),
  };
}

function tableOf(plan: GoHomePlan, words: Catalogue): PlanDocument['table'] {
  const { table, name, isNearlyGrown, puppy, born, house, food, weights, on, missing, rules, byWeight } = plan;
  const w = words.plan;
  const unit = house.massUnit;
  const { anchor } = weights;
  const weighed = anchor !== null && anchor.on === on ? weightFigure(anchor.grams, unit, words.fixed, 1) : '';
  const instead = (row: Row) =>
    missing?.code === 'act' ? w.askFirst : w.instead(row.share === null ? '' : words.percentText(row.share, 1));
  return {
    heading: w.table(name, isNearlyGrown),
    note: w.tableNote,
    caption: w.tableCaption(name),
    heads: w.heads(grownUnit(unit), foodUnit(unit)),
    columns: table.columns.map((meal) => ({ name: meal, head: w.mealHead(meal) })),
    groups: table.groups.map(({ key, rows, meals }) => ({
      heading: w.group(key),
      note: w.groupNote(
        key,
        meals.map((meal) => mealClock(rules.rules, meal, meals.length)),
      ),
      rows: rows.map((row) => ({
        age: w.rowAge(row.age),
        months: w.rowMonths(row.age),
        from: words.dateShort(row.from),
        fromDay: row.fromDay,
        weight: row.weight === null ? '' : rangeFigures(row.weight, unit, words),
        weighed: row.mark === 'now' && row.from === on ? weighed : '',
        dayGrams: row.dayGrams,
        instead: row.dayGrams === null ? instead(row) : '',
        meals: row.meals,
        mark: row.mark,
      })),
    })),
    end: runsOf(w.tableEnd(byWeight.ranges, puppy.sex, born, words.foods.nameOf(food), w.kcal(food.kcalPer100g, unit))),
  };
}

/** Both ends with as many decimals as tell them apart: a range is never of no width. */
function rangeFigures({ low, high }: { low: number; high: number }, unit: MassUnit, words: Catalogue): string {
  for (const more of [0, 1, 2] as const) {
    const [from, to] = [low, high].map((grams) => weightFigure(grams, unit, words.fixed, more)) as [string, string];
    if (from !== to) return words.plan.fromTo(from, to);
  }
  return '';
}

/** A figure in the unit of the heading: two decimals under 1, one under 10, none above; so many more if asked. */
function weightFigure(grams: number, unit: MassUnit, fixed: Catalogue['fixed'], more: 0 | 1 | 2 = 0): string {
  const value = grams / (grownUnit(unit) === 'kg' ? 1000 : GRAMS_PER_POUND);
  const digits = (value < 0.995 ? 2 : value < 9.95 ? 1 : 0) + more;
  return fixed(value, Math.min(3, digits) as 0 | 1 | 2 | 3);
}

function byWeightOf({ byWeight, puppy, born, house }: GoHomePlan, words: Catalogue): PlanDocument['byWeight'] {
  const w = words.plan;
  const unit = house.massUnit;
  const { ranges, columns, rows } = byWeight;
  const one = grownUnit(unit) === 'kg' ? 1000 : GRAMS_PER_POUND;
  const at = (figure: string, i: number, of: number) => {
    if (!ranges) return '';
    if (i === 0) return w.upTo(figure);
    return i === of - 1 ? w.from(figure) : figure;
  };
  return {
    heading: w.byWeight(puppy.sex),
    note: runsOf(w.byWeightNote(ranges, puppy.sex, grownUnit(unit), foodUnit(unit))),
    heads: ranges
      ? [w.byWeightHeads.age, w.byWeightHeads.middle, w.byWeightHeads.above]
      : [grownUnit(unit), ...columns.map((grams) => words.plain(grams / one, 2))],
    rows: rows.map((row) => ({
      age: w.byWeightAge(row.age),
      cells: row.cells.map((cell, i) => ({
        at: at(words.fixed(cell.at / one, row.decimals), i, row.cells.length),
        grams: cell.grams,
        as: cell.as,
      })),
    })),
    way: runsOf(rows.length === 0 ? '' : w.way(ranges, puppy.sex, born)),
  };
}

/** When to ring the vet, in two tiers, and the numbers; the buyer writes those that nobody has filled in. */
function vetBox({ house, puppy, isToy }: GoHomePlan, { planNote: { vet: w } }: Catalogue): PlanDocument['vet'] {
  const lines = (texts: readonly string[]) => texts.map((t) => runsOf(t));
  const [name, phone, late] = [house.vetName.trim(), house.vetPhone.trim(), house.vetOutOfHours.trim()];
  return {
    now: { ...w.now, first: isToy ? runsOf(w.lowSugar(puppy.sex)) : [], lines: lines(w.nowLines) },
    today: { ...w.today, first: [], lines: lines(w.todayLines(isToy)) },
    lines: [
      { label: w.yours, name: '', phone: '' },
      { label: w.outOfHours, name: '', phone: '' },
      ...(name === '' && phone === '' ? [] : [{ label: w.ours, name, phone }]),
      ...(late === '' ? [] : [{ label: w.oursOutOfHours, name: '', phone: late }]),
    ],
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
    const { finding } = remark;
    const { severity, change = null } = finding;
    const key = `${finding.code} ${'food' in finding ? finding.food.id : ''}`;
    const blocks = severity === 'warning' && finding.code === 'energy-low';
    return { key, severity, blocks, change, ...feeding.say(finding, house.massUnit) };
  }
  if (remark.code === 'level') {
    const said = remark.finding === null ? '' : growthFinding.puppy(remark.finding, house.massUnit);
    const grave = remark.level === 'act';
    return {
      key: `level ${remark.level} ${remark.finding?.code ?? ''}`,
      severity: grave ? 'warning' : 'caution',
      blocks: grave,
      change: null,
      ...w.levelRemark(name, remark.level, said),
    };
  }
  const { sentence, mend, source } = w.remark(name, remark.code);
  return {
    key: remark.code,
    severity: SEVERITIES[remark.code],
    blocks: false,
    sentence,
    mend,
    source: source ?? w.ownSource,
    change: null,
  };
}
