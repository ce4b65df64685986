/** The method of the program, as a method to be measured. */

import { findingsIn } from '../../core/growth/findings.ts';
import { historyOf } from '../../core/growth/history.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import type { Level, Seen } from './measure.ts';

export function program(input: GrowthInput): Seen[] {
  const known = new Set<string>();
  return historyOf(input).map((k) => {
    const session = k.cleaned.sessions.at(-1);
    const rows = session?.rows ?? [];
    const now = rows.at(-1)?.reading.at;
    const findings = now === undefined ? [] : findingsIn(k.cleaned, now, input.puppies);
    const fresh = findings.filter((f) => !known.has(`${f.readingId} ${f.withReadingId}`));
    for (const f of fresh) known.add(`${f.readingId} ${f.withReadingId}`);
    return {
      instant: session?.instant ?? 0,
      puppies: new Map(rows.map((r): [string, Level] => [r.puppy.id, k.puppies[r.index]?.level ?? 'steady'])),
      litter: k.litter.level,
      flagged: fresh,
    };
  });
}
