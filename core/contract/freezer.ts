/** Packs, thawing, and who eats from the freezer. */

import { z } from 'zod';
import { demandSchema } from '../freezer/demand.ts';
import {
  eaterFieldsSchema,
  eaterSchema,
  freezerSettingsSchema,
  packFieldsSchema,
  packSchema,
  starterFieldsSchema,
  starterSchema,
  THAW_WAYS,
  thawSchema,
  WAYS_OUT,
} from '../freezer/pack.ts';
import { changeOf, dateSchema, idSchema, instantSchema, localTimeSchema } from '../units/fields.ts';
import { nothing, op } from './operation.ts';

export const FREEZER_OPERATIONS = {
  /** What is in the freezer, what is thawing, who eats from it. Packs gone before `since` are left out, but for the last of each food. */
  'freezer.stock': op({
    kind: 'query',
    input: z.strictObject({ since: dateSchema }),
    output: z.strictObject({
      packs: z.array(packSchema),
      thaws: z.array(thawSchema),
      eaters: z.array(eaterSchema),
      starters: z.array(starterSchema),
      settings: freezerSettingsSchema,
    }),
    tags: ['freezer', 'dogs', 'house'],
  }),
  /** What everyone eats from day to day, both included, at most 400 days: the litters by their weights and forecasts, and the dogs of the freezer. */
  'freezer.demand': op({
    kind: 'query',
    input: z.strictObject({ from: dateSchema, until: dateSchema }),
    output: z.strictObject({ demand: z.array(demandSchema) }),
    tags: ['freezer', 'litters', 'readings', 'rules', 'foods', 'house', 'weaning', 'dogs'],
  }),
  /** A delivery: so many packs alike. */
  'freezer.add': op({
    kind: 'command',
    input: z.strictObject({ count: z.number().int().min(1).max(200), pack: packFieldsSchema }),
    output: z.strictObject({ packs: z.array(packSchema) }),
  }),
  'freezer.changePacks': op({
    kind: 'command',
    input: z.strictObject({
      packIds: z.array(idSchema).min(1).max(200),
      change: changeOf(packFieldsSchema.pick({ frozenOn: true, bestBefore: true, price: true, place: true }).shape),
    }),
    output: nothing,
  }),
  /** Stock-taking: of each group of packs, how many are really there. Those that lack were used, the oldest first; more are added like the newest. */
  'freezer.count': op({
    kind: 'command',
    input: z.strictObject({
      on: dateSchema,
      counts: z
        .array(z.strictObject({ packIds: z.array(idSchema).min(1).max(200), there: z.number().int().min(0).max(500) }))
        .min(1)
        .max(100),
    }),
    output: nothing,
  }),
  /** What is left of the packs leaves the freezer without the plan. */
  'freezer.takeOut': op({
    kind: 'command',
    input: z.strictObject({ packIds: z.array(idSchema).min(1).max(200), way: z.enum(WAYS_OUT), on: dateSchema }),
    output: nothing,
  }),
  /** Portions taken out to thaw: their clock starts. On the counter it can only be written down once it has happened (`refused` before). */
  'freezer.thaw': op({
    kind: 'command',
    input: z.strictObject({
      takes: z
        .array(z.strictObject({ packId: idSchema, portions: z.number().int().min(1).max(24) }))
        .min(1)
        .max(100),
      at: localTimeSchema,
      instant: instantSchema,
      way: z.enum(THAW_WAYS),
    }),
    output: z.strictObject({ thaws: z.array(thawSchema) }),
  }),
  /** What was thawed is used up, or what is left of it was thrown away. */
  'freezer.endThaw': op({
    kind: 'command',
    input: z.strictObject({
      thawIds: z.array(idSchema).min(1).max(100),
      ended: z.enum(['used', 'thrown']),
      at: localTimeSchema,
      instant: instantSchema,
    }),
    output: nothing,
  }),
  'freezer.addDog': op({
    kind: 'command',
    input: z.strictObject({ fields: eaterFieldsSchema }),
    output: z.strictObject({ dog: eaterSchema }),
  }),
  'freezer.changeDog': op({
    kind: 'command',
    input: z.strictObject({ dogId: idSchema, change: changeOf(eaterFieldsSchema.shape) }),
    output: z.strictObject({ dog: eaterSchema }),
  }),
  'freezer.removeDog': op({
    kind: 'command',
    input: z.strictObject({ dogId: idSchema }),
    output: nothing,
  }),
  'freezer.addStarter': op({
    kind: 'command',
    input: z.strictObject({ fields: starterFieldsSchema }),
    output: z.strictObject({ starter: starterSchema }),
  }),
  'freezer.changeStarter': op({
    kind: 'command',
    input: z.strictObject({ starterId: idSchema, change: changeOf(starterFieldsSchema.shape) }),
    output: z.strictObject({ starter: starterSchema }),
  }),
  'freezer.removeStarter': op({
    kind: 'command',
    input: z.strictObject({ starterId: idSchema }),
    output: nothing,
  }),
  'freezer.setSettings': op({
    kind: 'command',
    input: z.strictObject({ change: changeOf(freezerSettingsSchema.shape) }),
    output: nothing,
  }),
} as const;
