/** Where a week of bowls parts from the house rules and the published numbers. */

import { percentText, plain, rangeText } from '../food/figures.ts';
import type { WeekSummary } from '../food/rotation.ts';
import { DAYS_OF_WEEK } from '../food/rotation.ts';
import { ADULT_FACTORS, adultEnergy, type EnergyBand } from './energy.ts';
import { type Finding, type Growth, nutrientFindings, vitaminAFinding } from './findings.ts';
import type { HouseRules } from './rules.ts';
import { vegetableSpoons } from './vegetables.ts';

export interface WeekFindingsInput {
  readonly summary: WeekSummary;
  readonly rules: HouseRules;
  /** Published energy a day for all who eat, from and to; null when it is not known. */
  readonly energy: EnergyBand | null;
  /** Which limits of growth hold; null for grown dogs. */
  readonly growth: Growth | null;
}

/** Freeze-dried food is a supplement, not the diet: at most this part of the energy. Our own bound for the trade's "small". */
const MOST_FREEZE_DRIED = 0.1;
/** The bone of the week may be this far from the aim before it is said. */
const BONE_AROUND = 0.05;
/** Complete and plain mixes are fed about equally often; outside these parts it is said. */
const BALANCE = { low: 0.25, high: 0.75 };
const TRADE = { source: 'common practice, no source', known: 'common practice' } as const;

/** Published energy of a grown dog, from quiet to active; kcal a day. */
export function grownEnergy(kg: number): EnergyBand {
  return {
    low: adultEnergy(kg, ADULT_FACTORS.quiet),
    high: adultEnergy(kg, ADULT_FACTORS.active),
    source: '95 to 130 × kg^0.75: FEDIAF guidelines (95), NRC 2006 (130)',
    known: 'seen',
  };
}

/** Every finding about a week; none when all is within bounds. */
export function weekFindings(input: WeekFindingsInput): Finding[] {
  const { summary, growth } = input;
  return [
    energy(input),
    ...(growth === null ? [] : nutrientFindings(summary.food, growth)),
    vitaminAFinding(summary.food),
    boneAside(input),
    freezeDried(input),
    extraWater(input),
    greens(input),
    mixesApart(input),
  ].filter((f) => f !== null);
}

function energy({ summary, energy: published }: WeekFindingsInput): Finding | null {
  if (published === null || (summary.kcal >= published.low && summary.kcal <= published.high)) return null;
  const low = summary.kcal < published.low;
  return {
    code: low ? 'energy-low' : 'energy-high',
    severity: 'note',
    numbers: { kcal: summary.kcal, low: published.low, high: published.high },
    sentence: `The week comes to ${plain(summary.kcal, 0)} kcal a day. Published: ${rangeText(published, 0)}.`,
    mend: low ? 'Richer bowls, or more of them. The scale decides.' : 'Leaner bowls, or less of them. The scale decides.',
    source: published.source,
    known: published.known,
  };
}

function boneAside({ summary, rules }: WeekFindingsInput): Finding | null {
  const { low, high } = summary.bone;
  const under = high < rules.boneShare - BONE_AROUND;
  if (!under && low <= rules.boneShare + BONE_AROUND) return null;
  return {
    code: under ? 'bone-under' : 'bone-over',
    severity: 'note',
    numbers: { low, high, aim: rules.boneShare },
    sentence: `Bone is ${rangeText({ low: low * 100, high: high * 100 }, 0)} % of the week. Your rule aims at ${percentText(rules.boneShare, 0)}.`,
    mend: under
      ? 'A meal of raw meaty bones brings more. Calcium decides, not the aim.'
      : 'A meal of bones less. Grey, white or crumbly stool: less bone.',
    ...TRADE,
  };
}

function freezeDried({ summary }: WeekFindingsInput): Finding | null {
  if (summary.freezeDried <= MOST_FREEZE_DRIED) return null;
  return {
    code: 'freeze-dried',
    severity: 'caution',
    numbers: { share: summary.freezeDried, most: MOST_FREEZE_DRIED },
    sentence: `Freeze-dried food is ${percentText(summary.freezeDried, 0)} of the energy. It is a small supplement, too rich to be the diet.`,
    mend: `Keep it to ${percentText(MOST_FREEZE_DRIED, 0)}.`,
    source: `${TRADE.source}; the bound of a tenth is our own`,
    known: TRADE.known,
  };
}

function extraWater({ summary }: WeekFindingsInput): Finding | null {
  if (summary.concentrated <= 0) return null;
  return {
    code: 'extra-water',
    severity: 'note',
    numbers: { share: summary.concentrated },
    sentence: `${percentText(summary.concentrated, 0)} of the energy comes dry. A dog that eats dry food drinks a lot.`,
    mend: 'Soak it, and put more water down.',
    ...TRADE,
  };
}

function greens({ summary, rules }: WeekFindingsInput): Finding | null {
  const spoons = vegetableSpoons(rules, summary.withoutGreens);
  if (spoons <= 0) return null;
  return {
    code: 'greens',
    severity: 'note',
    numbers: { spoons, grams: summary.withoutGreens },
    sentence: `${plain(summary.withoutGreens / DAYS_OF_WEEK, 0)} g a day, as a mean, are bowls without vegetables.`,
    mend: `Put ${plain(spoons, 1)} tablespoons of greens a week with them.`,
    ...TRADE,
  };
}

function mixesApart({ summary }: WeekFindingsInput): Finding | null {
  const { complete, plain: without, all, bones } = summary.meals;
  if (complete === all || without === all || complete + without === 0) return null;
  const part = complete / (complete + without);
  if (part >= BALANCE.low && part <= BALANCE.high) return null;
  return {
    code: 'mixes-apart',
    severity: 'note',
    numbers: { complete, plain: without, bones },
    sentence: `${complete === 0 ? 'No meal holds' : `${complete} meals hold`} vegetables, and ${without === 0 ? 'none is' : `${without} are`} plain. Usual is about as many of each.`,
    mend: part > 0.5 ? 'Plain bowls in place of some complete ones, with greens.' : 'Complete bowls in place of some plain ones.',
    ...TRADE,
  };
}
