import { clamp } from '../../core/statistics/clamp.ts';

/**
 * Moves labels apart: each as near to where it wants to be as a distance of `gap` and the bounds allow, order kept, ties in the
 * order given. When there is no room for all at `gap`, they share the room evenly.
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const apart = Math.min(gap, order.length < 2 ? gap : (high - low) / (order.length - 1));
  // Blocks of labels that touch; two that come too close become one block around their common middle.
  let blocks: { first: number; count: number; sum: number }[] = [];
  for (const [place, i] of order.entries()) {
    blocks.push({ first: place, count: 1, sum: clamp(wanted[i] ?? 0, low, Math.max(low, high)) - place * apart });
    for (;;) {
      const [last, before] = [blocks.at(-1), blocks.at(-2)];
      if (last === undefined || before === undefined || before.sum / before.count <= last.sum / last.count) break;
      blocks = [...blocks.slice(0, -2), { first: before.first, count: before.count + last.count, sum: before.sum + last.sum }];
    }
  }
  const result = wanted.map(() => 0);
  for (const block of blocks) {
    const shift = clamp(block.sum / block.count, low, Math.max(low, high - (order.length - 1) * apart));
    for (let k = 0; k < block.count; k += 1) result[order[block.first + k] ?? 0] = shift + (block.first + k) * apart;
  }
  return result;
}
