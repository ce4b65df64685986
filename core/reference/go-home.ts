/** Rules on the earliest day that a puppy may leave its dam: "not under eight weeks" is day 56, "over eight weeks" day 57. */
import type { Known } from './feeding/known.ts';

export interface GoHomeRule {
  readonly where: 'england' | 'germany' | 'austria' | 'france';
  /** Age in days from which it may leave; the day of birth is day 0. */
  readonly fromDay: number;
  readonly source: string;
  readonly known: Known;
}

export const GO_HOME_RULES: readonly GoHomeRule[] = [
  {
    where: 'england',
    fromDay: 56,
    source: 'SI 2018/486, Schedule 6, paragraph 1(5), draft text: not under 8 weeks',
    known: 'seen',
  },
  { where: 'germany', fromDay: 57, source: 'Tierschutz-Hundeverordnung: over 8 weeks', known: 'second-hand' },
  { where: 'austria', fromDay: 57, source: 'Austrian rule on selling dogs: over 8 weeks', known: 'seen' },
  { where: 'france', fromDay: 57, source: 'Code rural, L214-8: over 8 weeks', known: 'second-hand' },
];
