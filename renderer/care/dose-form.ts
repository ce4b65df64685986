/** What is typed of a label, read into one or answered with a sentence for each field. */
import { type DoseLabel, measuredIn, RATE_UNITS, STRENGTH_UNITS } from '../../core/care/dose.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { good, type Read, readMass, readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

export const EMPTY_DOSE = {
  product: '',
  rate: '',
  rateUnit: 'mg/kg',
  lightRate: '',
  lightUpTo: '',
  strength: '',
  strengthUnit: 'mg/mL',
  mark: '',
  leastDays: '',
  leastGrams: '',
};
export type DoseDraft = Readonly<typeof EMPTY_DOSE>;
export type DoseField = keyof DoseDraft;

export interface ReadDose {
  /** Null while something is missing or cannot be read. */
  readonly label: DoseLabel | null;
  readonly mistakes: Partial<Record<DoseField, string>>;
}

/** Figures over 0: a label's dose and strength are never nothing. */
const FIGURE = { low: 0.001, high: 10_000 };

/** @param unit of a weight that is typed without one */
export function readDose(draft: DoseDraft, unit: MassUnit): ReadDose {
  const mistakes: Partial<Record<DoseField, string>> = {};
  const take = <T>(field: DoseField, answer: Read<T>): T | null => {
    if (answer.ok) return answer.value;
    mistakes[field] = answer.sentence;
    return null;
  };
  const figure = (field: 'rate' | 'lightRate' | 'strength' | 'mark', example: string) =>
    draft[field].trim() === '' ? null : take(field, readNumber({ ...FIGURE, example })(draft[field]));
  const { examples } = words.dose;
  const rateUnit = RATE_UNITS.find((u) => u === draft.rateUnit) ?? 'mg/kg';
  const strengthUnit = STRENGTH_UNITS.find((u) => u === draft.strengthUnit) ?? 'mg/mL';
  const rate = figure('rate', examples.rate);
  const lightRate = figure('lightRate', examples.rate);
  const strength = figure('strength', examples.strength);
  const mark = figure('mark', examples.mark);
  const upTo = take('lightUpTo', readMass(unit)(draft.lightUpTo))?.grams ?? null;
  const leastGrams = take('leastGrams', readMass(unit)(draft.leastGrams))?.grams ?? null;
  const leastDays = take(
    'leastDays',
    draft.leastDays.trim() === ''
      ? good(null)
      : readNumber({ low: 1, high: 400, integer: true, example: examples.days })(draft.leastDays),
  );
  // Half of a second dose would be left out without a word.
  if ((lightRate === null) !== (upTo === null))
    mistakes[lightRate === null ? 'lightRate' : 'lightUpTo'] ??= words.dose.bothOrNone;
  if (rate === null || strength === null || mark === null || Object.keys(mistakes).length > 0) return { label: null, mistakes };
  const light = lightRate === null || upTo === null ? null : { upToGrams: upTo, rate: { amount: lightRate, unit: rateUnit } };
  return {
    label: {
      rate: { amount: rate, unit: rateUnit },
      light,
      strength: { amount: strength, unit: strengthUnit },
      mark,
      leastDays,
      leastGrams,
    },
    mistakes,
  };
}

/** What the marks are of, while the strength is chosen. */
export function markUnit(draft: DoseDraft): ReturnType<typeof measuredIn> {
  return measuredIn(STRENGTH_UNITS.find((u) => u === draft.strengthUnit) ?? 'mg/mL');
}
