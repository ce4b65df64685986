/** How the bowl is made at each step of weaning: texture, and warm water to stir in. */

import type { Food } from '../food/food.ts';
import { GRUEL_WATER } from '../reference/feeding/weaning.ts';

export const TEXTURES = ['gruel', 'thick gruel', 'fine mince', 'mince', 'mince with soft bone'] as const;
export type Texture = (typeof TEXTURES)[number];

/** Whether a food holds hardly any water of its own. */
export function isDry(food: Pick<Food, 'form'>): boolean {
  return food.form === 'dry' || food.form === 'dehydrated' || food.form === 'freeze-dried';
}

/**
 * Grams of warm water to a gram of food. Gruel as the handbook has it (two parts wet food to one of water, one part dry to three); a thick gruel
 * has half of that (common practice, no source); a mince has none, but food that is dry is always soaked.
 */
export function waterPerGram(texture: Texture, food: Pick<Food, 'form'>): number {
  const dry = isDry(food);
  const gruel = dry ? GRUEL_WATER.dry : GRUEL_WATER.wet;
  if (texture === 'gruel') return gruel;
  if (texture === 'thick gruel') return gruel / 2;
  return dry ? 1 : 0;
}

/** Water for so much food, to what is measured: 5 g from 20 g on, else 1 g. */
export function waterFor(grams: number, texture: Texture, food: Pick<Food, 'form'>): number {
  const water = grams * waterPerGram(texture, food);
  const step = water >= 20 ? 5 : 1;
  return Math.round(water / step) * step;
}
