/** What is taken out of the freezer and for whom, in words: on the screen and on paper. */
import type { Pack } from '../freezer/pack.ts';
import type { MealShare, Take } from '../freezer/plan-shape.ts';
import type { MassUnit } from '../units/mass.ts';
import type { Catalogue } from './catalogue.ts';

/** What is in the freezer, how it is called and how it is weighed. */
export interface Stocked {
  readonly packs: readonly Pack[];
  readonly nameOf: (foodId: string) => string;
  readonly unit: MassUnit;
}

/** "2 packs plain mix, 500 g; a quarter of a pack plain mix, 454 g" */
export function takesWords(f: Stocked, takes: readonly Take[], words: Catalogue): string {
  const wholePacks = new Map<string, { count: number; food: string; each: string }>();
  const parts: string[] = [];
  for (const take of takes) {
    const pack = f.packs.find((p) => p.id === take.packId);
    if (pack === undefined) continue;
    const [food, each] = [f.nameOf(pack.foodId), words.foodText(pack.grams, f.unit)];
    if (take.portions < take.of) {
      parts.push(words.freezer.partOf(take.portions, take.of, food, each));
      continue;
    }
    const key = `${food} ${each}`;
    wholePacks.set(key, { count: (wholePacks.get(key)?.count ?? 0) + 1, food, each });
  }
  return [...[...wholePacks.values()].map((p) => words.freezer.packs(p.count, p.food, p.each)), ...parts].join('; ');
}

/** "Hazel’s litter 420 g; the rest Sorrel" for more than one, the name alone for one. */
export function eatersWords(eaters: readonly MealShare[], unit: MassUnit, words: Catalogue): string {
  const order = eaters.toSorted((a, b) => b.grams - a.grams);
  const [first, ...others] = order;
  if (first === undefined) return '';
  if (others.length === 0) return first.who;
  const last = others.at(-1)?.who ?? '';
  const named = order.slice(0, -1).map((e) => words.freezer.eats(e.who, words.foodText(e.grams, unit)));
  return [...named, words.freezer.rest(last)].join('; ');
}

/** "Hazel’s litter and Sorrel" */
export function namesWords(eaters: readonly MealShare[], words: Catalogue): string {
  return words.freezer.and(eaters.map((e) => e.who));
}
