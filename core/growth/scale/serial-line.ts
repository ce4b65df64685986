/**
 * Lines of text from serial scales, of whatever make: a status, gross or net, a sign, a number, a unit, in this order but
 * with anything left out. What is not understood is no weight; nothing is guessed.
 */
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND, type MassUnit } from '../../units/mass.ts';
import { fault, type ScaleValue } from './value.ts';

const UNIT_GRAMS: Readonly<Record<string, number>> = {
  MG: 0.001,
  G: 1,
  KG: 1000,
  OZ: GRAMS_PER_OUNCE,
  LB: GRAMS_PER_POUND,
  LBS: GRAMS_PER_POUND,
};
/** A number without a unit is in the one she said; with pounds and ounces a number alone is ounces, as when typed. */
const SAID_GRAMS: Readonly<Record<MassUnit, number>> = {
  g: 1,
  kg: 1000,
  oz: GRAMS_PER_OUNCE,
  lb: GRAMS_PER_POUND,
  lboz: GRAMS_PER_OUNCE,
};

const OVER = /(?:^|[\s,])OL(?=[\s,+-]|$)/;
const STATUS = /(?:^|[\s,])(ST|US|[SU](?=[\s,+-]?\s*\d))(?=[\s,+\-\d]|$)/;
const BASIS = /(?:^|[\s,])(GS|NT|G|N)(?=[\s,]*[+-]?\s*\d)/;
/** The point may lead, as in .5. A number with a unit behind it goes before one without: a line may begin with a count. */
const WITH_UNIT = /([+-]?)\s*(\d+(?:[.,]\d*)?|\.\d+)\s*([A-Z]+)/;
const BARE = /([+-]?)\s*(\d+(?:[.,]\d*)?|\.\d+)/;
/** Sign, six digits, unit, and one check byte that may be a letter. */
const FRAMED = /^[SU]\s*[+-]?\d{6}[A-Z]+/;
/** A comma may be a decimal comma or a thousands mark; in grams nobody can tell which. */
const TWO_WAYS = /\d,\d{3}\s*G(?![A-Z])/;
const POUNDS_OUNCES = /([+-]?)\s*(\d+)\s*LBS?[\s,:]*(\d+(?:[.,]\d+)?)\s*OZ/;

/** One line, with or without its line ends. `said` is the unit of numbers that come without one; null when nobody said. */
export function parseLine(line: string, said: MassUnit | null): ScaleValue | null {
  const text = withoutControls(line).toUpperCase().trim();
  if (text === '') return null;
  if (OVER.test(text)) return fault('over-limit');
  if (TWO_WAYS.test(text)) return fault('garbled');
  const basis = basisOf(BASIS.exec(text)?.[1]);
  const stable = stableOf(text);
  const pair = POUNDS_OUNCES.exec(text);
  if (pair !== null) {
    const ounces = pair[3] ?? '0';
    const grams = Number(pair[2]) * GRAMS_PER_POUND + numberOf(ounces) * GRAMS_PER_OUNCE;
    return { kind: 'weight', grams: signed(pair[1], grams), stepGrams: stepOf(ounces) * GRAMS_PER_OUNCE, stable, basis };
  }
  const one = WITH_UNIT.exec(text) ?? BARE.exec(text);
  if (one === null) return null;
  const [, sign, figure = '', unit] = one;
  const grams = unitGrams(unit, said, FRAMED.test(text));
  if (typeof grams === 'string') return fault(grams);
  // To a billionth of a gram: 12.34 × 1000 is 12340 and not a little less.
  const value = Math.round(numberOf(figure) * grams * 1e9) / 1e9;
  return { kind: 'weight', grams: signed(sign, value), stepGrams: stepOf(figure) * grams, stable, basis };
}

/** What is left of a stream of text after its whole lines; feeds each of them. Line feed, carriage return and ETX end a line. */
export function lines(onLine: (line: string) => void): (text: string) => void {
  let rest = '';
  return (text) => {
    const parts = (rest + text).replaceAll(END_OF_TEXT, '\n').split(/[\r\n]/);
    // A stream that never ends a line is not a scale: its beginning is let go.
    rest = (parts.pop() ?? '').slice(-LONGEST_LINE);
    for (const part of parts) if (part !== '') onLine(part);
  };
}

const LONGEST_LINE = 256;
const END_OF_TEXT = '\u0003';

function withoutControls(line: string): string {
  return [...line].map((c) => (c < ' ' || c === '\u007f' ? ' ' : c)).join('');
}

function stableOf(text: string): boolean | null {
  if (text.endsWith('?')) return false;
  const status = STATUS.exec(text)?.[1];
  return status === undefined ? null : status.startsWith('S');
}

function basisOf(token: string | undefined): 'gross' | 'net' | null {
  return token === undefined ? null : token.startsWith('G') ? 'gross' : 'net';
}

/** Behind the unit of a framed line stands its check byte: one letter more is let pass there, and nowhere else (oz t, gn). */
function unitGrams(unit: string | undefined, said: MassUnit | null, framed: boolean): number | 'unit' | 'no-unit' {
  if (unit === undefined) return said === null ? 'no-unit' : SAID_GRAMS[said];
  return UNIT_GRAMS[unit] ?? (framed ? UNIT_GRAMS[unit.slice(0, -1)] : undefined) ?? 'unit';
}

function numberOf(figure: string): number {
  return Number(figure.replace(',', '.'));
}

function stepOf(figure: string): number {
  return 10 ** -(figure.split(/[.,]/)[1]?.length ?? 0);
}

function signed(sign: string | undefined, grams: number): number {
  return sign === '-' ? -grams : grams;
}
