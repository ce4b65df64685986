import { useMemo } from 'react';
import { type OwnLineCurve, ownLineOf } from '../../core/growth/own-line/own-line.ts';
import { useQuery } from '../data/query.ts';

/** The breeder's own line for a litter, from the earlier litters of its breed; null until they are here. */
export function useLine(litterId: string): OwnLineCurve | null {
  const litters = useQuery('growth.line', { litterId }).value?.litters;
  return useMemo(() => (litters === undefined ? null : ownLineOf(litters)), [litters]);
}
