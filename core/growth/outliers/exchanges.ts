/** Two opposite jumps in one session: two puppies whose weights were exchanged. */
import { type Draft, exchange, filterFrom, readingBefore, takeBack } from './draft.ts';
import { type Suspect, swapsIn } from './swaps.ts';

export function markSwaps(draft: Draft, k: number): void {
  const step = draft.steps[k];
  const rows = draft.sessions[k]?.rows ?? [];
  const suspects = rows.flatMap((row, at): Suspect[] => {
    const i = step?.innovations[at] ?? null;
    if (i === null || row.used === null) return [];
    return [
      { at, ln: Math.log(row.used), off: i.off, sd: i.sd, fixed: row.reading.kept || row.settled || row.verdict === 'exchanged' },
    ];
  });
  const pairs = swapsIn(suspects, suspects, false);
  let from = k;
  for (const [a, b] of pairs) {
    const earlier = exchangedBefore(draft, k, a, b);
    // The same two again: then the exchange before was wrong, and what is typed now is right.
    if (earlier === null) exchange(draft, k, a, b);
    else from = Math.min(from, takeBack(draft, earlier));
  }
  if (pairs.length > 0) filterFrom(draft, from);
}

/** The last readings of the two when they were exchanged with each other. */
function exchangedBefore(draft: Draft, k: number, a: number, b: number): { k: number; a: number; b: number } | null {
  const [one, two] = [draft.sessions[k]?.rows[a], draft.sessions[k]?.rows[b]];
  const before = one === undefined ? null : readingBefore(draft, k, one.index);
  const other = two === undefined ? null : readingBefore(draft, k, two.index);
  if (before === null || other === null || before.k !== other.k || before.row.verdict !== 'exchanged') return null;
  return before.row.partner === other.row.reading.id ? { k: before.k, a: before.at, b: other.at } : null;
}
