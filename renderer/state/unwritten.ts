/**
 * Weights that were typed and are not in the file yet. Each stands under the puppy, day and time that it was meant for, whatever page is open.
 * They outlive a page that is loaded again and a host that is started again at the same address. A browser keeps them for each tab by itself; the
 * desktop, which has one window, for its next start.
 */
import { z } from 'zod';
import { create } from 'zustand';
import { readingFieldsSchema, SESSIONS } from '../../core/litter/litter.ts';
import { dateSchema, idSchema } from '../../core/units/fields.ts';

const unwrittenSchema = z.strictObject({
  /** Of this window; the file gives the reading its own. */
  id: z.string(),
  litterId: idSchema,
  puppyId: idSchema,
  day: dateSchema,
  session: z.enum(SESSIONS),
  reading: readingFieldsSchema,
  /** The reading that it takes the place of, if it mends one. */
  replaces: idSchema.nullable(),
  /** One of this window that was still on its way when this was typed over it. */
  after: z.string().nullable(),
  /** She has said that it is right although it was doubted. */
  keep: z.boolean(),
  /** `sending` for the first time · `waiting` since it failed · `refused` for good: sending it again would not help. */
  state: z.enum(['sending', 'waiting', 'refused']),
});
export type Unwritten = z.infer<typeof unwrittenSchema>;

const KEY = 'unwritten';
const storage = 'whelpside' in window ? localStorage : sessionStorage;

interface UnwrittenState {
  /** In the order they were typed. */
  readonly all: readonly Unwritten[];
  put(item: Unwritten): void;
  change(id: string, change: Partial<Unwritten>): void;
  drop(id: string): void;
}

export const useUnwritten = create<UnwrittenState>()((set) => ({
  all: remembered(),
  put: (item) => set(({ all }) => ({ all: [...all, item] })),
  change: (id, change) => set(({ all }) => ({ all: all.map((item) => (item.id === id ? { ...item, ...change } : item)) })),
  drop: (id) => set(({ all }) => ({ all: all.filter((item) => item.id !== id) })),
}));

useUnwritten.subscribe(({ all }) => {
  if (all.length === 0) storage.removeItem(KEY);
  else storage.setItem(KEY, JSON.stringify(all));
});

/** What an earlier page of this window left; nothing of it is known to be on its way. */
function remembered(): Unwritten[] {
  try {
    const read = z.array(unwrittenSchema).safeParse(JSON.parse(storage.getItem(KEY) ?? '[]'));
    return read.success ? read.data.map((item) => (item.state === 'sending' ? { ...item, state: 'waiting' } : item)) : [];
  } catch {
    return [];
  }
}

/** Those that a failure has kept out of the file. */
export function notWritten(all: readonly Unwritten[]): Unwritten[] {
  return all.filter((item) => item.state !== 'sending');
}
