/** Sentences of the page Care: chips, and the arithmetic of a dose. */
import type { Dose, DoseRefusal, DoseRemark } from '../../care/dose.ts';
import { type ChipFault, type ChipIssuer, chipGroups } from '../../care/microchip.ts';
import { counted, fixed } from './figures.ts';

const REGIONS = new Intl.DisplayNames('en-GB', { type: 'region' });

/** What is wrong with a number, and what to do. */
export function chipFault(fault: ChipFault): string {
  switch (fault.code) {
    case 'chip-characters':
      return 'A chip’s number is made of figures only. Type it again, or scan it.';
    case 'chip-length':
      return fault.digits === 0
        ? 'Scan the chip, or type its number.'
        : `${fault.digits} figures; a chip’s number has 15. Type it again, or scan it.`;
    case 'chip-animal-too-large':
      return 'No chip can have this number: its last twelve figures are too large. Type it again, or scan it.';
    case 'chip-no-issuer':
      return 'No chip begins with 000. Type it again, or scan it.';
  }
}

/** Who gave the number out, in a few words. */
export function chipIssuer(issuer: ChipIssuer): string {
  switch (issuer.by) {
    case 'country':
      return `country code: ${REGIONS.of(issuer.region) ?? issuer.region}`;
    case 'maker':
      return `maker’s code ${issuer.prefix}`;
    case 'makers-together':
      return 'maker’s code 900, shared by several';
    case 'test':
      return 'a test number, not for animals';
    case 'nobody':
      return `${issuer.prefix} is no country’s and no maker’s code: look at the number again`;
    case 'before-iso':
      return 'not a number of the standard: not every reader reads such a chip, ask your vet';
  }
}

/** "982 0000 0108 8420": in one run the twelve figures of the animal are misread. */
export function chipText(code: string): string {
  return chipGroups(code).join('\u00a0');
}

/** How it is known that the numbers mean this. */
export const CHIP_SOURCE =
  'ISO 11784: fifteen figures, three of the country (ISO 3166-1) or maker and twelve of the animal, at most 274 877 906 943; no check digit. Seen in the animal-recording body’s drawing of the standard; codes 900 to 998 second-hand; 999 and the missing check digit from memory.';

export const careWords = {
  title: 'Care',
  lead: (litter: string, age: string) => `${litter}, ${age}`,
  chips: 'Microchips',
  chipsNote:
    'A chip is put in by somebody trained, before the puppy leaves where the law asks for it: check your local rule, and register the number. A number has no check digit, so scan or type it twice: it is kept when both are the same.',
  chipsSource: 'what the number is checked against',
  chipsNone: 'There are no puppies yet.',
  puppy: 'puppy',
  number: 'number',
  again: 'the same again',
  numberOf: (name: string) => `${name}, number of the chip`,
  againOf: (name: string) => `${name}, the same number again`,
  putIn: 'put in',
  putInOf: (name: string) => `${name}, day the chip was put in`,
  by: 'by',
  byOf: (name: string) => `${name}, who put the chip in`,
  nextOn: 'put in on',
  nextBy: 'by',
  nextNote: 'For the numbers that you write now.',
  different: 'The two numbers are not the same. Scan the chip once more.',
  twice: 'Another puppy has this number. Scan the chip once more.',
  test: 'A number that begins with 999 is for tests only and is in no puppy’s chip. Scan the chip once more.',
  written: (name: string, number: string) => `${name}: ${number}`,
  notWritten: (name: string, why: string) => `${name} is not written. ${why}`,
  takeAway: 'take away',
  takeAwayOf: (name: string) => `Take ${name}’s chip away`,
  takenAway: (name: string) => `${name}’s chip is taken away. Undo brings it back.`,
  before: 'That is before it was born.',
  toCome: 'That day is still to come.',
  count: (n: number, of: number) => (of === 0 ? '' : `${n} of ${of} have their number`),
} as const;

/** Before anything is given. Printed sources beside the ones that have one. */
const CAUTIONS: readonly string[] = [
  'This is arithmetic. What is given, how much and when comes from your vet or from the label of the product in your country.',
  'Copy dose and strength from the pack in your hand: the same drug is sold in several strengths.',
  'A puppy that is ill, dry, cold or behind on weight is given nothing without your vet.',
  'Some herding breeds carry a gene (MDR1) with which certain wormers are dangerous: ask your vet (from memory).',
  'A dam that carries or nurses gets only what the label allows for her.',
  'A treatment does not reach larvae on their way through the body: the repeats belong to it (from memory).',
  'Roundworms infect people, children most of all: wash hands, pick up droppings (ESCCAP guideline 1).',
  'Write down product, batch, expiry, dose, weight and who gave it.',
];

