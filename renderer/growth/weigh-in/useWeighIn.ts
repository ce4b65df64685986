import { useMemo, useState } from 'react';
import type { LocalTime } from '../../../core/calendar/clock.ts';
import type { LitterGrowth } from '../../../core/growth/assess.ts';
import { expectedAt } from '../../../core/growth/doubt.ts';
import { type ReadingFinding, readingIdsOf } from '../../../core/growth/findings.ts';
import { parseTyped, type TypedFault } from '../../../core/growth/scale/wedge.ts';
import { weighInOrder } from '../../../core/litter/in-the-house.ts';
import { puppyName, type ReadingFields } from '../../../core/litter/litter.ts';
import { type Grams, type MassUnit, toGrams } from '../../../core/units/mass.ts';
import { instantOf, now } from '../../data/now.ts';
import { inOrder } from '../../data/query.ts';
import { flush, readingIdOf, writeWeight } from '../../data/write-weights.ts';
import type { LitterGrowthFacts } from '../../facts/useLitterGrowth.ts';
import { mends, nextToWeigh, readingOf, takenAt, type WeighInTime } from '../../facts/weigh-in.ts';
import { notWritten, useUnwritten } from '../../state/unwritten.ts';
import { words } from '../../state/words.ts';
import { asOf, DRAFT_ID, doubtIn, growthWhileTyping, type RowFacts, rowOf, swapOf, type WeighInRow } from './rows.ts';

type Source = Extract<ReadingFields['source'], 'keyboard' | 'scale'>;

