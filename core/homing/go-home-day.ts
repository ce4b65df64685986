/** The earliest day on which a puppy may leave, where a rule says so. Laws change and differ: shown with "check your local rule", never as advice. */
import { addDays, type CivilDate } from '../calendar/day.ts';
import type { GoHomeRule } from '../reference/go-home.ts';

/** The first day on which a puppy born that day may leave under a rule. */
export function earliestGoHome(born: CivilDate, rule: Pick<GoHomeRule, 'fromDay'>): CivilDate {
  return addDays(born, rule.fromDay);
}
