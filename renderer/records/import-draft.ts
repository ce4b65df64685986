/** What she has said on the import page so far, and what would come of it. */

import { clockOf, dateOf, type LocalTime, localTime } from '../../core/calendar/clock.ts';
import { parseDate } from '../../core/calendar/day.ts';
import type { InputOf } from '../../core/contract/operations.ts';
import { assessLitter } from '../../core/growth/assess.ts';
import { growthInputOf } from '../../core/growth/input.ts';
import { litterInTheHouse } from '../../core/litter/in-the-house.ts';
import type { Litter, Puppy, Reading } from '../../core/litter/litter.ts';
import type { House } from '../../core/people/house.ts';
import { bornIn, type ImportRow, type ImportTarget, judgeTable } from '../../core/records/import.ts';
import { type ColumnsResult, readColumns, type TableAnswers, type TableRead } from '../../core/records/import-columns.ts';
import type { DateOrder } from '../../core/records/import-dates.ts';
import { newKey, type Who } from '../../core/records/import-labels.ts';
import { matchPuppies, type NewPuppy, newPuppies } from '../../core/records/import-puppies.ts';
import { nameKey } from '../../core/records/import-words.ts';
import type { TableFault } from '../../core/records/table.ts';
import type { Sex } from '../../core/reference/classes.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { instantOf, now } from '../data/now.ts';
import type { LitterFacts } from '../facts/useLitter.ts';
import { readClock } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import type { NamedTable } from './read-file.ts';

export interface Source {
  /** The file's name; empty when it was pasted. */
  readonly name: string;
  readonly tables: readonly NamedTable[];
  readonly oldText: boolean;
}

/** The litter it goes into: an id, or `new`; null is what the table itself says. */
export interface ImportDraft {
  readonly source: Source | null;
  readonly exportFile: { readonly name: string; readonly text: string } | null;
  readonly fault: TableFault | null;
  readonly pasted: string;
  readonly sheet: number;
  readonly table: TableAnswers;
  readonly order: DateOrder | null;
  readonly unit: MassUnit | null;
  readonly into: string | null;
  readonly dam: string | null;
  readonly name: string | null;
  readonly day: string | null;
  readonly clock: string | null;
  /** By label: a puppy's id, `new` or `nobody`. */
  readonly who: Readonly<Record<string, string>>;
  readonly sexes: Readonly<Record<string, Sex>>;
  /** Doubtful rows that she takes all the same, by their number in the table. */
  readonly ticked: readonly number[];
}

const UNSAID = {
  sheet: 0,
  table: { shape: null, meanings: {}, litter: null },
  order: null,
  unit: null,
  into: null,
  dam: null,
  name: null,
  day: null,
  clock: null,
  who: {},
  sexes: {},
  ticked: [],
} as const;

export const EMPTY_DRAFT: ImportDraft = { ...UNSAID, source: null, exportFile: null, fault: null, pasted: '' };

/** Another table: what was said of the one before does not hold for it. */
export function withSource(
  draft: ImportDraft,
  change: Partial<Pick<ImportDraft, 'source' | 'exportFile' | 'fault' | 'pasted'>>,
): ImportDraft {
  return { ...draft, ...UNSAID, source: null, exportFile: null, fault: null, ...change };
}

/** The litter as it stands in the form: what she wrote, else what the table says. */
export interface NewLitterForm {
  readonly dam: string;
  readonly name: string;
  readonly day: string;
  readonly clock: string;
  readonly whelpedAt: LocalTime | null;
}

export interface Preview {
  readonly columns: ColumnsResult;
  /** Id of the litter, or `new`. */
  readonly into: string;
  readonly form: NewLitterForm;
  readonly litterKey: string | null;
  /** Null while the litter's birth is not known. */
  readonly target: ImportTarget | null;
  readonly who: ReadonlyMap<string, Who>;
  readonly rows: readonly ImportRow[];
  /** Null: there are no collars for so many. */
  readonly made: readonly NewPuppy[] | null;
  readonly unit: MassUnit;
}