export interface WeighIn {
  readonly rows: readonly WeighInRow[];
  readonly inHandId: string | null;
  readonly text: string;
  readonly mistake: TypedFault | null;
  /** The field in hand: empty; something stands in it that was written or asked about; she is typing. */
  readonly field: 'empty' | 'written' | 'typing';
  /** The weight in hand is asked about, and nothing was typed since. */
  readonly questioned: boolean;
  /** What stands in it came from the scale and waits for Enter. */
  readonly fromScale: boolean;
  readonly growth: LitterGrowth | null;
  readonly weighedIds: ReadonlySet<string>;
  /** Weights of this weigh-in that a failure keeps out of the file. */
  readonly notWritten: number;
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

type Change<V> = (f: (m: ReadonlyMap<string, V>) => ReadonlyMap<string, V>) => void;

function setIn<V>(set: Change<V>, id: string, value: V | null): void {
  set((m) => {
    const copy = new Map(m);
    if (value === null) copy.delete(id);
    else copy.set(id, value);
    return copy;
  });
}

/** The keyboard loop: number, Enter, next. A weight stays under its puppy until it is in the file, whatever the host does. */
export function useWeighIn(
  facts: LitterGrowthFacts,
  time: WeighInTime,
  firstPuppyId: string | null,
  onWritten: (row: WeighInRow, grams: number, at: LocalTime) => void,
): WeighIn {
  const { input, readings, house, litter } = facts;
  const { day, session } = time;
  const unit = house.massUnit;
  const order = useMemo(() => weighInOrder(facts.puppies, day), [facts.puppies, day]);
  const [drafts, setDrafts] = useState<ReadonlyMap<string, string>>(new Map());
  const [mistakes, setMistakes] = useState<ReadonlyMap<string, TypedFault>>(new Map());
  const [chosen, setChosen] = useState<string | null | undefined>(firstPuppyId ?? undefined);
  const [filled, setFilled] = useState<{ id: string; text: string; grams: Grams } | null>(null);
  const all = useUnwritten((s) => s.all);

  const unwritten = useMemo(() => {
    const here = all.filter((u) => u.day === day && u.session === session && order.some((p) => p.id === u.puppyId));
    return new Map(here.map((u) => [u.puppyId, u])); // of several the one typed last
  }, [all, day, session, order]);
  const rowFacts = useMemo<RowFacts>(() => ({ readings, input, time, unit }), [readings, input, time, unit]);
  const rows = useMemo(
    () => order.map((p) => rowOf(rowFacts, p, readingOf(readings, p.id, day, session), unwritten.get(p.id) ?? null)),
    [order, rowFacts, readings, day, session, unwritten],
  );
  const weighedIds = new Set(rows.filter((r) => r.grams !== null).map((r) => r.puppy.id));
  const inHandId = chosen === undefined ? nextToWeigh(order, null, (id) => weighedIds.has(id)) : chosen;
  const row = rows.find((r) => r.puppy.id === inHandId) ?? null;
  const draft = inHandId === null ? undefined : drafts.get(inHandId);
  const text = draft ?? (row === null ? '' : standingText(row, time));
  const growth = useMemo(
    () =>
      growthWhileTyping(
        rowFacts,
        [...unwritten.values()],
        row === null ? null : { id: row.puppy.id, draft, existing: row.reading },
      ),
    [rowFacts, unwritten, row, draft],
  );
  const fromScale = filled !== null && filled.id === inHandId && filled.text === draft ? filled : null;
  const questioned = row?.doubt != null && draft === undefined;
  const asksSwap = draft === undefined && row?.reading?.kept !== true;
  const swap = asksSwap ? swapOf(growth, row?.reading?.id ?? row?.unwritten?.id ?? null) : null;
  const expected = useMemo(() => {
    if (input === null || inHandId === null) return null;
    return expectedAt(asOf(input, time), inHandId, instantOf(takenAt(time, now().local)))?.grams ?? null;
  }, [input, inHandId, time]);
  const after = (id: string) => nextToWeigh(order, id, (other) => other === id || weighedIds.has(other));
  const forget = (id: string) => {
    setIn(setDrafts, id, null);
    setIn(setMistakes, id, null);
  };

  function write(of: WeighInRow, grams: Grams, typed: string, typedUnit: MassUnit, held: boolean, source: Source): void {
    if (litter === null) return;
    const { local, instant } = now();
    const old = of.reading;
    const mending = old !== null && mends(old, day, local, instant);
    const at = mending ? old.at : takenAt(time, local);
    const reading: ReadingFields = {
      at,
      instant: mending ? old.instant : at === local ? instant : instantOf(at),
      session,
      grams,
      typed: typed.trim().slice(0, 40),
      unit: typedUnit,
      source,
      held,
    };
    const id = of.puppy.id;
    forget(id);
    const before = of.unwritten;
    // One that failed was never in the file: the new one takes its place in the row and in the order.
    if (before !== null && before.state !== 'sending') {
      useUnwritten.getState().change(before.id, { reading, keep: false, state: 'waiting' });
      void flush();
      return;
    }
    const item = {
      id: crypto.randomUUID(),
      litterId: litter.id,
      puppyId: id,
      day,
      session,
      reading,
      replaces: mending && before === null ? old.id : null,
      after: before?.id ?? null,
      keep: false,
    };
    void writeWeight(item).then(() => {
      if (!held) onWritten(of, grams, at);
    });
  }

  function keepReadings(ids: readonly string[], of: string): void {
    setChosen(after(of));
    void inOrder(async (run) => {
      await run('growth.keep', { readingIds: ids.map((id) => readingIdOf(id) ?? id) });
    });
  }

  function keep(of: WeighInRow): void {
    if (of.unwritten === null) {
      if (of.reading !== null) keepReadings([of.reading.id], of.puppy.id);
      return;
    }
    useUnwritten.getState().change(of.unwritten.id, { keep: true });
    setChosen(after(of.puppy.id));
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

  function undo(): void {
    if (inHandId !== null && draft !== undefined && draft !== '') {
      forget(inHandId);
      return;
    }
    const failed = notWritten([...unwritten.values()]).at(-1);
    if (failed === undefined) {
      goBack('records.undo');
      return;
    }
    useUnwritten.getState().drop(failed.id);
    setChosen(failed.puppyId);
  }

  function enter(): void {
    if (row === null) return;
    if (questioned) {
      keep(row);
      return;
    }
    if (swap !== null) {
      keepReadings(readingIdsOf(swap), row.puppy.id);
      return;
    }
    if (text.trim() === '' || (draft === undefined && row.grams !== null)) {
      setChosen(after(row.puppy.id));
      return;
    }
    const named = namedBy(rows, text);
    if (named !== null) {
      forget(row.puppy.id);
      setChosen(named);
      return;
    }
    const parsed = fromScale === null ? parseTyped(text, unit) : { ok: true as const, grams: fromScale.grams, unit };
    if (!parsed.ok) {
      setIn(setMistakes, row.puppy.id, parsed.fault);
      return;
    }
    const at = takenAt(time, now().local);
    const taken = { at, instant: instantOf(at), grams: parsed.grams };
    const doubt = doubtIn(rowFacts, row.puppy.id, taken, row.reading?.id ?? null);
    const changedPlaces = doubt === null && swapOf(growth, DRAFT_ID) !== null;
    write(row, parsed.grams, text, parsed.unit, doubt !== null, fromScale === null ? 'keyboard' : 'scale');
    setChosen(doubt === null && !changedPlaces ? after(row.puppy.id) : row.puppy.id);
  }

  return {
    rows,
    inHandId,
    text,
    mistake: inHandId === null ? null : (mistakes.get(inHandId) ?? null),
    field: draft !== undefined && draft !== '' ? 'typing' : text === '' && row?.grams == null ? 'empty' : 'written',
    questioned,
    fromScale: fromScale !== null,
    growth,
    weighedIds,
    notWritten: notWritten([...unwritten.values()]).length,
    expected,
    nextId: inHandId === null ? null : after(inHandId),
    swap,
    type: (next) => {
      if (inHandId === null) return;
      // Typed after a question it is another number, not more figures of the doubted one.
      const fresh = questioned && next.length === text.length + 1 && next.startsWith(text) ? next.slice(text.length) : next;
      setChosen(inHandId);
      setIn(setDrafts, inHandId, fresh);
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
    enter,
    exchange: () => {
      if (swap?.withReadingId == null || row === null) return;
      const { readingId, withReadingId } = swap;
      setChosen(after(row.puppy.id));
      void inOrder(async (run) => {
        const other = readingIdOf(withReadingId) ?? withReadingId;
        await run('growth.exchange', { readingId: readingIdOf(readingId) ?? readingId, withReadingId: other });
      });
    },
    takeGuess: () => {
      const guess = row?.doubt?.guessGrams ?? null;
      if (row === null || guess === null || !questioned) return;
      write(row, guess as Grams, String(guess), 'g', false, 'keyboard');
      setChosen(after(row.puppy.id));
    },
    undo,
    redo: () => goBack('records.redo'),
    take: setChosen,
    step: (by) => {
      const at = order.findIndex((p) => p.id === inHandId);
      const next = order[at === -1 ? (by === 1 ? 0 : order.length - 1) : at + by];
      if (next !== undefined) setChosen(next.id);
    },
    arrange: (by) => {
      const ids = order.map((p) => p.id);
      const at = ids.indexOf(inHandId ?? '');
      const [moved, other] = [ids[at], ids[at + by]];
      if (moved === undefined || other === undefined || litter === null) return;
      ids[at] = other;
      ids[at + by] = moved;
      const gone = facts.puppies.filter((p) => !ids.includes(p.id)).map((p) => p.id);
      void inOrder((run) => run('litter.arrange', { litterId: litter.id, puppyIds: [...ids, ...gone] }));
    },
  };
}

/** The puppy that is called by its collar's letter or its name; null when what was typed is no name. */
function namedBy(rows: readonly WeighInRow[], text: string): string | null {
  const called = text.trim().toLowerCase();
  const by = (nameOf: (row: WeighInRow) => string) => rows.find((r) => nameOf(r).toLowerCase() === called)?.puppy.id ?? null;
  return by((r) => r.puppy.collar.letter) ?? by((r) => puppyName(r.puppy));
}

/** What stands in the field of a row that nothing was typed in: the weight that a number typed now would mend. */
function standingText({ reading, unwritten }: WeighInRow, { day }: WeighInTime): string {
  if (unwritten !== null) return unwritten.reading.typed;
  const { local, instant } = now();
  return reading !== null && mends(reading, day, local, instant) ? reading.typed : '';
}
