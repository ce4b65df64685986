/**
 * Ages of half and of 99 % of adult weight, in weeks. Seen for single breeds and size groups in Posada, Gomez, Rosero 2014
 * (Rev MVZ Cordoba) and others; the five classes here are a synthesis of those and not published as such.
 */
import type { SizeClass } from '../classes.ts';

export interface GrowthCurve {
  /** Age of half the adult weight. */
  readonly half: number;
  /** Age of 99 % of the adult weight. */
  readonly ninetyNine: number;
}

/** Weeks. A synthesis: see above. Bitches and dogs go by their own adult weight. */
export const GROWTH_CURVES: Readonly<Record<SizeClass, GrowthCurve>> = {
  toy: { half: 11.5, ninetyNine: 40 },
  small: { half: 15.2, ninetyNine: 41 },
  medium: { half: 17, ninetyNine: 45 },
  large: { half: 22.9, ninetyNine: 62.5 },
  giant: { half: 25, ninetyNine: 75 },
};

/** Months of 30.4375 days. Posada, Gomez, Rosero 2014: x0 and T99, seen. */
export const POSADA_SMALL: GrowthCurve = { half: 3.49, ninetyNine: 9.46 };
export const POSADA_LARGE: GrowthCurve = { half: 5.27, ninetyNine: 14.37 };

/** Weeks. Hawthorne et al 2004 (J Nutr 134:2027S), Beagle, as quoted in Helmsmüller et al 2013: second-hand. */
export const BEAGLE: GrowthCurve = { half: 14.8, ninetyNine: 41.9 };

/** Lewis, Emmans 2020 (J Anim Sci 98:skaa087, table 1), Great Dane: adult kg and Gompertz rate per day, seen; c placed by a birth weight of 0.6 kg, computed. */
export const GREAT_DANE = { adultKg: 55, ratePerDay: 0.0167, fastestDay: 90.306 } as const;

/**
 * Gompertz of guide dog Labradors, days: rebuilt from 4b + c = 319 and 26.7 kg of the bitches (Helmink, Shanks, Leighton 2000,
 * J Anim Sci 78:27-32, seen) and a birth weight of 0.41 kg; computed.
 */
export const LABRADOR = { scaleDays: 58.75, fastestDay: 83.98 } as const;
