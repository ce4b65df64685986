import { useMemo } from 'react';
import { assessLitter, type LitterGrowth } from '../../core/growth/assess.ts';
import { type GrowthInput, growthInputOf } from '../../core/growth/input.ts';
import type { Litter, Puppy, Reading } from '../../core/litter/litter.ts';
import { DEFAULT_HOUSE, type House } from '../../core/people/house.ts';
import { useQuery } from '../data/query.ts';
import { useLitter } from './useLitter.ts';

export interface LitterGrowthFacts {
  readonly litter: Litter | null;
  readonly puppies: readonly Puppy[];
  /** All readings, superseded and withdrawn ones included. */
  readonly readings: readonly Reading[];
  readonly input: GrowthInput | null;
  readonly growth: LitterGrowth | null;
  readonly house: House;
}

const NONE: readonly Reading[] = [];

export function useHouse(): House {
  return useQuery('people.house', {}).value?.house ?? DEFAULT_HOUSE;
}

/** A litter's readings and what they mean now: reckoned in the window, from the facts. */
export function useLitterGrowth(litterId: string): LitterGrowthFacts {
  const facts = useLitter(litterId);
  const house = useHouse();
  const readings = useQuery('growth.readings', { litterId }).value?.readings ?? NONE;
  const litter = facts?.litter ?? null;
  const puppies = facts?.puppies;
  const input = useMemo(
    () => (litter === null || puppies === undefined ? null : growthInputOf({ litter, puppies, readings, house })),
    [litter, puppies, readings, house],
  );
  const growth = useMemo(() => (input === null ? null : assessLitter(input)), [input]);
  return { litter, puppies: puppies ?? [], readings, input, growth, house };
}
