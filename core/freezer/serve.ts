/** Feeding from what is thawed: what is thawed first is fed first, and what is over its time is not fed at all. Times in minutes, masses in tenths of a gram. */

/** Food for all who eat at one time. */
export interface Need {
  readonly at: number;
  readonly tenths: number;
}

/** Something that is thawed, or will be, and may be fed from `ready` to `useBy`, both included. */
export interface Batch {
  readonly tenths: number;
  readonly ready: number;
  readonly useBy: number;
}

export interface Use {
  /** Place of the meal in the list of needs. */
  readonly need: number;
  readonly tenths: number;
}

export interface Served {
  /** What each batch is fed to, in the order of the batches. */
  readonly uses: readonly (readonly Use[])[];
  /** What no meal eats, batch by batch. */
  readonly over: readonly number[];
  /** What each meal still lacks. */
  readonly lacking: readonly number[];
}

/**
 * Serves the needs in order of time, each from the batch that has to be used first. With batches that may be fed over a stretch of time, no
 * other order feeds more of them (earliest deadline first; Glover 1967, Naval Research Logistics Quarterly 14:313, from memory).
 */
export function serve(needs: readonly Need[], batches: readonly Batch[]): Served {
  const left = batches.map((b) => b.tenths);
  const uses: Use[][] = batches.map(() => []);
  const order = batches.map((_, i) => i).sort((a, b) => at(batches, a).ready - at(batches, b).ready);
  const lacking: number[] = [];
  const open: number[] = [];
  let next = 0;
  for (const [n, need] of needs.entries()) {
    for (; next < order.length && at(batches, at(order, next)).ready <= need.at; next += 1) open.push(at(order, next));
    let wanted = need.tenths;
    while (wanted > 0) {
      const best = firstToUse(open, batches, left, need.at);
      if (best === null) break;
      const taken = Math.min(wanted, at(left, best));
      left[best] = at(left, best) - taken;
      wanted -= taken;
      at(uses, best).push({ need: n, tenths: taken });
    }
    lacking.push(wanted);
  }
  return { uses, over: left, lacking };
}

/** Of the open batches with something left and still good, the one to be used first. Takes the others out of the list. */
function firstToUse(open: number[], batches: readonly Batch[], left: readonly number[], now: number): number | null {
  let best: number | null = null;
  for (let i = open.length - 1; i >= 0; i -= 1) {
    const b = at(open, i);
    if (at(left, b) === 0 || at(batches, b).useBy < now) open.splice(i, 1);
    else if (best === null || at(batches, b).useBy <= at(batches, best).useBy) best = b;
  }
  return best;
}

/** An element that is there; a RangeError is a mistake of the program. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no element ${index} of ${list.length}`);
  return value;
}
