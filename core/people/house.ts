/** The house: whose it is, whom to call, how weights and papers are shown. Facts, not rules. */

import { z } from 'zod';
import { SCALE_WAYS } from '../growth/scale/value.ts';
import { longText } from '../units/fields.ts';
import { MASS_UNITS } from '../units/mass.ts';

const line = longText.max(200);
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

const knownScaleSchema = z.strictObject({
  way: z.enum(SCALE_WAYS),
  /** What the device calls itself; may be empty. */
  name: line,
  /** Bits a second of a serial port; of no meaning for a USB report. */
  baudRate: z.number().int().min(300).max(1_000_000),
  /** Of numbers that a serial scale sends without a unit; null while nobody was asked. */
  unit: z.enum(MASS_UNITS).nullable(),
});
export type KnownScale = z.infer<typeof knownScaleSchema>;

export const houseSchema = z.strictObject({
  breederName: line,
  address: line,
  phone: line,
  email: line,
  vetName: line,
  vetPhone: line,
  /** Of the vet, or of who stands in, at night and on Sundays. */
  vetOutOfHours: line,
  /** How her scale shows weights; a number typed without a unit is in it. */
  massUnit: z.enum(MASS_UNITS),
  paper: z.enum(['a4', 'letter']),
  theme: z.enum(['day', 'night', 'by-hour']),
  nightFrom: clock,
  nightUntil: clock,
  /** Step of her scale in grams, null when she has not said: a coarse step limits what can be seen early. */
  scaleStepGrams: z.number().min(0.1).max(500).nullable(),
  /** The scale that was connected last, so that it is found again; null before the first. */
  scale: knownScaleSchema.nullable(),
  /** One low tick when a settled value of the scale is written. */
  scaleTick: z.boolean(),
});
export type House = z.infer<typeof houseSchema>;

/** How weights and papers are shown: the house without its people. */
const houseSettingsSchema = houseSchema.omit({
  breederName: true,
  address: true,
  phone: true,
  email: true,
  vetName: true,
  vetPhone: true,
  vetOutOfHours: true,
});
export type HouseSettings = z.infer<typeof houseSettingsSchema>;

export const DEFAULT_SETTINGS: HouseSettings = {
  massUnit: 'g',
  paper: 'a4',
  theme: 'by-hour',
  nightFrom: '20:00',
  nightUntil: '07:30',
  scaleStepGrams: null,
  scale: null,
  scaleTick: false,
};

export const DEFAULT_HOUSE: House = {
  breederName: '',
  address: '',
  phone: '',
  email: '',
  vetName: '',
  vetPhone: '',
  vetOutOfHours: '',
  ...DEFAULT_SETTINGS,
};

/** The settings as they are stored: what an older program did not ask for is at its default. */
export const storedSettingsSchema = z
  .looseObject({})
  .transform((stored) => ({ ...DEFAULT_SETTINGS, ...stored }))
  .pipe(houseSettingsSchema);
