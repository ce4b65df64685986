/** A scale that types: its line arrives in the field as if she had written it. */
import { type MassFault, type MassResult, type MassUnit, parseMass, toGrams } from '../../units/mass.ts';
import { parseLine } from './serial-line.ts';

export type TypedFault = MassFault | { readonly code: 'scale-moving' } | { readonly code: 'scale-refused' };
export type TypedResult = Extract<MassResult, { ok: true }> | { readonly ok: false; readonly fault: TypedFault };

/** Only a line that begins with a scale's words, or ends with its mark for moving, is taken for one: 4l2 stays a slip. */
const SCALE_LINE = /^\s*(?:ST|US|OL|GS|NT|[SUGN][\s,+-])|\?\s*$/i;

/** A weight as people write it, or as a scale that types writes it. A moving or refused weight of a scale is not taken. */
export function parseTyped(text: string, usual: MassUnit): TypedResult {
  const written = parseMass(text, usual);
  if (written.ok || !SCALE_LINE.test(text)) return written;
  const value = parseLine(text, usual);
  if (value === null) return written;
  if (value.kind !== 'weight') return { ok: false, fault: { code: 'scale-refused' } };
  if (value.stable === false) return { ok: false, fault: { code: 'scale-moving' } };
  // By way of what people write, so that the same limits hold.
  const checked = parseMass(`${toGrams(Math.max(0, value.grams)).toFixed(1)} g`, 'g');
  return checked.ok ? { ...checked, unit: usual } : checked;
}
