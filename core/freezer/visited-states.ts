/** Which states of a thaw plan were reached before. */
import { SHORT_COUNTS, type State, type Task } from './walk.ts';

/**
 * States that were reached before. Of two that are at the same meal with the same portions gone, the one that wasted less also lacks that much
 * less, and can do all that the other can: it is no worse.
 */
export class VisitedStates {
  private readonly byNeed: Map<number | string, number>[];
  private readonly radix: readonly number[];
  private readonly isSmall: boolean;

  constructor(task: Task) {
    this.byNeed = task.lacks.map(() => new Map());
    this.radix = task.sizes.map((s) => s.places.length + 1);
    this.isSmall = this.radix.reduce((product, r) => product * r, 1) < Number.MAX_SAFE_INTEGER;
  }

  /** Whether such a state was reached at no greater cost. Remembers it when not. */
  isNoBetter(s: State): boolean {
    const costs = this.byNeed[s.need];
    if (costs === undefined) return false;
    const key = this.keyOf(s);
    const before = costs.get(key);
    if (before !== undefined && before <= s.cost) return true;
    costs.set(key, s.cost);
    return false;
  }

  private keyOf(s: State): number | string {
    // After a meal that went short the argument doesn't hold.
    if (!this.isSmall || s.cost >= SHORT_COUNTS) return `${s.lacks},${s.gone.join()}`;
    let code = 0;
    for (const [size, r] of this.radix.entries()) code = code * r + (s.gone[size] ?? 0);
    return code;
  }
}
