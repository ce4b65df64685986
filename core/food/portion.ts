/** What a portion of a pack weighs, cut while it is half frozen: grams, down to a tenth. */
export function portionGrams(pack: { readonly grams: number; readonly portions: number }): number {
  return Math.floor((pack.grams * 10) / pack.portions + 1e-6) / 10;
}
