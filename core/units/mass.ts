/**
 * Mass: parse what people type. Everything is kept in grams at 0.1 g; the text as it was
 * typed is kept beside it. Factors: 1 lb = 453.59237 g and 1 oz = 1/16 lb exactly (international yard and pound
 * agreement of 1959; NIST Handbook 44, Appendix C).
 */

/** A mass in grams. */
export type Grams = number & { readonly __brand: 'Grams' };

export const GRAMS_PER_POUND = 453.59237;
export const GRAMS_PER_OUNCE = GRAMS_PER_POUND / 16;

/** How a scale shows weights, and so how they are typed and shown. `lboz` is pounds and ounces. */
export const MASS_UNITS = ['g', 'kg', 'oz', 'lboz', 'lb'] as const;
export type MassUnit = (typeof MASS_UNITS)[number];

/** Grams and kilograms, as against ounces and pounds. */
export function isMetric(unit: MassUnit): boolean {
  return unit === 'g' || unit === 'kg';
}

/** The unit for dogs that are grown or half grown, by the unit of the scale. */
export function grownUnit(unit: MassUnit): 'kg' | 'lb' {
  return isMetric(unit) ? 'kg' : 'lb';
}

/** Why a text is not a mass: a closed list, so that the window can say it in words. */
export type MassFault =
  | { code: 'empty' }
  | { code: 'letter'; letter: string }
  | { code: 'unit'; unit: string }
  | { code: 'number' }
  | { code: 'not-positive' }
  | { code: 'too-heavy' }
  | { code: 'ounces-over'; ounces: number };

/** `exact` is what was typed, in grams, before it is rounded to what is kept. */
export type MassResult = { ok: true; grams: Grams; exact: number; unit: MassUnit } | { ok: false; fault: MassFault };

/** Nothing this program weighs is heavier (the heaviest dogs are near 100 kg). */
const HEAVIEST_GRAMS = 150_000;

/** To the 0.1 g that is stored. */
export function toGrams(value: number): Grams {
  return (Math.round(value * 10) / 10) as Grams;
}

const UNIT_WORDS: Readonly<Record<string, MassUnit>> = {
  g: 'g',
  gr: 'g',
  gram: 'g',
  grams: 'g',
  gramme: 'g',
  grammes: 'g',
  kg: 'kg',
  kgs: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  kilogram: 'kg',
  kilograms: 'kg',
  oz: 'oz',
  ozs: 'oz',
  ounce: 'oz',
  ounces: 'oz',
  lb: 'lb',
  lbs: 'lb',
  '#': 'lb',
  pound: 'lb',
  pounds: 'lb',
};

/** The unit that a lower-case word names, `grams` or `lb`; null when it names none. */
export function unitOfWord(word: string): MassUnit | null {
  return Object.hasOwn(UNIT_WORDS, word) ? (UNIT_WORDS[word] ?? null) : null;
}

const NUMBER = String.raw`(\d{1,3}(?:[ \u00a0\u202f]\d{3})+|\d+)?(?:[.,](\d+))?`;
const ONE = new RegExp(String.raw`^${NUMBER}\s*([a-z#]+)?\.?$`);
const POUNDS_OUNCES = /^(\d+)\s*(?:lbs?|pounds?|#)\.?\s*,?\s*(\d+(?:[.,]\d+)?)\s*(?:ozs?|ounces?)?\.?$/;
const POUNDS_COLON = /^(\d+):(\d+(?:[.,]\d+)?)$/;
/** Only where the scale shows pounds and ounces: anywhere else a space groups thousands. */
const POUNDS_SPACE = /^(\d+)\s+(\d+(?:[.,]\d+)?)$/;

/**
 * A mass as people write it: `412`, `0.412kg`, `14.5oz`, `1 lb 3`, `1lb3.5oz`, `1 204 g`, `0,412 kg`. A number alone
 * is in `usual`, the unit of her scale; with `lboz`, a number alone is ounces, and `1:3.5` or `1 3.5` is pounds and ounces.
 *
 * The comma is a decimal comma, never a thousands mark: `1,204` under grams would otherwise be read two ways.
 * It is refused when it is followed by exactly three figures and the unit is grams, unless it stands behind a nought alone, as no thousands do.
 */
export function parseMass(text: string, usual: MassUnit): MassResult {
  const t = text.normalize('NFKC').trim().toLowerCase();
  if (t === '') return { ok: false, fault: { code: 'empty' } };
  const pair = POUNDS_OUNCES.exec(t) ?? POUNDS_COLON.exec(t) ?? (usual === 'lboz' ? POUNDS_SPACE.exec(t) : null);
  if (pair) {
    const ounces = Number((pair[2] ?? '').replace(',', '.'));
    if (ounces >= 16) return { ok: false, fault: { code: 'ounces-over', ounces } };
    return checked(Number(pair[1]) * GRAMS_PER_POUND + ounces * GRAMS_PER_OUNCE, 'lboz');
  }
  const one = ONE.exec(t);
  if (!one || (one[1] === undefined && one[2] === undefined)) return { ok: false, fault: whyNot(t) };
  const integerPart = (one[1] ?? '0').replace(/[ \u00a0\u202f]/g, '');
  const word = one[3];
  const unit = word === undefined ? usual : unitOfWord(word);
  if (unit === null)
    return { ok: false, fault: word?.length === 1 ? { code: 'letter', letter: word } : { code: 'unit', unit: word ?? '' } };
  const single = unit === 'lboz' ? 'oz' : unit;
  if (single === 'g' && /,\d{3}(?!\d)/.test(t) && !t.startsWith('0,')) return { ok: false, fault: { code: 'number' } };
  return checked(Number(`${integerPart}.${one[2] ?? '0'}`) * FACTOR[single], unit);
}

/** What was typed, in grams, before it was rounded; `grams` where the text no longer says so. For guesses at what was meant: 0.545 is kept as 0.5 g. */
export function exactGrams(typed: string, unit: MassUnit, grams: number): number {
  const read = parseMass(typed, unit);
  return read.ok && read.grams === grams ? read.exact : grams;
}

const FACTOR: Record<Exclude<MassUnit, 'lboz'>, number> = { g: 1, kg: 1000, oz: GRAMS_PER_OUNCE, lb: GRAMS_PER_POUND };

function checked(grams: number, unit: MassUnit): MassResult {
  if (!Number.isFinite(grams)) return { ok: false, fault: { code: 'number' } };
  if (grams > HEAVIEST_GRAMS) return { ok: false, fault: { code: 'too-heavy' } };
  const rounded = toGrams(grams);
  return rounded > 0 ? { ok: true, grams: rounded, exact: grams, unit } : { ok: false, fault: { code: 'not-positive' } };
}

function whyNot(t: string): MassFault {
  if (/^-/.test(t)) return { code: 'not-positive' };
  const letter = /\d([a-z])\d/.exec(t) ?? /^([a-z])\d/.exec(t);
  return letter?.[1] === undefined ? { code: 'number' } : { code: 'letter', letter: letter[1] };
}

/** Ounces rounded first, then carried, so that 453 g is 1 lb 0.0 oz and never 0 lb 16.0 oz. */
export function poundsAndOunces(grams: number, decimals = 1): { pounds: number; ounces: number } {
  const scale = 10 ** decimals;
  const all = Math.round((grams / GRAMS_PER_OUNCE) * scale) / scale;
  const pounds = Math.floor(all / 16 + 1e-12);
  return { pounds, ounces: Math.round((all - pounds * 16) * scale) / scale };
}
