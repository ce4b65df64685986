/** What a person typed, read into a value or answered with a sentence. */
import { type CivilDate, parseDate } from '../../../core/calendar/day.ts';
import { GRAMS_PER_POUND, type Grams, grownUnit, type MassUnit, parseMass } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';

export type Read<T> = { ok: true; value: T } | { ok: false; sentence: string };

export function good<T>(value: T): Read<T> {
  return { ok: true, value };
}

export function bad(sentence: string): { ok: false; sentence: string } {
  return { ok: false, sentence };
}

/** A line of text, spaces at its ends left off. */
export function readText(max: number, needed?: string): (text: string) => Read<string> {
  return (text) => {
    const trimmed = text.trim();
    if (trimmed === '' && needed !== undefined) return bad(needed);
    return trimmed.length > max ? bad(words.form.tooLong(max)) : good(trimmed);
  };
}

/** A number with a point or a comma, in bounds (both included). A unit behind it is left off when it is the one given. */
export function readNumber(bounds: {
  low: number;
  high: number;
  integer?: boolean;
  unit?: string;
  example: string;
}): (text: string) => Read<number> {
  return (text) => {
    let t = text.normalize('NFKC').trim().toLowerCase();
    if (bounds.unit !== undefined && t.endsWith(bounds.unit)) t = t.slice(0, -bounds.unit.length).trim();
    if (!/^(\d+([.,]\d*)?|[.,]\d+)$/.test(t)) return bad(words.form.notNumber(bounds.example));
    const n = Number(t.replace(',', '.'));
    if (bounds.integer === true && !Number.isInteger(n)) return bad(words.form.notWhole);
    if (n < bounds.low || n > bounds.high) return bad(words.form.between(String(bounds.low), String(bounds.high)));
    return good(n);
  };
}

export function readDate(text: string): Read<CivilDate> {
  const d = parseDate(text);
  return d === null ? bad(words.form.notDate) : good(d);
}

/** A clock time `hh:mm`; `630`, `6.30` and `6:30` are read too. */
export function readClock(text: string): Read<string> {
  const m = /^(\d{1,2})[:.h ]?(\d{2})$/.exec(text.trim());
  if (!m || Number(m[1]) > 23 || Number(m[2]) > 59) return bad(words.form.notClock);
  return good(`${(m[1] ?? '').padStart(2, '0')}:${m[2]}`);
}

export interface TypedMass {
  readonly grams: Grams;
  readonly unit: MassUnit;
  readonly typed: string;
}

/** A weight as people write it; a number alone is in `usual`. Empty is null. */
export function readMass(usual: MassUnit): (text: string) => Read<TypedMass | null> {
  return (text) => {
    if (text.trim() === '') return good(null);
    const mass = parseMass(text, usual);
    if (!mass.ok) return bad(words.form.massFault(mass.fault, text.trim()));
    return good({ grams: mass.grams, unit: mass.unit, typed: text.trim().slice(0, 40) });
  };
}

/** A grown dog's weight in kg; a number alone is kg, or pounds for who weighs in pounds or ounces. Empty is null. */
export function readGrownKg(unit: MassUnit): (text: string) => Read<number | null> {
  return (text) => {
    if (text.trim() === '') return good(null);
    const mass = parseMass(text, grownUnit(unit));
    if (!mass.ok) return bad(words.form.massFault(mass.fault, text.trim()));
    const kg = mass.grams / 1000;
    return kg < 0.5 || kg > 120 ? bad(words.form.between(grownText(0.5, unit), grownText(120, unit))) : good(kg);
  };
}

/** "24 kg", or "53 lb" for who weighs in pounds or ounces; empty for null. */
export function grownText(kg: number | null, unit: MassUnit): string {
  if (kg === null) return '';
  const n = grownUnit(unit) === 'kg' ? kg : (kg * 1000) / GRAMS_PER_POUND;
  return `${Math.round(n * 10) / 10} ${grownUnit(unit)}`;
}
