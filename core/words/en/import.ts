/** Sentences of bringing in and taking out. */
import type { ExportKind } from '../../contract/records.ts';
import type { Doubtful, Refusal } from '../../records/import.ts';
import type { DateOrder } from '../../records/import-dates.ts';
import type { ColumnsFault } from '../../records/import-entries.ts';
import type { Shape } from '../../records/import-shape.ts';
import type { Meaning } from '../../records/import-words.ts';
import type { TableFault } from '../../records/table.ts';
import type { MassUnit } from '../../units/mass.ts';
import { massMistake } from './mass.ts';

const count = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`);

const SHAPES: Record<Shape, string> = {
  rows: 'one row a weight',
  'days-down': 'a row a day, a column a puppy',
  'days-across': 'a row a puppy, a column a day',
};

const MEANINGS: Record<Meaning, string> = {
  puppy: 'puppy',
  collar: 'collar letter',
  colour: 'collar colour',
  pattern: 'collar pattern',
  sex: 'sex',
  date: 'day weighed',
  time: 'time of day',
  session: 'morning or evening',
  weight: 'weight',
  unit: 'unit of the weight',
  typed: 'weight as it was typed',
  held: 'left out of the reckoning',
  litter: 'litter',
  dam: 'dam',
  sire: 'sire',
  breed: 'breed',
  born: 'litter born',
  leave: 'not imported',
};

const EXPORTS: Record<ExportKind, { what: string; how: string }> = {
  weights: {
    what: 'Weights',
    how: 'CSV, one table to open in a spreadsheet. It can be imported again here, to the letter.',
  },
  csv: { what: 'Everything, as CSV', how: 'one file for each kind of thing' },
  xlsx: {
    what: 'Everything, as a workbook',
    how: 'XLSX, one sheet for each kind of thing. Plans that were handed over are too long for it.',
  },
  json: {
    what: 'Everything, as JSON',
    how: 'with its schema. It can be imported into an empty Whelpside, on another computer too.',
  },
  file: { what: 'The data file', how: 'SQLite, a copy that was opened and checked' },
  person: { what: 'What is kept of persons', how: 'JSON: your own name and address, and your vet’s' },
};

export const importWords = {
  title: 'Import weights',
  lead: 'From a spreadsheet, a CSV file or a pasted table. Nothing is written before you have seen it.',
  back: 'Back to Records',

  table: 'The table',
  choose: 'file',
  chooseHint: 'CSV, text or XLSX, up to 5 MB; or the JSON of a whole house',
  paste: 'or pasted',
  pasteHint: 'mark the cells in your spreadsheet, copy, and paste them here',
  reading: 'Reading the file …',
  fromFile: (name: string) => `Read from ${name}.`,
  another: 'Take another table',
  sheet: 'sheet',
  oldText: 'The file was not UTF-8 and was read as Windows-1252. Look whether names with accents are right.',
  fault(fault: TableFault): string {
    switch (fault.code) {
      case 'quote':
        return `A quotation mark is opened on line ${fault.line} and never closed. Close it in the file, then choose the file again.`;
      case 'after-quote':
        return `On line ${fault.line} something follows a closing quotation mark. Put it right in the file, then choose the file again.`;
      case 'empty':
        return 'There is nothing in it.';
      case 'not-text':
        return 'It is not a text that can be read: not a table, or damaged. Save it as CSV or XLSX and choose it again.';
      case 'not-a-sheet':
        return 'The workbook cannot be read: it is not XLSX, it is locked with a password, or it is damaged. Save it as XLSX or CSV and choose it again.';
      case 'too-large':
        return 'It is larger than 5 MB. Save only the sheet with the weights, as CSV, and choose that.';
      case 'too-many-rows':
        return 'It has more than 10,000 rows. Import it by parts.';
      case 'too-many-columns':
        return 'It has more than 400 columns. Keep only those with weights.';
    }
  },
  columnsFault(fault: ColumnsFault): string {
    switch (fault) {
      case 'no-weights':
        return 'No column with weights was found. Say below which one it is.';
      case 'no-dates':
        return 'No day was found. Say below which column it is.';
      case 'no-rows':
        return 'There are headings, but no row under them.';
    }
  },

  where: 'Where it goes',
  into: 'into',
  newLitter: 'a new litter',
  littersOption: (name: string, born: string) => `${name}, born ${born}`,
  fromTable: 'litter of the table',
  chooseLitter: 'choose one',
  ofTable: (name: string, dam: string) => (name === '' ? dam : dam === '' ? name : `${name}, dam ${dam}`),
  severalLitters: 'The table holds several litters. Choose which one is imported.',
  dam: 'dam',
  name: 'litter name or letter',
  bornOn: 'whelped on',
  bornAt: 'at',
  bornNeeded: 'Write when the litter was born. Ages count from then, and nothing can be weighed before.',
  damNeeded: 'The dam’s name is needed: the litter is called after her.',

  understood: 'What was understood',
  shape: 'the table is',
  shapes: SHAPES,
  headings: (line: number | null) => (line === null ? 'It has no headings.' : `The headings stand in row ${line}.`),
  span: (first: string, last: string, days: number) =>
    days === 1 ? `The weights are of ${first}.` : `The weights are from ${first} to ${last}, ${days} days.`,
  noClocks:
    'Where no time is given, a morning’s weight is put at 07:00 and an evening’s at 19:00; on the day of birth it is the birth weight.',
  readAs: 'read as',
  column: 'column',
  unnamed: (n: number) => `column ${n}`,
  columns: 'Columns',
  columnsHint: 'Change what was read wrongly.',
  gridPuppy: 'weights of a puppy',
  gridDay: 'weights of a day',
  meanings: MEANINGS,
  order: 'dates like 03/04/2026',
  orders: { dmy: 'day first: 3 April', mdy: 'month first: 4 March' } satisfies Record<DateOrder, string>,
  orderAsk: 'Some dates can be read two ways. Say which comes first.',
  orderBoth: 'Some dates only make sense day first, others only month first. Say which is right; the others are refused.',
  orderTold: {
    dmy: 'Dates are read day first: one of them only makes sense so.',
    mdy: 'Dates are read month first: one of them only makes sense so.',
  } satisfies Record<DateOrder, string>,
  unit: 'numbers alone are in',
  unlikely: (middle: string) => `The middle weight would be ${middle}. Is the unit right?`,

  who: 'Who is who',
  whoHint: 'What the table calls them, and who that is.',
  inTable: 'in the table',
  is: 'is',
  noName: 'the table names nobody',
  weights: 'weights',
  newPuppy: 'a new puppy',
  leaveOut: 'left out',
  notSaid: 'not said',
  sexOf: (label: string) => `${label}, sex`,
  whoOf: (label: string) => `${label} is`,
  tooMany: 'More than sixteen puppies: there are no more collars. Leave some out, or choose who they are.',

  rows: 'Row by row',
  counts(taken: number, doubtful: number, there: number, refused: number): string {
    const parts = [count(taken, 'weight is good', 'weights are good')];
    if (doubtful > 0) parts.push(`${doubtful} doubtful`);
    if (there > 0) parts.push(`${there} there already`);
    if (refused > 0) parts.push(`${refused} refused`);
    return `${parts.join(', ')}.`;
  },
  toLookAt: 'To look at',
  nothingToLookAt: 'Nothing is doubtful and nothing is refused.',
  allRows: (n: number) => `All rows that are imported (${n})`,
  row: 'row',
  day: 'day',
  weight: 'weight',
  stands: 'stands there',
  remark: 'remark',
  place: (line: number, heading: string | null) => (heading === null ? String(line) : `${line}, ${heading}`),
  takeIt: 'import it',
  takeItOf: (row: string) => `import row ${row}`,
  allOf: (n: number) => `Show all ${n}`,
  firstOf: (shown: number, all: number) => `The first ${shown} of ${all}.`,
  refusal(why: Refusal, text: string): string {
    switch (why.code) {
      case 'no-date':
        return 'No day stands there.';
      case 'no-year':
        return 'The day has no year. Write the year in the table.';
      case 'no-weight':
        return 'No weight stands there.';
      case 'puppy':
        return 'Who that is was not said above.';
      case 'left-out':
        return 'Left out, as you said above.';
      case 'before-birth':
        return 'That is before it was born.';
      case 'future':
        return 'That is still to come.';
      case 'order':
        return 'The date can be read two ways. Answer the question above.';
      case 'date':
        return `“${why.text}” cannot be read as a day.`;
      case 'clock':
        return `“${why.text}” cannot be read as a time of day.`;
      case 'session':
        return `“${why.text}” is neither morning, evening nor birth.`;
      case 'unit':
        return `“${why.text}” is not a unit of weight.`;
      case 'mass':
        return massMistake(why.fault, text);
      case 'two-ways':
        return `${why.text} in grams can be read two ways: thousands, or a fraction of a gram. Write it without the mark, or say that it is in kilograms.`;
    }
  },
  doubt(why: Doubtful, mass: (grams: number) => string): string {
    switch (why.code) {
      case 'other-there':
        return `${mass(why.grams)} is written for that time already. Both will be kept.`;
      case 'second':
        return 'A second weight of that day without a time: it is taken as the evening’s.';
      case 'same-time':
        return 'Two different weights for the same minute.';
      case 'gone':
        return 'That is after it had gone.';
    }
  },
  there: 'Written already, so it is not imported again.',
  twice: 'Stands twice in the table; imported once.',
  good: 'good',

  take: (n: number) => (n === 0 ? 'Nothing to import yet' : `Import ${count(n, 'weight', 'weights')}`),
  takeNote: 'All in one step: Undo takes everything back.',
  notYet: 'Answer what is asked above first.',
  refusedAll: 'The program refused it, and nothing was written. Look through the rows above.',

  whole: 'A whole house',
  wholeLead: (name: string) =>
    `${name} holds an export of everything. It can only be imported into a Whelpside where nothing is written yet.`,
  wholeTake: 'Import everything',
  wholeDone: (litters: number, readings: number) =>
    `Imported: ${count(litters, 'litter', 'litters')}, ${count(readings, 'weight', 'weights')}. Undo takes everything back.`,
  wholeTo: 'To the litters',
  wholeConflict:
    'Something is written in this data file already, so nothing was changed. Begin with a new data folder, and bring it in there.',
  wholeMisfit: 'That is not an export of Whelpside, or it was changed since. Nothing was written.',
  wholeNewer: 'A newer Whelpside wrote that. Install the newer one to bring it in.',
  wholeAt: (field: string) => `The place that does not fit: ${field}.`,
} as const;

export const unitChoice: Record<MassUnit, string> = {
  g: 'grams',
  kg: 'kilograms',
  oz: 'ounces',
  lboz: 'ounces; 1:3.5 is pounds and ounces',
  lb: 'pounds',
};

export const exportWords = {
  title: 'Import and export',
  lead: 'Weights from a spreadsheet can be imported. Everything can be exported in open formats; invented litters are left out.',
  bringIn: 'Import weights',
  what: 'what',
  how: 'how',
  kinds: EXPORTS,
  write: 'Save',
  writeOf: (what: string) => `Save: ${what}`,
  writing: 'Saving …',
  written: (folder: string, n: number) => `${n === 1 ? 'Saved' : `${n} files saved`} in ${folder}:`,
  open: (file: string, size: string) => `${file}, ${size}`,
  tooLarge: 'That file is large: take it from the folder itself.',
  caution: 'These files hold names and addresses. Whoever gets them can read everything.',
} as const;
