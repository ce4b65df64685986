/** What is in the freezer and what was taken out of it. Facts only: when to take out what is computed in `plan.ts`. */

import { z } from 'zod';
import { portionGrams } from '../food/portion.ts';
import { dateSchema, gramsSchema, idSchema, instantSchema, localTimeSchema, longText } from '../units/fields.ts';

const textUpTo = (max: number) => longText.max(max);

/** What the breeder writes about a pack. */
export const packFieldsSchema = z.strictObject({
  foodId: idSchema,
  /** The whole pack, 1 g to 30 kg. */
  grams: gramsSchema.refine((g) => g >= 1 && g <= 30_000, 'from 1 g to 30 kg'),
  /** Into how many it can be cut while it is half frozen; 1 is not at all. */
  portions: z.number().int().min(1).max(24),
  frozenOn: dateSchema,
  bestBefore: dateSchema.nullable(),
  /** For the whole pack, in her own money. */
  price: z.number().min(0).max(100_000).nullable(),
  place: textUpTo(60),
});
export type PackFields = z.infer<typeof packFieldsSchema>;

/** How what is left of a pack went out of the freezer without being thawed by the plan. */
export const WAYS_OUT = ['used', 'thrown', 'given'] as const;
export type WayOut = (typeof WAYS_OUT)[number];

export const packSchema = z.strictObject({
  ...packFieldsSchema.shape,
  id: idSchema,
  addedInstant: instantSchema,
  /** Portions still in the freezer. */
  left: z.number().int().min(0).max(24),
  gone: z.enum(WAYS_OUT).nullable(),
  goneOn: dateSchema.nullable(),
});
export type Pack = z.infer<typeof packSchema>;

/** `counter` can be written down when it has happened; it is never planned. */
export const THAW_WAYS = ['refrigerator', 'cold-water', 'counter'] as const;
export type ThawWay = (typeof THAW_WAYS)[number];

/** Portions of one pack taken out to thaw. `ended` says how what was left of them went; null while they may still be fed. */
export const thawSchema = z.strictObject({
  id: idSchema,
  packId: idSchema,
  portions: z.number().int().min(1).max(24),
  at: localTimeSchema,
  instant: instantSchema,
  way: z.enum(THAW_WAYS),
  ended: z.enum(['used', 'thrown']).nullable(),
  endedAt: localTimeSchema.nullable(),
});
export type Thaw = z.infer<typeof thawSchema>;

/** A dog of the house that eats out of the freezer: a fixed amount a day, or a dam by what she needs. */
export const eaterFieldsSchema = z.strictObject({
  name: textUpTo(60).refine((t) => t.trim() !== '', 'a dog has a name'),
  foodId: idSchema,
  gramsADay: gramsSchema.refine((g) => g <= 10_000, 'at most 10 kg a day'),
  /** A dam written down under a litter: her amount follows pregnancy and milk, and the fixed one holds where that is not known. */
  damId: idSchema.nullable(),
  meals: z.number().int().min(1).max(4),
  fromDay: dateSchema,
  /** Last day, or null for as long as the dog is here. */
  untilDay: dateSchema.nullable(),
});
export type EaterFields = z.infer<typeof eaterFieldsSchema>;
export const eaterSchema = z.strictObject({ ...eaterFieldsSchema.shape, id: idSchema });
export type Eater = z.infer<typeof eaterSchema>;

/** Frozen packs that a puppy takes along to its new home. */
export const starterFieldsSchema = z.strictObject({
  who: textUpTo(60).refine((t) => t.trim() !== '', 'for whom'),
  day: dateSchema,
  foodId: idSchema,
  grams: gramsSchema.refine((g) => g <= 30_000, 'at most 30 kg'),
});
/** `who` is empty when the buyer was erased. */
export const starterSchema = z.strictObject({ ...starterFieldsSchema.shape, who: textUpTo(60), id: idSchema });
export type Starter = z.infer<typeof starterSchema>;

export const freezerSettingsSchema = z.strictObject({
  /** When packs are moved: at any mealtime, or only in the evening. */
  moveAt: z.enum(['meals', 'evening']),
  /** What the refrigerator has room for, in grams; null when she has not said. */
  roomGrams: z.number().int().min(500).max(200_000).nullable(),
  /** Written before amounts of money; may be empty. */
  money: textUpTo(4),
});
export type FreezerSettings = z.infer<typeof freezerSettingsSchema>;

export const DEFAULT_FREEZER: FreezerSettings = { moveAt: 'meals', roomGrams: null, money: '' };

/** Grams of a pack that are still in the freezer. */
export function gramsLeft(pack: Pick<Pack, 'grams' | 'portions' | 'left' | 'gone'>): number {
  if (pack.gone !== null) return 0;
  return pack.left === pack.portions ? pack.grams : Math.round(portionGrams(pack) * pack.left * 10) / 10;
}

/** Oldest first: by best-before day where there is one, else by the day it was frozen. */
export function oldestFirst(a: Pack, b: Pack): number {
  const [x, y] = [a.bestBefore ?? '9999-12-31', b.bestBefore ?? '9999-12-31'];
  if (x !== y) return x < y ? -1 : 1;
  if (a.frozenOn !== b.frozenOn) return a.frozenOn < b.frozenOn ? -1 : 1;
  // A pack that is already cut is finished before the next one is begun.
  const cut = Number(b.left < b.portions) - Number(a.left < a.portions);
  return cut === 0 ? (a.id < b.id ? -1 : Number(a.id > b.id)) : cut;
}

/** Past its best-before day: told apart, and never planned. */
export function isOverdue(pack: Pick<Pack, 'bestBefore' | 'gone' | 'left'>, today: string): boolean {
  return pack.gone === null && pack.left > 0 && pack.bestBefore !== null && pack.bestBefore < today;
}
