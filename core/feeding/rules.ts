/**
 * House rules: the breeder's own feeding rules, dated and versioned. The defaults are common practice, no source,
 * unless a line says otherwise; published norms are shown beside them.
 */

import { z } from 'zod';
import { type CivilDate, date } from '../calendar/day.ts';
import { changeOf, dateSchema, idSchema } from '../units/fields.ts';
import { GROWTH_METHODS } from './energy.ts';

const share = z.number().min(0.005).max(0.2);
/** A month at its longest, so that a calendar month never refuses what fits. */
const DAYS_A_MONTH = 31;
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

/** Clock times of the meals. With four meals a day the midday and the evening one have times of their own, and with two the evening one. */
const mealTimesSchema = z.strictObject({
  morning: clock,
  midday: clock,
  middayOfFour: clock,
  afternoon: clock,
  evening: clock,
  eveningOfFour: clock,
  eveningOfTwo: clock,
});

export const rulesShape = z
  .strictObject({
    /** Shares of body weight a day; between the ages it glides (see `share.ts`). */
    shareYoung: share,
    shareMiddle: share,
    shareAdult: share,
    /** Until this age the young share holds; at `middleMonths` and from `adultMonths` the others. Calendar months. */
    youngUntilMonths: z.number().int().min(2).max(12),
    middleMonths: z.number().int().min(3).max(18),
    adultMonths: z.number().int().min(6).max(30),
    /** Three meals until this age, then two; the step itself takes `stepDays`. Small dogs, under {@link SMALL_ADULT_KG} grown, have an age of their own. */
    twoMealsFromMonths: z.number().int().min(3).max(24),
    smallTwoMealsFromMonths: z.number().int().min(3).max(24),
    stepDays: z.number().int().min(0).max(28),
    /** Four meals until this age in weeks; 0 is never. Published norm 12 (from memory, feeding.md section 4). */
    fourMealsUntilWeeks: z.number().int().min(0).max(26),
    smallFourMealsUntilWeeks: z.number().int().min(0).max(26),
    mealTimes: mealTimesSchema,
    basis: z.enum(['share', 'energy', 'share-with-floor']),
    /** Which published equation the energy estimate is. */
    growthMethod: z.enum(GROWTH_METHODS),
    /** With `share-with-floor`: never under this part of the energy estimate. */
    energyFloor: z.number().min(0.3).max(1.5),
    liftAfterMinutes: z.number().int().min(5).max(60),
    cutShare: z.number().min(0.05).max(0.3),
    treatShare: z.number().min(0).max(0.3),
    vegetableSpoonsPerHalfPound: z.number().min(0).max(4),
    boneShare: z.number().min(0).max(0.4),
    thawHours: z.number().int().min(12).max(96),
    keepHours: z.number().int().min(12).max(120),
    /** Which official keeping time stands beside a longer rule: 24 h (UK, Ireland) or 48 h (US). */
    officialKeeping: z.enum(['uk-ie', 'us']),
    boneMinutes: z.number().int().min(5).max(60),
  })
  .refine((r) => r.youngUntilMonths < r.middleMonths && r.middleMonths < r.adultMonths, {
    message: 'the ages must rise: young, middle, grown',
    path: ['middleMonths'],
  })
  .refine((r) => r.shareYoung >= r.shareMiddle && r.shareMiddle >= r.shareAdult, {
    message: 'the shares must fall with age',
    path: ['shareMiddle'],
  })
  .refine((r) => r.fourMealsUntilWeeks * 7 <= r.twoMealsFromMonths * DAYS_A_MONTH, {
    message: 'the meals must fall with age',
    path: ['fourMealsUntilWeeks'],
  })
  .refine((r) => r.smallFourMealsUntilWeeks * 7 <= r.smallTwoMealsFromMonths * DAYS_A_MONTH, {
    message: 'the meals must fall with age',
    path: ['smallFourMealsUntilWeeks'],
  });
export type HouseRules = z.infer<typeof rulesShape>;

/** Rules as they are read: those written before small dogs and four meals had figures of their own say for them what they said for all. */
export const houseRulesSchema = z.preprocess(asNow, rulesShape);

