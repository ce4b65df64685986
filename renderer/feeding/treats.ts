/** Treats as they are typed, and what they leave for the meals of the day. */

import type { Finding } from '../../core/feeding/finding.ts';
import { type FindingsInput, findings } from '../../core/feeding/findings.ts';
import { rationOn, type Treats, treatShareOf } from '../../core/feeding/ration.ts';
import { MEAL_NAMES } from '../../core/food/bowls.ts';
import { foodUnit } from '../../core/units/food.ts';
import { type MassUnit, parseMass } from '../../core/units/mass.ts';
import { bad, good, type Read, readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

/** Grams of treats; a number alone is in the unit of the bowl. Empty and nought are null. */
export function readTreatGrams(text: string, unit: MassUnit): Read<number | null> {
  const t = text.trim();
  if (t === '') return good(null);
  const mass = parseMass(t, foodUnit(unit));
  if (mass.ok) return good(mass.grams);
  return mass.fault.code === 'not-positive' && !t.startsWith('-') ? good(null) : bad(words.form.massFault(mass.fault, t));
}

/** From cucumber to pure fat, which holds 900 kcal in 100 g. */
const typedKcal = () => readNumber({ low: 5, high: 900, unit: 'kcal', example: words.treat.example });

/** kcal in 100 g of treats; empty is that of the food. */
export function readTreatKcal(text: string, ofFood: number): Read<number> {
  return text.trim() === '' ? good(ofFood) : typedKcal()(text);
}

interface TreatsLeave {
  readonly sentence: string;
  /** When they are over the share of the rules. */
  readonly high: Finding | null;
}

/** What is left for the meals in one sentence, and the finding when treats are over their share. */
export function treatsLeave(input: FindingsInput, treats: Treats): TreatsLeave {
  const unit = input.unit ?? 'g';
  const withTreats = { ...input, treats };
  const share = treatShareOf(withTreats);
  const percent = words.percentText(share, share < 0.01 ? 1 : 0);
  const { meals } = rationOn(withTreats);
  const bowls = MEAL_NAMES.flatMap((name) => meals[name] ?? []).map((grams) => words.foodFigure(grams, unit));
  return {
    // A bowl is never rounded to nothing, so bowls say nothing once the treats are the whole day.
    sentence:
      share >= 1
        ? words.treat.nothingLeft(percent)
        : words.treat.result(words.treat.meals(bowls.join(', '), foodUnit(unit)), words.treat.share(percent)),
    high: findings(withTreats).find((f) => f.code === 'treats-high') ?? null,
  };
}
