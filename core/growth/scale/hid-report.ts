/**
 * USB scales: the weight report of usage page 0x8D (USB HID Point of Sale Usage Tables 1.02, 2001). Status, unit, a
 * signed power of ten, and an unsigned weight, low byte first.
 */
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND } from '../../units/mass.ts';
import { fault, type ScaleFault, type ScaleValue } from './value.ts';

export const SCALE_USAGE_PAGE = 0x8d;
/** The report number that scales usually give it. */
export const USUAL_REPORT_ID = 3;

/** Grains are 1/7000 pound; a pennyweight is 24, a troy ounce 480 of them. */
const GRAIN = GRAMS_PER_POUND / 7000;

/** Grams of the units 1 to 12. Tael (5) and ton (9) mean different weights in different places: refused, not guessed. */
const UNIT_GRAMS: readonly (number | null)[] = [
  null,
  0.001,
  1,
  1000,
  0.2,
  null,
  GRAIN,
  24 * GRAIN,
  1_000_000,
  null,
  480 * GRAIN,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
];

const AT_ZERO = 2;
const IN_MOTION = 3;
const STABLE = 4;
const FAULTS: Readonly<Record<number, ScaleFault>> = {
  1: 'fault',
  5: 'under-zero',
  6: 'over-limit',
  7: 'calibrate',
  8: 're-zero',
};

/** Where the parts of the report lie, in bytes from the first after the report number. */
export interface ReportLayout {
  readonly status: number;
  readonly unit: number;
  readonly exponent: number;
  readonly weight: number;
  readonly weightBytes: number;
}

export const USUAL_LAYOUT: ReportLayout = { status: 0, unit: 1, exponent: 2, weight: 3, weightBytes: 2 };

/** One field of a report as its descriptor gives it; usages are page and usage in one number, 0x8D0040. */
export interface ReportField {
  readonly usages: readonly number[];
  readonly bits: number;
}

const USAGES = { weight: 0x8d0040, exponent: 0x8d0041 } as const;
const isStatus = (usage: number) => usage >= 0x8d0070 && usage <= 0x8d0078;
const isUnit = (usage: number) => usage >= 0x8d0050 && usage <= 0x8d005c;

/** The layout that a device's own descriptor gives its report; null when it is not a weight report, or not in whole bytes. */
export function layoutOf(fields: readonly ReportField[]): ReportLayout | null {
  const found: { -readonly [K in keyof ReportLayout]?: number } = {};
  let bits = 0;
  for (const field of fields) {
    const at = bits / 8;
    bits += field.bits;
    if (field.usages.includes(USAGES.weight)) {
      found.weight = at;
      found.weightBytes = field.bits / 8;
    } else if (field.usages.includes(USAGES.exponent)) found.exponent = at;
    else if (field.usages.some(isStatus)) found.status = at;
    else if (field.usages.some(isUnit)) found.unit = at;
  }
  const { status, unit, exponent, weight, weightBytes } = found;
  if (status === undefined || unit === undefined || exponent === undefined || weight === undefined || weightBytes === undefined) {
    return null;
  }
  const complete = [status, unit, exponent, weight, weightBytes].every(Number.isInteger) && weightBytes >= 1 && weightBytes <= 4;
  return complete ? { status, unit, exponent, weight, weightBytes } : null;
}

/** A report as the browser hands it over: without its number. Longer reports are read as far as they are known. */
export function decodeReport(data: Uint8Array, layout: ReportLayout = USUAL_LAYOUT): ScaleValue {
  const byte = (at: number) => data[at] ?? Number.NaN;
  const status = byte(layout.status);
  const failed = FAULTS[status];
  if (failed !== undefined) return fault(failed);
  let raw = 0;
  for (let i = 0; i < layout.weightBytes; i += 1) raw += byte(layout.weight + i) * 256 ** i;
  const exponent = (byte(layout.exponent) << 24) >> 24;
  if (Number.isNaN(status) || Number.isNaN(byte(layout.exponent)) || Number.isNaN(raw)) return fault('garbled');
  if (status === AT_ZERO) return { kind: 'zero' };
  if (status !== IN_MOTION && status !== STABLE) return fault('garbled');
  const unit = UNIT_GRAMS[byte(layout.unit)] ?? null;
  if (unit === null) return fault('unit');
  return {
    kind: 'weight',
    grams: tenfold(raw, exponent) * unit,
    stepGrams: tenfold(1, exponent) * unit,
    stable: status === STABLE,
    basis: null,
  };
}

/** A report as it runs over the wire: its number first. Null when it is another report. */
export function decodeNumberedReport(bytes: Uint8Array, reportId: number = USUAL_REPORT_ID): ScaleValue | null {
  return bytes[0] === reportId ? decodeReport(bytes.subarray(1)) : null;
}

/** Divided and not multiplied where the power is below zero: 78 / 10 is 7.8, 78 × 0.1 is not. */
function tenfold(value: number, power: number): number {
  return power < 0 ? value / 10 ** -power : value * 10 ** power;
}
