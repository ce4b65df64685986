/** What is said beside a field of a food whose figures can't be, or are unlikely. */
import { KILOJOULE } from '../../food/label.ts';
import type { FoodCheck } from '../../food/own-food.ts';
import { percentText, plain } from './figures.ts';

export function foodCheck(check: FoodCheck): string {
  switch (check.code) {
    case 'no-water':
      return 'Figures in dry matter need the water (moisture) of the food as it is fed.';
    case 'only-water':
      return 'A food of 100 % water holds nothing else.';
    case 'no-energy':
      return 'Figures per 1000 kcal need the energy in 100 g.';
    case 'method-without-energy':
      return 'Write the energy that stands on the pack, or let it be reckoned from the analysis.';
    case 'parts-over':
      return `The parts come to ${plain(check.sum, 1)} g in 100 g, which can't be.${PERHAPS_PARTS[check.perhaps ?? 'nothing']}`;
    case 'nothing-in-it':
      return 'Without protein and fat no energy can be reckoned. Write them, or the energy on the pack.';
    case 'too-rich':
      return `Nothing holds more than ${check.most} kcal in 100 g; that is pure fat. If the pack says ${plain(check.kcal, 0)} kcal in a kilogram, write ${plain(check.kcal / 10, 0)}.`;
    case 'energy-off':
      return energyOff(check);
    case 'calcium-much':
      return `${plain(check.grams, 1)} g of calcium in 100 g is more than bone holds with its marrow. Perhaps the pack gives milligrams.`;
    case 'minerals-over-ash':
      return `Calcium and phosphorus are part of the ash, and come to more than it: ${plain(check.grams, 2)} g of ${plain(check.ash, 2)} g.`;
    case 'water-guessed':
      return check.dry
        ? 'A dry food needs its water (moisture): else nobody can say how much of it is starch.'
        : 'The pack says nothing of water, so it is taken as what the rest leaves, with no starch or sugar.';
    case 'water-form':
      return `${plain(check.water, 0)} % water is ${check.dry ? 'much for a food that is dry' : 'little for a food that is raw'}.`;
    case 'part-itself':
      return 'A food can’t be a part of itself.';
    case 'part-twice':
      return 'A food stands in the recipe twice. Put its shares together.';
    case 'part-gone':
      return 'A part of the recipe is not among the foods.';
    case 'shares-off':
      return `The parts come to ${percentText(check.sum, 1)}, not 100. ${check.sum > 1 ? 'Take off' : 'Put in'} ${percentText(Math.abs(check.sum - 1), 1)}.`;
    case 'bone-off':
      return `${percentText(check.share, 1)} bone would be ${plain(check.low, 2)} to ${plain(check.high, 2)} g of calcium in 100 g; the pack says ${plain(check.onPack, 2)}. The pack’s calcium is used.`;
  }
}

const PERHAPS_PARTS = {
  'dry-matter': ' Perhaps the pack gives dry matter, not the food as fed.',
  'per-cent': ' Perhaps these are per cent, not grams in 1000 kcal.',
  nothing: '',
} as const;

function energyOff({ kcal, reckoned, method, perhaps }: Extract<FoodCheck, { readonly code: 'energy-off' }>): string {
  const off = kcal / reckoned - 1;
  const guess =
    perhaps === 'kilojoules'
      ? ` It looks like kilojoules: ${plain(kcal, 0)} kJ is ${plain(kcal / KILOJOULE, 0)} kcal.`
      : perhaps === 'kilogram'
        ? ` It looks like a kilogram’s: write ${plain(kcal / 10, 0)}.`
        : '';
  return `The pack says ${plain(kcal, 0)} kcal in 100 g, ${plain(Math.abs(off) * 100, 0)} % ${off > 0 ? 'over' : 'under'} the ${plain(reckoned, 0)} that its analysis gives (${method}).${guess} Look at both again.`;
}