function asNow(written: unknown): unknown {
  const rules = z.looseObject({ mealTimes: z.looseObject({}) }).safeParse(written);
  if (!rules.success) return written;
  const { mealTimes: times, ...rest } = rules.data;
  return {
    ...filled(rest, { smallTwoMealsFromMonths: 'twoMealsFromMonths', smallFourMealsUntilWeeks: 'fourMealsUntilWeeks' }),
    mealTimes: filled(times, { middayOfFour: 'midday', eveningOfFour: 'evening', eveningOfTwo: 'evening' }),
  };
}

/** Each key that is missing says what the other one says. */
function filled(written: Readonly<Record<string, unknown>>, from: Readonly<Record<string, string>>): Record<string, unknown> {
  const missing = Object.entries(from).filter(([key, other]) => !(key in written) && other in written);
  return { ...written, ...Object.fromEntries(missing.map(([key, other]) => [key, written[other]])) };
}

/** Some of the rules, as a command changes them. */
export const rulesChangeSchema = changeOf({
  ...rulesShape.shape,
  mealTimes: changeOf(mealTimesSchema.shape),
});
export type RulesChange = z.infer<typeof rulesChangeSchema>;

/** What a change makes of the rules, if the whole does not contradict itself; else the issue, its path in the rules. */
export function changedRules(rules: HouseRules, change: RulesChange) {
  return rulesShape.safeParse({ ...rules, ...change, mealTimes: { ...rules.mealTimes, ...change.mealTimes } });
}

/** Dogs that will weigh less than this, in kg, are small: they need food more often. Textbooks, from memory. */
export const SMALL_ADULT_KG = 10;

/** Of common practice, but for the floor: a part of the published estimate, so that small dogs and lean mixes do not starve. */
export const DEFAULT_RULES: HouseRules = {
  shareYoung: 0.055,
  shareMiddle: 0.035,
  shareAdult: 0.02,
  youngUntilMonths: 5,
  middleMonths: 6,
  adultMonths: 12,
  twoMealsFromMonths: 5,
  smallTwoMealsFromMonths: 6,
  stepDays: 14,
  fourMealsUntilWeeks: 0,
  smallFourMealsUntilWeeks: 12,
  mealTimes: {
    morning: '07:00',
    midday: '13:00',
    middayOfFour: '12:00',
    afternoon: '17:00',
    evening: '20:00',
    eveningOfFour: '22:00',
    eveningOfTwo: '18:00',
  },
  basis: 'share-with-floor',
  growthMethod: 'klein',
  energyFloor: 0.85,
  liftAfterMinutes: 10,
  cutShare: 0.1,
  treatShare: 0.1,
  vegetableSpoonsPerHalfPound: 1,
  boneShare: 0.1,
  thawHours: 24,
  keepHours: 24,
  officialKeeping: 'uk-ie',
  boneMinutes: 20,
};

/** One version of the rules, in force from a day until the next version. A plan remembers the version it was made with. */
export const rulesVersionSchema = z.strictObject({ id: idSchema, from: dateSchema, rules: houseRulesSchema });
export type RulesVersion = z.infer<typeof rulesVersionSchema>;

/** Rules of one litter from a day; null rules: from that day as the house again. */
export const litterRulesSchema = z.strictObject({
  id: idSchema,
  litterId: idSchema,
  from: dateSchema,
  rules: houseRulesSchema.nullable(),
});
export type LitterRules = z.infer<typeof litterRulesSchema>;

/** The rules of a breeder who has not written her own. */
export const PROGRAM_RULES: RulesVersion = { id: 'defaults', from: date('2026-01-01'), rules: DEFAULT_RULES };

/** Every version of the house and of its litters, those with the latest day first. */
export interface RulesFacts {
  readonly versions: readonly RulesVersion[];
  readonly ofLitters: readonly LitterRules[];
}

/** The version in force on a day: the litter's own where one is named and has begun, else the house's, else the program's. */
export function rulesOn({ versions, ofLitters }: RulesFacts, litterId: string | null, day: CivilDate): RulesVersion {
  const own = ofLitters.find((v) => v.litterId === litterId && v.from <= day);
  if (own !== undefined && own.rules !== null) return { id: own.id, from: own.from, rules: own.rules };
  return versions.find((v) => v.from <= day) ?? PROGRAM_RULES;
}

/** The day from which a version holds; null for the program's own, which nobody wrote. */
export function writtenFrom(version: RulesVersion): CivilDate | null {
  return version.id === PROGRAM_RULES.id ? null : version.from;
}
