/** The go-home plan of one puppy: facts in, a finished document out. */

import { ageInWords } from '../calendar/age.ts';
import { clockOf, dateOf } from '../calendar/clock.ts';
import { addDays, ageInDays } from '../calendar/day.ts';
import { capital, dateShort, numberWord, weekdayName } from '../calendar/words.ts';
import type { RulesVersion } from '../feeding/rules.ts';
import { MEAL_NAMES, mealCount } from '../food/bowls.ts';
import { DEFAULT_FOOD } from '../food/food.ts';
import { pronouns } from '../litter/pronouns.ts';
import { foodUnit } from '../units/food.ts';
import { GRAMS_PER_POUND, grownUnit, type MassUnit } from '../units/mass.ts';
import { GO_HOME_DAY, type PlanBasis, type PlanFacts } from './basis.ts';
import type { PlanDocument } from './document.ts';
import { LAST_LINE, planNotes, vetBox } from './notes.ts';
import { planFindings } from './plan-findings.ts';
import { planProvenance } from './provenance.ts';
import { byWeightTable, planTable, planTreads, type TableFacts } from './table.ts';
import { FRESH_DAYS, type PlanWeights, planWeights, weightText } from './weights.ts';
import { collarWords, dateInWords, dateSpan, placeWord, whose } from './wording.ts';

/** From this age on the table is too short to be called one to twelve months. */
const NEARLY_GROWN_DAYS = 330;
/** A first tread longer than this is a month, not a week. */
const LONGEST_WEEK = 10;
/** House rules from before this are the ones that the program came with. */
const FIRST_RULES = '1990-01-01';

/** Pure: the same facts give the same document. Works with thin facts and says what is missing. */
export function planDocument(facts: PlanFacts): PlanDocument {
  const { puppy, rules, house, on } = facts;
  const born = dateOf(puppy.bornAt);
  const age = ageInDays(born, on);
  const start = Math.max(age, GO_HOME_DAY);
  const weights = planWeights(facts);
  const adultKg = weights.adult?.kg ?? null;
  const food = facts.food ?? DEFAULT_FOOD;
  const table: TableFacts = { rules: rules.rules, food, born, start, adultKg, at: weights.at, unit: house.massUnit };
  const treads = planTreads(table);
  const name = puppy.callName.trim() === '' ? `Puppy ${puppy.collar.letter}` : puppy.callName.trim();
  const basis: PlanBasis = { ...facts, food, name, born, age, start, weights, treads };
  const unit = foodUnit(house.massUnit);
  const { their, them } = pronouns(puppy.sex);
  const weekdays = `${weekdayName(born)}s`;
  return {
    version: 1,
    language: 'en',
    puppyId: puppy.id,
    made: on,
    rulesFrom: rules.from,
    units: { amount: unit, weight: grownUnit(house.massUnit) },
    title: `${name}: go-home plan`,
    name,
    sex: puppy.sex,
    collar: puppy.collar,
    facts: puppyFacts(basis),
    contact: {
      lead: 'Unsure? Ask me first.',
      name: house.breederName,
      address: house.address,
      phone: house.phone,
      email: house.email,
    },
    week: week(basis),
    missing: treads.length === 0 ? missing(basis) : '',
    ladder: {
      heading: 'The meal ladder',
      note: ladderNote(basis),
      bornOn: born,
      steps: treads.map(({ share: _, ...step }) => step),
      nowDay: age < start ? null : start,
    },
    weights: weightsSoFar(basis),
    table: {
      heading: start < NEARLY_GROWN_DAYS ? `${name}, to twelve months` : `${name}, from now on`,
      note: `Weigh ${them} on ${weekdays}, before breakfast.`,
      ...planTable(table, treads),
    },
    byWeight: {
      heading: `By ${their} real weight`,
      note:
        adultKg === null || weights.anchor === null
          ? `Weigh ${them} on ${weekdays}, and feed this, in ${unit} a day.`
          : `Two ${weekdays} outside the range? Feed this, in ${unit} a day, and ring me.`,
      ...byWeightTable(table),
    },
    notes: planNotes({ rules: rules.rules, sex: puppy.sex, unit, dayGrams: treads[0]?.dayGrams ?? null, adultKg }),
    vet: vetBox(house),
    last: LAST_LINE,
    foot: [`${whose(name)} go-home plan`, `printed ${dateInWords(on)}`, rulesText(rules)].join(' · '),
    findings: planFindings(basis),
    provenance: planProvenance(basis),
  };
}

function rulesText(rules: RulesVersion): string {
  return rules.from < FIRST_RULES ? 'house rules: common practice' : `house rules of ${dateInWords(rules.from)}`;
}

function puppyFacts({ litter, puppies, puppy, house, born, weights }: PlanBasis): PlanDocument['facts'] {
  const place = puppies.length > 1 ? `, ${placeWord(puppy.birthOrder)} born of ${numberWord(puppies.length)}` : '';
  const grown = weights.adult === null ? '' : `about ${grownText(weights.adult.kg, house.massUnit)} grown`;
  const breed = [litter.breed.trim(), grown].filter((t) => t !== '').join(', ');
  const parents = [litter.dam, litter.sire]
    .map((t) => t.trim())
    .filter((t) => t !== '')
    .join(' and ');
  return [
    { label: 'Collar', value: collarWords(puppy.collar) },
    { label: 'Born', value: `${weekdayName(born)} ${dateInWords(born)}, ${clockOf(puppy.bornAt)}` },
    { label: 'Sex', value: `${puppy.sex}${place}` },
    { label: 'Breed', value: breed },
    { label: 'Parents', value: parents },
    { label: 'Marks', value: puppy.markings.trim() },
  ].filter((f) => f.value !== '');
}

