import { useMemo, useState } from 'react';
import type { LocalTime } from '../../../core/calendar/clock.ts';
import type { LitterGrowth } from '../../../core/growth/assess.ts';
import { expectedAt } from '../../../core/growth/doubt.ts';
import { type ReadingFinding, readingIdsOf } from '../../../core/growth/findings.ts';
import { parseTyped, type TypedFault } from '../../../core/growth/scale/wedge.ts';
import { weighInOrder } from '../../../core/litter/in-the-house.ts';
import type { Puppy } from '../../../core/litter/litter.ts';
import { type Grams, toGrams } from '../../../core/units/mass.ts';
import { instantOf, now } from '../../data/now.ts';
import { run } from '../../data/query.ts';
import type { LitterGrowthFacts } from '../../facts/useLitterGrowth.ts';
import { nextToWeigh, readingOf, takenAt, type WeighInTime } from '../../facts/weigh-in.ts';
import { notWritten, type Unwritten, useUnwritten } from '../../state/unwritten.ts';
import { words } from '../../state/words.ts';
import {
  asOf,
  DRAFT_ID,
  doubtIn,
  growthWhileTyping,
  namedBy,
  type RowFacts,
  rowOf,
  standingText,
  swapOf,
  type WeighInRow,
  withUnwritten,
} from './rows.ts';
import { type Draft, type Typed, useTyped } from './useTyped.ts';
import { exchangeWeights, giveWeight, goBack, keepReadings, keepWeight, putWeight, type TypedWeight } from './writing.ts';

interface WeighInState {
  readonly rows: readonly WeighInRow[];
  readonly inHandId: string | null;
  readonly text: string;
  readonly mistake: TypedFault | null;
  /** The field in hand: empty; something stands in it that was written or asked about; she is typing. */
  readonly field: 'empty' | 'written' | 'typing';
  /** The weight in hand is asked about, and nothing was typed since. */
  readonly questioned: boolean;
  /** The littermate that the weight in hand is asked to belong to. */
  readonly littermate: Puppy | null;
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
}

export interface WeighIn extends WeighInState {
  type(text: string): void;
  /** Fills a weight of the scale into a puppy's field, as if typed, and takes that puppy in hand. Answers the text. */
  fill(puppyId: string, grams: number): string;
  /** `isSure`: she was asked about it already, and said that it is right. */
  enter(isSure?: boolean): void;
  takeGuess(): void;
  /** The weight in hand is that of the littermate it was asked about; the puppy in hand is still to be weighed. */
  giveAway(): void;
  exchange(): void;
  undo(): void;
  redo(): void;
  take(puppyId: string): void;
  step(by: 1 | -1): void;
  arrange(by: 1 | -1): void;
}

/** What every key of the weigh-in works on. */
interface Hand {
  readonly facts: LitterGrowthFacts;
  readonly time: WeighInTime;
  readonly state: WeighInState;
  readonly rowFacts: RowFacts;
  readonly order: readonly Puppy[];
  readonly row: WeighInRow | null;
  readonly draft: Draft | undefined;
  readonly unwritten: readonly Unwritten[];
  readonly typed: Typed;
  readonly choose: (puppyId: string | null) => void;
  readonly onWritten: (row: WeighInRow, grams: number, at: LocalTime) => void;
}

