/** The quiet record of a puppy: what the weights showed, and what was asked and answered about them. */
import type { LocalTime } from '../../core/calendar/clock.ts';
import type { Level } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { type LevelChange, levelChanges } from '../../core/growth/level-changes.ts';
import type { Reading } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { words } from '../state/words.ts';

export interface LogEntry {
  readonly at: LocalTime;
  /** Null for a question about a weight. */
  readonly level: Level | null;
  readonly sentence: string;
}

/** Latest first. `readings` holds those that were replaced or taken back too. */
export function logEntries(input: GrowthInput, readings: readonly Reading[], puppyId: string, unit: MassUnit): LogEntry[] {
  const answers = readings
    .filter((r) => r.puppyId === puppyId)
    .flatMap((r): LogEntry[] => {
      const sentence = answerOf(r, readings, unit);
      return sentence === null ? [] : [{ at: r.at, level: null, sentence }];
    });
  return [...levelChanges(asWeighedHere(input, puppyId), puppyId).map((s) => logEntry(s, unit)), ...answers].toSorted((a, b) =>
    a.at < b.at ? 1 : a.at > b.at ? -1 : 0,
  );
}

function logEntry(change: LevelChange, unit: MassUnit): LogEntry {
  const { at, level } = change;
  const finding = words.growthFinding;
  return {
    at,
    level,
    sentence: change.about === 'puppy' ? finding.puppy(change.finding, unit) : finding.litter(change.finding, unit),
  };
}

/** What was said while it was weighed here is not unsaid because it has left or died. */
function asWeighedHere(input: GrowthInput, puppyId: string): GrowthInput {
  return { ...input, puppies: input.puppies.map((p) => (p.id === puppyId ? { ...p, state: 'litter' } : p)) };
}

function answerOf(r: Reading, all: readonly Reading[], unit: MassUnit): string | null {
  const mass = words.massText(r.grams, unit);
  if (r.withdrawn) return words.puppyNote.takenBack(mass);
  if (r.supersededBy !== null) {
    const by = all.find((other) => other.id === r.supersededBy);
    return by === undefined ? null : words.puppyNote.replaced(mass, words.massText(by.grams, unit));
  }
  if (r.held) return words.puppyNote.open(mass);
  return r.kept ? words.puppyNote.kept(mass) : null;
}
