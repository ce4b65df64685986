/** What the rows of a weigh-in show: what is in the file, what is on its way, what was asked about. */
import { dateOf, type LocalTime } from '../../../core/calendar/clock.ts';
import { assessLitter, type LitterGrowth } from '../../../core/growth/assess.ts';
import { type Doubt, doubtAbout } from '../../../core/growth/doubt.ts';
import type { ReadingFinding } from '../../../core/growth/findings.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { type Puppy, puppyName, type Reading } from '../../../core/litter/litter.ts';
import { exactGrams, type MassUnit, parseMass } from '../../../core/units/mass.ts';
import { instantOf, now } from '../../data/now.ts';
import { endOf, mends, readingAfter, readingBefore, takenAt, type WeighInTime } from '../../facts/weigh-in.ts';
import type { Unwritten } from '../../state/unwritten.ts';

/** The weight that is being typed, among the readings of the litter. */
export const DRAFT_ID = 'draft';

export interface WeighInRow {
  readonly puppy: Puppy;
  /** What stands in this weigh-in, in the file or not yet. */
  readonly grams: number | null;
  readonly reading: Reading | null;
  /** The last one typed that is not in the file. */
  readonly unwritten: Unwritten | null;
  readonly before: Reading | null;
  /** The next later reading: only of a day that is filled in afterwards. */
  readonly after: Reading | null;
  readonly doubt: Doubt | null;
}

export interface RowFacts {
  readonly readings: readonly Reading[];
  /** With the weights of this window that are not in the file yet. */
  readonly input: GrowthInput | null;
  readonly time: WeighInTime;
  readonly unit: MassUnit;
}

/** What the litter's weights were when this weigh-in ended: a later one says nothing of that day. */
export function asOf(input: GrowthInput, time: WeighInTime): GrowthInput {
  if (time.live) return input;
  const end = instantOf(endOf(time)) + 59_999;
  return { ...input, readings: input.readings.filter((r) => r.instant <= end) };
}

/** A weight halfway between the ones before and after it, give or take: no later day lets it be doubted. */
const LEEWAY = 0.03;

/** Whether a weight lies between its neighbours in time. */
function liesBetween(grams: number, before: Reading | null, after: Reading | null): boolean {
  if (before === null || after === null) return false;
  const low = Math.min(before.grams, after.grams) * (1 - LEEWAY);
  return grams >= low && grams <= Math.max(before.grams, after.grams) * (1 + LEEWAY);
}

/** What is doubtful about a weight of a puppy in a weigh-in; `without` names the reading that it takes the place of. */
export function doubtIn(
  facts: RowFacts,
  puppyId: string,
  of: { readonly at: LocalTime; readonly instant: number; readonly grams: number },
  without: string | null,
): Doubt | null {
  const { input, readings, time, unit } = facts;
  if (input === null) return null;
  const { at, instant, grams } = of;
  const [before, after] = [readingBefore(readings, puppyId, instant), readingAfter(readings, puppyId, instant)];
  if (liesBetween(grams, before, after)) return null;
  const past = asOf(input, time);
  const others = without === null ? past : { ...past, readings: past.readings.filter((r) => r.id !== without) };
  return doubtAbout(others, puppyId, instant, at, grams, unit);
}

export function rowOf(facts: RowFacts, puppy: Puppy, reading: Reading | null, unwritten: Unwritten | null): WeighInRow {
  const { readings, time } = facts;
  const current = unwritten?.reading ?? reading;
  const instant = current?.instant ?? instantOf(takenAt(time, now().local));
  const row: WeighInRow = {
    puppy,
    grams: current?.grams ?? null,
    reading,
    unwritten,
    before: readingBefore(readings, puppy.id, instant),
    after: time.live ? null : readingAfter(readings, puppy.id, instant),
    doubt: null,
  };
  const held = unwritten === null ? (reading?.held ?? false) : unwritten.reading.held && !unwritten.keep;
  if (!held || current === null) return row;
  const exact = exactGrams(current.typed, current.unit, current.grams);
  const doubt = doubtIn(facts, puppy.id, { ...current, grams: exact }, unwritten?.id ?? reading?.id ?? null);
  return { ...row, doubt: current.source === 'scale' ? ofScale(doubt) : doubt };
}

/** A scale makes no slip of the hand: no guess, but perhaps another puppy. */
function ofScale(doubt: Doubt | null): Doubt | null {
  return doubt === null ? null : { ...doubt, question: 'another-puppy', guessGrams: null };
}

/** The exchange that a reading is part of, as far as the litter's weights say. */
export function swapOf(growth: LitterGrowth | null, readingId: string | null): ReadingFinding | null {
  if (growth === null || readingId === null) return null;
  return growth.findings.find((f) => f.kind === 'swap' && (f.readingId === readingId || f.withReadingId === readingId)) ?? null;
}

/** The litter's weights with those of this window that are not in the file yet, each in the place of the one that it mends. */
export function withUnwritten(input: GrowthInput, unwritten: readonly Unwritten[]): GrowthInput {
  let readings = input.readings;
  for (const { id, puppyId, reading, keep } of unwritten) {
    if (reading.held && !keep) continue;
    const others = readings.filter(
      (r) => !(r.puppyId === puppyId && r.session === reading.session && dateOf(r.at) === dateOf(reading.at)),
    );
    const { at, instant, grams, session } = reading;
    readings = [...others, { id, puppyId, at, instant, grams, session, held: false, kept: keep }];
  }
  return { ...input, readings };
}

/** What the litter means with the weight being typed, as long as that one is believable. */
export function growthWhileTyping(
  facts: RowFacts,
  inHand: { readonly row: WeighInRow; readonly text: string | undefined } | null,
): LitterGrowth | null {
  if (facts.input === null) return null;
  const { time, unit } = facts;
  const input = asOf(facts.input, time);
  const parsed = inHand?.text === undefined ? null : parseMass(inHand.text, unit);
  if (parsed?.ok !== true || inHand === null) return assessLitter(input);
  const { puppy, reading, unwritten } = inHand.row;
  const at = reading?.at ?? takenAt(time, now().local);
  const instant = reading?.instant ?? instantOf(at);
  const { grams } = parsed;
  const existing = unwritten?.id ?? reading?.id ?? null;
  if (doubtIn({ ...facts, input }, puppy.id, { at, instant, grams }, existing) !== null) return assessLitter(input);
  const others = input.readings.filter((r) => r.id !== existing);
  const draft = { id: DRAFT_ID, puppyId: puppy.id, at, instant, grams, session: time.session, held: false, kept: false };
  return assessLitter({ ...input, readings: [...others, draft] });
}

/** The puppy that is called by its collar's letter or its name; null when what was typed is no name. */
export function namedBy(rows: readonly WeighInRow[], text: string): string | null {
  const called = text.trim().toLowerCase();
  const by = (nameOf: (row: WeighInRow) => string) => rows.find((r) => nameOf(r).toLowerCase() === called)?.puppy.id ?? null;
  return by((r) => r.puppy.collar.letter) ?? by((r) => puppyName(r.puppy));
}

/** What stands in the field of a row that nothing was typed in: the weight that a number typed now would mend. */
export function standingText({ reading, unwritten }: WeighInRow, { day }: WeighInTime): string {
  if (unwritten !== null) return unwritten.reading.typed;
  const { local, instant } = now();
  return reading !== null && mends(reading, day, local, instant) ? reading.typed : '';
}
