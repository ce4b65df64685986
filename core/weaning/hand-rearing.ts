/**
 * Milk by bottle or tube for a puppy that needs it: what the handbooks reckon, never more than its stomach holds. They disagree, so the range is
 * shown. Underfed for a day harms a newborn less than overfed (Hand et al. 2010, p. 309, seen). A cold puppy is never fed.
 */
import {
  HAND_REARING,
  type HandRearingMethod,
  MILK_GROSS_KCAL_PER_100G,
  NEONATE_KCAL_PER_100G,
  STOMACH_ML_PER_100G,
  USUAL_MILK_KCAL_PER_ML,
} from '../reference/feeding/nursing.ts';
import { GRAMS_PER_POUND } from '../units/mass.ts';

/** Published need of a newborn in kcal a day: 25 kcal in 100 g. */
export function neonateNeed(grams: number): number {
  return (grams * NEONATE_KCAL_PER_100G) / 100;
}

/** The most a feed may be, in mL: 4 mL in 100 g. */
export function feedLimit(grams: number): number {
  return (grams * STOMACH_ML_PER_100G) / 100;
}

/** Gross energy of so much bitch's milk, kcal. */
export function milkGrossEnergy(grams: number): number {
  return (grams * MILK_GROSS_KCAL_PER_100G) / 100;
}

export interface Feeds {
  readonly kcal: number;
  readonly dayMl: number;
  readonly feeds: number;
  /** Never over {@link feedLimit}. */
  readonly feedMl: number;
  /** The stomach would not hold what the method reckons in so few feeds. */
  readonly capped: boolean;
}

/** A day's feeds from a need in kcal, an energy of the milk in kcal per mL and a number of feeds. */
export function feedsFor(grams: number, kcal: number, milkKcalPerMl: number, feeds: number): Feeds {
  const wanted = kcal / milkKcalPerMl / feeds;
  const limit = feedLimit(grams);
  const feedMl = Math.min(wanted, limit);
  return { kcal, dayMl: feedMl * feeds, feeds, feedMl, capped: wanted > limit };
}

/**
 * Feeds by one handbook in a week of life, 0 to 3. Where the stomach would not hold a feed, there are more of them (`capped`): the day stays what the
 * handbook has, and so never falls from one week to the next.
 */
export function handbookFeeds(method: HandRearingMethod, grams: number, week: 0 | 1 | 2 | 3, milkKcalPerMl: number): Feeds {
  const kcal = (grams / GRAMS_PER_POUND) * method.kcalPerPound[week];
  const fewest = Math.ceil(kcal / milkKcalPerMl / feedLimit(grams) - 1e-9);
  const feeds = Math.max(method.feeds[week], fewest);
  return { ...feedsFor(grams, kcal, milkKcalPerMl, feeds), capped: fewest > method.feeds[week] };
}

/** From four weeks a puppy eats from the bowl; the handbooks end there. */
export const HAND_REARING_UNTIL_DAYS = 28;

export interface TopUp {
  /** A feed by the lower and by the higher handbook, mL, rounded down to what a syringe shows. */
  readonly feedMl: { readonly low: number; readonly high: number };
  readonly feeds: { readonly low: number; readonly high: number };
  readonly dayMl: { readonly low: number; readonly high: number };
  /** Hard cap for a feed, mL. */
  readonly mostMl: number;
  /** The cap, and not a handbook, sets the number of feeds. */
  readonly capped: boolean;
  /** Hours between feeds at the higher and the lower number of feeds. */
  readonly hours: { readonly low: number; readonly high: number };
  /** What the puppy needs in all by the published figure, kcal a day. */
  readonly needKcal: number;
  readonly sources: readonly string[];
}

/**
 * Volumes for a puppy that gets nothing from its dam; one that still nurses needs less. `milkKcalPerMl` is what the tin says. Null from four weeks
 * on, and for a weight or a milk that is none.
 */
export function topUp(grams: number, ageDays: number, milkKcalPerMl: number = USUAL_MILK_KCAL_PER_ML): TopUp | null {
  if (!(grams > 0) || !(milkKcalPerMl > 0) || ageDays < 0 || ageDays >= HAND_REARING_UNTIL_DAYS) return null;
  const week = Math.floor(ageDays / 7) as 0 | 1 | 2 | 3;
  const both = [HAND_REARING.A, HAND_REARING.B].map((m) => handbookFeeds(m, grams, week, milkKcalPerMl));
  const [low, high] = [Math.min(...both.map((f) => f.feedMl)), Math.max(...both.map((f) => f.feedMl))];
  const feeds = { low: Math.min(...both.map((f) => f.feeds)), high: Math.max(...both.map((f) => f.feeds)) };
  return {
    feedMl: { low: syringe(low), high: syringe(high) },
    feeds,
    dayMl: { low: Math.floor(Math.min(...both.map((f) => f.dayMl))), high: Math.floor(Math.max(...both.map((f) => f.dayMl))) },
    mostMl: syringe(feedLimit(grams)),
    capped: both.some((f) => f.capped),
    hours: { low: Math.round(24 / feeds.high), high: Math.round(24 / feeds.low) },
    needKcal: neonateNeed(grams),
    sources: [HAND_REARING.A.source, HAND_REARING.B.source],
  };
}

/** Down to half a mL under 10, a whole one above: never up. */
function syringe(ml: number): number {
  const step = ml < 10 ? 0.5 : 1;
  return Math.floor(ml / step + 1e-9) * step;
}
