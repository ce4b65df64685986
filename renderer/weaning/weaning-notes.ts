import { dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { WeaningNote } from '../../core/weaning/eaten.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';

/** Writes into the diary of weaning, about a day; answers whether it was kept. */
export async function writeNote(
  litterId: string,
  day: CivilDate,
  note: WeaningNote,
  puppyId: string | null = null,
): Promise<boolean> {
  const { instant, local } = now();
  const done = await run('weaning.note', { litterId, puppyId, day, at: local, instant, note });
  return done.ok;
}

/** The same, about today. */
export function writeToday(litterId: string, note: WeaningNote, puppyId: string | null = null): Promise<boolean> {
  return writeNote(litterId, dateOf(now().local), note, puppyId);
}

/** Takes one note back, as when a key was hit by mistake. */
export async function takeNoteBack(eventId: string): Promise<void> {
  await run('weaning.takeBack', { eventId });
}
