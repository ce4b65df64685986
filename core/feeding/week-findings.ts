/** Where a week of bowls parts from the house rules and the published numbers. */

import type { WeekSummary } from '../food/rotation.ts';
import { GROWN_ENERGY_RANGE } from '../reference/feeding/energy.ts';
import { ADULT_FACTORS, adultEnergy, type EnergyBand } from './energy.ts';
import type { Finding, FindingCode } from './finding.ts';
import { type Growth, nutrientFindings, vitaminAFinding } from './nutrient-findings.ts';
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
const LESS_BONE: ReadonlySet<FindingCode> = new Set(['calcium-high', 'ratio-high']);
const MORE_BONE: ReadonlySet<FindingCode> = new Set(['calcium-low', 'ratio-low']);
const TRADE = { source: null, known: 'common practice' } as const;

/** Published energy of a grown dog, from quiet to active; kcal a day. */
export function grownEnergy(kg: number): EnergyBand {
  return {
    of: 'grown',
    low: adultEnergy(kg, ADULT_FACTORS.quiet),
    high: adultEnergy(kg, ADULT_FACTORS.active),
    ...GROWN_ENERGY_RANGE,
  };
}

/** Every finding about a week; none when all is within bounds. */
export function weekFindings(input: WeekFindingsInput): Finding[] {
  const { summary, growth } = input;
  const nutrients = growth === null ? [] : nutrientFindings(summary.food, growth);
  return [
    energy(input),
    ...nutrients,
    vitaminAFinding(summary.food, growth === null ? 'grown' : 'growing'),
    boneAside(input, nutrients),
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
    code: low ? 'week-energy-low' : 'week-energy-high',
    severity: 'note',
    numbers: { kcal: summary.kcal, low: published.low, high: published.high },
    of: published.of,
    source: published.source,
    known: published.known,
  };
}

/** Her aim for bone; where calcium asks for the opposite, the aim is not spoken of. */
function boneAside({ summary, rules }: WeekFindingsInput, nutrients: readonly Finding[]): Finding | null {
  const { low, high } = summary.bone;
  const under = high < rules.boneShare - BONE_AROUND;
  if (!under && low <= rules.boneShare + BONE_AROUND) return null;
  if (nutrients.some((f) => (under ? LESS_BONE : MORE_BONE).has(f.code))) return null;
  return {
    code: under ? 'bone-under' : 'bone-over',
    severity: 'note',
    numbers: { low, high, aim: rules.boneShare },
    ...TRADE,
  };
}

function freezeDried({ summary }: WeekFindingsInput): Finding | null {
  if (summary.freezeDried <= MOST_FREEZE_DRIED) return null;
  return {
    code: 'freeze-dried',
    severity: 'caution',
    numbers: { share: summary.freezeDried, most: MOST_FREEZE_DRIED },
    ...TRADE,
  };
}

function extraWater({ summary }: WeekFindingsInput): Finding | null {
  if (summary.concentrated <= 0) return null;
  return {
    code: 'extra-water',
    severity: 'note',
    numbers: { share: summary.concentrated },
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
    ...TRADE,
  };
}
