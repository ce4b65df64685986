/** What is found about weaning beside the plan: it points, it never diagnoses. */

import { type CivilDate, daysBetween } from '../calendar/day.ts';
import { ESTIMATE_BOUNDS, GROWTH_SOURCES } from '../feeding/energy.ts';
import { OLD_WEIGHT_DAYS } from '../growth/puppy-weights.ts';
import type { Known } from '../reference/feeding/known.ts';
import { FIRST_BOWL, SOLIDS_BY_WEEK, SOLIDS_SOURCE } from '../reference/feeding/weaning.ts';
import type { WeaningDay, WeaningInput } from './weaning.ts';
import type { WeaningPlan } from './weaning-plan.ts';

interface Found<Code extends string> {
  readonly code: Code;
  readonly severity: 'note' | 'caution';
  /** As it is cited; null for a bound of our own. */
  readonly source: string | null;
  readonly known: Known;
}

/** One thing about a day of weaning; the words say it. Shares are parts of 1. */
export type WeaningFinding =
  | (Found<'starts-early' | 'starts-late'> & { readonly ageDays: number })
  | (Found<'no-weight' | 'weight-old'> & { readonly puppies: readonly string[]; readonly boundDays: number })
  | (Found<'no-adult-weight'> & { readonly boundDays: number })
  | (Found<'bowl-lean'> & { readonly part: number })
  | (Found<'faster-than-curve'> & { readonly share: number; readonly low: number; readonly high: number });

/** Everything worth saying about a day of weaning; each once. */
export function weaningFindings(input: WeaningInput, day: WeaningDay): WeaningFinding[] {
  return [...startsWell(input), ...weights(input, day), lean(input, day), ahead(input, day)].filter((f) => f !== null);
}

function startsWell({ plan, puppies }: WeaningInput): (WeaningFinding | null)[] {
  const born = puppies[0]?.born;
  if (born === undefined) return [];
  const age = daysBetween(born, plan.starts);
  const { source, known } = FIRST_BOWL;
  if (age < FIRST_BOWL.earliestDay) return [{ code: 'starts-early', severity: 'caution', ageDays: age, source, known }];
  if (age > FIRST_BOWL.latestDay) return [{ code: 'starts-late', severity: 'note', ageDays: age, source, known }];
  return [];
}

function weights({ puppies }: WeaningInput, day: WeaningDay): (WeaningFinding | null)[] {
  const named = (is: (p: WeaningDay['puppies'][number]) => boolean) =>
    day.puppies.filter(is).map((d) => puppies.find((p) => p.id === d.puppyId)?.name ?? '');
  const old = named((p) => p.weighedAgo !== null && p.weighedAgo > OLD_WEIGHT_DAYS);
  const none = named((p) => p.grams === null);
  const unknown = puppies.some((p) => p.adultKg === null);
  const own = { boundDays: OLD_WEIGHT_DAYS, source: null, known: 'common practice' } as const;
  return [
    none.length === 0 ? null : { code: 'no-weight', severity: 'caution', puppies: none, ...own },
    old.length === 0 ? null : { code: 'weight-old', severity: 'caution', puppies: old, ...own },
    unknown ? { code: 'no-adult-weight', severity: 'note', ...own } : null,
  ];
}

function lean({ food, rules }: WeaningInput, day: WeaningDay): WeaningFinding | null {
  const fed = day.puppies.filter((p) => p.estimateKcal !== null && p.grams !== null);
  const aim = fed.reduce((all, p) => all + (p.estimateKcal ?? 0) * p.share, 0);
  if (aim === 0) return null;
  const part = (fed.reduce((all, p) => all + p.dayGrams, 0) * food.kcalPer100g) / 100 / aim;
  const { source, known } = GROWTH_SOURCES[rules.growthMethod];
  if (part >= ESTIMATE_BOUNDS.low) return null;
  return { code: 'bowl-lean', severity: 'note', part, source, known };
}

/** Whether the litter's step is above the planning curve of that week. */
function ahead({ plan, puppies }: WeaningInput, day: WeaningDay): WeaningFinding | null {
  const born = puppies[0]?.born;
  const share = day.step === null ? null : (plan.steps[day.step]?.share ?? null);
  if (born === undefined || share === null) return null;
  const curve = curveOn(born, day.day);
  if (curve === null || share <= curve.high) return null;
  return { code: 'faster-than-curve', severity: 'note', share, low: curve.low, high: curve.high, ...SOLIDS_SOURCE };
}

/** The planning curve in the week of life that a day is in; null outside three to eight weeks. */
export function curveOn(born: CivilDate, day: CivilDate): { low: number; high: number } | null {
  const week = Math.floor(daysBetween(born, day) / 7);
  return SOLIDS_BY_WEEK.find((w) => w.week === week) ?? null;
}

/** The next step after a day by the plan as it stands: its first day, or null on the last step or while the steps rest. */
export function nextStep(plan: WeaningPlan, days: readonly WeaningDay[]): { day: CivilDate; step: number } | null {
  const now = days[0]?.step ?? null;
  const next = days.find((d) => d.step !== null && (now === null || d.step > now));
  return next === undefined || next.step === null || plan.steps[next.step] === undefined
    ? null
    : { day: next.day, step: next.step };
}
