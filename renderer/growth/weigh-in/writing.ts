/** What is done with a weight of the weigh-in: written, kept as right, given to a littermate. Each works also while the file cannot be had. */
import type { LocalTime } from '../../../core/calendar/clock.ts';
import type { ReadingFields } from '../../../core/litter/litter.ts';
import type { Grams, MassUnit } from '../../../core/units/mass.ts';
import { instantOf, now } from '../../data/now.ts';
import { inOrder } from '../../data/query.ts';
import { flush, readingIdOf, writeWeight } from '../../data/write-weights.ts';
import { mends, takenAt, type WeighInTime } from '../../facts/weigh-in.ts';
import { useUnwritten } from '../../state/unwritten.ts';
import type { WeighInRow } from './rows.ts';

export interface TypedWeight {
  readonly grams: Grams;
  readonly typed: string;
  readonly unit: MassUnit;
  readonly source: Extract<ReadingFields['source'], 'keyboard' | 'scale'>;
  /** Doubtful: it is asked about before it counts. */
  readonly held: boolean;
  /** She was asked before it was entered. */
  readonly keep: boolean;
}

/** Puts a weight into a row; answers when it was taken once it is in the file. Null when it only took the place of one that was not. */
export async function putWeight(
  litterId: string,
  time: WeighInTime,
  { puppy, reading: old, unwritten: before }: WeighInRow,
  { keep, typed, ...weight }: TypedWeight,
): Promise<LocalTime | null> {
  const { local, instant } = now();
  const mending = old !== null && mends(old, time.day, local, instant);
  const at = mending ? old.at : takenAt(time, local);
  const reading: ReadingFields = {
    ...weight,
    at,
    instant: mending ? old.instant : at === local ? instant : instantOf(at),
    session: time.session,
    typed: typed.trim().slice(0, 40),
  };
  // One that failed was never in the file: the new one takes its place in the row and in the order.
  if (before !== null && before.state !== 'sending') {
    useUnwritten.getState().change(before.id, { reading, keep, state: 'waiting' });
    void flush();
    return null;
  }
  await writeWeight({
    id: crypto.randomUUID(),
    litterId,
    puppyId: puppy.id,
    day: time.day,
    session: time.session,
    reading,
    replaces: mending && before === null ? old.id : null,
    after: before?.id ?? null,
    keep,
  });
  return at;
}

/** Says that readings are right, by their ids in the file or in this window. */
export function keepReadings(ids: readonly string[]): void {
  void inOrder((run) => run('growth.keep', { readingIds: ids.map((id) => readingIdOf(id) ?? id) }));
}

/** Says that the weight of a row is right although it was doubted. */
export function keepWeight({ unwritten, reading }: WeighInRow): void {
  if (unwritten !== null) useUnwritten.getState().change(unwritten.id, { keep: true });
  else if (reading !== null) keepReadings([reading.id]);
}

/** The weight of a row is a littermate's: it goes there, and the row is empty again. */
export async function giveWeight({ unwritten, reading }: WeighInRow, toPuppyId: string): Promise<void> {
  await inOrder(async (run) => {
    const written = unwritten === null ? (reading?.id ?? null) : readingIdOf(unwritten.id);
    if (written !== null) await run('growth.give', { readingId: written, puppyId: toPuppyId });
    else if (unwritten !== null) {
      useUnwritten.getState().change(unwritten.id, {
        puppyId: toPuppyId,
        reading: { ...unwritten.reading, held: false },
        replaces: null,
        after: null,
        state: 'waiting',
      });
    }
  });
  void flush();
}

/** Two weights changed places. */
export function exchangeWeights(readingId: string, withReadingId: string): void {
  void inOrder((run) =>
    run('growth.exchange', {
      readingId: readingIdOf(readingId) ?? readingId,
      withReadingId: readingIdOf(withReadingId) ?? withReadingId,
    }),
  );
}

/** Undoes or does again the last thing; answers the puppy that it was about. */
export function goBack(operation: 'records.undo' | 'records.redo'): Promise<string | null> {
  return inOrder(async (run) => {
    const result = await run(operation, {});
    return result.ok ? result.value.done.puppyId : null;
  });
}
