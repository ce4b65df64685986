import { useCallback, useMemo, useRef, useState } from 'react';
import { dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import { assessLitter, type LitterGrowth } from '../../core/growth/assess.ts';
import { type Doubt, doubtAbout, expectedAt } from '../../core/growth/doubt.ts';
import type { ReadingFinding } from '../../core/growth/findings.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { parseTyped, type TypedFault } from '../../core/growth/scale/wedge.ts';
import type { Puppy, Reading, ReadingFields } from '../../core/litter/litter.ts';
import { type Grams, type MassUnit, parseMass, toGrams } from '../../core/units/mass.ts';
import { instantOf, now } from '../data/now.ts';
import { inOrder } from '../data/query.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { mends, nextToWeigh, readingBefore, readingOf, takenAt, toWeigh, type WeighingSession } from '../facts/weigh-in.ts';
import { words } from '../state/words.ts';

/** The reading that is being typed, among those of the litter. */
const DRAFT_ID = 'draft';

interface Pending {
  readonly typed: string;
  readonly grams: Grams;
  readonly unit: MassUnit;
  readonly at: LocalTime;
  readonly instant: number;
  readonly held: boolean;
  readonly source: Source;
}

type Source = Extract<ReadingFields['source'], 'keyboard' | 'scale'>;

export interface WeighInRow {
  readonly puppy: Puppy;
  /** What stands in this session, written already or on its way. */
  readonly grams: number | null;
  readonly reading: Reading | null;
  readonly before: Reading | null;
  readonly doubt: Doubt | null;
}

export interface WeighIn {
  readonly rows: readonly WeighInRow[];
  readonly inHandId: string | null;
  readonly text: string;
  readonly mistake: TypedFault | null;
  /** The field in hand: empty; something stands in it that was written or asked about; she is typing. */
  readonly field: 'empty' | 'written' | 'typing';
  /** What stands in it came from the scale and waits for Enter. */
  readonly fromScale: boolean;
  readonly growth: LitterGrowth | null;
  readonly weighedIds: ReadonlySet<string>;
  readonly expected: number | null;
  readonly nextId: string | null;
  /** The weight in hand may belong to another puppy weighed in this session, and the other way round. */
  readonly swap: ReadingFinding | null;
  type(text: string): void;
  /** Fills a weight of the scale into a puppy's field, as if typed, and takes that puppy in hand. Answers the text. */
  fill(puppyId: string, grams: number): string;
  enter(): void;
  takeGuess(): void;
  exchange(): void;
  undo(): void;
  redo(): void;
  take(puppyId: string): void;
  step(by: 1 | -1): void;
  arrange(by: 1 | -1): void;
}

/** The keyboard loop: number, Enter, next. What is typed is kept until it is written, whatever the host does. */
export function useWeighIn(
  facts: LitterGrowthFacts,
  day: CivilDate,
  session: WeighingSession,
  firstPuppyId: string | null,
  onWritten: (row: WeighInRow, grams: number, at: LocalTime) => void,
): WeighIn {
  const { input, readings, house } = facts;
  const unit = house.massUnit;
  const order = useMemo(() => toWeigh(facts.puppies), [facts.puppies]);
  const [drafts, setDrafts] = useState<ReadonlyMap<string, string>>(new Map());
  const [pending, setPending] = useState<ReadonlyMap<string, Pending>>(new Map());
  const [mistakes, setMistakes] = useState<ReadonlyMap<string, TypedFault>>(new Map());
  const [chosen, setChosen] = useState<string | null | undefined>(firstPuppyId ?? undefined);
  const [filled, setFilled] = useState<{ id: string; text: string; grams: Grams } | null>(null);
  const written = useRef(new Map<string, string>());

  const inSession = useMemo(
    () => new Map(order.map((p) => [p.id, readingOf(readings, p.id, day, session)])),
    [order, readings, day, session],
  );
  const weighed = useCallback((id: string) => pending.has(id) || (inSession.get(id) ?? null) !== null, [pending, inSession]);
  const inHandId = chosen === undefined ? nextToWeigh(order, null, weighed) : chosen;
  const existing = inHandId === null ? null : (inSession.get(inHandId) ?? null);

  const rows = useMemo(
    () =>
      order.map((puppy) =>
        rowOf(puppy, inSession.get(puppy.id) ?? null, pending.get(puppy.id) ?? null, readings, input, day, session, unit),
      ),
    [order, inSession, pending, readings, input, day, session, unit],
  );
  const draft = inHandId === null ? undefined : drafts.get(inHandId);
  const text = draft ?? (existing !== null && mendable(existing, day) ? existing.typed : '');
  const growth = useGrowthWhileTyping(input, pending, inHandId, draft, existing, day, session, unit);

  const fromScale = filled !== null && filled.id === inHandId && filled.text === draft ? filled : null;

  const setIn = <V>(set: (f: (m: ReadonlyMap<string, V>) => ReadonlyMap<string, V>) => void, id: string, value: V | null) =>
    set((m) => {
      const copy = new Map(m);
      if (value === null) copy.delete(id);
      else copy.set(id, value);
      return copy;
    });
  const after = (id: string) => nextToWeigh(order, id, (other) => other === id || weighed(other));

  function write(row: WeighInRow, grams: Grams, typed: string, typedUnit: MassUnit, held: boolean, source: Source): void {
    const { local, instant } = now();
    const old = row.reading;
    const mending = old !== null && mends(old, day, local, instant);
    const at = mending ? old.at : takenAt(day, session, local);
    const fields: ReadingFields = {
      at,
      instant: mending ? old.instant : at === local ? instant : instantOf(at),
      session,
      grams,
      typed: typed.trim().slice(0, 40),
      unit: typedUnit,
      source,
      held,
    };
    const id = row.puppy.id;
    const followUp = !mending && pending.has(id);
    setIn(setPending, id, { typed, grams, unit: typedUnit, at, instant: fields.instant, held, source });
    setIn(setDrafts, id, held ? typed : null);
    setIn(setMistakes, id, null);
    void inOrder(async (run) => {
      const replaces = mending ? old.id : followUp ? (written.current.get(id) ?? null) : null;
      const result =
        replaces === null
          ? await run('growth.record', { puppyId: id, reading: fields })
          : await run('growth.correct', { readingId: replaces, reading: fields });
      setIn(setPending, id, null);
      if (result.ok) {
        written.current.set(id, result.value.reading.id);
        setIn(setDrafts, id, null);
        if (!held) onWritten(row, grams, at);
      } else {
        setIn(setDrafts, id, typed);
        setChosen(id);
      }
    });
  }

  function keep(row: WeighInRow): void {
    const id = row.puppy.id;
    setChosen(after(id));
    setIn(setDrafts, id, null);
    void inOrder(async (run) => {
      const readingId = row.reading?.id ?? written.current.get(id);
      if (readingId === undefined) return;
      const result = await run('growth.keep', { readingId });
      if (!result.ok) setChosen(id);
    });
  }

  function keepBoth(pair: ReadingFinding, id: string): void {
    setChosen(after(id));
    void inOrder(async (run) => {
      for (const readingId of [pair.readingId, pair.withReadingId]) {
        if (readingId === null) continue;
        const result = await run('growth.keep', { readingId });
        if (!result.ok) {
          setChosen(id);
          return;
        }
      }
    });
  }

  /** Undoes or does again the last thing, and takes the puppy in hand that it was about. */
  function goBack(operation: 'records.undo' | 'records.redo'): void {
    void inOrder(async (run) => {
      const result = await run(operation, {});
      if (!result.ok) return;
      const back = result.value.done.puppyId;
      if (back === null || !order.some((p) => p.id === back)) return;
      setIn(setDrafts, back, null);
      setChosen(back);
    });
  }

  const row = rows.find((r) => r.puppy.id === inHandId) ?? null;
  const questioned =
    row !== null && row.doubt !== null && isHeld(row, pending) && (draft === undefined || draft === questionText(row, pending));
  const swap = swapOf(growth, row?.reading?.id ?? null, draft === undefined && !(row?.reading?.kept ?? false));
  const expected = useExpected(input, inHandId, day, session);

  return {
    rows,
    inHandId,
    text,
    mistake: inHandId === null ? null : (mistakes.get(inHandId) ?? null),
    field: draft !== undefined && draft !== '' && !questioned ? 'typing' : text === '' && existing === null ? 'empty' : 'written',
    fromScale: fromScale !== null,
    growth,
    weighedIds: new Set(order.filter((p) => weighed(p.id)).map((p) => p.id)),
    expected,
    nextId: inHandId === null ? null : after(inHandId),
    swap,
    type: (next) => {
      if (inHandId === null) return;
      setChosen(inHandId);
      setIn(setDrafts, inHandId, next);
      setIn(setMistakes, inHandId, null);
    },
    fill: (id, grams) => {
      const given = { id, text: words.massText(grams, unit), grams: toGrams(grams) };
      setChosen(id);
      setFilled(given);
      setIn(setDrafts, id, given.text);
      setIn(setMistakes, id, null);
      return given.text;
    },
    enter: () => {
      if (row === null) return;
      if (questioned) {
        keep(row);
        return;
      }
      if (swap !== null) {
        keepBoth(swap, row.puppy.id);
        return;
      }
      if (text.trim() === '' || (draft === undefined && row.reading !== null)) {
        setChosen(after(row.puppy.id));
        return;
      }
      const parsed = fromScale === null ? parseTyped(text, unit) : { ok: true as const, grams: fromScale.grams, unit };
      if (!parsed.ok) {
        setIn(setMistakes, row.puppy.id, parsed.fault);
        return;
      }
      const at = takenAt(day, session, now().local);
      const doubt = input === null ? null : doubtAbout(without(input, row), row.puppy.id, instantOf(at), at, parsed.grams, unit);
      const changedPlaces = doubt === null && swapOf(growth, DRAFT_ID, true) !== null;
      write(row, parsed.grams, text, parsed.unit, doubt !== null, fromScale === null ? 'keyboard' : 'scale');
      setChosen(doubt === null && !changedPlaces ? after(row.puppy.id) : row.puppy.id);
    },
    exchange: () => {
      if (swap?.withReadingId == null || row === null) return;
      const [readingId, withReadingId, id] = [swap.readingId, swap.withReadingId, row.puppy.id];
      setChosen(after(id));
      void inOrder(async (run) => {
        const result = await run('growth.exchange', { readingId, withReadingId });
        if (!result.ok) setChosen(id);
      });
    },
    takeGuess: () => {
      const guess = row?.doubt?.guessGrams ?? null;
      if (row === null || guess === null || !questioned) return;
      write(row, guess as Grams, String(guess), 'g', false, 'keyboard');
      setChosen(after(row.puppy.id));
    },
    undo: () => {
      if (inHandId !== null && draft !== undefined && draft !== '' && !questioned) {
        setIn(setDrafts, inHandId, null);
        setIn(setMistakes, inHandId, null);
        return;
      }
      goBack('records.undo');
    },
    redo: () => goBack('records.redo'),
    take: setChosen,
    step: (by) => {
      const at = order.findIndex((p) => p.id === inHandId);
      const next = order[at === -1 ? (by === 1 ? 0 : order.length - 1) : at + by];
      if (next !== undefined) setChosen(next.id);
    },
    arrange: (by) => {
      const at = order.findIndex((p) => p.id === inHandId);
      const ids = order.map((p) => p.id);
      const [moved, other] = [ids[at], ids[at + by]];
      if (moved === undefined || other === undefined || facts.litter === null) return;
      ids[at] = other;
      ids[at + by] = moved;
      const gone = facts.puppies.filter((p) => !ids.includes(p.id)).map((p) => p.id);
      const litterId = facts.litter.id;
      void inOrder(async (run) => {
        await run('litter.arrange', { litterId, puppyIds: [...ids, ...gone] });
      });
    },
  };
}

/** The exchange that a reading is part of, as far as the litter's weights say; only `asked`, null otherwise. */
function swapOf(growth: LitterGrowth | null, readingId: string | null, asked: boolean): ReadingFinding | null {
  if (growth === null || readingId === null || !asked) return null;
  return growth.findings.find((f) => f.kind === 'swap' && (f.readingId === readingId || f.withReadingId === readingId)) ?? null;
}

function isHeld(row: WeighInRow, pending: ReadonlyMap<string, Pending>): boolean {
  return pending.get(row.puppy.id)?.held ?? row.reading?.held ?? false;
}

/** The text the question is about: as it stands in the reading, or as it was sent. */
function questionText(row: WeighInRow, pending: ReadonlyMap<string, Pending>): string | undefined {
  return pending.get(row.puppy.id)?.typed ?? row.reading?.typed;
}

function mendable(existing: Reading, day: CivilDate): boolean {
  const { local, instant } = now();
  return mends(existing, day, local, instant);
}

/** The litter's readings without the ones of this row's session that are being asked about. */
function without(input: GrowthInput, row: WeighInRow): GrowthInput {
  const id = row.reading?.id;
  return id === undefined ? input : { ...input, readings: input.readings.filter((r) => r.id !== id) };
}

function rowOf(
  puppy: Puppy,
  reading: Reading | null,
  pending: Pending | null,
  readings: readonly Reading[],
  input: GrowthInput | null,
  day: CivilDate,
  session: WeighingSession,
  unit: MassUnit,
): WeighInRow {
  const at = pending?.at ?? reading?.at ?? null;
  const instant = pending?.instant ?? reading?.instant ?? instantOf(takenAt(day, session, now().local));
  const grams = pending?.grams ?? reading?.grams ?? null;
  const held = pending?.held ?? reading?.held ?? false;
  const before = readingBefore(readings, puppy.id, instant);
  const bare: WeighInRow = { puppy, grams, reading, before, doubt: null };
  if (!held || grams === null || at === null || input === null) return bare;
  const doubt = doubtAbout(without(input, bare), puppy.id, instant, at, grams, unit);
  return { ...bare, doubt: (pending?.source ?? reading?.source) === 'scale' ? ofScale(doubt) : doubt };
}

/** A scale makes no slip of the hand: no guess, but perhaps another puppy. */
function ofScale(doubt: Doubt | null): Doubt | null {
  return doubt === null ? null : { ...doubt, question: 'another-puppy', guessGrams: null };
}

function useExpected(
  input: GrowthInput | null,
  inHandId: string | null,
  day: CivilDate,
  session: WeighingSession,
): number | null {
  return useMemo(() => {
    if (input === null || inHandId === null) return null;
    return expectedAt(input, inHandId, instantOf(takenAt(day, session, now().local)))?.grams ?? null;
  }, [input, inHandId, day, session]);
}

/** What the litter means with the weights on their way and the one being typed, as long as that one is believable. */
function useGrowthWhileTyping(
  input: GrowthInput | null,
  pending: ReadonlyMap<string, Pending>,
  inHandId: string | null,
  draft: string | undefined,
  existing: Reading | null,
  day: CivilDate,
  session: WeighingSession,
  unit: MassUnit,
): LitterGrowth | null {
  return useMemo(() => {
    if (input === null) return null;
    let readings = input.readings;
    for (const [puppyId, p] of pending) {
      if (p.held) continue;
      const mended = readings.filter((r) => !(r.puppyId === puppyId && r.session === session && dateOf(r.at) === day));
      readings = [
        ...mended,
        {
          id: `pending-${puppyId}`,
          puppyId,
          at: p.at,
          instant: p.instant,
          grams: p.grams,
          unit: p.unit,
          session,
          held: false,
          kept: false,
        },
      ];
    }
    const parsed = draft === undefined ? null : parseMass(draft, unit);
    if (parsed?.ok === true && inHandId !== null) {
      const at = existing?.at ?? takenAt(day, session, now().local);
      const instant = existing?.instant ?? instantOf(at);
      const others = readings.filter((r) => r.id !== existing?.id);
      if (doubtAbout({ ...input, readings: others }, inHandId, instant, at, parsed.grams, unit) === null) {
        readings = [
          ...others,
          {
            id: DRAFT_ID,
            puppyId: inHandId,
            at,
            instant,
            grams: parsed.grams,
            unit: parsed.unit,
            session,
            held: false,
            kept: false,
          },
        ];
      }
    }
    return assessLitter({ ...input, readings });
  }, [input, pending, inHandId, draft, existing, day, session, unit]);
}
