import { useMemo } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import { type HouseRules, type RulesFacts, rulesOn } from '../../core/feeding/rules.ts';
import { useQuery } from '../data/query.ts';

const NOT_YET: RulesFacts = { versions: [], ofLitters: [] };

/** Every version of the rules; none while they are fetched, and then those of the program hold. */
export function useRulesFacts(): RulesFacts {
  return useQuery('feeding.rules', {}).value ?? NOT_YET;
}

/** The rules in force on a day: those of the litter when it is named, else the house's. */
export function useRules(day: CivilDate, litterId: string | null = null): HouseRules {
  const all = useRulesFacts();
  return useMemo(() => rulesOn(all, litterId, day).rules, [all, litterId, day]);
}
