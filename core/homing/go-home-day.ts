/** The earliest day on which a puppy may leave, where a rule says so. Laws change and differ: shown with "check your local rule", never as advice. */
import { addDays, type CivilDate } from '../calendar/day.ts';
import { EIGHT_WEEKS } from '../litter/ages.ts';
import type { Known } from '../reference/feeding/known.ts';

export interface GoHomeRule {
  readonly where: string;
  /** Age in days from which it may leave; the day of birth is day 0. */
  readonly fromDay: number;
  readonly source: string;
  readonly known: Known;
}

/** "Not under eight weeks" lets a puppy go on day 56; "over eight weeks" on day 57. */
export const GO_HOME_RULES: readonly GoHomeRule[] = [
  {
    where: 'England (licensed breeders)',
    fromDay: EIGHT_WEEKS,
    source: 'SI 2018/486, Schedule 6, paragraph 1(5), draft text: not under 8 weeks',
    known: 'seen',
  },
  { where: 'Germany', fromDay: 57, source: 'Tierschutz-Hundeverordnung: over 8 weeks', known: 'second-hand' },
  { where: 'Austria', fromDay: 57, source: 'Austrian rule on selling dogs: over 8 weeks', known: 'seen' },
  { where: 'France', fromDay: 57, source: 'Code rural, L214-8: over 8 weeks', known: 'second-hand' },
];

/** The first day on which a puppy born that day may leave under a rule. */
export function earliestGoHome(born: CivilDate, rule: Pick<GoHomeRule, 'fromDay'>): CivilDate {
  return addDays(born, rule.fromDay);
}
