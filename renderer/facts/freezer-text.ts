/** What is taken out and for whom, in words. */
import type { Pack } from '../../core/freezer/pack.ts';
import type { Take, ThawRow } from '../../core/freezer/plan-shape.ts';
import { GRAMS_PER_POUND, isMetric, type MassUnit } from '../../core/units/mass.ts';
import { eatersWords, takesWords } from '../../core/words/thaw-text.ts';
import { words } from '../state/words.ts';
import type { Freezer } from './useFreezer.ts';

type Said = Pick<Freezer, 'nameOf' | 'house' | 'today'> & { readonly stock: { readonly packs: readonly Pack[] } };

/** "2 packs plain mix, 500 g", in the language of the window. */
export function takesText(f: Said, takes: readonly Take[]): string {
  return takesWords({ packs: f.stock.packs, nameOf: f.nameOf, unit: f.house.massUnit }, takes, words);
}

/** Whom it is for and when, whether a pack has to be cut, what is left over, and the official time where it is the earlier one. */
export function reasonText(f: Said, row: ThawRow): string {
  const unit = f.house.massUnit;
  const when = words.freezer.until(words.timeNear(row.firstMeal, f.today), words.timeNear(row.lastMeal, f.today));
  const cut = row.takes.find((t) => t.portions < t.of && f.stock.packs.find((p) => p.id === t.packId)?.left === t.of);
  return [
    `${eatersWords(row.eaters, unit, words)}, ${when}`,
    cut === undefined ? '' : words.freezer.cut(cut.of),
    row.wasteGrams >= 1 ? words.freezer.waste(words.foodText(row.wasteGrams, unit)) : '',
    row.officialUseBy < row.useBy ? words.freezer.officialUseBy(words.timeNear(row.officialUseBy, f.today)) : '',
  ]
    .filter((t) => t !== '')
    .join('; ');
}

export function moneyText(amount: number, money: string): string {
  return `${money}${amount.toFixed(2)}`;
}

/** "20.9 kg", or pounds for who weighs in pounds or ounces. */
export function heavyText(grams: number, unit: MassUnit): string {
  return words.freezer.heavy(isMetric(unit) ? 'kg' : 'lb', grams / (isMetric(unit) ? 1000 : GRAMS_PER_POUND));
}
