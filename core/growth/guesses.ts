/** What was meant by a figure that can't be right: one guess, the likeliest. */
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND, isMetric, type MassUnit, toGrams } from '../units/mass.ts';

export type GuessKind = 'tenth' | 'tenfold' | 'digits' | 'kilo';

/** How a figure goes wrong: a nought too few or too many, the unit of the other scale, figures swapped, doubled or left out. */
export type Slip =
  | 'nought-few'
  | 'nought-many'
  | 'kilograms-meant'
  | 'grams-meant'
  /** Of a scale in ounces or pounds: the other unit was written without its name. */
  | 'in-kilograms'
  | 'in-grams'
  | 'swapped'
  | 'doubled'
  | 'missing'
  | 'one-wrong';

export interface Guess {
  readonly grams: number;
  readonly kind: GuessKind;
  readonly slip: Slip;
}

/** Commoner slips first: the log of how much commoner, our own choice. */
const COMMON: Readonly<Record<Slip, number>> = {
  'nought-few': 0,
  'nought-many': 0,
  'kilograms-meant': 0,
  'grams-meant': 0,
  'in-kilograms': 0,
  'in-grams': 0,
  swapped: 0,
  doubled: -0.7,
  missing: -2.5,
  'one-wrong': -3,
};
/** A scale in grams shows whole ones: a guess with tenths is less likely. */
const BROKEN = 3;
/** Further than this from what was expected, in standard deviations, no guess is worth a word. */
const FURTHEST = 2.5;
const FACTOR: Readonly<Record<MassUnit, number>> = {
  g: 1,
  kg: 1000,
  oz: GRAMS_PER_OUNCE,
  lb: GRAMS_PER_POUND,
  lboz: GRAMS_PER_OUNCE,
};
const DECIMALS: Readonly<Record<MassUnit, number>> = { g: 1, kg: 3, oz: 2, lb: 2, lboz: 1 };

/** The likeliest slip that makes the typed weight fit what was expected (ln grams, standard deviation); null when none does. */
export function bestGuess(grams: number, expected: number, sd: number, unit: MassUnit): Guess | null {
  const scored = [...candidates(grams, unit), ...wrongFigures(grams, expected, unit)]
    .filter((c) => c.grams >= 0.1 && c.grams !== grams)
    .map((c) => ({ ...c, z: (Math.log(c.grams) - expected) / sd }))
    .filter((c) => Math.abs(c.z) <= FURTHEST)
    .map((c) => ({
      ...c,
      merit: COMMON[c.slip] - (c.z * c.z) / 2 - (unit === 'g' && !Number.isInteger(c.grams) ? BROKEN : 0),
    }));
  const best = scored.reduce<(typeof scored)[number] | null>((a, b) => (a === null || b.merit > a.merit ? b : a), null);
  return best === null ? null : { grams: best.grams, kind: best.kind, slip: best.slip };
}

function candidates(grams: number, unit: MassUnit): Guess[] {
  const of = (value: number, kind: GuessKind, slip: Slip): Guess => ({ grams: toGrams(value), kind, slip });
  return [
    of(grams * 10, 'tenth', 'nought-few'),
    of(grams / 10, 'tenfold', 'nought-many'),
    of(grams * 1000, 'kilo', 'kilograms-meant'),
    of(grams / 1000, 'kilo', 'grams-meant'),
    ...otherUnits(grams / FACTOR[unit], unit),
    ...digitSlips(grams, unit).map((d) => of(d.value, 'digits', d.slip)),
  ];
}

/** The figure alone, in grams or kilograms, where the scale shows ounces or pounds. */
function otherUnits(figure: number, unit: MassUnit): Guess[] {
  if (isMetric(unit)) return [];
  return [
    { grams: toGrams(figure * 1000), kind: 'kilo', slip: 'in-kilograms' },
    { grams: toGrams(figure), kind: 'kilo', slip: 'in-grams' },
  ];
}

/** A figure that is another than the one meant. It must land so near what was expected, as a share of its place, or any number would do. */
const NEAR_OF_PLACE = 0.1;

function wrongFigures(grams: number, expected: number, unit: MassUnit): Guess[] {
  if (unit === 'lboz') return [];
  const text = String(Number((grams / FACTOR[unit]).toFixed(DECIMALS[unit])));
  const meant = Math.exp(expected) / FACTOR[unit];
  return [...text].flatMap((figure, i): Guess[] => {
    if (!isDigit(figure)) return [];
    return Array.from({ length: 10 }, (_, other) => `${text.slice(0, i)}${other}${text.slice(i + 1)}`).flatMap(
      (other): Guess[] => {
        const place = Math.abs(Number(other) - Number(text)) / Math.abs(Number(other.charAt(i)) - Number(figure));
        if (Number.isNaN(place) || Number(other) <= 0 || Math.abs(Number(other) - meant) > NEAR_OF_PLACE * place) return [];
        return [{ grams: toGrams(Number(other) * FACTOR[unit]), kind: 'digits', slip: 'one-wrong' }];
      },
    );
  });
}

/** Figures as they were typed in the unit of the scale; pounds and ounces together are left alone. */
function digitSlips(grams: number, unit: MassUnit): { value: number; slip: Slip }[] {
  if (unit === 'lboz') return [];
  const text = String(Number((grams / FACTOR[unit]).toFixed(DECIMALS[unit])));
  const back = (t: string) => Number(t) * FACTOR[unit];
  const slips: { value: number; slip: Slip }[] = [];
  for (let i = 0; i < text.length; i += 1) {
    const [a, b] = [text.charAt(i), text.charAt(i + 1)];
    if (isDigit(a) && isDigit(b) && a !== b) {
      slips.push({ value: back(text.slice(0, i) + b + a + text.slice(i + 2)), slip: 'swapped' });
    }
    if (isDigit(a) && a === b) slips.push({ value: back(text.slice(0, i) + text.slice(i + 1)), slip: 'doubled' });
    if (isDigit(a)) slips.push({ value: back(text.slice(0, i) + a + text.slice(i)), slip: 'missing' });
  }
  return slips.filter((s) => s.value > 0);
}

function isDigit(c: string): boolean {
  return c >= '0' && c <= '9';
}
