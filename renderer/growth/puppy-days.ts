/** A puppy's readings as rows of a record: what each weighed, against the one before, and where it stood. */
import type { GrowthInput } from '../../core/growth/input.ts';
import { standingsOf } from '../../core/growth/series.ts';
import type { Reading } from '../../core/litter/litter.ts';
import { isCurrent } from '../../core/litter/litter.ts';

export interface RecordRow {
  readonly reading: Reading;
  /** Difference to the counted reading before, null for the first and for those that do not count. */
  readonly gain: number | null;
  readonly standing: number | null;
}

/** Latest first. Readings that were replaced or taken back are in it: struck through, never gone. */
export function recordOf(readings: readonly Reading[], input: GrowthInput, puppyId: string): RecordRow[] {
  const standings = new Map(standingsOf(input, puppyId).map((s) => [s.at, s.standing]));
  const own = readings
    .filter((r) => r.puppyId === puppyId)
    .toSorted((a, b) => a.instant - b.instant || a.recordedInstant - b.recordedInstant);
  let before: Reading | null = null;
  const rows: RecordRow[] = [];
  for (const reading of own) {
    const counts = isCurrent(reading) && !reading.held;
    rows.push({
      reading,
      gain: counts && before !== null ? reading.grams - before.grams : null,
      standing: counts ? (standings.get(reading.at) ?? null) : null,
    });
    if (counts) before = reading;
  }
  return rows.reverse();
}
