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

export const houseRulesSchema = z
  .strictObject({
    /** Shares of body weight a day; between the ages it glides (see `share.ts`). */
    shareYoung: share,
    shareMiddle: share,
    shareAdult: share,
    /** Until this age the young share holds; at `middleMonths` and from `adultMonths` the others. Calendar months. */
    youngUntilMonths: z.number().int().min(2).max(12),
    middleMonths: z.number().int().min(3).max(18),
    adultMonths: z.number().int().min(6).max(30),
    /** Three meals until this age, then two; the step itself takes `stepDays`. */
    twoMealsFromMonths: z.number().int().min(3).max(24),
    stepDays: z.number().int().min(0).max(28),
    /** Four meals until this age in weeks; 0 is never. Published norm 12 (from memory, feeding.md section 4). */
    fourMealsUntilWeeks: z.number().int().min(0).max(26),
    mealTimes: z.strictObject({ morning: clock, midday: clock, afternoon: clock, evening: clock }),
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
  });
export type HouseRules = z.infer<typeof houseRulesSchema>;

/** Some of the rules, as a command changes them. */
export const rulesChangeSchema = changeOf({
  ...houseRulesSchema.shape,
  mealTimes: changeOf(houseRulesSchema.shape.mealTimes.shape),
});
export type RulesChange = z.infer<typeof rulesChangeSchema>;

/** What a change makes of the rules, if the whole does not contradict itself; else the issue, its path in the rules. */
export function changedRules(rules: HouseRules, change: RulesChange) {
  return houseRulesSchema.safeParse({ ...rules, ...change, mealTimes: { ...rules.mealTimes, ...change.mealTimes } });
}

export const DEFAULT_RULES: HouseRules = {
  shareYoung: 0.055,
  shareMiddle: 0.035,
  shareAdult: 0.02,
  youngUntilMonths: 5,
  middleMonths: 6,
  adultMonths: 12,
  twoMealsFromMonths: 5,
  stepDays: 14,
  fourMealsUntilWeeks: 0,
  mealTimes: { morning: '07:00', midday: '12:30', afternoon: '15:30', evening: '18:00' },
  basis: 'share',
  growthMethod: 'klein',
  energyFloor: 0.8,
  liftAfterMinutes: 10,
  cutShare: 0.1,
  treatShare: 0.1,
  vegetableSpoonsPerHalfPound: 1,
  boneShare: 0.25,
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
