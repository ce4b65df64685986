/** What the breeder should see before she prints a plan, as codes. None of it is printed. */
import { addDays } from '../calendar/day.ts';
import type { Finding } from '../feeding/finding.ts';
import { findings } from '../feeding/findings.ts';
import type { Level } from '../growth/assess.ts';
import type { PuppyFinding } from '../growth/puppy-findings.ts';
import { stands } from '../litter/litter.ts';
import { GO_HOME_DAY, type PlanBasis } from './basis.ts';

/** Fewer weights than these say nothing about gain. */
const FEWEST_WEIGHTS = 5;

export type PlanRemark =
  /** Growth is not steady. */
  | { readonly code: 'level'; readonly level: Exclude<Level, 'steady'>; readonly finding: PuppyFinding | null }
  | { readonly code: 'held' }
  | { readonly code: 'no-weight' }
  | { readonly code: 'no-grown-weight' }
  | { readonly code: 'too-young' }
  | { readonly code: 'no-phone' }
  | { readonly code: 'feeding'; readonly finding: Finding };

/** What is said beside the plan: about the facts it stands on first, then about what is fed. */
export function planRemarks(basis: PlanBasis): PlanRemark[] {
  return [...aboutFacts(basis), ...aboutFeeding(basis)];
}

function aboutFacts({ age, house, weights, puppy, readings }: PlanBasis): PlanRemark[] {
  const isHeld = readings.some((r) => r.puppyId === puppy.id && stands(r) && r.held);
  return [
    ...(weights.level === 'steady' ? [] : [{ code: 'level' as const, level: weights.level, finding: weights.finding }]),
    ...(isHeld ? [{ code: 'held' as const }] : []),
    ...(weights.anchor === null ? [{ code: 'no-weight' as const }] : []),
    ...(weights.adult === null ? [{ code: 'no-grown-weight' as const }] : []),
    ...(age < GO_HOME_DAY ? [{ code: 'too-young' as const }] : []),
    ...(house.phone.trim() === '' ? [{ code: 'no-phone' as const }] : []),
  ];
}

function aboutFeeding({ name, food, born, start, on, house, rules, weights, treads }: PlanBasis): PlanRemark[] {
  const weight = weights.at(start);
  if (treads.length === 0 || weight === null || weights.anchor === null) return [];
  const day = addDays(born, start);
  const found = findings({
    name,
    rules: rules.rules,
    food,
    born,
    day,
    weightGrams: weight.mid,
    adultKg: weights.adult?.kg ?? null,
    unit: house.massUnit,
    gainInBand: weights.own.length < FEWEST_WEIGHTS ? null : weights.level === 'steady',
    weighedOn: day > on ? null : weights.anchor.on,
  });
  return found.map((finding) => ({ code: 'feeding' as const, finding }));
}