/** The keyboard loop: number, Enter, next. A weight stays under its puppy until it is in the file, whatever the host does. */
export function useWeighIn(
  facts: LitterGrowthFacts,
  time: WeighInTime,
  firstPuppyId: string | null,
  onWritten: (row: WeighInRow, grams: number, at: LocalTime) => void,
): WeighIn {
  const order = useMemo(() => weighInOrder(facts.puppies, time.day), [facts.puppies, time.day]);
  const typed = useTyped();
  const [chosen, choose] = useState<string | null | undefined>(firstPuppyId ?? undefined);
  const unwritten = useUnwrittenOf(order, time);
  const { rows, rowFacts } = useRows(facts, time, order, unwritten);
  const weighedIds = new Set(rows.filter((r) => r.grams !== null).map((r) => r.puppy.id));
  const inHandId = chosen === undefined ? nextToWeigh(order, null, (id) => weighedIds.has(id)) : chosen;
  const row = rows.find((r) => r.puppy.id === inHandId) ?? null;
  const draft = typed.of(inHandId);
  const draftText = draft?.text;
  const growth = useMemo(
    () => growthWhileTyping(rowFacts, row === null ? null : { row, text: draftText }),
    [rowFacts, row, draftText],
  );
  const expected = useMemo(() => {
    if (facts.input === null || inHandId === null) return null;
    return expectedAt(asOf(facts.input, time), inHandId, instantOf(takenAt(time, now().local)))?.grams ?? null;
  }, [facts.input, inHandId, time]);
  const text = draftText ?? (row === null ? '' : standingText(row, time));
  const questioned = row?.doubt != null && draft === undefined;
  const asksSwap = draft === undefined && row?.reading?.kept !== true;
  const state: WeighInState = {
    rows,
    inHandId,
    text,
    mistake: draft?.fault ?? null,
    field: draft !== undefined && draft.text !== '' ? 'typing' : text === '' && row?.grams == null ? 'empty' : 'written',
    questioned,
    littermate: (questioned && order.find((p) => p.id === row.doubt?.littermate?.puppyId)) || null,
    fromScale: draft?.fromScale != null,
    growth,
    weighedIds,
    notWritten: notWritten(unwritten).length,
    expected,
    nextId: inHandId === null ? null : nextToWeigh(order, inHandId, (id) => weighedIds.has(id)),
    swap: asksSwap ? swapOf(growth, row?.reading?.id ?? row?.unwritten?.id ?? null) : null,
  };
  const hand: Hand = { facts, time, state, rowFacts, order, row, draft, unwritten, typed, choose, onWritten };
  return { ...state, ...answersOf(hand), ...movesOf(hand), enter: (isSure = false) => enter(hand, isSure) };
}

/** The weights of this weigh-in that are not in the file, as they were typed; of several of a puppy the last. */
function useUnwrittenOf(order: readonly Puppy[], { day, session }: WeighInTime): readonly Unwritten[] {
  const all = useUnwritten((s) => s.all);
  return useMemo(() => {
    const here = all.filter((u) => u.day === day && u.session === session && order.some((p) => p.id === u.puppyId));
    return [...new Map(here.map((u) => [u.puppyId, u])).values()];
  }, [all, day, session, order]);
}

function useRows(facts: LitterGrowthFacts, time: WeighInTime, order: readonly Puppy[], unwritten: readonly Unwritten[]) {
  const { input, readings, house } = facts;
  const rowFacts = useMemo<RowFacts>(
    () => ({ readings, input: input === null ? null : withUnwritten(input, unwritten), time, unit: house.massUnit }),
    [readings, input, unwritten, time, house.massUnit],
  );
  const rows = useMemo(() => {
    const waiting = new Map(unwritten.map((u) => [u.puppyId, u]));
    const { day, session } = time;
    return order.map((p) => rowOf(rowFacts, p, readingOf(readings, p.id, day, session), waiting.get(p.id) ?? null));
  }, [order, rowFacts, readings, time, unwritten]);
  return { rows, rowFacts };
}

function write({ facts, time, typed, onWritten }: Hand, of: WeighInRow, weight: TypedWeight): void {
  if (facts.litter === null) return;
  typed.forget(of.puppy.id);
  void putWeight(facts.litter.id, time, of, weight).then((at) => {
    if (at !== null && !weight.held) onWritten(of, weight.grams, at);
  });
}

