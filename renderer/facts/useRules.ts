import { useMemo } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import { DEFAULT_RULES, type HouseRules, type LitterRules, ownRulesOn, type RulesVersion } from '../../core/feeding/rules.ts';
import { useQuery } from '../data/query.ts';

/** Of versions with the latest first, the one that had begun by a day. */
export function rulesOn(versions: readonly RulesVersion[], day: CivilDate): HouseRules {
  return versions.find((v) => v.from <= day)?.rules ?? DEFAULT_RULES;
}

/** The rules of a litter on a day: its own where it has some by then, else the house's. */
export function rulesOfLitter(
  all: { readonly versions: readonly RulesVersion[]; readonly ofLitters: readonly LitterRules[] },
  litterId: string,
  day: CivilDate,
): HouseRules {
  return ownRulesOn(all.ofLitters, litterId, day)?.rules ?? rulesOn(all.versions, day);
}

/** The rules in force on a day: those of the litter when it is named, else the house's. */
export function useRules(day: CivilDate, litterId: string | null = null): HouseRules {
  const all = useQuery('feeding.rules', {}).value;
  return useMemo(() => {
    if (all === null) return DEFAULT_RULES;
    return litterId === null ? rulesOn(all.versions, day) : rulesOfLitter(all, litterId, day);
  }, [all, litterId, day]);
}
