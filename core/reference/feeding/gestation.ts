/** How long a bitch carries, counted from what was seen or measured. Days. */
import type { Known } from './known.ts';

export const GESTATION_FROM = ['lh', 'ovulation', 'dioestrus', 'mating'] as const;
export type GestationFrom = (typeof GESTATION_FROM)[number];

export interface GestationLength {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly source: string;
  readonly known: Known;
}

/** The narrowest comes first: a day of the LH peak tells most, a mating least. */
export const GESTATION_DAYS: Readonly<Record<GestationFrom, GestationLength>> = {
  lh: {
    low: 64,
    middle: 65,
    high: 66,
    source: 'Concannon, canine pregnancy (second-hand); Kutzler et al. 2003, Theriogenology 60:1187: 64 to 66 days in over 95 %',
    known: 'seen',
  },
  ovulation: {
    low: 61,
    middle: 63,
    high: 65,
    source: 'Mir et al. 2011, Reprod Domest Anim: 63.1 ± 2.1 days, 162 bitches of 53 breeds',
    known: 'seen',
  },
  dioestrus: {
    low: 54,
    middle: 57,
    high: 60,
    source: 'Eilts et al. 2005, Theriogenology: 57 days from the first day of cytologic dioestrus',
    known: 'seen',
  },
  mating: {
    low: 58,
    middle: 61,
    high: 65,
    source: 'Okkens et al. 2001: 61.4 ± 1.5 days, 58 to 65, one mating at the best day',
    known: 'seen',
  },
};

/** Matings on no known day of the heat: the extremes. Concannon, canine pregnancy (second-hand). */
export const ANY_MATING_DAYS = { low: 55, high: 68 } as const;

/** Litters of this many or fewer are carried about a day longer: Eilts et al. 2005 (seen). */
export const SMALL_LITTER = { most: 4, days: 1 } as const;
