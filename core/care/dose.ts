/**
 * The arithmetic of a dose, and nothing else: which drug, how much and when comes from the vet or from the label of the product
 * in her country. Nothing is built in. `mg = kg × mg/kg`, `mL = mg ÷ (mg/mL)`, then to the marks of the syringe, with what the
 * drawn amount really gives.
 */
import { type CivilDate, daysBetween } from '../calendar/day.ts';
import type { Level } from '../growth/levels.ts';
import { GRAMS_PER_POUND } from '../units/mass.ts';

export const RATE_UNITS = ['mg/kg', 'mg/lb'] as const;
/** 1 % is 10 mg in a millilitre. */
export const STRENGTH_UNITS = ['mg/mL', '%', 'mg/g', 'mg/tablet'] as const;
export type StrengthUnit = (typeof STRENGTH_UNITS)[number];

export interface Rate {
  readonly amount: number;
  readonly unit: (typeof RATE_UNITS)[number];
}

/** What she copied from the label or from the vet's note. */
export interface DoseLabel {
  readonly rate: Rate;
  /** Another rate up to a weight, that weight included, in grams: some labels give small dogs more. */
  readonly light: { readonly upToGrams: number; readonly rate: Rate } | null;
  readonly strength: { readonly amount: number; readonly unit: StrengthUnit };
  /** The finest step of what it is measured with: mL of the syringe, g of the spoon or balance, part of a tablet. */
  readonly mark: number;
  /** The label's least age in days and least weight in grams; null where it names none. */
  readonly leastDays: number | null;
  readonly leastGrams: number | null;
}

/** What is known of the puppy. `level` is null before it was weighed twice. */
export interface DosePuppy {
  readonly bornOn: CivilDate;
  readonly level: Level | null;
  /** Its last weight that counts; null when it has none. */
  readonly weighed: { readonly grams: number; readonly instant: number } | null;
}

/** Why no dose is worked out. */
export type DoseRefusal =
  | { readonly code: 'dose-no-weight' }
  | { readonly code: 'dose-weight-old'; readonly days: number }
  | { readonly code: 'dose-too-young'; readonly days: number; readonly least: number }
  | { readonly code: 'dose-too-light'; readonly grams: number; readonly least: number }
  | { readonly code: 'dose-ask-vet'; readonly level: 'watch' | 'act' }
  | { readonly code: 'dose-under-a-mark' };

/** What to look at before it is given. */
export type DoseRemark =
  | { readonly code: 'dose-weight-of'; readonly hours: number }
  | { readonly code: 'dose-rounded'; readonly percent: number }
  | { readonly code: 'dose-much'; readonly mlPer100g: number };

export interface Dose {
  readonly grams: number;
  readonly mg: number;
  /** Before and after it is rounded to the marks, in `unit`. */
  readonly exact: number;
  readonly drawn: number;
  readonly unit: 'mL' | 'g' | 'tablet';
  /** What the drawn amount gives. */
  readonly mgPerKg: number;
  readonly remarks: readonly DoseRemark[];
}

export type DoseAnswer = { readonly ok: true; readonly dose: Dose } | { readonly ok: false; readonly why: DoseRefusal };

/** Older weights are told, and from a week on refused: a puppy may have doubled (our own caution, no source). */
const FRESH_HOURS = 24;
const OLDEST_DAYS = 7;
/** A drawn amount that is further from the exact one is told (our own caution, no source). */
const ROUNDING = 0.05;
/** More than this much liquid is told: a slip of the unit is likely (our own caution, no source). */
const MUCH_ML_PER_100G = 1;
const HOUR_MS = 3_600_000;

/** A rate in mg for a kilogram. */
export function perKg({ amount, unit }: Rate): number {
  return unit === 'mg/kg' ? amount : (amount * 1000) / GRAMS_PER_POUND;
}

/** A strength in mg for a millilitre, gram or tablet. */
export function perUnit({ amount, unit }: DoseLabel['strength']): number {
  return unit === '%' ? amount * 10 : amount;
}

/** What it is measured in. */
export function measuredIn(unit: StrengthUnit): Dose['unit'] {
  if (unit === 'mg/g') return 'g';
  return unit === 'mg/tablet' ? 'tablet' : 'mL';
}

/**
 * The dose of one puppy at an instant of a day, or why there is none.
 * @param label figures over 0
 */
export function doseOf(
  label: DoseLabel,
  puppy: DosePuppy,
  now: { readonly day: CivilDate; readonly instant: number },
): DoseAnswer {
  const refused = refusalOf(label, puppy, now);
  if (refused !== null) return { ok: false, why: refused };
  const { weighed } = puppy;
  if (weighed === null) return { ok: false, why: { code: 'dose-no-weight' } };
  const kg = weighed.grams / 1000;
  const rate = label.light !== null && weighed.grams <= label.light.upToGrams ? label.light.rate : label.rate;
  const mg = kg * perKg(rate);
  const exact = mg / perUnit(label.strength);
  const marks = Math.round(exact / label.mark);
  if (marks === 0) return { ok: false, why: { code: 'dose-under-a-mark' } };
  const drawn = marks * label.mark;
  const unit = measuredIn(label.strength.unit);
  const hours = (now.instant - weighed.instant) / HOUR_MS;
  const off = drawn / exact - 1;
  const mlPer100g = drawn / (weighed.grams / 100);
  const remarks: DoseRemark[] = [];
  if (hours > FRESH_HOURS) remarks.push({ code: 'dose-weight-of', hours });
  if (Math.abs(off) > ROUNDING || off > 1e-9) remarks.push({ code: 'dose-rounded', percent: off * 100 });
  if (unit === 'mL' && mlPer100g > MUCH_ML_PER_100G) remarks.push({ code: 'dose-much', mlPer100g });
  return {
    ok: true,
    dose: { grams: weighed.grams, mg, exact, drawn, unit, mgPerKg: (drawn * perUnit(label.strength)) / kg, remarks },
  };
}

/** The label's limits and the puppy's state go before any figure. */
function refusalOf(
  { leastDays, leastGrams }: DoseLabel,
  { bornOn, level, weighed }: DosePuppy,
  now: { readonly day: CivilDate; readonly instant: number },
): DoseRefusal | null {
  if (level === 'watch' || level === 'act') return { code: 'dose-ask-vet', level };
  const days = daysBetween(bornOn, now.day);
  if (leastDays !== null && days < leastDays) return { code: 'dose-too-young', days, least: leastDays };
  if (weighed === null) return null;
  const old = (now.instant - weighed.instant) / (24 * HOUR_MS);
  if (old > OLDEST_DAYS) return { code: 'dose-weight-old', days: Math.floor(old) };
  if (leastGrams !== null && weighed.grams < leastGrams)
    return { code: 'dose-too-light', grams: weighed.grams, least: leastGrams };
  return null;
}
