/**
 * Numbers of microchips: what a reader says or a person types, read into a code or answered with what is wrong with it. A code is
 * kept as text (`040…` and `056…` begin with a nought). It has no check digit, so it is asked for twice.
 */
import { z } from 'zod';
import { changeOf, dateSchema, idSchema, shortText } from '../units/fields.ts';

/** ISO 11784: 15 decimal digits, 3 of the country or maker and 12 of the animal; the animal's fill 38 bits. */
const DIGITS = 15;
const ISSUER_DIGITS = 3;
const LARGEST_ANIMAL = 2 ** 38 - 1;
/** Chips from before the standard: 9 or 10 characters, read by some readers only. */
const BEFORE_ISO = /^[0-9A-Z]{9,10}$/;

export type ChipFault =
  | { readonly code: 'chip-characters' }
  | { readonly code: 'chip-length'; readonly digits: number }
  | { readonly code: 'chip-animal-too-large' }
  | { readonly code: 'chip-no-issuer' };

/** Who gave the number out, by its first three digits. `region` is an ISO 3166-1 code of two letters. */
export type ChipIssuer =
  | { readonly by: 'country'; readonly region: string }
  | { readonly by: 'maker'; readonly prefix: string }
  | { readonly by: 'makers-together' }
  | { readonly by: 'test' }
  | { readonly by: 'nobody'; readonly prefix: string }
  | { readonly by: 'before-iso' };

export type ReadChip =
  | { readonly ok: true; readonly code: string; readonly issuer: ChipIssuer }
  | { readonly ok: false; readonly fault: ChipFault };

/**
 * Reads a number as typed or as a reader sends it: blanks, dots and hyphens are left off, and the `LA` that readers put before it.
 * @param text such as `LA 982 000001088420` with the end of its line
 */
export function readChip(text: string): ReadChip {
  const code = text
    .trim()
    .toUpperCase()
    .replace(/^LA[\s_]*(?=\d)/, '')
    .replace(/[\s.\-_\u00a0]/g, '');
  if (/^[0-9]+$/.test(code) && code.length === DIGITS) return readIso(code);
  if (BEFORE_ISO.test(code)) return { ok: true, code, issuer: { by: 'before-iso' } };
  if (!/^[0-9]*$/.test(code)) return { ok: false, fault: { code: 'chip-characters' } };
  return { ok: false, fault: { code: 'chip-length', digits: code.length } };
}

function readIso(code: string): ReadChip {
  const prefix = code.slice(0, ISSUER_DIGITS);
  if (prefix === '000') return { ok: false, fault: { code: 'chip-no-issuer' } };
  if (Number(code.slice(ISSUER_DIGITS)) > LARGEST_ANIMAL) return { ok: false, fault: { code: 'chip-animal-too-large' } };
  return { ok: true, code, issuer: issuerOf(prefix) };
}

/** 900 is shared by small makers, 901 to 998 are one maker's each, 999 is for tests only (ISO 11784; registration rules of the makers' codes). */
function issuerOf(prefix: string): ChipIssuer {
  if (prefix === '999') return { by: 'test' };
  if (prefix === '900') return { by: 'makers-together' };
  if (prefix > '900') return { by: 'maker', prefix };
  const region = regionOf(prefix);
  return region === null ? { by: 'nobody', prefix } : { by: 'country', region };
}

/** The country of an ISO 3166-1 number, by the locale data that every engine carries; null of a number that is no country's. */
function regionOf(number: string): string | null {
  const { region } = new Intl.Locale(`und-${number}`);
  return region !== undefined && /^[A-Z]{2}$/.test(region) ? region : null;
}

/** As people read it aloud and compare it: 3 + 4 + 4 + 4 figures. A number from before the standard stays whole. */
export function chipGroups(code: string): string[] {
  if (code.length !== DIGITS) return [code];
  return [code.slice(0, ISSUER_DIGITS), code.slice(3, 7), code.slice(7, 11), code.slice(11)];
}

const chipFields = {
  code: z.string().refine((text) => {
    const read = readChip(text);
    return read.ok && read.code === text;
  }, 'not the number of a chip as it is kept'),
  /** The day it was put in; null when nobody wrote it down. */
  day: dateSchema.nullable(),
  /** Who put it in. */
  by: shortText,
};

/** A puppy's chip: its id is the puppy's, for there is one chip in a puppy. */
export const chipSchema = z.strictObject({ ...chipFields, id: idSchema });
export type Chip = z.infer<typeof chipSchema>;
export const chipChangeSchema = changeOf(chipFields);
