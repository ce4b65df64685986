/** Food left in the bowl. */

/**
 * Grams a day after so many cuts. Common practice, no source: food left again takes a tenth off the day. Steps of a tenth are also how Hand et al. 2010
 * (Small Animal Clinical Nutrition, 5th edition, table 17-3; seen) change a growing dog's ration.
 */
export function afterCuts(grams: number, cutShare: number, times: number): number {
  return grams * (1 - cutShare) ** times;
}