export function previewOf(
  draft: ImportDraft,
  litters: readonly LitterFacts[],
  readingsOf: (litterId: string) => readonly Reading[],
  house: House,
): Preview | null {
  const table = draft.source?.tables[draft.sheet]?.table;
  if (table === undefined) return null;
  const first = readColumns(table, draft.table);
  const words = first.ok ? first.read.litters : [];
  const litterKey = draft.table.litter ?? (words.length === 1 ? (words[0]?.key ?? null) : null);
  const columns = first;
  const into = draft.into ?? likelyLitter(first.ok ? first.read : null, litterKey, litters);
  const facts = litters.find((l) => l.litter.id === into);
  const form = formOf(draft, first.ok ? first.read : null, litterKey);
  const unit = draft.unit ?? house.massUnit;
  const whelpedAt = facts?.litter.whelpedAt ?? form.whelpedAt;
  const base = { columns, into: facts === undefined ? 'new' : into, form, litterKey, unit };
  if (!columns.ok || whelpedAt === null) return { ...base, target: null, who: new Map(), rows: [], made: [] };
  const target: ImportTarget = {
    whelpedAt,
    puppies: facts?.puppies ?? [],
    readings: facts === undefined ? [] : readingsOf(facts.litter.id),
    now: now().local,
  };
  const who = whoOf(draft, columns.read, target.puppies, facts === undefined);
  const rows = judgeTable(columns.read, { order: draft.order, unit, who }, target);
  const fresh = columns.read.labels.filter((l) => who.get(l.key)?.is === 'new');
  return { ...base, target, who, rows, made: newPuppies(fresh, rows, target) };
}

function likelyLitter(read: TableRead | null, litterKey: string | null, litters: readonly LitterFacts[]): string {
  const words = read?.litters.find((l) => l.key === litterKey);
  if (words === undefined)
    return (litters.find((l) => litterInTheHouse(l.puppies, dateOf(now().local))) ?? litters[0])?.litter.id ?? 'new';
  const born = read === null ? null : bornIn(read, litterKey, null);
  const named = litters.find(
    ({ litter }) =>
      (words.dam === '' || nameKey(litter.dam) === nameKey(words.dam)) &&
      (words.name === '' || nameKey(litter.name) === nameKey(words.name)) &&
      (born === null || dateOf(litter.whelpedAt) === dateOf(born)),
  );
  return named?.litter.id ?? 'new';
}

function formOf(draft: ImportDraft, read: TableRead | null, litterKey: string | null): NewLitterForm {
  const words = read?.litters.find((l) => l.key === litterKey);
  const born = read === null ? null : bornIn(read, litterKey, draft.order);
  const day = draft.day ?? (born === null ? '' : dateOf(born));
  const clock = draft.clock ?? (born === null ? '00:00' : clockOf(born));
  const [date, time] = [parseDate(day), readClock(clock)];
  return {
    dam: draft.dam ?? words?.dam ?? '',
    name: draft.name ?? words?.name ?? '',
    day,
    clock,
    whelpedAt: date !== null && time.ok ? localTime(`${date}T${time.value}`) : null,
  };
}

function whoOf(draft: ImportDraft, read: TableRead, puppies: readonly Puppy[], isNew: boolean): Map<string, Who> {
  const found = isNew ? new Map<string, Who>(read.labels.map((l) => [l.key, { is: 'new' }])) : matchPuppies(read.labels, puppies);
  for (const { key } of read.labels) {
    const said = draft.who[key];
    if (said === 'new' || said === 'nobody') found.set(key, { is: said });
    else if (said !== undefined && puppies.some((p) => p.id === said)) found.set(key, { is: 'there', puppyId: said });
  }
  return found;
}

/** Whether the row would be written unless she leaves it out. */
export function isTaken(row: ImportRow): boolean {
  return row.state.is === 'taken' || row.state.is === 'doubtful';
}

/** The puppies of the preview as the growth functions want them: those that are there and the new ones, by their key. */
function puppiesIn(preview: Preview, sexes: ReadonlyMap<string, Sex>): Puppy[] {
  const there = preview.target?.puppies ?? [];
  const made = (preview.made ?? []).map(
    (p, i): Puppy => ({
      ...fieldsOf(p, sexes.get(p.key) ?? 'dog', there.length + i + 1),
      id: p.key,
      litterId: preview.into,
      place: there.length + i,
      state: 'litter',
      stateOn: null,
    }),
  );
  return [...there, ...made];
}

function fieldsOf(p: NewPuppy, sex: Sex, birthOrder: number) {
  return {
    collar: p.collar,
    callName: p.callName,
    sex,
    markings: '',
    birthOrder: Math.min(30, birthOrder),
    bornAt: p.bornAt,
    bornInstant: instantOf(p.bornAt),
  };
}

