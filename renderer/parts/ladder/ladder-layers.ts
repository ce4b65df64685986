import type { MealName } from '../../../core/food/bowls.ts';
import type { Measure } from '../measure.ts';
import {
  GAP,
  type LadderLook,
  type LadderText,
  type LadderTexts,
  overlaps,
  type Tread,
  weightOf,
  type Zone,
} from './ladder-look.ts';

/** The meals' names stand inside their layers, once in each stretch with its own meals, one over the other where they can. */
export function layerTexts(
  zones: readonly Zone[],
  treads: readonly Tread[],
  xOf: (day: number) => number,
  base: number,
  look: LadderLook,
  texts: LadderTexts,
  measure: Measure,
): LadderText[] {
  const settled = zones.filter((z) => !z.changing);
  return settled.flatMap((zone) => {
    const names = zone.names.map((meal) => ({
      meal,
      text: texts.layer(meal),
      width: measure(texts.layer(meal), look.layer, weightOf('layer')),
    }));
    const widest = Math.max(...names.map((n) => n.width));
    const [from, to] = [xOf(zone.from), xOf(zone.to)];
    const common = bestPlace(
      from,
      to,
      widest,
      (x) => Math.min(...names.map((n) => room(treads, n.meal, x, widest).high)),
      look.layer,
    );
    const placed: (LadderText & { meal: MealName })[] = [];
    for (const { meal, text, width } of names) {
      const x = common ?? bestPlace(from, to, width, (at) => room(treads, meal, at, width).high, look.layer);
      if (x === null) continue;
      const { top, bottom } = room(treads, meal, x, width);
      // In a thin layer the name leans on the layer below, never over the ink edge above.
      const y = Math.max((top + bottom) / 2 + look.layer * 0.34, top + look.layer * 0.8 + 2);
      if (y > base - 3) continue;
      const name = { kind: 'layer' as const, text, x, y, width, size: look.layer, meal };
      if (placed.every((p) => !overlaps(p, name, GAP))) placed.push(name);
    }
    // One name alone would puzzle: nearly all, or those that stand nowhere else.
    return placed.length >= names.length - 1
      ? placed
      : placed.filter((p) => settled.every((z) => z === zone || !z.names.includes(p.meal)));
  });
}

/** The x with the most room, as near to the middle as enough room allows; null when nowhere is high or wide enough. */
function bestPlace(from: number, to: number, width: number, high: (x: number) => number, size: number): number | null {
  const [least, enough] = [size * 0.5, size * 1.7];
  const middle = (from + to) / 2;
  let best: { x: number; high: number } | null = null;
  for (let x = from + width / 2 + 3; x <= to - width / 2 - 3; x += 2) {
    const here = Math.min(enough, high(x));
    if (here < least) continue;
    if (best === null || here > best.high + 1e-6 || (here > best.high - 1e-6 && Math.abs(x - middle) < Math.abs(best.x - middle)))
      best = { x, high: here };
  }
  return best?.x ?? null;
}

function room(treads: readonly Tread[], meal: MealName, x: number, width: number): { top: number; bottom: number; high: number } {
  const layers = treads
    .filter((t) => t.to > x - width / 2 - 2 && t.from < x + width / 2 + 2)
    .map((t) => t.layers.find((l) => l.meal === meal) ?? { top: 0, bottom: 0 });
  const top = Math.max(...layers.map((l) => l.top));
  const bottom = Math.min(...layers.map((l) => l.bottom));
  return { top, bottom, high: bottom - top };
}
