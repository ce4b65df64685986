/** What the breeder should see before she prints a plan, as codes. None of it is printed. */
import type { Finding } from '../feeding/finding.ts';
import { findings } from '../feeding/findings.ts';
import type { Level } from '../growth/assess.ts';
import type { PuppyFinding } from '../growth/puppy-findings.ts';
import { EIGHT_WEEKS } from '../litter/ages.ts';
import { isCurrent } from '../litter/litter.ts';
import type { PlanBasis } from './basis.ts';

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
  const isHeld = readings.some((r) => r.puppyId === puppy.id && isCurrent(r) && r.held);
  return [
    ...(weights.level === 'steady' ? [] : [{ code: 'level' as const, level: weights.level, finding: weights.finding }]),
    ...(isHeld ? [{ code: 'held' as const }] : []),
    ...(weights.anchor === null ? [{ code: 'no-weight' as const }] : []),
    ...(weights.adult === null ? [{ code: 'no-grown-weight' as const }] : []),
    ...(age < EIGHT_WEEKS ? [{ code: 'too-young' as const }] : []),
    ...(house.phone.trim() === '' ? [{ code: 'no-phone' as const }] : []),
  ];
}

function aboutFeeding({ ration: input }: PlanBasis): PlanRemark[] {
  return (input === null ? [] : findings(input)).map((finding) => ({ code: 'feeding' as const, finding }));
}