function week(basis: PlanBasis): PlanDocument['week'] {
  const { treads, born, start, age, rules } = basis;
  const tread = treads[0];
  if (tread === undefined) return null;
  const days = tread.untilDay - start;
  const meals = MEAL_NAMES.flatMap((name) => {
    const grams = tread.meals[name];
    return grams === undefined ? [] : [{ name, time: rules.rules.mealTimes[name], grams }];
  });
  return {
    heading: age < start ? 'The first week at home' : days > LONGEST_WEEK ? 'This month' : 'This week',
    dates: dateSpan(addDays(born, start), addDays(born, tread.untilDay - 1)),
    dayGrams: tread.dayGrams,
    lead: `in ${numberWord(mealCount(tread.meals))} meals`,
    meals,
    basis: weekBasis(basis),
  };
}

/** From which weight the amount was reckoned; a forecast says that it is one. */
function weekBasis({ weights, house, puppy, start, born, on }: PlanBasis): string {
  const { anchor } = weights;
  const expected = weights.at(start);
  if (anchor === null || expected === null) return '';
  const { their, them } = pronouns(puppy.sex);
  const last = weightText(anchor.grams, house.massUnit);
  if (start <= anchor.ageDays + 1 && anchor.on === on) return `Reckoned from ${last}, weighed today.`;
  const forecast = `Reckoned from ${their} forecast of ${weightText(expected.mid, house.massUnit)}`;
  if (addDays(born, start) > on)
    return `${forecast} at eight weeks; ${last} on ${dateShort(anchor.on)}. Weigh ${them} on the day, and ask for a new plan.`;
  if (anchor.daysAgo > FRESH_DAYS)
    return `${forecast}: last weighed ${anchor.daysAgo} days ago. Weigh ${them}, then feed by ${their} real weight.`;
  return `${forecast}; ${last} on ${weekdayName(anchor.on)}.`;
}

function missing({ weights, puppy, age, start }: PlanBasis): string {
  const { them, their } = pronouns(puppy.sex);
  if (weights.anchor === null)
    return `No weight is written down yet, so no amount can be given. Weigh ${them}, and feed by ${their} real weight: the table on sheet 2.`;
  const when = age < start ? 'for the first week at home' : `from a weight that is ${weights.anchor.daysAgo} days old`;
  return `Without ${their} expected grown weight no amount can be given ${when}. Weigh ${them}, and feed by ${their} real weight: the table on sheet 2.`;
}

function ladderNote({ treads, weights, puppy }: PlanBasis): string {
  const { their, them } = pronouns(puppy.sex);
  if (treads.length === 0) return `It needs a weight. Feed ${them} by ${their} real weight until then.`;
  if (weights.adult === null) return `Only for two weeks: ${their} grown weight is not known. Then feed by ${their} real weight.`;
  return 'Height is the food for one day. Layers are its meals.';
}

function weightsSoFar(basis: PlanBasis): PlanDocument['weights'] {
  const { weights, puppy } = basis;
  const { their } = pronouns(puppy.sex);
  const count = weights.own.length;
  return {
    heading: `${capital(their)} weight so far`,
    note:
      count === 0 ? 'not weighed yet' : count === 1 ? 'weighed once' : count === 2 ? 'weighed twice' : `weighed ${count} times`,
    own: weights.own.map((p) => ({ day: twoDecimals(p.ageDays), grams: p.grams })),
    band: weights.band.map((b) => ({ day: twoDecimals(b.ageDays), low: b.low, high: b.high })),
    facts: weightFacts(basis),
  };
}

function weightFacts({ weights, house, born, puppy, on }: PlanBasis): PlanDocument['weights']['facts'] {
  const { anchor, own } = weights;
  if (anchor === null) return [];
  const first = own[0];
  const day = anchor.on === on ? 'today' : `on ${dateShort(anchor.on)}`;
  const facts = [{ figure: weightText(anchor.grams, house.massUnit), text: `${day}, at ${ageInWords(born, anchor.on)}` }];
  if (first !== undefined && first.ageDays < 1 && own.length > 1)
    facts.push({ figure: weightText(first.grams, house.massUnit), text: 'at birth' });
  const standing = standingText(weights, pronouns(puppy.sex).their);
  return standing === '' ? facts : [...facts, { figure: '', text: standing }];
}

/** "3 % under the middle of her six littermates, and steady." Nobody is called steady for one weight. */
function standingText({ standing, littermates, level, own }: PlanWeights, their: string): string {
  if (standing === null || littermates < 1) return '';
  const percent = Math.round((Math.exp(standing) - 1) * 100);
  const mates = littermates === 1 ? `${their} littermate` : `the middle of ${their} ${numberWord(littermates)} littermates`;
  const where =
    percent === 0
      ? littermates === 1
        ? `As heavy as ${mates}`
        : `At ${mates}`
      : `${Math.abs(percent)}\u00a0% ${percent < 0 ? 'under' : 'over'} ${mates}`;
  return `${where}${level === 'steady' && showsGain(own) ? ', and steady' : ''}.`;
}

/** Whether the weights say anything of the gain now: two within a week, or a row of them. */
function showsGain(own: PlanWeights['own']): boolean {
  const [before, last] = own.slice(-2);
  return own.length > 2 || (before !== undefined && last !== undefined && last.ageDays - before.ageDays <= 7);
}

function grownText(kg: number, unit: MassUnit): string {
  const value = grownUnit(unit) === 'kg' ? kg : (kg * 1000) / GRAMS_PER_POUND;
  return `${value < 9.5 ? Number(value.toFixed(1)) : Math.round(value)}\u00a0${grownUnit(unit)}`;
}

function twoDecimals(n: number): number {
  return Math.round(n * 100) / 100;
}
