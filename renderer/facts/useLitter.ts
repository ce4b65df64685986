import { useMemo } from 'react';
import { litterInTheHouse } from '../../core/litter/in-the-house.ts';
import type { Litter, Puppy } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';

export interface LitterFacts {
  readonly litter: Litter;
  /** In the order of the weigh-in. */
  readonly puppies: readonly Puppy[];
}

/** A litter and its puppies, or null while they are fetched or when there is none of that id. */
export function useLitter(litterId: string | null): LitterFacts | null {
  const all = useQuery('litter.all', {});
  return all.value?.litters.find((l) => l.litter.id === litterId) ?? null;
}

/** The litter a puppy belongs to. */
export function useLitterOfPuppy(puppyId: string): (LitterFacts & { readonly puppy: Puppy }) | null {
  const all = useQuery('litter.all', {});
  for (const facts of all.value?.litters ?? []) {
    const puppy = facts.puppies.find((p) => p.id === puppyId);
    if (puppy !== undefined) return { ...facts, puppy };
  }
  return null;
}

/** The litters that are still a matter of the house. */
export function useLittersInHouse(): readonly LitterFacts[] {
  const all = useQuery('litter.all', {}).value?.litters;
  const today = useToday();
  return useMemo(() => (all ?? []).filter((l) => litterInTheHouse(l.puppies, today)), [all, today]);
}