/** Enter: keeps what was asked about, takes a puppy in hand by its name, or writes the weight and goes on. */
function enter(hand: Hand, isSure: boolean): void {
  const { state, row, rowFacts, time, draft, typed, choose } = hand;
  if (row === null) return;
  const { id } = row.puppy;
  if (state.questioned) {
    keepWeight(row);
    choose(state.nextId);
    return;
  }
  if (state.swap !== null) {
    keepReadings(readingIdsOf(state.swap));
    choose(state.nextId);
    return;
  }
  if (draft === undefined ? row.grams !== null || state.text.trim() === '' : draft.text.trim() === '') {
    choose(state.nextId);
    return;
  }
  const named = namedBy(state.rows, state.text);
  if (named !== null) {
    typed.forget(id);
    choose(named);
    return;
  }
  const { unit } = rowFacts;
  const weighed = draft?.fromScale ?? null;
  const parsed = weighed === null ? parseTyped(state.text, unit) : { ok: true as const, grams: weighed, exact: weighed, unit };
  if (!parsed.ok) {
    typed.put(id, { text: state.text, fault: parsed.fault, fromScale: null });
    return;
  }
  const at = takenAt(time, now().local);
  const taken = { at, instant: instantOf(at), grams: parsed.exact };
  const doubt = doubtIn(rowFacts, id, taken, row.unwritten?.id ?? row.reading?.id ?? null);
  const held = doubt !== null;
  const source = weighed === null ? 'keyboard' : 'scale';
  write(hand, row, { grams: parsed.grams, typed: state.text, unit: parsed.unit, source, held, keep: held && isSure });
  const asks = doubt === null ? swapOf(state.growth, DRAFT_ID) !== null : !isSure;
  choose(asks ? id : state.nextId);
}

function answersOf(hand: Hand): Pick<WeighIn, 'type' | 'fill' | 'takeGuess' | 'giveAway' | 'exchange' | 'undo' | 'redo'> {
  const { facts, order, state, row, draft, unwritten, typed, choose } = hand;
  const { inHandId, questioned, text } = state;
  const back = (operation: 'records.undo' | 'records.redo') =>
    void goBack(operation).then((puppyId) => {
      if (puppyId === null || !order.some((p) => p.id === puppyId)) return;
      typed.forget(puppyId);
      choose(puppyId);
    });
  return {
    type: (next) => {
      if (inHandId === null) return;
      // Typed after a question it is another number, not more figures of the doubted one.
      const fresh = questioned && next.length === text.length + 1 && next.startsWith(text) ? next.slice(text.length) : next;
      choose(inHandId);
      typed.put(inHandId, { text: fresh, fault: null, fromScale: null });
    },
    fill: (puppyId, grams) => {
      const filled = words.massText(grams, facts.house.massUnit);
      choose(puppyId);
      typed.put(puppyId, { text: filled, fault: null, fromScale: toGrams(grams) });
      return filled;
    },
    takeGuess: () => {
      const guess = row?.doubt?.guessGrams ?? null;
      if (row === null || guess === null || !questioned) return;
      write(hand, row, { grams: guess as Grams, typed: String(guess), unit: 'g', source: 'keyboard', held: false, keep: false });
      choose(state.nextId);
    },
    giveAway: () => {
      if (row === null || state.littermate === null) return;
      choose(row.puppy.id);
      void giveWeight(row, state.littermate.id);
    },
    exchange: () => {
      if (state.swap?.withReadingId == null) return;
      choose(state.nextId);
      exchangeWeights(state.swap.readingId, state.swap.withReadingId);
    },
    undo: () => {
      const failed = notWritten(unwritten).at(-1);
      if (inHandId !== null && draft !== undefined && draft.text !== '') typed.forget(inHandId);
      else if (failed === undefined) back('records.undo');
      else {
        useUnwritten.getState().drop(failed.id);
        choose(failed.puppyId);
      }
    },
    redo: () => back('records.redo'),
  };
}

function movesOf({ facts, order, state, choose }: Hand): Pick<WeighIn, 'take' | 'step' | 'arrange'> {
  return {
    take: choose,
    step: (by) => {
      const at = order.findIndex((p) => p.id === state.inHandId);
      const next = order[at === -1 ? (by === 1 ? 0 : order.length - 1) : at + by];
      if (next !== undefined) choose(next.id);
    },
    arrange: (by) => {
      const ids = order.map((p) => p.id);
      const at = ids.indexOf(state.inHandId ?? '');
      const [moved, other] = [ids[at], ids[at + by]];
      if (moved === undefined || other === undefined || facts.litter === null) return;
      ids[at] = other;
      ids[at + by] = moved;
      const gone = facts.puppies.filter((p) => !ids.includes(p.id)).map((p) => p.id);
      void run('litter.arrange', { litterId: facts.litter.id, puppyIds: [...ids, ...gone] });
    },
  };
}
