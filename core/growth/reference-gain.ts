/**
 * The gain to expect by age, in log units: a newborn loses a little on its first day (or gains, as its own litter shows),
 * gains three quarters on its second, then gains a share of its weight that shrinks from day to day. Fitted to the published early gains
 * (Small Animal Clinical Nutrition, 5th edition, table 16-1; our own fit, not published as such). From nine weeks on it
 * is the slope of the class curve: a small dog's own share of growth is then larger, a giant's smaller than the early fit.
 */
import { GROWTH_CURVES, type GrowthCurve } from '../reference/growth/curves.ts';
import { logistic, logisticScale } from './curves.ts';

/** Starting gain per day and how it fades, by birth weight, and the curve of the class that is usually born so heavy. */
const BY_BIRTH_WEIGHT = [
  { grams: 150, start: 0.098, fade: 0.04, ...GROWTH_CURVES.toy },
  { grams: 190, start: 0.097, fade: 0.036, ...GROWTH_CURVES.small },
  { grams: 290, start: 0.095, fade: 0.031, ...GROWTH_CURVES.medium },
  { grams: 420, start: 0.093, fade: 0.0238, ...GROWTH_CURVES.large },
  { grams: 560, start: 0.091, fade: 0.0213, ...GROWTH_CURVES.giant },
] as const;

/** From this day on the class curve. */
const LATER_FROM = 63;
const SECOND_DAY_SHARE = 0.75;
/** Without milk a newborn loses this share of a day's gain more than the usual first-day loss. Our own choice. */
const FIRST_DAY_FED = 0.5;

/** How a litter starts, beside the usual: learned from its own first weights. */
export interface LitterStart {
  /** Log gain of the whole first day. */
  readonly firstDay: number;
  /** Share by which the gain of the first days is larger; it fades to 1/e in four days. */
  readonly early: number;
}

export const USUAL_START: LitterStart = { firstDay: -0.02, early: 0 };
/** Days in which a strong start fades to 1/e. Our own choice. */
const EARLY_FADES = 4;

export interface ReferenceGain {
  /** Log gain per day that a full day of feeding gives at this age; positive also on the first two days. */
  pace(ageDays: number): number;
  /** Log gain from birth to this age: exp of it is the multiple of birth weight. */
  since(ageDays: number): number;
  /** Log gain that feeding gives from birth to this age: what a puppy that does not suck falls short of. */
  fed(ageDays: number): number;
  /** Log gain from birth to this age that a start with `early` 1 would add. */
  early(ageDays: number): number;
}

/** The reference for a litter whose middle birth weight is this; beyond the table its ends hold. */
export function referenceGain(middleBirthGrams: number, litter: LitterStart = USUAL_START): ReferenceGain {
  const shape = between(Math.log(middleBirthGrams));
  const { start, fade } = shape;
  const fading = (rate: number, from: number, to: number) => (start / rate) * (Math.exp(-rate * from) - Math.exp(-rate * to));
  const first = (from: number, to: number) => fading(fade, from, to) + litter.early * fading(fade + 1 / EARLY_FADES, from, to);
  const sum = (from: number, to: number) =>
    to <= LATER_FROM
      ? first(from, to)
      : first(from, LATER_FROM) + Math.log(logistic(to / 7, shape) / logistic(LATER_FROM / 7, shape));
  const pace = (age: number) => {
    const since = Math.max(0, age);
    return age <= LATER_FROM
      ? start * Math.exp(-fade * since) * (1 + litter.early * Math.exp(-since / EARLY_FADES))
      : (1 - logistic(age / 7, shape)) / logisticScale(shape.half, shape.ninetyNine) / 7;
  };
  const dayOne = litter.firstDay;
  const dayTwo = dayOne + SECOND_DAY_SHARE * sum(1, 2);
  const fedOne = FIRST_DAY_FED * sum(0, 1);
  const fedTwo = fedOne + SECOND_DAY_SHARE * sum(1, 2);
  const faded = (from: number, to: number) => fading(fade + 1 / EARLY_FADES, from, to);
  const earlyTwo = SECOND_DAY_SHARE * faded(1, 2);
  return {
    pace,
    since(age) {
      if (age <= 0) return 0;
      if (age <= 1) return dayOne * age;
      return age <= 2 ? dayOne + SECOND_DAY_SHARE * sum(1, age) : dayTwo + sum(2, age);
    },
    fed(age) {
      if (age <= 0) return 0;
      if (age <= 1) return FIRST_DAY_FED * sum(0, age);
      return age <= 2 ? fedOne + SECOND_DAY_SHARE * sum(1, age) : fedTwo + sum(2, age);
    },
    early(age) {
      if (age <= 1) return 0;
      return age <= 2 ? SECOND_DAY_SHARE * faded(1, age) : earlyTwo + faded(2, Math.min(age, LATER_FROM));
    },
  };
}

function between(ln: number): GrowthCurve & { start: number; fade: number } {
  let below: (typeof BY_BIRTH_WEIGHT)[number] = BY_BIRTH_WEIGHT[0];
  if (ln <= Math.log(below.grams)) return below;
  for (const above of BY_BIRTH_WEIGHT) {
    if (ln <= Math.log(above.grams)) {
      const w = (ln - Math.log(below.grams)) / (Math.log(above.grams) - Math.log(below.grams));
      const mixed = (of: (row: typeof above) => number) => of(below) + w * (of(above) - of(below));
      return {
        start: mixed((r) => r.start),
        fade: mixed((r) => r.fade),
        half: mixed((r) => r.half),
        ninetyNine: mixed((r) => r.ninetyNine),
      };
    }
    below = above;
  }
  return below;
}
