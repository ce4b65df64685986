import { clockOf, dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import { ageInDays } from '../../core/calendar/day.ts';
import { weighInOrder } from '../../core/litter/in-the-house.ts';
import type { Litter, Puppy, Reading } from '../../core/litter/litter.ts';
import { readingOf, sessionAt, type WeighingSession } from './weigh-in.ts';

export type NextWeighIn = 'morning' | 'evening' | 'today' | 'done';

const TWICE_A_DAY_UNTIL_DAYS = 14;

/** What is next on the scale: everyone once a day in the morning, twice a day in the first two weeks (common practice, no source). */
export function nextWeighIn(litter: Litter, puppies: readonly Puppy[], readings: readonly Reading[], at: LocalTime): NextWeighIn {
  const today = dateOf(at);
  const order = weighInOrder(puppies, today);
  const weighed = (p: Puppy, session: WeighingSession) => readingOf(readings, p.id, today, session) !== null;
  const morning = order.every((p) => weighed(p, 'morning'));
  const evening = order.every((p) => weighed(p, 'evening'));
  if (sessionAt(clockOf(at)) === 'morning' && !morning) return 'morning';
  if (!order.every((p) => weighed(p, 'morning') || weighed(p, 'evening'))) return 'today';
  const twice = ageInDays(dateOf(litter.whelpedAt), today) < TWICE_A_DAY_UNTIL_DAYS;
  return twice && !evening ? 'evening' : 'done';
}
