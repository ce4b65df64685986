/** Sentences of the paper pages and of the bar above them. What a plan itself says is in its document. */
import type { PaperDocument } from '../../contract/paper.ts';
import type { MealName } from '../../food/bowls.ts';
import { capital, numberWord } from './figures.ts';

const MEALS: Record<MealName, string> = {
  morning: 'Morning',
  forenoon: 'Forenoon',
  midday: 'Midday',
  afternoon: 'Afternoon',
  evening: 'Evening',
  night: 'Night',
};
/** Column heads, in two lines. */
const MEAL_HEADS: Record<MealName, readonly [string, string]> = {
  morning: ['morn-', 'ing'],
  forenoon: ['fore-', 'noon'],
  midday: ['mid-', 'day'],
  afternoon: ['after-', 'noon'],
  evening: ['even-', 'ing'],
  night: ['', 'night'],
};

export const paperWords = {
  sheet: (n: number, of: number) => `sheet ${n} of ${of}`,
  sheetLabel: (name: string, n: number, of: number) => `${name}, sheet ${n} of ${of}`,
  meals: MEALS,
  mealHeads: MEAL_HEADS,
  aDay: 'a day',
  age: 'age',
  from: 'from',
  weight: 'weight',
  share: 'share',
  perCent: '%',
  day: 'day',
  a: 'a',
  tableCaption: (name: string) => `Food of ${name} by age: expected weight, share of it, amount a day and at each meal`,
  byWeightCaption: (unit: string, amount: string) => `Amount a day in ${amount} by age, for each weight in ${unit}`,
  continued: (heading: string) => `${heading}, continued`,
  noAmount: 'by weight',
  name: 'Name',
  phone: 'Telephone',
  littermates: ['littermates: lightest', 'to heaviest'] as const,
  weightsPicture: (name: string, last: string, unit: string) =>
    `Weights of ${name} by age in ${unit}, beside the littermates’ lightest and heaviest. Last: ${last}.`,
  weightsPictureAlone: (name: string, last: string, unit: string) => `Weights of ${name} by age in ${unit}. Last: ${last}.`,
  birth: 'birth',
  week: (n: number) => (n === 1 ? '1 week' : `${n} weeks`),
  writeHere: 'Write the weights here, once a week',
};

const NOT_PRINTED = 'Nothing is printed, so that no line is lost.';
const CLIPPED: Record<PaperDocument['kind'], (where: string) => string> = {
  plan: (where) =>
    `Not everything fits on ${where}, even in the smallest print. ${NOT_PRINTED} Shorten the longest name, address or note, then come back.`,
  prep: () => `Not everything fits on one sheet, even in the smallest print. ${NOT_PRINTED} Let more puppies share a bowl.`,
  thaw: () => `Not everything fits on the sheet. ${NOT_PRINTED}`,
  labels: () => `Not everything fits on the sheet. ${NOT_PRINTED}`,
};

const NO_PLAN = 'No puppy of this litter is waiting for its plan.';
/** What is said when there is nothing to print, by what was asked for. */
const NOTHING: Record<'puppy' | 'litter' | 'handed-over' | 'slot' | 'prep' | 'thaw' | 'labels', string> = {
  puppy: NO_PLAN,
  litter: NO_PLAN,
  'handed-over': NO_PLAN,
  slot: NO_PLAN,
  prep: 'Nothing is fed from bowls on that day, so there is nothing to print.',
  thaw: 'Nothing has to come out in the next seven days.',
  labels: 'Nothing comes out today and nothing is thawing, so there are no labels.',
};

export const printWords = {
  region: 'Printing',
  backToHomes: (litter: string) => `Back to Homes, ${litter}`,
  backToLitters: 'Back to the litters',
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'US Letter' },
  print: 'Print',
  printing: 'Print all',
  savePdf: 'Save as PDF',
  savePdfs: 'Save as PDF, one file each',
  handOver: 'Hand over',
  preparing: 'Laying out the sheets …',
  loading: 'Working out the plan …',
  fits: (sheets: number, puppies: number) =>
    puppies === 1
      ? `${capital(numberWord(sheets))} sheets.`
      : `${sheets} sheets, ${numberWord(sheets / puppies)} for each puppy.`,
  blocked: 'Not printed yet: a warning stands. Mend it, or write why.',
  why: 'Why it is printed all the same',
  whyNote: 'Your reason stands on the first sheet.',
  kept: (when: string) => `As it was handed over on ${when}.`,
  sheets: (n: number) => (n === 1 ? 'One sheet.' : `${n} sheets.`),
  clipped: CLIPPED,
  clippedPrint: 'Not printed: a sheet would be cut off. Look at the preview.',
  sheetOf: (n: number, name: string) => `sheet ${n} of ${name}`,
  saving: (done: number, of: number, name: string) => `${done} of ${of}: ${name}`,
  savingOne: 'Writing the PDF …',
  progress: 'PDFs written',
  saved: (files: readonly string[], folder: string) =>
    files.length === 1 ? `${files[0]} is in ${folder}` : `${files.length} PDFs in ${folder}`,
  open: (file: string) => `Open ${file}`,
  notSaved: (name: string, why: string) => `${name}: ${why}`,
  handOverLead: (name: string) => `Keep this plan of ${name} as handed over today. It can be printed again exactly so.`,
  leaves: (name: string) => `${name} goes home today`,
  keep: 'File this copy',
  not: 'Not now',
  handedOver: (name: string, leaves: boolean) =>
    leaves ? `Kept. ${name} is marked gone home today.` : `Kept as handed over today.`,
  before: (n: number) => (n === 1 ? 'One thing to look at before printing' : `${n} things to look at before printing`),
  beforeNote: 'Not printed.',
  likewise: (names: readonly string[]) => `So too, each with its own figures: ${names.join(', ')}.`,
  severity: { note: 'Note', caution: 'Look', warning: 'Important' },
  source: (source: string) => `Source: ${source}`,
  whereFrom: 'Where the numbers come from',
  nothing: NOTHING,
  manyPlans: 'Go-home plans',
  gone: 'That sheet is no longer there. Ask for it again.',
};
