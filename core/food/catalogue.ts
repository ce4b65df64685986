/** The foods there are: those shipped with the program, then hers. */
import { NDB_NUMBERS } from '../reference/feeding/usda.ts';
import { DEFAULT_FOOD, type Food, ingredientFood, PLAIN_FOOD } from './food.ts';
import { DEEPEST_RECIPE, foodOf, type StoredFood } from './own-food.ts';

/** Two generic mixes and the plain ingredients of the table. */
export const SHIPPED_FOODS: readonly Food[] = [DEFAULT_FOOD, PLAIN_FOOD, ...NDB_NUMBERS.map(ingredientFood)];
const SHIPPED = new Map(SHIPPED_FOODS.map((f) => [f.id, f]));

export interface FoodCatalogue {
  /** The food of an id, or null when there is none or its figures don't hold together. */
  find(foodId: string): Food | null;
  /** Whether a food has another in it, at any depth. */
  uses(foodId: string, wanted: string): boolean;
  /** Hers, retired ones left out, in the order given. */
  readonly own: readonly Food[];
}

/** The catalogue of what is stored. A recipe that goes in a circle, or deeper than eight, has no figures. */
export function foodCatalogue(stored: readonly StoredFood[]): FoodCatalogue {
  const byId = new Map(stored.map((s) => [s.id, s]));
  const reckoned = new Map<string, Food | null>();
  const find = (foodId: string, depth: number): Food | null => {
    const shipped = SHIPPED.get(foodId);
    if (shipped !== undefined) return shipped;
    const known = reckoned.get(foodId);
    if (known !== undefined) return known;
    const food = byId.get(foodId);
    if (food === undefined || depth > DEEPEST_RECIPE) return null;
    const made = foodOf(foodId, food.fields, (part) => find(part, depth + 1));
    reckoned.set(foodId, made);
    return made;
  };
  const uses = (foodId: string, wanted: string, depth: number): boolean => {
    const made = byId.get(foodId)?.fields.made;
    if (made?.by !== 'recipe' || depth > DEEPEST_RECIPE) return false;
    return made.parts.some((p) => p.foodId === wanted || uses(p.foodId, wanted, depth + 1));
  };
  return {
    find: (foodId) => find(foodId, 0),
    uses: (foodId, wanted) => uses(foodId, wanted, 0),
    own: stored.filter((s) => !s.retired).flatMap((s) => find(s.id, 0) ?? []),
  };
}

/** The food of an id, or the shipped generic mix when there is none. */
export function foodOrDefault(catalogue: FoodCatalogue, foodId: string | null): Food {
  return (foodId === null ? null : catalogue.find(foodId)) ?? DEFAULT_FOOD;
}
