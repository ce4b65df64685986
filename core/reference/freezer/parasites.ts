/**
 * Freezing against parasites (table 5.3 of the project's notes). Freezing does **not** kill bacteria. Home freezers may be warmer than
 * their dial says, so each note asks for a thermometer.
 */
import type { Known } from '../feeding/known.ts';

export type Parasite =
  /** In pork up to 6 inches (15 cm) thick, and up to 27 (69 cm). */
  'trichinella-thin-pork' | 'trichinella-thick-pork' | 'trichinella-game' | 'toxoplasma' | 'taenia' | 'neospora' | 'anisakis';

export interface ParasiteFreezing {
  readonly parasite: Parasite;
  readonly meat: readonly MeatKind[];
  /** Each of these is enough: so cold, for so many days. Empty where freezing is not accepted. */
  readonly freeze: readonly { readonly celsius: number; readonly days: number }[];
  readonly source: string;
  readonly known: Known;
}

export const MEAT_KINDS = ['pork', 'game', 'fish', 'red'] as const;
export type MeatKind = (typeof MEAT_KINDS)[number];

export const PARASITE_FREEZING: readonly ParasiteFreezing[] = [
  {
    parasite: 'trichinella-thin-pork',
    meat: ['pork'],
    freeze: [
      { celsius: -15, days: 20 },
      { celsius: -23, days: 10 },
      { celsius: -29, days: 6 },
    ],
    source: '9 CFR 318.10 (since reserved); JAMA 1954;155:1394',
    known: 'seen',
  },
  {
    parasite: 'trichinella-thick-pork',
    meat: ['pork'],
    freeze: [
      { celsius: -15, days: 30 },
      { celsius: -23, days: 20 },
      { celsius: -29, days: 12 },
    ],
    source: '9 CFR 318.10 (since reserved); JAMA 1954;155:1394',
    known: 'seen',
  },
  {
    parasite: 'trichinella-game',
    meat: ['game'],
    freeze: [],
    source: 'International Commission on Trichinellosis 2019, Food and Waterborne Parasitology 14:e00041',
    known: 'seen',
  },
  {
    parasite: 'toxoplasma',
    meat: ['pork', 'game', 'red'],
    freeze: [{ celsius: -20, days: 2 }],
    source: 'advice; killed by -12 °C (Kotula 1991)',
    known: 'second-hand',
  },
  {
    parasite: 'taenia',
    meat: ['pork', 'game', 'red'],
    freeze: [{ celsius: -10, days: 10 }],
    source: 'EFSA Panel on Biological Hazards',
    known: 'second-hand',
  },
  {
    parasite: 'neospora',
    meat: ['game', 'red'],
    freeze: [{ celsius: -20, days: 2 }],
    source: 'reviews',
    known: 'from memory',
  },
  {
    parasite: 'anisakis',
    meat: ['fish'],
    freeze: [{ celsius: -20, days: 7 }],
    source: 'FDA Food Code, parasite destruction',
    known: 'second-hand',
  },
];

/** The house's plain rule for pork: so many days at -18 °C or colder. Covers the strictest line for packs up to 15 cm thick. */
export const PORK_RULE = { celsius: -18, days: 21, known: 'computed' as Known };
