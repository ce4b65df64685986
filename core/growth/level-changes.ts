/** What was seen, and when: each change of a puppy's or the litter's level, as it was found at that weighing. */
import type { LocalTime } from '../calendar/clock.ts';
import { growthAt, type Level } from './assess.ts';
import { historyOf } from './history.ts';
import type { GrowthInput } from './input.ts';
import type { LitterFinding, PuppyFinding } from './puppy-findings.ts';

export type LevelChange = { readonly at: LocalTime; readonly level: Level } & (
  | { readonly about: 'puppy'; readonly finding: PuppyFinding }
  | { readonly about: 'litter'; readonly finding: LitterFinding }
);

/** Oldest first, reckoned from the weights that stand now; being steady from the start is no entry. */
export function levelChanges(input: GrowthInput, puppyId: string): LevelChange[] {
  const index = input.puppies.findIndex((p) => p.id === puppyId);
  const changes: LevelChange[] = [];
  let before: { puppy: Level; litter: Level } = { puppy: 'steady', litter: 'steady' };
  for (const snapshot of historyOf(input)) {
    const at = snapshot.cleaned.sessions.at(-1)?.rows.at(-1)?.reading.at;
    const now = { puppy: snapshot.puppies[index]?.level ?? 'steady', litter: snapshot.litter.level };
    const changed = now.puppy !== before.puppy || now.litter !== before.litter;
    if (at !== undefined && changed) {
      const growth = growthAt(input, snapshot);
      const own = growth.puppies.get(puppyId);
      if (now.litter !== before.litter) changes.push({ about: 'litter', at, level: now.litter, finding: growth.litter.finding });
      if (now.puppy !== before.puppy && own !== undefined) {
        changes.push({ about: 'puppy', at: own.at ?? at, level: now.puppy, finding: own.finding });
      }
    }
    before = now;
  }
  return changes;
}
