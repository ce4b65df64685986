/**
 * A table of weights judged row by row: taken, doubtful, there already, or refused with the reason. Nothing is guessed
 * silently: what can be read two ways is refused until it is answered.
 */

import { clockOf, dateOf, type LocalTime, localTime } from '../calendar/clock.ts';
import { addDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import { isCurrent, type Puppy, type Reading, type ReadingFields, type Session } from '../litter/litter.ts';
import { type Grams, type MassFault, type MassUnit, parseMass } from '../units/mass.ts';
import type { TableRead } from './import-columns.ts';
import { type DateOrder, readClockCell } from './import-dates.ts';
import type { Entry } from './import-entries.ts';
import { newKey, type Who } from './import-labels.ts';
import { cut, sessionOf, unitOf } from './import-words.ts';

/** Why a row is refused. */
export type Refusal =
  | { readonly code: 'no-date' | 'no-year' | 'no-weight' | 'puppy' | 'left-out' | 'before-birth' | 'future' | 'order' }
  | { readonly code: 'date' | 'clock' | 'session' | 'unit'; readonly text: string }
  | { readonly code: 'mass'; readonly fault: MassFault }
  /** `1.204` under grams: one thousand two hundred and four, or one and a bit. */
  | { readonly code: 'two-ways'; readonly text: string };

/** Why a row is doubtful; it is taken unless the person leaves it out. */
export type Doubtful =
  /** Another weight is written for that time already. */
  | { readonly code: 'other-there'; readonly grams: number }
  /** A second weight of a day without a time: the first is the morning's, this one the evening's. */
  | { readonly code: 'second' }
  /** Two weights of one puppy for the same minute. */
  | { readonly code: 'same-time' }
  /** After the puppy died or went home. */
  | { readonly code: 'gone' };

/** `there`: the same weight is written already. `twice`: the same row stands in the table before. */
export type RowState =
  | { readonly is: 'taken' }
  | { readonly is: 'doubtful'; readonly why: Doubtful }
  | { readonly is: 'there' }
  | { readonly is: 'twice' }
  | { readonly is: 'refused'; readonly why: Refusal };

/** A weight as it would be written; its instant is the window's to tell, who knows the zone. */
export type ImportedReading = Pick<ReadingFields, 'at' | 'session' | 'typed' | 'unit' | 'held'> & { readonly grams: Grams };

export interface ImportRow {
  readonly entry: Entry;
  readonly state: RowState;
  /** A puppy's id, or `newKey` of a label. Null while refused. */
  readonly puppy: string | null;
  readonly reading: ImportedReading | null;
}

export interface ImportAnswers {
  /** Needed only where the dates themselves don't tell. */
  readonly order: DateOrder | null;
  /** Of numbers that stand alone. */
  readonly unit: MassUnit;
  /** By label key; a label without an answer is refused. */
  readonly who: ReadonlyMap<string, Who>;
}

/** What the weights go into. `whelpedAt` is the litter's; for a new one as the person says. */
export interface ImportTarget {
  readonly whelpedAt: LocalTime;
  readonly puppies: readonly Puppy[];
  readonly readings: readonly Reading[];
  readonly now: LocalTime;
}

/** Usual hours where a table has none, as at the weigh-in. */
export const USUAL_CLOCK = { morning: '07:00', evening: '19:00' } as const;
/** Before two in the afternoon it is the morning's weigh-in, as on the weigh-in page. */
const AFTERNOON = '14:00';
/** Longest text kept beside a weight. */
const LONGEST_TYPED = 40;

/** Every entry of the table, in its order, judged. */
export function judgeTable(read: TableRead, answers: ImportAnswers, target: ImportTarget): ImportRow[] {
  const order = answers.order ?? (read.order === 'both' ? null : read.order);
  const judge = new Judge(answers, target, order);
  return read.entries.map((entry) => judge.row(entry));
}

class Judge {
  readonly #answers: ImportAnswers;
  readonly #target: ImportTarget;
  readonly #order: DateOrder | null;
  readonly #puppies: ReadonlyMap<string, Puppy>;
  readonly #there: ReadonlyMap<string, readonly Reading[]>;
  /** Weights of the table so far, by puppy and day. */
  readonly #before = new Map<string, { entry: Entry; reading: ImportedReading }[]>();

  constructor(answers: ImportAnswers, target: ImportTarget, order: DateOrder | null) {
    this.#answers = answers;
    this.#target = target;
    this.#order = order;
    this.#puppies = new Map(target.puppies.map((p) => [p.id, p]));
    this.#there = Map.groupBy(
      target.readings.filter((r) => isCurrent(r)),
      (r) => `${r.puppyId} ${dateOf(r.at)}`,
    );
  }

  row(entry: Entry): ImportRow {
    const refused = (why: Refusal): ImportRow => ({ entry, state: { is: 'refused', why }, puppy: null, reading: null });
    const who = this.#answers.who.get(entry.label.key);
    if (who?.is === 'nobody') return refused({ code: 'left-out' });
    const puppy = who?.is === 'there' ? (this.#puppies.get(who.puppyId) ?? null) : null;
    if (who === undefined || (who.is === 'there' && puppy === null)) return refused({ code: 'puppy' });
    const ref = puppy?.id ?? newKey(entry.label);
    const mass = massOf(entry, this.#answers.unit);
    if ('code' in mass) return refused(mass);
    const when = this.#when(entry, puppy, ref);
    if ('code' in when) return refused(when);
    const reading: ImportedReading = { ...when.at, ...mass, held: entry.held };
    const state = this.#state(entry, reading, ref, puppy, when.second);
    const day = `${ref} ${dateOf(reading.at)}`;
    this.#before.set(day, [...(this.#before.get(day) ?? []), { entry, reading }]);
    return { entry, state, puppy: ref, reading };
  }

  /** The day that an entry means; an age counts from the day of birth. */
  #dayOf(entry: Entry, puppy: Puppy | null): { day: CivilDate; clock: string | null } | Refusal {
    const { day } = entry;
    if (day === null) return { code: 'no-date' };
    switch (day.kind) {
      case 'date':
        return { day: day.date, clock: day.clock };
      case 'age':
        return { day: addDays(dateOf(puppy?.bornAt ?? this.#target.whelpedAt), day.days), clock: null };
      case 'no-year':
        return { code: 'no-year' };
      case 'unreadable':
        return { code: 'date', text: entry.dayText };
      case 'figures': {
        if (this.#order === null) return { code: 'order' };
        const date = day[this.#order];
        return date === null ? { code: 'date', text: entry.dayText } : { day: date, clock: day.clock };
      }
    }
  }

  #when(
    entry: Entry,
    puppy: Puppy | null,
    ref: string,
  ): { at: Pick<ImportedReading, 'at' | 'session'>; second: boolean } | Refusal {
    const found = this.#dayOf(entry, puppy);
    if ('code' in found) return found;
    const { day } = found;
    const saidSession = entry.sessionText === '' ? null : sessionOf(entry.sessionText);
    if (entry.sessionText.trim() !== '' && saidSession === null) return { code: 'session', text: entry.sessionText };
    // "morning" and "pm" are written in a column of times too.
    const sessionForClock = entry.clockText === '' ? null : sessionOf(entry.clockText);
    const saidClock = entry.clockText === '' || sessionForClock !== null ? found.clock : readClockCell(entry.clockText);
    if (entry.clockText.trim() !== '' && sessionForClock === null && saidClock === null)
      return { code: 'clock', text: entry.clockText };
    const born = puppy?.bornAt ?? this.#target.whelpedAt;
    if (day < dateOf(born)) return { code: 'before-birth' };
    if (day > dateOf(this.#target.now)) return { code: 'future' };
    const said = saidSession ?? sessionForClock;
    const placed = saidClock === null ? this.#withoutClock(day, said, born, ref) : withClock(day, saidClock, said);
    if (placed.at.at > this.#target.now) {
      if (saidClock !== null) return { code: 'future' };
      return { ...placed, at: { ...placed.at, at: this.#target.now } };
    }
    return placed;
  }

  /** Without a time: on the day of birth it is the birth weight, else the usual hour of the session. */
  #withoutClock(
    day: CivilDate,
    said: Session | null,
    born: LocalTime,
    ref: string,
  ): { at: Pick<ImportedReading, 'at' | 'session'>; second: boolean } {
    const isBirthday = day === dateOf(born);
    const earlier = this.#before.get(`${ref} ${day}`) ?? [];
    const atBirth = isBirthday && (said === 'birth' || (said === null && !earlier.some((e) => e.reading.session === 'birth')));
    if (atBirth) return { at: { at: born, session: 'birth' }, second: false };
    const second = said === null && earlier.some((e) => e.entry.sessionText === '' && e.entry.clockText === '');
    const session = said === 'birth' || said === null ? (second ? 'evening' : 'morning') : said;
    const usual = localTime(`${day}T${USUAL_CLOCK[session]}`);
    return { at: { at: usual < born ? born : usual, session }, second };
  }

  #state(entry: Entry, reading: ImportedReading, ref: string, puppy: Puppy | null, second: boolean): RowState {
    const day = dateOf(reading.at);
    const bare =
      entry.clockText === '' && !(entry.day?.kind === 'date' || entry.day?.kind === 'figures' ? entry.day.clock : null);
    const sameTime = (r: Pick<Reading, 'at' | 'session'>) =>
      bare ? entry.sessionText === '' || r.session === reading.session : r.at === reading.at;
    const twins = (this.#before.get(`${ref} ${day}`) ?? []).map((e) => e.reading);
    if (twins.some((r) => r.grams === reading.grams && (r.at === reading.at || (second && bare)))) return { is: 'twice' };
    const there = (this.#there.get(`${ref} ${day}`) ?? []).filter(sameTime);
    if (there.some((r) => Math.abs(r.grams - reading.grams) < 0.05)) return { is: 'there' };
    const other = there.find((r) => r.session === reading.session);
    if (other !== undefined) return { is: 'doubtful', why: { code: 'other-there', grams: other.grams } };
    if (second) return { is: 'doubtful', why: { code: 'second' } };
    if (twins.some((r) => r.at === reading.at)) return { is: 'doubtful', why: { code: 'same-time' } };
    const gone =
      puppy !== null && (puppy.state === 'died' || puppy.state === 'home') && puppy.stateOn !== null && day > puppy.stateOn;
    return gone ? { is: 'doubtful', why: { code: 'gone' } } : { is: 'taken' };
  }
}

function withClock(
  day: CivilDate,
  clock: string,
  said: Session | null,
): { at: Pick<ImportedReading, 'at' | 'session'>; second: boolean } {
  const at = localTime(`${day}T${clock}`);
  return { at: { at, session: said ?? (clockOf(at) < AFTERNOON ? 'morning' : 'evening') }, second: false };
}

function massOf(entry: Entry, usual: MassUnit): Pick<ImportedReading, 'grams' | 'typed' | 'unit'> | Refusal {
  const text = entry.weightText.trim();
  if (text === '') return { code: 'no-weight' };
  if (entry.unit === null && entry.unitText.trim() !== '') return { code: 'unit', text: entry.unitText };
  const unit = entry.unit ?? usual;
  // Parsed as pounds and ounces, a point or comma with three figures can't be a thousands mark.
  if (unit === 'g' && /^\d{1,3}[.,]\d{3}(?:\s*g)?$/i.test(text)) return { code: 'two-ways', text };
  const mass = parseMass(text, unit);
  if (!mass.ok) return { code: 'mass', fault: mass.fault };
  const typed = cut(entry.typed ?? text, LONGEST_TYPED);
  const typedIn = entry.typed === null ? mass.unit : (unitOf(entry.unitText) ?? mass.unit);
  return { grams: mass.grams, typed, unit: typedIn };
}

/** How far the days of a table reach, for the person to see that they were understood: first, last, and days between. */
export function spanOf(
  rows: readonly ImportRow[],
): { readonly first: CivilDate; readonly last: CivilDate; readonly days: number } | null {
  const days = rows.flatMap((r) => (r.reading === null ? [] : [dateOf(r.reading.at)])).sort();
  const [first, last] = [days[0], days.at(-1)];
  return first === undefined || last === undefined ? null : { first, last, days: daysBetween(first, last) + 1 };
}

/** When the litter was probably born, by what the table says: the day called birth, else null. */
export function bornIn(read: TableRead, litterKey: string | null, order: DateOrder | null): LocalTime | null {
  const words = read.litters.find((l) => l.key === litterKey) ?? read.litters[0];
  const said = words?.born ?? null;
  const by = order ?? (read.order === 'both' ? null : read.order);
  if (said?.kind === 'date') return localTime(`${said.date}T${said.clock ?? '00:00'}`);
  if (said?.kind === 'figures' && by !== null && said[by] !== null) return localTime(`${said[by]}T${said.clock ?? '00:00'}`);
  const births = read.entries.filter((e) => sessionOf(e.sessionText) === 'birth' && e.day?.kind === 'date');
  const times = births.flatMap((e) =>
    e.day?.kind === 'date' ? [localTime(`${e.day.date}T${readClockCell(e.clockText) ?? e.day.clock ?? '00:00'}`)] : [],
  );
  return times.sort()[0] ?? null;
}