export function doseRefusal(why: DoseRefusal, mass: (grams: number) => string): string {
  switch (why.code) {
    case 'dose-no-weight':
      return 'Weigh it first.';
    case 'dose-weight-old':
      return `Weigh it first: its last weight is ${counted(why.days, 'day')} old.`;
    case 'dose-too-young':
      return `Not under the label’s age: it is ${counted(why.days, 'day')} old, the label says ${why.least}.`;
    case 'dose-too-light':
      return `Not under the label’s weight: it has ${mass(why.grams)}, the label says ${mass(why.least)}.`;
    case 'dose-ask-vet':
      return why.level === 'act' ? 'It is at act: ask your vet first.' : 'It is at watch: ask your vet first.';
    case 'dose-under-a-mark':
      return 'Less than half a mark: it cannot be measured with this. Take a finer one, or ask your vet.';
  }
}

export function doseRemark(remark: DoseRemark): string {
  switch (remark.code) {
    case 'dose-weight-of':
      return `The weight is ${Math.round(remark.hours)} hours old.`;
    case 'dose-rounded':
      return remark.percent > 0
        ? `Rounded up by ${rounded(remark.percent)} %.`
        : `Rounded down by ${rounded(-remark.percent)} %: a finer measure would be nearer.`;
    case 'dose-much':
      return `That is much: ${fixed(remark.mlPer100g, 1)} mL for each 100 g. Is the strength right?`;
  }
}

function rounded(percent: number): string {
  return percent < 1 ? 'less than 1' : fixed(percent, 0);
}

/** "0.6 mL", "0.27 g", "1½ tablets" as figures: "1.5 tablets". */
export function doseAmount(amount: number, unit: Dose['unit'], decimals: 0 | 1 | 2 | 3): string {
  const figure = fixed(amount, decimals);
  return unit === 'tablet' ? `${figure}\u00a0${figure === '1' ? 'tablet' : 'tablets'}` : `${figure}\u00a0${unit}`;
}

export const doseWords = {
  title: 'A dose',
  note: 'Write down what the label or your vet says; nothing is built in and nothing here is kept. The amounts for each puppy stand below.',
  cautions: 'Before you give anything',
  cautionList: CAUTIONS,
  product: 'product',
  productHint: 'for the table below',
  rate: 'dose',
  rateUnit: 'dose is in',
  lightRate: 'dose for light ones',
  lightRateHint: 'only where the label has a second dose; in the same unit',
  lightUpTo: 'light is up to',
  strength: 'strength',
  strengthUnit: 'strength is in',
  strengthIs: (mgPerMl: string) => `${mgPerMl} mg in a millilitre`,
  rateIs: (mgPerKg: string) => `${mgPerKg} mg for a kilogram`,
  /** How the units are written in a choice. */
  units: {
    'mg/kg': 'mg/kg',
    'mg/lb': 'mg/lb',
    'mg/mL': 'mg/mL',
    '%': '%',
    'mg/g': 'mg/g',
    'mg/tablet': 'mg a tablet',
  } as Readonly<Record<string, string>>,
  inUnit: (what: string, unit: string) => `${what}, ${unit}`,
  mark: 'finest mark',
  markHint: {
    mL: 'of the syringe, mL',
    g: 'of the balance or spoon, g',
    tablet: 'part of a tablet, such as 0.5',
  } satisfies Record<Dose['unit'], string>,
  leastDays: 'not under, days',
  leastDaysHint: 'the label’s least age; empty when it names none',
  leastGrams: 'not under',
  leastGramsHint: 'the label’s least weight; empty when it names none',
  examples: { rate: '50', strength: '100', mark: '0.1', days: '14' },
  bothOrNone: 'The second dose needs both: how much, and up to which weight.',
  needed: 'Write down dose, strength and finest mark.',
  weight: 'weight',
  exact: 'exact',
  drawUp: 'to give',
  gives: 'gives',
  givesFigure: (mgPerKg: string) => `${mgPerKg}\u00a0mg/kg`,
  tableOf: (product: string, rate: string, strength: string) =>
    `${product === '' ? 'What you wrote' : product}: ${rate} at ${strength}`,
} as const;
