/** Meals by name. */
import type { MealName } from '../../food/bowls.ts';

export const mealWords: { readonly names: Record<MealName, string> } = {
  names: {
    morning: 'morning',
    forenoon: 'forenoon',
    midday: 'midday',
    afternoon: 'afternoon',
    evening: 'evening',
    night: 'night',
  },
};
