/** Brings typed weights into the file in the order they were typed. What fails waits and is tried again, before anything typed after it. */
import type { ErrorCode } from '../../core/contract/result.ts';
import type { Reading } from '../../core/litter/litter.ts';
import { type Unwritten, useUnwritten } from '../state/unwritten.ts';
import { call } from './host.ts';
import { inOrder, type Run } from './query.ts';

const TRY_AGAIN_MS = 5_000;

/** With these the weight itself is what can't be written; with all others the file or the host is in the way for a while. */
const FOR_GOOD: readonly ErrorCode[] = ['bad-input', 'not-found', 'conflict', 'refused'];

/** Readings by the id of this window under which they were typed. */
const readingIds = new Map<string, string>();
const waitingFor = new Map<string, (reading: Reading) => void>();
let flushing = false;
let again: ReturnType<typeof setTimeout> | null = null;

/** Writes a weight; resolves once it is in the file, which may be much later. */
export function writeWeight(item: Omit<Unwritten, 'state'>): Promise<Reading> {
  useUnwritten.getState().put({ ...item, state: 'sending' });
  return new Promise((resolve) => {
    waitingFor.set(item.id, resolve);
    void flush();
  });
}

/** The reading that a typed weight became; null while it is not written. */
export function readingIdOf(unwrittenId: string): string | null {
  return readingIds.get(unwrittenId) ?? null;
}

/** Sends all that is not in the file, oldest first, until something is in the way. */
export async function flush(): Promise<void> {
  if (flushing) return;
  flushing = true;
  try {
    for (let next = first(); next !== null; next = first()) {
      const item = next;
      if (await inOrder((run) => send(run, item.id))) continue;
      holdAll();
      break;
    }
  } finally {
    flushing = false;
  }
  if (again !== null) clearTimeout(again);
  again = first() === null ? null : setTimeout(() => void flush(), TRY_AGAIN_MS);
}

/** What was typed after one that failed waits behind it. */
function holdAll(): void {
  const { all, change } = useUnwritten.getState();
  for (const { id, state } of all) if (state === 'sending') change(id, { state: 'waiting' });
}

function first(): Unwritten | null {
  return useUnwritten.getState().all.find((item) => item.state !== 'refused') ?? null;
}

/** Whether the next one may go. It is looked up again: while it waited its turn it may have been changed or taken back. */
async function send(run: Run, id: string): Promise<boolean> {
  const { all, drop, change } = useUnwritten.getState();
  const item = all.find((each) => each.id === id);
  if (item === undefined) return true;
  const known = item.state === 'waiting' ? await alreadyThere(item) : null;
  const replaces = item.replaces ?? (item.after === null ? null : readingIdOf(item.after));
  const result =
    known !== null
      ? { ok: true as const, value: { reading: known } }
      : replaces === null
        ? await run('growth.record', { puppyId: item.puppyId, reading: item.reading })
        : await run('growth.correct', { readingId: replaces, reading: item.reading });
  if (!result.ok) {
    change(id, { state: FOR_GOOD.includes(result.error.code) ? 'refused' : 'waiting' });
    return FOR_GOOD.includes(result.error.code);
  }
  const { reading } = result.value;
  readingIds.set(id, reading.id);
  const keep = useUnwritten.getState().all.find((each) => each.id === id)?.keep === true;
  if (keep) await run('growth.keep', { readingIds: [reading.id] });
  drop(id);
  waitingFor.get(id)?.(reading);
  waitingFor.delete(id);
  return true;
}

/** A host that died may have written the weight before it could say so. */
async function alreadyThere(item: Unwritten): Promise<Reading | null> {
  const asked = await call('growth.readings', { litterId: item.litterId });
  if (!asked.ok) return null;
  const { instant, grams, session, typed } = item.reading;
  return (
    asked.value.readings.find(
      (r) =>
        r.puppyId === item.puppyId &&
        r.instant === instant &&
        r.grams === grams &&
        r.session === session &&
        r.typed === typed &&
        r.supersededBy === null &&
        !r.withdrawn,
    ) ?? null
  );
}

if (useUnwritten.getState().all.length > 0) void flush();
