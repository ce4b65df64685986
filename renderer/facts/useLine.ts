import { useMemo } from 'react';
import { type Line, lineOf } from '../../core/growth/line/line-curve.ts';
import { useQuery } from '../data/query.ts';

/** The breeder's own line for a litter, from the earlier litters of its breed; null until they are here. */
export function useLine(litterId: string): Line | null {
  const litters = useQuery('growth.line', { litterId }).value?.litters;
  return useMemo(() => (litters === undefined ? null : lineOf(litters)), [litters]);
}
