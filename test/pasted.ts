/** A log of one puppy's weights as it is pasted into the import page, and everything that happens to it until it is written. */

import { fromLocalMinutes, localMinutes, localTime } from '../core/calendar/clock.ts';
import { DEFAULT_HOUSE } from '../core/people/house.ts';
import { type Table, tableOfText } from '../core/records/table.ts';
import type { Dispatch } from '../main/service/dispatch.ts';
import { EMPTY_DRAFT, findingsOf, importInput, previewOf, withSource } from '../renderer/records/import-draft.ts';

const BORN = localTime('2026-03-01T02:00');

/** So many weights in eight weeks, as text. */
export function pastedLog(count: number): string {
  const lines = Array.from({ length: count }, (_, i) => {
    const minutes = Math.floor((i * 56 * 1440) / count);
    const at = fromLocalMinutes(localMinutes(BORN) + minutes);
    return `${at.slice(0, 10)},${at.slice(11)},${Math.round(400 + minutes / 30)}`;
  });
  return `date,time,Solo\n${lines.join('\n')}\n`;
}

/** Reads the text as the page does; `table` hears of each cell that is read. What the page would send, and what it shows. */
export function previewed(text: string, heard: (table: Table) => Table = (table) => table) {
  const read = tableOfText(text);
  if (!read.ok) throw new Error(read.fault.code);
  const source = { name: '', tables: [{ name: '', table: heard(read.table) }], oldText: false };
  const draft = { ...withSource(EMPTY_DRAFT, { source }), dam: 'Sorrel', day: BORN.slice(0, 10), clock: BORN.slice(11) };
  const preview = previewOf(draft, [], () => [], DEFAULT_HOUSE);
  if (preview === null) throw new Error('nothing to show');
  const findings = findingsOf(draft, preview, { sizeClass: null, breed: '', breedBirthGrams: null }, DEFAULT_HOUSE);
  const input = importInput(draft, preview, findings);
  if (input === null) throw new Error('nothing to send');
  return { findings, input };
}

/** Writes them; answers how many. */
export async function written(dispatch: Dispatch, input: unknown): Promise<number> {
  const answer = await dispatch('records.import', input);
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return (answer.value as { readings: number }).readings;
}

/** Takes back what was written last. */
export async function takenBack(dispatch: Dispatch): Promise<void> {
  const answer = await dispatch('records.undo', {});
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
}