/** The sexes of new puppies by their key: as she said, else as the table says. */
export function sexesOf(draft: ImportDraft, preview: Preview): Map<string, Sex> {
  const labels = preview.columns.ok ? preview.columns.read.labels : [];
  return new Map(labels.map((l) => [newKey(l), draft.sexes[l.key] ?? l.sex ?? 'unseen']));
}

/** What the weights themselves make doubtful, by the row's number: the findings of the weigh-in, over old and new together. */
export function findingsOf(
  draft: ImportDraft,
  preview: Preview,
  litter: Pick<Litter, 'sizeClass' | 'breed' | 'breedBirthGrams'>,
  house: House,
): Map<number, string> {
  const { target } = preview;
  if (target === null) return new Map();
  const fresh = preview.rows.flatMap((row, i): Reading[] =>
    !isTaken(row) || row.reading === null || row.puppy === null
      ? []
      : [
          {
            ...row.reading,
            id: `row-${i}`,
            puppyId: row.puppy,
            instant: instantOf(row.reading.at),
            source: 'file',
            kept: false,
            supersedes: null,
            supersededBy: null,
            withdrawn: false,
            recordedInstant: 0,
          },
        ],
  );
  const input = growthInputOf({
    litter,
    puppies: puppiesIn(preview, sexesOf(draft, preview)),
    readings: [...target.readings, ...fresh],
    house,
  });
  const found = new Map<number, string>();
  for (const finding of assessLitter(input).findings) {
    const sentence = words.growthFinding.reading(finding, house.massUnit);
    for (const id of [finding.readingId, finding.withReadingId]) {
      if (id?.startsWith('row-') === true) found.set(Number(id.slice(4)), sentence);
    }
  }
  return found;
}

/** The rows that are written: good ones, and of the doubtful ones those that she ticks. `findings` names what the weights make doubtful, by the row. */
export function takenRows(draft: ImportDraft, preview: Preview, findings: ReadonlyMap<number, string>): ImportRow[] {
  const isGood = (row: ImportRow, i: number) => row.state.is === 'taken' && !findings.has(i);
  return preview.rows.filter((row, i) => isTaken(row) && (isGood(row, i) || draft.ticked.includes(i)));
}

/** What is sent, or null while something is missing. */
export function importInput(
  draft: ImportDraft,
  preview: Preview,
  findings: ReadonlyMap<number, string>,
): InputOf<'records.import'> | null {
  const { form, made, into } = preview;
  const taken = takenRows(draft, preview, findings);
  if (taken.length === 0 || made === null) return null;
  if (into === 'new' && (form.whelpedAt === null || form.dam.trim() === '')) return null;
  const words = preview.columns.ok ? preview.columns.read.litters.find((l) => l.key === preview.litterKey) : undefined;
  const sexes = sexesOf(draft, preview);
  const used = new Set(taken.map((r) => r.puppy));
  const fresh = made.filter((p) => used.has(p.key));
  const keys = new Map(fresh.map((p, i) => [p.key, `new:${i}`]));
  const first = Math.max(0, ...(preview.target?.puppies ?? []).map((p) => p.birthOrder)) + 1;
  const whelpedAt = form.whelpedAt;
  return {
    into:
      into === 'new' && whelpedAt !== null
        ? {
            kind: 'new',
            litter: {
              name: line(form.name),
              dam: line(form.dam),
              sire: line(words?.sire ?? ''),
              breed: line(words?.breed ?? ''),
              sizeClass: null,
              adultDogKg: null,
              adultBitchKg: null,
              breedBirthGrams: null,
              whelpedAt,
              whelpedInstant: instantOf(whelpedAt),
            },
          }
        : { kind: 'litter', litterId: into },
    puppies: fresh.map((p, i) => ({ key: `new:${i}`, fields: fieldsOf(p, sexes.get(p.key) ?? 'unseen', first + i) })),
    readings: taken.flatMap(({ reading, puppy }) =>
      reading === null || puppy === null
        ? []
        : [{ puppy: keys.get(puppy) ?? puppy, reading: { ...reading, instant: instantOf(reading.at), source: 'file' as const } }],
    ),
  };
}

/** As the form of a litter takes it: one line of at most 120 characters. */
function line(text: string): string {
  return text
    .replace(/(?![\t\n\r])\p{Cc}/gu, '')
    .slice(0, 120)
    .toWellFormed();
}
